"""Suggestions and the day as it stands, in the words of the trade: for line mode, screens and reports.

Pure; knows no screen. "A", "B" are the vessels' letters. Amounts are rounded for reading, never for
reckoning. Facts as the log has them are said in `words_past`, pots and clock times in `names`.
"""

from collections.abc import Callable
from typing import Any

from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.names import clock_text, day_text, letter, pot, wall_time, when_text
from dyesession.session.state import OUT_DRY, OUT_WET, SIEVE, State, StepState, Vessel
from dyesession.session.suggest import Ring, Suggestion, Wait
from dyesession.session.words_past import change_words, happened_words, plan_words
from dyesession.units import by_eye, show_duration, show_mass, show_temperature, show_volume

__all__ = [
    "after_words",
    "change_words",
    "clock_text",
    "command_words",
    "day_text",
    "elsewhere_words",
    "happened_words",
    "heat_off_words",
    "left_words",
    "letter",
    "next_words",
    "over_words",
    "plan_words",
    "pot",
    "pot_words",
    "ring_parts",
    "ring_words",
    "running_words",
    "short_words",
    "stretch_words",
    "suggestion_words",
    "vessel_words",
    "wall_time",
    "when_text",
]


def suggestion_words(state: State, suggestion: Suggestion) -> str:
    """What comes next, as an order to oneself: "strain B into the dye pot"."""
    if isinstance(suggestion, Ask):
        return suggestion.question
    if isinstance(suggestion, Wait):
        return _wait_words(state, suggestion)
    return command_words(state, suggestion)


def _wait_words(state: State, wait: Wait) -> str:
    if wait.until_s is None:
        step = state.step(wait.step)
        if step is None and state.free and not state.steps:
            where = "A" if state.vessels else "the mordant pot"  # a letter stands only for a pot that is known
            return f"say what comes first, for example: mordant in {where} with alum 12 %, to 85 °C, hold 60 min"
        if step is not None:
            return f"{wait.step} waits: begin it with a reason, or skip it"
        return "the day is closed" if state.status == "complete" else "nothing left to do"
    step = state.step(wait.step)
    return after_words(state, step) if step else f"wait until {clock_text(state, wait.until_s)}"


def heat_words(state: State, degrees_c: float) -> str:
    """A heat as it can be told in this kitchen: in degrees, or by its look where there is no thermometer."""
    degrees = show_temperature(degrees_c)
    return f"{by_eye(degrees_c)} (about {degrees})" if state.by_eye else degrees


def after_words(state: State, step: StepState) -> str:
    """What a running step will want when its countdown ends."""
    heat, name = c.segment(step), letter(state, step.plan.vessel or step.name)
    if heat is None:
        return f"look at the shade in {name}"
    if heat.kind == "to":
        return f"see whether {name} is at {heat_words(state, heat.temperature_c or 0)}"
    if heat.kind == "cool_to":
        return f"see whether {name} has cooled to {heat_words(state, heat.temperature_c or 0)}"
    if step.segment + 1 < len(step.plan.heat):
        return command_words(
            state, e.Lit(step.plan.vessel or "", on=step.plan.heat[step.segment + 1].kind == "to")
        )
    following = _following(state, step)
    if step.plan.judge is not None:
        return f"look at the shade in {name}"
    off = f"turn off the heat under {name}, {step.name} is done" if _is_lit(state, step) else ""
    return following or off or f"finish {step.name}"


def _following(state: State, step: StepState) -> str | None:
    for one in state.steps:
        if step.name in one.plan.after and one.plan.stage == "strain":
            return command_words(state, e.Strained(one.plan.vessel or "", one.plan.into or ""))
    return None


def command_words(state: State, event: e.Event) -> str:
    """One fact as an order: "add 29 g alum to A"."""
    say: Callable[[State, Any], str] | None = _ORDERS.get(event.kind)
    return say(state, event) if say else event.kind.replace("-", " ")


def _begin_words(state: State, event: e.Begun) -> str:
    step = state.step(event.step)
    where = f" in {letter(state, step.plan.vessel)}" if step and step.plan.vessel else ""
    return f"begin: {event.step}{where}"


