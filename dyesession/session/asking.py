"""Where the day meets `care`: the situation a command would act in, its reminders, and the Asks.

An Ask is a reading that a hazard hangs on. Space never passes it; one number or the pot's letter does, and
"not now" always stands beside it. Few a day, for the worst hazards only. Pure: facts in, words out.
"""

from dataclasses import dataclass

from dyesession import care
from dyesession.care import Household
from dyesession.session import events as e
from dyesession.session.situation import moments_of_step, situation_of
from dyesession.session.state import State, Vessel


@dataclass(frozen=True)
class Ask:
    """A question before a dangerous act.

    `kind` is "temperature" (answered by °C) or "pot" (answered by the letter `expected`); `then` is the act.
    """

    key: str
    kind: str
    vessel: str
    question: str
    why: str
    then: e.Event
    expected: str = ""
    planned_c: float | None = None

    def answered(self, letter: str = "", temperature_c: float | None = None) -> e.Confirmed:
        """The fact of an answer."""
        answer = letter if self.kind == "pot" else f"{temperature_c:g}"
        return e.Confirmed(self.key, answer, self.vessel, temperature_c)

    def not_now(self) -> e.PutOff:
        """The fact of "not now": it is logged, and the dyer goes on."""
        return e.PutOff(self.key, self.vessel)

    def honest_answer(self) -> e.Confirmed:
        """The answer a rehearsal gives: the right pot, or the planned temperature."""
        if self.kind == "pot":
            return self.answered(letter=self.expected)
        return self.answered(temperature_c=self.planned_c if self.planned_c is not None else 20.0)


def ask_before(state: State, command: e.Event, household: Household) -> Ask | None:
    """The Ask that stands before a command, or None; none twice, and no more than care allows in a day."""
    situation = situation_of(state, command, household)
    if situation is None or len(state.answered) >= care.ASKS_PER_DAY:
        return None
    need = care.ask_before(situation)
    key = f"{_step_name(state, command)}: {command.kind} {situation.vessel}"
    if need is None or key in state.answered:
        return None
    vessel = state.vessel(situation.vessel)
    if need.kind == "temperature" and vessel is not None and _read_just_now(state, vessel):
        return None
    return Ask(
        key=key,
        kind=need.kind,
        vessel=situation.vessel,
        question=need.question,
        why=need.why,
        then=command,
        expected=vessel.letter if vessel else "",
        planned_c=situation.temperature_c,
    )


FRESH_S = 5 * 60.0  # a temperature read within this long is not asked for again; our own choice, no source


def _read_just_now(state: State, vessel: Vessel) -> bool:
    """Whether the dyer has just looked at this pot's temperature: asked again, people answer without looking."""
    return vessel.temperature_s is not None and state.now_s - vessel.temperature_s <= FRESH_S


def _step_name(state: State, command: e.Event) -> str:
    vessel = getattr(command, "vessel", "")
    step = state.running_in(vessel) if vessel else None
    return step.name if step else "closing"


def reminders_for(state: State, step: str, household: Household) -> tuple[str, ...]:
    """The sentences logged when a step begins, worst first: none that says who lives here."""
    anywhere = set(_of_step(state, step, Household()))
    return tuple(one for one in _of_step(state, step, household) if one in anywhere)


def care_now(state: State, command: e.Event | None, step: str, household: Household) -> tuple[str, ...]:
    """The sentences to show beside a command, or for a step that is waited for; worst first, each once."""
    situation = situation_of(state, command, household) if command is not None else None
    if situation is not None:
        said = tuple(one.text for one in care.reminders(situation))
        if said:
            return said
    return _of_step(state, step, household)


def _of_step(state: State, name: str, household: Household) -> tuple[str, ...]:
    step = state.step(name)
    if step is None:
        return ()
    raised = [one for moment in moments_of_step(state, step, household) for one in care.reminders(moment)]
    raised.sort(key=lambda one: -one.severity)
    return tuple(dict.fromkeys(one.text for one in raised))
