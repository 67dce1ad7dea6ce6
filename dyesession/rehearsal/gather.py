"""What a rehearsed day tells, gathered from its session: timeline, ledger, care per step. Pure."""

import re
from collections.abc import Mapping, Sequence
from datetime import datetime
from pathlib import Path

from dyesession.account.model import Account, Band90, LedgerLine
from dyesession.account.say import rounded_band
from dyesession.rehearsal.model import Call, Happening, Question, Rehearsed, Shown, StepCare
from dyesession.session import events as e
from dyesession.session.fold import Entry
from dyesession.session.session import Snapshot
from dyesession.session.state import State, StepState
from dyesession.session.words import happened_words, when_text

_FIGURES = re.compile(r"\d[\d.]*")


def gathered(
    day: Snapshot[Account],
    started: datetime,
    keep: bool,
    shown: Sequence[Shown],
    questions: Sequence[Question],
    calls: Sequence[Call],
    cared: Mapping[str, Sequence[str]],
    private: Mapping[str, Sequence[str]],
) -> Rehearsed:
    """Everything the rehearsal tells, once the day is closed."""
    facts = [one for one in day.entries if not isinstance(one.event, e.Accounted)]
    return Rehearsed(
        plan=day.plan,
        session=day.name,
        path=Path(day.path) if keep else None,
        started=started,
        ended=facts[-1].instant.at if facts else started,
        timeline=tuple(_happening(day.state, one, started) for one in facts),
        account=tuple(shown),
        ledger=tuple(_ledger_line(day.state, one) for one in day.account.lines),
        care=_care(facts, questions, cared, private),
        questions=tuple(questions),
        calls=tuple(calls),
    )


def _happening(state: State, entry: Entry, started: datetime) -> Happening:
    step, vessel = _step_of(state, entry), str(getattr(entry.event, "vessel", ""))
    found = state.step(step)
    return Happening(
        at=entry.instant.at,
        minute=round((entry.instant.at - started).total_seconds() / 60, 2),
        lane=found.plan.lane if found else "",
        step=step,
        vessel=vessel or (found.plan.vessel or "" if found else ""),
        kind=entry.event.kind,
        what=happened_words(state, entry.event),
    )


def _step_of(state: State, entry: Entry) -> str:
    """The step a fact belongs to: the one it names, else the last one begun in its pot or with its
    ingredient.
    """
    event = entry.event
    named = str(getattr(event, "step", "")) or str(getattr(event, "countdown", "")).rpartition("/")[0]
    named = named or str(getattr(event, "ask", "")).partition(": ")[0]
    if named:
        return named
    vessel, ingredient = str(getattr(event, "vessel", "")), str(getattr(event, "ingredient", ""))
    begun = [one for one in state.steps if _begun_by(one, state, entry)]
    fits = [one for one in begun if one.plan.vessel == vessel or (not vessel and _adds(one, ingredient))]
    return max(fits, key=lambda one: one.begun_s or 0.0).name if fits else ""


def _begun_by(step: StepState, state: State, entry: Entry) -> bool:
    if step.begun_s is None or state.instant is None:
        return False
    return step.begun_s <= state.now_s - (state.instant.at - entry.instant.at).total_seconds()


def _adds(step: StepState, ingredient: str) -> bool:
    return any(one.ingredient == ingredient for one in step.plan.add)


def _ledger_line(state: State, line: LedgerLine) -> str:
    changes = [_signed(line.volume_change_l, "L")] if line.volume_change_l.mean else []
    changes += [f"{_signed(one.grams, 'g')} {one.lot}" for one in line.changes if one.grams.mean]
    when = when_text(state, line.second, state.now_s)
    return f"{when} {line.vessel}, {line.what}{': ' if changes else ''}{', '.join(changes)}"


def _signed(band: Band90, unit: str) -> str:
    """A change with its sign, so that what went out is not read as what came in."""
    if band.mean > 0:
        return f"+{rounded_band(band, unit)}"
    return f"-{rounded_band(Band90(-band.mean, -band.high, -band.low), unit)}"


def _care(
    facts: Sequence[Entry],
    questions: Sequence[Question],
    cared: Mapping[str, Sequence[str]],
    private: Mapping[str, Sequence[str]],
) -> tuple[StepCare, ...]:
    """Each step with what was said as it began and with its acts, every sentence once; then the acts after them."""
    begun = {one.event.step: one.event.reminders for one in facts if isinstance(one.event, e.Begun)}
    names = dict.fromkeys((*begun, *cared, *(one.step for one in questions)))
    return tuple(
        StepCare(
            name,
            _once(begun.get(name, ()), cared.get(name, ())),
            sum(one.step == name for one in questions),
            _once(private.get(name, ()), ()),
        )
        for name in names
    )


def _once(begun: Sequence[str], acts: Sequence[str]) -> tuple[str, ...]:
    """What was said as a step began and with its acts; a reminder said again with the figures read is one."""
    said = {_FIGURES.sub("#", text): text for text in (*reversed(acts), *reversed(begun))}
    return tuple(reversed(said.values()))
