from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.cielab import Lab
from dyesession.colour.difference import DepthRatio, depth_phrase, difference, shown_range
from dyesession.colour.shades import depth_line, depth_ratio
from dyesession.colour.trouble import Unlike
from dyesession.colour.viewing import D65_2, D65_10, Viewing
from tests.colour.shades_of_cloth import INDIGO, MADDER, UNDYED, WELD, aim, cloth, read, unhurried


@unhurried
@given(st.floats(0.1, 5))
def test_a_depth_is_found_again(ratio: float) -> None:
    for dye in (MADDER, WELD, INDIGO):
        deeper = depth_line(UNDYED, dye, D65_2)(ratio)
        assert depth_ratio(UNDYED, dye, deeper, D65_2) == pytest.approx(ratio, rel=1e-3)


@pytest.mark.parametrize(
    ("ratio", "words"),
    [(0.8, "about 20 % weaker"), (0.5, "about 50 % weaker"), (1.3, "about 30 % stronger"),
     (2.5, "about 2.5 times as deep")],
)  # fmt: skip
def test_depth_comes_first_and_alone_where_only_depth_differs(ratio: float, words: str) -> None:
    sample = depth_line(UNDYED, MADDER, D65_2)(ratio)
    found = difference(read(sample), aim(MADDER), read(UNDYED))
    assert found.words == words
    assert found.depth and found.depth.low < ratio < found.depth.high
    assert found.depth.ratio == pytest.approx(ratio, rel=1e-3)


def test_what_is_left_stands_behind_the_depth() -> None:
    line = depth_line(UNDYED, MADDER, D65_2)(0.7)
    duller = Lab(line.lightness, line.a * 0.85, line.b * 0.85)
    found = difference(read(duller), aim(MADDER), read(UNDYED))
    assert found.words.startswith(("about 30 % weaker, then ", "about 25 % weaker, then "))
    assert "duller" in found.left and found.words.endswith("duller")


def test_another_colour_altogether_is_not_called_weaker() -> None:
    found = difference(read(Lab(50.0, 0.0, 40.0)), aim(MADDER), read(UNDYED))
    assert "weaker" not in found.words and "yellower" in found.words


def test_nothing_is_said_of_less_than_the_readings_can_tell() -> None:
    slightly = MADDER._replace(lightness=44.0)
    assert difference(read(slightly, 4.0), aim(MADDER, plus_minus=4.0), read(UNDYED)).words == (
        "no difference these readings can tell"
    )
    assert difference(read(slightly), aim(MADDER), read(UNDYED)).words == "about 15 % weaker"


def test_inside_its_own_spread_a_target_is_hit() -> None:
    target = aim(MADDER, Lab(46.0, 43.0, 28.0), Lab(40.0, 42.0, 32.0))
    found = difference(read(Lab(43.0, 44.0, 30.0)), target, read(UNDYED))
    assert found.verdict.inside and found.words == "inside it"


@unhurried
@given(cloth, cloth)
def test_any_two_cloths_have_words_and_a_range(sample: Lab, target: Lab) -> None:
    found = difference(read(sample), aim(target), read(UNDYED))
    assert found.words
    assert 0 <= found.verdict.low <= found.verdict.de00 <= found.verdict.high
    assert found.depth is None or found.depth.low <= found.depth.ratio <= found.depth.high


def test_a_target_without_dye_or_beyond_cloth_has_no_depth_but_a_difference() -> None:
    for target in (UNDYED, Lab(50.0, 0.0, -82.7)):
        found = difference(read(MADDER), aim(target), read(UNDYED))
        assert found.depth is None and found.notes and found.words and found.verdict.de00 > 0


def test_a_light_without_weights_still_gives_a_difference() -> None:
    d50 = Viewing("D50", 2)
    sample, target, undyed = (replace(read(lab), viewing=d50) for lab in (MADDER, INDIGO, UNDYED))
    from dyesession.colour.targets import target_of

    found = difference(sample, target_of([target]), undyed)
    assert found.depth is None and "D50/2°" in found.notes[0]


def test_an_undyed_fibre_read_another_way_is_refused() -> None:
    with pytest.raises(Unlike):
        difference(read(MADDER), aim(MADDER), replace(read(UNDYED), viewing=D65_10))


def test_a_depth_the_band_leaves_open_is_not_spoken_of() -> None:
    assert depth_phrase(DepthRatio(0.8, 0.6, 1.07)) == ""
    assert depth_phrase(DepthRatio(0.8, 0.7, 0.9)) == "about 20 % weaker"
    assert depth_phrase(DepthRatio(0.98, 0.97, 0.99)) == ""
    assert depth_phrase(None) == ""


@pytest.mark.parametrize(
    ("low", "high", "shown"),
    [(0, 0.7, "under 1"), (1.6, 5.8, "2 to 6"), (3.6, 4.4, "about 4"), (0, 16, "0 to 16")],
)
def test_a_range_never_has_a_decimal(low: float, high: float, shown: str) -> None:
    assert shown_range(low, high) == shown
