"""Logs, torn ends and rescue copies are for their owner alone, under any umask."""

import os
import stat
from pathlib import Path

import pytest
from reliability.days import PLAIN, QUICK, START

from dyesession.clock import Instant
from dyesession.session.log import create_log, open_log


def rights(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


@pytest.mark.parametrize("umask", [0o000, 0o022, 0o027, 0o777])
def test_everything_a_day_leaves_behind_is_for_its_owner_alone(tmp_path: Path, umask: int) -> None:
    before = os.umask(umask)
    try:
        with create_log(QUICK, tmp_path / "workroom" / "logs", PLAIN.name, PLAIN.header) as writer:
            writer.append("noted", Instant(START, "b", 1.0), {})
        with writer.path.open("ab") as file:
            file.write(b"torn")
        with open_log(QUICK, writer.path) as again:
            again.rescue(tmp_path / "stick").close()
    finally:
        os.umask(before)
    made = sorted(tmp_path.rglob("*"))
    assert len(made) == 6
    for path in made:
        assert rights(path) == (0o700 if path.is_dir() else 0o600), path
