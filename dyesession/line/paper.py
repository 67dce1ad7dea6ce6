"""What is written down beside the work, as it is typed: notes, corrections, aftercare.

A correction names an entry by its number, sets one of its fields or strikes it, and says why.
"""

from typing import Any

from dyesession.line import amounts
from dyesession.line.answers import Answer, Deed, Verb
from dyesession.line.phrase import Phrase
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.fold import Entry
from dyesession.units import quoted

CORRECT = "correct 17 mass 29 because misread"


def note(phrase: Phrase) -> Answer:
    """`note the water was hard today`."""
    if not phrase.text:
        raise LineError("say what to note, for example “note the water was hard today”")
    return Deed(e.Noted(phrase.text))


def correct(phrase: Phrase) -> Answer:
    """`correct 17 mass 29 because misread`, `correct 17 strike because it was the other pot`."""
    words = phrase.text.replace("=", " ").split()
    entry = _entry(phrase, words.pop(0) if words else "")
    if not phrase.why:
        raise LineError(f"say why, for example “{CORRECT}”")
    if [one.casefold() for one in words] == ["strike"]:
        return Deed(e.Corrected(entry.n, phrase.why, strike=True))
    if not words:
        raise LineError(
            f"say what it should be, for example “{CORRECT}”, or “correct {entry.n} strike because …”"
        )
    key, text = _field(entry, words)
    value = _value(key, text, entry)
    echo = f"Entry {entry.n}: {key} was {getattr(entry.event, key, None)}, becomes {value}."
    return Deed(e.Corrected(entry.n, phrase.why, changes=({"key": key, "value": value},)), echo)


def _entry(phrase: Phrase, number: str) -> Entry:
    entries = phrase.scene.day.entries
    if number.casefold() == "last":
        facts = [one for one in entries if one.event.kind not in e.PROGRAM_KINDS]
        if facts:
            return facts[-1]
    found = next((one for one in entries if str(one.n) == number), None)
    if found is None:
        last = entries[-1].n if entries else 0
        raise LineError(
            f"{quoted(number)} is no entry (there are 1 to {last}); see “entries”; write “{CORRECT}”"
        )
    return found


def _field(entry: Entry, words: list[str]) -> tuple[str, str]:
    """The field meant, by its name or the beginning of it, and the text of its new value."""
    data = vars(entry.event)
    fields = [name for name in data if name not in ("reminders", "changes", "contents", "data", "baths")]
    named = [one for one in fields if one == words[0] or one.split("_")[0] == words[0].casefold()]
    if named and len(words) > 1:
        return named[0], " ".join(words[1:])
    numbers = [
        one for one in fields if isinstance(data[one], int | float) and not isinstance(data[one], bool)
    ]
    numbers = [one for one in numbers if one != "resolution_g"]
    if len(numbers) == 1 and words[0][:1].isdigit():
        return numbers[0], " ".join(words)
    raise LineError(
        f"entry {entry.n} ({entry.event.kind}) has {', '.join(fields) or 'nothing to set'}; "
        f"expected for example “{CORRECT}”"
    )


_READERS = {"_g": amounts.mass, "_l": amounts.volume, "_c": amounts.temperature}


def _value(key: str, text: str, entry: Entry) -> Any:
    """The new value in the field's own unit and sort."""
    read = next((by for end, by in _READERS.items() if key.endswith(end)), None)
    if read is not None:
        value = read(text).value
        if value < 0.0:
            raise LineError(f"{quoted(text)} is below nought; expected what it should have been, for example 29 g")
        return value
    if key == "minutes":
        return amounts.minutes(text).value
    was = getattr(entry.event, key, "")
    if isinstance(was, bool):
        return text.casefold() in ("true", "yes", "on", "wet")
    return amounts.plain(text) if isinstance(was, int | float) else text


def aftercare(phrase: Phrase) -> Answer:
    """`aftercare dry shade, large skein: brick red`."""
    lot = phrase.lot()
    what = phrase.rest
    if not what or not phrase.why:
        raise LineError(
            "say what was looked at and what came of it: “aftercare dry shade, large skein: brick red”"
        )
    return Deed(e.Cared(what, lot.name if lot else "", phrase.why))


VERBS = (
    Verb(("note",), "n", "note the water was hard today", "a note in your own words", note, timed=False),
    Verb(("correct",), "z", CORRECT, "an earlier entry put right, and why", correct, why=True, timed=False),
    Verb(
        ("aftercare",),
        "",
        "aftercare rub test: clean",
        "what was seen afterwards",
        aftercare,
        why=True,
        timed=False,
    ),
)
