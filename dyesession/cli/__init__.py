"""The command line: parse, call, print. Loads a screen only when one is wanted; computes nothing."""

import argparse
import os
import sys
from collections.abc import Callable

from dyesession.errors import UserError

FINE, TO_PUT_RIGHT, USAGE, IN_USE, FAULT, INTERRUPTED = 0, 1, 2, 3, 70, 130


def main(argv: list[str] | None = None) -> int:
    """Run one command and return its exit code. No traceback is ever shown: a fault's goes to a file."""
    command, options = _told(sys.argv[1:] if argv is None else argv)
    try:
        return command(options)
    except UserError as trouble:
        return _say(trouble)
    except KeyboardInterrupt:
        print("Interrupted; what was saved is saved.", file=sys.stderr)
        return INTERRUPTED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except Exception as fault:
        from dyesession.cli.crash import write_crash

        print(f"dyesession met a fault of its own; the details are in {write_crash(fault)}.", file=sys.stderr)
        return FAULT


def _told(arguments: list[str]) -> tuple[Callable[[argparse.Namespace], int], argparse.Namespace]:
    """The command to run and its options."""
    from dyesession.cli.bare import bare

    if (told := bare(arguments)) is not None:
        return told
    from dyesession.cli.parser import parse

    return parse(arguments)


def _say(trouble: UserError) -> int:
    from dyesession.session.log import LogInUse

    print(f"dyesession: {trouble}", file=sys.stderr)
    return IN_USE if isinstance(trouble, LogInUse) else TO_PUT_RIGHT
