"""The engine: `decide(state, command, now) -> event`. Pure; time is an argument; no estimate comes in here.

A command is the fact it wants to become. `decide` completes it (a begun step gets its reminders, a changed
plan all that the change means, a closed day its count of entries) or raises `Refused`, and then nothing has
changed. What may happen when stands in `fit`, what each fact does in `fold`, what comes next in `suggest`,
the clocks in `countdowns`.
"""

from dataclasses import replace

from dyesession.care import Household
from dyesession.clock import Instant
from dyesession.errors import UserError
from dyesession.plan.trouble import PlanError
from dyesession.session import events as e
from dyesession.session.asking import reminders_for
from dyesession.session.fit import misfit
from dyesession.session.replan import under_a_name_of_its_own, worked_out
from dyesession.session.state import State


class Refused(UserError):
    """A command that does not fit: nothing has changed; the message says why in one sentence."""


def decide(state: State, command: e.Event, now: Instant, household: Household) -> e.Event:
    """The fact a command becomes at an instant; `Refused` when the day as it stands forbids it."""
    present = replace(state, now_s=state.seconds(now))
    if isinstance(command, e.Replanned):
        command = under_a_name_of_its_own(present, command)
    trouble = misfit(present, command)
    if trouble:
        raise Refused(_sentence(trouble))
    return _completed(present, command, household)


def _completed(state: State, command: e.Event, household: Household) -> e.Event:
    if isinstance(command, e.Begun):
        return replace(command, reminders=reminders_for(state, command.step, household))
    if isinstance(command, e.Closed):
        return replace(command, entries=state.n)
    if isinstance(command, e.Replanned):
        return _replanned(state, command)
    return command


def _replanned(state: State, command: e.Replanned) -> e.Replanned:
    """The change with all it means for what is left to do; it must fit as a whole."""
    try:
        event = worked_out(state, command)
    except PlanError as trouble:
        raise Refused(str(trouble)) from trouble
    if sentence := misfit(state, event):
        raise Refused(_sentence(sentence))
    return event


def _sentence(text: str) -> str:
    return text[0].upper() + text[1:] + "."
