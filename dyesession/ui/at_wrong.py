"""Looks after "What went wrong?": each trouble, what the log shows of its causes, and the mends with their sources."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.daybook.troubles import Cause, Trouble, what_went_wrong
from dyesession.session.opening import LoggedDay
from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.frame_view import NextAct
from dyesession.ui.leaf_view import Doable, Item, Section, Told
from dyesession.ui.place_keys import WRONG

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp


class GoneWrong:
    """What went wrong on a day: one trouble looked into, or all of them to choose from."""

    place: AtLeaf
    name = WRONG

    def __init__(self, app: DyeApp, day: LoggedDay) -> None:
        self._app, self._day = app, day
        self._troubles = what_went_wrong(day)
        self._chosen: Trouble | None = None

    @property
    def beside(self) -> str:
        """On which day."""
        return f"{self._day.recipe}, {self._day.opened.at:%Y-%m-%d}"

    def sections(self) -> tuple[Section, ...]:
        """The troubles to choose from; behind them the causes of the one that was chosen."""
        choices = tuple(Doable(f"trouble:{one.what}", one.what, _shown(one)) for one in self._troubles)
        if self._chosen is None:
            return (Section("what is it?", choices),)
        return (
            Section(self._chosen.what, _causes(self._chosen)),
            Section("something else?", tuple(one for one in choices if one.does != self._chosen.what)),
        )

    def about(self, key: str) -> tuple[Item, ...]:
        """The causes of the marked trouble."""
        what = key.partition(":")[2]
        marked = next((one for one in self._troubles if f"trouble:{one.what}" == key), None)
        return (Told(what, strong=True), *_causes(marked)) if marked is not None else ()

    def next_act(self, key: str) -> NextAct:
        """Look into the marked trouble."""
        if key.startswith("trouble:"):
            return NextAct(f"look for the causes: {key.partition(':')[2]}", "", "causes")
        return NextAct("back to all the troubles", "", "back")

    def do_next(self, key: str) -> None:
        """As the line does; on a cause, back to all of them."""
        if key.startswith("trouble:"):
            self.choose(key)
        else:
            self._chosen = None

    def choose(self, key: str) -> None:
        """Look into a trouble."""
        found = next((one for one in self._troubles if f"trouble:{one.what}" == key), None)
        if found is not None:
            self._chosen = found
            self.place.mark("")

    def take(self, slot: str, text: str) -> None:
        """Nothing is typed here."""

    def echo(self, slot: str, text: str) -> str:
        """Nothing is typed here."""
        return ""


def _shown(trouble: Trouble) -> str:
    shown = sum(1 for one in trouble.causes if one.standing == "shown")
    if shown:
        return f"the log shows {shown} of its usual causes"
    return "the log shows none of its usual causes"


def _causes(trouble: Trouble) -> tuple[Told, ...]:
    return tuple(told for one in trouble.causes for told in _cause(one))


_STANDS = {"shown": "the log", "not said": "the log", "spoken against": "hardly"}


def _cause(one: Cause) -> tuple[Told, ...]:
    cause = Told(f"{one.why}.", head="cause", strong=one.standing == "shown", mark=f"({one.source})")
    seen = Told(one.seen or "does not say.", head=_STANDS[one.standing])
    if one.standing == "spoken against":
        return (cause, seen)
    return (cause, seen, Told(one.mend, head="mend", mark=f"({one.mend_source})"))
