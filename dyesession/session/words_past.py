"""Facts as they stand in the log, in the words of the trade: "alum 29 g into A, weighed".

Pure; knows no screen. The orders of the day stand in `words`.
"""

from collections.abc import Callable
from typing import Any

from dyesession.plan.changes import (
    Draws,
    Enters,
    Miss,
    NewIngredient,
    NewStep,
    StillToAdd,
    Water,
    change_from_log,
)
from dyesession.plan.fit import LEAST_RATIO
from dyesession.plan.trouble import PlanError
from dyesession.session import events as e
from dyesession.session.fit import misfit_of_figures
from dyesession.session.names import letter
from dyesession.session.state import State
from dyesession.units import show_duration, show_mass, show_percent, show_temperature, show_volume


def happened_words(state: State, event: e.Event) -> str:
    """One fact as it stands in the log: "alum 29 g added to A"."""
    say: Callable[[State, Any], str] | None = _PAST.get(event.kind)
    if say is None:
        return event.kind.replace("-", " ")
    trouble = misfit_of_figures(event)
    return f"{event.kind.replace('-', ' ')}: {trouble}" if trouble else say(state, event)


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


def _replanned_past(state: State, event: e.Replanned) -> str:
    pieces = [plan_words(event), *change_words(event)]
    return f"plan changed: {'; '.join(pieces)}" + (f" ({event.why})" if event.why else "")


def plan_words(event: e.Replanned) -> str:
    """A change of the plan in a few words: "small skein, 75 g, joins"."""
    say = _CHANGES.get(event.change)
    return say(event) if say else event.change


_CHANGES: dict[str, Callable[[e.Replanned], str]] = {
    "refresh": lambda ev: f"one extraction more after {ev.step}",
    "lot joins": lambda ev: (
        f"{ev.lot}, {show_mass(ev.mass_g or 0.0)}, joins" + (f", {ev.mordanted}" if ev.mordanted else "")
    ),
    "lot weight": lambda ev: f"{ev.lot} weighs {show_mass(ev.mass_g or 0.0)}",
    "dose": lambda ev: (
        f"{ev.ingredient} {show_mass(ev.mass_g or 0.0)} in all"
        + (f", {show_percent(ev.value)} of the fibre" if ev.value is not None else "")
    ),
    "step": lambda ev: f"a stage comes in, {ev.step}" if ev.step else "a stage comes in",
    "draw": lambda ev: f"a kept bath goes in with {ev.step}",
    "recipe left": lambda ev: "the recipe is left",
}


def change_words(event: e.Replanned) -> tuple[str, ...]:
    """What a change of the plan means for what is left to do, one short piece each."""
    found = []
    for table in event.changes:
        try:
            change = change_from_log(table)
        except PlanError:
            continue  # the fold flags it; here there is nothing to say of it
        say = _PIECES.get(type(change))
        if say is not None:
            found.append(say(change))
    return tuple(found)


def _still_words(change: StillToAdd) -> str:
    if change.was_g <= 0.0:
        return f"{show_mass(change.mass_g)} {change.ingredient} more with {change.step}"
    now = show_mass(change.mass_g)
    return f"{change.ingredient} still to go in with {change.step}: {now}, not {show_mass(change.was_g)}"


def _water_words(change: Water) -> str:
    said = f"{show_volume(change.water_l)} for {change.step}, not {show_volume(change.was_l)}"
    ratio = 1000.0 * change.water_l / change.fibre_g if change.fibre_g > 0 else LEAST_RATIO
    if ratio >= LEAST_RATIO:
        return said
    return (
        f"{said}: only 1:{int(ratio)}, in which fibre cannot float, so dye in two goes or take a larger pot"
    )


def _miss_words(change: Miss) -> str:
    off = change.wanted_g - change.done_g
    much = "too little" if off > 0 else "too much"
    return (
        f"{show_mass(change.done_g)} {change.ingredient} went in with {change.step},"
        f" {show_mass(abs(off))} {much} as it stands now; what was done stays"
    )


def _draws_words(change: Draws) -> str:
    much = "all of" if change.draw_l is None else f"{show_volume(change.draw_l)} of"
    of = f" of {change.kept_by}" if change.kept_by else ""
    return f"{much} the kept bath {change.label}{of} into {change.step}, before its water"


_PIECES: dict[type[Any], Callable[[Any], str]] = {
    StillToAdd: _still_words,
    Water: _water_words,
    Miss: _miss_words,
    Draws: _draws_words,
    Enters: lambda change: f"{change.step} goes on with {' and '.join(change.enter)}",
    NewStep: lambda change: f"new: {change.step.name}",
    NewIngredient: lambda change: f"{change.ingredient} is {change.substance}",
}


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
    "replanned": _replanned_past,
    "noted": lambda s, ev: f"note: {ev.text}",
    "corrected": _corrected_past,
    "acknowledged": lambda s, ev: f"seen: {ev.countdown.split('/')[0]}",
    "stopped": lambda s, ev: f"day ended early: {ev.why}",
    "aborted": lambda s, ev: f"broken off: {ev.why}",
    "cleared": lambda s, ev: "trouble cleared",
    "closed": lambda s, ev: "day closed" + (f": {ev.verdict}" if ev.verdict else ""),
    "cared": lambda s, ev: f"aftercare, {ev.what}: {ev.result or ev.grade or ev.colour or ev.before}",
    "resumed-after-gap": lambda s, ev: f"opened again after {show_duration(ev.away_s // 60)}",
    "clock-changed": lambda s, ev: f"the wall clock moved by {ev.by_s:.0f} s",
    "recovered": lambda s, ev: f"{ev.bytes_aside} bytes of a torn end set aside",
    "alarm-raised": lambda s, ev: f"alarm: {letter(s, ev.vessel)} left {show_duration(ev.over_s // 60)}",
}
