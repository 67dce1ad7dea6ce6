"""Readings and weighings as they are typed, and what a bare figure most likely means.

Knows names and amounts, never how a fact changes the day. Every reading is optional.
"""

from dyesession.line import amounts
from dyesession.line.amounts import Typed
from dyesession.line.answers import Answer, Deed, Guess, Tell, Verb
from dyesession.line.phrase import Phrase, holds_liquor, pot_in_question, step_in_question
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.typed_strength import (
    HOW_TO_TAKE,
    as_cooled,
    held_against,
    method_of,
    read_of,
    said_back,
    taken,
)
from dyesession.session.words import pot
from dyesession.units import quoted, show_mass


def temperature(phrase: Phrase) -> Answer:
    """`temperature B 82`."""
    vessel, guessed = _pot(phrase, "temperature B 82")
    typed = amounts.temperature(_left(phrase, "temperature B 82"))
    return Deed(e.Read(vessel, temperature_c=typed.value), _echo(guessed, typed))


def volume(phrase: Phrase) -> Answer:
    """`volume C 1.8 l`."""
    vessel, guessed = _pot(phrase, "volume C 1.8 l")
    typed = amounts.volume(_left(phrase, "volume C 1.8 l"))
    return Deed(e.Read(vessel, volume_l=typed.value), _echo(guessed, typed))


def acidity(phrase: Phrase) -> Answer:
    """`ph C 4.5`."""
    vessel = phrase.pot_or_guess("ph C 4.5")
    return Deed(e.Read(vessel, ph=amounts.plain(_left(phrase, "ph C 4.5"))))


def strength(phrase: Phrase) -> Answer:
    """`strength C 31 %`, `strength C 0.31 against first strain`."""
    if not phrase.text.strip():
        return Tell(HOW_TO_TAKE)
    phrase.text, cooled = as_cooled(phrase.text)
    whole = phrase.text
    before, _, against = phrase.text.partition(" against ")
    phrase.text = before
    vessel, guessed = _pot(phrase, "strength C 31 %")
    if (found := taken(_without_pot(whole))) is not None:
        taken_as, beside = found[0], held_against(phrase.state, vessel, found[1])
        said = f"{pot(phrase.state, vessel)}: {said_back(taken_as, beside)}."
        return Deed(read_of(vessel, taken_as, beside, cooled), said)
    typed = amounts.share(_left(phrase, "strength C 31 %"))
    how, beside = "matched" if against else "read", held_against(phrase.state, vessel, against.strip())
    said = _echo(guessed, typed) if beside == against.strip() else f"{typed.shown} of {beside}."
    method = method_of("", cooled)
    return Deed(e.Read(vessel, strength=typed.value, against=beside, how=how, method=method), said)


def _without_pot(text: str) -> str:
    """The text of a reading without the letter of its pot."""
    head, _, rest = text.strip().partition(" ")
    return rest if len(head) == 1 and head.isalpha() else text.strip()


def colour(phrase: Phrase) -> Answer:
    """`colour large skein brick red, wet`."""
    lot = phrase.lot()
    vessel = "" if lot is not None else phrase.pot() or ""
    if lot is None and not vessel:
        lots = ", ".join(one.name for one in phrase.state.lots)
        raise LineError(
            f"say whose colour ({lots}, or a pot), for example “colour large skein brick red, wet”"
        )
    words = _left(phrase, "colour large skein brick red, wet").split()
    wet = None
    if words[-1].casefold() in ("wet", "dry") and len(words) > 1:
        wet = words.pop().casefold() == "wet"
    text = " ".join(words).strip(" ,;")
    return Deed(e.Read(vessel, lot.name if lot else "", colour=text, wet=wet))


def weigh(phrase: Phrase) -> Answer:
    """`weigh alum 29 g`, `weigh large skein 620 g`."""
    ingredient = phrase.ingredient()
    lot = None if ingredient else phrase.lot()
    if ingredient is None and lot is None and isinstance(phrase.scene.suggestion, e.Added):
        ingredient = phrase.scene.suggestion.ingredient
    if ingredient is None and lot is None:
        raise LineError("say what was weighed, for example “weigh alum 29 g” or “weigh large skein 620 g”")
    typed = amounts.mass(_left(phrase, "weigh alum 29 g"))
    if lot is not None:
        return Deed(e.Read(lot=lot.name, mass_g=typed.value, how="weighed"), typed.echo)
    return Deed(e.Weighed(ingredient or "", typed.value), typed.echo)


def _left(phrase: Phrase, example: str) -> str:
    if not phrase.rest:
        raise LineError(f"a figure or a word is missing; expected for example “{example}”")
    return phrase.rest


def _pot(phrase: Phrase, example: str) -> tuple[str, str]:
    """The pot read, and (where nobody named it) how to say which one was taken."""
    named = phrase.pot()
    if named is not None:
        return named, ""
    guess = phrase.pot_or_guess(example, holding=True)
    return guess, pot(phrase.state, guess)


def _echo(guessed: str, typed: Typed) -> str:
    return f"{guessed}: {typed.shown}." if guessed else typed.echo


