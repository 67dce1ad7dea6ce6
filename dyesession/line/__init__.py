"""The same day as prompts and printed lines: for screen readers, plain terminals and scripts of answers.

One fact, one line; no cursor movement, no colour, no drawing. Knows how a line is read and said, no more.
"""

import time
from collections.abc import Callable

from dyesession.account.model import Account
from dyesession.kitchen.model import Kitchen
from dyesession.line import terminal
from dyesession.line.ears import Keyboard, Script
from dyesession.line.talk import Means, Talk
from dyesession.line.trouble import LineError
from dyesession.session.session import Session

__all__ = ["LineError", "run_line"]

LOOK_AGAIN_S = 0.5  # how often a live prompt looks whether something rings; our own choice, no source


def run_line(
    session: Session[Account],
    read: Callable[[str], str] | None = None,
    write: Callable[[str], None] | None = None,
    *,
    live: bool | None = None,
    bell: bool | None = None,
    kitchen: Kitchen | None = None,
    sleep: Callable[[float], None] = time.sleep,
    look_again_s: float = LOOK_AGAIN_S,
) -> int:
    """Run an open day in lines until the dyer quits (or the lines end) or the day is closed; the exit code.

    `read(prompt)` gives the next line or raises EOFError, `write(line)` prints one: standard input and output
    where they are not given. `live`: somebody sits at a keyboard, which is read on a thread of its own, and
    what falls due is said at once; otherwise `wait` lets time pass through `sleep(seconds)`. `bell`: put the
    bell character before what rings. The session stays open: whoever opened it closes it.
    """
    say = write or terminal.writer()
    hear = read or terminal.reader(say)
    live = (read is None and terminal.is_live()) if live is None else live
    if live and read is None:
        terminal.hear_interrupts()
    bell = (write is None and terminal.can_ring()) if bell is None else bell
    ears = Keyboard(hear, look_again_s) if live else Script(hear)
    try:
        return Talk(session, ears, Means(say, sleep, kitchen or Kitchen(), live, bell)).run()
    except BrokenPipeError:
        terminal.nobody_listens()
        return 0
