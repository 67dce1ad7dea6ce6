"""Looks after a day laid open: what its lines do. Knows no file: the workroom reads and writes."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from dyesession.daybook.care_typed import EXAMPLE, cared_of, named_and_typed
from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.frame_view import NextAct
from dyesession.ui.from_book import swatches_of
from dyesession.ui.from_day import DayLeaf, day_leaf
from dyesession.ui.leaf_view import Doable, Item, Section, Shades, Told
from dyesession.ui.place_keys import DAY

if TYPE_CHECKING:
    from dyesession.session.events import Cared
    from dyesession.ui.app import DyeApp

PAD = ("even", "a", "little", "pale", "deep", "streaky", "runs", "clean", "#")
BACK = "any key: back to the day"


class OneDay:
    """A day of the day book. `changed` is told when something was written into its log."""

    place: AtLeaf
    name = DAY

    def __init__(self, app: DyeApp, session: str, bounce_s: float, changed: Callable[[], None]) -> None:
        self._app, self._session, self._bounce_s, self._changed = app, session, bounce_s, changed
        self._leaf: DayLeaf | None = None

    def look(self) -> None:
        """Read the day, beside the screen."""
        workroom, today = self._app.workroom, self._app.now().at.date()

        def read() -> DayLeaf:
            return day_leaf(workroom.day(workroom.log_of(self._session)), today)

        self._app.in_background(read, self._read)

    def _read(self, leaf: DayLeaf) -> None:
        self._leaf = leaf
        self.place.refresh()

    # What stands there.

    @property
    def beside(self) -> str:
        """Which recipe, and when."""
        return f"{self._leaf.line.recipe}, {self._leaf.line.day}" if self._leaf is not None else self._session

    def sections(self) -> tuple[Section, ...]:
        """The day laid open."""
        return self._leaf.sections if self._leaf is not None else (Section("", (Told("reading the log …"),)),)

    def about(self, key: str) -> tuple[Item, ...]:
        """The colours large, with what the marked line is about."""
        if self._leaf is None:
            return ()
        swatches = swatches_of(self._leaf.line)
        marked = next((one for one in self._doables() if one.key == key), None)
        told: tuple[Item, ...] = ()
        if marked is not None:
            told = (Told(marked.does.removeprefix("! "), strong=True), Told(marked.why))
        shown: tuple[Item, ...] = (Told("as it was read; on a screen it is a hint"), Shades(swatches))
        return (*told, *(shown if swatches else ()))

    def _doables(self) -> tuple[Doable, ...]:
        leaf = self._leaf
        items = [item for section in leaf.sections for item in section.items] if leaf is not None else []
        return tuple(one for one in items if isinstance(one, Doable))

    def next_act(self, key: str) -> NextAct:
        """The marked act, else the aftercare due the longest, else the repeat."""
        acts = self._doables()
        chosen = next((one for one in acts if one.key == key), None) or next(iter(acts), None)
        if chosen is None:
            return NextAct("one moment: reading the log")
        does = chosen.does.removeprefix("! ")
        if chosen.key.startswith("due:"):
            return NextAct(f"note the {does}", "", "note")
        return NextAct(f"{does[0].lower()}{does[1:]}", "", chosen.key if len(chosen.key) < _SHORT else "")

    # What its lines do.

    def do_next(self, key: str) -> None:
        """Do what the next act says."""
        acts = self._doables()
        chosen = next((one for one in acts if one.key == key), None) or next(iter(acts), None)
        if chosen is not None:
            self.choose(chosen.key)

    def choose(self, key: str) -> None:
        """Do what a line does."""
        leaf = self._leaf
        if leaf is None:
            return
        kind, _, what = key.partition(":")
        match kind:
            case "due":
                self.place.ask(key, what, self._example())
            case "care":
                self.place.ask("care", "aftercare", f"for example second wash: runs a little, or dry shade: {EXAMPLE}")
            case "repeat":
                from dyesession.ui.at_repeat import Repeating

                repeating = Repeating(self._app, leaf.day, self._bounce_s)
                self._app.go_to(AtLeaf(self._app, repeating, self._bounce_s, pad=repeating.pad))
                repeating.begin()
            case "compare":
                from dyesession.ui.at_compare import Comparing

                comparing = Comparing(self._app, leaf.line, self._bounce_s)
                self._app.go_to(AtLeaf(self._app, comparing, self._bounce_s))
                comparing.look()
            case "wrong":
                from dyesession.ui.at_wrong import GoneWrong

                self._app.go_to(AtLeaf(self._app, GoneWrong(self._app, leaf.day), self._bounce_s))
            case "take-up":
                self._app.take_up(self._app.workroom.log_of(self._session))
            case "tags" | "page":
                self._print(kind)
            case "words" | "shades":
                self._words()
            case _:
                pass

    def _example(self) -> str:
        lots = self._leaf.lots if self._leaf is not None else ()
        lot = f"{lots[0]}: " if len(lots) > 1 else ""
        return f"for example {lot}{EXAMPLE}"

    def _words(self) -> None:
        from dyesession.daybook import review, review_lines

        assert self._leaf is not None
        width = max(40, self.place.screen.size.width - 6)
        lines = review_lines(review(self._leaf.day), width)
        self._app.show_page(self._leaf.line.session, "\n".join(lines), BACK)

    def _print(self, what: str) -> None:
        """Write the tags, or the whole day, as a page to be printed, and say where."""
        assert self._leaf is not None
        line, workroom = self._leaf.line, self._app.workroom
        if what == "page":
            from dyesession.daybook.page import day_page

            written = workroom.keep_paper(f"{line.session}.html", day_page(self._leaf.day))
            self.place.note(f"Written: {written.name} in {written.parent}.")
            return
        from dyesession.daybook.paper import paper_page
        from dyesession.daybook.skein_tags import tag_lines, tags_of

        tags = tags_of(line)
        text = "\n\n".join("\n".join(tag_lines(one)) for one in tags) + "\n"
        page = workroom.keep_paper(f"{line.session}-tags.html", paper_page(tags, ()))
        plain = workroom.keep_paper(f"{line.session}-tags.txt", text)
        self.place.note(f"Written: {page.name} and {plain.name} in {page.parent}.")

    def take(self, slot: str, text: str) -> None:
        """A piece of aftercare counts: it goes into the log of its day, closed or not."""
        entry = self._entry(slot, text)
        workroom = self._app.workroom
        workroom.note_care(workroom.log_of(self._session), entry)
        said = ", ".join(one for one in (entry.what, entry.result, entry.colour) if one)
        self.place.note(f"Noted in this day's log: {said}.")
        self._changed()
        self.look()

    def _entry(self, slot: str, text: str) -> Cared:
        lots = self._leaf.lots if self._leaf is not None else ()
        kind, _, what = slot.partition(":")
        if kind == "care":
            what, text = named_and_typed(text)
        return cared_of(what, text, lots)

    def echo(self, slot: str, text: str) -> str:
        """What a half-typed piece of aftercare was understood as."""
        entry = self._entry(slot, text)
        return f"= {', '.join(one for one in (entry.lot, entry.result, entry.colour) if one)}"


_SHORT = 14


def open_day(app: DyeApp, session: str, bounce_s: float, changed: Callable[[], None]) -> AtLeaf:
    """A day laid open, ready to be gone to; its log is read beside the screen."""
    day = OneDay(app, session, bounce_s, changed)
    place = AtLeaf(app, day, bounce_s, pad=PAD)
    day.look()
    return place
