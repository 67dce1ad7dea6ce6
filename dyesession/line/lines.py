"""The day as printed lines: where you are, what was done, what comes next. One fact, one line; no drawing.

The words are those of `session.words` and `account.say`; this room only puts them in order.
"""

from collections.abc import Sequence
from dataclasses import replace

from dyesession.account import line as said_line
from dyesession.account import sentences
from dyesession.account.model import Account, LedgerLine
from dyesession.account.say import rounded_band
from dyesession.line.home import Home
from dyesession.session import events as e
from dyesession.session.amiss import amiss_words
from dyesession.session.asking import Ask, Cared, caring
from dyesession.session.fold import Entry, effective
from dyesession.session.from_shelf import next_in
from dyesession.session.heating_up import heat_said
from dyesession.session.session import Snapshot
from dyesession.session.state import State
from dyesession.session.suggest import Ring, Suggestion, Wait, rings
from dyesession.session.words import (
    clock_text,
    day_text,
    elsewhere_words,
    happened_words,
    next_words,
    pot_words,
    ring_words,
    running_words,
    stretch_words,
)
from dyesession.units import show_mass

LAST_DONE = 4
_PUT_IN = ("added", "filled", "topped-up", "strained", "refreshed", "pooled", "entered", "drawn")


def head_line(day: Snapshot[Account]) -> str:
    """The day in one line: the recipe and the fibre."""
    lots = (
        f"{'' if one.name == one.kind else f'{one.name} '}{show_mass(one.mass_g)} {one.kind}"
        for one in day.plan.lots
    )
    return f"{day.recipe}: {', '.join(lots)}."


def entry_line(state: State, entry: Entry) -> str:
    """One entry: the time it happened (and the day, where that is not the last entry's), and what."""
    at = entry.happened or entry.instant.at
    return f"{day_text(at, state.instant.at if state.instant else at)} {happened_words(state, entry.event)}"


def new_lines(day: Snapshot[Account], after: int, home: Home) -> tuple[str, ...]:
    """The entries numbered above `after`, with the reminders of each step begun; estimates are left out."""
    found: list[str] = []
    for entry in day.entries:
        if entry.n <= after or isinstance(entry.event, e.Accounted):
            continue
        found.append(f"{entry_line(day.state, entry)}.")
        if isinstance(entry.event, e.Begun):
            found += _begun_lines(day.state, entry.event, home)
    return tuple(found)


def _begun_lines(state: State, event: e.Begun, home: Home) -> list[str]:
    step = state.step(event.step)
    said = [f"HOW {step.plan.say}"] if step is not None and step.plan.say else []
    return [*said, *cared_lines(caring(state, None, event.step, home.household, home.poison_centre))]


def cared_lines(cared: Cared) -> tuple[str, ...]:
    """Reminders, the worst first, and the first aid of the worst behind it."""
    care = [f"CARE {text}" for text in cared.texts]
    return (*care[:1], *([f"FIRST AID {cared.first_aid}"] if cared.first_aid else []), *care[1:])


def care_lines(day: Snapshot[Account], home: Home) -> tuple[str, ...]:
    """The reminders of every step under way, each once."""
    state = day.state
    running = [one.name for one in state.steps if one.status in ("running", "paused")]
    cared = [caring(state, None, name, home.household, home.poison_centre) for name in running]
    begun = [one.event for one in day.entries if isinstance(one.event, e.Begun) and one.event.step in running]
    now = [line for one in cared for line in cared_lines(one)]
    return tuple(dict.fromkeys((*now, *(f"CARE {text}" for one in begun for text in one.reminders))))


def account_line(day: Snapshot[Account]) -> str:
    """The bath's strength in one sentence, "" when there is no bath."""
    said = sentences(day.account, day.plan)
    return said_line(said[0]) if said else ""


def ledger_line(day: Snapshot[Account], line: LedgerLine) -> str:
    """One movement of a bath: when, what, litres and grams."""
    litres = line.volume_change_l
    changes = [f"{_signed(litres.mean)}{rounded_band(litres, 'L')}"] if litres.mean else []
    changes += [
        f"{_signed(one.grams.mean)}{rounded_band(one.grams, 'g')} {one.lot}"
        for one in line.changes
        if one.grams.mean
    ]
    amounts = f": {', '.join(changes)}" if changes else ""
    return f"{clock_text(day.state, line.second)} {line.vessel}, {line.what}{amounts}, {line.how}"


def _signed(value: float) -> str:
    return "+" if value > 0 else ""


def step_lines(state: State, now_s: float) -> tuple[str, ...]:
    """Every step, what it waits for, and how it stands."""
    return tuple(_step_line(state, one.name, now_s) for one in state.steps)


