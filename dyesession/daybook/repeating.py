"""A colour repeated: a recipe of what was done on a day, for other fibre in a kitchen of today. Pure.

Doses as they were weighed, heat and minutes as they were, refreshes that were made, corrections carried out
(`as_recipe`). What is other this time is called out with its effect. A repeat of a repeat names both days.
"""

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from dyesession.account import Band90
from dyesession.colour.depth import NOT_FITTED
from dyesession.daybook import called_out as c
from dyesession.daybook.as_poured import poured, unattended
from dyesession.daybook.as_recipe import recipe_from_day
from dyesession.daybook.called_out import Change
from dyesession.daybook.day_line import lineage
from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.expecting import expected_depth
from dyesession.daybook.learning import exponent_of, learnt
from dyesession.daybook.own_numbers import own_kitchen, with_strengths
from dyesession.daybook.walk import Pace, walk
from dyesession.errors import UserError
from dyesession.kitchen.model import Kitchen
from dyesession.plan import work_out
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe import recipe_from_document
from dyesession.session.fold import opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State

MOST_LINEAGE = 8  # days named in a recipe's source; our own choice, no source
LEAST_DEPTH, MOST_DEPTH = 0.1, 4.0  # beyond this the theory of depth was not tried (`colour.depth`)
_DATED = re.compile(r", \d{1,2} [A-Z][a-z]+ \d{4}$")
_PERCENT = re.compile(r"^([0-9.]+) %$")
PERCENT_FIGURES = 6


class NoSuchDepth(UserError):
    """A depth nobody can say anything of."""


@dataclass(frozen=True)
class Repeated:
    """The new recipe's document, what it comes to for the new fibre, and what is other than on the day.

    `lineage` names the days it goes back to, the nearest first. `expected` is the depth to come over the day's,
    with the ± that days, hands and what is other leave open; None where no dyestuff is weighed, or some of the
    colour came out of a kept bath, so that nobody can say.
    """

    document: dict[str, Any]
    plan: Plan
    changes: tuple[Change, ...]
    lineage: tuple[str, ...]
    expected: Band90 | None

    @property
    def expect(self) -> str:
        """What depth to expect, in one sentence."""
        if self.expected is None and not any(one.about == "kept bath" for one in self.changes):
            return "No dyestuff is weighed for it: there is no depth to expect."
        if self.expected is None:
            return "What comes of it hangs on the bath that is drawn: no depth is promised."
        low, high = self.expected.low, self.expected.high
        return f"Expect {low:.2f} to {high:.2f} of that day's depth, nine times in ten: a snippet says where in it."


def repeat(
    day: LoggedDay,
    lots: Sequence[FibreLot],
    kitchen: Kitchen,
    *,
    depth: float = 1.0,
    name: str = "",
    learned: Learnt | None = None,
) -> Repeated:
    """The recipe that repeats a day on `lots` (none: the day's own) in `kitchen`, at `depth` of its depth.

    `learned` are the dyer's own numbers; without them, what this day alone teaches. Raises `NothingToRepeat`,
    `NoSuchDepth`, and what `plan.work_out` raises.
    """
    _check_depth(depth)
    paces = tuple(walk(day))
    last = paces[-1].after if paces else opening_state(day.plan)
    learned = learned if learned is not None and learned.numbers else learnt([day])
    then, kitchen = (with_strengths(one, learned) for one in (c.kitchen_then(day), own_kitchen(kitchen, learned)))
    mine = tuple(lots) or lots_of_day(day, last)
    exponents = _Exponents(learned)
    document = recipe_from_day(day, name or _DATED.sub("", day.recipe) + f", {_dated(day)}")
    document = {**document, **_fibre(document, mine), **_source(day)}
    if "ingredient" in document:
        document["ingredient"] = [_dosed(one, then, kitchen, depth, exponents) for one in document["ingredient"]]
    plan = work_out(recipe_from_document(document, f"the repeat of {day.name}"), mine, kitchen)
    changes = tuple(_changes(day, paces, last, document, mine, then, kitchen, plan, depth, exponents))
    expected = None
    weighed = any(one["role"] == "dyestuff" for one in document.get("ingredient", ()))
    if weighed and not any(one.about == "kept bath" for one in changes):
        pulls = max((one.pulls for one in last.dyestuffs), default=0)
        kinds = [one.kind for one in lots_of_day(day, last)]
        alike = expected_depth(last, pulls, float(document["liquor_ratio"]), learned, kinds)
        expected = together([alike, *(one.factor for one in changes if one.factor is not None)])
    return Repeated(document, plan, changes, (day.name, *lineage(day))[:MOST_LINEAGE], expected)


