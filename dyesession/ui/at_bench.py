"""Looks after the Bench: what was found in the workroom, where the mark stands, what choosing a line does.

Loads nothing heavy: the Bench must be up at once. What is read is read beside the screen, by `found.look_round`.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError
from dyesession.ui import place_messages as p
from dyesession.ui.bench_rows import BENCH_DRAWING
from dyesession.ui.bench_view import (
    IMPROVISE,
    TAUGHT,
    BenchView,
    DayLine,
    RecipeLine,
    WantLine,
    WayLine,
    name_of_file,
)
from dyesession.ui.frame_view import Entry, NextAct
from dyesession.ui.going import go
from dyesession.ui.improvising import echo_of_lots, lots_typed
from dyesession.ui.place_keys import BENCH, place_key_words
from dyesession.ui.round import FROM_THE_BENCH
from dyesession.ui.rows import keys_of
from dyesession.ui.screens.place import PlaceScreen
from dyesession.ui.theme import DARK

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp
    from dyesession.ui.found import Found

GREETING = (
    "Welcome to your bench. Nothing has been dyed here yet.",
    "Choose a recipe and say what your fibre weighs: doses, water, pots and times are worked out from that. "
    "Nothing is written down before you begin.",
)
BACK = "any key: back to the Bench"
FIRST_RECIPE = "madder-brick"  # what a new dyer's mark stands on: our own invented demo
_KEYS = ("space", "enter", "tab", "q", "/", "+", "m", "r", "?")
FIBRE = "washed, air-dry fibre"
FIBRE_EXAMPLE = "for example 240 g wool; several lots with a semicolon between: 165 g large skein; 75 g small skein"


class AtBench:
    """What the Bench is in the middle of."""

    def __init__(self, app: DyeApp, bounce_s: float) -> None:
        self._app = app
        self._found: Found | None = None
        self._recipes = tuple(_by_file(app, path) for path in app.workroom.recipe_files())
        self._cursor = ""
        self._note = ""
        self._find = ""
        self._finding = False
        self._fibre: str | None = None  # what is typed of the fibre of a day without a recipe
        self.screen: PlaceScreen[BenchView] = PlaceScreen(BENCH_DRAWING, self._view(), bounce_s)

    def look_round(self) -> None:
        """Read what lies in the workroom, beside the screen."""

        def look() -> Found:
            from dyesession.ui.found import look_round

            return look_round(self._app.workroom)

        self._app.in_background(look, self._found_it)

    def _found_it(self, found: Found) -> None:
        first = self._found is None
        self._found, self._recipes = found, _own_first(found.recipes)
        if first and found.under_way:
            self._cursor = found.under_way[0].key
        self.refresh()
        self._warm_up()

    def _warm_up(self) -> None:
        """Load what the next place wants while the dyer reads."""

        def load() -> None:
            import dyesession.ui.at_working
            import dyesession.ui.stove_day  # noqa: F401

        self._app.in_background(load, lambda _: None)

    def refresh(self) -> None:
        """Show the Bench as it stands now."""
        self.screen.show(self._view())

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self._note = note
        self.refresh()

    def carry_out(self, act: p.PlaceAct) -> None:
        """Do what was pressed or touched."""
        if not isinstance(act, p.TypedSoFar):
            self._note = ""
        match act:
            case p.Mark(key=key):
                self._cursor = key
            case p.Choose(key=key):
                self._choose(key)
            case p.DoNext():
                self._do_next()
            case p.FindRecipe():
                self._begin_finding()
            case p.Improvise():
                self._improvise()
            case p.TypedSoFar(text=text) if self._fibre is not None:
                self._fibre = text
            case p.TypedOut(text=text) if self._fibre is not None:
                self._begin_improvised(text)
            case p.TypedSoFar(text=text):
                self._find = text
                self._cursor = self._first_recipe()
            case p.TypedOut():
                self._finding = False
                self.screen.clear_entry()
            case p.LayAside():
                self._stop_finding()
            case _:
                self._go(act)
        self.refresh()

    def _go(self, act: p.PlaceAct) -> None:
        if isinstance(act, p.OpenKitchen):
            self._app.open_kitchen(None, lambda kitchen: None)
        else:
            go(self._app, act, BENCH)

    def _begin_finding(self) -> None:
        self._finding, self._find = True, ""
        self.screen.begin_entry()

    def _improvise(self) -> None:
        """Ask what is dyed: the one thing a day without a recipe cannot do without."""
        self._stop_finding()
        if self._app.day is not None and not self._app.day.is_over:
            recipe = self._app.day.session.snapshot.recipe
            self._note = f"{recipe} is under way here: close it first, or begin the other day in a second window."
            return
        self._fibre, self._note = "", FIBRE_EXAMPLE
        self.screen.begin_entry()

    def _begin_improvised(self, text: str) -> None:
        try:
            lots = lots_typed(text)
        except UserError as trouble:
            self._note = str(trouble)
            return
        self._stop_finding()
        self._app.begin_improvised(lots)

    def _stop_finding(self) -> None:
        self._finding, self._find, self._fibre = False, "", None
        self.screen.clear_entry()

    def _do_next(self) -> None:
        if self._found is None:
            self._note = "One moment: still looking through the logs, in case a day is open."
        else:
            self._choose(self._marked())

    def _choose(self, key: str) -> None:
        """What a line does when it is chosen."""
        kind, _, rest = key.partition(":")
        if kind == "day":
            self._choose_day(Path(rest))
        elif kind == "log":
            want = next(one for one in self._wants() if one.key == key)
            self._app.show_page(want.what, want.why, BACK)
        elif kind == "kept":
            self._look_back(Path(rest.rpartition(":")[0]))
        elif kind == "recipe":
            self._choose_recipe(key)
        elif kind == "dry":
            self._app.judge_dry(Path(rest))
        elif kind == "place":
            self._app.open_place(rest)
        elif key == IMPROVISE:
            self._improvise()
        elif key == TAUGHT:
            self._app.open_own_numbers()

    def _choose_recipe(self, key: str) -> None:
        recipe = next((one for one in self._recipes if one.key == key), None)
        if recipe is not None and recipe.fault:
            self._app.show_page(recipe.name, recipe.fault, BACK)
        elif recipe is not None:
            self._stop_finding()
            self._app.work_out(Path(key.partition(":")[2]))

    def _choose_day(self, log: Path) -> None:
        running = self._app.day
        if not any(one.key == f"day:{log}" for one in self._under_way()):
            self._look_back(log)
        elif running is not None and running.session.snapshot.path == str(log):
            self._app.go_to_stove()
        elif running is not None:
            self._note = (
                f"{running.session.snapshot.recipe} is under way here: take the other day up in a second window, with "
                f"dyesession resume {log.stem}"
            )
        else:
            self._note = "Taking the day up …"
            self._app.take_up(log)

    def _look_back(self, log: Path) -> None:
        def read() -> str:
            from dyesession.daybook import review, review_lines

            return "\n".join(
                review_lines(review(self._app.workroom.day(log)), max(40, self.screen.size.width - 6))
            )

        self._app.in_background(read, lambda text: self._app.show_page(log.stem, text, BACK))

    # The view.

    def _under_way(self) -> tuple[DayLine, ...]:
        days = self._found.under_way if self._found is not None else ()
        running = self._running()
        return (running, *(one for one in days if one.key != running.key)) if running is not None else days

    def _running(self) -> DayLine | None:
        """The day that is open in this app, as it stands now and not as it was found."""
        day = self._app.day
        if day is None or day.is_over:
            return None
        from dyesession.ui.found import open_day_line

        shot, now = day.session.snapshot, self._app.now()
        opened = shot.entries[0].instant.at if shot.entries else now.at
        return open_day_line(shot.path, shot.recipe, shot.plan.lots, shot.state, now, opened, shot.entries)

    def _wants(self) -> tuple[WantLine, ...]:
        return self._found.wants if self._found is not None else ()

    def _listed(self) -> tuple[RecipeLine, ...]:
        """The recipes on offer, or those in which the word sought stands."""
        sought = self._find.casefold().split()
        return tuple(one for one in self._recipes if all(word in _all_words(one) for word in sought))

    def _first_recipe(self) -> str:
        listed = self._listed()
        demo = next((one.key for one in listed if FIRST_RECIPE in one.key), None)
        own = next((one.key for one in listed if one.own), None)
        return own or demo or (listed[0].key if listed else "")

    def _marked(self) -> str:
        """The marked line: the dyer's own choice where it is still there, else the one most wanted."""
        under_way = self._under_way()
        fallback = under_way[0].key if under_way else self._first_recipe()
        return self._cursor or fallback

    def _view(self) -> BenchView:
        view = BenchView(
            frame=self._app.frame("", "", NextAct(""), (), None, ""),
            greeting=GREETING if self._is_new() else (),
            under_way=self._under_way(),
            wants=self._wants(),
            recipes=self._listed(),
            done=self._found.done if self._found is not None else (),
            ways=tuple(WayLine(f"place:{one.name}", one.name, one.asks) for one in FROM_THE_BENCH),
            find=self._find,
            looking=self._found is None,
        )
        keys = keys_of(BENCH_DRAWING.rows(view, 80, DARK))
        marked = self._marked() if self._marked() in keys else (keys[0] if keys else "")
        entry = Entry("recipe with", self._find) if self._finding else None
        if self._fibre is not None:
            entry = Entry(FIBRE, self._fibre, echo_of_lots(self._fibre))
        frame = self._app.frame(
            "Bench", _short(self._app.workroom.folder), self._next(view, marked), place_key_words(_KEYS), entry,
            self._note,
        )  # fmt: skip
        return replace(view, frame=frame, cursor=marked)

    def _is_new(self) -> bool:
        found = self._found
        if found is None or self._app.day is not None:
            return False
        return not (found.under_way or found.wants or any(not one.demo for one in found.done))

    def _next(self, view: BenchView, marked: str) -> NextAct:
        if view.looking:
            return NextAct("one moment: looking through the logs", short="")
        running = self._app.day
        day = next((one for one in view.under_way if one.key == marked), None)
        if day is not None:
            here = running is not None and day.key == f"day:{running.session.snapshot.path}"
            return NextAct(
                f"go to the stove: {day.recipe}" if here else f"take up {day.recipe} where it stands",
                short="stove" if here else "take up",
            )
        recipe = next((one for one in view.recipes if one.key == marked), None)
        if recipe is not None:
            return NextAct(
                f"work out {recipe.name}" if not recipe.fault else "read what is wrong with it",
                short="work out",
            )
        if marked.startswith("place:"):
            name = marked.partition(":")[2]
            return NextAct(f"go on to {name}", short=name)
        if marked == IMPROVISE:
            return NextAct("begin a day without a recipe: first what you dye", short="improvise")
        if marked == TAUGHT:
            return NextAct("look at what your days have taught", short="own numbers")
        want = next((one for one in view.wants if one.key == marked), None)
        if want is not None and want.key.startswith("log:"):
            return NextAct("read what is wrong with it", short="read")
        if want is not None and want.key.startswith("dry:"):
            return NextAct("judge the dry shade, and note it on that day", short="dry shade")
        return NextAct("look back on that day", short="look back") if marked else NextAct("choose a recipe")


def _by_file(app: DyeApp, path: Path) -> RecipeLine:
    return RecipeLine(f"recipe:{path}", name_of_file(path), own=app.workroom.is_own(path))


def _own_first(recipes: tuple[RecipeLine, ...]) -> tuple[RecipeLine, ...]:
    return tuple(sorted(recipes, key=lambda one: (not one.own, one.name.casefold())))


def _all_words(recipe: RecipeLine) -> str:
    words = (recipe.name, recipe.fibre, recipe.summary, recipe.source, recipe.colour_from)
    return " ".join(words).casefold()


def _short(folder: Path) -> str:
    """A folder as people say it: from home."""
    home = Path.home()
    return f"~/{folder.relative_to(home)}" if folder != home and folder.is_relative_to(home) else str(folder)