def figure(phrase: Phrase) -> Answer:
    """A line that begins with a figure: what it most likely means here, to be confirmed."""
    vessel = _named_behind(phrase)
    text = phrase.rest
    typed = amounts.any_sort(text) or _by_place(phrase, text)
    made = {
        "temperature": _as_temperature,
        "volume": _as_volume,
        "mass": _as_mass,
        "time": _as_minutes,
        "share": _as_strength,
    }[typed.sort](phrase, typed, vessel)
    return made


def _named_behind(phrase: Phrase) -> str | None:
    named = phrase.pot()
    if named is None:
        phrase.refuse_unit_letter()
    return named


def _by_place(phrase: Phrase, text: str) -> Typed:
    """A bare figure is what the next act wants: grams to weigh, litres to pour, else degrees."""
    wanted = phrase.scene.suggestion
    if isinstance(wanted, e.Added | e.Lifted):
        return amounts.mass(text)
    if isinstance(wanted, e.Strained | e.Filled | e.ToppedUp | e.Refreshed | e.Kept | e.Pooled):
        return amounts.volume(text)
    return amounts.temperature(text)


def _pot_for(phrase: Phrase, named: str | None, typed: Typed) -> str:
    vessel = named or pot_in_question(phrase.scene)
    if vessel is None or (
        named is None and typed.sort == "temperature" and not holds_liquor(phrase.state, vessel)
    ):
        raise LineError(f"{typed.shown} in which pot? Say for example “{typed.text.strip()} B”")
    return vessel


def _as_temperature(phrase: Phrase, typed: Typed, named: str | None) -> Answer:
    vessel = _pot_for(phrase, named, typed)
    return Guess(e.Read(vessel, temperature_c=typed.value), f"{typed.shown} in {pot(phrase.state, vessel)}")


def _as_strength(phrase: Phrase, typed: Typed, named: str | None) -> Answer:
    vessel = _pot_for(phrase, named, typed)
    return Guess(
        e.Read(vessel, strength=typed.value), f"strength {typed.shown} in {pot(phrase.state, vessel)}"
    )


def _as_volume(phrase: Phrase, typed: Typed, named: str | None) -> Answer:
    wanted, litres, state = phrase.scene.suggestion, typed.value, phrase.state
    wanted = wanted.then if isinstance(wanted, Ask) else wanted
    vessel = _pot_for(phrase, named, typed)
    if named is None or named == getattr(wanted, "vessel", ""):
        if isinstance(wanted, e.Strained):
            event = e.Strained(wanted.vessel, wanted.into, litres, "read")
            return Guess(event, f"{typed.shown} strained from {pot(state, vessel)} into the {wanted.into}")
        if isinstance(wanted, e.Filled):
            return Guess(
                e.Filled(wanted.vessel, litres, "read"), f"{typed.shown} of water in {pot(state, vessel)}"
            )
        if isinstance(wanted, e.Refreshed):
            fresh = e.Refreshed(wanted.vessel, litres, "read")
            return Guess(fresh, f"{typed.shown} of fresh water in {pot(state, vessel)}")
        if isinstance(wanted, e.ToppedUp):
            return Guess(e.ToppedUp(wanted.vessel, to_l=litres, how="read"), f"topped up to {typed.shown}")
        if isinstance(wanted, e.Kept):
            return Guess(e.Kept(wanted.vessel, wanted.label, litres), f"{typed.shown} kept")
    return Guess(e.Read(vessel, volume_l=litres), f"{typed.shown} in {pot(state, vessel)}")


def _as_mass(phrase: Phrase, typed: Typed, named: str | None) -> Answer:
    wanted = phrase.scene.suggestion
    wanted = wanted.then if isinstance(wanted, Ask) else wanted
    if isinstance(wanted, e.Added):
        return Guess(
            e.Weighed(wanted.ingredient, typed.value), f"{show_mass(typed.value)} of {wanted.ingredient}"
        )
    if isinstance(wanted, e.Lifted):
        event = e.Lifted(wanted.lot, wanted.vessel, typed.value)
        return Guess(event, f"{wanted.lot} lifted, {show_mass(typed.value)} wet")
    raise LineError(f"{typed.shown} of what? Say for example “weigh alum {typed.text.strip()}”")


def _as_minutes(phrase: Phrase, typed: Typed, named: str | None) -> Answer:
    step = phrase.state.running_in(named) if named else step_in_question(phrase.scene)
    if step is None:
        raise LineError(
            f"{typed.shown} for which step? Say for example “extend mordant {quoted(typed.text)}”"
        )
    return Guess(e.Extended(step.name, typed.value), f"{step.name} {typed.shown} longer")


VERBS = (
    Verb(("temperature",), "t", "temperature B 82", "a temperature you read", temperature),
    Verb(("volume", "level"), "v", "volume C 1.8 l", "a volume or level you read", volume),
    Verb(("weigh", "weight", "weighed"), "w", "weigh alum 29 g", "a weight from the scales", weigh),
    Verb(
        ("strength",), "s", "strength C 31 %", "a bath's strength, read or matched against another", strength
    ),
    Verb(
        ("colour", "color"), "c", "colour large skein brick red, wet", "a colour you see, wet or dry", colour
    ),
    Verb(("ph",), "h", "ph C 4.5", "a pH you read", acidity),
)
