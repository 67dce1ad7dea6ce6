"""Where the water of a bath, the time of a step and the boil of a plan come from.

Reckons with the plan's own parts: minutes are `plan/minutes` and `plan/timetable`, the boil is `plan/boil`.
"""

from dyesession.dyeing import heating
from dyesession.dyeing.boiling import CAP_BELOW_BOIL_C, WEATHER_C
from dyesession.dyeing.cooling import COOLING_FACTOR
from dyesession.dyeing.retention import spent_held
from dyesession.plan.boil import UNKNOWN_PLACE_C
from dyesession.plan.explained import ARITHMETIC, PRACTICE, Because, Explained, Worked, as_written, sentence
from dyesession.plan.minutes import NIGHT_MIN, strongest_w
from dyesession.plan.model import PlannedStep, TimetableRow
from dyesession.plan.pots import FILL_SHARE
from dyesession.plan.timetable import BEGIN_MIN, END_MIN
from dyesession.plan.words import litres, percent
from dyesession.recipe.model import Heat
from dyesession.units import show_duration, show_figure, show_mass, show_temperature

BOILING = "standard atmosphere; our fit to the IAPWS-IF97 saturation line"
GRAMS_PER_KG = 1000.0


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
        because.append(Because(sentence(bath.say), "worked out from your pot"))
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
    written = as_written(worked.recipe, "step", planned.of, "water")
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
    if heat.kind == "cool_to" and worked.kitchen.own.cooling_says:
        return _own_cooling(worked, at)
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


def _own_cooling(worked: Worked, at: str) -> Because:
    own = worked.kitchen.own
    return Because(
        f"Cooling to {at} off the heat: the table for open pots, times {show_figure(own.cooling)}, by your own pots. "
        f"{sentence(own.cooling_says)}",
        f"your own numbers, {own.cooling_from}; the table: a simulation of a 28 cm stainless pot in a 20 °C room (derived)",
    )


def _rise(worked: Worked, heat: Heat, at: str, source: str) -> Because:
    asked = f"over {show_duration(heat.minutes)}" if heat.minutes is not None else "in the usual time"
    own = worked.kitchen.own
    if own.net_power_w is not None:
        return Because(
            f"Up to {at} {asked}, but no faster than your own stove warms a bath: {own.power_says}.",
            f"{source}; your own number, {own.power_from}",
        )
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
