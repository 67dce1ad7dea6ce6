"""What a typed figure is most likely about: the pot, the step, the ingredient or the lot that is in hand just now.

Pure; decides nothing. A pot that was touched or named comes before the one the next act is about.
"""

from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.asking import Ask
from dyesession.session.state import OUT_WET, State, StepState
from dyesession.session.suggest import Suggestion
from dyesession.session.typed import Hand, Meaning


def in_hand(state: State, suggestion: Suggestion, meaning: Meaning, touched: str = "") -> Hand:
    """What a text of this meaning is about. `touched`: the pot in hand, "" for none."""
    if meaning == "wet weight":
        return _wet_in_hand(state, suggestion)
    step = step_of_interest(state, suggestion, meaning, touched)
    vessel = touched or (step.plan.vessel if step and step.plan.vessel else "") or any_pot(state)
    waiting = step.next_addition if step else None
    skein = next((one.name for one in state.lots if one.place == OUT_WET and meaning == "colour"), "")
    return Hand(vessel, step.name if step else "", waiting.ingredient if waiting else "", skein)


def any_pot(state: State) -> str:
    """The first pot with a bath in it, "" where none has."""
    return next((one.name for one in state.vessels if one.bath), "")


def step_of_interest(state: State, suggestion: Suggestion, meaning: Meaning, touched: str = "") -> StepState | None:
    """The step that the next act is about, else the running one that ends first."""
    event = _act_of(suggestion)
    named = state.step(getattr(event, "step", "") or "")
    if touched and meaning != "skip":
        return state.running_in(touched)
    if named is not None:
        return named
    in_pot = state.running_in(getattr(event, "vessel", "") or "")
    running = [one for one in state.steps if one.status == "running" and one.countdown]
    running.sort(key=lambda one: one.countdown.deadline_s if one.countdown else 0.0)
    return in_pot or (running[0] if running else None)


def weighed_now(state: State, suggestion: Suggestion) -> Meaning:
    """What stands on the scales: wet fibre where it is lifted next or lies out wet, else what goes into a pot."""
    step = step_of_interest(state, suggestion, "weight")
    if step is not None and step.next_addition is not None and not isinstance(_act_of(suggestion), e.Lifted):
        return "weight"
    return "wet weight" if _wet_in_hand(state, suggestion).lot else "weight"


def asked_for(state: State, meaning: Meaning, hand: Hand) -> str:
    """The word before the entry line: what is to be typed, of what, and in which unit."""
    pot = words.letter(state, hand.vessel) if hand.vessel else ""
    return {
        "temperature": f"temperature of {pot}, °C",
        "volume": f"volume in {pot}, L",
        "weight": f"weight of {hand.ingredient or 'what'}, g",
        "strength": f"strength of {pot}",
        "colour": f"colour of {hand.lot or pot}",
        "pH": f"pH of {pot}",
        "note": "note",
        "longer": f"give {hand.step or pot} longer, min",
        "top up": f"top up {pot} to, L",
        "correct": "which entry, what, because",
        "skip": f"leave out {hand.step}, because",
        "on shade": f"end {hand.step} now, because",
        "stop": "end the day early, because",
        "break off": "break off for safety, because",
        "wet weight": f"{hand.lot} wet, g",
        "verdict": "verdict",
        "plan": "a stage, or a change" if state.free else "change, because",
        "stage": "a stage",
    }[meaning]


def _act_of(suggestion: Suggestion) -> object:
    return suggestion.then if isinstance(suggestion, Ask) else suggestion


def _wet_in_hand(state: State, suggestion: Suggestion) -> Hand:
    """The lot that is lifted next, else one that lies out wet."""
    event = _act_of(suggestion)
    if isinstance(event, e.Lifted):
        lot = state.lot(event.lot)
        if lot is not None and not lot.snippet:
            return Hand(event.vessel, lot=lot.name)
    return Hand(lot=next((one.name for one in state.lots if one.place == OUT_WET and not one.snippet), ""))
