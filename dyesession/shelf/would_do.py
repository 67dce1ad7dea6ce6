"""What a kept bath would still do: fibre at a share of the first lot's depth; what recharges a mordant bath.

Pure. Depth is colour over fibre, at rest with what is left, by the partition the first dyeing shows:
left K/(K w + V), the same algebra as one dip (Vickerstaff's linear partition, `dyeing.exhaustion`). Bands are
the ends taken together, never too narrow.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dyesession.account import Account, Band90
from dyesession.account.model import FibreEstimate
from dyesession.colour.depth import at_ratio
from dyesession.colour.screen import screen_of
from dyesession.colour.typed import read_colour
from dyesession.dyeing.exhaustion import partition_from_share
from dyesession.dyeing.mordanting import recharge_g
from dyesession.errors import UserError
from dyesession.session.brought import ingredient_of
from dyesession.shelf.model import Inside, Recharge, WouldDo
from dyesession.shelf.tracing import Traced

HALF = 0.5
LEAST_FIBRE_G = 10.0  # less is no skein; our own choice, no source
STEP_G = 10.0
G_PER_KG = 1000.0
HUNDRED = 100.0
MOST_SHARE = 0.999  # all of it taken has no partition
"""Rounding of fibre and of depth: our own choice, no source."""


def would_do(
    keeper: Traced, account: Account, lots: Sequence[str], dye: Sequence[Inside], volume_l: Band90 | None
) -> WouldDo | None:
    """What is left would do; None where no lot was dyed in it, or nothing is known of what is left."""
    main = max((one for one in dye if one.grams is not None), key=_mean, default=None)
    fibres = [one for one in account.fibres if one.lot in lots and not one.snippet]
    if main is None or main.grams is None or main.grams.mean <= 0 or volume_l is None or volume_l.mean <= 0:
        return None
    if not lots:
        return _untouched(keeper, main.ingredient, main.grams)
    taken, mass_g = _taken(fibres, main.ingredient), sum(one.mass_g for one in fibres)
    if taken is None or mass_g <= 0 or taken.mean <= 0:
        return None
    left, litres = main.grams, volume_l.mean
    ratio = litres * G_PER_KG / mass_g
    partition = _partition(taken.mean, left.mean, ratio)
    first_g_kg = taken.mean * G_PER_KG / mass_g
    fibre_g = _fibre_g(left.mean, partition, litres, HALF * first_g_kg)
    fibre_g = fibre_g if fibre_g >= LEAST_FIBRE_G else mass_g
    kg = fibre_g / G_PER_KG
    low = _depth(left.low, _partition(taken.low, left.high, ratio), litres, kg) / first_g_kg
    high = _depth(left.high, _partition(taken.high, left.low, ratio), litres, kg) / first_g_kg
    depth = _depth(left.mean, partition, litres, kg) / first_g_kg
    shade = _shade(keeper, lots, depth)
    return WouldDo(fibre_g, _fibre_words(keeper, fibres), depth, low, high, _first_words(fibres), *shade)


def _untouched(keeper: Traced, ingredient: str, left: Band90) -> WouldDo | None:
    """A liquor nothing was dyed in: so much fibre at the dose the day had planned."""
    dose = next((one for one in keeper.last.doses if one.ingredient == ingredient), None)
    kinds = [one.kind for one in keeper.last.lots if not one.snippet]
    if dose is None or dose.percent_wof is None or dose.percent_wof.aim <= 0 or not kinds:
        return None
    fibre_g = round(HUNDRED * left.mean / dose.percent_wof.aim / STEP_G) * STEP_G
    if fibre_g < LEAST_FIBRE_G:
        return None
    low, high = left.low / left.mean, left.high / left.mean
    return WouldDo(fibre_g, kinds[0], 1.0, low, high, f"the {dose.percent_wof.aim:g} % planned")


def _mean(one: Inside) -> float:
    return one.grams.mean if one.grams is not None else 0.0


def _taken(fibres: Sequence[FibreEstimate], ingredient: str) -> Band90 | None:
    bands = [taken.grams for one in fibres for taken in one.taken if ingredient_of(taken.lot) == ingredient]
    if not bands:
        return None
    return Band90(sum(b.mean for b in bands), sum(b.low for b in bands), sum(b.high for b in bands))


def _partition(taken_g: float, left_g: float, ratio: float) -> float:
    share = taken_g / (taken_g + left_g) if taken_g + left_g > 0 else 0.0
    return partition_from_share(min(share, MOST_SHARE), ratio)


def _depth(left_g: float, partition: float, litres: float, kg: float) -> float:
    """Grams of colour per kilogram of fibre, at rest."""
    return left_g * partition / (partition * kg + litres)


def _fibre_g(left_g: float, partition: float, litres: float, wanted_g_kg: float) -> float:
    """Fibre that comes to so much colour, to the nearest ten grams; below nought where none would."""
    if partition <= 0:
        return 0.0
    grams = G_PER_KG * (left_g / wanted_g_kg - litres / partition)
    return round(grams / STEP_G) * STEP_G


def _fibre_words(keeper: Traced, fibres: Sequence[FibreEstimate]) -> str:
    kind = fibres[0].kind
    mordants = [one.substance for one in keeper.last.doses if one.role == "mordant"]
    told = [lot.mordanted for lot in keeper.last.lots if lot.mordanted]
    alum = any("alum" in name for name in (*mordants, *told))
    return f"alumed {kind}" if alum else f"{kind} mordanted as the first" if mordants or told else kind


def _first_words(fibres: Sequence[FibreEstimate]) -> str:
    return f"the {fibres[0].lot}" if len(fibres) == 1 else "the first lots"


def _shade(keeper: Traced, lots: Sequence[str], depth: float) -> tuple[str, str, float | None]:
    """The first lot's dry colour; where the undyed fibre was read too, what the depth would come to."""
    lot = next((one for one in lots if one in keeper.dry), None)
    if lot is None:
        return "", "", None
    undyed = keeper.undyed.get(lot)
    if undyed is None:
        return keeper.dry[lot], "", None
    try:
        shade = at_ratio(read_colour(undyed), read_colour(keeper.dry[lot]), depth)
        return keeper.dry[lot], screen_of(shade.lab).hex, shade.plus_minus
    except UserError:
        return keeper.dry[lot], "", None  # colours told in words, or beyond what depth can be told from


