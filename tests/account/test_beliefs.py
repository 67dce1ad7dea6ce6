"""What readings do to a belief: against the exact answer where everything is normal, and never to lose precision."""

import bisect
import itertools
import math
import operator

import pytest
from account.by_hand import Pages, one_dye_plan
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.account.beliefs import (
    AS_DEALT,
    READING_SCALE,
    agreed,
    likelihood,
    lines_seen,
    look_round,
    put_together,
    weights_of,
)
from dyesession.account.holdings import Evidence
from dyesession.account.matrices import eigen, solved
from dyesession.account.model import Account, Band90
from dyesession.account.strengths import reading_of
from dyesession.account.worlds import EVEN, WORLDS, band, counting, dealt_steps
from dyesession.dyeing.strength import by_columns, by_dilution
from dyesession.session import events as e


def reading(read: float, sd: float, steps: tuple[float, ...]) -> Evidence:
    return Evidence(1, tuple(read - step for step in steps), sd)


def exactly(read: float, sd: float) -> tuple[float, float]:
    """Mean and half-width by summing over a fine grid: Student's t (4 df) as the guess, (10 df) as the reading."""
    scale = sd * READING_SCALE
    grid = [-12.0 + 0.002 * i for i in range(12001)]
    weights = [
        (1.0 + z * z / 4.0) ** -2.5 * (1.0 + (read - z) ** 2 / (10.0 * scale**2)) ** -5.5 for z in grid
    ]
    all_of_it = math.fsum(weights)
    mean = math.fsum(map(operator.mul, grid, weights)) / all_of_it
    so_far = list(itertools.accumulate(weights))
    low, high = (grid[bisect.bisect_left(so_far, share * all_of_it)] for share in (0.05, 0.95))
    return mean, (high - low) / 2.0


@settings(max_examples=40, deadline=None)
@given(st.floats(-2.5, 2.5), st.floats(0.05, 1.0))
def test_worlds_put_elsewhere_stand_for_the_exact_belief(read: float, sd: float) -> None:
    dealt = {"x": dealt_steps(1)}
    looked = look_round(["x"], {}, {})
    lines = lines_seen(["x"], [reading(read, sd, looked.steps["x"])], {}, {})
    placing = put_together(dealt, lines, agreed(lines))
    moved = placing.steps["x"]
    weights = weights_of(likelihood([reading(read, sd, moved)]), placing.lift)
    elsewhere, (mean, half_width) = band(moved, weights), exactly(read, sd)
    assert elsewhere.mean == pytest.approx(mean, abs=0.1 * half_width)
    assert elsewhere.half_width == pytest.approx(half_width, rel=0.1)
    assert counting(weights) > 0.35 * WORLDS


def test_without_a_reading_every_world_weighs_alike() -> None:
    assert weights_of(likelihood([]), AS_DEALT.lift) is EVEN


def test_readings_on_a_free_scale_tell_only_how_they_differ() -> None:
    one = Evidence(1, tuple(0.5 + x for x in dealt_steps(1)), 0.1, "cards")
    alone = weights_of(likelihood([one]), AS_DEALT.lift)
    assert max(alone) == pytest.approx(1.0 / WORLDS)


def test_an_odd_reading_is_not_swallowed_whole() -> None:
    """Twenty errors away from every world: the belief moves, and still holds its width."""
    steps = dealt_steps(1)
    weights = weights_of(likelihood([reading(40.0, 2.0, steps)]), AS_DEALT.lift)
    assert counting(weights) > 5.0


def test_linear_equations_and_directions_are_found() -> None:
    matrix = [[4.0, 1.0, 0.5], [1.0, 3.0, 0.2], [0.5, 0.2, 2.0]]
    (x,) = solved(matrix, [[1.0, 2.0, 3.0]])
    assert [math.fsum(a * b for a, b in zip(row, x, strict=True)) for row in matrix] == pytest.approx(
        [1, 2, 3]
    )
    stretches, directions = eigen(matrix)
    for stretch, direction in zip(stretches, directions, strict=True):
        turned = [math.fsum(a * b for a, b in zip(row, direction, strict=True)) for row in matrix]
        assert turned == pytest.approx([stretch * one for one in direction], abs=1e-6)


def two_strains(read: e.Read | None) -> Account:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 80.0)))
    day.write_all((e.Strained("extract pot", "dye pot", 1.0, "read"), e.Refreshed("extract pot", 1.0)), 60.0)
    day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 80.0)), 30.0)
    if read is not None:
        day.write(read, 60.0)
    return day.write(e.Strained("extract pot", "dye pot", 1.0, "read")).account()


def left(account: Account) -> Band90:
    stuff = account.dyestuff("madder")
    assert stuff is not None
    return stuff.left_in_dyestuff


def matched(share: float) -> e.Read:
    return e.Read("extract pot", strength=share, against="first strain", how="matched")


