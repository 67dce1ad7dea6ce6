"""Where each figure of a plan comes from, and what its ± is made of: sentences, each with its own source.

Reckons with the plan's own parts and adds no figure of its own. A source is a book, paper or table, or says
`common practice, no source`, or names the dyer's own file.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from dyesession.dyeing import heating
from dyesession.dyeing.boiling import CAP_BELOW_BOIL_C, WEATHER_C
from dyesession.dyeing.cooling import COOLING_FACTOR
from dyesession.dyeing.retention import spent_held
from dyesession.dyeing.scales import COVERAGE, REPEATABILITY_STEPS, tared_sd_g
from dyesession.kitchen.model import Kitchen, Scale
from dyesession.plan.boil import UNKNOWN_PLACE_C
from dyesession.plan.doses import FOLLOWS_DEPTH, Depth
from dyesession.plan.minutes import NIGHT_MIN, strongest_w
from dyesession.plan.model import Plan, PlannedDose, PlannedStep, TimetableRow
from dyesession.plan.pots import FILL_SHARE
from dyesession.plan.shopping import ToBuy, grams_for_one, is_of, price_text
from dyesession.plan.timetable import BEGIN_MIN, END_MIN
from dyesession.plan.weighing import JUG_ERROR, MEASURE_ERROR, best_scale, sd_g
from dyesession.plan.words import litres, percent, plus_minus
from dyesession.recipe.model import Heat, Ingredient, Recipe
from dyesession.substances import find
from dyesession.units import (
    Flat,
    PerBath,
    ShareOf,
    ShareOfFibre,
    show_duration,
    show_figure,
    show_mass,
    show_percent,
    show_range,
    show_temperature,
)

PRACTICE = "common practice, no source"
ARITHMETIC = "arithmetic"
NIST = "NIST TN 1297, section 4 (rectangular error of a display step)"
BOILING = "standard atmosphere; our fit to the IAPWS-IF97 saturation line"
GRAMS_PER_KG = 1000.0
DEPTH_WORDS: Mapping[Depth, str] = {"low": "paler", "aim": "usual", "high": "deeper"}


@dataclass(frozen=True)
class Because:
    """One reason, and where it comes from."""

    says: str
    source: str = PRACTICE


@dataclass(frozen=True)
class Explained:
    """A figure, and everything behind it."""

    figure: str
    because: tuple[Because, ...]

    def lines(self) -> list[str]:
        """The same as plain lines, each source under its sentence."""
        found = [self.figure]
        for one in self.because:
            found += ["", one.says, f"    ({one.source})"]
        return found


@dataclass(frozen=True)
class Worked:
    """A plan and all it was made of. `remarks` is what the recipe's file says behind its figures."""

    plan: Plan
    recipe: Recipe
    kitchen: Kitchen
    depth: Depth = "aim"
    remarks: Mapping[str, str] = field(default_factory=dict)

    def remark(self, name: str) -> str:
        """The source of a recipe's figure: the recipe, and what stands behind the figure in its file."""
        beside = self.remarks.get(name, "")
        recipe = (
            f"the recipe ({self.recipe.source})"
            if self.recipe.source
            else "the recipe, which names no source"
        )
        return f"{recipe}; behind it in the file: “{beside}”" if beside else recipe


# Doses


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


def _written(recipe: Recipe, part: str, name: str, key: str) -> str:
    """A figure as the recipe's file writes it."""
    tables: Any = recipe.document.get(part, ())
    found = next((one for one in tables if isinstance(one, Mapping) and one.get("name") == name), {})
    return str(found.get(key, ""))


def _of_what(worked: Worked, dose: PlannedDose) -> list[Because]:
    one = worked.recipe.ingredient(dose.ingredient)
    written = _written(worked.recipe, "ingredient", one.name, "dose") or "no dose"
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
            Because(f"{_sentence(dose.weigh.say)} So it has no ± yet.", "your kitchen file lists no scale")
        ]
    taken_g = dose.weigh.take_g if dose.weigh.take_g is not None else dose.mass_g.aim
    because = _of_scale(best_scale(dose.mass_g.aim, scales), taken_g)
    if how in ("stock liquor", "stock solution"):
        because.insert(0, Because(_sentence(dose.weigh.say), "worked out from your scale"))
        because += _of_stock(dose, taken_g, best_scale(dose.mass_g.aim, scales))
    elif how == "larger lot":
        because.append(Because(_sentence(dose.weigh.say), "worked out from your scale"))
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


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


# Water


def explain_bath(worked: Worked, step: str) -> Explained:
    """What a bath is a share of, and what the pot takes of it."""
    bath = next(one for one in worked.plan.baths if one.step == step)
    planned = worked.plan.step(step)
    because = [*_water_asked(worked, planned)]
    ratio = f"{litres(bath.water_l)} on {show_mass(bath.water_l / bath.ratio_l_per_kg * GRAMS_PER_KG)} of fibre is 1:{bath.ratio_l_per_kg:.0f}."
    because.append(Because(ratio, ARITHMETIC))
    if bath.capacity_l is not None:
        because.append(
            Because(
                f"A pot is filled to two thirds: {litres(bath.capacity_l * FILL_SHARE)} of the {bath.pot}'s {litres(bath.capacity_l)}."
            )
        )
    else:
        because.append(
            Because(
                "No pot of your kitchen is known for it, so nothing is said of whether it fits.",
                "your kitchen file",
            )
        )
    if bath.say:
        because.append(Because(_sentence(bath.say), "worked out from your pot"))
    strained = next((one for one in worked.plan.steps if one.stage == "strain" and step in one.after), None)
    if strained is not None and strained.liquor_l is not None:
        because.append(_through_sieve(strained))
    because.append(
        Because(
            "Pour to the mark of your jug: no ± is reckoned here, the strength is counted by what you read later."
        )
    )
    return Explained(f"{step}: {litres(bath.water_l)} in the {bath.vessel}, planned", tuple(because))