@dataclass(frozen=True)
class Mordanting:
    """What was mordanted in a bath first: grams of fibre, and grams of each ingredient that went in for it."""

    fibre_g: float
    doses_g: Mapping[str, float]


def recharges(first: Sequence[Mordanting], inside: Sequence[Inside]) -> tuple[Recharge, ...]:
    """What a mordant bath wants for as much fibre again; nothing where no fibre was mordanted in it."""
    fibre_g = sum(one.fibre_g for one in first)
    if fibre_g <= 0 or any(one.role == "dyestuff" and _mean(one) > 0 for one in inside):
        return ()
    wanted_g = {each: sum(one.doses_g.get(each, 0.0) for one in first) for one in first for each in one.doses_g}
    found = [_recharge(one, fibre_g, wanted_g.get(one.ingredient, 0.0)) for one in inside if one.role in RECHARGED]
    return tuple(one for one in found if one is not None)


RECHARGED = ("mordant", "assist")


def _recharge(one: Inside, fibre_g: float, wanted_g: float) -> Recharge | None:
    if one.grams is None or not wanted_g:
        return None
    left = one.grams
    mean, low, high = (recharge_g(wanted_g, max(0.0, g)) for g in (left.mean, left.high, left.low))
    return Recharge(one.ingredient, one.substance, fibre_g, wanted_g, left, Band90(mean, low, high))
