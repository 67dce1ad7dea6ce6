"""What stands in the jars now, and what the next colours take of it: the kitchen's jars less what days have used.

Pure; knows no screens and no files. Which days there are is handed in; the sums are `plan.stock`'s.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from dyesession.daybook.day_line import DayLine
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.plan.model import Plan
from dyesession.plan.stock import Cost, JarNow, Stock, Used, cost_of_plan, jars_now, stock_after
from dyesession.recipe.model import Recipe

MOST_AHEAD = 3  # plans that one thinks ahead of; our own choice, no source


@dataclass(frozen=True)
class Ahead:
    """The jars as they stand, the next plans in their order, and what they take, cost and leave to be bought."""

    jars: tuple[JarNow, ...]
    plans: tuple[Plan, ...]
    stock: Stock
    costs: tuple[Cost, ...]


def wants_days(kitchen: Kitchen) -> bool:
    """Whether any jar says when it was weighed: only then can days be taken off it."""
    return any(one.weighed_on for one in kitchen.jars)


def jars_of(kitchen: Kitchen, days: Iterable[DayLine]) -> tuple[JarNow, ...]:
    """The kitchen's jars less what the dyer's own days used since each was weighed; rehearsals and demos do not."""
    own = (one for one in days if not one.rehearsal and not one.demo)
    return jars_now(
        kitchen.jars, [Used(one.day, {each.substance: each.mass_g for each in one.used}) for one in own]
    )


def stocked(kitchen: Kitchen, jars: Sequence[JarNow]) -> Kitchen:
    """The kitchen with its jars as they stand now."""
    return replace(kitchen, jars=left_in(jars))


def left_in(jars: Sequence[JarNow]) -> tuple[Jar, ...]:
    """Each jar with what is left of it."""
    return tuple(one.now for one in jars)


def plan_ahead(recipe: Recipe, fibre: Sequence[str], kitchen: Kitchen) -> Plan:
    """A plan of the days to come: fibre as typed, taken as washed and air-dry. Raises what planning raises."""
    lots = lots_from_text(fibre, recipe.fibre[0] if recipe.fibre else "wool")
    return work_out(recipe, tuple(replace(one, air_dry=True) for one in lots), kitchen)


def ahead(jars: Sequence[JarNow], plans: Sequence[Plan]) -> Ahead:
    """What the plans take of the jars one after the other."""
    left = left_in(jars)
    return Ahead(tuple(jars), tuple(plans), stock_after(plans, left), tuple(cost_of_plan(one, left) for one in plans))
