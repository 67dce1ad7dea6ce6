"""Facts and suggestions in the words of the trade: one place for line mode, screens and reports.

Pure; knows no screen. "A", "B" are the vessels' letters. Amounts are rounded for reading, never for reckoning.
"""

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.state import OUT_DRY, OUT_WET, SIEVE, State, StepState, Vessel
from dyesession.session.suggest import Ring, Suggestion, Wait
from dyesession.units import show_duration, show_mass, show_temperature, show_volume


def letter(state: State, vessel: str) -> str:
    """A vessel's letter, or its name where it has none yet."""
    found = state.vessel(vessel)
    return found.letter if found else vessel


def pot(state: State, vessel: str) -> str:
    """A vessel by letter and name: "B, the extract pot"."""
    return f"{letter(state, vessel)}, the {vessel}"


def wall_time(state: State, second: float) -> datetime | None:
    """The wall time of a session second, reckoned from the last entry; None before the first."""
    if state.instant is None:
        return None
    return state.instant.at + timedelta(seconds=second - state.now_s)


def clock_text(state: State, second: float) -> str:
    """Hours and minutes of a session second."""
    wall = wall_time(state, second)
    return f"{wall:%H:%M}" if wall else ""


def day_text(moment: datetime, now: datetime) -> str:
    """A wall time as it is said on another day: "07:00", "07:00 tomorrow", "18:20 yesterday", "07:00 on 16
    March".
    """
    days = (moment.date() - now.date()).days
    said = {0: "", 1: " tomorrow", -1: " yesterday"}
    return f"{moment:%H:%M}{said.get(days, f' on {moment.day} {MONTHS[moment.month - 1]}')}"


MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def when_text(state: State, second: float, now_s: float) -> str:
    """Hours and minutes of a session second, and the day where it is not today."""
    wall, now = wall_time(state, second), wall_time(state, now_s)
    return day_text(wall, now) if wall is not None and now is not None else ""


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
        return f"{wait.step} waits: begin it with a reason, or skip it" if step else "nothing left to do"
    step = state.step(wait.step)
    return after_words(state, step) if step else f"wait until {clock_text(state, wait.until_s)}"


def after_words(state: State, step: StepState) -> str:
    """What a running step will want when its countdown ends."""
    heat, name = c.segment(step), letter(state, step.plan.vessel or step.name)
    if heat is None:
        return f"look at the shade in {name}"
    if heat.kind == "to":
        return f"see whether {name} is at {show_temperature(heat.temperature_c or 0)}"
    if heat.kind == "cool_to":
        return f"see whether {name} has cooled to {show_temperature(heat.temperature_c or 0)}"
    if step.segment + 1 < len(step.plan.heat):
        return command_words(state, e.Lit(step.plan.vessel or "", on=step.plan.heat[step.segment + 1].kind == "to"))
    following = _following(state, step)
    if step.plan.judge is not None:
        return f"look at the shade in {name}"
    return following or f"finish {step.name}"


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


def _lit_words(state: State, event: e.Lit) -> str:
    if not event.on:
        return f"turn off the heat under {letter(state, event.vessel)}"
    step = state.running_in(event.vessel)
    heat = c.segment(step) if step else None
    aim = f" for {show_temperature(heat.temperature_c)}" if heat and heat.temperature_c is not None else ""
    return f"light the ring under {letter(state, event.vessel)}{aim}"


def _reached_words(state: State, event: e.Reached) -> str:
    at = f" is at {show_temperature(event.temperature_c)}" if event.temperature_c is not None else " is ready"
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
    return f"{event.step} is done"


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
    "entered": lambda s, ev: f"enter {ev.lot} into {letter(s, ev.vessel)}, wetted out",
    "lifted": lambda s, ev: f"lift {ev.lot} out of {letter(s, ev.vessel)}",
    "skipped": lambda s, ev: f"leave out {ev.step}: {ev.why}",
    "dipped": lambda s, ev: f"dip the {ev.snippet} in {letter(s, ev.vessel)}",
    "on-shade": lambda s, ev: f"on shade: end {ev.step}",
    "finished": _finish_words,
    "resumed": lambda s, ev: f"go on with {ev.step}",
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
        return "wait"
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
    "finished": lambda s, ev: f"{ev.step} done",
    "resumed": lambda s, ev: "go on",
    "kept": lambda s, ev: f"keep {letter(s, ev.vessel)}",
    "discarded": lambda s, ev: f"empty {letter(s, ev.vessel)}",
    "acknowledged": lambda s, ev: "I've seen it",
    "closed": lambda s, ev: "close the day",
}


def ring_words(state: State, ring: Ring) -> tuple[str, str]:
    """What rings (which pot, what, how overdue) and what to do about it."""
    step = state.step(ring.step)
    over = "now" if ring.over_s < 60 else f"{show_duration(ring.over_s // 60)} over"
    if step is None or step.countdown is None:
        return ring.step, ""
    where = pot(state, ring.vessel) if ring.vessel else ring.step
    target = step.countdown.target_c
    at = f" at {show_temperature(target)}" if target is not None else ""
    what = {
        "rise": f"should be{at}",
        "hold": f"its hold{at} is over",
        "cool": f"should have cooled{at.replace(' at ', ' to ')}",
        "rest": "its rest is over",
    }[step.countdown.kind]
    return f"{where}: {what}, {over}.", f"Go and {after_words(state, step)}, or give it longer."


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
    at = f" at {show_temperature(target_c)}" if target_c is not None else ""
    to = at.replace(" at ", " to ")
    doings = {"rise": f"heating{to}", "hold": f"keep{at}", "cool": f"cooling{to}", "rest": "resting"}
    doing = doings[countdown.kind]
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


