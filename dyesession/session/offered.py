"""What may be typed next, as rows to choose from and words to touch: for a hand that has no letters, or no words yet.

Pure; knows no screen. Every row is a text that `typed.understand` reads, or the beginning of one.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from dyesession.plan.model import PlannedStage
from dyesession.session import events as e
from dyesession.session.fold import Entry
from dyesession.session.from_shelf import NOTHING_STANDS, FromShelf
from dyesession.session.replan import today
from dyesession.session.state import State
from dyesession.session.typed import Meaning
from dyesession.session.typed_stage import ROLES, STAGE, STAGES
from dyesession.session.words_past import happened_words
from dyesession.substances import load
from dyesession.units import show_mass, show_volume

LAST_ENTRIES = 9  # a correction is wanted soon after the slip; our own choice, no source
_OFFERED_USE = ("yes", "with care")  # what wants more than care is never put under a finger
MOST_BATHS = 4  # kept baths offered in the list; the others are typed. Our own choice, no source
_POUR, _INTO = "pour ", " into "
_STAGE_COMES = "a stage: "
_OFFERED_STAGES: tuple[PlannedStage, ...] = ("scour", "mordant", "extract", "dye", "modify", "rinse")
_NEW_LOTS = ("another skein", "second skein", "third skein", "fourth skein", "one more skein")
_IN_POT = re.compile(rf"^(?P<stage>{'|'.join(sorted(STAGES, key=len, reverse=True))})(?: again)? in $", re.IGNORECASE)
_WITH = re.compile(r"(?:, |\bwith |\band )$", re.IGNORECASE)


@dataclass(frozen=True)
class Offer:
    """A row: the text that is typed when it is chosen, and what the row says."""

    types: str
    says: str


def offered(
    meaning: Meaning | None, typed: str, state: State, entries: Iterable[Entry] = (), shelf: FromShelf = NOTHING_STANDS
) -> tuple[Offer, ...]:
    """The rows for what has been typed so far; none where only the dyer knows how it goes on."""
    if meaning == "correct":
        return _corrections(typed, state, tuple(entries))
    if meaning not in ("plan", "stage"):
        return ()
    if not typed:
        return (*(_stages() if state.free else ()), *_changes(state), *_kept(state, shelf))
    if typed.startswith(_POUR) and typed.endswith(_INTO):
        return tuple(Offer(f"{typed}{one.letter}", _pot_words(state, one.name)) for one in state.vessels)
    if typed == _STAGE_COMES:
        return _stages()
    if found := _IN_POT.match(typed):
        return _pots(typed, state, found["stage"])
    if typed.endswith((", into ", ", in ")):
        return tuple(Offer(f"{typed}{one.letter}", _pot_words(state, one.name)) for one in state.vessels)
    found = STAGE.match(typed)
    return _ingredients(typed, state, STAGES[found["word"].casefold()]) if found and _WITH.search(typed) else ()


def still_to_weigh(state: State) -> tuple[str, ...]:
    """What the plan still wants put in, one ingredient of one step each: "alum 28.8 g, with mordant"."""
    return tuple(
        f"{one.ingredient} {show_mass(one.mass_g)}, with {step.plan.name}"
        for step in today(state).steps
        if step.how_far in ("to come", "under way")
        for one in step.still
    )


def _changes(state: State) -> tuple[Offer, ...]:
    lots = [one for one in state.lots if not one.snippet]
    new = next((one for one in _NEW_LOTS if state.lot(one) is None), f"skein {len(lots) + 1}")
    rows = [Offer(f"{one.name} weighs ", f"{one.name} weighs …, not {show_mass(one.mass_g)}") for one in lots]
    rows.append(Offer(f"{new} ", "another lot joins: its washed, air-dry weight is …"))
    rows += [Offer(f"{one} ", f"{one} … in all{_now(state, one)}") for one, _ in state.substances]
    if any(one.plan.stage == "strain" and one.status == "complete" for one in state.steps):
        rows.append(Offer("once more because it still gives colour", "extract once more"))
    if any(one.plan.stage == "extract" and one.plan.again and one.status == "waiting" for one in state.steps):
        rows.append(Offer("once less because it is strong enough", "extract once less"))
    if not state.free:
        rows.append(Offer(_STAGE_COMES, "a stage comes in …"))
        rows.append(Offer("leave the recipe because my eye leads from here", "leave the recipe, and go on by eye"))
    return tuple(rows)


def _kept(state: State, shelf: FromShelf) -> tuple[Offer, ...]:
    """Baths that may be poured in: today's, then those of other days that stand on the shelf."""
    there = {one.label: one.bath.volume_l for one in reversed(state.kept)}
    there |= {one.label: one.volume_l for one in shelf.baths if one.label not in there}
    return tuple(
        Offer(f"{_POUR}{label}{_INTO}", f"pour {label} into …" + (f"; {show_volume(litres)} stand" if litres else ""))
        for label, litres in list(there.items())[:MOST_BATHS]
    )


