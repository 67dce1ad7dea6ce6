"""A lot's colour typed at the stove: a hex, or a Lab as an instrument gave it, which is kept as it is."""

import pytest
from days import Day

from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.typed import understand
from dyesession.session.understood import Hand

HAND = Hand(lot="large skein")


def typed(text: str) -> e.Event:
    day = Day()
    return understand("colour", text, day.state, HAND).event


def test_a_lab_keeps_its_light_and_its_plus_minus() -> None:
    assert typed("lab(42 45 30) D65/10 ± 1.5 dry, colorimeter") == e.Read(
        lot="large skein", colour="lab(42 45 30) D65/10 ± 1.5 dry, colorimeter", wet=False
    )


def test_at_the_stove_a_skein_is_wet_unless_it_is_said_to_be_dry() -> None:
    assert typed("lab(42 45 30)").wet is True  # type: ignore[union-attr]
    assert typed("#8b3a2b dry") == e.Read(lot="large skein", colour="#8b3a2b", wet=False)


@pytest.mark.parametrize("text", ["lab(42 45)", "lab(42 300 30)", "brick"])
def test_what_is_no_colour_is_one_sentence(text: str) -> None:
    with pytest.raises(UserError, match="example"):
        typed(text)
