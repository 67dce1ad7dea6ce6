"""What a dyer types at the stove, understood as the fact it means and said back before it counts.

A pot's letter may stand in front ("B 82"); without one the pot in hand is meant. Pure; knows no screen.
"""

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any, Literal

from dyesession.colour.typed import read_colour
from dyesession.colour.written import written
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.from_shelf import NOTHING_STANDS, FromShelf
from dyesession.session.state import OUT_WET, Lot, State, Vessel
from dyesession.session.typed_plan import EXAMPLE as CHANGE_EXAMPLE
from dyesession.session.typed_plan import read_change
from dyesession.session.typed_stage import EXAMPLE as STAGE_EXAMPLE
from dyesession.session.typed_stage import read_stage
from dyesession.session.typed_strength import as_cooled, held_against, method_of, read_of, said_back, taken
from dyesession.session.understood import Hand, NotUnderstood, Understood
from dyesession.units import (
    Overnight,
    read_duration,
    read_mass,
    read_signed_temperature,
    read_volume,
    show_duration,
    show_mass,
    show_temperature,
    show_volume,
    sign_of,
)

__all__ = [
    "CORRECTION",
    "HEX",
    "Hand",
    "Meaning",
    "NotUnderstood",
    "Understood",
    "example",
    "meaning_of_number",
    "understand",
]

Meaning = Literal[
    "temperature", "volume", "weight", "strength", "colour", "pH", "longer", "top up", "note", "skip",
    "on shade", "correct", "stop", "break off", "wet weight", "verdict", "plan", "stage",
]  # fmt: skip


def understand(
    meaning: Meaning, text: str, state: State, hand: Hand, shelf: FromShelf = NOTHING_STANDS
) -> Understood:
    """The fact a text means; `shelf` knows the baths of other days. Raises `NotUnderstood` or a `UnitError`."""
    if meaning in _WHOLE:
        if not text.strip():
            raise NotUnderstood(f"Nothing was typed for the {meaning}; for example {_EXAMPLES[meaning]}.")
        return _WHOLE[meaning](text, state, shelf)
    vessel, rest = _pot(text.strip(), state, hand)
    if not rest:
        raise NotUnderstood(f"Nothing was typed for the {meaning}; for example {_EXAMPLES[meaning]}.")
    return _READERS[meaning](rest, state, Hand(vessel, hand.step, hand.ingredient, hand.lot))


def meaning_of_number(text: str) -> Meaning:
    """What a bare number is about, by its unit: a weight, a volume, minutes, else a temperature."""
    _, text = sign_of(text)
    for meaning, reader in _BY_UNIT:
        try:
            reader(text)
        except UserError:
            continue
        return meaning
    return "temperature"


_BY_UNIT: tuple[tuple[Meaning, Callable[[str], Any]], ...] = (("weight", read_mass), ("volume", read_volume))

_EXAMPLES: dict[Meaning, str] = {
    "temperature": "82, or B 82 for pot B",
    "volume": "1.8 L",
    "weight": "36 g, or 2.5 oz",
    "strength": "0.31 of the first strain",
    "colour": "#8b3a2b dry",
    "pH": "4.5",
    "longer": "10 min",
    "top up": "7 L",
    "note": "the water was hard today",
    "skip": "strong enough",
    "on shade": "dark enough already",
    "correct": "17 mass_g 29 because misread the scale",
    "stop": "called away",
    "break off": "boiled over",
    "wet weight": "620 g",
    "verdict": "a warm brick, level",
    "plan": CHANGE_EXAMPLE,
    "stage": STAGE_EXAMPLE,
}


def example(meaning: Meaning) -> str:
    """An example of what may be typed."""
    return _EXAMPLES[meaning]


def _pot(text: str, state: State, hand: Hand) -> tuple[str, str]:
    """A pot's letter in front and the rest; the pot in hand where there is none."""
    found = re.match(r"([A-Za-z])\s+(.*)$", text)
    if found:
        for vessel in state.vessels:
            if vessel.letter == found[1].upper():
                return vessel.name, found[2].strip()
    return hand.vessel, text


def _letter(state: State, name: str) -> str:
    vessel: Vessel | None = state.vessel(name)
    return vessel.letter if vessel else name


def _needs_pot(hand: Hand, what: str) -> None:
    if not hand.vessel:
        raise NotUnderstood(f"Which pot is the {what} of? Put its letter in front, for example B 82.")


def _temperature(text: str, state: State, hand: Hand) -> Understood:
    _needs_pot(hand, "temperature")
    read = read_signed_temperature(text)
    degrees_c = float(read.aim)
    said = f"{_letter(state, hand.vessel)} is at {show_temperature(degrees_c)}"
    return Understood(e.Read(hand.vessel, temperature_c=degrees_c), said)


