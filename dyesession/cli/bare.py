"""The program called without a command: told apart before the commands are put together, so that the Bench is up at
once. Means the same as the whole parser does; a test holds the two together.
"""

import argparse
from collections.abc import Callable

WORKROOM = "--workroom"


def bare(arguments: list[str]) -> tuple[Callable[[argparse.Namespace], int], argparse.Namespace] | None:
    """The Bench and its options, or None for anything that the whole parser must look at."""
    options = argparse.Namespace(plain=False, log=None)
    rest = list(arguments)
    while rest:
        word = rest.pop(0)
        if word == "--plain":
            options.plain = True
        elif word == WORKROOM and rest and not rest[0].startswith("-"):
            options.workroom = rest.pop(0)
        elif word.startswith(f"{WORKROOM}="):
            options.workroom = word.removeprefix(f"{WORKROOM}=")
        else:
            return None
    options.run = run_bench
    return run_bench, options


def run_bench(options: argparse.Namespace) -> int:
    """Open the Bench."""
    from dyesession.cli.days import open_bench

    return open_bench(options)
