"""A dyer who does what is suggested, weighs and reads as an honest one would, and takes time over it.

Pure: a suggestion and the kitchen in, the facts to record out. Knows no clock and no session.
"""

from collections.abc import Sequence

from dyesession.kitchen.model import Kitchen, Scale
from dyesession.rehearsal.world import World
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.countdowns import segment
from dyesession.session.fold import NEAR_ENOUGH_C
from dyesession.session.state import State, StepState

# Minutes an act takes at a stove; our own choice, no source.
TAKES_MIN: dict[str, float] = {
    "begun": 1.0, "weighed": 2.0, "filled": 3.0, "refreshed": 3.0, "topped-up": 2.0, "added": 2.0, "lit": 1.0,
    "strained": 8.0, "pooled": 3.0, "entered": 2.0, "lifted": 2.0, "dipped": 1.0, "kept": 5.0,
    "discarded": 3.0,
    "read": 1.0, "confirmed": 1.0, "acknowledged": 1.0, "reached": 1.0, "closed": 1.0,
}  # fmt: skip
USUAL_MIN = 1.0
SNIPPET = "snippet 1"
LONGER_MIN = 20.0  # how much longer a bath is left to cool; our own choice, no source


def facts_for(act: e.Event, state: State, world: World, kitchen: Kitchen, now_s: float) -> Sequence[e.Event]:
    """The suggested act as this dyer does it: weighed before it goes in, its litres and degrees read."""
    if isinstance(act, e.Added) and act.how == "planned":
        return _weighed_first(act, kitchen)
    if isinstance(act, e.Reached):
        return _reached_or_longer(act, state, world, now_s, has_thermometer(kitchen))
    if isinstance(act, e.Strained):
        return [e.Strained(act.vessel, act.into, world.strained_l(state, act.vessel), "read")]
    if isinstance(act, e.Lifted) and _weighs_wet(state, act, kitchen):
        return [e.Lifted(act.lot, act.vessel, world.wet_mass_g(state, act.lot))]
    if isinstance(act, e.Kept):
        return [e.Kept(act.vessel, act.label, world.volume_l(act.vessel) or None)]
    if isinstance(act, e.Closed):
        return [e.Closed("rehearsed as planned")]
    return [act]


def has_thermometer(kitchen: Kitchen) -> bool:
    """Whether this dyer reads degrees: unless it was said that there is none."""
    return kitchen.thermometer is not False


def _reached_or_longer(
    act: e.Reached, state: State, world: World, now_s: float, reads: bool
) -> Sequence[e.Event]:
    """What the thermometer, or the eye without one, shows; while a pot is still too hot it is given longer instead."""
    shown_c, step = world.temperature_c(act.vessel, now_s), state.running_in(act.vessel)
    heat = segment(step) if step is not None else None
    reached = e.Reached(act.vessel, shown_c, "read") if reads else act
    if step is None or heat is None or heat.kind != "cool_to" or heat.temperature_c is None:
        return [reached]
    if shown_c <= heat.temperature_c + max(NEAR_ENOUGH_C, heat.margin_c):
        return [reached]
    longer = e.Extended(step.name, LONGER_MIN)
    return [e.Read(act.vessel, temperature_c=shown_c), longer] if reads else [longer]


def _weighed_first(act: e.Added, kitchen: Kitchen) -> Sequence[e.Event]:
    """What the finest scale that carries it would show; with no scale it goes in as planned."""
    scale = finest_scale(kitchen, act.mass_g)
    if scale is None:
        return [act]
    shown_g = round(round(act.mass_g / scale.resolution_g) * scale.resolution_g, 6)
    if shown_g <= 0:
        return [act]
    return [
        e.Weighed(act.ingredient, shown_g, scale.resolution_g),
        e.Added(act.ingredient, act.vessel, shown_g, "weighed", act.portion),
    ]


def finest_scale(kitchen: Kitchen, mass_g: float) -> Scale | None:
    """The finest scale that carries so many grams, None when there is none."""
    fit = [one for one in kitchen.scales if one.capacity_g is None or one.capacity_g >= mass_g]
    return min(fit, key=lambda one: one.resolution_g, default=None)


def _weighs_wet(state: State, act: e.Lifted, kitchen: Kitchen) -> bool:
    """A lot is weighed wet the first time it is lifted: what it holds then it holds again."""
    lot = state.lot(act.lot)
    return lot is not None and not lot.snippet and lot.wet_mass_g is None and bool(kitchen.scales)


def answer(ask: Ask, world: World, now_s: float, kitchen: Kitchen) -> e.Confirmed | e.PutOff:
    """An honest answer: the right pot, or what the thermometer shows; without one a temperature is put off."""
    if ask.kind == "pot" or not ask.vessel:
        return ask.honest_answer()
    if not has_thermometer(kitchen):
        return ask.not_now()
    return ask.answered(temperature_c=world.temperature_c(ask.vessel, now_s))


def look_in(step: StepState, world: World, now_s: float, kitchen: Kitchen) -> e.Event | None:
    """A temperature read in the middle of a hold."""
    vessel = step.plan.vessel
    if vessel is None or not has_thermometer(kitchen) or step.countdown is None or step.countdown.kind != "hold":
        return None
    return e.Read(vessel, temperature_c=world.temperature_c(vessel, now_s))


def dip(step: StepState, state: State) -> e.Event | None:
    """Half way through a judged hold a snippet goes in."""
    vessel = step.plan.vessel
    if step.plan.judge is None or vessel is None or state.lot(SNIPPET) is not None:
        return None
    return e.Dipped(SNIPPET, vessel)


def look_at_snippet(state: State) -> e.Event | None:
    """The snippet comes out again to be looked at."""
    lot = state.lot(SNIPPET)
    return e.Lifted(SNIPPET, lot.place) if lot is not None and state.vessel(lot.place) else None
