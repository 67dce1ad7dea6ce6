"""Reading and printing on whatever stands at standard input and output: a terminal, a pipe, an old encoding.

Knows no session. A script's lines are printed as they are read, so that the output alone can be followed.
"""

import signal
import sys
import threading
from collections.abc import Callable
from typing import TextIO

_PLAINER = {
    "°": "deg ", "±": "+-", "“": '"', "”": '"', "’": "'", "…": "...", "×": "x", "–": "-", "½": " 1/2",
    "¼": " 1/4",
    "¾": " 3/4",
}  # fmt: skip


def is_live() -> bool:
    """Whether somebody sits at a keyboard."""
    return sys.stdin is not None and sys.stdin.isatty()


def hear_interrupts() -> None:
    """Let an interrupt at the keyboard quit, also where whoever started the program had it ignored (`nohup`, a script)."""
    if threading.current_thread() is threading.main_thread():
        signal.signal(signal.SIGINT, signal.default_int_handler)


def can_ring() -> bool:
    """Whether a bell character goes to a terminal."""
    return sys.stdout.isatty()


def reader(write: Callable[[str], None]) -> Callable[[str], str]:
    """How to read the next line from standard input; raises EOFError at its end."""
    return input if is_live() else _script_reader(sys.stdin, write)


def _script_reader(stream: TextIO, write: Callable[[str], None]) -> Callable[[str], str]:
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors="replace")

    def read(prompt: str) -> str:
        line = stream.readline()
        if not line:
            raise EOFError
        write(f"{prompt}{line.rstrip()}")
        return line

    return read


def writer(stream: TextIO | None = None) -> Callable[[str], None]:
    """How to print one line at once, in marks that the stream's encoding has."""
    out = stream or sys.stdout

    def write(text: str) -> None:
        out.write(f"{encodable(text, out.encoding or 'utf-8')}\n")
        out.flush()

    return write


def nobody_listens() -> None:
    """The reader of our output has gone: print the rest nowhere, so that leaving is quiet. Every fact is
    saved.
    """
    import os

    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def encodable(text: str, encoding: str) -> str:
    """The text with plainer marks for those the encoding lacks."""
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        plainer = "".join(_PLAINER.get(one, one) for one in text)
        return plainer.encode(encoding, "replace").decode(encoding)
    return text
