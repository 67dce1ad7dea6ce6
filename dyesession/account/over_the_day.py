"""A bath over the day as points for a picture: its litres, its colour and its strength each time they changed.

Knows nothing of drawing. The whole day is seen with what is known now, so a reading narrows the points before it.
"""

from dataclasses import dataclass

from dyesession.account.course import Mark
from dyesession.account.estimate import Behind
from dyesession.account.model import Account, Band90
from dyesession.account.pools import Pool
from dyesession.account.worlds import ZEROS, Vector, mean

LEAST_L = 1e-9


@dataclass(frozen=True)
class Point:
    """A bath at one moment: entry, session second, litres, grams of one dyestuff's colour, grams a litre."""

    n: int
    second: float
    volume_l: Band90
    grams: Band90
    strength_g_l: Band90


def over_the_day(account: Account, vessel: str, lot: str = "") -> tuple[Point, ...]:
    """The points of one vessel's bath, oldest first, up to now; of the dyestuff it held most of, if none is
    named. Nothing where it never held any.
    """
    behind = account.behind
    if not isinstance(behind, Behind):
        return ()
    marks = [one for one in behind.marks if one.vessel == vessel]
    lot = lot or _main(behind, marks)
    if not lot:
        return ()
    now = behind.held.bath(vessel).pool
    if marks and marks[-1].pool is not now:
        marks.append(Mark(behind.state.n, behind.second, vessel, now))
    return tuple(_point(behind, one, lot) for one in marks)


def _main(behind: Behind, marks: list[Mark]) -> str:
    most = (
        {name: max(mean(one.pool.grams(name)) for one in marks) for name in behind.held.stores}
        if marks
        else {}
    )
    lot = max(most, key=most.__getitem__, default="")
    return lot if most.get(lot, 0.0) > 0.0 else ""


def _point(behind: Behind, mark: Mark, lot: str) -> Point:
    pool = mark.pool
    return Point(
        mark.n,
        mark.second,
        behind.band(pool.volume_l),
        behind.band(pool.grams(lot)),
        behind.band(_strength(pool, lot)),
    )


def _strength(pool: Pool, lot: str) -> Vector:
    grams = pool.grams(lot)
    if grams is ZEROS:
        return ZEROS
    return tuple([g / v if v > LEAST_L else 0.0 for g, v in zip(grams, pool.volume_l, strict=True)])
