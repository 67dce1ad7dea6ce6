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

BELIEVED_WITHIN_C = 25.0
"""An answer further than this from what is known of a pot is asked for once more; our own choice, no source."""


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

    def doubt(self, temperature_c: float) -> str:
        """Why a temperature is hard to believe, in a sentence that names it; "" where it is not."""
        low_c, high_c = care.READABLE_C  # beyond it the answer is refused outright
        possible = low_c <= temperature_c <= high_c
        if self.planned_c is None or not possible or abs(temperature_c - self.planned_c) <= BELIEVED_WITHIN_C:
            return ""
        return (
            f"{temperature_c:g} °C, where {self.planned_c:.0f} °C was looked for: "
            "if the thermometer says so, answer the same once more."
        )

    def honest_answer(self) -> e.Confirmed:
        """The answer a rehearsal gives: the right pot, or the planned temperature."""
        if self.kind == "pot":
            return self.answered(letter=self.expected)
        return self.answered(temperature_c=self.planned_c if self.planned_c is not None else 20.0)


def ask_before(state: State, command: e.Event, household: Household) -> Ask | None:
    """The Ask that stands before a command, or None.

    None is answered twice, and no more are asked in a day than care allows: but two things that must never meet
    are always asked about. One that was put off comes back once.
    """
    situation = situation_of(state, command, household)
    need = care.ask_before(situation) if situation is not None else None
    if situation is None or need is None:
        return None
    if len(state.answered) >= care.ASKS_PER_DAY and need.rank > care.WORST_RANK:
        return None
    key = f"{step_name(state, command)}: {command.kind} {situation.vessel}"
    if _is_settled(state, key):
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
        expected=_expected(need, vessel),
        planned_c=situation.temperature_c,
    )


COMES_BACK_S = 10 * 60.0
"""What was put off and is still not done is asked about once more after this long; our own choice, no source."""


def _is_settled(state: State, key: str) -> bool:
    """Whether a question was answered, was put off just now, or was put off twice."""
    put_off_s = [second for name, second in state.put_off if name == key]
    if not put_off_s or state.answered.count(key) > len(put_off_s):
        return key in state.answered
    return len(put_off_s) > 1 or state.now_s - put_off_s[-1] < COMES_BACK_S


def _expected(need: care.AskNeed, vessel: Vessel | None) -> str:
    """The letter that answers: the pot the hazard is in, which need not be the one in hand."""
    first = need.expects[0] if need.expects else ""
    if need.kind == "pot" and isinstance(first, str):
        return first
    return vessel.letter if vessel else ""


FRESH_S = 5 * 60.0  # a temperature read within this long is not asked for again; our own choice, no source


def _read_just_now(state: State, vessel: Vessel) -> bool:
    """Whether the dyer has just looked at this pot's temperature: asked again, people answer without looking.
    """
    return vessel.temperature_s is not None and state.now_s - vessel.temperature_s <= FRESH_S


def step_name(state: State, command: e.Event) -> str:
    """The step a command belongs to, "closing" for one that comes after them all."""
    vessel = getattr(command, "vessel", "")
    step = state.running_in(vessel) if vessel else None
    return step.name if step else "closing"


def reminders_for(state: State, step: str, household: Household) -> tuple[str, ...]:
    """The sentences logged when a step begins, worst first: none that says who lives here."""
    return tuple(one.text for one in _of_step(state, step, household) if not one.private)


@dataclass(frozen=True)
class Cared:
    """What to bear in mind, worst first, each once; and the line of first aid where the worst is grave.

    For the eye, never for the log: the lines may tell who lives here, and the first aid has a number in it.
    """

    texts: tuple[str, ...] = ()
    first_aid: str = ""
    first_aid_short: str = ""


def caring(
    state: State, command: e.Event | None, step: str, household: Household, poison_centre: str = ""
) -> Cared:
    """What to show beside a command, or for a step that is waited for."""
    said, situation = _now(state, command, step, household)
    if not said or situation is None:
        return Cared()
    texts = tuple(one.text for one in said)
    if said[0].severity < care.GRAVE:
        return Cared(texts)
    long, short = (
        care.first_aid_after(said, situation, poison_centre, short=short) for short in (False, True)
    )
    return Cared(texts, long, short)


def reminders_before(state: State, command: e.Event, household: Household) -> tuple[str, ...]:
    """The sentences that go with an act itself, worst first: none that says who lives here."""
    situation = situation_of(state, command, household)
    said = care.reminders(situation) if situation is not None else ()
    return tuple(one.text for one in said if not one.private)


def care_now(state: State, command: e.Event | None, step: str, household: Household) -> tuple[str, ...]:
    """The sentences alone."""
    return caring(state, command, step, household).texts


def first_aid_before(state: State, ask: Ask, household: Household, poison_centre: str) -> str:
    """The line of first aid that goes with a question: the harm it asks about is always a grave one."""
    situation = situation_of(state, ask.then, household)
    return care.first_aid_for(situation, poison_centre) if situation is not None else ""


def _now(
    state: State, command: e.Event | None, step: str, household: Household
) -> tuple[tuple[care.Reminder, ...], care.Situation | None]:
    situation = situation_of(state, command, household) if command is not None else None
    said = care.reminders(situation) if situation is not None else ()
    if said:
        return said, situation
    found = state.step(step)
    return _of_step(state, step, household), moments_of_step(state, found, household)[0] if found else None


def _of_step(state: State, name: str, household: Household) -> tuple[care.Reminder, ...]:
    step = state.step(name)
    return care.reminders_over(moments_of_step(state, step, household)) if step is not None else ()
