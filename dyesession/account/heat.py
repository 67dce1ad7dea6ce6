"""How warm a pot is between two facts, as far as its step and its readings tell; and whether fibre or
dyestuff works.

Knows nothing of colour. One temperature for all worlds: it only drives steam and the clock of uptake, whose
own guesses are far wider.
"""

import math

from dyesession.dyeing.eta import LID_ON_HOURS, OPEN_HOURS
from dyesession.dyeing.heating import temperature_after_c
from dyesession.plan.model import PlannedStep
from dyesession.session.state import Countdown, State

TAP_C = 15.0  # water from the tap; common practice, no source
ROOM_C = 20.0
MIN_PER_H, S_PER_MIN = 60.0, 60.0
# A pot off the heat, lid not told: the middle (geometric) of 10 L covered and open.
COOLING_MIN = MIN_PER_H * math.sqrt(LID_ON_HOURS[1][1] * OPEN_HOURS[1][1])

# Uptake and extraction are counted only at heat: "steaming" and hotter, or near the hottest the step asks
# for. Published activation energies differ too widely to say more (10.4 to 107 kJ/mol); the bounds are
# judgement.
WORKING_C = 60.0
NEAR_HOTTEST_C = 10.0
WORKING_STAGES = frozenset({"dye", "mordant", "modify", "extract", "soak"})


def temperature_at_c(state: State, vessel: str, now_c: float, from_s: float, to_s: float) -> float:
    """Temperature of a vessel at `to_s`, from `now_c` at `from_s`, no fact having come between."""
    pot, step = state.vessel(vessel), state.running_in(vessel)
    countdown = step.countdown if step is not None else None
    if countdown is not None and countdown.kind == "hold" and countdown.target_c is not None:
        return countdown.target_c
    if pot is None or not pot.on_heat:
        return temperature_after_c(now_c, ROOM_C, COOLING_MIN, (to_s - from_s) / S_PER_MIN)
    if countdown is not None and countdown.kind == "rise" and countdown.target_c is not None:
        return _rising_c(countdown, now_c, from_s, to_s)
    return pot.reached_c if pot.reached_c is not None else now_c


def _rising_c(countdown: Countdown, now_c: float, from_s: float, to_s: float) -> float:
    """Evenly from now to the target at the planned end of the rise, and no further."""
    target_c = countdown.target_c if countdown.target_c is not None else now_c
    if to_s >= countdown.deadline_s or now_c >= target_c:
        return target_c
    return now_c + (target_c - now_c) * (to_s - from_s) / (countdown.deadline_s - from_s)


def stays_cold(state: State, vessel: str) -> bool:
    """Whether nothing warms a vessel: it is off the heat and no hold is counted on it."""
    pot, step = state.vessel(vessel), state.running_in(vessel)
    countdown = step.countdown if step is not None else None
    return (pot is None or not pot.on_heat) and (countdown is None or countdown.kind != "hold")


def works(step: PlannedStep | None, temperature_c: float) -> bool:
    """Whether minutes at this temperature count for uptake and extraction; all of a cold step's do."""
    if temperature_c >= WORKING_C:
        return True
    if step is None or step.stage not in WORKING_STAGES:
        return False
    asked = [one.temperature_c for one in step.heat if one.kind == "to" and one.temperature_c is not None]
    return not asked or temperature_c >= max(asked) - NEAR_HOTTEST_C
