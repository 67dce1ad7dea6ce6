"""A program in a pseudo-terminal, watched: its processor time, and how long a key takes to be answered on the screen."""

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
PATIENCE_S = 15.0
SCHEDULED = 2  # the clock of all processor time of a process (CPUCLOCK_SCHED, clock_getcpuclockid(3))
READY = "BENCH-READY"
# The least that can answer a key: one widget that shows what was typed. Escape empties it.
ECHO_APP = f"""
from textual.app import App
from textual.widgets import Static
class Echo(App):
    ENABLE_COMMAND_PALETTE = False
    typed = ""
    def compose(self):
        yield Static("{READY}", markup=False)
    def on_key(self, event):
        self.typed = "" if event.key == "escape" else self.typed + (event.character or "")
        self.query_one(Static).update(self.typed or "{READY}")
Echo().run()
"""


class Watched:
    """A running program and everything it has written to its terminal."""

    def __init__(self, command: list[str], columns: int = COLUMNS, rows: int = ROWS) -> None:
        told = {**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor", "PYTHONPATH": str(ROOT)}
        for name in ("NO_COLOR", "COLUMNS", "LINES", "PYTHONDONTWRITEBYTECODE"):
            told.pop(name, None)
        self._pid, self._fd = pty.fork()
        if self._pid == 0:
            os.execve(command[0], command, told)
        fcntl.ioctl(self._fd, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))

    def __enter__(self) -> "Watched":
        return self

    def __exit__(self, *_: object) -> None:
        os.kill(self._pid, signal.SIGKILL)
        os.close(self._fd)
        os.waitpid(self._pid, 0)

    def cpu_s(self) -> float:
        """Processor seconds of all its threads since it began."""
        return time.clock_gettime((~self._pid << 3) | SCHEDULED)

    def drain(self, for_s: float) -> int:
        """Read along for so long; answers with how many bytes were written."""
        written, ends = 0, time.monotonic() + for_s
        while (left := ends - time.monotonic()) > 0:
            if select.select([self._fd], [], [], left)[0]:
                written += len(os.read(self._fd, 65536))
        return written

    def until(self, mark: str) -> float:
        """The moment (perf_counter) at which a mark has come out."""
        seen, wanted, ends = b"", mark.encode(), time.monotonic() + PATIENCE_S
        while time.monotonic() < ends:
            if select.select([self._fd], [], [], 0.5)[0]:
                seen += os.read(self._fd, 65536)
                if wanted in seen:
                    return time.perf_counter()
        raise AssertionError(f"no {mark!r} in what the terminal was sent: {seen[-400:]!r}")

    def press(self, key: str) -> None:
        """Send a key without waiting for anything."""
        os.write(self._fd, key.encode())

    def answer_s(self, key: str, mark: str) -> float:
        """Seconds from a key to the first picture with a mark in it."""
        began = time.perf_counter()
        self.press(key)
        return self.until(mark) - began


def echo_app() -> Watched:
    """The empty app, echoing keys, up and running."""
    found = Watched([sys.executable, "-c", ECHO_APP])
    found.until(READY)
    return found


def four_pots(folder: Path) -> Watched:
    """The Stove with four countdowns running, its pots in view."""
    found = Watched([sys.executable, str(ROOT / "tests" / "bench" / "four_pots.py"), str(folder)])
    found.until("in the pots")
    found.press("\x1b")
    found.until("running")
    return found
