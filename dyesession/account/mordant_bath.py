"""A mordant bath: what the fibre has taken of its alum, what stays, and what recharges it for the next lot.

Knows nothing of words. The rule and its source are `dyeing.mordanting`'s; the standing bath's book-keeping is
Beech, The Dyeing of Woollen Fabrics, 1902, p. 84 (read). What drifts with use (acidity, dirt) is not reckoned.
"""

from dataclasses import dataclass

from dyesession.account.estimate import Behind
from dyesession.account.model import Account, Amount, Band90
from dyesession.account.passing import is_alum
from dyesession.account.strengths import pool_of
from dyesession.account.worlds import constant, mean
from dyesession.dyeing.limits import above_zero
from dyesession.dyeing.mordanting import recharge_g

PER_CENT = 100.0
LEAST_G = 1e-6


@dataclass(frozen=True)
class MordantBath:
    """One mordant in one bath: grams put in today, taken by each lot, left; and for a next lot, where one was
    asked for, its dose and what to add. `saved_percent`: of fresh baths for all lots so far and the next.
    """

    bath: str
    mordant: str
    put_in_g: float
    taken: tuple[Amount, ...]
    left: Band90
    next_g: float = 0.0
    wanted_g: float = 0.0
    add: Band90 | None = None
    saved_percent: Band90 | None = None


def mordant_bath(
    account: Account, bath: str, next_g: float = 0.0, dose_percent: float = 0.0
) -> MordantBath | None:
    """What a mordant bath has given and holds, and with `next_g` of fibre at `dose_percent` what recharges it.

    None where no alum is in that bath. The bath is found in a vessel or under its label. Raises `OutOfRange`
    for a dose of nothing on some fibre.
    """
    behind = account.behind
    if not isinstance(behind, Behind):
        return None
    pool = pool_of(behind.held, bath)
    alum = next(
        (
            one
            for one in pool.held_g
            if is_alum(behind.state, behind.held, one) and mean(pool.grams(one)) > LEAST_G
        ),
        "",
    )
    if not alum:
        return None
    taken = tuple(
        Amount(name, behind.band(fibre.taken(alum)))
        for name, fibre in behind.held.fibres.items()
        if mean(fibre.taken(alum)) > LEAST_G
    )
    put_in = mean(behind.held.came_in_g(alum), behind.weights)
    found = MordantBath(bath, alum, put_in, taken, behind.band(pool.grams(alum)))
    if next_g <= 0.0:
        return found
    wanted = next_g * above_zero("dose of alum", dose_percent, "12 %") / PER_CENT
    add = tuple([recharge_g(wanted, max(0.0, left)) for left in pool.grams(alum)])
    fresh = put_in + wanted
    saved = (
        tuple([PER_CENT * (1.0 - (put_in + more) / fresh) for more in add]) if fresh > 0.0 else constant(0.0)
    )
    return MordantBath(
        bath, alum, put_in, taken, found.left, next_g, wanted, behind.band(add), behind.band(saved)
    )
