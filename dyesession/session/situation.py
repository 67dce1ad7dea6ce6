"""The day's own situation, handed to `care` as plain data: what a command or a step would act in.

Pure; knows no recipe file, no screen. The planned twin of this stands in `plan`.
"""

from dataclasses import replace
from datetime import date

from dyesession.care import Content, Household, OtherVessel, Situation
from dyesession.plan.cautions import cooling_band_min
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.state import State, StepState, Vessel
from dyesession.substances import find

STILL_WARM_S = 30 * 60.0
"""A lidded kitchen pot stays within some 5 °C of its heat for half an hour off the ring: calculated for 10 L
with the lid on, 90 to 60 °C in 3.9 h (lumped model, own calculation)."""

STILL_HEATING_C = 5.0
"""A pot within this of the heat its step brings it to is said to be at it; our own choice, no source."""

_ACTIONS: dict[str, tuple[str, ...]] = {
    "strained": ("strains", "pours"),
    "pooled": ("pours",),
    "lifted": ("lifts",),
    "kept": ("keeps", "pours"),
    "discarded": ("discards", "pours"),
    "drawn": ("opens", "pours"),
    "added": ("weighs powder", "adds"),
}


def situation_of(state: State, command: e.Event, household: Household) -> Situation | None:
    """The situation of a command that may hurt; None for one that cannot."""
    actions = _ACTIONS.get(command.kind)
    vessel = state.vessel(getattr(command, "vessel", ""))
    if actions is None or vessel is None or _is_snippet(state, command):
        return None
    adding: tuple[Content, ...] = ()
    if isinstance(command, e.Added):
        adding = ((substance_of(state, command.ingredient), command.mass_g),)
        actions += _grinding(adding)
    made = _situation(state, vessel, actions, adding, household, command.kind)
    if isinstance(command, e.Drawn):
        days = _days_until(state, command.look_again)
        return replace(
            made, pouring=_poured(state, command), pouring_from=command.label, look_again_in_days=days
        )
    into = state.vessel(getattr(command, "into", ""))
    return replace(made, into=into.letter) if into is not None else made


def _days_until(state: State, day: str) -> float | None:
    """Days from today to a day written as "2026-03-20", below nought once it is over; None where none is told."""
    try:
        return float((date.fromisoformat(day) - state.instant.at.date()).days) if state.instant else None
    except ValueError:
        return None


def _poured(state: State, command: e.Drawn) -> tuple[Content, ...]:
    """What is in a kept bath: one kept today as the facts say, one of another day as the entry tells it."""
    kept = next((one.bath for one in state.kept if one.label == command.label), None)
    names = command.contents if kept is None else kept.liquor_of
    added = () if kept is None else kept.contents
    return (
        *((substance_of(state, one.ingredient), one.mass_g) for one in added),
        *((substance_of(state, name), None) for name in names),
    )


def _is_snippet(state: State, command: e.Event) -> bool:
    """Whether only a snippet is lifted: a gram or two on a thread, no armful of hot wet skein."""
    lot = state.lot(command.lot) if isinstance(command, e.Lifted) else None
    return lot is not None and lot.snippet


def moments_of_step(state: State, step: StepState, household: Household) -> tuple[Situation, ...]:
    """A step's own moments: as it begins with what is weighed and added, at its hottest, and as it ends."""
    vessel = state.vessel(step.plan.vessel) or Vessel(step.plan.vessel or step.name, "")
    left = step.plan.add[step.added :]
    adding = tuple((substance_of(state, one.ingredient), one.mass_g) for one in left)
    temperatures = [one.temperature_c for one in step.plan.heat if one.temperature_c is not None]
    begins = _situation(state, vessel, _beginning(step, adding), adding, household, step.name)
    volume_l = begins.volume_l if begins.volume_l is not None else step.plan.water_l or step.plan.liquor_l
    moments = [replace(begins, step=step.name, stage=step.plan.stage, volume_l=volume_l)]
    still_heated = any(one.kind in ("to", "hold") for one in step.plan.heat[step.segment :])
    if still_heated and any(one.kind == "to" for one in step.plan.heat):
        moments.append(replace(moments[0], actions=("heats",), temperature_c=max(temperatures)))
    if ending := _ENDINGS.get(step.plan.stage):
        last_c = temperatures[-1] if temperatures else begins.temperature_c
        end_c = None if any(one.overnight for one in step.plan.heat) else last_c
        moments.append(
            replace(
                moments[0],
                actions=ending,
                adding=(),
                contents=moments[0].contents + adding,
                temperature_c=end_c,
                ahead=end_c is not None and not _is_at(begins, step, end_c),
                cooling_min=cooling_band_min(end_c, volume_l),
            )
        )
    return tuple(moments)


