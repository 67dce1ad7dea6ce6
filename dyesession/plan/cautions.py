"""The safety reminders of each planned step: the planned situation handed to `care`, which knows the hazards.

Knows no hazards itself. Three moments of a step are looked at: as it begins, at its hottest, as it ends.
"""

from collections.abc import Mapping, Sequence

from dyesession import care
from dyesession.dyeing.cooling import COOLING_FACTOR, TABLE_C, cooling_min
from dyesession.kitchen.model import Burner, Kitchen
from dyesession.plan.minutes import TAP_C
from dyesession.plan.model import PlannedDose, PlannedReminder, PlannedStep, PlannedVessel
from dyesession.recipe.model import Recipe
from dyesession.substances import find

COOL_C = 40.0  # the end of `Situation.cooling_min`
WET_HANDLING = ("scour", "mordant", "dye", "modify")  # stages that end with fibre lifted from the bath
BURNER_WORDS = {"gas": "gas ring"}


class Day:
    """What the planned day holds that every situation needs, and what stands in each vessel so far."""

    def __init__(
        self,
        recipe: Recipe,
        kitchen: Kitchen,
        doses: Sequence[PlannedDose],
        vessels: Sequence[PlannedVessel],
        fibres: Sequence[str],
    ) -> None:
        self._kitchen = kitchen
        self._substance = {one.name: one.substance for one in recipe.ingredients}
        self._percent = tuple(
            (one.substance, one.percent_wof.aim) for one in doses if one.percent_wof is not None
        )
        self._vessels = {one.name: one for one in vessels}
        self._fibres = tuple(dict.fromkeys(fibres))
        self._contents: dict[str, tuple[care.Content, ...]] = {}
        self._warm: dict[str, float] = {}

    def reminders(self, step: PlannedStep) -> tuple[PlannedReminder, ...]:
        """Return what to bear in mind at a step, worst first; steps are handed over in the order they are
        done.
        """
        vessel = step.vessel or ""
        if step.fresh_water:
            self._contents[vessel], self._warm[vessel] = (), TAP_C
        moments = self._moments(step)
        self._after(step)
        return tuple(
            PlannedReminder(step.name, one.trigger, one.severity, one.text, one.source, one.private)
            for one in care.reminders_over(moments)
        )

    def _moments(self, step: PlannedStep) -> list[care.Situation]:
        start_c = self._warm.get(step.vessel or "", TAP_C)
        temperatures = [
            start_c,
            *(heat.temperature_c for heat in step.heat if heat.temperature_c is not None),
        ]
        moments = [self._situation(step, _beginning(step, self._substance), start_c, adding=True)]
        if any(heat.kind == "to" for heat in step.heat):
            moments.append(self._situation(step, ("heats",), max(temperatures), adding=True))
        ending = _ending(step)
        if ending:
            moments.append(self._situation(step, ending, _end_c(step, temperatures[-1]), adding=False))
        return moments

    def _situation(
        self, step: PlannedStep, actions: tuple[str, ...], temperature_c: float, *, adding: bool
    ) -> care.Situation:
        vessel = self._vessels.get(step.vessel or "")
        added = self._added(step)
        inside = self._contents.get(step.vessel or "", ())
        burner, indoors = heated_on(self._kitchen)
        return care.Situation(
            step=step.name,
            stage=step.stage,
            actions=actions,
            vessel="pot" if vessel is None else vessel.name,
            letter="A" if vessel is None else vessel.letter,
            material="" if vessel is None else vessel.material,
            volume_l=step.water_l or step.liquor_l,
            capacity_l=None if vessel is None else vessel.capacity_l,
            temperature_c=temperature_c,
            contents=inside if adding else inside + added,
            adding=added if adding else (),
            other_vessels=self._others(step.vessel or ""),
            into=self._letter(step.into),
            household=self._kitchen.household,
            burner=burner or "",
            indoors=indoors is not False,
            lid_on=vessel is not None and vessel.lid is True,
            wof_percent=self._percent,
            fibres=self._fibres,
            cooling_min=cooling_band_min(temperature_c, step.water_l),
        )

    def _letter(self, vessel: str | None) -> str:
        found = self._vessels.get(vessel or "")
        return "" if found is None else found.letter

    def _added(self, step: PlannedStep) -> tuple[care.Content, ...]:
        return tuple((self._substance[one.ingredient], one.mass_g) for one in step.add)

    def _others(self, vessel: str) -> tuple[care.OtherVessel, ...]:
        return tuple(
            care.OtherVessel(self._vessels[name].letter, contents, name)
            for name, contents in self._contents.items()
            if contents and name != vessel and name in self._vessels
        )

    def _after(self, step: PlannedStep) -> None:
        """Note what stands where once the step is over."""
        vessel = step.vessel or ""
        held = self._contents.get(vessel, ()) + self._added(step)
        self._contents[vessel] = held
        temperatures = [heat.temperature_c for heat in step.heat if heat.temperature_c is not None]
        self._warm[vessel] = _end_c(
            step, temperatures[-1] if temperatures else self._warm.get(vessel, TAP_C)
        )
        if step.into is not None:
            self._contents[step.into] = self._contents.get(step.into, ()) + held
            self._warm[step.into] = self._warm[vessel]


def stove_refused(kitchen: Kitchen) -> str | None:
    """Why this kitchen's stove is refused, or None: a fuel burner under a roof."""
    for burner in kitchen.burners:
        refused = care.heat_refusal(BURNER_WORDS.get(burner.kind, burner.kind), burner.indoors)
        if refused is not None:
            return refused.text
    return None


def pot_rings(kitchen: Kitchen) -> tuple[Burner, ...]:
    """The rings a pot can stand on: a microwave oven counts only where there is nothing else."""
    return tuple(one for one in kitchen.burners if one.kind != "microwave") or kitchen.burners


def heated_on(kitchen: Kitchen) -> tuple[str | None, bool | None]:
    """The kind of ring the pots of this kitchen stand on, in the words of `care`, and whether under a roof."""
    rings = pot_rings(kitchen)
    if not rings:
        return None, None
    return BURNER_WORDS.get(rings[0].kind, rings[0].kind), rings[0].indoors


def _beginning(step: PlannedStep, substance: Mapping[str, str]) -> tuple[str, ...]:
    actions = ("weighs powder", "adds") if step.add else ()
    found = (find(substance[one.ingredient]) for one in step.add)
    grinds = any(one is not None and one.form == "insects" for one in found)
    return actions + (("grinds",) if grinds else ()) + (("enters",) if step.enter else ())


def _ending(step: PlannedStep) -> tuple[str, ...]:
    if step.stage == "strain":
        return ("strains",)
    if step.stage == "rinse":
        return ("rinses",)
    return ("lifts",) if step.stage in WET_HANDLING and step.enter else ()


def _end_c(step: PlannedStep, last_c: float) -> float:
    """Temperature at the end: a night off the heat leaves a bath cold."""
    return TAP_C if any(heat.overnight for heat in step.heat) else last_c


def cooling_band_min(temperature_c: float | None, water_l: float | None) -> tuple[float, float] | None:
    """Minutes an open pot takes down to 40 °C, low and high, where the table covers it."""
    if not water_l or temperature_c is None or not COOL_C < temperature_c <= TABLE_C[0]:
        return None
    minutes = cooling_min(temperature_c, COOL_C, water_l, lid_on=False)
    return minutes / COOLING_FACTOR, minutes * COOLING_FACTOR
