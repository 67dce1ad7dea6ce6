"""What comes next: `suggest(state, now)` is one priority table over facts, never over an estimate.

    ring (acknowledge the loudest)  >  due  >  ask  >  a running step's next act  >  begin a ready step  >
    wait

A suggestion is the fact that space would record, an `Ask` that space cannot pass, or a `Wait`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from dyesession.care import Household
from dyesession.plan.changes import Draws, NewStep, change_for_log
from dyesession.plan.model import PlannedStep
from dyesession.recipe.model import Heat
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.asking import Ask, ask_before
from dyesession.session.fit import misfit
from dyesession.session.state import ENDED, OUT_WET, State, StepState

# A hot pot nobody has answered for this long is an alarm, no longer a prompt; our own choice, no source.
ALARM_AFTER_S = 5 * 60.0
# "I have seen it" keeps a hot pot quiet for this long; our own choice, no source.
QUIET_AFTER_SEEN_S = 10 * 60.0


@dataclass(frozen=True)
class Wait:
    """Nothing to do until a session second; None when only the dyer knows."""

    until_s: float | None
    step: str = ""


Suggestion = e.Event | Ask | Wait


@dataclass(frozen=True)
class Ring:
    """What rings: a prompt (a timer that ended as planned) or an alarm (a hot pot nobody answered)."""

    countdown: str
    step: str
    vessel: str
    severity: Literal["prompt", "alarm"]
    over_s: float


def rings(state: State, now_s: float) -> tuple[Ring, ...]:
    """All that rings now, loudest first: alarms before prompts, the longest overdue before the others."""
    if state.status != "open":
        return ()
    found = [ring for one in state.steps if (ring := _ring(state, one, now_s)) is not None]
    return tuple(sorted(found, key=lambda one: (one.severity != "alarm", -one.over_s)))


def _ring(state: State, step: StepState, now_s: float) -> Ring | None:
    countdown = step.countdown
    if countdown is None or step.status != "running" or not c.due(step, now_s):
        return None
    over_s, hot = max(0.0, -countdown.left_s(now_s)), c.heat_on(state, step)
    seen = countdown.acknowledged_s
    if seen is not None and (not hot or now_s - seen < QUIET_AFTER_SEEN_S):
        return None
    severity: Literal["prompt", "alarm"] = "alarm" if hot and over_s >= ALARM_AFTER_S else "prompt"
    return Ring(countdown.key, step.name, countdown.vessel, severity, over_s)


def suggest(state: State, now_s: float, household: Household) -> Suggestion:
    """The one next thing at a session second."""
    state = replace(state, now_s=max(state.now_s, now_s))
    if state.status == "complete":
        return Wait(None)
    if state.status == "aborted":
        return e.Cleared()
    if state.status == "stopped":
        return _asked(state, _closing(state), household)
    if ringing := rings(state, now_s):
        return e.Acknowledged(ringing[0].countdown)
    waits: list[Wait] = []
    for act in _acts(state, now_s):
        if isinstance(act, Wait):
            waits.append(act)
        else:
            return _asked(state, act, household)
    if waits:
        return min(waits, key=lambda one: float("inf") if one.until_s is None else one.until_s)
    return _idle(state, household)


def _acts(state: State, now_s: float) -> Iterator[e.Event | Wait]:
    """In order of urgency: due, preparing what runs, beginning what is ready, tidying away, waiting."""
    running = [one for one in state.steps if one.status == "running"]
    acts = [(step, _possible(state, step, act(state, step, now_s))) for step in running]
    yield from (one for step, one in acts if c.due(step, now_s) and not isinstance(one, Wait))
    yield from (one for _, one in acts if not isinstance(one, Wait))
    yield from (begun for one in state.steps if (begun := _beginning(state, one)) is not None)
    yield from _tidying(state)
    yield from (one for _, one in acts if isinstance(one, Wait))


def _possible(state: State, step: StepState, wanted: e.Event | Wait) -> e.Event | Wait:
    """What a step wants, unless the pots as they stand forbid it: then it is left out, and why is logged."""
    if isinstance(wanted, Wait):
        return wanted
    trouble = misfit(state, wanted)
    return e.Skipped(step.name, trouble) if trouble else wanted


def _beginning(state: State, step: StepState) -> e.Event | None:
    if not state.ready(step):
        return None
    begun = e.Begun(step.name)
    return None if misfit(state, begun) else begun


# Baths nobody wants again; whether a mordant or dye bath is kept is asked at the end of the day.
TIDIED = frozenset({"scour", "wet", "rinse"})


def _tidying(state: State) -> Iterator[e.Event]:
    """Empty what is done with: a scouring, wetting or rinsing bath that no later step wants."""
    for vessel in state.vessels:
        stages = _stages_in(state, vessel.name)
        idle = all(
            one.status in ENDED for one in state.steps if vessel.name in (one.plan.vessel, one.plan.into)
        )
        if (
            vessel.bath is not None
            and not state.lots_in(vessel.name)
            and idle
            and stages
            and stages <= TIDIED
        ):
            yield e.Discarded(vessel.name)


def _stages_in(state: State, vessel: str) -> set[str]:
    """Stages of the steps that have been under way in a vessel."""
    return {one.plan.stage for one in state.steps if one.plan.vessel == vessel and one.begun_s is not None}


def _idle(state: State, household: Household) -> Suggestion:
    """Nothing runs and nothing is ready: go on with what is paused, else bring the day to its end."""
    paused = next((one for one in state.steps if one.status == "paused"), None)
    if paused is not None:
        return e.Resumed(paused.name)
    waiting = next((one for one in state.steps if one.status not in ENDED), None)
    if waiting is not None:
        return Wait(None, waiting.name)
    if state.free and not state.steps:
        return Wait(None)  # an improvised day on which no stage was named yet: only the dyer knows
    if state.free and (drying := _drying(state)) is not None:
        return _asked(state, drying, household)
    return _asked(state, _closing(state), household)


NIGHT_TO_DRY = PlannedStep(
    "dry", "dry", "fibre", None, "dry", heat=(Heat("rest", overnight=True),)
)  # wet wool is dry by the morning; common practice, no source


def _drying(state: State) -> e.Event | None:
    """No recipe leads, and nobody has named what comes next: the fibre out of the pots, and then left to dry.

    So a hand on the space bar ends no day that was still going on; any stage can be named instead.
    """
    lots = [one for one in state.lots if not one.snippet]
    inside = next((one for one in lots if state.vessel(one.place) is not None), None)
    if inside is not None:
        return e.Lifted(inside.name, inside.place)
    if any(one.place == OUT_WET for one in lots):
        return e.Replanned(
            "step", "dry", "nothing more is named", changes=(change_for_log(NewStep(NIGHT_TO_DRY)),)
        )
    return None


def _asked(state: State, command: e.Event, household: Household) -> e.Event | Ask:
    return ask_before(state, command, household) or command


def act(state: State, step: StepState, now_s: float) -> e.Event | Wait:
    """What a running step needs next."""
    if (wet := _still_in_a_pot(state, step)) is not None:
        return wet
    heat, ready = c.segment(step), c.prepared(state, step)
    if heat is None and (step.plan.heat or ready):
        return _ending(state, step)
    if step.countdown is not None and c.due(step, now_s):
        return _due(state, step)
    if not ready:
        return _preparing(state, step)
    if step.countdown is not None:
        return Wait(step.countdown.deadline_s, step.name)
    return e.Lit(step.plan.vessel or "", on=heat is not None and heat.kind == "to")


DRY_STAGES = ("rest", "dry")


def _still_in_a_pot(state: State, step: StepState) -> e.Event | None:
    """Fibre is lifted before it rests or dries, save from a pot where another step is under way."""
    if step.plan.stage not in DRY_STAGES or step.plan.vessel is not None:
        return None
    only = state.wanted_lots(step)
    for lot in state.lots:
        idle = state.vessel(lot.place) is not None and state.running_in(lot.place) is None
        if idle and (not only or lot.name in only):
            return e.Lifted(lot.name, lot.place)
    return None


def _ending(state: State, step: StepState) -> e.Event | Wait:
    if step.plan.judge is None:
        return e.Finished(step.name)
    on_shade = e.OnShade(step.name)
    if misfit(state, on_shade) is None:
        return on_shade
    since_s = step.held_since_s if step.held_since_s is not None else step.begun_s
    return Wait((since_s or 0.0) + step.plan.judge.least_min * 60, step.name)


def _due(state: State, step: StepState) -> e.Event | Wait:
    """A countdown has ended: the pot is at its heat, the hold is over, the night is over."""
    heat, vessel = c.segment(step), step.plan.vessel or ""
    if heat is not None and heat.kind in ("to", "cool_to"):
        return e.Reached(vessel, heat.temperature_c)
    if step.segment + 1 >= len(step.plan.heat):
        return _ending(state, step)
    following = step.plan.heat[step.segment + 1].kind
    stays = c.heat_on(state, step) if following == "hold" else following == "to"
    return e.Lit(vessel, on=stays)


def _preparing(state: State, step: StepState) -> e.Event:
    """Water, then additions with the fibre out, then the fibre."""
    plan, vessel = step.plan, step.plan.vessel or ""
    if plan.stage == "strain":
        return e.Strained(vessel, plan.into or vessel)
    if step.draw is not None and not step.filled:
        return _drawing(state, vessel, step.draw, plan.fresh_water)
    if plan.water_l is not None and not step.filled:
        return _watering(state, step)
    waiting = step.next_addition
    if waiting is not None:
        lots = [one for one in state.lots_in(vessel) if not one.snippet]
        if lots:
            return e.Lifted(lots[0].name, vessel)
        return _adding(state, vessel, step)
    return _entering(state, step)


def _drawing(state: State, name: str, wanted: Draws, fresh_water: bool) -> e.Event:
    """The kept bath that was chosen for this step, into an empty pot or to the liquor that was strained for it."""
    vessel = state.vessel(name)
    if vessel is not None and vessel.bath is not None and fresh_water:
        return _emptying(state, name)
    lots = [one for one in state.lots_in(name) if not one.snippet]
    if lots:
        return e.Lifted(lots[0].name, name)
    drawn = e.Drawn(name, wanted.label, wanted.kept_by, wanted.draw_l, wanted.substances, wanted.look_again)
    return replace(drawn, volume_l=None) if misfit(state, drawn) else drawn


def _watering(state: State, step: StepState) -> e.Event:
    plan, name = step.plan, step.plan.vessel or ""
    vessel, water_l = state.vessel(name), plan.water_l or 0.0
    if vessel is None or vessel.bath is None:
        if plan.again and misfit(state, refreshed := e.Refreshed(name, water_l)) is None:
            return refreshed
        return e.Filled(name, water_l)
    if plan.fresh_water:
        return _emptying(state, name)
    return e.ToppedUp(name, to_l=water_l)


def _emptying(state: State, name: str) -> e.Event:
    """Fibre out; then a mordant bath or a dye bath that was used is kept, and anything else thrown away."""
    inside = state.lots_in(name)
    if inside:
        return e.Lifted(inside[0].name, name)
    vessel = state.vessel(name)
    bath = vessel.bath if vessel else None
    if bath is None or not bath.uses:
        return e.Discarded(name)
    if bath.liquor_of:
        return e.Kept(name, f"{' and '.join(bath.liquor_of)} bath {bath.number}")
    if "mordant" in _stages_in(state, name) and bath.contents:
        return e.Kept(name, f"{bath.contents[0].ingredient} bath {bath.number}")
    return e.Discarded(name)


def _adding(state: State, vessel: str, step: StepState) -> e.Event:
    waiting = step.next_addition
    if waiting is None:
        return e.Finished(step.name)
    weighed = dict(state.weighed).get(waiting.ingredient)
    if weighed is not None:
        return e.Added(waiting.ingredient, vessel, weighed, "weighed", waiting.portion)
    return e.Added(waiting.ingredient, vessel, waiting.mass_g, "planned", waiting.portion)


def _entering(state: State, step: StepState) -> e.Event:
    vessel = step.plan.vessel or ""
    for name in state.wanted_lots(step):
        lot = state.lot(name)
        if lot is None or (lot.snippet and lot.place != vessel):
            return e.Dipped(name, vessel)
        if lot.place != vessel:
            return e.Lifted(name, lot.place) if state.vessel(lot.place) else e.Entered(name, vessel)
    return e.Finished(step.name)


def _closing(state: State) -> e.Event:
    """Fibre out, baths kept or thrown away, the day closed."""
    for vessel in state.vessels:
        if vessel.bath is not None or state.lots_in(vessel.name):
            if vessel.bath is None:
                return e.Lifted(state.lots_in(vessel.name)[0].name, vessel.name)
            return _emptying(state, vessel.name)
    return e.Closed()
