"""The dyer's own numbers handed on: to the account by its own names, to working out, to a kitchen's jars.

Pure. A number that no day told of is not handed on; the usual guess stays.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from statistics import median

from dyesession.account.logged import priors_for_log
from dyesession.account.unknowns import Starting, family_of, held_name, kept_name, partition_name
from dyesession.daybook.learned_text import days_words, told_number
from dyesession.daybook.learning import Learnt, Number, strengths
from dyesession.daybook.seen import key_of
from dyesession.dyeing.priors import Prior
from dyesession.kitchen.model import Jar, Kitchen, Own
from dyesession.plan.model import Plan


@dataclass(frozen=True)
class OwnStart:
    """What a day starts from: the account's numbers, and the tables for its log with the days they come from."""

    starting: Starting
    tables: tuple[dict[str, object], ...]


def start_of(plan: Plan, learned: Learnt) -> OwnStart:
    """The dyer's own numbers for the dyestuffs and fibres of a plan."""
    return _start(dict(_named(plan, learned)))


def start_freely(learned: Learnt) -> OwnStart:
    """The dyer's own numbers for a day without a recipe, whatever it comes upon: by the dyestuff's own name."""
    return _start({name: one for one in learned.numbers if (name := _substance_name(one))})


def _substance_name(one: Number) -> str:
    """The account's name of a number where a dyestuff has no other name than its own; "" for what it does not use."""
    about = one.about
    if about.what == "exhaustion":
        return partition_name(about.of, family_of(about.on))
    if about.what == "kept share":
        return kept_name(about.of)
    return held_name(family_of(about.of)) if about.what == "liquor held" else ""


def used_for(plan: Plan, learned: Learnt) -> tuple[Number, ...]:
    """The numbers that a day of this plan starts from or is timed by, each once."""
    heat = [one for one in learned.numbers if one.about.what in ("stove power", "cooling")]
    return tuple(dict.fromkeys([*(one for _, one in _named(plan, learned)), *heat]))


def _start(found: Mapping[str, Number]) -> OwnStart:
    priors = {name: replace(one.next_day, name=name) for name, one in found.items()}
    days = {name: one.days for name, one in found.items()}
    return OwnStart(Starting(priors=priors), tuple(priors_for_log(priors, days)))


def _named(plan: Plan, learned: Learnt) -> Iterator[tuple[str, Number]]:
    families = tuple(dict.fromkeys(family_of(one.kind) for one in plan.lots))
    for family in families:
        if held := learned.number("liquor held", family):
            yield held_name(family), held
    for dose in plan.doses:
        if dose.role != "dyestuff":
            continue
        key = key_of(dose.substance)
        if kept := learned.number("kept share", key):
            yield kept_name(dose.ingredient), kept
        for family in families:
            if taken := learned.number("exhaustion", key, family):
                yield partition_name(dose.ingredient, family), taken


def partition_of(learned: Learnt, fibre: str, substance: str) -> Prior | None:
    """The dyer's own partition for a dyestuff on a kind of fibre, L/kg; None where no day told of it."""
    found = learned.number("exhaustion", key_of(substance), family_of(fibre))
    return found.next_day if found is not None else None


def own_kitchen(kitchen: Kitchen, learned: Learnt) -> Kitchen:
    """A kitchen with what days taught of its jars, its stove and its pots."""
    return replace(with_strengths(kitchen, learned), own=_own(learned))


def _own(learned: Learnt) -> Own:
    stove = [one for one in learned.numbers if one.about.what == "stove power"]
    pots = [one for one in learned.numbers if one.about.what == "cooling"]
    return Own(stove_w(learned), cooling_of(learned), *_in_words(stove), *_in_words(pots))


def _in_words(numbers: Sequence[Number]) -> tuple[str, str]:
    """Numbers with their ±, and the days they come from; empty where there are none."""
    if not numbers:
        return "", ""
    said = "; ".join(f"{told.title}: {told.yours}" for told in map(told_number, numbers))
    days = sorted({day for one in numbers for day in one.days})
    return said, days_words(days)


def with_strengths(kitchen: Kitchen, learned: Learnt) -> Kitchen:
    """A kitchen whose jars have the strength that days taught; what the dyer wrote down stays."""
    known = strengths(learned)
    return replace(kitchen, jars=tuple(_jar(one, known) for one in kitchen.jars))


def _jar(jar: Jar, known: Mapping[tuple[str, str], float]) -> Jar:
    strength = known.get((key_of(jar.substance), jar.name))
    return jar if jar.strength is not None or strength is None else replace(jar, strength=strength)


def stove_w(learned: Learnt) -> float | None:
    """Watts left for warming on this stove; None where no rise told of it."""
    found = learned.number("stove power")
    return found.own.centre if found is not None else None


def cooling_of(learned: Learnt) -> float:
    """How many times the table's minutes the middle one of the pots takes to cool; 1 where none told of it."""
    found = [one.own.centre for one in learned.numbers if one.about.what == "cooling"]
    return median(found) if found else 1.0
