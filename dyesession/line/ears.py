"""Where typed lines come from: a script that is read on, or a keyboard listened to while clocks run.

Knows no session. A keyboard is read on a thread of its own, so that what is due is said while nobody types.
"""

import queue
import threading
from collections.abc import Callable
from typing import Protocol

Read = Callable[[str], str]


class Ears(Protocol):
    """Whatever hears the dyer."""

    def hear(self, prompt: str) -> str | None:
        """The next line; None when none has come for a while. Raises EOFError when there will be none."""
        ...


class Script:
    """Lines that are all there: a pipe, a file, a test. Nothing is due between one line and the next."""

    def __init__(self, read: Read) -> None:
        self._read = read

    def hear(self, prompt: str) -> str | None:
        """The next line of the script."""
        return self._read(prompt)


class Keyboard:
    """Lines that are typed. One line is read at a time, and only after it was asked for."""

    def __init__(self, read: Read, patience_s: float) -> None:
        self._read, self._patience_s = read, patience_s
        self._wanted: queue.Queue[str] = queue.Queue()
        self._heard: queue.Queue[str | BaseException] = queue.Queue()
        self._asked = False
        threading.Thread(target=self._listen, name="keyboard", daemon=True).start()

    def _listen(self) -> None:
        while True:
            prompt = self._wanted.get()
            try:
                self._heard.put(self._read(prompt))
            except BaseException as end:
                self._heard.put(end)
                return

    def hear(self, prompt: str) -> str | None:
        """The line typed, or None when `patience_s` went by without one."""
        if not self._asked:
            self._asked = True
            self._wanted.put(prompt)
        try:
            heard = self._heard.get(timeout=self._patience_s)
        except queue.Empty:
            return None
        self._asked = False
        if isinstance(heard, BaseException):
            raise EOFError from heard
        return heard
