"""Recipe, fibre and kitchen in; the whole day out: doses, water, pots, timetable, reminders, warnings.

Knows no files, screens or events. Each part of the work has its own module; this one puts them in order.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dyesession.kitchen.model import Kitchen, Pot
from dyesession.plan import warnings as warn
from dyesession.plan.baths import LIQUOR_STAGES, Reckoner, Waters, filled_anew, leaders, wanted_l, waters
from dyesession.plan.boil import boil_in, capped
from dyesession.plan.cautions import Day, heated_on, pot_rings, stove_refused
from dyesession.plan.doses import Base, Depth, Grams, grams_of
from dyesession.plan.lots import checked_mass_g, lot_questions, lot_warnings
from dyesession.plan.minutes import pot_minutes
from dyesession.plan.model import (
    FibreLot,
    Plan,
    PlannedBath,
    PlannedDose,
    PlannedStep,
    PlannedVessel,
    ReckonedOn,
    TimetableRow,
)
from dyesession.plan.pots import Assigned, Wanted, assign
from dyesession.plan.timetable import end_min, timetable
from dyesession.plan.trouble import Refused
from dyesession.plan.unroll import shares, unrolled, with_additions
from dyesession.plan.weighing import ToWeigh, weigh
from dyesession.plan.words import letter_of, litres
from dyesession.recipe.model import Recipe
from dyesession.substances import find
from dyesession.units import Dose, PerBath, ShareOf, ShareOfFibre, WaterVolume, exact

WORTH_TOPPING_UP_L = 0.1  # less than this is poured by eye anyway: common practice, no source


@dataclass(frozen=True)
class _Water:
    """The steps with their water, the pots they stand in, and the grams of it all."""

    steps: tuple[PlannedStep, ...]
    pots: Assigned
    waters: Waters
    grams: Mapping[str, Grams]


def work_out(recipe: Recipe, lots: Sequence[FibreLot], kitchen: Kitchen, *, depth: Depth = "aim") -> Plan:
    """Work out a whole day. `depth` picks the low, middle or high end of the colour's own range.

    Raises `PlanError` when there is no sound weight of fibre, `Refused` for a substance or a stove that is
    never planned.
    """
    warn.refuse(recipe)
    if refused := stove_refused(kitchen):
        raise Refused(refused)
    fibre_g = checked_mass_g(lots)
    boil = boil_in(kitchen)
    water = _with_water(recipe, fibre_g, kitchen, depth)
    steps, too_hot = capped(water.steps, boil)
    doses = tuple(_doses(recipe, water.grams, fibre_g, kitchen))
    vessels = _vessels(steps, water.pots.pots)
    day = Day(recipe, kitchen, doses, vessels, [lot.kind for lot in lots])
    burner, indoors = heated_on(kitchen)
    return Plan(
        recipe=recipe.name,
        lots=tuple(lots),
        fibre_mass_g=fibre_g,
        boiling_c=boil.boiling_c,
        boiling_margin_c=boil.margin_c,
        by_eye=kitchen.thermometer is False,
        cooling=kitchen.own.cooling,
        doses=doses,
        baths=water.waters.baths,
        vessels=vessels,
        steps=steps,
        timetable=laid_out(steps, kitchen),
        reminders=tuple(one for step in steps for one in day.reminders(step)),
        warnings=_once(
            *warn.unknown_substances(recipe.ingredients),
            *warn.no_scales(kitchen.scales),
            *lot_warnings(lots, recipe.fibre),
            *warn.damp_sentence(lots, doses),
            *warn.strong_iron(doses),
            *warn.swallowed_iron(recipe.ingredients),
            *(_of_bath(bath) for bath in water.waters.baths if bath.say),
            *water.pots.warnings,
            *too_hot,
            *warn.few_burners(len(pot_rings(kitchen)), _later_min(steps, kitchen)),
            *warn.unused_shares(recipe, shares(recipe)),
            *warn.empty_baths(recipe),
            *warn.jar_warnings(doses, kitchen.jars),
        ),
        questions=_once(*lot_questions(lots), *warn.choices(recipe)),
        burner=burner,
        indoors=indoors,
    )


def laid_out(steps: Sequence[PlannedStep], kitchen: Kitchen) -> tuple[TimetableRow, ...]:
    """The timetable of some steps in a kitchen: its burners are a limit where it lists any."""
    return timetable(steps, pot_minutes(steps, kitchen.burners, kitchen.own), len(pot_rings(kitchen)) or None)


def _later_min(steps: Sequence[PlannedStep], kitchen: Kitchen) -> float:
    """Minutes by which the day ends later than with a burner for every pot."""
    free = timetable(steps, pot_minutes(steps, kitchen.burners, kitchen.own))
    return end_min(laid_out(steps, kitchen)) - end_min(free)


def _once(*sentences: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(sentences))


def _of_bath(bath: PlannedBath) -> str:
    return f"{bath.step}: {bath.say}."


def _with_water(recipe: Recipe, fibre_g: float, kitchen: Kitchen, depth: Depth) -> _Water:
    """Reckon grams, then water on them, then the grams that are dosed by the litre of it."""
    base = Base(exact(fibre_g), {})
    reckoner = Reckoner(recipe, fibre_g, grams_of(recipe, base, depth))
    steps = filled_anew(unrolled(recipe), reckoner)
    pots = assign(_wants(recipe, steps, wanted_l(reckoner, steps)), steps, kitchen.pots)
    found = waters(reckoner, steps, pots.pots, one_pot=len(kitchen.pots) == 1)
    grams = grams_of(recipe, Base(base.fibre_g, _bath_l(recipe, steps, found.water_l)), depth)
    flat = _by_the_litre(recipe, steps)
    filled = tuple(_filled(step, found, step.name in flat) for step in with_additions(steps, recipe, grams))
    return _Water(filled, pots, found, grams)


def _wants(recipe: Recipe, steps: Sequence[PlannedStep], most_l: Mapping[str, float]) -> list[Wanted]:
    """Say of each vessel that holds a bath how much, whether heated, whether with iron in it."""
    substance = {one.name: find(one.substance) for one in recipe.ingredients}
    adding = {step.name: [substance[one.ingredient] for one in step.add] for step in recipe.steps}
    wants = []
    for vessel, volume_l in most_l.items():
        mine = [step for step in steps if step.vessel == vessel]
        heated = any(heat.kind == "to" for step in mine for heat in step.heat)
        iron = any(one is not None and one.has("iron") for step in mine for one in adding[step.of])
        wants.append(Wanted(vessel, volume_l, heated, iron))
    return wants


def _bath_l(
    recipe: Recipe, steps: Sequence[PlannedStep], water_l: Mapping[str, float]
) -> dict[str, Fraction]:
    """Litres on which each ingredient dosed by the litre is reckoned: those of the baths it goes into."""
    by_litre = {one.name for one in recipe.ingredients if isinstance(one.dose, PerBath)}
    found: dict[str, Fraction] = {}
    for step in recipe.steps:
        for addition in step.add:
            if addition.ingredient in by_litre:
                volume_l = exact(water_l.get(step.name, 0.0)) * addition.share
                found[addition.ingredient] = found.get(addition.ingredient, Fraction(0)) + volume_l
    return found


def _by_the_litre(recipe: Recipe, steps: Sequence[PlannedStep]) -> set[str]:
    """The steps whose bath the recipe states in litres, whatever the fibre weighs; a liquor pot states it
    once.
    """
    stated = {one.name for one in recipe.steps if isinstance(one.water, WaterVolume)}
    pots = {one.vessel for one in recipe.steps if one.name in stated and one.stage in LIQUOR_STAGES}
    unsaid = {one.name for one in recipe.steps if one.water is None and one.stage in LIQUOR_STAGES}
    by_name = {one.name: one for one in steps}
    leading = {name: by_name[leader] for name, leader in leaders(steps).items()}
    return {
        name
        for name, leader in leading.items()
        if leader.of in stated or (leader.of in unsaid and leader.vessel in pots)
    }


def _filled(step: PlannedStep, found: Waters, flat: bool) -> PlannedStep:
    """Give a step its litres, and say what topping up the strained liquor needs."""
    top_up_l = found.top_up_l.get(step.name, 0.0)
    say = step.say
    if top_up_l >= WORTH_TOPPING_UP_L:
        say = f"The strained liquor wants about {litres(top_up_l)} of water to fill the bath. {say}".rstrip()
    return replace(
        step,
        water_l=found.water_l.get(step.name),
        water_by="nothing" if flat else "fibre",
        liquor_l=found.liquor_l.get(step.name),
        say=say,
    )


def _doses(recipe: Recipe, grams: Mapping[str, Grams], fibre_g: float, kitchen: Kitchen) -> list[PlannedDose]:
    added = shares(recipe)
    doses = []
    for one in recipe.ingredients:
        mine = grams[one.name]
        portions = tuple(float(mine.aim * share) for share in added[one.name])
        substance = find(one.substance)
        doses.append(
            PlannedDose(
                ingredient=one.name,
                substance=one.substance,
                role=one.role,
                percent_wof=mine.percent_of(exact(fibre_g)),
                mass_g=mine.band(),
                weigh=weigh(ToWeigh(float(mine.aim), portions, one.role, substance, fibre_g), kitchen.scales),
                known=substance is not None,
                reckoned_on=_reckoned_on(recipe, one.dose),
            )
        )
    return doses


def _reckoned_on(recipe: Recipe, dose: Dose | None) -> ReckonedOn:
    """What a dose grows with, followed through "of ..." to a dose that stands by itself."""
    while isinstance(dose, ShareOf):
        dose = recipe.ingredient(dose.ingredient).dose
    if isinstance(dose, ShareOfFibre):
        return "fibre"
    return "bath" if isinstance(dose, PerBath) else "nothing"


def _vessels(steps: Sequence[PlannedStep], pots: Mapping[str, Pot | None]) -> tuple[PlannedVessel, ...]:
    """Letter the vessels by first use."""
    names = dict.fromkeys(name for step in steps for name in (step.vessel, step.into) if name is not None)
    return tuple(_vessel(i, name, pots.get(name)) for i, name in enumerate(names))


def _vessel(i: int, name: str, pot: Pot | None) -> PlannedVessel:
    letter = letter_of(i)
    if pot is None:
        return PlannedVessel(name, letter, "", None, "")
    return PlannedVessel(name, letter, pot.name, pot.volume_l, pot.material, pot.lid)
