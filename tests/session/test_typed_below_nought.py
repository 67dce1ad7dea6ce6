"""A figure below nought typed at the stove is read as it stands: asking about it is the account's part."""

import pytest
from days import madder_plan

from dyesession.session.fold import opening_state
from dyesession.session.typed import Hand, Meaning, NotUnderstood, meaning_of_number, understand

HAND = Hand("dye pot", "dye", "alum", "large skein")


@pytest.mark.parametrize(
    ("meaning", "text", "field", "value"),
    [
        ("weight", "-29 g", "mass_g", -29.0),
        ("weight", "-29", "mass_g", -29.0),
        ("volume", "-1.8", "volume_l", -1.8),
        ("top up", "-7 L", "to_l", -7.0),
        ("wet weight", "-620 g", "mass_g", -620.0),
        ("strength", "-31 %", "strength", -0.31),
        ("pH", "-4.5", "ph", -4.5),
        ("temperature", "-82", "temperature_c", -82.0),
    ],
)
def test_it_is_read_with_its_sign(meaning: Meaning, text: str, field: str, value: float) -> None:
    event = understand(meaning, text, opening_state(madder_plan()), HAND).event
    assert getattr(event, field) == pytest.approx(value)


@pytest.mark.parametrize(
    ("text", "meaning"), [("-5 g", "weight"), ("-1.8 L", "volume"), ("-82", "temperature")]
)
def test_its_unit_says_what_it_is_about(text: str, meaning: Meaning) -> None:
    assert meaning_of_number(text) == meaning


@pytest.mark.parametrize("text", ["15", "-15", "sour"])
def test_what_can_be_no_ph_on_either_side_is_not_understood(text: str) -> None:
    with pytest.raises(NotUnderstood, match="pH"):
        understand("pH", text, opening_state(madder_plan()), HAND)
