"""Whether the parts of a recipe fit together: names, order, vessels, bases, shares.

Knows the recipe alone. Each fault is one sentence with its line; all are found, not only the first.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction

from dyesession.recipe.model import Ingredient, Step
from dyesession.recipe.trouble import Faults
from dyesession.tomlfile import Table
from dyesession.units import PerBath, ShareOf, WaterPerKg


@dataclass(frozen=True)
class Parts:
    """The ingredients and steps of a recipe, each with the table it was read from."""

    ingredients: Sequence[tuple[Ingredient, Table]]
    steps: Sequence[tuple[Step, Table]]


def check(parts: Parts, faults: Faults) -> None:
    """Note everything that does not fit together."""
    _check_names([(one.name, table) for one, table in parts.ingredients], "ingredient", faults)
    _check_names([(one.name, table) for one, table in parts.steps], "step", faults)
    _check_additions(parts, faults)
    _check_bases(parts, faults)
    if _check_order(parts, faults):
        _check_vessels(parts, faults)
        _check_fibre(parts, faults)


def nearest(given: str, names: Iterable[str]) -> str:
    """Say the nearest name, or all of them, after "expected"."""
    known = list(dict.fromkeys(names))
    near = get_close_matches(given, known, n=1)
    if near:
        return f'perhaps "{near[0]}"'
    return "one of " + ", ".join(f'"{name}"' for name in known) if known else "none, for there are none"


def ordered(steps: Sequence[Step]) -> dict[str, frozenset[str]]:
    """Give for each step the names of all that are over before it; the order must hold no ring."""
    known: dict[str, frozenset[str]] = {}
    left = list(steps)
    while left:
        ready = [step for step in left if all(name in known for name in step.after)]
        for step in ready:
            known[step.name] = frozenset(step.after).union(*(known[name] for name in step.after))
        left = [step for step in left if step.name not in known]
    return known


def _check_names(named: Sequence[tuple[str, Table]], what: str, faults: Faults) -> None:
    seen: set[str] = set()
    for name, table in named:
        if name.casefold() in seen:
            faults.at(
                table,
                "name",
                f'"{name}" names two {what}s; expected a name of its own, for example "second {name}"',
            )
        seen.add(name.casefold())


def _check_additions(parts: Parts, faults: Faults) -> None:
    names = [one.name for one, _ in parts.ingredients]
    given: Counter[str] = Counter()
    shares: dict[str, Fraction] = {}
    for step, table in parts.steps:
        for addition in step.add:
            if addition.ingredient not in names:
                faults.at(
                    table,
                    "add",
                    f'{table.label} adds "{addition.ingredient}", which no ingredient is called;'
                    f" expected {nearest(addition.ingredient, names)}",
                )
            if step.vessel is None:
                faults.at(
                    table,
                    "add",
                    f'{table.label} adds "{addition.ingredient}" to no vessel; expected, for example,'
                    ' vessel = "dye pot"',
                )
            given[addition.ingredient] += 1
            shares[addition.ingredient] = shares.get(addition.ingredient, Fraction(0)) + addition.share
    for one, table in parts.ingredients:
        if shares.get(one.name, Fraction(0)) > 1:
            faults.at(
                table,
                "name",
                f'"{one.name}" is added {given[one.name]} times, more than all of it together;'
                f' expected shares that make one, for example add = [{{ {one.name} = "half" }}]',
            )
        if one.name not in given and one.role != "water":
            faults.at(
                table,
                "name",
                f'"{one.name}" is never added; expected a step with add = ["{one.name}"],'
                " or no such ingredient",
            )


def _check_bases(parts: Parts, faults: Faults) -> None:
    """Every "of ..." must name an ingredient, and no chain of them may lead back to itself."""
    names = [one.name for one, _ in parts.ingredients]
    unweighed = [one.name for one, _ in parts.ingredients if one.role == "water" and one.dose is None]
    leads_to: dict[str, str] = {}
    for one, table in parts.ingredients:
        for key, dose in (("dose", one.dose), ("least", one.least), ("most", one.most)):
            if not isinstance(dose, ShareOf):
                continue
            if dose.ingredient not in names:
                faults.at(
                    table,
                    key,
                    f'{key} in {table.label} is a share of "{dose.ingredient}", which no ingredient'
                    f" is called; expected {nearest(dose.ingredient, names)}",
                )
            elif dose.ingredient in unweighed:
                faults.at(table, key, _unweighed(f"{key} in {table.label} is a share of", dose.ingredient))
            elif key == "dose":
                leads_to[one.name] = dose.ingredient
    for one, table in parts.ingredients:
        if _leads_back(one.name, leads_to):
            faults.at(
                table,
                "dose",
                f'the dose of "{one.name}" is reckoned on itself; expected a base that is'
                ' weighed by itself, for example "12 %" of the fibre',
            )
    _check_water(parts, names, unweighed, faults)


def _unweighed(what: str, base: str) -> str:
    return (
        f'{what} "{base}", which has no dose and so no weight; expected a base that is weighed, for example'
        ' "12 %" of the fibre'
    )


def _leads_back(name: str, leads_to: Mapping[str, str]) -> bool:
    seen: set[str] = set()
    at = name
    while at in leads_to and at not in seen:
        seen.add(at)
        at = leads_to[at]
    return at == name and bool(seen)


def _check_water(parts: Parts, names: Sequence[str], unweighed: Sequence[str], faults: Faults) -> None:
    doses = {one.name: one.dose for one, _ in parts.ingredients}
    for step, table in parts.steps:
        base = step.water.of if isinstance(step.water, WaterPerKg) else None
        if base is None:
            continue
        if base not in names:
            faults.at(
                table,
                "water",
                f'the water of {table.label} is reckoned on "{base}", which no ingredient is'
                f" called; expected {nearest(base, names)}",
            )
        elif base in unweighed:
            faults.at(table, "water", _unweighed(f"the water of {table.label} is reckoned on", base))
        elif isinstance(_root(doses, base), PerBath):
            faults.at(
                table,
                "water",
                f'the water of {table.label} is reckoned on "{base}", whose dose is reckoned on'
                ' the water; expected one of them by itself, for example water = "7 l"',
            )


def _root(doses: Mapping[str, object], name: str) -> object:
    """Follow "of ..." down to a dose that stands by itself."""
    seen: set[str] = set()
    dose = doses.get(name)
    while isinstance(dose, ShareOf) and dose.ingredient not in seen:
        seen.add(dose.ingredient)
        dose = doses.get(dose.ingredient)
    return dose


def _check_order(parts: Parts, faults: Faults) -> bool:
    """Check `after`: known names and no ring. Returns whether the order can be used for more checks."""
    names = [step.name for step, _ in parts.steps]
    sound = len(set(names)) == len(names)
    for step, table in parts.steps:
        for earlier in step.after:
            if earlier not in names:
                sound = False
                faults.at(
                    table,
                    "after",
                    f'{table.label} comes after "{earlier}", which no step is called;'
                    f" expected {nearest(earlier, names)}",
                )
    after = {step.name: [one for one in step.after if one in names] for step, _ in parts.steps}
    ring = _ring(after)
    if ring:
        table = next(table for step, table in parts.steps if step.name == ring[0])
        faults.at(
            table,
            "after",
            "these steps wait for each other and none could begin: "
            + " after ".join(f'"{name}"' for name in [*ring, ring[0]])
            + "; expected one of them to come first, without that after",
        )
    return sound and not ring


def _ring(after: Mapping[str, Sequence[str]]) -> list[str]:
    """Find a ring of steps that come after each other, or an empty list."""
    done: set[str] = set()
    for start in after:
        path: list[str] = []
        stack = [(start, False)]
        while stack:
            name, left = stack.pop()
            if left:
                path.pop()
                done.add(name)
            elif name in path:
                return path[path.index(name) :]
            elif name not in done:
                path.append(name)
                stack.append((name, True))
                stack.extend((one, False) for one in after[name])
    return []


def _check_vessels(parts: Parts, faults: Faults) -> None:
    """A vessel holds one bath at a time, and what is strained goes where something happens next."""
    before = ordered([step for step, _ in parts.steps])
    vessels = [step.vessel for step, _ in parts.steps if step.vessel]
    for i, (step, table) in enumerate(parts.steps):
        for other, _ in parts.steps[:i]:
            shared = _shared_vessel(step, other)
            if shared and other.name not in before[step.name] and step.name not in before[other.name]:
                faults.at(
                    table,
                    "vessel",
                    f'"{shared}" is wanted by "{other.name}" and "{step.name}" at once;'
                    f' expected two vessels, or after = ["{other.name}"] in "{step.name}"',
                )
        if step.stage == "extract" and step.into and step.into not in vessels:
            faults.at(
                table,
                "into",
                f'{table.label} is strained into "{step.into}", in which nothing happens;'
                f" expected {nearest(step.into, vessels)}",
            )


def _check_fibre(parts: Parts, faults: Faults) -> None:
    """The fibre is in one step at a time; two steps that want one vessel have been told of already."""
    before = ordered([step for step, _ in parts.steps])
    for i, (step, table) in enumerate(parts.steps):
        for other, _ in reversed(parts.steps[:i]):
            apart = other.name in before[step.name] or step.name in before[other.name]
            both = step.enter and other.enter
            if both and not apart and not _shared_vessel(step, other):
                faults.at(
                    table,
                    "after",
                    f'the fibre would be in "{other.name}" and "{step.name}" at once; expected, for example,'
                    f' after = ["{other.name}"] in "{step.name}"',
                )
                break


def _shared_vessel(one: Step, other: Step) -> str | None:
    """Name the vessel two steps both need; two liquors strained into one vessel may meet there."""
    shared = {one.vessel, one.into} & {other.vessel, other.into} - {None}
    meeting = {one.into} & {other.into}
    return next(iter(sorted(str(vessel) for vessel in shared - meeting)), None)
