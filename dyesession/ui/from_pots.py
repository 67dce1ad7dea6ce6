"""The pots as the Stove draws them: how full, what colour, which clock, and the two lines below. Pure.

Chooses and words; reckons nothing.
"""

from dyesession.account import Account
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.heating_up import NOTHING, heat_said
from dyesession.session.session import Snapshot
from dyesession.session.state import State, StepState, Vessel
from dyesession.ui import stove_view as v
from dyesession.units import by_eye, show_duration, show_mass, show_temperature, show_volume

UNKNOWN_FILL = 0.5  # drawn half full where neither pot nor volume is known


def pots_shown(snapshot: Snapshot[Account], now_s: float) -> tuple[v.Pot, ...]:
    """Every pot with a bath, fibre or a step in it, as it is drawn at a session second."""
    state = snapshot.state
    shown = [one for one in state.vessels if one.bath or state.lots_in(one.name) or state.running_in(one.name)]
    return tuple(_pot(snapshot, one, now_s) for one in shown)


def _pot(snapshot: Snapshot[Account], vessel: Vessel, now_s: float) -> v.Pot:
    state = snapshot.state
    step = state.running_in(vessel.name)
    due = step is not None and step.countdown is not None and c.due(step, now_s)
    heat = heat_said(state, snapshot.entries, vessel, now_s) if not due else NOTHING
    return v.Pot(
        letter=vessel.letter,
        name=vessel.name,
        fill=_fill(snapshot, vessel),
        liquor=_liquor(snapshot, vessel),
        clock=_clock(step, now_s),
        state=_pot_state(step, now_s),
        on_heat=vessel.on_heat,
        first=heat.short or pot_line(state, step, now_s),
        second="; ".join(one for one in (heat.more, _second_line(snapshot, vessel, now_s)) if one),
        loudness=state.vessels.index(vessel),
    )


def _volume_l(snapshot: Snapshot[Account], vessel: Vessel) -> float | None:
    estimate = snapshot.account.bath(vessel.name)
    if estimate is not None:
        return estimate.volume_l.mean
    return vessel.bath.volume_l if vessel.bath else None


def _fill(snapshot: Snapshot[Account], vessel: Vessel) -> float:
    if vessel.bath is None:
        return 0.0
    volume_l, capacity_l = _volume_l(snapshot, vessel), vessel.capacity_l
    if capacity_l is None:
        planned = [one.water_l for one in snapshot.plan.steps if one.vessel == vessel.name and one.water_l]
        capacity_l = max(planned) / v.FILL_MARK if planned else None
    if volume_l is None or not capacity_l:
        return UNKNOWN_FILL
    return min(1.0, volume_l / capacity_l)


def _liquor(snapshot: Snapshot[Account], vessel: Vessel) -> str | None:
    """The liquor's own colour, once it has been read and as long as the same bath stands there."""
    for entry in reversed(snapshot.entries):
        event = entry.event
        if isinstance(event, e.Read) and event.vessel == vessel.name and event.colour.startswith("#"):
            return event.colour
        if isinstance(event, e.Kept | e.Discarded | e.Filled) and event.vessel == vessel.name:
            return None
    return None


def _clock(step: StepState | None, now_s: float) -> v.Clock | None:
    if step is None or step.countdown is None:
        return None
    return v.countdown_clock(step.countdown.left_s(now_s))


def _pot_state(step: StepState | None, now_s: float) -> v.PotState:
    if step is None or (step.countdown is None and step.status != "paused"):
        return "waiting"
    if step.status == "paused":
        return "paused"
    if not c.due(step, now_s) or step.countdown is None:
        return "running"
    return "overdue" if step.countdown.left_s(now_s) < -60 else "due"


def pot_line(state: State, step: StepState | None, now_s: float) -> str:
    """What a pot's step is at, and until when: "85 °C until 12:06", "soak until morning"."""
    if step is None:
        return "waiting"
    if step.countdown is None:
        return f"{step.name}: getting ready"
    countdown = step.countdown
    until = words.clock_text(state, countdown.deadline_s)
    at = "" if countdown.target_c is None else _heat_in_short(state, countdown.target_c)
    was = ", was until" if c.due(step, now_s) else " until"
    if step.status == "paused":
        return f"{step.name}, paused"
    if countdown.kind == "rise":
        return f"up to {at}, look at {until}"
    if countdown.kind == "cool":
        return f"cooling to {at}, look {'in the morning' if countdown.overnight else f'at {until}'}"
    return f"{at or step.name}{was} {'morning' if countdown.overnight else until}"


def _heat_in_short(state: State, degrees_c: float) -> str:
    return by_eye(degrees_c) if state.by_eye else show_temperature(degrees_c)


def _second_line(snapshot: Snapshot[Account], vessel: Vessel, now_s: float) -> str:
    pieces = []
    if vessel.temperature_c is not None and vessel.temperature_s is not None:
        ago_min = int((now_s - vessel.temperature_s) // 60)
        when = "just now" if ago_min < 1 else f"{show_duration(ago_min)} ago"
        pieces.append(f"read {show_temperature(vessel.temperature_c)}, {when}")
    volume_l = _volume_l(snapshot, vessel)
    if volume_l:
        pieces.append(show_volume(volume_l, estimate=True))
    pieces += _contents(snapshot.state, vessel)
    return "; ".join(pieces)


def _contents(state: State, vessel: Vessel) -> list[str]:
    pieces = [one.name for one in state.lots_in(vessel.name)]
    pieces += [f"{one.name} {show_mass(one.mass_g)}" for one in state.dyestuffs if one.place == vessel.name]
    if vessel.bath is not None:
        pieces += [f"{one.ingredient} {show_mass(one.mass_g)}" for one in vessel.bath.contents]
    return pieces
