"""The dyer's own numbers handed on: to the account by its own names, to working out, to a kitchen's jars.

Pure. A number that no day told of is not handed on; the usual guess stays.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from statistics import median

from dyesession.account.beside import Beside
from dyesession.account.logged import priors_for_log
from dyesession.account.unknowns import (
    Starting,
    family_of,
    held_name,
    kept_name,
    partition_name,
    rate_name,
    stiffens_name,
)
from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.learned_text import days_words, told_number
from dyesession.daybook.learning import strengths
from dyesession.daybook.seen import key_of
from dyesession.dyeing.fibres import Family
from dyesession.kitchen.model import Jar, Kitchen, Own
from dyesession.plan.model import Plan


@dataclass(frozen=True)
class OwnStart:
    """What a day starts from: the account's numbers, and the tables for its log with the days they come from."""

    starting: Starting
    tables: tuple[dict[str, object], ...]


def start_of(plan: Plan, learned: Learnt) -> OwnStart:
    """The dyer's own numbers for the dyestuffs and fibres of a plan."""
    return _start(*_of_plan(plan, learned))


def start_freely(learned: Learnt) -> OwnStart:
    """The dyer's own numbers for a day without a recipe, whatever it comes upon: by the dyestuff's own name."""
    abouts = [one.about for one in learned.numbers]
    families = tuple(dict.fromkeys(family_of(one.on) for one in abouts if one.what == "exhaustion"))
    found = {held_name(family_of(one.about.of)): one for one in learned.numbers if one.about.what == "liquor held"}
    beside: dict[str, Beside] = {}
    for key in dict.fromkeys(one.of for one in abouts if one.what in ("exhaustion", "kept share")):
        named, hanging = _of_dyestuff(learned, key, key, families)
        found |= named
        beside |= hanging
    return _start(found, beside)


def used_for(plan: Plan, learned: Learnt) -> tuple[Number, ...]:
    """The numbers that a day of this plan starts from or is timed by, each once."""
    heat = [one for one in learned.numbers if one.about.what in ("stove power", "cooling")]
    return tuple(dict.fromkeys([*_of_plan(plan, learned)[0].values(), *heat]))


def _of_plan(plan: Plan, learned: Learnt) -> tuple[dict[str, Number], dict[str, Beside]]:
    families = tuple(dict.fromkeys(family_of(one.kind) for one in plan.lots))
    found = dict(_of_fibres(learned, families))
    beside: dict[str, Beside] = {}
    for dose in plan.doses:
        if dose.role == "dyestuff":
            named, hanging = _of_dyestuff(learned, dose.ingredient, key_of(dose.substance), families)
            found |= named
            beside |= hanging
    return found, beside


def _start(found: Mapping[str, Number], beside: Mapping[str, Beside]) -> OwnStart:
    priors = {name: replace(one.next_day, name=name) for name, one in found.items()}
    starting = Starting(priors=priors, beside=beside)
    return OwnStart(starting, tuple(priors_for_log(starting, {name: one.days for name, one in found.items()})))


def _of_fibres(learned: Learnt, families: Sequence[Family]) -> Iterator[tuple[str, Number]]:
    for family in families:
        if held := learned.number("liquor held", family):
            yield held_name(family), held


def _of_dyestuff(
    learned: Learnt, ingredient: str, key: str, families: Sequence[Family]
) -> tuple[dict[str, Number], dict[str, Beside]]:
    """What is known of a dyestuff by the account's names, and which of it hangs on which."""
    kept, stiffens = learned.number("kept share", key), learned.number("stiffening", key)
    taken = [(one, learned.number("exhaustion", key, one)) for one in families]
    told = [(one, number) for one, number in taken if number is not None]
    found: dict[str, Number] = {}
    beside: dict[str, Beside] = {}
    if kept is not None:
        found[kept_name(ingredient)] = kept
        beside[kept_name(ingredient)] = Beside(stiffens_name(ingredient), "log", kept.at)
    if stiffens is not None:
        found[stiffens_name(ingredient)] = stiffens
    # One rate for all fibres in the account: that of the fibre most days told of, and only its partition hangs on it.
    most = max(told, key=lambda one: len(one[1].days), default=None)
    for family, number in told:
        found[partition_name(ingredient, family)] = number
    if most is not None:
        beside[partition_name(ingredient, most[0])] = Beside(rate_name(ingredient), "log", most[1].at)
        if rate := learned.number("uptake rate", key, most[0]):
            found[rate_name(ingredient)] = rate
    return found, beside


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
