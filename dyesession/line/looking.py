"""What can be asked at the prompt: where am I, why, how strong, which steps, which entries, which words.

Only prints; nothing here changes the day.
"""

import re

from dyesession.account import line as said_line
from dyesession.account.asked_snippet import snippet_asked
from dyesession.account.say import main_bath
from dyesession.account.told import dark_enough, old_bath_asked, picture, told
from dyesession.care import DISCLAIMER_LONG
from dyesession.line import lines
from dyesession.line.answers import Answer, Tell, Verb
from dyesession.line.phrase import Phrase, pot_in_question
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.suggest import Wait
from dyesession.session.words import next_words

LAST_ENTRIES = 12


def where(phrase: Phrase) -> Answer:
    """`where`: what is in which pot, what was done last, what rings."""
    day, now_s = phrase.scene.day, phrase.scene.now_s
    return Tell((*lines.rings_lines(day.state, now_s), *lines.where_lines(day, now_s)))


def why(phrase: Phrase) -> Answer:
    """`why`: the reason of the question asked, or of what comes next."""
    suggestion, state = phrase.scene.suggestion, phrase.state
    if isinstance(suggestion, Ask):
        return Tell((suggestion.why, "“not now” puts the question off; it is logged, and you go on."))
    if isinstance(suggestion, Wait):
        step = state.step(suggestion.step)
        if step is None or suggestion.until_s is None:
            return Tell(("Nothing is timed just now: what happens next is yours to say.",))
        return Tell((f"{step.name} is under way: {next_words(state, suggestion, phrase.scene.now_s)[1]}.",))
    if isinstance(suggestion, e.Begun):
        step = state.step(suggestion.step)
        after = " and ".join(step.plan.after) if step else ""
        reason = (
            f"{after} done, so {suggestion.step} can begin."
            if after
            else f"{suggestion.step} waits for nothing."
        )
        return Tell((reason, *((step.plan.say,) if step and step.plan.say else ())))
    vessel = pot_in_question(phrase.scene)
    step = state.running_in(vessel) if vessel else None
    if step is None:
        return Tell(("It is the next thing the plan wants.",))
    said = (step.plan.say,) if step.plan.say else ()
    return Tell((f"{step.name} is under way and wants it next.", *said))


def account(phrase: Phrase) -> Answer:
    """`account`, `account D`: how strong a bath is, every sentence and every line of it."""
    vessel, day = phrase.pot(), phrase.scene.day
    said = told(day.account, day.plan, vessel)
    ledger = [one for one in day.account.lines if vessel in (None, one.vessel)]
    if not said and not ledger:
        return Tell(("There is no bath to account for yet.",))
    rows = tuple(lines.ledger_line(day, one) for one in ledger)
    main = main_bath(day.account, day.plan)
    shown = vessel or (main.vessel if main is not None else "")
    drawn = picture(day.account, shown) if shown else ""
    return Tell((*(said_line(one) for one in said), *([f"Over the day: {drawn}"] if drawn else []), *rows))


def dark(phrase: Phrase) -> Answer:
    """`dark`, `dark D`: is it dark enough, wet, now? In one sentence, and why wet is never compared with dry."""
    day, vessel = phrase.scene.day, phrase.pot()
    main = main_bath(day.account, day.plan)
    name = vessel or (main.vessel if main is not None else "")
    said = dark_enough(day.account, name)
    return Tell(tuple(said_line(one) for one in said) or ("No fibre is in a dye bath just now.",))


def would(phrase: Phrase) -> Answer:
    """`would D 80 g silk`: what an old bath would still do for so much fibre."""
    day, vessel = phrase.scene.day, phrase.pot()
    kept = next((one.label for one in day.state.kept if one.label.casefold() in phrase.text.casefold()), None)
    found = _FIBRE.search(phrase.text)
    main = main_bath(day.account, day.plan)
    bath = vessel or kept or (main.vessel if main is not None else "")
    if found is None or not bath:
        raise LineError("say how much of which fibre, for example “would D 80 g silk”")
    return Tell(tuple(said_line(one) for one in old_bath_asked(day.account, bath, found[0])))


def dried(phrase: Phrase) -> Answer:
    """`dried D 70 %`: how far along the fibre is, by a dried snippet's depth or its colour."""
    day, vessel = phrase.scene.day, phrase.pot()
    main = main_bath(day.account, day.plan)
    bath = vessel or (main.vessel if main is not None else "")
    return Tell(tuple(said_line(one) for one in snippet_asked(day.account, bath, phrase.rest)))


_FIBRE = re.compile(r"\d+(?:[.,]\d+)?\s*(?:g|kg|oz|lb)\b.*")


def steps(phrase: Phrase) -> Answer:
    """`steps`: every step of the day and how it stands."""
    return Tell(lines.step_lines(phrase.state, phrase.scene.now_s))


def entries(phrase: Phrase) -> Answer:
    """`entries`: the last entries with their numbers, for a correction."""
    day = phrase.scene.day
    facts = [one for one in day.entries if not isinstance(one.event, e.Accounted)]
    wanted = len(facts) if phrase.rest.casefold() == "all" else LAST_ENTRIES
    return Tell(
        tuple(f"{one.n}: {lines.entry_line(day.state, one)}" for one in facts[-wanted:]) or ("None yet.",)
    )


def care(phrase: Phrase) -> Answer:
    """`care`: the reminders of every step under way, and what this program is not."""
    return Tell((*lines.care_lines(phrase.scene.day, phrase.scene.home), DISCLAIMER_LONG))


VERBS = (
    Verb(
        ("where",), "i", "where", "what is in which pot, what was done last, what rings", where, timed=False
    ),
    Verb(("why",), "", "why", "the reason for the question, or for what comes next", why, timed=False),
    Verb(("account",), "b", "account D", "every line of a bath's account", account, timed=False),
    Verb(("dark",), "", "dark D", "is it dark enough, wet, now", dark, timed=False),
    Verb(("would",), "", "would D 80 g silk", "what an old bath would still do", would, timed=False),
    Verb(("dried",), "", "dried D 70 %", "how far along, by a dried snippet", dried, timed=False),
    Verb(("steps",), "", "steps", "every step and how it stands", steps, timed=False),
    Verb(("entries",), "", "entries", "the last entries with their numbers", entries, timed=False),
    Verb(("care",), "", "care", "the reminders once more", care, timed=False),
)
