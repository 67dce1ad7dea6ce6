"""Keys in the order they came: a bounce counts once, and a key waits while an act is being carried out.

Knows nothing of what any key means. Why keys wait: an act may have asked for a text, and only then is it known
what the keys pressed since are part of.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from textual.events import Key
from textual.message import Message
from textual.screen import Screen

# A wet contact bounces: the same act within this time counts once (common practice, no source).
BOUNCE_S = 0.15
# A question drops what is pressed within this time of its appearing: it was meant for something else (no source).
ASK_REST_S = 0.6
NAMED = {
    "full_stop": ".", "question_mark": "?", "minus": "-", "exclamation_mark": "!", "slash": "/",
    "greater_than_sign": ">", "plus": "+",
}  # fmt: skip


def joined(typed: str, more: str) -> str:
    """What is typed with more behind it; a touched word brings spaces of its own, and two make one."""
    more = more if typed else more.lstrip()
    if more.startswith(", "):
        return f"{typed.rstrip()}{more.lstrip()}"
    return typed + (more.lstrip() if typed.endswith(" ") and more.strip() else more)


@dataclass(frozen=True)
class Pressed:
    """A key, the character it writes if any, and when it came."""

    key: str
    character: str | None
    at_s: float


class InOrder:
    """Hands each key on to `press`, one after the other."""

    def __init__(self, screen: Screen[Any], press: Callable[[Pressed], None], bounce_s: float) -> None:
        self._screen, self._press, self._bounce_s = screen, press, bounce_s
        self._last: tuple[str, float] = ("", -1.0)
        self._under_way = False
        self._waiting: list[Pressed] = []

    def arrived(self, event: Key) -> None:
        """A key from the keyboard: handed on now, or once the act under way has been carried out."""
        event.stop()
        event.prevent_default()
        pressed = Pressed(NAMED.get(event.key, event.key), event.character, event.time)
        if self._under_way:
            self._waiting.append(pressed)
        else:
            self._press(pressed)

    def counts(self, key: str, at_s: float) -> bool:
        """Whether a key that acts counts: the same key again at once is a bounce."""
        last, last_s = self._last
        self._last = (key, at_s)
        return key != last or at_s - last_s >= self._bounce_s

    @property
    def last(self) -> tuple[str, float]:
        """The last key that acted, and when it came."""
        return self._last

    def begin_after(self, key: str, at_s: float) -> None:
        """Take a key as pressed before: one that opened this screen must not act here by bouncing."""
        self._last = (key, at_s)

    def post(self, act: Message) -> None:
        """Post an act, and let keys wait until it has been carried out."""
        self._under_way = True
        self._screen.post_message(act)
        # Behind the act in this queue, then behind it in the app's: it comes back once the act is done.
        self._screen.call_later(self._screen.app.call_later, self._carried_out)

    def _carried_out(self) -> None:
        self._under_way = False
        while self._waiting and not self._under_way:
            self._press(self._waiting.pop(0))