def _volume(text: str, state: State, hand: Hand) -> Understood:
    _needs_pot(hand, "volume")
    litres = _litres(text)
    return Understood(
        e.Read(hand.vessel, volume_l=litres), f"{_letter(state, hand.vessel)} holds {show_volume(litres)}"
    )


def _with_unit(text: str, unit: str) -> str:
    return f"{text} {unit}" if re.fullmatch(r"[\d\s.,/½¼¾]+", text) else text


def _litres(text: str) -> float:
    sign, bare = sign_of(text)
    return float(sign * read_volume(_with_unit(bare, "L")).aim)


def _grams(text: str) -> float:
    sign, bare = sign_of(text)
    return float(sign * read_mass(_with_unit(bare, "g")).aim)


def _weight(text: str, state: State, hand: Hand) -> Understood:
    words = text.split()
    named = next((one for one, _ in state.substances if one in words), "")
    if not named and (lot := _lot_named(text, state)) is not None:
        return _wet_weight(_figures(text, lot), state, replace(hand, lot=lot.name))
    ingredient = named or hand.ingredient
    if not ingredient:
        raise NotUnderstood("Which ingredient was weighed? Name it, for example 29 g alum; or the fibre, wet, for example 620 g wool.")
    bare = " ".join(one for one in words if one != named)
    grams = _grams(bare)
    return Understood(e.Weighed(ingredient, grams), f"{show_mass(grams)} {ingredient} weighed")


def _number(text: str, what: str, low: float, high: float, example: str) -> float:
    """A plain figure; one below nought that mirrors one that can be is left to be asked about."""
    try:
        value = float(Fraction(text.replace(",", ".")))
    except (ValueError, ZeroDivisionError):
        raise NotUnderstood(f"“{text}” is no {what}; for example {example}.") from None
    if not low <= value <= high:
        raise NotUnderstood(f"{value:g} is no {what}: from {max(low, 0):g} to {high:g} was expected.")
    return value


def _strength(text: str, state: State, hand: Hand) -> Understood:
    _needs_pot(hand, "strength")
    text, cooled = as_cooled(text)
    if (found := taken(text)) is not None:
        strength, against = found[0], held_against(state, hand.vessel, found[1])
        said = f"{_letter(state, hand.vessel)} is {said_back(strength, against)}"
        return Understood(read_of(hand.vessel, strength, against, cooled), said)
    figure, _, named = text.partition(" of ")
    against = held_against(state, hand.vessel, named.strip())
    value = _number(figure.rstrip("%").strip(), "strength", -1e6, 1e6, "0.31")
    value = value / 100 if figure.strip().endswith("%") else value
    beside = f" of {against}" if against else ""
    method = method_of("", cooled)
    read = e.Read(hand.vessel, strength=value, against=against, how="matched", method=method)
    return Understood(read, f"{_letter(state, hand.vessel)} is {value:g}{beside} in strength")


HEX = re.compile(r"#[0-9a-fA-F]{6}")


def _colour(text: str, state: State, hand: Hand) -> Understood:
    found = HEX.search(text)
    if found is None and hand.lot and "(" in text:
        return _lab(text, hand)
    if found is None:
        raise NotUnderstood("A colour was expected as six hex digits, wet or dry, for example “#8b3a2b dry”.")
    wet = "dry" not in text.lower()
    state_word = "wet" if wet else "dry"
    if hand.lot:
        return Understood(
            e.Read(lot=hand.lot, colour=found[0].lower(), wet=wet), f"{hand.lot}, {state_word}: {found[0]}"
        )
    _needs_pot(hand, "colour")
    read = e.Read(hand.vessel, colour=found[0].lower(), wet=True)
    return Understood(read, f"liquor of {_letter(state, hand.vessel)}: {found[0]}")


def _lab(text: str, hand: Hand) -> Understood:
    """A lot's colour as an instrument gave it; kept as it is, for a hex would be coarser."""
    reading = replace(read_colour(text), wet="dry" not in text.lower())
    said = f"{hand.lot}, {'wet' if reading.wet else 'dry'}: {written(reading)}"
    return Understood(e.Read(lot=hand.lot, colour=written(reading), wet=reading.wet), said)


def _acidity(text: str, state: State, hand: Hand) -> Understood:
    _needs_pot(hand, "pH")
    value = _number(text, "pH", -14, 14, "4.5")
    return Understood(e.Read(hand.vessel, ph=value), f"{_letter(state, hand.vessel)} has pH {value:g}")


def _longer(text: str, state: State, hand: Hand) -> Understood:
    step = state.running_in(hand.vessel) if hand.vessel else state.step(hand.step)
    name = step.name if step else hand.step
    if not name:
        raise NotUnderstood("No clock is running that could be given longer.")
    sign = -1.0 if text.startswith("-") else 1.0
    minutes = read_duration(_with_unit(text.lstrip("-+ "), "min"))
    if isinstance(minutes, Overnight):
        raise NotUnderstood("Give minutes, for example 10; a night is a step of its own.")
    given = sign * float(minutes.aim)
    said = f"{name}: {show_duration(abs(given))} {'less' if given < 0 else 'more'}"
    return Understood(e.Extended(name, given), said)


