"""A real terminal for tests: tmux where it stands, else a pseudo-terminal with an emulator of its own (pyte)."""

import contextlib
import fcntl
import os
import pty
import re
import secrets
import shutil
import signal
import struct
import subprocess
import termios
import threading
import time
from typing import Protocol

PATIENCE_S = 20.0
LOOK_S = 0.05
KEY_NAMES = {" ": "Space", "\r": "Enter", "\x1b": "Escape"}


class Terminal(Protocol):
    """What a test may do at a terminal."""

    def press(self, keys: str) -> None: ...
    def screen(self) -> str: ...
    def kill(self) -> None: ...
    def hang_up(self) -> None: ...
    def resize(self, columns: int, rows: int) -> None: ...
    def end(self) -> None: ...


def wait_for(terminal: Terminal, pattern: str, patience_s: float = PATIENCE_S) -> str:
    """Look at the screen until a pattern is on it; the screen is in the message when it never is."""
    ends = time.monotonic() + patience_s
    while time.monotonic() < ends:
        shown = terminal.screen().replace("\N{NO-BREAK SPACE}", " ")
        if re.search(pattern, shown):
            return shown
        time.sleep(LOOK_S)
    raise AssertionError(f"no {pattern!r} on the screen:\n{terminal.screen()}")


class Tmux:
    """A private tmux server with one window."""

    def __init__(self, command: list[str], environment: dict[str, str], columns: int = 80, rows: int = 24) -> None:
        self._socket = f"dye-{secrets.token_hex(4)}"
        settings = [word for pair in environment.items() for word in ("-e", "=".join(pair))]
        self._tmux(
            "-f", "/dev/null", "new-session", "-d", "-x", str(columns), "-y", str(rows), *settings, *command
        )
        self._tmux("set-option", "-g", "remain-on-exit", "on")
        # A server outlives tests that are killed: this one looks after them and goes when they are gone.
        watch = f"while kill -0 {os.getpid()} 2>/dev/null; do sleep 1; done; tmux -L {self._socket} kill-server"
        self._tmux("run-shell", "-b", watch)

    def _tmux(self, *words: str) -> str:
        done = subprocess.run(
            ["tmux", "-L", self._socket, *words], capture_output=True, text=True, timeout=30, check=False
        )
        return done.stdout

    def press(self, keys: str) -> None:
        """Press keys one after the other."""
        for key in keys:
            name = KEY_NAMES.get(key)
            self._tmux("send-keys", *([name] if name else ["-l", key]))

    def screen(self) -> str:
        """The text on the screen."""
        return self._tmux("capture-pane", "-p")

    def kill(self) -> None:
        """kill -9 the program."""
        os.kill(int(self._tmux("display-message", "-p", "#{pane_pid}")), signal.SIGKILL)

    def resize(self, columns: int, rows: int) -> None:
        """Give the window another size."""
        self._tmux("resize-window", "-x", str(columns), "-y", str(rows))

    def hang_up(self) -> None:
        """Close the window under the program; it must be gone soon after."""
        pid = int(self._tmux("display-message", "-p", "#{pane_pid}"))
        self.end()
        ends = time.monotonic() + PATIENCE_S
        while os.path.exists(f"/proc/{pid}"):
            assert time.monotonic() < ends, "the program outlived its window"
            time.sleep(LOOK_S)

    def end(self) -> None:
        """Take the server down."""
        self._tmux("kill-server")


class BarePty:
    """A pseudo-terminal read by a terminal emulator."""

    def __init__(self, command: list[str], environment: dict[str, str], columns: int = 80, rows: int = 24) -> None:
        import pyte

        self._display = pyte.Screen(columns, rows)
        self._stream = pyte.ByteStream(self._display)
        self._lock = threading.Lock()
        self._pid, self._fd = pty.fork()
        if self._pid == 0:
            os.execvpe(command[0], command, {**os.environ, **environment})
        self._size(columns, rows)
        threading.Thread(target=self._read, daemon=True).start()

    def _size(self, columns: int, rows: int) -> None:
        fcntl.ioctl(self._fd, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))

    def _read(self) -> None:
        while True:
            try:
                data = os.read(self._fd, 65536)
            except OSError:
                return
            if not data:
                return
            with self._lock:
                self._stream.feed(data)

    def press(self, keys: str) -> None:
        """Press keys one after the other."""
        for key in keys:
            os.write(self._fd, key.encode())
            time.sleep(LOOK_S)

    def screen(self) -> str:
        """The text on the screen."""
        with self._lock:
            return "\n".join(line.rstrip() for line in self._display.display)

    def kill(self) -> None:
        """kill -9 the program."""
        os.kill(self._pid, signal.SIGKILL)
        os.waitpid(self._pid, 0)

    def resize(self, columns: int, rows: int) -> None:
        """Give the window another size."""
        with self._lock:
            self._display.resize(rows, columns)
        self._size(columns, rows)

    def send(self, raw: bytes) -> None:
        """Send bytes as a terminal might, whatever they are."""
        os.write(self._fd, raw)

    def hang_up(self) -> None:
        """Close the window under the program; it must be gone soon after."""
        os.close(self._fd)
        self._fd = -1
        ends = time.monotonic() + PATIENCE_S
        while os.waitpid(self._pid, os.WNOHANG)[0] == 0:
            assert time.monotonic() < ends, "the program outlived its window"
            time.sleep(LOOK_S)

    def end(self) -> None:
        """Take the program down if it still runs."""
        with contextlib.suppress(ProcessLookupError, ChildProcessError):
            os.kill(self._pid, signal.SIGKILL)
            os.waitpid(self._pid, 0)
        if self._fd >= 0:
            os.close(self._fd)
            self._fd = -1


def open_terminal(command: list[str], environment: dict[str, str], columns: int = 80, rows: int = 24) -> Terminal:
    """The best terminal this machine has."""
    made = Tmux if shutil.which("tmux") else BarePty
    return made(command, environment, columns, rows)
