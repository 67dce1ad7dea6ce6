"""What Working out has been told, the plan that follows from it, and the view of both. Pure: no screen, no file.

Works nothing out itself: recipe, lots, depth and kitchen go to the plan's rooms, and what they say is kept.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.own_numbers import own_kitchen
from dyesession.daybook.own_reasons import of_dose, used_explained, used_line
from dyesession.errors import UserError
from dyesession.plan import work_out
from dyesession.plan.doses import FOLLOWS_DEPTH
from dyesession.plan.explained import DEPTH_WORDS, Explained, Worked
from dyesession.plan.lots import lot_questions
from dyesession.plan.mordanted import without_mordanted
from dyesession.plan.shopping import Shopping, shopping
from dyesession.ui import from_plan
from dyesession.ui.working_view import Answer, ChoiceLine, LotLine, SaidLine, WorkingView

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import datetime

    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.doses import Depth
    from dyesession.plan.model import FibreLot, Plan
    from dyesession.recipe.model import Recipe
    from dyesession.ui.frame_view import Frame

OWN = "own"  # the key of the line that tells of the dyer's own numbers
DEPTHS: tuple[Depth, ...] = ("low", "aim", "high")


@dataclass(frozen=True)
class WorkingState:
    """Everything said so far and what follows from it.

    `stocked` is the kitchen less what days have used of its jars, `learned` what days have taught; `trouble` says why there is no plan; `agreed` is
    what has been read and answered with yes. `remarks` is what the recipe's file says behind its figures.
    """

    recipe: Recipe
    kitchen: Kitchen
    stocked: Kitchen
    remarks: Mapping[str, str] = field(default_factory=dict)
    learned: Learnt = field(default_factory=Learnt)
    lots: tuple[FibreLot, ...] = ()
    depth: Depth = "aim"
    agreed: tuple[str, ...] = ()
    plan: Plan | None = None
    shopping: Shopping | None = None
    trouble: str = ""

    @property
    def reckoned_in(self) -> Kitchen:
        """The kitchen that the plan is worked out for: its jars as they stand, its own heat where days taught it."""
        return own_kitchen(self.stocked, self.learned)

    @property
    def worked(self) -> Worked | None:
        """The plan and all it is made of, once there is one."""
        if self.plan is None:
            return None
        return Worked(self.plan, self.recipe, self.kitchen, self.depth, self.remarks)

    def lot(self, name: str) -> FibreLot:
        """The lot of that name; there must be one."""
        return next(one for one in self.lots if one.name == name)

    @property
    def open_questions(self) -> tuple[str, ...]:
        """The plan's own questions that nobody has answered, those about the lots left out."""
        if self.plan is None:
            return ()
        of_lots = lot_questions(self.lots)
        return tuple(one for one in self.plan.questions if one not in of_lots and one not in self.agreed)


# What is said, and the plan worked out anew from it.


def worked_out(state: WorkingState) -> WorkingState:
    """The plan that follows from what was said; where there can be none, the sentence that says why."""
    bare = replace(state, plan=None, shopping=None, trouble="")
    if not state.lots:
        return bare
    kitchen = state.reckoned_in
    try:
        plan = work_out(state.recipe, state.lots, kitchen, depth=state.depth)
        plan = without_mordanted(plan, state.recipe, kitchen, state.depth)
    except UserError as trouble:
        return replace(bare, trouble=str(trouble))
    return replace(bare, plan=plan, shopping=shopping(plan, state.stocked.jars))


def with_lot(state: WorkingState, lot: FibreLot, instead_of: str = "") -> WorkingState:
    """One lot more, or in another's stead; one that would share a name gets a number."""
    others = [one.name for one in state.lots if one.name != instead_of]
    if lot.name in others:
        lot = replace(lot, name=_fresh(lot.name, others))
    if not instead_of:
        return worked_out(replace(state, lots=(*state.lots, lot)))
    return worked_out(
        replace(state, lots=tuple(lot if one.name == instead_of else one for one in state.lots))
    )


