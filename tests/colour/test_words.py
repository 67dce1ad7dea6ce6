import pytest
from hypothesis import given

from dyesession.colour.cielab import Lab, lab_of_lch
from dyesession.colour.words import listed, spoken, terms
from tests.colour.shades_of_cloth import MADDER, any_lab

OPPOSITE = {
    "lighter": "darker", "darker": "lighter", "brighter": "duller", "duller": "brighter",
    "redder": "greener", "greener": "redder", "yellower": "bluer", "bluer": "yellower",
}  # fmt: skip


@given(any_lab, any_lab)
def test_lighter_one_way_is_darker_the_other(first: Lab, second: Lab) -> None:
    there, back = terms(first, second), terms(second, first)
    if first.lightness != second.lightness:
        assert OPPOSITE[there[0].word] == back[0].word
    if len(there) == 3 and first.chroma != second.chroma:
        assert OPPOSITE[there[1].word] == back[1].word


# The standard's hue, then the word for a turn onward and for a turn back.
@pytest.mark.parametrize(
    ("hue", "onward", "back"),
    [(0, "yellower", "bluer"), (30, "yellower", "bluer"), (330, "yellower", "bluer"),
     (60, "greener", "redder"), (120, "greener", "redder"), (180, "bluer", "yellower"),
     (210, "bluer", "yellower"), (260, "redder", "greener"), (310, "redder", "greener")],
)  # fmt: skip
def test_a_colour_is_never_said_to_be_more_of_what_it_is(hue: float, onward: str, back: str) -> None:
    standard = lab_of_lch(50, 40, hue)
    assert spoken(standard, lab_of_lch(50, 40, hue + 10)) == (onward,)
    assert spoken(standard, lab_of_lch(50, 40, hue - 10)) == (back,)


def test_nothing_is_said_below_what_the_readings_can_tell() -> None:
    lighter = MADDER._replace(lightness=MADDER.lightness + 2.0)
    assert spoken(MADDER, lighter, 1.0) == ("lighter",)
    assert spoken(MADDER, lighter, 5.0) == ()


def test_a_near_grey_has_no_hue_or_chroma_words() -> None:
    assert spoken(Lab(50.0, 1.0, 0.0), Lab(50.0, -1.0, 0.0)) == ("greener",)
    assert spoken(Lab(50.0, 0.0, 0.0), Lab(50.0, 0.0, 2.0)) == ("yellower",)


def test_words_stand_in_a_row() -> None:
    assert listed(()) == ""
    assert listed(("darker",)) == "darker"
    assert listed(("lighter", "duller", "bluer")) == "lighter, duller and bluer"
