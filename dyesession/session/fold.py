"""State is the fold of the facts. `apply` never raises: what no longer fits is flagged beside the entry.

Pure: an entry carries its own times. Account entries are ignored (they are what was shown, not what was).
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from dyesession.clock import Instant, elapsed_s
from dyesession.plan.model import Plan, PlannedStep
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.fit import misfit, misfit_of_figures
from dyesession.session.state import (
    DONE,
    ENDED,
    OUT_DRY,
    OUT_WET,
    SIEVE,
    Bath,
    Content,
    Dyestuff,
    KeptBath,
    Lot,
    State,
    StepState,
    Vessel,
)


@dataclass(frozen=True)
class Entry:
    """One line of the day: its number, when it was recorded, when it happened (None: then), the fact.

    `trouble` says what the log reader found wrong with it (a seal that does not fit), "" when nothing.
    """

    n: int
    instant: Instant
    event: e.Event
    happened: datetime | None = None
    trouble: str = ""


def opening_state(plan: Plan) -> State:
    """The state before anything was done: the plan's steps, lots, dyestuffs and vessels."""
    roles = {one.ingredient: one.role for one in plan.doses}
    return State(
        steps=tuple(StepState(one) for one in plan.steps),
        lots=tuple(Lot(one.name, one.kind, one.mass_g) for one in plan.lots),
        dyestuffs=tuple(
            Dyestuff(one.ingredient, one.substance) for one in plan.doses if one.role == "dyestuff"
        ),
        vessels=tuple(Vessel(one.name, one.letter, one.capacity_l, one.material) for one in plan.vessels),
        substances=tuple((one.ingredient, one.substance) for one in plan.doses if one.ingredient in roles),
    )


def fold(opening: State, entries: Iterable[Entry], opened: Instant) -> State:
    """The state after all entries, corrections carried out: a corrected entry counts as corrected."""
    state = replace(opening, instant=opened)
    for entry in effective(tuple(entries)):
        state = apply(state, entry)
    return state


