"""What Working out says is to be done next: the line it is about, and its words. Pure."""

from dyesession.ui.frame_view import NextAct
from dyesession.ui.working_state import WorkingState


def next_key(state: WorkingState) -> str:
    """The line that the next act is about; "" where the day may begin."""
    if not state.lots:
        return "lot+"
    unsure = next((one for one in state.lots if one.air_dry is None), None)
    if unsure is not None:
        return f"dry:{unsure.name}"
    damp = next((one for one in state.lots if one.air_dry is False), None)
    if damp is not None:
        return f"lot:{damp.name}"
    questions = state.open_questions
    return f"agreed:{questions[0]}" if questions else ""


def next_mark(state: WorkingState, marked: str) -> str:
    """Where the mark goes once something was said: to the next act; to the first dose where the day may begin."""
    doses = state.plan.doses if state.plan is not None else ()
    return next_key(state) or (f"dose:{doses[0].ingredient}" if doses else marked)


def next_act(state: WorkingState) -> NextAct:
    """The one right thing now."""
    kind, _, which = next_key(state).partition(":")
    if kind == "lot+":
        return NextAct("type what your fibre weighs", "washed and air-dry", "weight")
    if kind == "dry":
        return NextAct(
            f"say whether the {which} is washed and air-dry", "enter on the line that is true", "dry?"
        )
    if kind == "lot":
        return NextAct(f"the {which} is damp: type both its weights", "", "weight")
    if kind == "agreed":
        return NextAct(
            "answer what is asked before the day begins", "enter on the line that is true", "answer"
        )
    if state.plan is None:
        return NextAct("this cannot be worked out: read why", "", "")
    return NextAct(f"begin this day: {state.recipe.name}", "opens the Stove and its log", "begin")
