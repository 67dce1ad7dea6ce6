"""What is done with steps and with the day, as it is typed: begin, pause, extend, skip, refresh, stop, close.

Knows names and reasons; whether the day allows it is the engine's to say.
"""

from dyesession.line import amounts
from dyesession.line.answers import Answer, Deed, Order, Tell, Verb
from dyesession.line.phrase import Phrase, no_more
from dyesession.line.pots import fresh_water
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.countdowns import heat_on
from dyesession.session.state import State, StepState
from dyesession.session.suggest import QUIET_AFTER_SEEN_S, Suggestion, Wait, rings

UNDER_WAY = ("running", "paused")


def begin(phrase: Phrase) -> Answer:
    """`begin dye`, `begin dye because the bath is warm already`."""
    _drop_word(phrase, "early")
    waiting = [one for one in phrase.state.steps if phrase.state.ready(one)]
    named = (
        phrase.step_or_guess(("waiting",), "begin dye") if phrase.rest or len(waiting) != 1 else waiting[0]
    )
    no_more(phrase, "begin dye because the bath is warm already")
    return Deed(e.Begun(named.name, early=phrase.why if not phrase.state.ready(named) else ""))


def _drop_word(phrase: Phrase, word: str) -> None:
    phrase.text = " ".join(one for one in phrase.text.split() if one.casefold() != word)


def pause(phrase: Phrase) -> Answer:
    """`pause mordant: telephone`."""
    step = phrase.step_or_guess(("running",), "pause mordant: telephone")
    no_more(phrase, "pause mordant: telephone")
    return Deed(e.Paused(step.name, phrase.why))


def pause_or_go_on(phrase: Phrase) -> Answer:
    """`p`: as the key on the screen, pause what runs or go on with what is paused."""
    step = phrase.step_or_guess(
        ("running",) if _any(phrase.state, "running") else ("paused",), "pause mordant"
    )
    no_more(phrase, "p mordant")
    return Deed(e.Resumed(step.name) if step.status == "paused" else e.Paused(step.name, phrase.why))


def resume(phrase: Phrase) -> Answer:
    """`go on mordant`."""
    step = phrase.step_or_guess(("paused",), "go on mordant")
    no_more(phrase, "go on mordant")
    return Deed(e.Resumed(step.name))


def _any(state: State, status: str) -> bool:
    return any(one.status == status for one in state.steps)


def extend(phrase: Phrase) -> Answer:
    """`extend mordant 10`."""
    step = phrase.step() or _ringing(phrase) or _only_clock(phrase)
    if not phrase.rest:
        raise LineError("say by how long, for example “extend mordant 10 min”")
    typed = amounts.minutes(phrase.rest)
    return Deed(e.Extended(step.name, typed.value), f"{step.name}: {typed.shown} longer.")


def _ringing(phrase: Phrase) -> StepState | None:
    loudest = rings(phrase.state, phrase.scene.now_s)
    return phrase.state.step(loudest[0].step) if loudest else None


def _only_clock(phrase: Phrase) -> StepState:
    running = [one for one in phrase.state.steps if one.countdown is not None]
    if len(running) == 1:
        return running[0]
    return phrase.step_or_guess(UNDER_WAY, "extend mordant 10 min")


def skip(phrase: Phrase) -> Answer:
    """`skip scour: washed yesterday`; the reason is needed."""
    step = phrase.step_or_guess((*UNDER_WAY, "waiting"), "skip scour: washed yesterday")
    no_more(phrase, "skip scour: washed yesterday")
    if not phrase.why:
        raise LineError(f"say why, for example “skip {step.name}: washed yesterday”")
    return Deed(e.Skipped(step.name, phrase.why))


def finish(phrase: Phrase) -> Answer:
    """`finish rinse`."""
    step = phrase.step_or_guess(UNDER_WAY, "finish rinse")
    no_more(phrase, "finish rinse")
    return Deed(e.Finished(step.name))


def refresh(phrase: Phrase) -> Answer:
    """`refresh`: fresh water where an extraction waits for it, else one extraction more than planned."""
    fitting = any(one.status == "running" and one.plan.again and not one.filled for one in phrase.state.steps)
    if fitting:
        return fresh_water(phrase)
    named = phrase.step()
    strained = [one for one in phrase.state.steps if one.plan.stage == "strain" and one.status == "complete"]
    step = named or (strained[-1] if strained else None)
    if step is None:
        raise LineError("nothing has been strained yet: extracting once more is planned after a strain")
    no_more(phrase, "refresh because there is colour left")
    return Deed(e.Replanned("refresh", step.name, phrase.why or "once more"))


def enough(phrase: Phrase) -> Answer:
    """`enough`: stop extracting; the extractions not begun are left out."""
    waiting = [one for one in phrase.state.steps if one.plan.stage == "extract" and one.plan.again]
    waiting = [one for one in waiting if one.status == "waiting"]
    if not waiting:
        raise LineError("no further extraction is waiting: there is nothing to stop")
    return Deed(e.Skipped(waiting[0].name, phrase.why or phrase.text.strip(" :") or "enough colour"))


