"""What heat facts do: a ring lit or turned off, a temperature reached or read, a stretch of heating over.

Pure. `fold_pots` and `fold_steps` stand on it.
"""

from dataclasses import replace

from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.state import State, Vessel

NEAR_ENOUGH_C = 1.0
"""A reading this near the wanted heat has reached it: kitchen thermometers show whole degrees; common
practice, no source."""


def off(vessel: Vessel) -> Vessel:
    """The vessel with no heat under it."""
    return replace(vessel, on_heat=False)


def rested(vessel: Vessel) -> Vessel:
    """The vessel after a night: off the heat, and nobody knows how warm."""
    return replace(vessel, on_heat=False, reached_c=None, temperature_c=None, temperature_s=None)


def warmed(state: State, vessel: str, temperature_c: float, at: c.Moment) -> State:
    """The state after a vessel's temperature was read."""
    return state.with_vessel(
        vessel, lambda one: replace(one, temperature_c=temperature_c, temperature_s=at.s)
    )


def lit(state: State, event: e.Lit, at: c.Moment) -> State:
    """A ring lit or turned off; at the end of a hold or rest that is also its end."""
    state = state.with_vessel(event.vessel, lambda one: replace(one, on_heat=event.on))
    step = state.running_in(event.vessel)
    heat = c.segment(step) if step else None
    if step is None or heat is None or heat.kind not in ("hold", "rest") or not c.due(step, at.s):
        return state
    return state.with_step(step.name, c.next_segment)


def reached(state: State, event: e.Reached, at: c.Moment) -> State:
    """A vessel is at the heat its step was rising or cooling to."""
    step = state.running_in(event.vessel)
    heat = c.segment(step) if step else None
    temperature_c = event.temperature_c
    if step is not None and heat is not None and heat.kind in ("to", "cool_to"):
        temperature_c = heat.temperature_c if temperature_c is None else temperature_c
        state = state.with_step(step.name, c.next_segment)
    if event.how == "read" and temperature_c is not None:
        state = warmed(state, event.vessel, temperature_c, at)
        return state.with_vessel(event.vessel, lambda one: replace(one, reached_c=temperature_c))
    # An older reading says nothing of the pot any more.
    return state.with_vessel(
        event.vessel,
        lambda one: replace(one, reached_c=temperature_c, temperature_c=None, temperature_s=None),
    )


def arrived(state: State, vessel: str, temperature_c: float) -> State:
    """A reading at the wanted heat (or, for a cooling bath, down to it) says that it is reached."""
    step = state.running_in(vessel)
    heat = c.segment(step) if step else None
    if step is None or heat is None or heat.temperature_c is None or step.countdown is None:
        return state
    slack_c = max(NEAR_ENOUGH_C, heat.margin_c)
    hot = heat.kind == "to" and temperature_c >= heat.temperature_c - slack_c
    cool = heat.kind == "cool_to" and temperature_c <= heat.temperature_c + slack_c
    if not (hot or cool):
        return state
    state = state.with_step(step.name, c.next_segment)
    return state.with_vessel(vessel, lambda one: replace(one, reached_c=temperature_c))