def effective(entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """The entries as the corrections among them leave them; the newest correction of an entry wins."""
    latest: dict[int, e.Corrected] = {}
    for entry in entries:
        if isinstance(entry.event, e.Corrected):
            latest[entry.event.entry] = entry.event
    return tuple(_as_corrected(one, latest[one.n]) if one.n in latest else one for one in entries)


def _as_corrected(entry: Entry, correction: e.Corrected) -> Entry:
    if correction.strike:
        return replace(entry, event=e.Noted(f"struck: {correction.why}"))
    data = e.event_fields(entry.event)
    for change in correction.changes:
        data[str(change["key"])] = change["value"]
    return replace(entry, event=e.event_from_fields(entry.event.kind, data))


def correction_misfit(entries: Iterable[Entry], event: e.Corrected) -> str | None:
    """Why a correction cannot be carried out on these entries, in one sentence, or None when it can."""
    entry = next((one for one in entries if one.n == event.entry), None)
    if entry is None:
        return f"there is no entry {event.entry}"
    if entry.event.kind in e.PROGRAM_KINDS | {"corrected", "unknown"}:
        return f"entry {entry.n} is the program's own or a correction: correct the entry that it was about"
    known = vars(entry.event)
    for change in event.changes:
        key = str(change.get("key", ""))
        if key not in known or isinstance(known[key], tuple):
            fields = ", ".join(known) or "nothing"
            return f'entry {entry.n} ({entry.event.kind}) has no "{key}" to set: it has {fields}'
        if isinstance(known[key], str) != isinstance(change.get("value"), str) and known[key] is not None:
            wanted = "words were" if isinstance(known[key], str) else "a figure was"
            return f'"{change.get("value")}" cannot be the {key} of entry {entry.n}: {wanted} expected'
    return misfit_of_figures(_as_corrected(entry, event).event)


def apply(state: State, entry: Entry) -> State:
    """The state after one entry. Time never runs backwards; a fact may have `happened` a while ago."""
    instant, event = entry.instant, entry.event
    if state.instant is not None:
        state = replace(state, now_s=state.now_s + elapsed_s(state.instant, instant).seconds)
    state = replace(state, n=entry.n, instant=instant)
    if event.kind in _IGNORED:
        return state
    ago_s = 0.0 if entry.happened is None else max(0.0, (instant.at - entry.happened).total_seconds())
    moment = c.Moment(max(0.0, state.now_s - ago_s), entry.happened or instant.at)
    if trouble := misfit(state, event):
        return state.flagged(trouble)
    change: Callable[[State, Any, c.Moment], State] | None = _CHANGES.get(event.kind)
    changed = change(state, event, moment) if change else state
    return c.settle(changed, moment) if changed.status == "open" else changed


_IGNORED = frozenset({"account", "resumed-after-gap", "clock-changed", "recovered", "unknown", "corrected"})


def _begun(state: State, event: e.Begun, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: replace(one, status="running", begun_s=at.s))


def _answered(state: State, event: e.Confirmed | e.PutOff, at: c.Moment) -> State:
    state = replace(state, answered=(*state.answered, event.ask))
    if isinstance(event, e.Confirmed) and event.temperature_c is not None and event.vessel:
        return _warmed(state, event.vessel, event.temperature_c, at)
    return state


def _warmed(state: State, vessel: str, temperature_c: float, at: c.Moment) -> State:
    return state.with_vessel(
        vessel, lambda one: replace(one, temperature_c=temperature_c, temperature_s=at.s)
    )


def _weighed(state: State, event: e.Weighed, at: c.Moment) -> State:
    others = tuple(one for one in state.weighed if one[0] != event.ingredient)
    return replace(state, weighed=(*others, (event.ingredient, event.mass_g)))


def _new_bath(state: State, vessel: str, bath: Bath) -> State:
    state = replace(state, baths_made=state.baths_made + 1)
    numbered = replace(bath, number=state.baths_made)
    return state.with_vessel(vessel, lambda one: replace(one, bath=numbered, reached_c=None))


def _with_bath(state: State, vessel: str, change: Callable[[Bath], Bath]) -> State:
    return state.with_vessel(
        vessel, lambda one: replace(one, bath=change(one.bath) if one.bath is not None else None)
    )


def _water_in(state: State, vessel: str) -> State:
    """The running step in that vessel has its water."""
    step = state.running_in(vessel)
    return state.with_step(step.name, lambda one: replace(one, filled=True)) if step else state


def _filled(state: State, event: e.Filled, at: c.Moment) -> State:
    return _water_in(_new_bath(state, event.vessel, Bath(0, event.volume_l)), event.vessel)


def _added(state: State, event: e.Added, at: c.Moment) -> State:
    state = replace(state, weighed=tuple(one for one in state.weighed if one[0] != event.ingredient))
    vessel = state.vessel(event.vessel)
    if vessel is None or vessel.bath is None:
        state = _new_bath(state, event.vessel, Bath(0, 0.0))
    if state.dyestuff(event.ingredient):
        state = state.with_dyestuff(
            event.ingredient, lambda one: replace(one, mass_g=one.mass_g + event.mass_g, place=event.vessel)
        )
        state = _with_bath(state, event.vessel, lambda one: _of(one, event.ingredient))
    else:
        content = Content(event.ingredient, event.mass_g)
        state = _with_bath(state, event.vessel, lambda one: replace(one, contents=(*one.contents, content)))
    return _ticked_off(state, event)


def _of(bath: Bath, dyestuff: str) -> Bath:
    return replace(bath, liquor_of=tuple(dict.fromkeys((*bath.liquor_of, dyestuff))))


def _ticked_off(state: State, event: e.Added) -> State:
    """The running step's next addition is done, when this was it."""
    step = state.running_in(event.vessel)
    if step is None or (waiting := step.next_addition) is None or waiting.ingredient != event.ingredient:
        return state
    return state.with_step(step.name, lambda one: replace(one, added=one.added + 1))


def _lit(state: State, event: e.Lit, at: c.Moment) -> State:
    state = state.with_vessel(event.vessel, lambda one: replace(one, on_heat=event.on))
    step = state.running_in(event.vessel)
    heat = c.segment(step) if step else None
    if step is None or heat is None or heat.kind not in ("hold", "rest") or not c.due(step, at.s):
        return state
    return state.with_step(step.name, c.next_segment)


def _reached(state: State, event: e.Reached, at: c.Moment) -> State:
    step = state.running_in(event.vessel)
    heat = c.segment(step) if step else None
    temperature_c = event.temperature_c
    if step is not None and heat is not None and heat.kind in ("to", "cool_to"):
        temperature_c = heat.temperature_c if temperature_c is None else temperature_c
        state = state.with_step(step.name, c.next_segment)
    if event.how == "read" and temperature_c is not None:
        state = _warmed(state, event.vessel, temperature_c, at)
        return state.with_vessel(event.vessel, lambda one: replace(one, reached_c=temperature_c))
    # An older reading says nothing of the pot any more.
    return state.with_vessel(
        event.vessel,
        lambda one: replace(one, reached_c=temperature_c, temperature_c=None, temperature_s=None),
    )


def _read(state: State, event: e.Read, at: c.Moment) -> State:
    if event.vessel and event.temperature_c is not None:
        state = _arrived(_warmed(state, event.vessel, event.temperature_c, at), event.vessel, event.temperature_c)
    if event.vessel and event.volume_l is not None:
        state = _with_bath(state, event.vessel, lambda one: replace(one, volume_l=event.volume_l))
    if event.lot and event.colour:
        state = state.with_lot(event.lot, lambda one: replace(one, colour=event.colour))
    return state


NEAR_ENOUGH_C = 1.0
"""A reading this near the wanted heat has reached it: kitchen thermometers show whole degrees; common
practice, no
source."""


def _arrived(state: State, vessel: str, temperature_c: float) -> State:
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


def _paused(state: State, event: e.Paused, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: c.paused(one, at.s))


def _resumed(state: State, event: e.Resumed, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: c.resumed(one, at.s))


def _extended(state: State, event: e.Extended, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: c.extended(one, event.minutes))


def _poured(state: State, source: str, into: str, volume_l: float | None, whole: bool) -> State:
    """Liquor from one vessel into another, into what is there already."""
    vessel = state.vessel(source)
    if vessel is None or vessel.bath is None:
        return state
    bath, target = vessel.bath, state.vessel(into)
    left = None if bath.volume_l is None or volume_l is None else max(0.0, bath.volume_l - volume_l)
    kept_back = None if whole else replace(bath, volume_l=left)
    state = state.with_vessel(source, lambda one: replace(one, bath=kept_back))
    if target is None or target.bath is None:
        poured = replace(bath, volume_l=volume_l, uses=0)
        return _new_bath(state, into, poured)
    return _with_bath(state, into, lambda one: _joined(one, bath, volume_l))


def _joined(there: Bath, poured: Bath, volume_l: float | None) -> Bath:
    total = None if there.volume_l is None or volume_l is None else there.volume_l + volume_l
    return replace(
        there,
        volume_l=total,
        contents=(*there.contents, *poured.contents),
        liquor_of=tuple(dict.fromkeys((*there.liquor_of, *poured.liquor_of))),
        uses=max(there.uses, poured.uses),
    )


def _strained(state: State, event: e.Strained, at: c.Moment) -> State:
    inside = [one.name for one in state.dyestuffs if one.place == event.vessel]
    state = _poured(state, event.vessel, event.into, event.volume_l, whole=True)
    for name in inside:
        state = state.with_dyestuff(name, lambda one: replace(one, place=SIEVE, pulls=one.pulls + 1))
    state = state.with_vessel(event.vessel, _off)
    step = state.running_in(event.vessel)
    if step is None or step.plan.stage != "strain":
        return state
    return _ended(state.with_step(step.name, lambda one: replace(one, strained=True)), step.name, at)


def _ended(state: State, name: str, at: c.Moment) -> State:
    return state.with_step(name, lambda one: replace(one, status="complete", ended_s=at.s, countdown=None))


def _refreshed(state: State, event: e.Refreshed, at: c.Moment) -> State:
    waiting = [one.name for one in state.dyestuffs if one.place == SIEVE]
    state = _new_bath(state, event.vessel, Bath(0, event.volume_l, liquor_of=tuple(waiting)))
    for name in waiting:
        state = state.with_dyestuff(name, lambda one: replace(one, place=event.vessel))
    return _water_in(state, event.vessel)


def _pooled(state: State, event: e.Pooled, at: c.Moment) -> State:
    return _poured(state, event.vessel, event.into, event.volume_l, whole=event.volume_l is None)


def _topped_up(state: State, event: e.ToppedUp, at: c.Moment) -> State:
    def level(bath: Bath) -> Bath:
        if event.to_l is not None:
            return replace(bath, volume_l=event.to_l)
        known = bath.volume_l is not None and event.volume_l is not None
        return replace(bath, volume_l=(bath.volume_l or 0) + (event.volume_l or 0) if known else None)

    return _water_in(_with_bath(state, event.vessel, level), event.vessel)


def _entered(state: State, event: e.Entered, at: c.Moment) -> State:
    state = state.with_lot(event.lot, lambda one: replace(one, place=event.vessel))
    state = _with_bath(state, event.vessel, lambda one: replace(one, uses=one.uses + 1))
    step = state.running_in(event.vessel)
    if step is None:
        return state
    return state.with_step(step.name, lambda one: replace(one, entered=(*one.entered, event.lot)))


def _lifted(state: State, event: e.Lifted, at: c.Moment) -> State:
    return state.with_lot(
        event.lot, lambda one: replace(one, place=OUT_WET, wet_mass_g=event.wet_mass_g or one.wet_mass_g)
    )


def _dipped(state: State, event: e.Dipped, at: c.Moment) -> State:
    if state.lot(event.snippet) is None:
        kind = next((one.kind for one in state.lots if not one.snippet), "wool")
        snippet = Lot(event.snippet, kind, SNIPPET_G, OUT_WET, snippet=True)
        state = replace(state, lots=(*state.lots, snippet))
    return state.with_lot(event.snippet, lambda one: replace(one, place=event.vessel))


SNIPPET_G = 1.5  # "1-2 g of the same fibre"; common practice, no source


def _on_shade(state: State, event: e.OnShade, at: c.Moment) -> State:
    return _closed_step(state, event.step, at)


def _finished(state: State, event: e.Finished, at: c.Moment) -> State:
    return _closed_step(state, event.step, at)


def _closed_step(state: State, name: str, at: c.Moment) -> State:
    """The step is complete and the heat under its vessel is off."""
    step = state.step(name)
    state = _ended(state, name, at)
    if step is None or step.plan.vessel is None:
        return _dried(state, step)
    return state.with_vessel(step.plan.vessel, _rested if _rests(step) else _off)


def _rests(step: StepState) -> bool:
    """Whether the step ends with a night's rest: nobody knows then how warm its pot still is."""
    return bool(step.plan.heat) and step.plan.heat[-1].overnight


def _off(vessel: Vessel) -> Vessel:
    return replace(vessel, on_heat=False)


def _rested(vessel: Vessel) -> Vessel:
    return replace(vessel, on_heat=False, reached_c=None, temperature_c=None, temperature_s=None)


def _dried(state: State, step: StepState | None) -> State:
    if step is None or step.plan.stage != "dry":
        return state
    dry = tuple(
        replace(one, place=OUT_DRY) if one.place == OUT_WET else one for one in state.lots
    )
    return replace(state, lots=dry)


def _skipped(state: State, event: e.Skipped, at: c.Moment) -> State:
    """The step is left out; with an extraction go its strain and the extractions after it."""
    names = {event.step}
    first = state.step(event.step)
    if first is not None and first.plan.stage == "extract" and first.plan.again:
        names |= _later_pulls(state, first.plan)
    for name in names:
        state = state.with_step(name, lambda one: _left_out(one, event.why, at))
    return state


def _later_pulls(state: State, first: PlannedStep) -> set[str]:
    return {
        one.name
        for one in state.steps
        if one.plan.of == first.of and one.plan.again >= first.again and one.status == "waiting"
    }


def _left_out(step: StepState, why: str, at: c.Moment) -> StepState:
    if step.status in ENDED:
        return step
    return replace(step, status="skipped", why=why, ended_s=at.s, countdown=None)


def _kept(state: State, event: e.Kept, at: c.Moment) -> State:
    vessel = state.vessel(event.vessel)
    if vessel is None or vessel.bath is None:
        return state
    bath = vessel.bath if event.volume_l is None else replace(vessel.bath, volume_l=event.volume_l)
    state = replace(state, kept=(*state.kept, KeptBath(event.label, bath)))
    return state.with_vessel(event.vessel, _empty)


def _empty(vessel: Vessel) -> Vessel:
    return replace(_rested(vessel), bath=None)


def _drawn(state: State, event: e.Drawn, at: c.Moment) -> State:
    vessel = state.vessel(event.vessel)
    drawn = Bath(0, event.volume_l, liquor_of=event.contents, uses=1)
    if vessel is None or vessel.bath is None:
        state = _new_bath(state, event.vessel, drawn)
    else:
        state = _with_bath(state, event.vessel, lambda one: _joined(one, drawn, event.volume_l))
    return _water_in(state, event.vessel)


def _discarded(state: State, event: e.Discarded, at: c.Moment) -> State:
    if event.label:
        return replace(state, kept=tuple(one for one in state.kept if one.label != event.label))
    return state.with_vessel(event.vessel, _empty)


def _replanned(state: State, event: e.Replanned, at: c.Moment) -> State:
    """One extraction and one strain more, after the strain named; what waited for it waits for the new one.
    """
    last = state.step(event.step)
    if last is None:
        return state
    pulls = [one for one in state.steps if one.plan.of == last.plan.of]
    extract = next((one.plan for one in reversed(pulls) if one.plan.stage == "extract"), None)
    if extract is None:
        return state
    again = max(one.plan.again for one in pulls) + 1
    more = replace(extract, name=f"extract {again + 1}", again=again, after=(last.name,), add=())
    strain = replace(last.plan, name=f"strain {again + 1}", again=again, after=(more.name,))
    at_index = state.steps.index(last) + 1
    moved = tuple(_after_instead(one, last.name, strain.name) for one in state.steps)
    return replace(
        state, steps=(*moved[:at_index], StepState(more), StepState(strain), *moved[at_index:])
    )


def _after_instead(step: StepState, old: str, new: str) -> StepState:
    after = tuple(new if one == old else one for one in step.plan.after)
    return replace(step, plan=replace(step.plan, after=after)) if step.status == "waiting" else step


def _acknowledged(state: State, event: e.Acknowledged, at: c.Moment) -> State:
    return _on_countdown(state, event.countdown, lambda one: replace(one, acknowledged_s=at.s))


def _raised(state: State, event: e.AlarmRaised, at: c.Moment) -> State:
    return _on_countdown(state, event.countdown, lambda one: replace(one, raised=True))


def _on_countdown(state: State, key: str, change: Callable[[Any], Any]) -> State:
    for step in state.steps:
        if step.countdown is not None and step.countdown.key == key:
            changed = change(step.countdown)
            state = state.with_step(step.name, lambda one, new=changed: replace(one, countdown=new))  # type: ignore[misc]
    return state


def _stopped(state: State, event: e.Stopped, at: c.Moment) -> State:
    steps = tuple(
        one if one.status in ENDED else replace(one, status="stopped", ended_s=at.s, countdown=None)
        for one in state.steps
    )
    return replace(state, status="stopped", why=event.why, steps=steps)


def _aborted(state: State, event: e.Aborted, at: c.Moment) -> State:
    steps = tuple(c.paused(one, at.s) if one.status == "running" else one for one in state.steps)
    vessels = tuple(replace(one, on_heat=False) for one in state.vessels)
    return replace(state, status="aborted", why=event.why, steps=steps, vessels=vessels)


def _cleared(state: State, event: e.Cleared, at: c.Moment) -> State:
    return replace(state, status="open", why="")


def _closed(state: State, event: e.Closed, at: c.Moment) -> State:
    lots = tuple(replace(one, place=DONE) for one in state.lots)
    return replace(state, status="complete", verdict=event.verdict, lots=lots)


def _noted(state: State, event: e.Noted, at: c.Moment) -> State:
    return replace(state, notes=(*state.notes, event.text))


_CHANGES: Mapping[str, Callable[[State, Any, c.Moment], State]] = {
    "begun": _begun,
    "confirmed": _answered,
    "put-off": _answered,
    "weighed": _weighed,
    "filled": _filled,
    "added": _added,
    "lit": _lit,
    "reached": _reached,
    "read": _read,
    "paused": _paused,
    "resumed": _resumed,
    "extended": _extended,
    "strained": _strained,
    "refreshed": _refreshed,
    "pooled": _pooled,
    "topped-up": _topped_up,
    "entered": _entered,
    "lifted": _lifted,
    "dipped": _dipped,
    "on-shade": _on_shade,
    "finished": _finished,
    "skipped": _skipped,
    "kept": _kept,
    "drawn": _drawn,
    "discarded": _discarded,
    "replanned": _replanned,
    "noted": _noted,
    "acknowledged": _acknowledged,
    "alarm-raised": _raised,
    "stopped": _stopped,
    "aborted": _aborted,
    "cleared": _cleared,
    "closed": _closed,
}