def _top_up(text: str, state: State, hand: Hand) -> Understood:
    _needs_pot(hand, "water")
    litres = _litres(text)
    topped = e.ToppedUp(hand.vessel, to_l=litres, how="read")
    return Understood(topped, f"{_letter(state, hand.vessel)} topped up to {show_volume(litres)}")


def _wet_weight(text: str, state: State, hand: Hand) -> Understood:
    """Fibre weighed wet: out of its pot with that, where it is still in one."""
    named, lot = _lot_named(text, state), state.lot(hand.lot)
    if named is not None:
        text, lot = _figures(text, named), named
    if lot is None:
        raise NotUnderstood("Which fibre was weighed? Name it, for example 620 g large skein.")
    grams = _grams(text)
    if state.vessel(lot.place) is not None:
        return Understood(e.Lifted(lot.name, lot.place, grams), f"{lot.name} lifted, {show_mass(grams)} wet")
    wet = " wet" if lot.place == OUT_WET else ""
    return Understood(e.Read(lot=lot.name, mass_g=grams, how="weighed"), f"{lot.name}: {show_mass(grams)}{wet}")


def _lot_named(text: str, state: State) -> Lot | None:
    """The lot a text names, by its name or, where only one is of it, by its kind."""
    said = f" {' '.join(text.casefold().split())} "
    lots = [one for one in state.lots if not one.snippet]
    by_name = [one for one in lots if f" {one.name.casefold()} " in said]
    by_kind = [one for one in lots if f" {one.kind} " in said]
    return by_name[0] if by_name else by_kind[0] if len(by_kind) == 1 else None


def _figures(text: str, lot: Lot) -> str:
    """A text without the name or kind of the lot, and without "wet"."""
    bare = " ".join(text.casefold().split())
    for word in (lot.name.casefold(), lot.kind, "wet"):
        bare = " ".join(re.sub(rf"(?<!\S){re.escape(word)}(?!\S)", " ", bare).split())
    return bare


CORRECTION = re.compile(r"(?:entry\s+)?(\d{1,6})\s+(.*?)\s+because\s+(.+)$", re.IGNORECASE)


def _correct(text: str, state: State, hand: Hand) -> Understood:
    """ "17 mass_g 29 because misread", "17 strike because it was the other pot"."""
    found = CORRECTION.match(text)
    if found is None:
        raise NotUnderstood(
            'A correction names the entry, what it should be, and why: "17 mass_g 29 because misread the'
            ' scale", or "17 strike because it was the other pot".'
        )
    number, what, why = int(found[1]), found[2].strip(), found[3].strip()
    if what == "strike":
        return Understood(e.Corrected(number, why, strike=True), f"entry {number} struck: {why}")
    key, _, value = what.replace("=", " ").partition(" ")
    change = {"key": key, "value": _value(value.strip())}
    return Understood(
        e.Corrected(number, why, changes=(change,)), f"entry {number}: {key} becomes {change['value']}; {why}"
    )


def _value(text: str) -> float | str:
    try:
        return float(text.replace(",", "."))
    except ValueError:
        return text


def _stage(text: str, state: State, shelf: FromShelf) -> Understood:
    """A stage, with "because ..." behind it where it says why."""
    return read_change(text, state, shelf) if " because " in text else read_stage(text, state)


# These name their pots and lots within the text.
_WHOLE: dict[Meaning, Callable[[str, State, FromShelf], Understood]] = {"plan": read_change, "stage": _stage}

_READERS: dict[Meaning, Callable[[str, State, Hand], Understood]] = {
    "temperature": _temperature,
    "volume": _volume,
    "weight": _weight,
    "strength": _strength,
    "colour": _colour,
    "pH": _acidity,
    "longer": _longer,
    "top up": _top_up,
    "wet weight": _wet_weight,
    "correct": _correct,
    "note": lambda text, state, hand: Understood(e.Noted(text, hand.step), f"note: {text}"),
    "skip": lambda text, state, hand: Understood(e.Skipped(hand.step, text), f"{hand.step} left out: {text}"),
    "on shade": lambda text, state, hand: Understood(e.OnShade(hand.step, text), f"on shade: {text}"),
    "stop": lambda text, state, hand: Understood(e.Stopped(text), f"the day ends early: {text}"),
    "break off": lambda text, state, hand: Understood(e.Aborted(text), f"broken off: {text}"),
    "verdict": lambda text, state, hand: Understood(e.Closed(text), f"the day closes: {text}"),
}
