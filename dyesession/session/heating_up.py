"""How warm a pot will be when, from the dyer's own readings: time to its heat, where its ring settles, cooling.

Pure: facts and their times in, one sentence out. The reckoning is `dyeing.eta`, with the usual time constant
for a pot's litres and lid, times how slowly the dyer's own pots were found to cool; wool's gentle climb is Mairet's (`dyeing.heating`).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from dyesession.dyeing.eta import (
    Reading,
    TimeToTemperature,
    far_enough,
    time_constant_prior_min,
    time_to_temperature,
)
from dyesession.dyeing.heating import WOOL_RAMP_MIN
from dyesession.dyeing.limits import OutOfRange
from dyesession.plan.cautions import COOL_C, cooling_band_min
from dyesession.plan.minutes import TAP_C
from dyesession.session import events as e
from dyesession.session.entry import Entry, effective
from dyesession.session.state import State, StepState, Vessel
from dyesession.units import show_duration

S_PER_MIN = 60.0
USUAL_L = 10.0  # where nobody has said how much is in the pot; the middle of the table in `dyeing.eta`
TENDER = ("wool", "mohair", "alpaca", "cashmere", "angora")
PATIENCE = 1.25  # a climb this much steeper than the quickest named for wool is said to be; our own choice, no source


@dataclass(frozen=True)
class HeatSaid:
    """How a pot warms or cools: in a few words, and what there is to add to them."""

    short: str = ""
    more: str = ""

    @property
    def text(self) -> str:
        """All of it, as a sentence without its full stop."""
        return "; ".join(one for one in (self.short, self.more) if one)


NOTHING = HeatSaid()


def heat_said(state: State, entries: Sequence[Entry], vessel: Vessel, now_s: float) -> HeatSaid:
    """What can be said of a pot's heat from its readings; nothing without two that are far enough apart."""
    step = state.running_in(vessel.name)
    countdown = step.countdown if step is not None else None
    if step is None or countdown is None or countdown.target_c is None or step.status != "running":
        return NOTHING
    if countdown.kind == "cool":
        return _cooling(vessel, countdown.target_c)
    if countdown.kind != "rise":
        return NOTHING
    readings = _readings(state, entries, vessel.name, countdown.start_s)
    pair = _pair(readings)
    if pair is None:
        return NOTHING
    first, second = pair
    lid_on = vessel.lid is True
    constant_min = time_constant_prior_min(vessel.bath.volume_l or USUAL_L if vessel.bath else USUAL_L, lid_on)
    constant_min *= state.cooling
    try:
        found = time_to_temperature(countdown.target_c, first, second, constant_min, lid_on)
    except OutOfRange:
        return NOTHING
    since_min = now_s / S_PER_MIN - second.minute
    said = _rising(found, countdown.target_c, since_min, state.boiling_c)
    fast = _too_fast(state, step, first, second)
    return replace(said, more="; ".join(one for one in (said.more, fast) if one))


def _rising(found: TimeToTemperature, target_c: float, since_min: float, boiling_c: float) -> HeatSaid:
    if math.isinf(found.about_min):
        settles = f"{found.settles_c:.0f} ± {found.settles_plus_minus_c:.0f} °C"
        never = f"this ring will settle at {settles} and never reach {target_c:.0f} °C"
        return HeatSaid(never, "turn it up, or put the lid on")
    low, about, high = (max(0.0, one - since_min) for one in (found.not_before_min, found.about_min, found.late_min))
    band = f"{low:.0f} to {high:.0f} min" if math.isfinite(high) else f"{low:.0f} min or more"
    boil = f"it boils at {boiling_c:.0f} °C here, before that" if target_c > boiling_c else ""
    return HeatSaid(f"{target_c:.0f} °C in about {show_duration(round(about))} ({band})", boil)


def _too_fast(state: State, step: StepState, first: Reading, second: Reading) -> str:
    """Wool is brought up gently: from the tap to its heat in no less than Mairet's shorter time."""
    kinds = {lot.kind for lot in state.lots_in(step.plan.vessel or "")}
    target_c = step.countdown.target_c if step.countdown else None
    if target_c is None or not any(tender in kind.casefold() for kind in kinds for tender in TENDER):
        return ""
    rate = (second.temperature_c - first.temperature_c) / (second.minute - first.minute)
    gentle = (target_c - TAP_C) / WOOL_RAMP_MIN[0]
    if rate <= PATIENCE * gentle:
        return ""
    return f"{rate:.1f} °C a minute is faster than wool likes ({gentle:.1f}): turn it down"


def _cooling(vessel: Vessel, target_c: float) -> HeatSaid:
    start_c = vessel.temperature_c if vessel.temperature_c is not None else vessel.reached_c
    volume_l = vessel.bath.volume_l if vessel.bath else None
    band = cooling_band_min(start_c, volume_l)
    if band is None or start_c is None or abs(target_c - COOL_C) > 0.5:
        return NOTHING
    low, high = (show_duration(round(one / 10) * 10) for one in band)
    return HeatSaid(f"to {target_c:.0f} °C in {low} to {high}", "longer with the lid on")


def _readings(state: State, entries: Sequence[Entry], vessel: str, since_s: float) -> list[Reading]:
    """The temperatures of a vessel since a session second, oldest first, in session minutes."""
    last, found = state.instant, []
    for entry in effective(tuple(entries)):
        event = entry.event
        if last is None or not isinstance(event, e.Read | e.Reached | e.Confirmed) or event.vessel != vessel:
            continue
        at = entry.happened or entry.instant.at
        second = state.now_s - (last.at - at).total_seconds()
        if event.temperature_c is not None and second >= since_s:
            found.append(Reading(second / S_PER_MIN, event.temperature_c))
    return found


def _pair(readings: Sequence[Reading]) -> tuple[Reading, Reading] | None:
    """The last reading and the nearest earlier one far enough from it."""
    if len(readings) < 2:
        return None
    second = readings[-1]
    return next(((one, second) for one in reversed(readings[:-1]) if far_enough(one, second)), None)