def test_a_weaker_second_strain_means_less_is_left() -> None:
    assert (
        left(two_strains(matched(0.1))).mean
        < left(two_strains(matched(0.3))).mean
        < left(two_strains(matched(0.5))).mean
    )


def test_a_likely_strength_narrows_what_is_left_and_what_was_drawn() -> None:
    before, after = two_strains(None), two_strains(matched(0.3))
    assert left(after).half_width < left(before).half_width / 1.3
    stuff, was = after.dyestuff("madder"), before.dyestuff("madder")
    assert stuff is not None
    assert was is not None
    assert stuff.next_pull.half_width < was.next_pull.half_width / 2.0
    assert stuff.how == "matched"


def test_a_surer_way_of_reading_narrows_more() -> None:
    columns = by_columns(this_mm=12.0, other_mm=3.6)
    spoons = by_dilution(7.0, 3.0)
    assert columns.share == pytest.approx(spoons.share)
    assert columns.sd > 2.0 * spoons.sd
    rough = two_strains(reading_of("extract pot", columns, "first strain"))
    fine = two_strains(reading_of("extract pot", spoons, "first strain"))
    assert left(fine).half_width < left(rough).half_width


def test_a_strain_read_after_its_pot_was_emptied_is_the_strain_that_ran_off() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 80.0)))
    day.write_all((e.Strained("extract pot", "dye pot", 1.0, "read"), e.Refreshed("extract pot", 1.0)), 60.0)
    day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 80.0)), 30.0)
    day.write(e.Strained("extract pot", "dye pot", 1.0, "read"), 60.0)
    account = day.write(matched(0.2)).account()
    assert account.strengths[-1].strain == 2
    assert account.strengths[-1].counted
    assert left(account).mean == pytest.approx(left(two_strains(matched(0.2))).mean, rel=0.1)


def test_a_strength_beside_nothing_known_is_kept_and_not_counted() -> None:
    account = two_strains(e.Read("extract pot", strength=3.0, against="the card", how="read"))
    assert not account.strengths[-1].counted
    assert left(account).mean == pytest.approx(left(two_strains(None)).mean, rel=0.02)
    assert left(account).half_width == pytest.approx(left(two_strains(None)).half_width, rel=0.03)


def dipped(read: e.Read | None) -> Account:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Strained("extract pot", "dye pot", 1.0, "read"), e.ToppedUp("dye pot", to_l=3.0)), 60.0)
    day.write_all((e.Entered("first skein", "dye pot"), e.Lit("dye pot"), e.Reached("dye pot", 80.0)))
    return day.write(read or e.Read("dye pot", temperature_c=80.0), 60.0).account()


def test_a_pair_before_and_after_the_fibre_says_how_much_it_took() -> None:
    def on_fibre(read: e.Read | None) -> Band90:
        fibre = dipped(read).fibre("first skein")
        assert fibre is not None
        return fibre.taken[0].grams

    little = on_fibre(e.Read("dye pot", strength=0.5, against="before", how="matched"))
    much = on_fibre(e.Read("dye pot", strength=0.15, against="before", how="matched"))
    unread = on_fibre(None)
    assert little.mean < much.mean
    assert little.half_width < unread.half_width
    bath = dipped(e.Read("dye pot", strength=0.15, against="before", how="matched")).bath("dye pot")
    was = dipped(None).bath("dye pot")
    assert bath is not None
    assert was is not None
    assert bath.grams("madder").half_width < was.grams("madder").half_width / 2.0


def test_the_third_odd_reading_is_believed() -> None:
    """A pot that keeps far less than any book says, read three times over: the account goes with the dyer."""
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    for number in range(2, 5):
        day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 80.0)))
        day.write_all(
            (e.Strained("extract pot", "dye pot", 1.0, "read"), e.Refreshed("extract pot", 1.0)), 60.0
        )
        day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 80.0)))
        day.write(
            e.Read("extract pot", strength=0.9 ** (number - 1), against="first strain", how="matched"), 60.0
        )
    stuff = day.account().dyestuff("madder")
    assert stuff is not None
    assert stuff.next_kept.mean > 0.75


def test_an_absurd_reading_tells_nothing_between_the_worlds() -> None:
    """2.7 off in the log, as 20 g of liquor on fibre that holds 300: a slip, whichever world it is."""
    off = tuple(2.7 + 0.1 * step for step in dealt_steps(1))
    weights = weights_of(likelihood([Evidence(1, off, 0.06, slip_from=12.0)]), AS_DEALT.lift)
    assert counting(weights) > 0.9 * WORLDS
    ordinary = tuple(0.2 + 0.1 * step for step in dealt_steps(1))
    assert counting(weights_of(likelihood([Evidence(1, ordinary, 0.06, slip_from=12.0)]), AS_DEALT.lift)) < 0.7 * WORLDS
