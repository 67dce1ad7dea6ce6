"""No bath gets hotter than water boils here: every temperature of the plan is capped, and said so.

Knows no pots. The boiling point is `dyeing.boiling`, from a barometer when there is one, else from elevation.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dyesession.dyeing.boiling import WEATHER_C, boiling_point_at_c, boiling_point_c, hottest_workable_c
from dyesession.kitchen.model import Kitchen
from dyesession.plan.model import PlannedStep
from dyesession.recipe.model import Heat
from dyesession.units import show_temperature

BAROMETER_C = (
    0.3  # a kitchen barometer is good to about 1 kPa, and 1 kPa moves the boil by 0.277 °C; judgement
)
# Where the elevation is not known, sea level is taken; most kitchens lie below 1000 m: common practice, no
# source.
UNKNOWN_PLACE_C = 3.3


@dataclass(frozen=True)
class Boil:
    """The boiling point in this kitchen, its 90 % half-width, and the place in words."""

    boiling_c: float
    margin_c: float
    where: str


def boil_in(kitchen: Kitchen) -> Boil:
    """Reckon where water boils in a kitchen; raises `dyeing.limits.OutOfRange` for a place outside its
    tables.
    """
    if kitchen.station_pressure_kpa is not None:
        where = f"at {kitchen.station_pressure_kpa:.1f} kPa"
        return Boil(boiling_point_c(kitchen.station_pressure_kpa), BAROMETER_C, where)
    if kitchen.elevation_m is not None:
        return Boil(boiling_point_at_c(kitchen.elevation_m), WEATHER_C, f"at {kitchen.elevation_m:.0f} m")
    return Boil(boiling_point_at_c(0.0), UNKNOWN_PLACE_C, "at sea level")


def capped(steps: Sequence[PlannedStep], boil: Boil) -> tuple[tuple[PlannedStep, ...], list[str]]:
    """Cap every temperature two degrees below the boil; the sentences say where a figure was too high."""
    said: list[str] = []
    done: list[PlannedStep] = []
    for step in steps:
        heats = tuple(_capped(heat, boil) for heat in step.heat)
        for asked, given in zip(step.heat, heats, strict=True):
            if asked != given and asked.word is None and step.name == step.of:
                said.append(_sentence(step, asked, given, boil))
        done.append(replace(step, heat=heats))
    return tuple(done), said


def _capped(heat: Heat, boil: Boil) -> Heat:
    most_c = hottest_workable_c(boil.boiling_c)
    if heat.temperature_c is None or heat.temperature_c <= most_c:
        return heat
    return replace(heat, temperature_c=most_c)


def _sentence(step: PlannedStep, asked: Heat, given: Heat, boil: Boil) -> str:
    return (
        f"{step.name}: {show_temperature(asked.temperature_c or 0.0)} cannot be kept {boil.where}, where"
        " water boils at"
        f" {show_temperature(boil.boiling_c)}; use {show_temperature(given.temperature_c or 0.0)}."
    )
