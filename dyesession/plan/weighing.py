"""How a dose is really measured on the scales there are: weighed, from a stock, or with a larger lot.

Knows nothing of recipes beyond a role. The error of a weighing is `dyeing.scales`; limits and steps of a
stock stand below with their reasons. A dose is never guessed: a kitchen without scales is told so.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.dyeing.scales import COVERAGE, stock_error_share, weighing_sd_g
from dyesession.dyeing.stock import SOLUBLE_G_L
from dyesession.kitchen.model import Scale
from dyesession.plan.model import Weigh
from dyesession.plan.words import and_list, litres, percent, plus_minus, to_step
from dyesession.recipe.model import Role
from dyesession.substances import Substance
from dyesession.units import show_mass

# What a weighing may miss by, as a share of the dose; common practice, no source. A salt is held to 5 % in
# one standard deviation, because the fibre's uptake levels off above about 5 % WOF of alum (derived from
# Saha, thesis, 2019). A dyestuff's colour follows its dose, so the whole ± counts there, against the 20 % its
# lots differ by anyway.
SALT_SD_SHARE = 0.05
DYESTUFF_BAND_SHARE = 0.20
WASH_BAND_SHARE = 0.50  # a wash is not critical: common practice, no source

# A stock is made from at least ten display steps; a salt's from at least four times the dose, so that it is
# worth making. One per cent is the trade's usual strength: 1 mL per gram of fibre gives 1 % WOF. Common
# practice, no source.
STOCK_STEPS = 10.0
SALT_STOCK_DOSES = 4.0
STOCK_G_L = 10.0
STOCK_LARGEST_L = 1.0
NICE_STEPS = (1.0, 2.0, 5.0, 10.0)
# Expanded errors of making up to a jug's mark and of measuring out a dose; common practice, no source.
JUG_ERROR = 0.02
MEASURE_ERROR = 0.03
# A stock stays well short of what crystallises out in a cold kitchen; common practice, no source.
SOLUBLE_SHARE = 0.75
SOLUBLE_FROM_MEMORY_G_L = {"ferrous sulphate": 250.0, "copper sulphate": 300.0}  # from memory, unverified
WATER_G_L = 1000.0

USUAL_STEPS_G = (1.0, 0.1, 0.01)  # scales one can buy or borrow
# Mairet, A Book on Vegetable Dyes, 1916: 15 to 20 min of iron if only to darken; shorter here
LOOK_MIN = "ten minutes"


@dataclass(frozen=True)
class ToWeigh:
    """A dose to be measured: its grams, its portions in grams, and what it is for."""

    mass_g: float
    portions_g: tuple[float, ...]
    role: Role
    substance: Substance | None
    fibre_mass_g: float

    @property
    def smallest_g(self) -> float:
        """The smallest portion, which is the hardest to weigh."""
        return min(self.portions_g, default=self.mass_g)


def weigh(dose: ToWeigh, scales: Sequence[Scale]) -> Weigh:
    """Find the way to measure a dose: a scale, else a stock liquor, a stock solution, or a larger lot."""
    if dose.mass_g <= 0 or dose.role == "water":
        return Weigh("not weighed", None, "nothing to weigh")
    if not scales:
        return _no_scale(dose)
    scale = best_scale(dose.mass_g, scales)
    if sd_g(dose.smallest_g, scale) <= allowed_sd_g(dose):
        return _on_scale(dose, scale)
    if dose.role in ("dyestuff", "tannin"):
        return _stock_liquor(dose, scale)
    stock = _salt_stock(dose, scale)
    if stock is not None:
        return _stock_solution(dose, scale, *stock)
    return _larger_lot(dose, scale)


def allowed_sd_g(dose: ToWeigh) -> float:
    """Largest standard deviation, in grams, with which the smallest portion still counts as weighed."""
    return dose.smallest_g * _allowed_share(dose.role)


def _allowed_share(role: Role) -> float:
    if role in ("dyestuff", "tannin"):
        return DYESTUFF_BAND_SHARE / COVERAGE
    return WASH_BAND_SHARE / COVERAGE if role == "scour" else SALT_SD_SHARE


def best_scale(mass_g: float, scales: Sequence[Scale]) -> Scale:
    """Return the finest scale that bears the dose, or the one that bears most when none does."""
    bear = [scale for scale in scales if scale.capacity_g is None or scale.capacity_g >= mass_g]
    if bear:
        return min(bear, key=lambda scale: sd_g(mass_g, scale))
    return max(scales, key=lambda scale: scale.capacity_g or 0.0)


def sd_g(mass_g: float, scale: Scale) -> float:
    """Standard deviation of one weighing, in goes if the scale does not bear it at once, grams."""
    return weighing_sd_g(mass_g, scale.resolution_g, scale.repeatability_g) * math.sqrt(
        _goes(mass_g, scale)
    )


def _goes(mass_g: float, scale: Scale) -> int:
    return 1 if scale.capacity_g is None else max(1, math.ceil(mass_g / scale.capacity_g))


def _your(scale: Scale) -> str:
    return f"your {scale.resolution_g:g} g scale"


def _no_scale(dose: ToWeigh) -> Weigh:
    fits = [step for step in USUAL_STEPS_G if sd_g(dose.smallest_g, Scale("", step)) <= allowed_sd_g(dose)]
    step = max(fits, default=USUAL_STEPS_G[-1])
    return Weigh(
        "no scale",
        None,
        f"{show_mass(dose.mass_g)}, on a scale that shows {step:g} g: your kitchen lists no scale, so its ± is"
        " not known",
    )


def _on_scale(dose: ToWeigh, scale: Scale) -> Weigh:
    """Weigh it, in portions where the recipe adds it so, in goes where the scale bears no more."""
    own = [sd_g(portion, scale) for portion in dose.portions_g] or [sd_g(dose.mass_g, scale)]
    total = math.hypot(*own)
    shown = to_step(dose.mass_g, scale.resolution_g)
    if len(dose.portions_g) > 1:
        parts = and_list([to_step(portion, scale.resolution_g) for portion in dose.portions_g])
        say = (
            f"weigh {shown} in portions of {parts}, {plus_minus(COVERAGE * own[0])} each on {_your(scale)}"
        )
    elif _goes(dose.mass_g, scale) > 1:
        goes = _goes(dose.mass_g, scale)
        say = f"weigh {shown} in {goes} goes, {plus_minus(COVERAGE * total)} on {_your(scale)}"
    else:
        say = f"weigh {shown}, {plus_minus(COVERAGE * total)} on {_your(scale)}"
    return Weigh("scale", total, say)


def _nice(at_least: float) -> float:
    """Round up to 1, 2 or 5 times a power of ten."""
    power = 10.0 ** math.floor(math.log10(at_least))
    return next(step * power for step in NICE_STEPS if step * power >= at_least * (1 - 1e-9))


def _stock_share(take_g: float, scale: Scale) -> float:
    """Expanded error of a measured share of a stock, as a share of the dose."""
    mass_error = COVERAGE * sd_g(take_g, scale) / take_g
    return stock_error_share(mass_error, JUG_ERROR, MEASURE_ERROR)


def _stock_liquor(dose: ToWeigh, scale: Scale) -> Weigh:
    take_g = _nice(max(STOCK_STEPS * scale.resolution_g, dose.mass_g))
    make_up_l = take_g / STOCK_G_L
    use_l = make_up_l * dose.mass_g / take_g
    error = _stock_share(take_g, scale)
    say = (
        f"{show_mass(dose.mass_g)}; {_your(scale)} could miss that by {_miss(dose, scale)}. Weigh"
        f" {show_mass(take_g)},"
        f" extract it, make the strained liquor up to {litres(make_up_l)} and use {litres(use_l)} of it"
        f" (± {percent(error)}); keep the rest for later"
    )
    return Weigh("stock liquor", dose.mass_g * error / COVERAGE, say, take_g, make_up_l, use_l)


def _salt_stock(dose: ToWeigh, scale: Scale) -> tuple[float, float] | None:
    """Find grams to dissolve and litres to make up to, or None when the substance keeps in no such stock."""
    soluble_g_l = solubility_g_l(dose.substance)
    if soluble_g_l is None:
        return None
    take_g = _nice(max(STOCK_STEPS * scale.resolution_g, SALT_STOCK_DOSES * dose.mass_g))
    make_up_l = min(take_g / STOCK_G_L, STOCK_LARGEST_L)
    return (take_g, make_up_l) if take_g / make_up_l <= SOLUBLE_SHARE * soluble_g_l else None


def solubility_g_l(substance: Substance | None) -> float | None:
    """Grams of a substance that stay dissolved in a litre of cold water; None when no figure is known."""
    if substance is None:
        return None
    figure = substance.solubility
    if figure is None:
        return SOLUBLE_FROM_MEMORY_G_L.get(substance.key, SOLUBLE_G_L.get(substance.key))
    # A share of the mass of the solution taken as grams per litre errs low, which is the safe side here.
    return figure.value if figure.unit == "g/L" else figure.value / 100.0 * WATER_G_L


def _stock_solution(dose: ToWeigh, scale: Scale, take_g: float, make_up_l: float) -> Weigh:
    use_l = make_up_l * dose.mass_g / take_g
    error = _stock_share(take_g, scale)
    start = (
        f"{show_mass(dose.mass_g)}; {_your(scale)} could miss that by {_miss(dose, scale)}."
        f" Dissolve {show_mass(take_g)} to {litres(make_up_l)}"
    )
    return Weigh(
        "stock solution",
        dose.mass_g * error / COVERAGE,
        f"{start} and {_pour(dose, make_up_l / take_g, use_l)} (± {percent(error)})",
        take_g,
        make_up_l,
        use_l,
    )


def _pour(dose: ToWeigh, l_per_g: float, use_l: float) -> str:
    """Say how much of the stock goes in: a modifier by halves, with a look between them."""
    if dose.role != "modifier":
        parts = [litres(portion * l_per_g) for portion in dose.portions_g]
        return f"add {litres(use_l)}" + (f" in portions of {and_list(parts)}" if len(parts) > 1 else "")
    first = dose.portions_g[0] if len(dose.portions_g) > 1 else dose.mass_g / 2
    return (
        f"add {litres(first * l_per_g)} with the fibre lifted, {LOOK_MIN}, look;"
        f" up to {litres((dose.mass_g - first) * l_per_g)} more"
    )


def _larger_lot(dose: ToWeigh, scale: Scale) -> Weigh:
    """Say what the scale would do, and the lot at which the dose could be weighed."""
    own = sd_g(dose.mass_g, scale)
    grow = sd_g(dose.smallest_g, scale) / allowed_sd_g(dose)
    lot_g = math.ceil(dose.fibre_mass_g * grow / 5) * 5
    say = (
        f"weigh {to_step(dose.mass_g, scale.resolution_g)}, {plus_minus(COVERAGE * own)}"
        f" ({percent(COVERAGE * own / dose.mass_g)}) on {_your(scale)}: a lot of {lot_g:g} g of fibre or"
        " a finer scale"
        " would do better"
    )
    return Weigh("larger lot", own, say)


def _miss(dose: ToWeigh, scale: Scale) -> str:
    return plus_minus(COVERAGE * sd_g(dose.smallest_g, scale)).removeprefix("± ")
