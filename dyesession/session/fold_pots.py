"""What facts do to pots, liquor, dyestuff and fibre: filled, added, strained, poured, entered, lifted, kept,
drawn.

Pure: facts' own times in, a changed state out.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.fold_heat import arrived, off, rested, warmed
from dyesession.session.fold_steps import ended
from dyesession.session.state import (
    ENDED,
    OUT_WET,
    SIEVE,
    Bath,
    Content,
    KeptBath,
    Lot,
    PutIn,
    State,
    StepState,
    Vessel,
)

LEAST_TOPPED_L = 0.1  # what nobody tops up: a jug's mark and an eye; our own choice, no source
SNIPPET_G = 1.5  # "1-2 g of the same fibre"; common practice, no source


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
    """Booked to the running step; its next addition is done, when this was it."""
    step = state.running_in(event.vessel)
    booked = PutIn(step.name if step else "", event.ingredient, event.mass_g)
    state = replace(state, put_in=(*state.put_in, booked))
    if step is None or (waiting := step.next_addition) is None or waiting.ingredient != event.ingredient:
        return state
    return state.with_step(step.name, lambda one: replace(one, added=one.added + 1))


def _read(state: State, event: e.Read, at: c.Moment) -> State:
    if event.vessel and event.temperature_c is not None:
        state = arrived(
            warmed(state, event.vessel, event.temperature_c, at), event.vessel, event.temperature_c
        )
    if event.vessel and event.volume_l is not None:
        state = _with_bath(state, event.vessel, lambda one: replace(one, volume_l=event.volume_l))
    if event.lot and event.colour:
        state = state.with_lot(event.lot, lambda one: replace(one, colour=event.colour))
    return state


def _poured(state: State, source: str, into: str, volume_l: float | None, whole: bool) -> State:
    """Liquor from one vessel into another, into what is there already."""
    vessel = state.vessel(source)
    if vessel is None or vessel.bath is None:
        return state
    bath = vessel.bath
    kept_back = None if whole else replace(bath, volume_l=_less(bath.volume_l, volume_l))
    state = state.with_vessel(source, lambda one: replace(one, bath=kept_back))
    return _into(state, into, bath, volume_l, uses=0)


def _into(state: State, vessel: str, bath: Bath, volume_l: float | None, uses: int) -> State:
    """Liquor into a vessel: its own bath where there was none, with that many uses behind it."""
    target = state.vessel(vessel)
    if target is None or target.bath is None:
        return _new_bath(state, vessel, replace(bath, volume_l=volume_l, uses=uses))
    return _with_bath(state, vessel, lambda one: _joined(one, bath, volume_l))


def _less(there_l: float | None, taken_l: float | None) -> float | None:
    return None if there_l is None or taken_l is None else max(0.0, there_l - taken_l)


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
    state = state.with_vessel(event.vessel, off)
    step = state.running_in(event.vessel)
    if step is None or step.plan.stage != "strain":
        return state
    return ended(state.with_step(step.name, lambda one: replace(one, strained=True)), step.name, at)


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


def _kept(state: State, event: e.Kept, at: c.Moment) -> State:
    vessel = state.vessel(event.vessel)
    if vessel is None or vessel.bath is None:
        return state
    bath = vessel.bath if event.volume_l is None else replace(vessel.bath, volume_l=event.volume_l)
    state = replace(state, kept=(*state.kept, KeptBath(event.label, bath)))
    return state.with_vessel(event.vessel, _empty)


def _empty(vessel: Vessel) -> Vessel:
    return replace(rested(vessel), bath=None)


def _drawn(state: State, event: e.Drawn, at: c.Moment) -> State:
    """A kept bath poured in: the one kept today under that label, else one of another day as the entry tells
    it.

    The next step in that vessel is done in it, so its water is topped up and not poured away.
    """
    state, bath, volume_l = _off_the_shelf(state, event)
    state = _into(state, event.vessel, bath, volume_l, bath.uses)
    if (step := _drawn_as_planned(state, event)) is not None:
        return _in_before_the_water(state, step)
    return _water_in(_kept_for_next(state, event.vessel), event.vessel)


def _drawn_as_planned(state: State, event: e.Drawn) -> StepState | None:
    """The step that this bath was to be poured in for, where its water is still to come."""
    steps = (one for one in state.steps if one.plan.vessel == event.vessel and one.status not in ENDED)
    return next((one for one in steps if one.draw is not None and one.draw.label == event.label), None)


def _in_before_the_water(state: State, step: StepState) -> State:
    """The rest of the step's water is topped up; where there is as much as it wants, it has its water."""
    vessel = state.vessel(step.plan.vessel)
    there_l = vessel.bath.volume_l if vessel is not None and vessel.bath is not None else None
    wanted_l = step.plan.water_l
    enough = wanted_l is None or (there_l is not None and there_l > wanted_l - LEAST_TOPPED_L)
    plan = replace(step.plan, fresh_water=False)
    return state.with_step(step.name, lambda one: replace(one, plan=plan, draw=None, filled=one.filled or enough))


def _off_the_shelf(state: State, event: e.Drawn) -> tuple[State, Bath, float | None]:
    """What is drawn and how much of it, and the state without it; what is left stays kept."""
    kept = next((one for one in state.kept if one.label == event.label), None)
    if kept is None:
        return state, Bath(0, event.volume_l, liquor_of=event.contents, uses=1), event.volume_l
    there_l, taken_l = kept.bath.volume_l, event.volume_l
    if taken_l is None or (there_l is not None and taken_l >= there_l):
        rest = tuple(one for one in state.kept if one is not kept)
        return replace(state, kept=rest), kept.bath, there_l if taken_l is None else taken_l
    left_l = None if there_l is None else there_l - taken_l
    left = KeptBath(kept.label, replace(kept.bath, volume_l=left_l))
    return replace(state, kept=tuple(left if one is kept else one for one in state.kept)), kept.bath, taken_l


def _kept_for_next(state: State, vessel: str) -> State:
    if state.running_in(vessel) is not None:
        return state
    waiting = next(
        (one for one in state.steps if one.status == "waiting" and one.plan.vessel == vessel), None
    )
    if waiting is None or not waiting.plan.fresh_water:
        return state
    return state.with_step(waiting.name, lambda one: replace(one, plan=replace(one.plan, fresh_water=False)))


def _discarded(state: State, event: e.Discarded, at: c.Moment) -> State:
    if event.label:
        return replace(state, kept=tuple(one for one in state.kept if one.label != event.label))
    return state.with_vessel(event.vessel, _empty)


CHANGES: Mapping[str, Callable[[State, Any, c.Moment], State]] = {
    "filled": _filled,
    "added": _added,
    "read": _read,
    "strained": _strained,
    "refreshed": _refreshed,
    "pooled": _pooled,
    "topped-up": _topped_up,
    "entered": _entered,
    "lifted": _lifted,
    "dipped": _dipped,
    "kept": _kept,
    "drawn": _drawn,
    "discarded": _discarded,
}