@dataclass(frozen=True)
class _Exponents:
    """How depth follows dose for each dyestuff: the dyer's own where days told of it."""

    learned: Learnt

    def of(self, substance: str) -> tuple[float, float]:
        """The exponent and its ±."""
        own = exponent_of(self.learned, substance)
        if own is None:
            return NOT_FITTED.value, NOT_FITTED.plus_minus
        return own.own.centre, (own.own.high - own.own.low) / 2.0


def together(factors: Sequence[Band90]) -> Band90:
    """Factors on depth that have nothing to do with one another, as one (log scale, each side by its squares)."""
    mean = math.prod(one.mean for one in factors)
    down = math.hypot(*(math.log(one.mean / one.low) for one in factors))
    up = math.hypot(*(math.log(one.high / one.mean) for one in factors))
    return Band90(mean, mean * math.exp(-down), mean * math.exp(up))


def lots_of_day(day: LoggedDay, last: State) -> tuple[FibreLot, ...]:
    """The fibre of a day as its corrections and late joiners left it, every lot as it was before the day."""
    planned = {one.name: one for one in day.plan.lots}
    return tuple(
        FibreLot(
            one.name,
            one.kind,
            one.mass_g,
            form=planned[one.name].form if one.name in planned else "",
            air_dry=True,
            mordanted=one.mordanted,
        )
        for one in last.lots
        if not one.snippet
    )


def _check_depth(depth: float) -> None:
    if not LEAST_DEPTH <= depth <= MOST_DEPTH:
        raise NoSuchDepth(
            f"{depth:g} of the depth is beyond what can be told; expected {LEAST_DEPTH:g} to {MOST_DEPTH:g}, for"
            " example 0.5 for half the depth."
        )


def _dated(day: LoggedDay) -> str:
    return f"{day.opened.at.day} {day.opened.at:%B %Y}"


def _fibre(document: Mapping[str, Any], lots: Sequence[FibreLot]) -> dict[str, Any]:
    kinds = dict.fromkeys((*(one.kind for one in lots), *document.get("fibre", ())))
    return {"fibre": list(kinds)}


def _source(day: LoggedDay) -> dict[str, Any]:
    """Where the recipe comes from, every day it goes back to named."""
    before = lineage(day)[: MOST_LINEAGE - 1]
    back = "".join(f", which repeats log {one}" for one in before)
    return {"source": f"dyed on {day.opened.at:%Y-%m-%d}, log {day.name}{back}"}


def _dosed(
    ingredient: dict[str, Any], then: Kitchen, now: Kitchen, depth: float, exponents: _Exponents
) -> dict[str, Any]:
    """A dyestuff's dose for today's jar and the depth asked for; anything else as it was."""
    found = _PERCENT.match(ingredient["dose"])
    if ingredient["role"] != "dyestuff" or found is None:
        return ingredient
    factor = c.strength_factor(then, now, ingredient["substance"]) or 1.0
    factor *= depth ** (1.0 / exponents.of(ingredient["substance"])[0])
    if factor == 1.0:
        return ingredient
    return {**ingredient, "dose": f"{float(found[1]) * factor:.{PERCENT_FIGURES}g} %"}


def _changes(
    day: LoggedDay,
    paces: Sequence[Pace],
    last: State,
    document: Mapping[str, Any],
    lots: Sequence[FibreLot],
    then: Kitchen,
    now: Kitchen,
    plan: Plan,
    depth: float,
    exponents: _Exponents,
) -> Iterator[Change]:
    dyestuffs = [one["substance"] for one in document.get("ingredient", ()) if one["role"] == "dyestuff"]
    yield from c.depth(depth, *exponents.of(dyestuffs[0] if dyestuffs else ""))
    yield from c.fibre(lots_of_day(day, last), lots, dyestuffs, float(document["liquor_ratio"]))
    for substance in dyestuffs:
        yield from c.dyestuff(then, now, substance)
    yield from c.kept_baths(paces)
    yield from c.kitchen(day, then, now, plan)
    yield from c.as_done(day, paces, last)
    yield from poured(day, paces)
    yield from unattended(paces)
