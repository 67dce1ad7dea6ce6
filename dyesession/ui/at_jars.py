"""Looks after Jars: what is left in them, what the next colours take and cost, and what is to be bought for them.

Reckons nothing: the day book folds the jars, the plan's rooms do the sums. The plans stand here while the app runs;
the list for the shop can be written on paper.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError
from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.bench_view import name_of_file
from dyesession.ui.frame_view import NextAct
from dyesession.ui.leaf_view import Doable, Item, Section, Told
from dyesession.ui.place_keys import JARS

if TYPE_CHECKING:
    from dyesession.daybook.stock import Ahead
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.model import Plan
    from dyesession.plan.stock import JarNow
    from dyesession.ui.app import DyeApp

PAD = ("g", "kg", "wool", "silk", "cotton", "linen", "skein")
EXAMPLE = "for example 240 g wool: washed and air-dry"
EMPTY = (
    Told("No jar is written down in your kitchen."),
    Told("Press m on the Bench and say what stands in one, for example madder root 350 g; days are taken off by themselves."),
)


@dataclass(frozen=True)
class NextPlan:
    """One of the colours that come next: its recipe and its fibre, as typed."""

    recipe: Path
    fibre: str


class Jars:
    """The jars, the next plans, what to buy."""

    place: AtLeaf
    name = JARS

    def __init__(self, app: DyeApp) -> None:
        self._app = app
        self._ahead: Ahead | None = None
        self._trouble = ""
        self._choosing = False
        self._recipe: Path | None = None

    def look(self) -> None:
        """Fold the jars and work the plans out, beside the screen."""
        self._app.in_background(self._reckoned, self._found)

    def _reckoned(self) -> Ahead | UserError:
        from dyesession.daybook.stock import ahead

        try:
            kitchen, jars = self._app.workroom.kitchen(), self._app.workroom.jars_now()
            return ahead(jars, [self._plan(one, kitchen, jars) for one in self._app.next_plans])
        except UserError as trouble:
            return trouble

    def _plan(self, wanted: NextPlan, kitchen: Kitchen, jars: tuple[JarNow, ...]) -> Plan:
        from dyesession.daybook.stock import plan_ahead, stocked

        return plan_ahead(self._app.workroom.recipe(wanted.recipe), (wanted.fibre,), stocked(kitchen, jars))

    def _found(self, found: Ahead | UserError) -> None:
        if isinstance(found, UserError):
            self._trouble = str(found)
        else:
            self._ahead, self._trouble = found, ""
        self.place.refresh()

    # What stands there.

    @property
    def beside(self) -> str:
        """How many jars there are."""
        count = len(self._ahead.jars) if self._ahead is not None else 0
        return "" if self._ahead is None else f"{count} jar{'' if count == 1 else 's'}"

    def sections(self) -> tuple[Section, ...]:
        """The recipe that is chosen from, else jars, next plans, and what to buy."""
        if self._choosing:
            recipes = tuple(
                Doable(f"recipe:{one}", name_of_file(one)) for one in self._app.workroom.recipe_files()
            )
            return (Section("which colour comes next?", (*recipes, _BACK)),)
        if self._trouble:
            return (Section("", (Told(self._trouble, strong=True),)),)
        found = self._ahead
        if found is None:
            return (Section("", (Told("looking through the logs …"),)),)
        jars = Section("in the jars", _jar_items(found) or EMPTY)
        plans = Section("the next plans", (*_plan_items(found), *self._plan_acts(found)))
        # What is to be bought comes first, once it is asked for.
        return (plans, Section("to buy for them", _buy_items(found)), jars) if found.plans else (jars, plans)

    def _plan_acts(self, found: Ahead) -> tuple[Doable, ...]:
        from dyesession.daybook.stock import MOST_AHEAD

        acts = []
        if len(found.plans) < MOST_AHEAD:
            another = "Another colour" if found.plans else "A colour that comes next"
            acts.append(Doable("add", another, "its recipe and its fibre: what it takes, what it costs"))
        if found.plans:
            acts.append(Doable("fewer", f"Leave out {found.plans[-1].recipe}", "the last of them"))
        return tuple(acts)

    def about(self, key: str) -> tuple[Item, ...]:
        """What the marked plan takes, one ingredient a line; how the marked jar comes to its figure."""
        found, (kind, _, which) = self._ahead, key.partition(":")
        if found is None or not which.isdigit():
            return ()
        if kind == "plan":
            from dyesession.plan.shopping import in_words

            plan, listed = found.plans[int(which)], found.stock.lists[int(which)]
            lines = tuple(Told(f"{one.ingredient} {in_words(one)}.") for one in listed.items)
            return (Told(plan.recipe, strong=True), *lines)
        return (Told(found.jars[int(which)].jar.name, strong=True), Told(_HOW_TAKEN)) if kind == "jar" else ()

    def next_act(self, key: str) -> NextAct:
        """The marked act; without one, the list for the shop, or the first of the next plans."""
        chosen = self._chosen(key)
        if chosen is None:
            return NextAct("back to the Bench", "", "Bench")
        return NextAct(f"{chosen.does[0].lower()}{chosen.does[1:]}", "", _SHORT.get(chosen.key, "choose"))

    def _chosen(self, key: str) -> Doable | None:
        acts = [one for section in self.sections() for one in section.items if isinstance(one, Doable)]
        wanted = (key, "paper", "add", "back")
        return next((one for which in wanted for one in acts if one.key == which), None)

    # What its lines do.

    def do_next(self, key: str) -> None:
        """Do what the next act says."""
        chosen = self._chosen(key)
        if chosen is not None:
            self.choose(chosen.key)
        else:
            self._app.leave()

    def choose(self, key: str) -> None:
        """Do what a line does."""
        kind, _, which = key.partition(":")
        match kind:
            case "add":
                self._choosing = True
                self.place.mark("")
            case "recipe":
                self._recipe = Path(which)
                self.place.ask("fibre", "fibre", EXAMPLE)
            case "fewer":
                self._app.next_plans = self._app.next_plans[:-1]
                self._again("add")
            case "paper":
                self._write()
            case "back":
                self._choosing = False
                self.place.mark("add")
            case _:
                pass

    def _again(self, mark: str) -> None:
        self._choosing, self._recipe = False, None
        self.place.mark(mark)
        self.look()

    def _write(self) -> None:
        """The list for the shop, as a text among the papers."""
        from dyesession.plan.stock_text import stock_lines

        found = self._ahead
        if found is not None:
            lines = stock_lines(found.jars, found.plans, found.stock, found.costs)
            path = self._app.workroom.keep_paper(f"{self._app.now().at:%Y-%m-%d}-to-buy.txt", "\n".join(lines) + "\n")
            self.place.note(f"Written: {path.name} in {path.parent.name}, of {path.parent.parent}.")

    def take(self, slot: str, text: str) -> None:
        """The fibre of a further plan. What cannot be planned is refused, and the text stays."""
        recipe, found = self._recipe, self._ahead
        if recipe is not None and found is not None:
            wanted = NextPlan(recipe, text)
            self._plan(wanted, self._app.workroom.kitchen(), found.jars)
            self._app.next_plans = (*self._app.next_plans, wanted)
            self._again("add")

    def echo(self, slot: str, text: str) -> str:
        """The fibre as it was understood."""
        from dyesession.plan.lots import lot_from_text
        from dyesession.units import show_mass

        lot = replace(lot_from_text(text, "wool"), air_dry=True)
        return f"= {show_mass(lot.mass_g)} {lot.kind}"


_BACK = Doable("back", "Not now", "back to the jars")
_SHORT = {"add": "a colour", "fewer": "leave out", "paper": "on paper", "back": "back"}
_HOW_TAKEN = (
    "What was written down in your kitchen, less what your own days put in since that day; rehearsals and demo days "
    "take nothing. Weigh the jar and write it down anew where it should be right to the gram."
)


def _jar_items(found: Ahead) -> tuple[Item, ...]:
    from dyesession.plan.stock_text import jar_words
    from dyesession.units import show_mass

    items: list[Item] = []
    for index, (now, row) in enumerate(zip(found.jars, found.stock.jars, strict=True)):
        then = f", then {show_mass(row.after_g)}" if row.after_g is not None else ""
        takes = f"These plans take {show_mass(row.takes_g)}{then}." if row.takes_g else ""
        items.append(Told(f"{jar_words(now)}.", f"jar:{index}", now.jar.name, mark=takes))
    return tuple(items)


def _plan_items(found: Ahead) -> tuple[Item, ...]:
    from dyesession.plan.stock_text import cost_words
    from dyesession.units import show_mass

    return tuple(
        Told(f"{plan.recipe}, {show_mass(plan.fibre_mass_g)}: {cost_words(cost)}.", f"plan:{index}")
        for index, (plan, cost) in enumerate(zip(found.plans, found.costs, strict=True))
    )


def _buy_items(found: Ahead) -> tuple[Item, ...]:
    from dyesession.plan.stock_text import buy_words

    if not found.plans:
        return ()
    return (Told(buy_words(found.stock), strong=True), Doable("paper", "Write it on paper", "jars, plans, costs, what to buy"))


def open_jars(app: DyeApp, bounce_s: float) -> AtLeaf:
    """The jars, ready to be gone to; they are folded from the logs beside the screen."""
    jars = Jars(app)
    place = AtLeaf(app, jars, bounce_s, pad=PAD)
    jars.look()
    return place