def _step_line(state: State, name: str, now_s: float) -> str:
    step = state.step(name)
    if step is None:
        return name
    if step.status in ("running", "paused"):
        return f"{name}: {stretch_words(state, step, now_s)}"
    if step.status == "waiting":
        ready = state.ready(step)
        return f"{name}: ready" if ready else f"{name}: waits for {' and '.join(step.plan.after)}"
    ended = f" at {clock_text(state, step.ended_s)}" if step.ended_s is not None else ""
    return f"{name}: {step.status}{ended}{f', {step.why}' if step.why else ''}"


def ring_line(state: State, ring: Ring) -> str:
    """What rings, how overdue, and what to do about it."""
    what, act = ring_words(state, ring)
    word = "ALARM" if ring.severity == "alarm" else "RINGS"
    return f"{word} {what} {act}".strip()


def rings_lines(state: State, now_s: float) -> tuple[str, ...]:
    """All that rings, the loudest first."""
    return tuple(ring_line(state, one) for one in rings(state, now_s))


def where_lines(day: Snapshot[Account], now_s: float) -> tuple[str, ...]:
    """Where you are: what is in which pot, what is elsewhere, what was added and done last."""
    state, found = day.state, [*amiss_words(day.entries)]
    used = [one for one in state.vessels if one.bath is not None or state.lots_in(one.name)]
    under_way = [one for one in state.vessels if state.running_in(one.name)]
    found += [f"{pot_words(state, one, now_s)}." for one in state.vessels if one in used or one in under_way]
    if not used:
        found.append("All pots are empty.")
    found += [f"{one}." for one in elsewhere_words(state)]
    found += [f"{one}." for one in running_words(state, now_s) if not _has_pot(state, one)]
    facts = [one for one in effective(day.entries) if one.event.kind not in e.PROGRAM_KINDS]
    put_in = [one for one in facts if one.event.kind in _PUT_IN]
    if put_in:
        found.append(f"Put in last: {entry_line(state, put_in[-1])}.")
    if facts:
        found.append(f"Done last: {'; '.join(entry_line(state, one) for one in facts[-LAST_DONE:])}.")
    return tuple(found)


def _has_pot(state: State, line: str) -> bool:
    """Whether a running line is told with its pot already."""
    return any(line.startswith(f"{one.letter}, the {one.name}: ") for one in state.vessels)


def running_line(state: State, now_s: float) -> str:
    """What runs, and until when."""
    running = running_words(state, now_s)
    return f"RUNS {'; '.join(running)}." if running else ""


def next_line(state: State, suggestion: Suggestion, now_s: float) -> str:
    """What comes next, or the question that stands before it."""
    what, when = next_words(state, suggestion, now_s)
    if isinstance(suggestion, Ask):
        wants = "the pot's letter" if suggestion.kind == "pot" else "a figure"
        return f"ASK {what} {suggestion.why} Answer with {wants}, or “not now”."
    if isinstance(suggestion, Wait):
        return f"NEXT {what}, {when}." if when else f"NEXT {what}."
    return f"NEXT {what}."


def shelf_lines(day: Snapshot[Account]) -> tuple[str, ...]:
    """What the bath shelf has to say as the day opens: what two days disagree about."""
    return tuple(f"SHELF {one.rstrip('.')}." for one in day.shelf.told)


def hot_bath_line(day: Snapshot[Account], now_s: float) -> str:
    """At the lift: what could go into a bath that is still hot; "" where nothing waits for it."""
    said = next_in(replace(day.state, now_s=max(day.state.now_s, now_s)), day.shelf)
    return f"HOT {said}." if said else ""


def heat_lines(day: Snapshot[Account], now_s: float) -> tuple[str, ...]:
    """How each pot warms or cools, by the dyer's own readings."""
    state = day.state
    said = [(one.letter, heat_said(state, day.entries, one, now_s).text) for one in state.vessels]
    return tuple(f"HEAT {letter}: {text}." for letter, text in said if text)


def saving_line(day: Snapshot[Account]) -> str:
    """What is not on the disk, and what to do; "" when all is saved."""
    if day.saving == "saved":
        return ""
    act = "“rescue FOLDER” writes the day elsewhere" if day.saving == "unsure" else "“save” tries again"
    return f"NOT SAVED {day.unsaved} entries are in memory only: {day.trouble.rstrip('.')}. {act}."


def verdict_line() -> str:
    """The question on closing."""
    return "ASK How did it come out? Type a line about it, an empty line for none, or “not now” to go on."


def plain(text: str) -> str:
    """A line without anything that could act on a terminal."""
    return "".join(one if one.isprintable() else " " for one in text)


def joined(found: Sequence[str]) -> str:
    """Sentences on one line."""
    return " ".join(found)
