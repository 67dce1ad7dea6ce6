"""What would mend a colour, in the trade's order, with grams and money; and when it is good enough as it is.

Knows nothing of baths, recipes or safety: a step names its substances, and whoever shows it looks up what
they call for. Order and doses: common practice, no source, but for iron: Mairet, A Book on Vegetable Dyes,
1916 (gutenberg.org 50079), which puts it last, little and short because it hardens wool; 1 to 2 % is our own
choice.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from dyesession.colour.depth import MOST_RATIO, NOT_FITTED, Exponent
from dyesession.colour.difference import NOTHING_TO_TELL, DepthRatio, Difference, depth_phrase
from dyesession.colour.overdye import LEAST_AMOUNT, OverdyePlan
from dyesession.colour.targets import VERY_CLOSE
from dyesession.colour.trouble import OutOfRange

GOOD_ENOUGH, WASH, MODIFY, DIP, OVERDYE, NEXT_TIME = (
    "good enough", "wash again", "try a snippet", "a further dip", "an overdye", "next time",
)  # fmt: skip
_PERCENT = 100.0
_PRICED_PER_G = 100.0
MUCH_BETTER = 0.75  # an overdye must be expected to leave less than this share of the miss: our own choice


@dataclass(frozen=True)
class Dose:
    """A dyestuff, and how much of it the sample had: per cent of the weight of fibre."""

    dyestuff: str
    percent: float


@dataclass(frozen=True)
class Lot:
    """What is to be mended: fibre in grams, its dye, perhaps a second one, prices per 100 g by name."""

    fibre_g: float
    dye: Dose
    second: Dose | None = None
    price_per_100_g: Mapping[str, float] = field(default_factory=dict)
    exponent: Exponent = NOT_FITTED


@dataclass(frozen=True)
class Cost:
    """Grams of something, low to high, and the money for them where a price is known."""

    substance: str
    mass_g: float
    low_g: float
    high_g: float
    money: float | None


@dataclass(frozen=True)
class Advice:
    """One thing to do (one of this file's words), a sentence, and what it would cost for the whole lot."""

    act: str
    says: str
    costs: tuple[Cost, ...] = ()


@dataclass(frozen=True)
class _Modifier:
    substance: str
    low_percent: float
    high_percent: float
    says: str


# Doses in per cent of the weight of fibre. Acid and alkali: common practice, no source. Iron: see the top.
_ACID = _Modifier("citric acid", 1.0, 2.0, "An acid dip turns some dyes: try a snippet in weak citric acid.")
_ALKALI = _Modifier(
    "soda ash", 0.5, 1.0, "An alkaline dip turns some dyes: try a snippet in weak, cool soda ash."
)
_IRON = _Modifier(
    "ferrous sulphate",
    1.0,
    2.0,
    "A trace of iron saddens: try a snippet for a few minutes, in a pot kept for iron, out of "
    "children's reach.",
)
MODIFIERS = (_ACID.substance, _ALKALI.substance, _IRON.substance)
"""What a snippet may be tried with, so that whoever knows prices can say them."""
_TURNED = frozenset(("redder", "greener", "yellower", "bluer"))
_WANTS_SADDENING = frozenset(("lighter", "brighter"))


def mend(found: Difference, lot: Lot, plan: OverdyePlan | None = None) -> tuple[Advice, ...]:
    """What to do about a difference, the least first. `plan` is an overdye with the lot's second dye.

    Raises `OutOfRange` for a lot without fibre or dose.
    """
    _check(lot)
    if good_enough(found):
        words = found.verdict.word if found.verdict.word == found.words else f"{found.verdict.word}, {found.words}"
        return (Advice(GOOD_ENOUGH, f"Good enough: {words}.", ()),)
    steps = [_wash(), *_modify(found, lot), *_dip(found.depth, lot), *_overdye(found, plan, lot)]
    return (*steps, *_next_time(found.depth, lot))


def good_enough(found: Difference) -> bool:
    """Inside the target, too small for the readings to tell, or seen only side by side."""
    return found.verdict.inside or found.words == NOTHING_TO_TELL or found.verdict.de00 < VERY_CLOSE


def _check(lot: Lot) -> None:
    if not (lot.fibre_g > 0.0 and lot.dye.percent > 0.0):
        raise OutOfRange(
            f"The lot is {lot.fibre_g:g} g dyed with {lot.dye.percent:g} %, but both must be more than 0, "
            "for example 240 g with 50 %."
        )


def _wash() -> Advice:
    return Advice(
        WASH,
        "Suspect the rinse first: soap, hard water or loose colour left in the fibre; wash once more in soft "
        "water, dry it and read it again; it costs water only.",
    )


def _modify(found: Difference, lot: Lot) -> tuple[Advice, ...]:
    left = set(found.left)
    wanted = [_ACID, _ALKALI] if left & _TURNED else []
    weaker = found.depth is not None and found.depth.ratio < 1.0 and bool(depth_phrase(found.depth))
    wanted += [_IRON] if left & _WANTS_SADDENING or (weaker and "duller" not in left) else []
    return tuple(Advice(MODIFY, one.says, (_modifier_cost(one, lot),)) for one in wanted)


def _modifier_cost(one: _Modifier, lot: Lot) -> Cost:
    low, high = (lot.fibre_g * percent / _PERCENT for percent in (one.low_percent, one.high_percent))
    return _cost(one.substance, (low + high) / 2.0, low, high, lot)


def _dip(depth: DepthRatio | None, lot: Lot) -> tuple[Advice, ...]:
    if depth is None or depth.ratio >= 1.0 or not depth_phrase(depth):
        return ()
    middle, least, most = _dose_steps(depth, lot.exponent)
    dose_g = lot.fibre_g * lot.dye.percent / _PERCENT
    cost = _cost(
        lot.dye.dyestuff, dose_g * (middle - 1.0), dose_g * (least - 1.0), dose_g * (most - 1.0), lot
    )
    return (Advice(DIP, "A further dip in the same dye would bring the depth that is missing.", (cost,)),)


def _overdye(found: Difference, plan: OverdyePlan | None, lot: Lot) -> tuple[Advice, ...]:
    if plan is None or lot.second is None:
        return ()
    if not plan.reachable or plan.amount < LEAST_AMOUNT:
        return (Advice(OVERDYE, plan.says),)
    if plan.expected > MUCH_BETTER * found.verdict.de00:
        return (Advice(OVERDYE, "An overdye is not expected to come much nearer than the skein is now."),)
    full_g = lot.fibre_g * lot.second.percent / _PERCENT
    cost = _cost(
        lot.second.dyestuff, full_g * plan.amount, full_g * plan.amount_low, full_g * plan.amount_high, lot
    )
    return (
        Advice(
            OVERDYE, f"An overdye with {lot.second.dyestuff} would come nearer. {plan.notes[-1]}", (cost,)
        ),
    )


def _next_time(depth: DepthRatio | None, lot: Lot) -> tuple[Advice, ...]:
    """A skein too deep cannot be made paler; the next one can."""
    if depth is None or depth.ratio <= 1.0 or not depth_phrase(depth):
        return ()
    middle, least, most = _dose_steps(depth, lot.exponent)
    dose_g = lot.fibre_g * lot.dye.percent / _PERCENT
    cost = _cost(lot.dye.dyestuff, dose_g * middle, dose_g * least, dose_g * most, lot)
    return (
        Advice(
            NEXT_TIME,
            "Colour is not taken out again without harm: keep this one, and dose the next lower.",
            (cost,),
        ),
    )


def _dose_steps(depth: DepthRatio, exponent: Exponent) -> tuple[float, float, float]:
    """By how much to multiply the dose: the middle, and the least and most that the ± allow."""

    def step(ratio: float, power: float) -> float:
        return float(min(max(1.0 / ratio, 1.0 / MOST_RATIO), MOST_RATIO) ** (1.0 / power))

    powers = (exponent.value - exponent.plus_minus, exponent.value + exponent.plus_minus)
    if not exponent.fitted:
        powers = (powers[0], exponent.value)
    around = [step(ratio, power) for ratio in (depth.low, depth.high) for power in powers]
    return step(depth.ratio, exponent.value), min(around), max(around)


def _cost(substance: str, mass_g: float, low_g: float, high_g: float, lot: Lot) -> Cost:
    price = lot.price_per_100_g.get(substance)
    money = None if price is None else mass_g * price / _PRICED_PER_G
    return Cost(substance, max(0.0, mass_g), max(0.0, low_g), max(0.0, high_g), money)
