"""Line mode on a real terminal and on a pipe, through the program's own command line."""

import fcntl
import os
import pty
import select
import signal
import subprocess
import sys
import termios
import time
from pathlib import Path

import pytest

from dyesession.session.log import check_log

BEGIN = ("-m", "dyesession", "begin", "iron-saddening", "--fibre", "100 g dry wool", "--plain")
LONGEST_S = 20.0


def workroom(folder: Path) -> dict[str, str]:
    return {**os.environ, "DYESESSION_WORKROOM": str(folder), "TERM": "dumb", "PYTHONDONTWRITEBYTECODE": "1"}


def read_until(fd: int, wanted: str) -> str:
    """What the program printed, up to a text that must come."""
    seen, end = b"", time.monotonic() + LONGEST_S
    while wanted not in seen.decode("utf-8", "replace"):
        assert time.monotonic() < end, f"“{wanted}” never came; seen: {seen.decode('utf-8', 'replace')}"
        if select.select([fd], [], [], 0.1)[0]:
            try:
                seen += os.read(fd, 4096)
            except OSError:
                break
    return seen.decode("utf-8", "replace")


def take_the_terminal(ignored: bool) -> None:
    """In the child: its own terminal; interrupts ignored as `nohup` and shell scripts leave them for what they start."""
    fcntl.ioctl(0, termios.TIOCSCTTY, 0)
    if ignored:
        signal.signal(signal.SIGINT, signal.SIG_IGN)


@pytest.mark.parametrize("ignored", [False, True])
def test_at_a_terminal_an_interrupt_quits_says_so_and_loses_nothing(tmp_path: Path, ignored: bool) -> None:
    leader, follower = pty.openpty()
    program = subprocess.Popen(
        [sys.executable, *BEGIN],
        stdin=follower,
        stdout=follower,
        stderr=follower,
        env=workroom(tmp_path),
        cwd=Path(__file__).resolve().parents[2],
        start_new_session=True,
        preexec_fn=lambda: take_the_terminal(ignored),
    )
    os.close(follower)
    try:
        read_until(leader, "NEXT begin: wet out in A.")
        os.write(leader, b"\n")
        read_until(leader, "NEXT fill A")
        os.write(leader, b"\x03")
        seen = read_until(leader, "dyesession resume")
        assert "The clocks go on." in seen and "\x1b" not in seen
        assert program.wait(LONGEST_S) == 130
    finally:
        program.kill()
        program.wait()
        os.close(leader)
    (log,) = (tmp_path / "logs").glob("*.toml")
    assert check_log(log) == []
    assert 'kind = "begun"' in log.read_text()
