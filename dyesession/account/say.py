"""The account in words: plain pieces of text for screens and for printed lines, each with where it comes
from.

Knows nothing of how anything was reckoned or drawn. One rounded range and never a second decimal; a band
too wide is said to be a guess.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from dyesession.account.estimate import Meant, meant
from dyesession.account.model import (
    NOTHING,
    Account,
    Amount,
    Band90,
    BathEstimate,
    FibreEstimate,
    How,
)
from dyesession.dyeing.evaporation import latent_heat_bound_kg_h
from dyesession.plan.model import Plan, PlannedStep
from dyesession.session.state import OUT_WET

Kind = Literal["bath", "depth", "again", "volume", "fibre", "drift", "water"]

SKEWED = 2.0  # one side of the band this many times the other: said as low to high; our own choice, no source
FINEST = 0.1  # never a second decimal
KILOWATT_W = 1000.0
CLOSE_SHARE = 0.05  # within this share of the planned water is "nearly" it; our own choice, no source
MINUTES_STEP = 5.0  # minutes are said to the nearest five; our own choice, no source


@dataclass(frozen=True)
class Said:
    """One sentence without its full stop, what it is about, and one word for where it comes from ("" for
    none).
    """

    text: str
    how: How | Literal[""] = ""
    about: Kind = "bath"


def line(said: Said) -> str:
    """A sentence as it is printed: its word, and a full stop."""
    word = "a guess" if said.how == "guess" else said.how
    return f"{said.text}, {word}." if word else f"{said.text}."


def step_for(half_width: float) -> float:
    """What a band is rounded to: a tenth below 2, whole numbers below 50, tens below 500, and so on."""
    if half_width < 2.0:
        return FINEST
    return math.pow(10.0, max(0.0, math.floor(math.log10(half_width / 5.0))))


def rounded_band(band: Band90, unit: str) -> str:
    """A band in words: "71 ± 13 g", "9 to 45 g" when skewed, "up to 4 g", "less than 0.1 g", or the number
    alone.
    """
    if band.half_width == 0.0:
        return f"{plain(band.mean)} {unit}"
    if band.high < FINEST / 2.0:
        return f"less than {FINEST:g} {unit}"
    step = step_for(band.half_width)
    if _even(band):
        return f"{_number(band.mean, step)} ± {_number(max(band.half_width, step), step)} {unit}"
    low, high = _number(max(band.low, 0.0), step), _number(band.high, step)
    return f"up to {high} {unit}" if float(low) == 0.0 else f"{low} to {high} {unit}"


def _even(band: Band90) -> bool:
    """Whether mean ± half-width tells the band honestly: both sides alike and nothing below nought."""
    down, up = band.mean - band.low, band.high - band.mean
    return max(down, up) <= SKEWED * min(down, up) and band.mean >= band.half_width


def _number(value: float, step: float) -> str:
    """A number to the nearest step, with a decimal where the step has one."""
    return f"{round(value / step) * step:.{1 if step < 1.0 else 0}f}"


def plain(value: float) -> str:
    """A number told rather than reckoned: with a decimal only where it has one."""
    shown = _number(value, FINEST)
    return shown.removesuffix(".0")


def sentences(account: Account, plan: Plan, vessel: str | None = None) -> tuple[Said, ...]:
    """What to say of a bath, the most telling first; of the bath that holds most colour when none is named.

    Nothing where there is no bath. The first sentence stands alone; the others may be left out for room.
    """
    bath = account.bath(vessel) if vessel is not None else main_bath(account, plan)
    if bath is None:
        return ()
    now = meant(account, plan)
    said = [_strength(account, bath), _depth(now, bath), _again(account, now, bath), _fibre(account, bath)]
    said += [_volume(bath), _drift(now, bath), _water(account, now, bath)]
    return tuple(one for one in said if one is not None)


def main_bath(account: Account, plan: Plan) -> BathEstimate | None:
    """The bath a dyer asks about first: where fibre is dyed, then where dyestuff is extracted, then kept
    ones.
    """
    now = meant(account, plan)
    return max(
        (one for one in account.baths if one.dye),
        key=lambda one: (_rank(now, one), math.fsum(a.grams.mean for a in one.dye)),
        default=None,
    )


def _rank(now: Meant, bath: BathEstimate) -> int:
    stages = {step.stage for step in now.steps if step.vessel == bath.vessel}
    if bath.kept:
        return 1
    return 3 if "dye" in stages else 2 if "extract" in stages else 0


def _named(bath: BathEstimate) -> str:
    return f"The kept {bath.vessel}" if bath.kept else f"The {bath.vessel}"


def _strength(account: Account, bath: BathEstimate) -> Said:
    if not bath.dye:
        return _dissolved(bath)
    colours = " and ".join(_colour(account, one) for one in bath.dye)
    if bath.dyestuff_inside and not _fibre_inside(account, bath):
        return Said(f"{_named(bath)} has drawn the colour of {colours} so far", bath.how)
    return Said(f"{_named(bath)} holds the colour of {colours}", bath.how)


def _colour(account: Account, amount: Amount) -> str:
    dyestuff = account.dyestuff(amount.lot)
    all_of_it = f" of your {_mass(dyestuff.total_g)} g" if dyestuff is not None else ""
    return f"{rounded_band(amount.grams, 'g')}{all_of_it} {amount.lot}"


def _mass(value_g: float) -> str:
    """A mass as weighed: whole grams from 100 on, else with its tenths."""
    return _number(value_g, 1.0) if value_g >= 100.0 else plain(value_g)


def _dissolved(bath: BathEstimate) -> Said:
    if not bath.contents:
        return Said(f"{_named(bath)} holds {rounded_band(bath.volume_l, 'L')} of water", bath.volume_how)
    things = " and ".join(f"{rounded_band(one.grams, 'g')} {one.lot}" for one in bath.contents)
    return Said(f"{_named(bath)} holds {things}", bath.how)


def _main_dye(now: Meant, bath: BathEstimate) -> Amount | None:
    """The colour a bath for dyeing or extracting holds most of."""
    if not bath.dye or _rank(now, bath) == 0:
        return None
    return max(bath.dye, key=lambda one: one.grams.mean)


def _depth(now: Meant, bath: BathEstimate) -> Said | None:
    main = _main_dye(now, bath)
    dose = next((one for one in now.doses if main is not None and one.ingredient == main.lot), None)
    if main is None or dose is None or dose.percent_wof is None or now.fibre_g <= 0:
        return None
    by = 100.0 / now.fibre_g
    share = Band90(main.grams.mean * by, main.grams.low * by, main.grams.high * by)
    return Said(f"That is {rounded_band(share, '%')} WOF of the {dose.percent_wof.aim:g} % planned", "", "depth")


def _again(account: Account, now: Meant, bath: BathEstimate) -> Said | None:
    """What extracting again would bring; nothing to say before the first strain or when nothing is left."""
    main = None if bath.uses else _main_dye(now, bath)
    dyestuff = account.dyestuff(main.lot) if main is not None else None
    if dyestuff is None or not dyestuff.pulls or dyestuff.next_pull == NOTHING:
        return None
    minutes = dyestuff.next_min
    time = f", about {_number(minutes, MINUTES_STEP)} min" if minutes is not None else ""
    text = f"Extracting again: {rounded_band(dyestuff.next_pull, 'g')} more{time}"
    return Said(text, "guess" if dyestuff.next_pull.is_guess else "", "again")


def _fibre(account: Account, bath: BathEstimate) -> Said | None:
    """What fibre in this bath has taken up of its main colour."""
    inside = [one for one in account.fibres if one.place == bath.vessel and not one.snippet and one.taken]
    if not inside or bath.kept:
        return None
    says = "; ".join(_taken(one) for one in inside)
    guess = any(taken.grams.is_guess for one in inside for taken in one.taken)
    return Said(says[0].upper() + says[1:], "guess" if guess else "modelled", "fibre")


def _taken(fibre: FibreEstimate) -> str:
    main = max(fibre.taken, key=lambda one: one.grams.mean)
    return f"the {fibre.lot} has taken up {rounded_band(main.percent_wof, '%')} WOF of {main.lot}"


def _volume(bath: BathEstimate) -> Said | None:
    if bath.volume_l.mean <= 0.0 or not bath.dye:
        return None
    strength = f", {rounded_band(bath.strength_g_l, 'g/L')}" if bath.strength_g_l.mean > 0.0 else ""
    return Said(f"It stands at {rounded_band(bath.volume_l, 'L')}{strength}", bath.volume_how, "volume")


def _drift(now: Meant, bath: BathEstimate) -> Said | None:
    if not bath.hue_may_drift or not _rank(now, bath):
        return None
    times = "once" if bath.uses == 1 else f"{bath.uses} times"
    return Said(f"It has been used {times}: its hue may drift", "", "drift")


def _water(account: Account, now: Meant, bath: BathEstimate) -> Said | None:
    """Whether there is water enough, and what one more extraction would mean for it."""
    step = next((one for one in now.steps if one.stage == "dye" and one.vessel == bath.vessel), None)
    if step is None or step.water_l is None or bath.kept or bath.uses or _fibre_inside(account, bath):
        return None
    wet = [one for one in account.fibres if one.place == OUT_WET and not one.snippet]
    wet_l = _together([one.liquor_l for one in wet])
    have = f"You have {rounded_band(bath.volume_l, 'L')}"
    shown = wet_l.mean >= FINEST / 2.0
    brings = f", and the wet {_kinds(wet)} brings {rounded_band(wet_l, 'L')}" if shown else ""
    against = _against(bath.volume_l.mean + wet_l.mean, step)
    return Said(f"{have}{brings}{against}{_more_water(account, bath, wet_l.mean, step)}", "", "water")


def _together(bands: Sequence[Band90]) -> Band90:
    """Bands of one unknown (how wet the same hands leave fibre) added end to end: never too narrow."""
    return Band90(
        math.fsum(one.mean for one in bands),
        math.fsum(one.low for one in bands),
        math.fsum(one.high for one in bands),
    )


def _fibre_inside(account: Account, bath: BathEstimate) -> bool:
    return any(one.place == bath.vessel and not one.snippet for one in account.fibres)


def _kinds(fibres: Sequence[FibreEstimate]) -> str:
    return " and ".join(dict.fromkeys(one.kind for one in fibres))


def _against(all_l: float, step: PlannedStep) -> str:
    wanted_l = step.water_l or 0.0
    wanted = plain(wanted_l)
    if abs(all_l - wanted_l) <= CLOSE_SHARE * wanted_l:
        return f": nearly the {wanted} L planned"
    if all_l > wanted_l:
        return f": {_number(all_l - wanted_l, FINEST)} L more than the {wanted} L planned"
    return f": {_number(wanted_l - all_l, FINEST)} L short of the {wanted} L planned"


def _more_water(account: Account, bath: BathEstimate, wet_l: float, step: PlannedStep) -> str:
    """One more strain's water, where it would not fit: how much must steam off, for each kilowatt in the
    pot.
    """
    lots = [found for one in bath.dye if (found := account.dyestuff(one.lot)) and found.pulls]
    more_l = max((one.next_water_l or 0.0 for one in lots), default=0.0)
    over_l = bath.volume_l.mean + wet_l + more_l - (step.water_l or 0.0)
    if more_l <= 0.0 or over_l < FINEST:
        return ""
    hours = over_l / latent_heat_bound_kg_h(KILOWATT_W)
    return (
        f". Another {plain(more_l)} L would have to be steamed down by {_number(over_l, FINEST)} L:"
        f" {_hours(hours)} for each kilowatt that reaches the pot"
    )


def _hours(hours: float) -> str:
    """Hours as a dyer says them, to the half hour, never more than it takes at the least: the bound is the
    fastest.
    """
    halves = math.floor(2.0 * hours)
    if halves < 2:
        return f"at least {max(MINUTES_STEP, math.ceil(hours * 60.0 / MINUTES_STEP) * MINUTES_STEP):.0f} min"
    if halves < 4:
        return "over an hour" if halves == 2 else "over an hour and a half"
    return f"over {halves // 2}{' 1/2' if halves % 2 else ''} hours"
