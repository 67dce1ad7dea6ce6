"""Opening a day for a person: a new one, or one taken up again, on the screen or in line mode."""

import argparse
import os
import sys
from pathlib import Path

from dyesession.account import Account
from dyesession.account.live import reckoner_for
from dyesession.cli.planning import planned
from dyesession.cli.workroom import Workroom, find_workroom
from dyesession.clock import SystemClock
from dyesession.errors import UserError
from dyesession.session.opening import begin_day, read_day, resume_day
from dyesession.session.session import Session
from dyesession.storage import DISK

SMALLEST_ENCODING_TEST = "─°±"


def begin(options: argparse.Namespace) -> int:
    """Begin a day by a recipe."""
    day = planned(options, ask=True)
    for warning in day.plan.warnings:
        print(warning, file=sys.stderr)
    session = begin_day(
        DISK, day.workroom.logs, day.recipe, day.plan, day.kitchen, SystemClock(), reckoner_for
    )
    return _run(session, options)


def open_day(options: argparse.Namespace) -> int:
    """Take up the log named, else the newest open one; with none, say how to begin."""
    workroom = find_workroom(getattr(options, "workroom", None))
    path = workroom.log(options.log) if options.log else _newest_open(workroom)
    if path is None:
        print(_how_to_begin(workroom))
        return 0
    household = workroom.kitchen(None).household
    return _run(resume_day(DISK, path, SystemClock(), household, reckoner_for), options)


def _newest_open(workroom: Workroom) -> Path | None:
    for path in workroom.all_logs():
        try:
            day = read_day(DISK, path)
        except UserError:
            continue  # a broken or foreign log hurts nobody here; `check` says what is wrong with it
        if not day.rehearsal and not any(one.event.kind == "closed" for one in day.entries):
            return path
    return None


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


def _run(session: Session[Account], options: argparse.Namespace) -> int:
    if getattr(options, "plain", False) or not _screen_will_do():
        return _run_line(session)
    from dyesession.ui.app import run_stove

    try:
        return run_stove(session)
    finally:
        session.close()


def _run_line(session: Session[Account]) -> int:
    from dyesession.line import run_line

    try:
        return run_line(session)
    finally:
        session.close()


def _screen_will_do() -> bool:
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
