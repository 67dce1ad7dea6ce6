"""Water for every bath: what the recipe wants, what the pots take, what straining leaves of it.

Knows no doses but the grams of dyestuff that hold liquor back (`dyeing.retention`). A pot is filled to two
thirds; below 1:15 fibre cannot be moved freely: both common practice, no source.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from dyesession.dyeing.retention import held_l, spent_held
from dyesession.kitchen.model import Pot
from dyesession.plan.doses import Grams
from dyesession.plan.fit import LEAST_RATIO, Filled, Wish, planned_bath
from dyesession.plan.model import PlannedBath, PlannedStep
from dyesession.plan.pots import fill_l
from dyesession.recipe.model import Recipe, Step
from dyesession.substances import find
from dyesession.units import WaterPerKg

GRAMS_PER_KG = 1000.0
WORTH_SAYING_L = 0.1  # a jug poured by eye is no nearer: common practice, no source

OWN_WATER = ("scour", "wet", "rinse")  # a bath that nothing else is done in
DRY_STAGES = ("rest", "dry")
LIQUOR_STAGES = ("soak", "extract")


@dataclass(frozen=True)
class Waters:
    """Litres for each bath of the plan, for each straining, and for topping up strained liquor."""

    water_l: Mapping[str, float]
    liquor_l: Mapping[str, float]
    baths: tuple[PlannedBath, ...]
    top_up_l: Mapping[str, float]


class Reckoner:
    """The recipe, its fibre in grams and its grams of ingredients, from which wishes for water are made."""

    def __init__(self, recipe: Recipe, fibre_g: float, grams: Mapping[str, Grams]) -> None:
        self.recipe = recipe
        self.fibre_g = fibre_g
        self.grams = grams
        self._steps = {step.name: step for step in recipe.steps}

    def stated_l(self, name: str) -> float | None:
        """Litres a recipe step states for itself, the middle of a range; None when it states none."""
        water = self._steps[name].water
        if water is None:
            return None
        middle = float((water.low + water.high) / 2)
        if not isinstance(water, WaterPerKg):
            return middle
        base_g = self.fibre_g if water.of is None else float(self.grams[water.of].aim)
        return middle * base_g / GRAMS_PER_KG

    def usual_l(self) -> float:
        """Litres at the recipe's own liquor ratio."""
        return self.recipe.liquor_ratio * self.fibre_g / GRAMS_PER_KG

    def wish(self, vessel: str, leader: PlannedStep) -> Wish:
        """Say what the bath that `leader` begins wants."""
        stated = self.stated_l(leader.of)
        strained = self._strained_in(vessel)
        fibre = leader.stage not in LIQUOR_STAGES or strained is None
        if stated is None:
            stated = self.usual_l()
            if strained is not None and leader.stage in LIQUOR_STAGES:
                stated = self._extract_l(strained)
        ratio = stated * GRAMS_PER_KG / self.fibre_g
        return Wish(stated, fibre, min(LEAST_RATIO, ratio))

    def _strained_in(self, vessel: str) -> Step | None:
        """Return the strained extraction done in a vessel, if there is one."""
        return next(
            (step for step in self.recipe.steps if step.vessel == vessel and step.into is not None), None
        )

    def _extract_l(self, extraction: Step) -> float:
        """Litres of one extraction: its own, else an equal share of the bath it is strained into."""
        liquor = (
            one
            for one in self.recipe.steps
            if one.vessel == extraction.vessel and one.stage in LIQUOR_STAGES
        )
        stated = [litres_l for one in liquor if (litres_l := self.stated_l(one.name)) is not None]
        if stated:
            return stated[-1]
        target = next(
            (self.stated_l(one.name) for one in self.recipe.steps if one.vessel == extraction.into), None
        )
        return (target or self.usual_l()) / (extraction.refreshes + 1)

    def held_back_l(self, vessel: str) -> float:
        """Litres the dyestuff in an extraction vessel keeps when it is first drained; later rounds keep no
        more.
        """
        held = spent_held("drained").centre
        return sum(
            held_l(float(self.grams[addition.ingredient].aim * addition.share), held)
            for step in self.recipe.steps
            if step.vessel == vessel and step.stage in LIQUOR_STAGES
            for addition in step.add
            if self._soaks_up(addition.ingredient)
        )

    def _soaks_up(self, name: str) -> bool:
        """Dry plant or insect matter soaks up liquor; fresh herb brings its own water."""
        ingredient = self.recipe.ingredient(name)
        substance = find(ingredient.substance)
        fresh = substance is not None and "fresh" in substance.form
        return ingredient.role in ("dyestuff", "tannin") and not fresh


def filled_anew(steps: Sequence[PlannedStep], reckoner: Reckoner) -> tuple[PlannedStep, ...]:
    """Mark the steps whose vessel is emptied and filled: first use, every further extraction, a stated water,
    and round a scour, a wetting or a rinse, in whose water nothing else is done.

    A vessel that liquor is strained into is not filled at first: it has its liquor.
    """
    fed = {step.into for step in steps if step.into is not None}
    latest: dict[str, PlannedStep] = {}
    marked: list[PlannedStep] = []
    for step in steps:
        if _has_bath(step) and step.vessel is not None:
            before = latest.get(step.vessel)
            fresh = step.vessel not in fed if before is None else _begins_anew(step, before, reckoner)
            latest[step.vessel] = step
            step = replace(step, fresh_water=fresh)
        marked.append(step)
    return tuple(marked)