def _add_words(state: State, event: e.Added) -> str:
    portion = f"{event.portion}, " if event.portion else ""
    verb = "add" if event.how == "weighed" else "weigh and add"
    return f"{verb} {portion}{show_mass(event.mass_g)} {event.ingredient} to {letter(state, event.vessel)}"


def _enter_words(state: State, event: e.Entered) -> str:
    """Fibre goes in wetted out, except where it goes in to be wetted or washed."""
    step = state.running_in(event.vessel)
    wet = "" if step is not None and step.plan.stage in ("wet", "scour") else ", wetted out"
    return f"enter {event.lot} into {letter(state, event.vessel)}{wet}"


def _lit_words(state: State, event: e.Lit) -> str:
    if not event.on:
        return f"turn off the heat under {letter(state, event.vessel)}"
    step = state.running_in(event.vessel)
    heat = c.segment(step) if step else None
    aim = f" for {heat_words(state, heat.temperature_c)}" if heat and heat.temperature_c is not None else ""
    return f"light the ring under {letter(state, event.vessel)}{aim}"


def _reached_words(state: State, event: e.Reached) -> str:
    at = f" is at {heat_words(state, event.temperature_c)}" if event.temperature_c is not None else " is ready"
    return f"{letter(state, event.vessel)}{at}"


def _topped_words(state: State, event: e.ToppedUp) -> str:
    name = letter(state, event.vessel)
    if event.to_l is not None:
        return f"top up {name} to {show_volume(event.to_l)}"
    return f"top up {name} with {show_volume(event.volume_l or 0)}"


def _finish_words(state: State, event: e.Finished) -> str:
    step = state.step(event.step)
    if step is not None and step.plan.stage == "rinse":
        return "rinse until a white cloth stays clean, then done"
    off = f"turn off the heat under {letter(state, step.plan.vessel or '')}, " if _is_lit(state, step) and step else ""
    return f"{off}{event.step} is done"


def _finish_short(state: State, event: e.Finished) -> str:
    step = state.step(event.step)
    return f"turn off {letter(state, step.plan.vessel or '')}" if _is_lit(state, step) and step else f"{event.step} done"


def _is_lit(state: State, step: StepState | None) -> bool:
    """Whether heat is still on under a step's pot; the step's end takes it to be turned off, so somebody must be told."""
    vessel = state.vessel(step.plan.vessel) if step is not None else None
    return vessel is not None and vessel.on_heat


def heat_off_words(state: State, command: e.Event) -> str:
    """What to do at the stove when a step under way is ended by the eye or left out: "Turn off the heat under B."."""
    step = state.step(command.step) if isinstance(command, e.OnShade | e.Skipped) else None
    if step is None or step.status not in ("running", "paused") or not _is_lit(state, step):
        return ""
    return f"Turn off the heat under {letter(state, step.plan.vessel or '')}."


def _replan_words(state: State, event: e.Replanned) -> str:
    if event.change == "step" and event.step == "dry" and state.free:
        return "let the fibre dry overnight, or name the next stage"
    return f"change the plan: {plan_words(event)}"


def _acknowledge_words(state: State, event: e.Acknowledged) -> str:
    step = next((one for one in state.steps if one.countdown and one.countdown.key == event.countdown), None)
    return f"I have seen it: {letter(state, step.plan.vessel or step.name)}" if step else "I have seen it"


_ORDERS: dict[str, Callable[[State, Any], str]] = {
    "begun": _begin_words,
    "filled": lambda s, ev: f"fill {letter(s, ev.vessel)} with {show_volume(ev.volume_l)} of water",
    "added": _add_words,
    "weighed": lambda s, ev: f"weigh {show_mass(ev.mass_g)} {ev.ingredient}",
    "lit": _lit_words,
    "reached": _reached_words,
    "strained": lambda s, ev: f"strain {letter(s, ev.vessel)} into the {ev.into}",
    "refreshed": lambda s, ev: (
        f"put the dyestuff back in {letter(s, ev.vessel)} with {show_volume(ev.volume_l)} fresh water"
    ),
    "pooled": lambda s, ev: f"pour {letter(s, ev.vessel)} into the {ev.into}",
    "topped-up": _topped_words,
    "entered": _enter_words,
    "lifted": lambda s, ev: f"lift {ev.lot} out of {letter(s, ev.vessel)}",
    "skipped": lambda s, ev: f"leave out {ev.step}: {ev.why}",
    "dipped": lambda s, ev: f"dip the {ev.snippet} in {letter(s, ev.vessel)}",
    "on-shade": lambda s, ev: f"on shade: end {ev.step}",
    "finished": _finish_words,
    "resumed": lambda s, ev: f"go on with {ev.step}",
    "drawn": lambda s, ev: f"pour the kept bath {ev.label} into {letter(s, ev.vessel)}",
    "replanned": _replan_words,
    "kept": lambda s, ev: f"keep the bath of {letter(s, ev.vessel)} in a labelled jar",
    "discarded": lambda s, ev: f"empty {letter(s, ev.vessel) if ev.vessel else ev.label}",
    "acknowledged": _acknowledge_words,
    "cleared": lambda s, ev: "the trouble is over: clear it",
    "closed": lambda s, ev: "close the day",
}


