import pytest
from hypothesis import given

from dyesession.colour.ciede2000 import de00, parts
from dyesession.colour.cielab import Lab
from tests.colour.shades_of_cloth import MADDER, any_lab


@given(any_lab, any_lab)
def test_a_difference_is_the_same_both_ways(first: Lab, second: Lab) -> None:
    assert de00(first, second) == pytest.approx(de00(second, first), abs=1e-9)
    assert de00(first, second) >= 0


@given(any_lab)
def test_a_colour_does_not_differ_from_itself(lab: Lab) -> None:
    assert de00(lab, lab) == 0


def test_the_parts_say_which_way() -> None:
    lighter = parts(MADDER, MADDER._replace(lightness=50.0))
    assert lighter.lightness > 0 and lighter.chroma == pytest.approx(0) and lighter.hue == pytest.approx(0)
    assert parts(MADDER, Lab(42, 30, 20)).chroma < 0
    assert parts(MADDER, Lab(42, 40, 38)).hue > 0