def seen(phrase: Phrase) -> Answer:
    """`seen`: I have seen what rings; the loudest first, or the pot named."""
    vessel = phrase.pot()
    ringing = [one for one in rings(phrase.state, phrase.scene.now_s) if vessel in (None, one.vessel)]
    if not ringing:
        return Tell(("Nothing rings.",))
    return Deed(e.Acknowledged(ringing[0].countdown))


def _reason(phrase: Phrase, verb: str, example: str) -> str:
    why = phrase.why or phrase.text.strip(" :")
    if not why:
        raise LineError(f"say why, for example “{verb}: {example}”")
    return why


def stop(phrase: Phrase) -> Answer:
    """`stop: called away`: end the day early, in good order."""
    return Deed(e.Stopped(_reason(phrase, "stop", "called away")))


def abort(phrase: Phrase) -> Answer:
    """`abort: boiled over`: break off for safety."""
    return Deed(e.Aborted(_reason(phrase, "abort", "boiled over")))


def clear(phrase: Phrase) -> Answer:
    """`clear`: the trouble is over."""
    return Deed(e.Cleared())


def close(phrase: Phrase) -> Answer:
    """`close: a warm brick red, level`."""
    return Order("close", phrase.why or phrase.text.strip(" :"))


def leave(phrase: Phrase) -> Answer:
    """`quit`: close the program; the clocks go on."""
    return Order("quit")


def wait(phrase: Phrase) -> Answer:
    """`wait` until something is due; `wait 20 min` for so long at most."""
    text = phrase.rest
    if text.casefold().removeprefix("until").strip() in ("", "due"):
        return Order("wait")
    return Order("wait", str(amounts.minutes(text).value))


def save(phrase: Phrase) -> Answer:
    """`save`: try again to save what is not saved."""
    return Order("save")


def rescue(phrase: Phrase) -> Answer:
    """`rescue FOLDER`: write the whole day to a new file in another folder."""
    if not phrase.text:
        raise LineError("say into which folder, for example “rescue /media/stick”")
    return Order("rescue", phrase.text)


VERBS = (
    Verb(
        ("begin", "start"), "", "begin dye", "a step begun; before its time with “because …”", begin, why=True
    ),
    Verb(("pause",), "", "pause mordant: telephone", "a clock paused", pause, why=True),
    Verb(("pause or go on",), "p", "p mordant", "a clock paused, or let go on", pause_or_go_on, why=True),
    Verb(("go on", "resume"), "", "go on mordant", "a paused step goes on", resume),
    Verb(("extend", "longer"), "e", "extend mordant 10", "a clock given longer", extend),
    Verb(("skip",), "k", "skip scour: washed yesterday", "a step left out, and why", skip, why=True),
    Verb(("finish", "done", "finished"), "", "finish rinse", "a step is done", finish),
    Verb(("refresh", "extract again", "once more"), "f", "refresh", "extract once more", refresh, why=True),
    Verb(
        ("enough", "stop refreshing"), "", "enough", "stop extracting sooner than planned", enough, why=True
    ),
    Verb(("seen", "acknowledge"), "", "seen", "I have seen what rings", seen),
    Verb(("stop",), "", "stop: called away", "the day ended early, in good order", stop, why=True),
    Verb(("abort",), "", "abort: boiled over", "broken off for safety", abort, why=True),
    Verb(("clear", "cleared"), "", "clear", "the trouble is over", clear),
    Verb(
        ("close",),
        "",
        "close: warm and level",
        "the day closed, with your verdict",
        close,
        why=True,
        timed=False,
    ),
    Verb(
        ("wait", "until due"), "", "wait", "wait until something is due, or “wait 20 min”", wait, timed=False
    ),
    Verb(("save",), "", "save", "try again to save what is not saved", save, timed=False),
    Verb(("rescue",), "", "rescue /media/stick", "the day written to another folder", rescue, timed=False),
    Verb(("quit", "exit", "bye"), "q", "quit", "close the program; the clocks go on", leave, timed=False),
)


def next_due_s(state: State, suggestion: Suggestion, now_s: float) -> float | None:
    """The next session second at which anything falls due or rings again, None when nothing is timed."""
    found = [second for one in state.steps if one.status == "running" for second in _rings_at(state, one)]
    if isinstance(suggestion, Wait) and suggestion.until_s is not None:
        found.append(suggestion.until_s)
    return min((second for second in found if second > now_s), default=None)


def _rings_at(state: State, step: StepState) -> tuple[float, ...]:
    """When a step's countdown falls due, and when a hot pot that was only seen rings again."""
    countdown = step.countdown
    if countdown is None:
        return ()
    if countdown.acknowledged_s is None or not heat_on(state, step):
        return (countdown.deadline_s,)
    return (countdown.deadline_s, countdown.acknowledged_s + QUIET_AFTER_SEEN_S)