def _has_bath(step: PlannedStep) -> bool:
    return step.vessel is not None and step.stage not in DRY_STAGES and step.stage != "strain"


def _begins_anew(step: PlannedStep, before: PlannedStep, reckoner: Reckoner) -> bool:
    apart = step.stage in OWN_WATER or before.stage in OWN_WATER
    return apart or step.again > 0 or reckoner.stated_l(step.of) is not None


def leaders(steps: Sequence[PlannedStep]) -> dict[str, str]:
    """Return for each step with a bath the step that began it, itself or an earlier one."""
    found: dict[str, str] = {}
    latest: dict[str, str] = {}
    for step in steps:
        if _has_bath(step) and step.vessel is not None:
            shared = not step.fresh_water and step.vessel in latest
            found[step.name] = latest[step.vessel] if shared else step.name
            latest[step.vessel] = found[step.name]
    return found


def waters(
    reckoner: Reckoner, steps: Sequence[PlannedStep], pots: Mapping[str, Pot | None], one_pot: bool
) -> Waters:
    """Work out the litres of every bath in the pots there are, strained liquor and topping up included."""
    lead = leaders(steps)
    by_name = {step.name: step for step in steps}
    wishes = {name: reckoner.wish(by_name[name].vessel or "", by_name[name]) for name in set(lead.values())}
    held = {
        name: _in_pot(wish.litres, pots.get(by_name[name].vessel or "")) for name, wish in wishes.items()
    }
    strained = _strained(reckoner, steps, lead, held)
    baths = []
    for step in steps:
        if lead.get(step.name) == step.name:
            filled = Filled(
                wishes[step.name], held[step.name], strained.wider_l.get(step.name), reckoner.fibre_g
            )
            baths.append(planned_bath(step, filled, pots.get(step.vessel or ""), one_pot))
    water_l = {name: held[leader] for name, leader in lead.items()}
    liquor_l = _through_sieve(reckoner, steps, water_l)
    return Waters(water_l, liquor_l, tuple(baths), strained.top_up_l)


def _through_sieve(
    reckoner: Reckoner, steps: Sequence[PlannedStep], water_l: Mapping[str, float]
) -> dict[str, float]:
    """Litres expected through the sieve at each straining: the first time the dyestuff keeps some back."""
    found = {}
    for step in steps:
        if step.stage == "strain":
            kept = 0.0 if step.again else reckoner.held_back_l(step.vessel or "")
            found[step.name] = max(0.0, water_l[step.after[0]] - kept)
    return found


def wanted_l(reckoner: Reckoner, steps: Sequence[PlannedStep]) -> dict[str, float]:
    """Return the most litres each vessel would hold if every pot were large enough."""
    lead = leaders(steps)
    most: dict[str, float] = {}
    for step in steps:
        if lead.get(step.name) == step.name and step.vessel is not None:
            most[step.vessel] = max(most.get(step.vessel, 0.0), reckoner.wish(step.vessel, step).litres)
    return most


def _in_pot(wanted: float, pot: Pot | None) -> float:
    return wanted if pot is None else min(wanted, fill_l(pot))


@dataclass(frozen=True)
class _Strained:
    """The top-up of each bath of strained liquor, and what extractions would hold were it larger."""

    top_up_l: Mapping[str, float]
    wider_l: Mapping[str, float]


def _strained(
    reckoner: Reckoner, steps: Sequence[PlannedStep], lead: Mapping[str, str], held: dict[str, float]
) -> _Strained:
    """Fit the extractions to the bath they make: less water where it would be too much, else a top-up.

    `held` is changed where the extractions are.
    """
    top_up: dict[str, float] = {}
    wider: dict[str, float] = {}
    for target in dict.fromkeys(step.into for step in steps if step.into is not None):
        user = next((step for step in steps if step.vessel == target and step.name in lead), None)
        rounds = _rounds_into(target, steps, lead)
        if user is None or not rounds:
            continue
        wanted = held[lead[user.name]]
        kept = sum(
            reckoner.held_back_l(v) for v in dict.fromkeys(s.vessel for s in steps if s.into == target) if v
        )
        poured = sum(held[name] for name in rounds)
        if poured - kept > wanted + WORTH_SAYING_L:
            for name in rounds:
                wider[name] = held[name]
                held[name] *= (wanted + kept) / poured
        top_up[user.name] = max(0.0, wanted - max(0.0, min(poured - kept, wanted)))
    return _Strained(top_up, wider)


def _rounds_into(target: str, steps: Sequence[PlannedStep], lead: Mapping[str, str]) -> list[str]:
    """Return the baths that are strained into a vessel, each once."""
    by_name = {step.name: step for step in steps}
    extracts = [by_name[step.after[0]] for step in steps if step.stage == "strain" and step.into == target]
    return list(dict.fromkeys(lead[step.name] for step in extracts))