def _water_asked(worked: Worked, planned: PlannedStep) -> list[Because]:
    written = _written(worked.recipe, "step", planned.of, "water")
    if written:
        return [
            Because(f"The recipe asks for “{written}” at {planned.of}.", worked.remark(f"{planned.of}.water"))
        ]
    ratio = show_figure(worked.recipe.liquor_ratio)
    return [
        Because(
            f"The recipe works at {ratio} L of bath to the kilogram of fibre.", worked.remark("liquor_ratio")
        )
    ]


def _through_sieve(strained: PlannedStep) -> Because:
    held = spent_held("drained")
    return Because(
        f"About {litres(strained.liquor_l or 0.0)} of it comes through the sieve: spent dyestuff, well drained, "
        f"keeps {show_figure(held.centre)} times its bone-dry weight the first time, "
        f"{show_figure(held.low)} to {show_figure(held.high)} by how it drains.",
        held.source,
    )


# Times


def explain_row(worked: Worked, row: TimetableRow) -> Explained:
    """What a step's time is made of: hands, heating, holding, cooling."""
    step = worked.plan.step(row.step)
    begin, end = BEGIN_MIN[step.stage], END_MIN.get(step.stage, 0.0)
    hands = f"{show_duration(begin)} of your hands to begin" + (
        f", {show_duration(end)} to end it." if end else "."
    )
    because = [Because(hands), *(_heat(worked, step, one) for one in step.heat)]
    if step.judge is not None:
        least, most = show_duration(step.judge.least_min), show_duration(step.judge.most_min)
        because.append(
            Because(
                f"Your eye may end it from {least} to {most} after the hold began.",
                worked.remark(f"{step.of}.judge"),
            )
        )
    if row.critical:
        because.append(
            Because("A delay here delays the end of the day: nothing else would wait for it.", ARITHMETIC)
        )
    if step.say:
        because.append(Because(step.say, "the recipe"))
    shown = f"{row.step}: {show_duration(row.end_min - row.start_min)}, planned"
    return Explained(shown, tuple(because))


def _heat(worked: Worked, step: PlannedStep, heat: Heat) -> Because:
    source = worked.remark(f"{step.of}.heat")
    at = show_temperature(heat.temperature_c or 0.0)
    if heat.kind == "to":
        return _rise(worked, heat, at, source)
    if heat.kind == "cool_to":
        return Because(
            f"Cooling to {at} off the heat: from a table for open pots, good to a factor of {show_figure(COOLING_FACTOR)}.",
            "a simulation of a 28 cm stainless pot in a 20 °C room (derived)",
        )
    if heat.overnight:
        return Because(
            f"Left overnight, counted as {show_duration(NIGHT_MIN)}.", f"{source}; the hours: {PRACTICE}"
        )
    return Because(
        f"{'Kept' if heat.kind == 'hold' else 'Rests'} for {show_duration(heat.minutes or 0.0)}.", source
    )


def _rise(worked: Worked, heat: Heat, at: str, source: str) -> Because:
    asked = f"over {show_duration(heat.minutes)}" if heat.minutes is not None else "in the usual time"
    power_w = strongest_w(worked.kitchen.burners)
    if power_w is None:
        return Because(f"Up to {at} {asked}; how strong your ring is, nobody has told.", source)
    return Because(
        f"Up to {at} {asked}, but no faster than the {power_w:.0f} W that reach the pot from your strongest ring.",
        f"{source}; the share that reaches a pot: {_weak_share()}",
    )


def _weak_share() -> str:
    shares = ", ".join(f"{name} {percent(share)}" for name, share in heating.SHARE_REACHING_POT.items())
    return f"{shares} (a blog quoting US DOE tests: weak)"


def explain_boil(worked: Worked) -> Explained:
    """Where water boils in this kitchen, and how sure that is."""
    plan, kitchen = worked.plan, worked.kitchen
    if kitchen.station_pressure_kpa is not None:
        place = Because(
            f"Your barometer says {kitchen.station_pressure_kpa:.1f} kPa; it is taken as good to 1 kPa.",
            "judgement",
        )
    elif kitchen.elevation_m is not None:
        place = Because(
            f"Your kitchen lies at {kitchen.elevation_m:.0f} m; the weather moves the boil by {show_figure(WEATHER_C)} °C either way.",
            f"your kitchen file; {BOILING}",
        )
    else:
        place = Because(
            f"Nobody has told how high you live, so sea level is taken: most kitchens lie lower than 1000 m, {show_figure(UNKNOWN_PLACE_C)} °C.",
        )
    cap = Because(
        f"No step asks for more than {show_figure(CAP_BELOW_BOIL_C)} °C under the boil.", "our own choice"
    )
    shown = f"Water boils here at about {plan.boiling_c:.0f} ± {plan.boiling_margin_c:.0f} °C"
    return Explained(shown, (place, Because("From the air pressure to the boiling point.", BOILING), cap))


# Prices


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