def happened_words(state: State, event: e.Event) -> str:
    """One fact as it stands in the log: "alum 29 g added to A"."""
    say: Callable[[State, Any], str] | None = _PAST.get(event.kind)
    return say(state, event) if say else event.kind.replace("-", " ")


def _read_past(state: State, event: e.Read) -> str:
    where = letter(state, event.vessel) if event.vessel else event.lot
    parts = []
    if event.temperature_c is not None:
        parts.append(show_temperature(event.temperature_c))
    if event.volume_l is not None:
        parts.append(show_volume(event.volume_l))
    if event.mass_g is not None:
        parts.append(show_mass(event.mass_g))
    if event.ph is not None:
        parts.append(f"pH {event.ph:g}")
    if event.strength is not None:
        parts.append(f"strength {event.strength:g}")
    if event.colour:
        parts.append(f"colour {event.colour}, {'wet' if event.wet else 'dry'}")
    return f"{where} {event.how}: {', '.join(parts)}"


def _corrected_past(state: State, event: e.Corrected) -> str:
    if event.strike:
        return f"entry {event.entry} struck: {event.why}"
    changes = ", ".join(f"{one['key']} = {one['value']}" for one in event.changes)
    return f"entry {event.entry} corrected to {changes}: {event.why}"


_PAST: dict[str, Callable[[State, Any], str]] = {
    "begun": lambda s, ev: f"{ev.step} begun" + (f" early: {ev.early}" if ev.early else ""),
    "confirmed": lambda s, ev: f"answered {ev.answer} for {letter(s, ev.vessel)}",
    "put-off": lambda s, ev: f"not now, for {letter(s, ev.vessel)}",
    "weighed": lambda s, ev: f"{ev.ingredient} {show_mass(ev.mass_g)} weighed",
    "soaked": lambda s, ev: f"{ev.ingredient} put to soak in {letter(s, ev.vessel)}",
    "dissolved": lambda s, ev: f"{ev.ingredient} dissolved",
    "filled": lambda s, ev: f"{letter(s, ev.vessel)} filled with {show_volume(ev.volume_l)}",
    "added": lambda s, ev: f"{ev.ingredient} {show_mass(ev.mass_g)} into {letter(s, ev.vessel)}, {ev.how}",
    "lit": lambda s, ev: f"heat under {letter(s, ev.vessel)} {'on' if ev.on else 'off'}",
    "reached": lambda s, ev: (
        f"{letter(s, ev.vessel)} reached "
        f"{show_temperature(ev.temperature_c) if ev.temperature_c is not None else 'its heat'}"
    ),
    "read": _read_past,
    "paused": lambda s, ev: f"{ev.step} paused",
    "resumed": lambda s, ev: f"{ev.step} goes on",
    "extended": lambda s, ev: f"{ev.step} given {ev.minutes:g} min",
    "strained": lambda s, ev: (
        f"{letter(s, ev.vessel)} strained into {letter(s, ev.into)}"
        + (f", {show_volume(ev.volume_l)}" if ev.volume_l else "")
    ),
    "refreshed": lambda s, ev: f"fresh water in {letter(s, ev.vessel)}, {show_volume(ev.volume_l)}",
    "pooled": lambda s, ev: f"{letter(s, ev.vessel)} poured into {letter(s, ev.into)}",
    "topped-up": lambda s, ev: (
        f"{letter(s, ev.vessel)} topped up"
        + (f" to {show_volume(ev.to_l)}" if ev.to_l is not None else f" with {show_volume(ev.volume_l or 0)}")
    ),
    "entered": lambda s, ev: f"{ev.lot} into {letter(s, ev.vessel)}",
    "lifted": lambda s, ev: (
        f"{ev.lot} out of {letter(s, ev.vessel)}"
        + (f", {show_mass(ev.wet_mass_g)} wet" if ev.wet_mass_g else "")
    ),
    "dipped": lambda s, ev: f"{ev.snippet} dipped in {letter(s, ev.vessel)}",
    "on-shade": lambda s, ev: f"on shade: {ev.step} ended by eye",
    "finished": lambda s, ev: f"{ev.step} done",
    "skipped": lambda s, ev: f"{ev.step} left out: {ev.why}",
    "kept": lambda s, ev: (
        f'bath of {letter(s, ev.vessel)} kept as "{ev.label}"'
        + (f", {show_volume(ev.volume_l)}" if ev.volume_l else "")
    ),
    "drawn": lambda s, ev: f'"{ev.label}" poured into {letter(s, ev.vessel)}',
    "discarded": lambda s, ev: f"{letter(s, ev.vessel) if ev.vessel else ev.label} emptied",
    "replanned": lambda s, ev: f"plan changed ({ev.change} after {ev.step}): {ev.why}",
    "noted": lambda s, ev: f"note: {ev.text}",
    "corrected": _corrected_past,
    "acknowledged": lambda s, ev: f"seen: {ev.countdown.split('/')[0]}",
    "stopped": lambda s, ev: f"day ended early: {ev.why}",
    "aborted": lambda s, ev: f"broken off: {ev.why}",
    "cleared": lambda s, ev: "trouble cleared",
    "closed": lambda s, ev: "day closed" + (f": {ev.verdict}" if ev.verdict else ""),
    "cared": lambda s, ev: f"aftercare, {ev.what}: {ev.result or ev.colour}",
    "resumed-after-gap": lambda s, ev: f"opened again after {show_duration(ev.away_s // 60)}",
    "clock-changed": lambda s, ev: f"the wall clock moved by {ev.by_s:.0f} s",
    "recovered": lambda s, ev: f"{ev.bytes_aside} bytes of a torn end set aside",
    "alarm-raised": lambda s, ev: f"alarm: {letter(s, ev.vessel)} left {show_duration(ev.over_s // 60)}",
}
