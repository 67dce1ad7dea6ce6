from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.readings import Reading, check_alike, plus_minus_between
from dyesession.colour.targets import target_of, verdict
from dyesession.colour.trouble import ColourError, Unlike
from dyesession.colour.viewing import D65_10
from tests.colour.shades_of_cloth import MADDER, aim, cloth, is_one_sentence, read, unhurried

several = st.lists(cloth, min_size=2, max_size=5, unique=True)


@unhurried
@given(several)
def test_each_reading_of_a_target_is_inside_it(labs: list[Lab]) -> None:
    target = aim(*labs)
    assert all(verdict(read(lab), target).inside for lab in labs)


@unhurried
@given(several, cloth)
def test_inside_is_no_farther_out_than_the_farthest_of_the_targets_own(labs: list[Lab], lab: Lab) -> None:
    target = aim(*labs)
    found = verdict(read(lab), target)
    assert found.inside == (de00(target.middle.lab, lab) <= target.spread)
    assert (found.word == "inside it") == found.inside
    assert found.low <= found.de00 <= found.high


@pytest.mark.parametrize(
    ("lightness", "word"),
    [(42, "a match"), (43.6, "very close"), (45, "the same family"), (48, "clearly another shade"),
     (60, "another colour")],
)  # fmt: skip
def test_one_reading_has_no_inside_but_a_word(lightness: float, word: str) -> None:
    assert verdict(read(MADDER._replace(lightness=float(lightness))), aim(MADDER)).word == word


def test_the_range_is_as_wide_as_both_readings_make_it() -> None:
    found = verdict(read(Lab(50.0, 45.0, 30.0), 3.0), aim(MADDER, plus_minus=4.0))
    assert found.high - found.de00 == pytest.approx(5.0)
    assert found.de00 - found.low == pytest.approx(min(5.0, found.de00))


def test_in_one_frame_only_what_does_not_cancel_counts() -> None:
    first = Reading(MADDER, 4.5, repeats_within=1.8, frame="skein.jpg")
    assert plus_minus_between(first, first) == pytest.approx(1.8 * 2**0.5)
    assert plus_minus_between(first, replace(first, frame="other.jpg")) == pytest.approx(4.5 * 2**0.5)


def test_readings_for_unlike_observers_are_refused_and_not_mixed() -> None:
    other = replace(read(MADDER), viewing=D65_10)
    for refuse in (lambda: check_alike(read(MADDER), other), lambda: target_of([read(MADDER), other])):
        with pytest.raises(Unlike) as refused:
            refuse()
        assert is_one_sentence(str(refused.value))


def test_wet_is_never_compared_not_even_with_wet() -> None:
    wet = replace(read(MADDER), wet=True)
    for first, second in ((wet, read(MADDER)), (read(MADDER), wet), (wet, wet)):
        with pytest.raises(Unlike) as refused:
            check_alike(first, second)
        assert is_one_sentence(str(refused.value))
    with pytest.raises(Unlike):
        target_of([wet])


@pytest.mark.parametrize(
    "make",
    [
        lambda: target_of([]),
        lambda: Reading(MADDER, -1.0),
        lambda: Reading(MADDER, 1.0, how="guessed"),
        lambda: Reading(Lab(float("nan"), 0.0, 0.0), 1.0),
        lambda: Reading(Lab(101.0, 0.0, 0.0), 1.0),
    ],
)
def test_a_reading_that_cannot_be_is_refused(make: object) -> None:
    with pytest.raises(ColourError):
        make()  # type: ignore[operator]


def test_a_reading_knows_its_light_and_observer() -> None:
    found = replace(read(MADDER), viewing=D65_10)
    assert (found.illuminant, found.observer_deg, str(found.viewing)) == ("D65", 10, "D65/10°")
