"""Opening a day for a person: a new one, or one taken up again, on the screen or in line mode."""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.cli.workroom import DEMO, Workroom, check_own, find_workroom
from dyesession.errors import UserError
from dyesession.storage import DISK

# What a day needs is loaded when one is opened: the Bench must be up at once.
if TYPE_CHECKING:
    from dyesession.account import Account
    from dyesession.kitchen.model import Kitchen
    from dyesession.session.session import Session

SMALLEST_ENCODING_TEST = "─°±"


def open_bench(options: argparse.Namespace) -> int:
    """Without a command: the Bench where there is a screen; else the open day, or how to begin one."""
    if getattr(options, "plain", False) or not screen_will_do():
        return open_day(options)
    from dyesession.cli.dyers_folder import DyersFolder
    from dyesession.ui.run import run_bench

    return run_bench(DyersFolder(find_workroom(getattr(options, "workroom", None)), DISK))


def begin(options: argparse.Namespace) -> int:
    """Begin a day by a recipe, or without one."""
    if not options.recipe:
        return _begin_freely(options)
    from dyesession.account.live import reckoner_from
    from dyesession.cli.at_shelf import for_the_day
    from dyesession.cli.planning import planned
    from dyesession.clock import SystemClock
    from dyesession.daybook.own_numbers import start_of
    from dyesession.session.opening import begin_day

    day = planned(options, ask=True)
    for warning in day.plan.warnings:
        print(warning, file=sys.stderr)
    clock, own = SystemClock(), start_of(day.plan, day.learned)
    session = begin_day(
        DISK, day.workroom.logs, day.recipe, day.plan, day.kitchen, clock, reckoner_from(own.starting),
        shelf=for_the_day(day.workroom, clock.now().at.date()), priors=own.tables,
    )  # fmt: skip
    return _run(session, day.kitchen, options)


def _begin_freely(options: argparse.Namespace) -> int:
    """A day without a recipe: stages come in as they are named."""
    from dyesession.account.live import reckoner_from
    from dyesession.cli.at_shelf import for_the_day
    from dyesession.cli.learn import learnt_for
    from dyesession.cli.planning import lots_asked
    from dyesession.cli.stock import stocked
    from dyesession.clock import SystemClock
    from dyesession.daybook.own_numbers import start_freely
    from dyesession.session.opening import begin_improvised

    workroom, clock = find_workroom(getattr(options, "workroom", None)), SystemClock()
    kitchen = stocked(workroom, workroom.kitchen(options.kitchen))
    lots, own = lots_asked(options, "wool", ask=True), start_freely(learnt_for(workroom))
    session = begin_improvised(
        DISK, workroom.logs, lots, kitchen, clock, reckoner_from(own.starting),
        shelf=for_the_day(workroom, clock.now().at.date()), priors=own.tables,
    )  # fmt: skip
    return _run(session, kitchen, options)


def open_day(options: argparse.Namespace) -> int:
    """Take up the log named, else the newest open one; with none, say how to begin."""
    from dyesession.account.live import reckoner_from
    from dyesession.account.logged import starting_of
    from dyesession.cli.at_shelf import for_the_day
    from dyesession.clock import SystemClock
    from dyesession.session.opening import read_day, resume_day

    workroom = find_workroom(getattr(options, "workroom", None))
    path = workroom.log(options.log) if options.log else newest_open(workroom)
    if path is None:
        print("\n".join((*unreadable(workroom), _how_to_begin(workroom))))
        return 0
    check_own(path)
    kitchen = workroom.kitchen(None)
    clock = SystemClock()
    told = for_the_day(workroom, clock.now().at.date(), path.stem)
    reckoner = reckoner_from(starting_of(read_day(DISK, path).header))
    session = resume_day(DISK, path, clock, kitchen.household, reckoner, kitchen.poison_centre, told)
    return _run(session, kitchen, options)


def newest_open(workroom: Workroom) -> Path | None:
    """The newest day that is not closed yet, demo days and rehearsals apart; None where all are."""
    from dyesession.session.opening import read_day

    for path in workroom.all_logs():
        if path.name.startswith(DEMO):
            continue
        try:
            day = read_day(DISK, path)
        except UserError:
            continue  # a broken or foreign log hurts nobody here; `check` says what is wrong with it
        if not day.rehearsal and not any(one.event.kind == "closed" for one in day.entries):
            return path
    return None


def unreadable(workroom: Workroom) -> tuple[str, ...]:
    """A sentence for each log of one's own that cannot be read as a day; they are left as they are."""
    from dyesession.session.opening import read_day

    said = []
    for path in workroom.all_logs():
        if not path.name.startswith(DEMO):
            try:
                read_day(DISK, path)
            except UserError as trouble:
                said.append(f"{trouble}.")
    return tuple(said)


def _how_to_begin(workroom: Workroom) -> str:
    names = [one.stem for one in workroom.recipes()]
    listed = "\n".join(f"  {name}" for name in names)
    first = names[0] if names else "RECIPE"
    for name in names:
        first = name if name.startswith("madder-brick") else first
    return (
        f"No day is open in {workroom.folder}. To begin one, choose a recipe and say what you dye:\n\n"
        f'  dyesession begin {first} --fibre "240 g wool"\n\nrecipes:\n{listed}'
    )


def _run(session: Session[Account], kitchen: Kitchen, options: argparse.Namespace) -> int:
    try:
        if getattr(options, "plain", False) or not screen_will_do():
            from dyesession.line import run_line

            return run_line(session, kitchen=kitchen)
        from dyesession.ui.run import run_stove

        return run_stove(session, kitchen.alarm)
    finally:
        session.close()
        if session.snapshot.state.status == "complete":
            _say_what_it_taught(session.snapshot.name, options)


def _say_what_it_taught(name: str, options: argparse.Namespace) -> None:
    """After a day is closed: the dyer's own numbers that now rest on it too."""
    from dyesession.cli.learn import WIDTH, learnt_for
    from dyesession.daybook.learned_text import changed_lines

    workroom = find_workroom(getattr(options, "workroom", None))
    try:
        told = changed_lines(learnt_for(workroom, without=name), learnt_for(workroom), WIDTH)
    except (UserError, OSError):
        return  # the day is safe in its log; learning is tried again the next time it is asked for
    if told:
        print("\n".join(told))


def screen_will_do() -> bool:
    """Whether this is a terminal that can be painted on, in an encoding that has the pots' lines."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()) or os.environ.get("TERM", "dumb") in ("dumb", ""):
        return False
    try:
        SMALLEST_ENCODING_TEST.encode(sys.stdout.encoding or "ascii")
    except UnicodeEncodeError:
        print(
            f"This terminal's encoding, {sys.stdout.encoding}, has no pots and lines: line mode is used; "
            "for the screen set a UTF-8 locale, for example LANG=C.UTF-8.",
            file=sys.stderr,
        )
        return False
    return True