def short_words(state: State, suggestion: Suggestion) -> str:
    """What comes next in at most three words, for letters that are read across the kitchen."""
    if isinstance(suggestion, Ask):
        return f"look at {letter(state, suggestion.vessel)}"
    if isinstance(suggestion, Wait):
        return "all done" if state.status == "complete" else "wait"
    say: Callable[[State, Any], str] | None = _SHORT.get(suggestion.kind)
    return say(state, suggestion) if say else suggestion.kind.replace("-", " ")


_SHORT: dict[str, Callable[[State, Any], str]] = {
    "begun": lambda s, ev: f"begin {ev.step}",
    "filled": lambda s, ev: f"fill {letter(s, ev.vessel)}",
    "added": lambda s, ev: f"add {ev.ingredient}",
    "lit": lambda s, ev: f"{'light' if ev.on else 'turn off'} {letter(s, ev.vessel)}",
    "reached": lambda s, ev: f"look at {letter(s, ev.vessel)}",
    "strained": lambda s, ev: f"strain {letter(s, ev.vessel)}",
    "refreshed": lambda s, ev: f"refill {letter(s, ev.vessel)}",
    "topped-up": lambda s, ev: f"top up {letter(s, ev.vessel)}",
    "entered": lambda s, ev: f"fibre into {letter(s, ev.vessel)}",
    "lifted": lambda s, ev: f"lift from {letter(s, ev.vessel)}",
    "dipped": lambda s, ev: f"dip in {letter(s, ev.vessel)}",
    "on-shade": lambda s, ev: "on shade",
    "finished": _finish_short,
    "resumed": lambda s, ev: "go on",
    "kept": lambda s, ev: f"keep {letter(s, ev.vessel)}",
    "discarded": lambda s, ev: f"empty {letter(s, ev.vessel)}",
    "replanned": lambda s, ev: ev.step if ev.change == "step" else "change the plan",
    "acknowledged": lambda s, ev: "I've seen it",
    "closed": lambda s, ev: "close the day",
}


def ring_words(state: State, ring: Ring) -> tuple[str, str]:
    """What rings (which pot, what, how overdue) and what to do about it."""
    where = pot(state, ring.vessel) if ring.vessel else ring.step
    what, act = ring_parts(state, ring)
    return (f"{where}: {what}, {over_words(ring) or 'now'}." if what else ring.step), act


def over_words(ring: Ring) -> str:
    """How overdue it is: "3 min over"; "" in the first minute."""
    return "" if ring.over_s < 60 else f"{show_duration(ring.over_s // 60)} over"


def ring_parts(state: State, ring: Ring) -> tuple[str, str]:
    """What rings without its pot and its time, and what to do about it; two empty texts when it is over."""
    step = state.step(ring.step)
    if step is None or step.countdown is None:
        return "", ""
    target = step.countdown.target_c
    at = f" at {heat_words(state, target)}" if target is not None else ""
    what = {
        "rise": f"should be{at}",
        "hold": f"its hold{at} is over",
        "cool": f"should have cooled{at.replace(' at ', ' to ')}",
        "rest": "its rest is over",
    }[step.countdown.kind]
    act = after_words(state, step)
    return what, f"{act[0].upper()}{act[1:]}, or give it longer."


