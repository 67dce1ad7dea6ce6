"""Where each dose and each price of a plan comes from, and what the ± of a weighing is made of.

Reckons with the plan's own parts: a scale's error is `dyeing/scales`, a stock's is `plan/weighing`.
"""

from dyesession.dyeing.scales import COVERAGE, REPEATABILITY_STEPS, tared_sd_g
from dyesession.kitchen.model import Scale
from dyesession.plan.doses import FOLLOWS_DEPTH
from dyesession.plan.explained import (
    ARITHMETIC,
    DEPTH_WORDS,
    Because,
    Explained,
    Worked,
    as_written,
    sentence,
)
from dyesession.plan.model import PlannedDose
from dyesession.plan.shopping import ToBuy, grams_for_one, is_of, price_text
from dyesession.plan.weighing import JUG_ERROR, MEASURE_ERROR, best_scale, sd_g
from dyesession.plan.words import percent, plus_minus
from dyesession.recipe.model import Ingredient
from dyesession.substances import find
from dyesession.units import (
    Flat,
    PerBath,
    ShareOf,
    ShareOfFibre,
    show_figure,
    show_mass,
    show_percent,
    show_range,
)

NIST = "NIST TN 1297, section 4 (rectangular error of a display step)"


def explain_dose(worked: Worked, ingredient: str) -> Explained:
    """What a dose is a share of, its range, how it is measured, what that may miss it by, how lots differ."""
    dose = worked.plan.dose(ingredient)
    because = [
        *_of_what(worked, dose),
        *_range(worked, dose),
        *_measuring(worked, dose),
        *_lots(dose),
        *_jars(worked, dose),
    ]
    if dose.weigh.sd_g:
        half = COVERAGE * dose.weigh.sd_g
        return Explained(
            f"{ingredient}: {show_mass(dose.mass_g.aim)} {plus_minus(half)}, planned", tuple(because)
        )
    return Explained(f"{ingredient}: {show_mass(dose.mass_g.aim)}, planned", tuple(because))



def _of_what(worked: Worked, dose: PlannedDose) -> list[Because]:
    one = worked.recipe.ingredient(dose.ingredient)
    written = as_written(worked.recipe, "ingredient", one.name, "dose") or "no dose"
    because = [Because(f"The recipe gives {one.name} as “{written}”.", worked.remark(f"{one.name}.dose"))]
    sum_of = _sum(worked, dose, one)
    if sum_of:
        because.append(Because(sum_of, ARITHMETIC))
    if one.role in FOLLOWS_DEPTH and worked.depth != "aim":
        end = {"low": "least", "high": "most"}[worked.depth]
        because.append(
            Because(
                f"A {DEPTH_WORDS[worked.depth]} colour was asked for: the {end} of its range.", "your choice"
            )
        )
    return because


def _sum(worked: Worked, dose: PlannedDose, one: Ingredient) -> str:
    grams = show_mass(dose.mass_g.aim)
    match one.dose:
        case ShareOfFibre() if dose.percent_wof is not None and dose.percent_wof.aim > 0:
            base_g = dose.mass_g.aim * 100.0 / dose.percent_wof.aim
            return f"{show_percent(dose.percent_wof.aim)} of {show_mass(base_g)} of fibre, washed and air-dry (WOF), is {grams}."
        case ShareOf(ingredient=other):
            return f"Reckoned on the {show_mass(worked.plan.dose(other).mass_g.aim)} of {other}, that is {grams}."
        case PerBath():
            return f"Reckoned on the litres of the baths it goes into, that is {grams}."
        case Flat():
            return f"{grams}, whatever the fibre weighs."
    return ""


def _range(worked: Worked, dose: PlannedDose) -> list[Because]:
    band = dose.mass_g
    if band.low == band.high:
        return []
    ends = show_range(band.low, band.high, show_mass)
    of = ""
    if dose.percent_wof is not None:
        of = f", {show_range(dose.percent_wof.low, dose.percent_wof.high, show_percent)} WOF"
    source = worked.remark(
        f"{dose.ingredient}.least"
        if f"{dose.ingredient}.least" in worked.remarks
        else f"{dose.ingredient}.most"
    )
    return [Because(f"The recipe is in use from {ends}{of}: its own range, no error.", source)]


