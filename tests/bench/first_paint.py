"""How long from the start of a process to its first painted screen, in a pseudo-terminal that only listens."""

import fcntl
import os
import pty
import select
import signal
import struct
import sys
import termios
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
COLUMNS, ROWS = 80, 24
PATIENCE_S = 30.0
MARK = "BENCH-READY"
# The least a Textual program can be: one widget, one word.
EMPTY_APP = f"""
from textual.app import App
from textual.widgets import Static
class Empty(App):
    ENABLE_COMMAND_PALETTE = False
    def compose(self):
        yield Static("{MARK}")
Empty().run()
"""


def first_paint_s(command: list[str], mark: str, environment: dict[str, str]) -> float:
    """Seconds until a mark has come out of a command's terminal; the process is ended then."""
    told = {**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor", "PYTHONPATH": str(ROOT), **environment}
    for name in ("NO_COLOR", "COLUMNS", "LINES", "PYTHONDONTWRITEBYTECODE"):
        told.pop(name, None)
    began = time.perf_counter()
    pid, fd = pty.fork()
    if pid == 0:
        os.execve(command[0], command, told)
    try:
        fcntl.ioctl(fd, termios.TIOCSWINSZ, struct.pack("HHHH", ROWS, COLUMNS, 0, 0))
        return _wait(fd, mark.encode()) - began
    finally:
        os.kill(pid, signal.SIGKILL)
        os.close(fd)
        os.waitpid(pid, 0)


def _wait(fd: int, mark: bytes) -> float:
    seen, ends = b"", time.monotonic() + PATIENCE_S
    while time.monotonic() < ends:
        if not select.select([fd], [], [], 0.5)[0]:
            continue
        seen += os.read(fd, 65536)
        if mark in seen:
            return time.perf_counter()
    raise AssertionError(f"no {mark!r} in what the terminal was sent: {seen[-400:]!r}")


def empty_s() -> float:
    """The empty app."""
    return first_paint_s([sys.executable, "-c", EMPTY_APP], MARK, {})


def bench_s(workroom: Path) -> float:
    """Our own program on its Bench, started as a person starts it."""
    command = [sys.executable, "-m", "dyesession", "--workroom", str(workroom)]
    return first_paint_s(command, "Bench", {})
