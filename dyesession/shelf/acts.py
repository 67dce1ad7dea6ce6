"""What may be done to a kept bath between two dye days: pooled, topped up, read again, moved, thrown away, drawn.

Pure: a bath and what is wanted in, the facts that say so out, with what to bear in mind; rules are `care`'s.
Every act but a draw and a correction gets a log of its own (`writing`), so that no file has two writers.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dyesession.care import WORST, Household, Reminder
from dyesession.errors import UserError
from dyesession.plan.changes import Draws, change_for_log
from dyesession.session import events as e
from dyesession.session.brought import Brought, for_log
from dyesession.shelf.minding import has
from dyesession.shelf.model import TRACE_G, KeptBath
from dyesession.shelf.touching import discarding, opening, pooling
from dyesession.substances import find
from dyesession.units import show_mass, show_volume

JAR = "jar"  # the vessel of a log at the shelf
SLACK_L = 5e-4  # half a millilitre: what a shown volume is rounded to


class ShelfRefused(UserError):
    """An act at the shelf that cannot be, or must not be."""


@dataclass(frozen=True)
class Adding:
    """Grams of a substance that go into a bath, as a mordant bath is recharged."""

    ingredient: str
    substance: str
    role: str
    mass_g: float


@dataclass(frozen=True)
class ShelfAct:
    """One act: its title as the day book has it, the facts, what to bear in mind (worst first), what is so then."""

    title: str
    events: tuple[e.Event, ...]
    reminders: tuple[Reminder, ...]
    says: str
    adding: tuple[Adding, ...] = ()


def drawn(bath: KeptBath, vessel: str, volume_l: float | None = None) -> e.Drawn:
    """The fact of pouring a kept bath, or so many litres of it, into a pot of a day. Raises `ShelfRefused`."""
    _own(bath)
    left_l = bath.left_l
    if volume_l is not None and volume_l <= 0:
        raise ShelfRefused(f"{show_volume(volume_l)} is nothing to draw; expected, for example, 2 L.")
    if volume_l is not None and left_l is not None and volume_l > left_l + SLACK_L:
        raise ShelfRefused(
            f"“{bath.label}” holds {show_volume(left_l)}, so {show_volume(volume_l)} cannot be drawn: draw less,"
            f' or say how much there is, for example: dyesession shelf correct "{bath.label}" --litres 4'
        )
    litres = left_l if volume_l is None else volume_l
    comes_along = for_log(bringing(bath, litres))
    told = e.Drawn(vessel, bath.label, bath.session, litres, _substances(bath), f"{bath.look_again}")
    return replace(told, brought=comes_along, brought_l=litres)


def bringing(bath: KeptBath, volume_l: float | None) -> tuple[Brought, ...]:
    """What so many litres of a bath bring along; None for all that stands."""
    left_l = bath.left_l
    share = 1.0 if volume_l is None or not left_l else min(1.0, volume_l / left_l)
    there = [(one, one.grams) for one in bath.inside if one.grams is not None and one.grams.high > TRACE_G]
    return tuple(
        Brought(
            one.ingredient, one.substance, one.role, grams.mean, min(grams.low, grams.mean), max(grams.high, grams.mean)
        ).share(share)
        for one, grams in there
    )


def drawn_with(bath: KeptBath, step: str, volume_l: float | None = None) -> e.Replanned:
    """The fact that a kept bath is to be poured in with a step of a day, before its water. Raises `ShelfRefused`."""
    told = drawn(bath, JAR, volume_l)
    draws = Draws(step, told.label, told.session, told.volume_l, told.contents, told.look_again)
    return e.Replanned("draw", step, "chosen at the bath shelf", changes=(change_for_log(draws),))


def pool(
    into: KeptBath,
    poured: KeptBath,
    volume_l: float | None = None,
    label: str = "",
    household: Household | None = None,
) -> ShelfAct:
    """Pour one kept bath, or so many litres of it, into another. Raises `ShelfRefused` for what never mixes."""
    if (into.session, into.label) == (poured.session, poured.label):
        raise ShelfRefused(f"“{into.label}” cannot be poured into itself; name two baths.")
    minded = _allowed(pooling(into, poured, household))
    named = label or into.label
    litres = "" if volume_l is None else f"{show_volume(volume_l)} of "
    return ShelfAct(
        f"Bath shelf: {litres}{poured.label} poured into {into.label}",
        (drawn(into, JAR), drawn(poured, JAR, volume_l), _kept(into, named)),
        (*minded, *_iron(into, poured)),
        f"{litres}“{poured.label}” now stands in “{named}”.",
    )


def _allowed(minded: tuple[Reminder, ...]) -> tuple[Reminder, ...]:
    """What to bear in mind, unless something in it must not be done at all."""
    worst = next((one for one in minded if one.severity >= WORST), None)
    if worst is not None:
        raise ShelfRefused(f"That must not be poured together. {worst.text}")
    return minded


def _iron(into: KeptBath, poured: KeptBath) -> tuple[Reminder, ...]:
    """Iron is said whichever of the two brings it: there is no way back to a bright shade."""
    for bath, other in ((poured, into), (into, poured)):
        if has(bath, "iron") and not has(other, "iron"):
            text = f"{bath.label} has iron in it: all that is poured together will sadden what is dyed in it."
            return (Reminder("iron poured in", text, 2, "shade", "common practice, no source"),)
    return ()


def top_up(
    bath: KeptBath,
    volume_l: float | None = None,
    adding: Sequence[Adding] = (),
    household: Household | None = None,
) -> ShelfAct:
    """Water into a kept bath, grams of what recharges it, or both. Raises `ShelfRefused`."""
    if not volume_l and not adding:
        raise ShelfRefused("Say what goes in: water (for example 1.5 L), or for example 10 g alum, or both.")
    water = (e.ToppedUp(JAR, volume_l=volume_l, how="typed"),) if volume_l else ()
    powders = tuple(e.Added(one.ingredient, JAR, one.mass_g, "typed") for one in adding)
    what = [show_volume(volume_l)] if volume_l else []
    what += [f"{show_mass(one.mass_g)} {one.ingredient}" for one in adding]
    said = " and ".join(what)
    contents = tuple((one.substance, one.mass_g) for one in adding)
    return ShelfAct(
        f"Bath shelf: {said} into {bath.label}",
        (drawn(bath, JAR), *water, *powders, _kept(bath, bath.label)),
        _allowed(opening(bath, household, contents)),
        f"{said} went into “{bath.label}”: stir, and label it with today's date as well.",
        tuple(adding),
    )


def read_again(
    bath: KeptBath,
    volume_l: float | None = None,
    ph: float | None = None,
    place: str | None = None,
    label: str = "",
    household: Household | None = None,
) -> ShelfAct:
    """What a kept bath is seen to be now: its litres, its pH, where it stands, what it is called from now on."""
    if volume_l is None and ph is None and place is None and not label:
        raise ShelfRefused("Say what is so now: the litres, the pH, where it stands, or its new label.")
    said = [f"holds {show_volume(volume_l)}"] if volume_l is not None else []
    said += [f"has pH {ph:.1f}"] if ph is not None else []
    said += [f"stands {place}"] if place else []
    said += [f"is called “{label}” from now on"] if label else []
    reading = e.Read(JAR, ph=ph, volume_l=volume_l)
    read = (reading,) if ph is not None or volume_l is not None else ()
    text = " and ".join(said) or "stands where it stands"
    return ShelfAct(
        f"Bath shelf: {bath.label} looked at",
        (drawn(bath, JAR), *read, _kept(bath, label or bath.label, place)),
        opening(bath, household) if read else (),
        f"“{bath.label}” {text}.",
    )


def discard(bath: KeptBath, household: Household | None = None) -> ShelfAct:
    """Throw a kept bath away, with what may go where."""
    return ShelfAct(
        f"Bath shelf: {bath.label} thrown away",
        (drawn(bath, JAR), e.Discarded(JAR)),
        (*discarding(bath, household), *opening(bath, household)),
        f"“{bath.label}” stands on the shelf no longer.",
    )


def correction(bath: KeptBath, session: str, volume_l: float, why: str) -> tuple[str, e.Corrected]:
    """Put right the litres of an entry: of the day that kept the bath, or of one that drew from it.

    Answers with that day's name and the correction for its log. Raises `ShelfRefused` where that day has none.
    """
    _own(bath)
    entry = bath.entry if session == bath.session else 0
    entry = next((one.entry for one in bath.draws if one.session == session), entry)
    if not entry:
        days = ", ".join(dict.fromkeys((bath.session, *(one.session for one in bath.draws))))
        raise ShelfRefused(f"{session} neither kept “{bath.label}” nor drew from it; that did {days}.")
    return session, e.Corrected(entry, why or "misread", changes=({"key": "volume_l", "value": volume_l},))


def adding_of(bath: KeptBath, text_substance: str, mass_g: float) -> Adding:
    """So many grams of a substance for a bath, under the name the bath knows it by."""
    meant = find(text_substance)
    for one in bath.inside:
        same = find(one.substance)
        if text_substance.casefold() in (one.ingredient.casefold(), one.substance.casefold()) or (
            meant is not None and same is not None and meant.key == same.key
        ):
            return Adding(one.ingredient, one.substance, one.role, mass_g)
    role = meant.roles[0] if meant is not None and meant.roles else "assist"
    return Adding(text_substance, text_substance, role, mass_g)


def _kept(bath: KeptBath, label: str, place: str | None = None) -> e.Kept:
    return e.Kept(JAR, label, place=bath.place if place is None else place)


def _substances(bath: KeptBath) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.substance for one in bath.inside))


def _own(bath: KeptBath) -> None:
    if bath.demo:
        raise ShelfRefused(
            f"“{bath.label}” is a demo bath that nobody kept: expected one of your own, for example after a day's"
            " “keep D as madder exhaust”."
        )