def _measuring(worked: Worked, dose: PlannedDose) -> list[Because]:
    how, scales = dose.weigh.how, worked.kitchen.scales
    if how == "not weighed":
        return []
    if how == "no scale" or not scales:
        return [
            Because(f"{sentence(dose.weigh.say)} So it has no ± yet.", "your kitchen file lists no scale")
        ]
    taken_g = dose.weigh.take_g if dose.weigh.take_g is not None else dose.mass_g.aim
    because = _of_scale(best_scale(dose.mass_g.aim, scales), taken_g)
    if how in ("stock liquor", "stock solution"):
        because.insert(0, Because(sentence(dose.weigh.say), "worked out from your scale"))
        because += _of_stock(dose, taken_g, best_scale(dose.mass_g.aim, scales))
    elif how == "larger lot":
        because.append(Because(sentence(dose.weigh.say), "worked out from your scale"))
    return because


def _of_scale(scale: Scale, mass_g: float) -> list[Because]:
    """What one tared weighing on this scale may miss by, part by part."""
    step, total = COVERAGE * tared_sd_g(scale.resolution_g), COVERAGE * sd_g(mass_g, scale)
    own = scale.repeatability_g is not None
    repeat_g = (
        scale.repeatability_g
        if scale.repeatability_g is not None
        else REPEATABILITY_STEPS * scale.resolution_g
    )
    return [
        Because(
            f"Your {scale.name} shows steps of {show_mass(scale.resolution_g)}; a tared weighing rounds twice: {plus_minus(step)}.",
            NIST,
        ),
        Because(
            f"Weighed again it scatters by {plus_minus(COVERAGE * repeat_g).removeprefix('± ')} either way"
            + ("." if own else ", taken as half a step."),
            "your kitchen file" if own else "judgement; weigh one thing ten times to know yours",
        ),
        Because(
            f"Together (root of the sum of squares) {plus_minus(total)} on {show_mass(mass_g)}: two standard deviations, "
            "about 95 weighings in a hundred. A kitchen scale is not verified: that is the least it may miss by.",
            ARITHMETIC,
        ),
    ]


def _of_stock(dose: PlannedDose, taken_g: float, scale: Scale) -> list[Because]:
    weighed = COVERAGE * sd_g(taken_g, scale) / taken_g if taken_g else 0.0
    total = COVERAGE * (dose.weigh.sd_g or 0.0) / dose.mass_g.aim
    return [
        Because(
            f"Making up to a jug's mark: ± {percent(JUG_ERROR)}; measuring the dose out: ± {percent(MEASURE_ERROR)}."
        ),
        Because(
            f"With ± {show_percent(100 * weighed)} from the weighing that is ± {percent(total)} of the dose in all.",
            ARITHMETIC,
        ),
    ]


def _lots(dose: PlannedDose) -> list[Because]:
    substance = find(dose.substance)
    if substance is None:
        return [
            Because(
                f"Nothing is known here of “{dose.substance}”: read its safety data sheet.",
                "not in our tables",
            )
        ]
    vary = substance.lots_vary
    return [
        Because(
            f"One lot of {substance.word} may be {show_figure(vary.value)} {vary.unit} stronger or weaker than the next. No scale "
            "mends that; a snippet tells.",
            vary.source,
        )
    ]


def _jars(worked: Worked, dose: PlannedDose) -> list[Because]:
    found = []
    for jar in worked.kitchen.jars:
        if is_of(jar, dose) and grams_for_one(jar, dose) != 1.0:
            grams = dose.mass_g.aim / grams_for_one(jar, dose)
            found.append(
                Because(
                    f"Your jar holds it as {jar.form or jar.substance}: {show_mass(grams)} of that does the same work.",
                    "molar masses, beside the substance in our tables",
                )
            )
    return found


def explain_price(item: ToBuy) -> Explained:
    """What a dose takes out of its jar and what that costs."""
    because = [
        Because(
            f"The day takes {show_mass(item.takes_g)} out of the jar; a stock takes more than its dose.",
            "the weighing list",
        )
    ]
    if item.left_g is not None:
        because.append(Because(f"{show_mass(item.left_g)} is left in it.", "your kitchen file"))
    if item.price_per_100_g is not None:
        because.append(
            Because(
                f"100 g cost {price_text(item.price_per_100_g)}, in whatever money you wrote it.",
                "your kitchen file",
            )
        )
    else:
        because.append(Because("No price is written at the jar.", "your kitchen file"))
    shown = price_text(item.day_price) if item.day_price is not None else "no price"
    return Explained(f"{item.ingredient}: {show_mass(item.takes_g)}, {shown}", tuple(because))