def _now(state: State, ingredient: str) -> str:
    day = today(state)
    planned_g = day.in_g(ingredient) + sum(one.still_g(ingredient) for one in day.steps)
    return f", not {show_mass(planned_g)}" if planned_g > 0 else ""


def _stages() -> tuple[Offer, ...]:
    return (
        *(Offer(f"{one} in ", f"{one} in …") for one in _OFFERED_STAGES),
        Offer("rest overnight", "rest overnight"),
        Offer("dry overnight", "dry overnight"),
    )


def _pots(typed: str, state: State, stage: str) -> tuple[Offer, ...]:
    pots = tuple(Offer(f"{typed}{one.letter}, ", _pot_words(state, one.name)) for one in state.vessels)
    return pots or (Offer(f"{typed}the {stage} pot, ", f"a pot that no kitchen names: the {stage} pot"),)


def _pot_words(state: State, name: str) -> str:
    vessel = state.vessel(name)
    if vessel is None:
        return name
    holds = f", holds {show_volume(vessel.capacity_l)}" if vessel.capacity_l is not None else ""
    return f"{vessel.letter}, the {name}{holds}" + ("; a bath is in it" if vessel.bath is not None else "")


def _ingredients(typed: str, state: State, stage: PlannedStage) -> tuple[Offer, ...]:
    """What is used today first, then what the trade uses in such a stage."""
    before = re.sub(r", $", " with ", typed)
    roles = ROLES.get(stage, ())
    known = [one for one, _ in state.substances]
    stuffs = [one for one in load().values() if one.home_use in _OFFERED_USE and not one.needs_choice]
    usual = [one.names[0] for role in roles[:2] for one in stuffs if role in one.roles]
    names = [one for one in dict.fromkeys((*known, *usual)) if one] if roles else []
    nothing = Offer(re.sub(r"(?:,|\s+with|\s+and)\s*$", "", typed), "nothing more is put in")
    return (nothing, *(Offer(f"{before}{one} ", f"{one} …") for one in names))


def _corrections(typed: str, state: State, entries: tuple[Entry, ...]) -> tuple[Offer, ...]:
    own = [one for one in entries if one.event.kind not in e.PROGRAM_KINDS]
    if not typed:
        last = reversed(own[-LAST_ENTRIES:])
        return tuple(Offer(f"{one.n} ", f"{one.n}  {happened_words(state, one.event)}") for one in last)
    entry = next((one for one in own if typed == f"{one.n} "), None)
    if entry is None:
        return ()
    figures = [
        Offer(f"{entry.n} {key} ", f"{key.replace('_', ', in ')}: was {value:g}")
        for key, value in vars(entry.event).items()
        if isinstance(value, int | float) and not isinstance(value, bool) and key != "resolution_g"
    ]
    return (*figures, Offer(f"{entry.n} strike because it was never done", "strike it: it was never done"))


_STAGE_WORDS = ("%", "g", "L", "and", ", to", "°C", "over", "min", ", hold", ", into", ", overnight")
_REASONS = ("because it was weighed again", "because the water is hard", "because my eye says so")
_WORDS: dict[Meaning, tuple[str, ...]] = {
    "temperature": ("°C", "°F"),
    "volume": ("L",),
    "top up": ("L",),
    "weight": ("g", "oz"),
    "wet weight": ("g", "oz"),
    "strength": ("%", "of the first strain"),
    "colour": ("#", "a", "b", "c", "d", "e", "f", "wet", "dry"),
    "longer": ("min", "h"),
    "note": ("level", "patchy", "the water was hard", "look again tomorrow"),
    "skip": ("strong enough", "not needed", "no time today"),
    "on shade": ("dark enough already", "as the sample"),
    "correct": ("because I misread the scale", "because it was the other pot"),
    "stop": ("called away", "enough for today"),
    "break off": ("boiled over", "spilled", "the heat went out"),
}


def touch_words(meaning: Meaning | None, typed: str, state: State) -> tuple[str, ...]:
    """The words that are likely to follow, for touch."""
    if meaning in ("plan", "stage"):
        return _plan_words(typed, state)
    named = tuple(one for one, _ in state.substances) if meaning == "weight" else ()
    return (*_WORDS[meaning], *named) if meaning in _WORDS else ()


def _plan_words(typed: str, state: State) -> tuple[str, ...]:
    if " because" in typed or not typed:
        return ()
    if STAGE.match(typed):
        return _STAGE_WORDS if state.free else (*_STAGE_WORDS, "because my eye says so")
    if typed.startswith(_NEW_LOTS):
        return ("g", "oz", "joins because it was found", "joins mordanted because it was found")
    if " weighs " in typed:
        return ("g", "oz", *_REASONS[:1])
    return ("%", "g", "more", "less", *_REASONS[1:])
