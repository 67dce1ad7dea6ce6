"""Sentences that warn before the day begins: substances, doses, the boil, jars, shares never added.

Knows no screens. Limits on iron stand in `care`; whatever is refused is refused here, before any dose is
said.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from dyesession import care
from dyesession.kitchen.model import Jar, Scale
from dyesession.plan.model import FibreLot, PlannedDose
from dyesession.plan.trouble import Refused
from dyesession.recipe.model import Ingredient, Recipe
from dyesession.substances import find, form_named, nearest
from dyesession.units import show_duration, show_mass, show_percent, show_range


def refuse(recipe: Recipe) -> None:
    """Raise `Refused` for the first ingredient that is never planned, with the reason and a safer way."""
    for one in recipe.ingredients:
        no = care.refusal(one.substance)
        if no is not None:
            raise Refused(f"{no.what} is refused: {no.reason}; instead, {no.safer}.")


def choices(recipe: Recipe) -> list[str]:
    """Ask about what is off until the dyer chooses it."""
    found = (care.needs_choice(one.substance) for one in recipe.ingredients)
    return [f"{one.text} Go on with it?" for one in found if one is not None]


def unknown_substances(ingredients: Sequence[Ingredient]) -> list[str]:
    """Say loudly which substances no hazard is known of."""
    return [_unknown(one) for one in ingredients if find(one.substance) is None and one.role != "water"]


def _unknown(one: Ingredient) -> str:
    near = nearest(one.substance)
    perhaps = f" (perhaps {near[0]} is meant)" if near else ""
    return (
        f'NOT KNOWN: nothing is known here of "{one.substance}"{perhaps}, so none of its hazards is shown:'
        " read its safety data sheet before the jar is opened."
    )


def no_scales(scales: Sequence[Scale]) -> list[str]:
    """Say that nothing can be weighed in a kitchen without scales."""
    if scales:
        return []
    return [
        "Your kitchen lists no scale, so how far a weighing may miss is not known: enter yours in the kitchen"
        ' file, for example [[scale]] with resolution = "1 g".'
    ]


WORTH_SAYING_MIN = 5.0  # less is lost in stirring and looking: common practice, no source


def few_burners(burners: int, later_min: float) -> list[str]:
    """Say by how much pots that take turns on the burners make the day longer."""
    if later_min < WORTH_SAYING_MIN:
        return []
    listed = "one burner" if burners == 1 else f"{burners} burners"
    return [
        f"Your kitchen lists {listed}, so pots take turns: the day is {show_duration(later_min)} longer than"
        " with a burner for each."
    ]


def swallowed_iron(ingredients: Sequence[Ingredient]) -> list[str]:
    """Say what to do at once when iron is swallowed; no number, for a plan is kept in a log."""
    found = (find(one.substance) for one in ingredients)
    if any(one is not None and one.has("iron") for one in found):
        return [f"Iron is in this plan. {care.first_aid_line('iron')}"]
    return []


def strong_iron(doses: Sequence[PlannedDose]) -> list[str]:
    """Warn of a dose above its limit, whatever form stands on the packet."""
    said = []
    for dose in doses:
        substance = find(dose.substance)
        limit = care.DOSE_LIMITS.get(substance.key) if substance is not None else None
        if limit is None or dose.percent_wof is None:
            continue
        form = form_named(dose.substance)
        percent = dose.percent_wof.aim * (1.0 if form is None else form.grams)
        if percent > limit.warned_above + 1e-9:
            planned = show_range(limit.planned_low, limit.planned_high, show_percent)
            said.append(
                f"{show_percent(percent)} of {dose.ingredient} is much: above"
                f" {show_percent(limit.warned_above)} it"
                f" hardens the fibre and it rots sooner; {planned} is usual ({limit.source})."
            )
    return said


def damp_sentence(lots: Sequence[FibreLot], doses: Sequence[PlannedDose]) -> list[str]:
    """Say what a damp weight would have given, where both weights are known."""
    if not any(lot.damp_mass_g is not None for lot in lots):
        return []
    dry_g = sum(lot.mass_g for lot in lots)
    damp_g = sum(lot.damp_mass_g or lot.mass_g for lot in lots)
    shares = [dose for dose in doses if dose.percent_wof is not None and dose.role == "mordant"] or list(
        doses
    )
    if not shares or damp_g <= dry_g:
        return []
    dose, over = shares[0], damp_g / dry_g
    return [
        f"{show_mass(dose.mass_g.aim)} of {dose.ingredient}, on {show_mass(dry_g)} air-dry; on"
        f" {show_mass(damp_g)} you"
        f" would give {show_mass(dose.mass_g.aim * over)}, {100 * (over - 1):.0f} % over."
    ]


def unused_shares(recipe: Recipe, shares: Mapping[str, Sequence[Fraction]]) -> list[str]:
    """Say which part of an ingredient the recipe weighs out but never adds."""
    left = {
        one.name: 1 - sum(shares[one.name], Fraction(0)) for one in recipe.ingredients if shares[one.name]
    }
    return [
        f"{share} of the {name} is never added by the recipe." for name, share in left.items() if share > 0
    ]


# Stages in which a vessel on the fibre's lane is a bath for fibre; a dyestuff may soak or rest alone.
FIBRE_BATHS = ("scour", "wet", "mordant", "dye", "modify", "rinse")


def empty_baths(recipe: Recipe) -> list[str]:
    """Say into which baths of the fibre's lane the recipe puts no fibre: lifted out, it would stay out."""
    return [
        f"The recipe puts no fibre into “{step.name}”; if it should go in, write enter = [\"fibre\"] in that step."
        for step in recipe.steps
        if step.lane == "fibre" and step.vessel and step.stage in FIBRE_BATHS and not step.enter
    ]


def jar_warnings(doses: Sequence[PlannedDose], jars: Sequence[Jar]) -> list[str]:
    """Say where a jar holds too little, or another form than the recipe doses."""
    said = []
    for dose in doses:
        mine = [jar for jar in jars if _same(jar.substance, dose.substance)]
        left = [jar.mass_left_g for jar in mine if jar.mass_left_g is not None]
        if left and len(left) == len(mine) and sum(left) < dose.mass_g.aim:
            said.append(
                f"{show_mass(dose.mass_g.aim)} of {dose.ingredient} is wanted and your jars hold"
                f" {show_mass(sum(left))}."
            )
        said.extend(_other_form(dose, jar) for jar in mine if _grams_for_one(jar, dose) != 1.0)
    return said


def _same(one: str, other: str) -> bool:
    a, b = find(one), find(other)
    return a is not None and b is not None and a.key == b.key


def _grams_for_one(jar: Jar, dose: PlannedDose) -> float:
    """Grams of what the recipe doses that one gram of the jar's form stands for."""
    packet = form_named(jar.form) or form_named(jar.substance)
    wanted = form_named(dose.substance)
    return (1.0 if packet is None else packet.grams) / (1.0 if wanted is None else wanted.grams)


def _other_form(dose: PlannedDose, jar: Jar) -> str:
    grams = _grams_for_one(jar, dose)
    packet = jar.form or jar.substance
    return (
        f"Your {jar.name} is {packet}: 1 g of it does the work of {grams:.2f} g of the recipe's"
        f" {dose.substance}, so"
        f" weigh {show_mass(dose.mass_g.aim / grams)} of it instead."
    )