def stretch_words(state: State, step: StepState, now_s: float) -> str:
    """What a step under way is at, and until when: "keep at 85 °C until 12:06"."""
    countdown, target_c = step.countdown, c.held_at_c(step.plan, step.segment)
    if step.status == "paused":
        left = f", {left_words(countdown.left_s(now_s))}" if countdown else ""
        return f"paused{left}"
    if countdown is None:
        if c.segment(step) is not None or not c.prepared(state, step):
            return "being made ready"
        return "waiting for your eye" if step.plan.judge is not None else "to be ended when you see fit"
    at = f" at {heat_words(state, target_c)}" if target_c is not None else ""
    to = at.replace(" at ", " to ")
    doing = {"rise": f"heating{to}", "hold": f"keep{at}", "cool": f"cooling{to}", "rest": "resting"}[
        countdown.kind
    ]
    if c.due(step, now_s):
        return f"{doing}, due since {when_text(state, countdown.deadline_s, now_s)}"
    comma, verb = ("", "until") if countdown.kind in ("hold", "rest") else (",", "look at it at")
    return f"{doing}{comma} {verb} {when_text(state, countdown.deadline_s, now_s)}"


def left_words(seconds: float) -> str:
    """How long is left, as it is read aloud: whole minutes above ten, then minutes and seconds."""
    if seconds < 0:
        return f"{show_duration(-seconds / 60)} over"
    return f"{show_duration(seconds / 60)} left"


def running_words(state: State, now_s: float) -> tuple[str, ...]:
    """One line for every step under way: "B, the mordant pot: mordant, keep at 85 °C until 12:06"."""
    return tuple(
        f"{pot(state, one.plan.vessel)}: {one.name}, {stretch_words(state, one, now_s)}"
        if one.plan.vessel
        else f"{one.name}, {stretch_words(state, one, now_s)}"
        for one in state.steps
        if one.status in ("running", "paused")
    )


def next_words(state: State, suggestion: Suggestion, now_s: float) -> tuple[str, str]:
    """What comes next, and when: ("strain B into the dye pot", "at 11:50, in 8 min"); "" for now."""
    what = suggestion_words(state, suggestion)
    if not isinstance(suggestion, Wait) or suggestion.until_s is None:
        return what, ""
    left_s = max(0.0, suggestion.until_s - now_s)
    return what, f"at {when_text(state, suggestion.until_s, now_s)}, in {show_duration(left_s / 60)}"


def pot_words(state: State, vessel: Vessel, now_s: float) -> str:
    """What is in a vessel and how it stands, in one line, for somebody who was away."""
    pieces = [*vessel_words(state, vessel)] or ["empty"]
    if vessel.on_heat:
        pieces.append("on the heat")
    if vessel.temperature_c is not None and vessel.temperature_s is not None:
        minutes = max(0.0, now_s - vessel.temperature_s) // 60
        ago = f"{show_duration(minutes)} ago" if minutes else "just now"
        pieces.append(f"{show_temperature(vessel.temperature_c)} read {ago}")
    step = state.running_in(vessel.name)
    if step is not None:
        pieces.append(f"{step.name}, {stretch_words(state, step, now_s)}")
    return f"{pot(state, vessel.name)}: {'; '.join(pieces)}"


def elsewhere_words(state: State) -> tuple[str, ...]:
    """What is out of the pots and not yet done: fibre, dyestuff in the sieve, kept baths."""
    lines = [f"{one.name}: {one.place}" for one in state.lots if one.place in (OUT_DRY, OUT_WET)]
    lines += [f"{one.name}: in the sieve" for one in state.dyestuffs if one.place == SIEVE]
    lines += [f'kept bath "{one.label}"' for one in state.kept]
    return tuple(lines)


def vessel_words(state: State, vessel: Vessel) -> tuple[str, ...]:
    """What is in a vessel, in short pieces: lots, what was added, its volume where a fact says it."""
    pieces = [one.name for one in state.lots_in(vessel.name)]
    pieces += [one.name for one in state.dyestuffs if one.place == vessel.name]
    if vessel.bath is not None:
        pieces += [f"{one.ingredient} {show_mass(one.mass_g)}" for one in vessel.bath.contents]
        pieces += [f"liquor of {one}" for one in vessel.bath.liquor_of if one not in pieces]
        if vessel.bath.volume_l:
            pieces.append(show_volume(vessel.bath.volume_l))
    return tuple(pieces)
