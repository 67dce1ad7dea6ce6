"""A stage named at the stove, made a planned step: its place in the order, its water, its heat capped.

Pure. On an improvised day every step comes this way; on a day by a recipe it is one step more.
"""

from collections.abc import Sequence
from dataclasses import replace

from dyesession.dyeing.boiling import hottest_workable_c
from dyesession.plan.baths import OWN_WATER
from dyesession.plan.changes import After, Change, NewIngredient, NewStep
from dyesession.plan.model import PlannedStep
from dyesession.plan.pots import FILL_SHARE
from dyesession.plan.today import StepToday, Today
from dyesession.recipe.loading import USUAL_LIQUOR_RATIO

LIQUOR_STAGES = ("soak", "extract", "strain")
LAST_STAGES = ("rinse", "rest", "dry")
EXTRACT_L_PER_KG = 20.0  # litres to a kilogram of dyestuff: common practice, no source
GRAMS_PER_KG = 1000.0


def with_stage(
    today: Today, wanted: PlannedStep, new: Sequence[NewIngredient], boiling_c: float
) -> list[Change]:
    """The changes that bring a stage in: what it uses, the step (and its straining), who waits for it.

    `wanted.after` keeps what the dyer named; the steps under way in the same pot or with the same fibre are
    added.
    """
    step = _placed(today, wanted, boiling_c)
    steps = [step, *_straining(today, step)]
    behind = step.after[-1] if step.after else ""
    made: list[Change] = [*new]
    for one in steps:
        made.append(NewStep(one, behind))
        behind = one.name
    return [*made, *_waiting(today, steps)]


def _placed(today: Today, wanted: PlannedStep, boiling_c: float) -> PlannedStep:
    pulls = _pulls_before(today, wanted)
    fresh = wanted.fresh_water or bool(pulls) or _begins_anew(today, wanted)
    again = max((one.plan.again for one in pulls), default=-1) + 1
    step = replace(
        wanted,
        name=today.named(wanted.name),
        lane="liquor" if wanted.stage in LIQUOR_STAGES and not wanted.enter else "fibre",
        of=pulls[0].plan.of if pulls else "",
        after=_after(today, wanted),
        fresh_water=fresh,
        heat=tuple(
            replace(one, temperature_c=min(one.temperature_c, hottest_workable_c(boiling_c)))
            if one.temperature_c is not None
            else one
            for one in wanted.heat
        ),
        again=again,
    )
    return replace(step, of=step.of or step.name, water_l=_water_l(today, step, pulls))


def _pulls_before(today: Today, wanted: PlannedStep) -> list[StepToday]:
    """Earlier extractions in that vessel, when this one adds nothing: the same dyestuff once more."""
    if wanted.stage != "extract" or wanted.add:
        return []
    return [one for one in today.steps if one.plan.stage == "extract" and one.plan.vessel == wanted.vessel]


def _begins_anew(today: Today, wanted: PlannedStep) -> bool:
    """A wash or a rinse has its own water, before and after; any other bath is gone on with."""
    before = [
        one.plan.stage
        for one in today.steps
        if one.plan.vessel == wanted.vessel and one.how_far != "left out"
    ]
    return wanted.stage in OWN_WATER or (bool(before) and before[-1] in OWN_WATER)


def _after(today: Today, wanted: PlannedStep) -> tuple[str, ...]:
    lots = set(_lots(today, wanted))
    running = (
        one.name
        for one in today.steps
        if one.how_far == "under way" and (one.plan.vessel == wanted.vessel or lots & set(one.lots))
    )
    return tuple(dict.fromkeys((*wanted.after, *running)))


def _lots(today: Today, step: PlannedStep) -> tuple[str, ...]:
    return tuple(one.name for one in today.lots) if "fibre" in step.enter else step.enter


def _water_l(today: Today, step: PlannedStep, pulls: list[StepToday]) -> float | None:
    """Litres as named; else as the extraction before, or by the usual ratio where a bath begins."""
    if step.water_l is not None or step.vessel is None or step.stage == "strain":
        return step.water_l
    if pulls and pulls[-1].plan.water_l is not None:
        return pulls[-1].plan.water_l
    if step.vessel in today.full and not step.fresh_water:
        return None
    litres = USUAL_LIQUOR_RATIO * today.mass_g(_lots(today, step)) / GRAMS_PER_KG
    if step.lane == "liquor":
        litres = EXTRACT_L_PER_KG * sum(one.mass_g for one in step.add) / GRAMS_PER_KG
    capacity_l = today.capacity_l.get(step.vessel)
    return (litres if capacity_l is None else min(litres, FILL_SHARE * capacity_l)) or None


def _straining(today: Today, step: PlannedStep) -> list[PlannedStep]:
    """The strain that follows an extraction into another vessel."""
    if step.stage != "extract" or step.into is None:
        return []
    name = today.named(f"strain {step.name}")
    return [
        PlannedStep(
            name, "strain", step.lane, step.vessel, step.of, (step.name,), into=step.into, again=step.again
        )
    ]


def _waiting(today: Today, steps: list[PlannedStep]) -> list[Change]:
    """Rinsing and drying still to come wait for it, unless it comes after them."""
    before = _all_before(today, steps[0].after)
    return [
        After(one.name, (*one.plan.after, steps[-1].name))
        for one in today.steps
        if one.how_far == "to come" and one.plan.stage in LAST_STAGES and one.name not in before
    ]


def _all_before(today: Today, names: Sequence[str]) -> set[str]:
    found: set[str] = set()
    left = list(names)
    while left:
        step = today.step(left.pop())
        if step is not None and step.name not in found:
            found.add(step.name)
            left.extend(step.plan.after)
    return found