def _is_at(begins: Situation, step: StepState, wanted_c: float) -> bool:
    """Whether a pot is known to be about as hot as that already: what it is heated to is not known yet."""
    heat = c.segment(step)
    rising = heat is not None and heat.kind == "to" and begins.temperature_how != "read"
    return not rising and begins.temperature_c is not None and begins.temperature_c >= wanted_c - STILL_HEATING_C


# How a stage ends: what is then done with a bath that may be hot.
_ENDINGS: dict[str, tuple[str, ...]] = {
    "strain": ("strains",),
    "rinse": ("rinses",),
    "scour": ("lifts",),
    "mordant": ("lifts",),
    "dye": ("lifts",),
    "modify": ("lifts",),
}


def _beginning(step: StepState, adding: tuple[Content, ...]) -> tuple[str, ...]:
    weighs = ("weighs powder", "adds") if adding else ()
    return weighs + _grinding(adding) + (("enters",) if step.plan.enter else ())


def _grinding(adding: tuple[Content, ...]) -> tuple[str, ...]:
    """Insects are sold whole and ground before they go in."""
    found = (find(name) for name, _ in adding)
    return ("grinds",) if any(one is not None and one.form == "insects" for one in found) else ()


def _situation(
    state: State,
    vessel: Vessel,
    actions: tuple[str, ...],
    adding: tuple[Content, ...],
    household: Household,
    step: str,
) -> Situation:
    running = state.running_in(vessel.name)
    temperature_c, how = temperature(state, vessel)
    volume_l = vessel.bath.volume_l if vessel.bath else (running.plan.water_l if running else None)
    return Situation(
        step=running.name if running else step,
        stage=running.plan.stage if running else "",
        actions=actions,
        vessel=vessel.name,
        letter=vessel.letter,
        material=vessel.material,
        volume_l=volume_l,
        capacity_l=vessel.capacity_l,
        temperature_c=temperature_c,
        temperature_how=how,
        contents=contents(state, vessel),
        adding=adding,
        other_vessels=tuple(
            OtherVessel(one.letter, contents(state, one), one.name, _free_l(one))
            for one in state.vessels
            if one.name != vessel.name and contents(state, one)
        ),
        household=household,
        burner=state.burner,
        indoors=state.indoors,
        lid_on=vessel.lid is True,
        cooling_min=cooling_band_min(temperature_c, volume_l),
        fibres=tuple(dict.fromkeys(one.kind for one in state.lots)),
        wof_percent=_shares(state, adding),
    )


def _free_l(vessel: Vessel) -> float | None:
    """Litres between the liquor and the brim, where facts say both."""
    if vessel.capacity_l is None or vessel.bath is None or vessel.bath.volume_l is None:
        return None
    return max(0.0, vessel.capacity_l - vessel.bath.volume_l)


def _shares(state: State, adding: tuple[Content, ...]) -> tuple[tuple[str, float], ...]:
    """Per cent of the fibre's weight, what of it went in earlier today counted in."""
    fibre_g = sum(one.mass_g for one in state.lots if not one.snippet)
    if not fibre_g:
        return ()
    went_in_g: dict[str, float] = {}
    for one in state.put_in:
        name = substance_of(state, one.ingredient)
        went_in_g[name] = went_in_g.get(name, 0.0) + one.mass_g
    return tuple(
        (name, 100 * (went_in_g.get(name, 0.0) + mass_g) / fibre_g)
        for name, mass_g in adding
        if mass_g is not None
    )


def contents(state: State, vessel: Vessel) -> tuple[Content, ...]:
    """Substances in a vessel with their grams; a strained liquor's own mass is not a fact."""
    if vessel.bath is None:
        return ()
    inside = {one.name: one.mass_g for one in state.dyestuffs if one.place == vessel.name}
    listed = [(substance_of(state, one.ingredient), one.mass_g) for one in vessel.bath.contents]
    liquor = [(substance_of(state, name), inside.get(name)) for name in vessel.bath.liquor_of]
    return (*listed, *liquor)


def substance_of(state: State, ingredient: str) -> str:
    """The substance behind a recipe's ingredient name."""
    return dict(state.substances).get(ingredient, ingredient)


def temperature(state: State, vessel: Vessel) -> tuple[float | None, str]:
    """How hot a vessel is as far as facts go: the last reading, else what it was brought to."""
    if vessel.temperature_c is not None and (_fresh(state, vessel) or vessel.reached_c is None):
        return vessel.temperature_c, "read"
    if vessel.reached_c is not None:
        return vessel.reached_c, "planned"
    step = state.running_in(vessel.name)
    return (c.held_at_c(step.plan, step.segment), "planned") if step and vessel.on_heat else (None, "planned")


def _fresh(state: State, vessel: Vessel) -> bool:
    """Whether the last reading of a vessel still tells how hot it is."""
    return vessel.temperature_s is not None and state.now_s - vessel.temperature_s <= STILL_WARM_S
