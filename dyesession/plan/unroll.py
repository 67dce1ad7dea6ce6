"""The recipe's steps as they will be done: every extraction strained and, where asked, done again.

Knows no amounts yet. What comes after an extraction waits for its last straining.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dyesession.plan.doses import Grams
from dyesession.plan.model import PlannedAddition, PlannedStep
from dyesession.recipe.model import Recipe, Step

ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
STRAIN_SAY = "Through a cloth or sieve, away from you; let the dyestuff drain and keep it."
LAST_STRAIN_SAY = "Through a cloth or sieve, away from you; let the dyestuff drain well."
AGAIN_SAY = "The strained dyestuff goes back into the pot with fresh water."


def unrolled(recipe: Recipe) -> tuple[PlannedStep, ...]:
    """Return the planned steps in an order in which they can be done, without amounts or water."""
    strained = [step for step in recipe.steps if _is_strained(step)]
    taken = {step.name for step in recipe.steps}
    last: dict[str, str] = {}
    steps: list[PlannedStep] = []
    for step in recipe.steps:
        own = _rounds(step, taken, alone=len(strained) == 1)
        last[step.name] = own[-1].name
        steps.extend(own)
    waiting = [
        replace(one, after=tuple(last.get(name, name) for name in one.after)) if _is_first(one) else one
        for one in steps
    ]
    return _in_order(waiting)


def _is_strained(step: Step) -> bool:
    return step.stage == "extract" and step.into is not None


def _is_first(step: PlannedStep) -> bool:
    return step.name == step.of


def _rounds(step: Step, taken: set[str], *, alone: bool) -> list[PlannedStep]:
    """Unroll one step of the recipe: a strained extraction becomes pairs of extract and strain."""
    first = PlannedStep(
        name=step.name,
        stage=step.stage,
        lane=step.lane,
        vessel=step.vessel,
        of=step.name,
        after=step.after,
        enter=step.enter,
        heat=step.heat,
        judge=step.judge,
        say=step.say,
    )
    if not _is_strained(step):
        return [first]
    rounds: list[PlannedStep] = []
    for again in range(step.refreshes + 1):
        extract = first if not again else _again(first, step, again, rounds[-1].name, taken)
        strain = _strain(step, again, extract.name, taken, alone=alone)
        rounds.extend((extract, strain))
    return rounds


def _again(first: PlannedStep, step: Step, again: int, after: str, taken: set[str]) -> PlannedStep:
    name = _fresh(f"{step.name} {_counted(again)}", taken)
    return replace(first, name=name, after=(after,), fresh_water=True, again=again, say=AGAIN_SAY)


def _strain(step: Step, again: int, after: str, taken: set[str], *, alone: bool) -> PlannedStep:
    stem = "strain" if alone else f"strain {step.name}"
    name = _fresh(stem if not again else f"{stem} {_counted(again)}", taken)
    say = LAST_STRAIN_SAY if again == step.refreshes else STRAIN_SAY
    return PlannedStep(
        name, "strain", step.lane, step.vessel, step.name, (after,), into=step.into, again=again, say=say
    )


def _counted(again: int) -> str:
    return "again" if again == 1 else str(again + 1)


def _fresh(name: str, taken: set[str]) -> str:
    """Keep the name, or number it when the recipe has one like it."""
    unique, count = name, 2
    while unique in taken:
        unique, count = f"{name} ({count})", count + 1
    taken.add(unique)
    return unique


def _in_order(steps: Sequence[PlannedStep]) -> tuple[PlannedStep, ...]:
    """Sort so that each step stands behind those it comes after, otherwise as the recipe has them."""
    done: list[PlannedStep] = []
    names: set[str] = set()
    left = list(steps)
    while left:
        ready = next(step for step in left if names.issuperset(step.after))
        left.remove(ready)
        done.append(ready)
        names.add(ready.name)
    return tuple(done)


def shares(recipe: Recipe) -> dict[str, list[Fraction]]:
    """Return the shares in which each ingredient is added, in the recipe's order."""
    found: dict[str, list[Fraction]] = {one.name: [] for one in recipe.ingredients}
    for step in recipe.steps:
        for addition in step.add:
            found[addition.ingredient].append(addition.share)
    return found


def with_additions(
    steps: Sequence[PlannedStep], recipe: Recipe, grams: Mapping[str, Grams]
) -> tuple[PlannedStep, ...]:
    """Put the grams of each addition into its step, portions named in the order they are made."""
    adding = {step.name: step.add for step in recipe.steps}
    counts = {name: len(parts) for name, parts in shares(recipe).items()}
    seen: Counter[str] = Counter()
    done: list[PlannedStep] = []
    for step in steps:
        additions: list[PlannedAddition] = []
        for one in adding[step.of] if _is_first(step) else ():
            seen[one.ingredient] += 1
            portion = _portion(one.share, seen[one.ingredient], counts[one.ingredient])
            mass_g = float(grams[one.ingredient].aim * one.share)
            additions.append(
                PlannedAddition(one.ingredient, mass_g, portion, recipe.ingredient(one.ingredient).bagged)
            )
        done.append(replace(step, add=tuple(additions)))
    return tuple(done)


def _portion(share: Fraction, number: int, count: int) -> str:
    if share == 1 and count == 1:
        return ""
    ordinal = ORDINALS[number - 1] if number <= len(ORDINALS) else f"{number}th"
    return f"{ordinal} half" if share == Fraction(1, 2) and count <= 2 else f"{ordinal} portion"
