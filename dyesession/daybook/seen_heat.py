"""What a day's thermometer says of its pots and its stove: how slowly a pot cools, what heat reaches it.

Pure. Cooling is told as a factor on the table in `dyeing.cooling`; heat as what is left for warming, losses
taken off already, which is what the length of a rise needs. Errors are judgement.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from dyesession.daybook.seen import About, Seen
from dyesession.daybook.walk import Pace
from dyesession.dyeing.cooling import TABLE_C, cooling_min
from dyesession.dyeing.eta import READING_SD_C
from dyesession.dyeing.heating import heat_capacity_kj_k, power_from_readings_w
from dyesession.dyeing.limits import OutOfRange
from dyesession.plan.minutes import TAP_C, USUAL_WATER_L
from dyesession.session import countdowns
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State

HOTTEST_C, COLDEST_C = TABLE_C[0], TABLE_C[-1]
LEAST_FALL_C, LEAST_RISE_C = 6.0, 20.0  # readings nearer than these say more of the thermometer; judgement
LATE = 1.1  # a rise that took this many times what was planned was as fast as the stove can; our own choice
FRESH_S = 900.0  # water filled in so lately is tap-cold; our own choice, no source
ROOM_SD, START_SD_C = 0.08, 4.0  # a room not at 20 °C; a start that was not read; judgement
SECONDS_PER_MIN, GRAMS_PER_KG = 60.0, 1000.0
WATER_MOVES = ("filled", "refreshed", "topped-up", "strained", "pooled", "kept", "discarded", "drawn", "entered")


@dataclass(frozen=True)
class _At:
    """A temperature at a session second; `read` is False for tap-cold water."""

    second: float
    celsius: float
    read: bool = True


def seen_in_heat(day: LoggedDay, paces: Sequence[Pace]) -> Iterator[Seen]:
    """What the readings of heat say."""
    pots = {one.name: one.pot or one.name for one in day.plan.vessels}
    yield from _cooling(day.name, paces, pots)
    yield from _power(day.name, paces)


def _cooling(day: str, paces: Sequence[Pace], pots: Mapping[str, str]) -> Iterator[Seen]:
    found: dict[str, list[tuple[float, float]]] = {}
    first: dict[str, _At] = {}
    last: dict[str, tuple[_At, float | None]] = {}

    def settle(vessel: str) -> None:
        start, end = first.pop(vessel, None), last.pop(vessel, None)
        if start is not None and end is not None:
            told = _factor(start, *end)
            if told is not None:
                found.setdefault(pots.get(vessel, vessel), []).append(told)

    for pace in paces:
        event = pace.entry.event
        vessel = getattr(event, "vessel", "")
        if event.kind in WATER_MOVES:
            settle(vessel)
            settle(getattr(event, "into", ""))
        if isinstance(event, e.Lit) and event.on:
            settle(vessel)
        for name in _just_off(pace):
            if name in first:
                first[name] = _At(pace.after.now_s, first[name].celsius)
        read_c = _read_c(event)
        state = pace.after.vessel(vessel) if read_c is not None else None
        if read_c is None or state is None or not COLDEST_C <= read_c <= HOTTEST_C:
            continue
        if pace.before.vessel(vessel) is not None and _heated(pace.before, vessel):
            first[vessel] = _At(pace.after.now_s, read_c)
            last.pop(vessel, None)
        elif vessel in first:
            last[vessel] = _At(pace.after.now_s, read_c), state.bath.volume_l if state.bath is not None else None
        else:
            first[vessel] = _At(pace.after.now_s, read_c)
    for vessel in tuple(first):
        settle(vessel)
    for pot, factors in found.items():
        value = median(one for one, _ in factors)
        yield Seen(About("cooling", pot), value, min(error for _, error in factors), day)


def _just_off(pace: Pace) -> Iterator[str]:
    """Pots that this entry took off the heat: they cool from now, from where they were held."""
    return (one.name for one in pace.before.vessels if one.on_heat and not _heated(pace.after, one.name))


def _heated(state: State, vessel: str) -> bool:
    there = state.vessel(vessel)
    return there is not None and there.on_heat


def _read_c(event: e.Event) -> float | None:
    if isinstance(event, e.Read | e.Confirmed):
        return event.temperature_c
    return event.temperature_c if isinstance(event, e.Reached) and event.how == "read" else None


def _factor(start: _At, end: _At, litres: float | None) -> tuple[float, float] | None:
    """Minutes it took over minutes of the table, and the error of its log."""
    fall_c, minutes = start.celsius - end.celsius, (end.second - start.second) / SECONDS_PER_MIN
    if fall_c < LEAST_FALL_C or minutes <= 0.0:
        return None
    table_min = cooling_min(start.celsius, end.celsius, litres or USUAL_WATER_L, lid_on=False)
    return minutes / table_min, math.hypot(ROOM_SD, math.sqrt(2.0) * READING_SD_C / fall_c)


def _power(day: str, paces: Sequence[Pace]) -> Iterator[Seen]:
    """The strongest rise of the day that the stove, and not the dyer's patience, set the pace of."""
    start: dict[str, _At] = {}
    warm: dict[str, _At] = {}
    found: list[tuple[float, float]] = []
    for pace in paces:
        event = pace.entry.event
        vessel = getattr(event, "vessel", "")
        now_s = pace.after.now_s
        if isinstance(event, e.ResumedAfterGap | e.Paused):
            start.clear()
        if isinstance(event, e.Filled | e.Refreshed):
            warm[vessel] = _At(now_s, TAP_C, read=False)
        read_c = _read_c(event)
        if isinstance(event, e.Reached) and read_c is not None and vessel in start:
            told = _watts(pace, vessel, start.pop(vessel), read_c)
            found += [told] if told is not None else []
        if read_c is not None:
            warm[vessel] = _At(now_s, read_c)
        if isinstance(event, e.Lit):
            known = warm.get(vessel)
            if event.on and known is not None and now_s - known.second <= FRESH_S:
                start[vessel] = _At(now_s, known.celsius, known.read)
            else:
                start.pop(vessel, None)
    if found:
        yield Seen(About("stove power"), *max(found), day)


def _watts(pace: Pace, vessel: str, start: _At, read_c: float) -> tuple[float, float] | None:
    """Watts left for warming, and the error of their log; None where the dyer took the time."""
    state, step = pace.before, pace.before.running_in(vessel)
    there = state.vessel(vessel)
    heat = countdowns.segment(step) if step is not None else None
    minutes = (pace.after.now_s - start.second) / SECONDS_PER_MIN
    rise_c = read_c - start.celsius
    litres = there.bath.volume_l if there is not None and there.bath is not None else None
    if heat is None or heat.kind != "to" or litres is None or minutes <= 0.0 or rise_c < LEAST_RISE_C:
        return None
    if heat.minutes is not None and minutes < LATE * heat.minutes:
        return None
    fibre_kg = sum(one.mass_g for one in state.lots_in(vessel)) / GRAMS_PER_KG
    error = math.hypot(READING_SD_C if start.read else START_SD_C, READING_SD_C) / rise_c
    try:
        watts = power_from_readings_w(heat_capacity_kj_k(litres, 0.0, fibre_kg), start.celsius, read_c, minutes)
    except OutOfRange:
        return None
    return watts, math.hypot(error, ROOM_SD)