def without_lot(state: WorkingState, name: str) -> WorkingState:
    """One lot fewer."""
    return worked_out(replace(state, lots=tuple(one for one in state.lots if one.name != name)))


def next_depth(state: WorkingState) -> WorkingState:
    """Paler, usual, deeper, and round again."""
    return worked_out(replace(state, depth=DEPTHS[(DEPTHS.index(state.depth) + 1) % len(DEPTHS)]))


def _fresh(name: str, taken: list[str]) -> str:
    """A name no other lot has."""
    return next(
        one for one in (f"{name} {number}" for number in range(2, len(taken) + 3)) if one not in taken
    )


# The view.


def view_of(state: WorkingState, frame: Frame, now: datetime) -> WorkingView:
    """The whole page, without the mark."""
    view = WorkingView(
        frame=frame,
        lots=_lot_lines(state),
        choices=_choices(state),
        trouble=state.trouble,
        questions=tuple(_question_line(one) for one in state.open_questions),
    )
    plan = state.plan
    if plan is None or state.shopping is None:
        return view
    return replace(
        view,
        doses=tuple(from_plan.dose_line(one) for one in plan.doses),
        baths=tuple(from_plan.bath_line(one) for one in plan.baths),
        day=from_plan.day_bars(plan, now),
        mind=from_plan.mind_lines(plan),
        care=from_plan.care_lines(plan, state.kitchen.poison_centre),
        jars=from_plan.jar_lines(state.shopping),
        ahead=SaidLine("rehearse", "Rehearse the day: how it would go, on a stepping clock."),
        own=_own_line(state),
        paper=SaidLine("paper", "Write the weighing list, to be printed: a page and a text."),
    )


def why_of(state: WorkingState, key: str) -> Explained | None:
    """Where the figure of a line comes from, or None for a line without one."""
    chosen = from_plan.why_chosen(state.recipe, state.kitchen, key)
    worked = state.worked
    if chosen is not None or worked is None or state.shopping is None:
        return chosen
    if key == OWN:
        return used_explained(worked.plan, state.learned)
    found = from_plan.why(replace(worked, kitchen=state.reckoned_in), state.shopping, key)
    kind, _, which = key.partition(":")
    own = of_dose(worked.plan, state.learned, which) if kind == "dose" else ()
    return replace(found, because=(*found.because, *own)) if found is not None and own else found


def _own_line(state: WorkingState) -> SaidLine | None:
    says = used_line(state.plan, state.learned) if state.plan is not None else ""
    return SaidLine(OWN, says) if says else None


def _lot_lines(state: WorkingState) -> tuple[LotLine, ...]:
    mordants = any(one.stage == "mordant" for one in state.recipe.steps)
    lines = [from_plan.lot_line(one, mordants) for one in state.lots]
    more = "another lot" if lines else "what your fibre weighs, washed and air-dry"
    return (*lines, LotLine("lot+", "+", more))


def _choices(state: WorkingState) -> tuple[ChoiceLine, ...]:
    depth = ChoiceLine(
        "depth", "depth", DEPTH_WORDS[state.depth], "paler, usual, deeper: enter changes it"
    )
    return (
        ChoiceLine("recipe", "recipe", state.recipe.name, "enter: choose another"),
        *((depth,) if _has_range(state.recipe) else ()),
        ChoiceLine("kitchen", "kitchen", from_plan.kitchen_words(state.kitchen), "m: say more of it"),
        ChoiceLine("pattern", "pattern", "What does the pattern need?", "is the yarn enough"),
    )


def _has_range(recipe: Recipe) -> bool:
    """Whether the colour of this recipe can be made paler or deeper."""
    doses = [one for one in recipe.ingredients if one.role in FOLLOWS_DEPTH]
    return any(one.least or one.most or (one.dose and one.dose.low != one.dose.high) for one in doses)


def _question_line(question: str) -> LotLine:
    return LotLine("", "", "", question, (Answer(f"agreed:{question}", "yes: I have read it, go on"),))
