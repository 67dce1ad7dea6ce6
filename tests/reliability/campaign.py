"""Run one of the killing, racing and filling programs beside us, and read its counts."""

import json
import os
import subprocess
import sys
from collections import Counter
from pathlib import Path

HERE = Path(__file__).parent
PATHS = os.pathsep.join([str(HERE.parents[1]), str(HERE.parent)])


def run(program: str, *arguments: object) -> Counter[str]:
    """The counts that tests/reliability/`program`.py prints."""
    done = subprocess.run(
        [sys.executable, str(HERE / f"{program}.py"), *map(str, arguments)],
        env={**os.environ, "PYTHONPATH": PATHS},
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return Counter(json.loads(done.stdout))
