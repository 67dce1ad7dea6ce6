"""What is poured from one bath into another is told alike on both sides, whatever the day was."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from typing import Any

import pytest
from account.by_hand import Pages, one_dye_plan
from days import Day
from histories import moves, play
from hypothesis import HealthCheck, given, settings

from dyesession.account.ledger import Ledger
from dyesession.account.model import Account, Band90, LedgerLine
from dyesession.session import events as e

OUT = ("strained into the ", "poured into the ", "put by as ", "drawn into the ")
IN = ("strained in from the ", "poured in from the ", "put by from the ", "drawn from ")
NEAR = 1e-9


def pours(account: Account) -> Mapping[int, tuple[list[LedgerLine], list[LedgerLine]]]:
    """The lines of each entry that poured: what went out, what came in."""
    found: dict[int, tuple[list[LedgerLine], list[LedgerLine]]] = defaultdict(lambda: ([], []))
    for one in account.lines:
        for side, starts in enumerate((OUT, IN)):
            if one.what.startswith(starts):
                found[one.n][side].append(one)
    return found


def mirrored(band: Band90) -> tuple[float, float, float]:
    return -band.mean, -band.high, -band.low


def same(gone: LedgerLine, came: LedgerLine) -> bool:
    pairs = [(gone.volume_change_l, came.volume_change_l)]
    out, into = ({one.lot: one.grams for one in side.changes} for side in (gone, came))
    assert out.keys() == into.keys()
    pairs += [(out[name], into[name]) for name in out]
    return all(mirrored(a) == pytest.approx((b.mean, b.low, b.high), abs=NEAR) for a, b in pairs)


def poured(first: e.Event, *more: e.Event) -> Account:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Lit("extract pot"), e.Reached("extract pot", 70.0)))
    return day.write(first, 60.0).write_all(more).account()


STRAIN = e.Strained("extract pot", "dye pot", 0.9, "read")


@pytest.mark.parametrize(
    "more",
    [
        (),
        (e.Refreshed("extract pot", 1.0), e.Strained("extract pot", "dye pot", 0.8, "read")),
        (e.Filled("bucket", 1.0), e.Pooled("dye pot", "bucket", 0.7, "read")),
        (e.Kept("dye pot", "madder bath", 0.7),),
        (e.Kept("dye pot", "madder bath", 0.7), e.Drawn("dye pot", "madder bath", volume_l=0.4)),
        (e.Kept("dye pot", "madder bath"), e.Drawn("dye pot", "madder bath")),
    ],
)
@pytest.mark.parametrize("read", [STRAIN, e.Strained("extract pot", "dye pot")])
def test_as_much_comes_in_as_went_out(read: e.Event, more: tuple[e.Event, ...]) -> None:
    found = [pair for pair in pours(poured(read, *more)).values() if all(pair)]
    assert len(found) == 1 + sum(isinstance(one, e.Strained | e.Pooled | e.Kept | e.Drawn) for one in more)
    assert all(len(out) == len(into) == 1 and same(out[0], into[0]) for out, into in found)


def test_the_lines_of_a_pot_still_add_up_to_what_is_in_it() -> None:
    account = poured(STRAIN, e.Refreshed("extract pot", 1.0), e.Kept("dye pot", "madder bath", 0.7))
    for name in ("extract pot", "dye pot", "madder bath"):
        told_l = sum(one.volume_change_l.mean for one in account.lines if one.vessel == name)
        bath = account.bath(name)
        assert told_l == pytest.approx(bath.volume_l.mean if bath is not None else 0.0, abs=1e-3)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(moves)
def test_on_any_day_both_sides_of_a_pour_state_the_same(history: Sequence[Any]) -> None:
    day = Day()
    play(day, list(history))
    account = Ledger.start(day.plan, day.opened).following(day.entries).account()
    for out, into in pours(account).values():
        assert len(out) == len(into) or not out
        assert all(same(gone, came) for gone, came in zip(out, into, strict=False))
