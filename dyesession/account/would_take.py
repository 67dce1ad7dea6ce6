"""What fibre would take from a bath as it stands, and how much fibre the bath would still do at a depth.

Knows nothing of words. Each world's own partition: fibre at rest takes K m/(V + K m) of the bath's colour, the
algebra of one dip (`dyeing.exhaustion`). It holds for fibre mordanted as the guesses are for; a used bath is
another mixture than a fresh one (Shams-Nateri 2011 for madder, abstract read), so its hue may drift.
"""

from dataclasses import dataclass

from dyesession.account import unknowns as u
from dyesession.account.estimate import Behind
from dyesession.account.holdings import LEAST_FIBRE_G, Bath, Holdings
from dyesession.account.model import Account, Band90
from dyesession.account.strengths import pool_of
from dyesession.account.worlds import Vector, mean
from dyesession.dyeing.fibres import fibre_family
from dyesession.dyeing.limits import above_zero

G_PER_KG, PER_CENT = 1000.0, 100.0
LEAST_G, LEAST_L = 1e-6, 1e-9


@dataclass(frozen=True)
class WouldTake:
    """What so much fibre would take up at rest: grams, per cent of its weight, and its depth over that of the
    lot dyed in this bath first (None where none was).
    """

    bath: str
    lot: str
    kind: str
    mass_g: float
    grams: Band90
    percent_wof: Band90
    left: Band90
    over_first: Band90 | None
    first: str
    uses: int


@dataclass(frozen=True)
class WouldDo:
    """Grams of fibre that would come to a depth (colour in per cent of its weight), and that bath's uses."""

    bath: str
    lot: str
    kind: str
    percent_wof: float
    fibre_g: Band90
    uses: int


def would_take(account: Account, bath: str, kind: str, mass_g: float, lot: str = "") -> WouldTake | None:
    """What `mass_g` of fibre would take from the bath in a vessel or under a label; None without colour in it.

    `lot` is the dyestuff, that of most colour when not named. Raises `OutOfRange` for a kind of fibre nobody
    knows, or no mass.
    """
    above_zero("fibre", mass_g, "80 g")
    fibre_family(kind)
    found = _colour_in(account, bath, lot)
    if found is None:
        return None
    behind, there, lot = found
    pull = _partition(behind, lot, kind)
    colour, litres = there.pool.grams(lot), there.pool.volume_l
    taken = tuple(
        [
            g * k * mass_g / (k * mass_g + v * G_PER_KG) if v > LEAST_L else 0.0
            for g, v, k in zip(colour, litres, pull, strict=True)
        ]
    )
    percent = tuple([PER_CENT * g / mass_g for g in taken])
    first, first_percent = _first(behind.held, lot)
    over = None
    if first:
        over = behind.band(
            tuple([a / b if b > LEAST_G else 0.0 for a, b in zip(percent, first_percent, strict=True)])
        )
    return WouldTake(
        bath,
        lot,
        kind,
        mass_g,
        behind.band(taken),
        behind.band(percent),
        behind.band(tuple([g - t for g, t in zip(colour, taken, strict=True)])),
        over,
        first,
        there.uses,
    )


def would_do(account: Account, bath: str, kind: str, percent_wof: float, lot: str = "") -> WouldDo | None:
    """How much fibre the bath would still do at a depth in per cent of the fibre's weight; None without colour.

    At rest m of fibre comes to D K/(K m + V), so m = D/depth - V/K in each world, and none where that is below
    nought. Raises `OutOfRange` for an unknown kind of fibre or no depth.
    """
    above_zero("depth", percent_wof, "10 % of the fibre's weight")
    fibre_family(kind)
    found = _colour_in(account, bath, lot)
    if found is None:
        return None
    behind, there, lot = found
    depth = percent_wof / PER_CENT
    pull = _partition(behind, lot, kind)
    rows = zip(there.pool.grams(lot), there.pool.volume_l, pull, strict=True)
    fibre = tuple([max(0.0, g / depth - v * G_PER_KG / k) for g, v, k in rows])
    return WouldDo(bath, lot, kind, percent_wof, behind.band(fibre), there.uses)


def _colour_in(account: Account, name: str, lot: str) -> tuple[Behind, Bath, str] | None:
    behind = account.behind
    if not isinstance(behind, Behind):
        return None
    held = behind.held
    bath = held.kept[name] if name in held.kept and name not in held.baths else held.bath(name)
    dye = {one: mean(g) for one, g in pool_of(held, name).held_g.items() if one in held.stores}
    lot = lot or max(dye, key=dye.__getitem__, default="")
    return (behind, bath, lot) if dye.get(lot, 0.0) > LEAST_G else None


def _partition(behind: Behind, lot: str, kind: str) -> Vector:
    """The partition of a colour on a kind of fibre, known today or not, in L/kg."""
    poured = behind.held.of_other_days.get(lot)
    weighed = next((one.substance for one in behind.state.dyestuffs if one.name == lot), "")
    substance = poured.substance if poured is not None else weighed
    starting = u.by_substance(behind.starting, {lot: substance}, (kind,))
    known = u.with_all(behind.held.unknowns, u.priors_of((kind,), {lot: substance}), starting)
    return known[u.partition_name(lot, u.family_of(kind))]


def _first(held: Holdings, lot: str) -> tuple[str, Vector]:
    """The lot of fibre that this colour was dyed on first, and its depth in per cent."""
    for name, fibre in held.fibres.items():
        if not fibre.snippet and fibre.mass_g > LEAST_FIBRE_G and mean(fibre.taken(lot)) > LEAST_G:
            return name, tuple([PER_CENT * g / fibre.mass_g for g in fibre.taken(lot)])
    return "", ()
