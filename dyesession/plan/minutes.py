"""How long a step stands on or off the heat: rises, holds, cooling, nights.

Knows no order of steps. Heating: `dyeing.heating`; cooling: `dyeing.cooling`. A night counts as twelve hours
and tap water as 15 °C: both common practice, no source.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dyesession.dyeing.cooling import TABLE_C, cooling_min
from dyesession.dyeing.heating import (
    SHARE_REACHING_POT,
    WOOL_RAMP_MIN,
    heat_capacity_kj_k,
    heat_kj,
    net_power_w,
)
from dyesession.kitchen.model import Burner, Own
from dyesession.plan.model import PlannedStep
from dyesession.recipe.model import Heat

NIGHT_MIN = 12 * 60.0
TAP_C = 15.0
USUAL_RISE_MIN = sum(WOOL_RAMP_MIN) / len(WOOL_RAMP_MIN)
USUAL_WATER_L = 10.0  # for cooling, where no water is known; the middle of the table in `dyeing.cooling`
NOTHING_LEARNED = Own()
WATTS_PER_KW = 1000.0
SECONDS_PER_MIN = 60.0
STOVES: Mapping[str, str] = {
    "gas": "gas",
    "camp stove": "gas",
    "electric": "electric coil",
    "induction": "induction",
}


@dataclass(frozen=True)
class PotMinutes:
    """Minutes a pot stands without the dyer: before it is lit, on its burner, and off it afterwards."""

    before_min: float = 0.0
    heated_min: float = 0.0
    after_min: float = 0.0

    @property
    def total_min(self) -> float:
        """All of them together."""
        return self.before_min + self.heated_min + self.after_min


def pot_minutes(
    steps: Sequence[PlannedStep], burners: Sequence[Burner], own: Own = NOTHING_LEARNED
) -> dict[str, PotMinutes]:
    """Minutes each step takes without the dyer; steps in an order in which they can be done.

    What days have taught of stove and pots takes the place of the burner's rating and of the cooling table.
    """
    power_w = own.net_power_w or strongest_w(burners)
    warm: dict[str, float] = {}
    found: dict[str, PotMinutes] = {}
    for step in steps:
        vessel = step.vessel or ""
        start_c = TAP_C if step.fresh_water else warm.get(vessel, TAP_C)
        minutes, warm[vessel] = _minutes(step, start_c, power_w, own.cooling)
        found[step.name] = _on_and_off(step, minutes)
        if step.into is not None:
            warm[step.into] = warm[vessel]
    return found


ON_A_BURNER = ("to", "hold")


def _on_and_off(step: PlannedStep, minutes: Sequence[float]) -> PotMinutes:
    """A pot keeps its burner from its first rise or hold to the end of its last, a pause between included."""
    lit = [i for i, heat in enumerate(step.heat) if heat.kind in ON_A_BURNER]
    if not lit or step.vessel is None:
        return PotMinutes(before_min=sum(minutes))
    first, last = lit[0], lit[-1] + 1
    return PotMinutes(sum(minutes[:first]), sum(minutes[first:last]), sum(minutes[last:]))


def strongest_w(burners: Sequence[Burner]) -> float | None:
    """Power that reaches a pot from the strongest burner whose power and kind are known, watts."""
    known = [
        net_power_w(STOVES[one.kind], one.power_w)
        for one in burners
        if one.power_w is not None and STOVES.get(one.kind) in SHARE_REACHING_POT
    ]
    return max(known, default=None)


def _minutes(
    step: PlannedStep, start_c: float, power_w: float | None, cooling: float
) -> tuple[list[float], float]:
    """Minutes of each stretch of a step, and the temperature at its end."""
    minutes, now_c = [], start_c
    for heat in step.heat:
        minutes.append(_one(heat, now_c, step.water_l, power_w, cooling))
        if heat.temperature_c is not None:
            now_c = heat.temperature_c
        elif heat.overnight:
            now_c = TAP_C
    return minutes, now_c


def _one(heat: Heat, now_c: float, water_l: float | None, power_w: float | None, cooling: float) -> float:
    if heat.kind == "to":
        return _rise(heat, now_c, water_l, power_w)
    if heat.kind == "cool_to":
        return cooling * _cooling(heat, now_c, water_l)
    return NIGHT_MIN if heat.overnight else heat.minutes or 0.0


def _rise(heat: Heat, now_c: float, water_l: float | None, power_w: float | None) -> float:
    """Minutes of a rise: what the recipe says, but no less than the burner needs with nothing lost."""
    wanted = heat.minutes
    target_c = heat.temperature_c or now_c
    if target_c <= now_c:
        return wanted or 0.0
    if power_w is None or not water_l:
        return USUAL_RISE_MIN if wanted is None else wanted
    need_kj = heat_kj(heat_capacity_kj_k(water_l), now_c, target_c)
    least = need_kj * WATTS_PER_KW / power_w / SECONDS_PER_MIN
    return max(least, wanted or 0.0)


def _cooling(heat: Heat, now_c: float, water_l: float | None) -> float:
    """Minutes an open pot takes to cool, within the temperatures the table covers."""
    hottest, coldest = TABLE_C[0], TABLE_C[-1]
    from_c = min(max(now_c, coldest), hottest)
    to_c = min(max(heat.temperature_c or from_c, coldest), hottest)
    return cooling_min(from_c, to_c, water_l or USUAL_WATER_L, lid_on=False) if to_c < from_c else 0.0
