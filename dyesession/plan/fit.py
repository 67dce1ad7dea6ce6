"""Whether a bath fits the pot there is, and the sentence that says so.

Knows one bath and one pot. A pot is filled to two thirds; below 1:15 fibre cannot be moved freely; an
extraction wants half its water at least: all common practice, no source.
"""

from dataclasses import dataclass

from dyesession.kitchen.model import Pot
from dyesession.plan.model import PlannedBath, PlannedStep
from dyesession.plan.pots import FILL_SHARE, fill_l
from dyesession.units import show_figure

GRAMS_PER_KG = 1000.0
LEAST_RATIO = 15.0  # litres to the kilogram that fibre can still be moved in: common practice, no source
LEAST_EXTRACT_SHARE = 0.5  # of the water an extraction wants: common practice, no source
ROUNDING = 1e-9  # two reckonings of one volume may differ by rounding alone


@dataclass(frozen=True)
class Wish:
    """What a bath would hold if every pot were large enough; `fibre` tells that the ratio is one of fibre."""

    litres: float
    fibre: bool
    least_ratio: float


@dataclass(frozen=True)
class Filled:
    """A bath as it will be filled: its wish, its litres, and the fibre of the day in grams.

    `wider_l` is what an extraction would hold if the bath its liquor goes to were larger; None when that does
    not limit it.
    """

    wish: Wish
    litres: float
    wider_l: float | None
    fibre_g: float

    @property
    def ratio(self) -> float:
        """Litres to the kilogram of fibre."""
        return self.litres * GRAMS_PER_KG / self.fibre_g


def planned_bath(step: PlannedStep, filled: Filled, pot: Pot | None, one_pot: bool) -> PlannedBath:
    """Describe a bath in its pot; with no pot known nothing is said of fitting."""
    fits = None if pot is None else _fits(filled, pot)
    return PlannedBath(
        step=step.name,
        vessel=step.vessel or "",
        pot="" if pot is None else pot.name,
        capacity_l=None if pot is None else pot.volume_l,
        water_l=filled.litres,
        ratio_l_per_kg=filled.ratio,
        fits=fits,
        say=_say(filled, pot, one_pot, fits is not False),
    )


def _fits(filled: Filled, pot: Pot) -> bool:
    if filled.wish.fibre:
        return filled.ratio >= filled.wish.least_ratio - ROUNDING
    return fill_l(pot) >= LEAST_EXTRACT_SHARE * filled.wish.litres


def _say(filled: Filled, pot: Pot | None, one_pot: bool, fits: bool) -> str:
    """Say in one sentence why a bath holds less than was wanted, if it does."""
    if pot is not None and fill_l(pot) < filled.wish.litres - ROUNDING:
        yours = "your pot" if one_pot else f"your {pot.name}"
        return (
            _short_fibre(filled, pot, yours, fits)
            if filled.wish.fibre
            else _short(filled, pot, yours, fits)
        )
    if filled.wider_l is not None:
        less = f"{_l(filled.litres)} each time instead of {_l(filled.wider_l)}"
        return f"{less}: that fills the bath the liquor is for"
    return ""


def _short(filled: Filled, pot: Pot, yours: str, fits: bool) -> str:
    """Say how an extraction is short of water."""
    wanted = filled.wish.litres
    start = f"this extraction wants {_l(wanted)}; two thirds of {yours} is {_l(fill_l(pot))}"
    if fits:
        return f"{start}: use {_l(filled.litres)}, and extract once more if colour is left"
    return f"{start}, too little: extract in two goes, or in a pot of {_l(wanted / FILL_SHARE)}"


def _short_fibre(filled: Filled, pot: Pot, yours: str, fits: bool) -> str:
    """Say how a bath with fibre in it is short of water, and the ratio or the pot that would do."""
    room, wish = fill_l(pot), filled.wish
    wanted = show_figure(wish.litres * GRAMS_PER_KG / filled.fibre_g)
    start = f"1:{wanted} wants {_l(wish.litres)}; two thirds of {yours} is {_l(room)}"
    if fits:
        return f"{start}: use 1:{int(filled.ratio + ROUNDING)}"
    least_l = wish.least_ratio * filled.fibre_g / GRAMS_PER_KG
    most_g = int(room * GRAMS_PER_KG / wish.least_ratio)
    return (
        f"{start}, only 1:{int(filled.ratio)}, in which fibre cannot float: take a pot of at least"
        f" {_l(least_l / FILL_SHARE)}, or dye no more than {most_g} g at a time"
    )


def _l(volume_l: float) -> str:
    return f"{volume_l:.1f} L"
