"""A kept bath poured into a later day with its grams told: nothing is counted twice when it is kept again."""

from dataclasses import replace

import pytest
from days import Day, madder_plan
from shelf.test_shelf import FIRST, a_whole_day, kept_label, named, shelf

from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.shelf import KeptBath, drawn


@pytest.fixture(scope="module")
def first() -> LoggedDay:
    return named(a_whole_day(), FIRST)


@pytest.fixture(scope="module")
def before(first: LoggedDay) -> KeptBath:
    bath = shelf(first).bath(kept_label(first, "dye pot"))
    assert bath is not None
    return bath


def later(bath: KeptBath, litres: float | None) -> Day:
    """A later day of dyeing alone, the bath poured in as the shelf pours it."""
    steps = tuple(replace(one, after=(), add=()) for one in madder_plan().steps if one.name == "dye")
    day = Day(replace(madder_plan(), steps=steps))
    day.clock.advance(86400)
    day.opened = day.clock.now()
    day.do(drawn(bath, "dye pot", litres))
    return day


def test_poured_and_kept_again_it_is_the_same_bath(first: LoggedDay, before: KeptBath) -> None:
    day = later(before, None)
    day.do(e.Kept("dye pot", "in another jar"))
    after = shelf(first, named(day, "2026-03-15-jar-a2b3")).bath("in another jar")
    assert after is not None
    [was], [now] = before.dye, after.dye
    assert (now.ingredient, now.substance, now.of_g) == (was.ingredient, was.substance, was.of_g)
    assert now.grams is not None and was.grams is not None
    assert now.grams.mean == pytest.approx(was.grams.mean, rel=1e-3)
    assert (now.grams.low, now.grams.high) == (
        pytest.approx(was.grams.low, rel=1e-2), pytest.approx(was.grams.high, rel=1e-2),
    )
    assert {one.ingredient for one in after.inside} == {one.ingredient for one in before.inside}
    assert (after.uses, after.hue_may_drift) == (before.uses, True)


def test_half_of_it_brings_half(first: LoggedDay, before: KeptBath) -> None:
    assert before.left_l is not None
    day = later(before, before.left_l / 2)
    day.do(e.Kept("dye pot", "half of it"))
    both = shelf(first, named(day, "2026-03-15-half-a2b3"))
    half, rest = both.bath("half of it"), both.bath(before.label)
    assert half is not None and rest is not None
    [was], [now], [left] = before.dye, half.dye, rest.dye
    assert was.grams is not None and now.grams is not None and left.grams is not None
    assert now.grams.mean == pytest.approx(was.grams.mean / 2, rel=1e-3)
    assert now.grams.mean + left.grams.mean == pytest.approx(was.grams.mean, rel=1e-3)


def test_fibre_dyed_in_it_leaves_less_and_says_what_that_fibre_came_to(first: LoggedDay, before: KeptBath) -> None:
    day = later(before, None)
    day.do(e.Begun("dye", early="the bath is there"))
    day.do(e.Entered("small skein", "dye pot"))
    day.do(e.Lit("dye pot"))
    day.do(e.Reached("dye pot", 85.0))
    day.clock.advance(3600)
    day.do(e.Lifted("small skein", "dye pot"))
    day.do(e.Kept("dye pot", "second use"))
    after = shelf(first, named(day, "2026-03-15-second-use-a2b3")).bath("second use")
    assert after is not None
    [was], [now] = before.dye, after.dye
    assert was.grams is not None and now.grams is not None
    assert 0.0 < now.grams.mean < 0.9 * was.grams.mean and now.of_g == was.of_g
    assert after.uses == before.uses + 1
    assert after.would_do is not None and after.would_do.first == "the small skein"
