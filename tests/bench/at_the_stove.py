"""The Stove beside an empty app, in one run: idle processor time, and how long a key takes to be answered.

Both programs stand side by side in terminals of their own, so that a busy machine hurts both alike.
"""

import tempfile
import time
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from random import Random

from bench.watched import Watched, echo_app, four_pots

SETTLE_S = 2.0
REST_S = 0.25  # between keys, longer than a wet contact bounces
DIGITS = 4


@dataclass(frozen=True)
class Idle:
    """Shares of one core, both over the same seconds; bytes a second to the Stove's terminal."""

    stove: float
    empty: float
    bytes_s: float


def idle(seconds: float) -> Idle:
    """Nobody touches a key; four clocks count in seconds."""
    with tempfile.TemporaryDirectory() as folder, four_pots(Path(folder)) as stove, echo_app() as empty:
        stove.drain(SETTLE_S)
        empty.drain(SETTLE_S)
        began, before = time.monotonic(), (stove.cpu_s(), empty.cpu_s())
        written = stove.drain(seconds)
        after, took = (stove.cpu_s(), empty.cpu_s()), time.monotonic() - began
    used = [(now - was) / took for now, was in zip(after, before, strict=True)]
    return Idle(used[0], used[1], written / took)


@dataclass(frozen=True)
class Answers:
    """Seconds from a key to its painted answer, all sorted: typing at the Stove, entries saved, typing in the echo."""

    stove: tuple[float, ...]
    saved: tuple[float, ...]
    empty: tuple[float, ...]


def answers(rounds: int) -> Answers:
    """Digits typed at the Stove and in the echo, turn about; at the end of each round a temperature is saved."""
    stove_s: list[float] = []
    saved_s: list[float] = []
    empty_s: list[float] = []
    chance = Random(rounds)
    with tempfile.TemporaryDirectory() as folder, four_pots(Path(folder)) as stove, echo_app() as empty:
        for _, number in zip(range(rounds), count(1), strict=False):
            typed = f"{chance.randrange(10 ** (DIGITS - 1), 10**DIGITS)}"
            for upto in range(1, DIGITS + 1):
                stove_s.append(_key(stove, typed[upto - 1], f"{typed[:upto]}▏"))
                empty_s.append(_key(empty, typed[upto - 1], typed[:upto]))
            for one in (stove, empty):
                one.press("\x1b")
                one.drain(REST_S)
            tenths = number % 300
            stove.press(f"t{20 + tenths // 10}.{tenths % 10}")
            stove.drain(REST_S)
            saved_s.append(_key(stove, "\r", f"{20 + tenths / 10:g} °C"))
    return Answers(tuple(sorted(stove_s)), tuple(sorted(saved_s)), tuple(sorted(empty_s)))


def _key(terminal: Watched, key: str, mark: str) -> float:
    taken = terminal.answer_s(key, mark)
    terminal.drain(REST_S / 3)
    return taken
