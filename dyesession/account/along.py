"""How far along its dyeing a lot is, and what the rest would bring: a time course as a shape, not a promise.

Knows nothing of words or colours. Uptake tends to its rest as 1 - exp(-k t) (`passing`); published rates differ
too widely to promise a minute. A dried snippet that went in with the lot tells its depth now, as a share of the
depth wanted, dry beside dry; what is wet looks darker than it dries, and is compared with nothing here.
"""

import math
from dataclasses import dataclass

from dyesession.account import unknowns as u
from dyesession.account.estimate import Behind
from dyesession.account.model import Account, Band90
from dyesession.account.passing import Stage, passed
from dyesession.account.worlds import Vector, mean, plus, times, total
from dyesession.dyeing.limits import above_zero

G_PER_KG, S_PER_MIN, PER_CENT = 1000.0, 60.0, 100.0
LEAST_G = 1e-6
LEAST_SNIPPET_G = 1e-9  # a snippet of a gram takes milligrams
# A snippet takes no more evenly than a skein, and its depth is read by eye or from a photo: one standard deviation of
# the share read; judgement.
SNIPPET_SD = 0.12
Z_90 = 1.645


@dataclass(frozen=True)
class Along:
    """One lot in its dyebath. Shares in per cent of what it would have at rest in this bath, now and when its
    hold is over (None where none runs); `minutes` it is under way, `more_min` of it left.

    `of_wanted`, `at_end_of_wanted`, `at_rest_of_wanted`: of the depth wanted, once a dried snippet told it.
    """

    lot: str
    vessel: str
    dye: str
    minutes: float
    now: Band90
    at_end: Band90 | None
    more_min: float | None
    of_wanted: Band90 | None = None
    at_end_of_wanted: Band90 | None = None
    at_rest_of_wanted: Band90 | None = None


def along(
    account: Account,
    lot: str,
    snippet_share: float | None = None,
    snippet: str = "",
    share_sd: float = SNIPPET_SD,
) -> Along | None:
    """How far along a lot in a dyebath is; None where it is in none, or has taken nothing yet.

    `snippet_share` is the depth of a dried snippet over the depth wanted, on a scale on which half the dye is half
    the number (K/S), `share_sd` its standard deviation as a share of it. `snippet` names the one that was dipped:
    the depth is that of its own time in the bath; "" for one dipped with the lot and out just now. Raises
    `OutOfRange` where the share is not above nought.
    """
    behind = account.behind
    if not isinstance(behind, Behind):
        return None
    there = behind.state.lot(lot)
    fibre = behind.held.fibres.get(lot)
    if there is None or fibre is None or there.place not in behind.held.baths:
        return None
    pool = behind.held.bath(there.place).pool
    dye = max(
        (d for d in behind.held.stores if mean(pool.grams(d)) > LEAST_G),
        key=lambda d: mean(pool.grams(d)),
        default="",
    )
    if not dye or mean(fibre.taken(dye)) <= LEAST_G:
        return None
    told = behind.held.fibres.get(snippet)
    here = fibre.taken(dye)
    if told is not None and told.mass_g > 0.0 and mean(told.taken(dye)) > LEAST_SNIPPET_G:
        here = times(told.taken(dye), fibre.mass_g / told.mass_g)
    rest, end = _at_rest(behind, there.place, lot, dye), _at_end(behind, there.place, lot, dye)
    shown = Along(
        lot,
        there.place,
        dye,
        _minutes(behind, there.place),
        behind.band(_share(fibre.taken(dye), rest)),
        None if end is None else behind.band(_share(end[0], rest)),
        None if end is None else end[1],
    )
    return (
        shown
        if snippet_share is None
        else _with_snippet(shown, behind, (snippet_share, share_sd), (here, fibre.taken(dye), rest), end)
    )


def _with_snippet(
    shown: Along,
    behind: Behind,
    share_and_sd: tuple[float, float],
    lot_as_snippet_now_rest: tuple[Vector, Vector, Vector],
    end: tuple[Vector, float] | None,
) -> Along:
    """With what the snippet tells: depth goes with grams on the fibre, so the rest brings what the shape says."""
    share, sd = share_and_sd
    above_zero("depth of the snippet over the depth wanted", share, "0.7")
    as_snippet, now, rest = lot_as_snippet_now_rest
    read = PER_CENT * share
    error = sd * Z_90

    def wanted(of: Vector) -> Band90:
        grown = behind.band(tuple([g / n if n > 0.0 else 1.0 for g, n in zip(of, as_snippet, strict=True)]))
        spread_low = math.hypot(error, 1.0 - grown.low / grown.mean)
        spread_high = math.hypot(error, grown.high / grown.mean - 1.0)
        middle = read * grown.mean
        return Band90(middle, middle * max(0.0, 1.0 - spread_low), middle * (1.0 + spread_high))

    return Along(
        shown.lot,
        shown.vessel,
        shown.dye,
        shown.minutes,
        shown.now,
        shown.at_end,
        shown.more_min,
        wanted(now),
        None if end is None else wanted(end[0]),
        wanted(rest),
    )


def _share(part: Vector, whole: Vector) -> Vector:
    return tuple(
        [PER_CENT * min(1.0, a / b) if b > 0.0 else PER_CENT for a, b in zip(part, whole, strict=True)]
    )


def _at_rest(behind: Behind, vessel: str, lot: str, dye: str) -> Vector:
    """What the lot would have at rest, with the fibre that is in the bath beside it."""
    held = behind.held
    inside = [one.name for one in behind.state.lots_in(vessel) if one.name in held.fibres]
    pulls = {
        name: times(
            held.unknowns[u.partition_name(dye, u.family_of(held.fibres[name].kind))],
            held.fibres[name].mass_g / G_PER_KG,
        )
        for name in inside
    }
    pool = held.bath(vessel).pool
    colour = total([pool.grams(dye), *(held.fibres[name].taken(dye) for name in inside)])
    all_pull = plus(pool.volume_l, total(list(pulls.values())))
    goal = [c * p / w if w > 0.0 else 0.0 for c, p, w in zip(colour, pulls[lot], all_pull, strict=True)]
    return tuple(map(max, goal, held.fibres[lot].taken(dye)))


def _at_end(behind: Behind, vessel: str, lot: str, dye: str) -> tuple[Vector, float] | None:
    """What the lot will have when the hold that runs is over, and the minutes until then."""
    step = behind.state.running_in(vessel)
    if step is None or step.countdown is None or step.countdown.kind != "hold":
        return None
    left_s = step.countdown.left_s(behind.second)
    if left_s <= 0.0:
        return None
    later = passed(behind.held, Stage(behind.state, behind.starting), behind.second + left_s, vessel)
    return later.fibres[lot].taken(dye), left_s / S_PER_MIN


def _minutes(behind: Behind, vessel: str) -> float:
    step = behind.state.running_in(vessel)
    since_s = None if step is None else step.held_since_s if step.held_since_s is not None else step.begun_s
    return 0.0 if since_s is None else max(0.0, (behind.second - since_s) / S_PER_MIN)
