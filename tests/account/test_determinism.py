"""The same facts give the same numbers in every process, whatever the order of its hashes."""

import os
import subprocess
import sys
from pathlib import Path

TESTS = Path(__file__).parents[1]
PROGRAM = """
import hashlib
from days import Day
from dyesession.account import accounted, reckon, sentences
day = Day()
day.home()
account = reckon(day.plan, day.entries, day.opened)
print(hashlib.sha256(repr(account).encode()).hexdigest())
print(sentences(account, day.plan))
print(accounted(account, day.entries[-1].n))
"""


def told_by(hashing: str) -> str:
    environment = {
        **os.environ,
        "PYTHONHASHSEED": hashing,
        "PYTHONPATH": f"{TESTS}{os.pathsep}{TESTS.parent}",
    }
    return subprocess.run(
        [sys.executable, "-c", PROGRAM], env=environment, capture_output=True, text=True, check=True
    ).stdout


def test_two_processes_tell_the_same_account() -> None:
    first, second = told_by("1"), told_by("4242")
    assert first == second
    assert "madder" in first
