"""A day as a recipe that can be repeated: what went in by share of the fibre, how hot, how long, in what
order.

Pure; knows no files. Doses are grams put in over grams of fibre in that bath (% WOF); heat and minutes are
those of the log, a reading before what was planned. What the dyer left out is left out.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from dyesession.daybook.heats import heats
from dyesession.daybook.walk import Pace, walk
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.fold import opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State, StepState
from dyesession.units import exact

FORMAT = 1
USUAL_LIQUOR_RATIO = 30.0  # where no bath's litres are known; common practice, no source
LEAST_RATIO, MOST_RATIO = 1.0, 500.0  # what a recipe may state
PERCENT_FIGURES = 6  # finer than any scale, and short to read
GRAMS_PER_KG = 1000.0
HUNDRED = 100


class NothingToRepeat(UserError):
    """A day on which no step was done with fibre, so that there is no recipe in it."""


@dataclass
class _Part:
    """One step of the recipe to be: a step of the day with its further extractions and late lots."""

    name: str
    steps: list[StepState]
    lots: tuple[str, ...] = ()
    grams: dict[str, float] = field(default_factory=dict)
    into: str | None = None
    water_l: float | None = None
    fibre_g: float = 0.0

    @property
    def first(self) -> StepState:
        """The step it is named by."""
        return self.steps[0]

    @property
    def vessel(self) -> str | None:
        """Its vessel."""
        return self.first.plan.vessel

    @property
    def pots(self) -> set[str]:
        """Every vessel it touches."""
        return {one for one in (self.vessel, self.into) if one is not None}


def recipe_from_day(day: LoggedDay, name: str = "") -> dict[str, Any]:
    """The document of a recipe that repeats this day, as `recipe_from_document` and a recipe file hold it.

    `name` is the recipe's own; else it is named by the day. Raises `NothingToRepeat` where nothing was done.
    """
    paces = tuple(walk(day))
    last = paces[-1].after if paces else opening_state(day.plan)
    parts = _parts(last, paces)
    if not any(one.lots for one in parts):
        raise NothingToRepeat(
            f"{day.name or day.path}: no fibre went through any step of this day, so there is nothing to"
            " repeat; expected a day with at least one stage done, for example mordant or dye."
        )
    percents = _percents(parts)
    document = {
        "format": FORMAT,
        "name": name or _title(day),
        "summary": last.verdict,
        "source": f"dyed on {day.opened.at:%Y-%m-%d}, log {day.name}",
        "fibre": list(dict.fromkeys(one.kind for one in last.lots if not one.snippet)),
        "liquor_ratio": _liquor_ratio(parts),
        "ingredient": [_ingredient(last, one, percents, parts) for one in _ingredients(parts)],
        "step": [_step(day, one, parts, percents, paces) for one in parts],
    }
    return {key: value for key, value in document.items() if value not in ("", [])}


def _title(day: LoggedDay) -> str:
    return f"{day.recipe}, {day.opened.at.day} {day.opened.at:%B %Y}"


def _parts(last: State, paces: Sequence[Pace]) -> list[_Part]:
    """Steps that were done, in the order in which they were begun; rounds and late lots with their first."""
    done = sorted((one for one in last.steps if _was_done(last, one)), key=lambda one: one.begun_s or 0.0)
    found: dict[str, _Part] = {}
    for step in done:
        if step.plan.stage == "strain":
            continue
        part = found.setdefault(step.plan.of, _Part(step.plan.of, []))
        part.steps.append(step)
    parts = list(found.values())
    for part in parts:
        part.lots = tuple(dict.fromkeys(lot for one in part.steps for lot in one.entered))
    _book(parts, paces)
    for part in parts:
        part.into = _into(part, parts, paces)
        part.water_l = _water_l(part, paces)
    for part in parts:
        part.fibre_g = _fibre_g(part, parts, last)
    return parts


def _was_done(last: State, step: StepState) -> bool:
    """Begun, and not left out again before anything was in."""
    in_it = any(one.step == step.name for one in last.put_in)
    return step.begun_s is not None and (step.status != "skipped" or bool(step.entered) or in_it)


def _book(parts: Sequence[_Part], paces: Iterable[Pace]) -> None:
    """Grams put in, to the part whose step ran there; what went in beside a step to the next in that
    vessel.
    """
    by_step = {one.name: part for part in parts for one in part.steps}
    for pace in paces:
        event = pace.entry.event
        if not isinstance(event, e.Added) or pace.after.put_in == pace.before.put_in:
            continue
        running = pace.before.running_in(event.vessel)
        part = by_step.get(running.name) if running is not None else None
        part = part or _nearest(parts, event.vessel, pace.after.now_s)
        if part is not None:
            part.grams[event.ingredient] = part.grams.get(event.ingredient, 0.0) + event.mass_g


def _nearest(parts: Sequence[_Part], vessel: str, now_s: float) -> _Part | None:
    there = [one for one in parts if one.vessel == vessel]
    later = [one for one in there if (one.first.begun_s or 0.0) >= now_s]
    return next(iter(later or there[-1:]), None)


def _into(part: _Part, parts: Sequence[_Part], paces: Iterable[Pace]) -> str | None:
    """The vessel an extraction was strained into, when something was done there."""
    if part.first.plan.stage != "extract":
        return None
    used = {one.vessel for one in parts if one is not part}
    into = [
        pace.entry.event.into
        for pace in paces
        if isinstance(pace.entry.event, e.Strained) and pace.entry.event.vessel == part.vessel
    ]
    return next((one for one in reversed(into) if one in used and one != part.vessel), None)


def _water_l(part: _Part, paces: Iterable[Pace]) -> float | None:
    """Litres in the vessel when the step's own water was in; of a bath that had its litres already, those that stood
    there as the fibre went in. None where they are not known.
    """
    stood: float | None = None
    for pace in paces:
        event = pace.entry.event
        if stood is None and isinstance(event, e.Entered) and event.vessel == part.vessel and event.lot in part.lots:
            there = pace.after.vessel(part.vessel)
            stood = there.bath.volume_l if there is not None and there.bath is not None else None
        step = pace.after.step(part.first.name)
        if step is None or step.status not in ("running", "paused") or not step.filled:
            continue
        if isinstance(event, e.Filled | e.Refreshed | e.ToppedUp | e.Read) and event.vessel == part.vessel:
            vessel = pace.after.vessel(part.vessel)
            return vessel.bath.volume_l if vessel is not None and vessel.bath is not None else None
    return stood


def _fibre_g(part: _Part, parts: Sequence[_Part], last: State) -> float:
    """Grams of the fibre a part's doses are for: what went in there, or where its liquor goes, or all."""
    lots = part.lots
    if not lots:
        user = next((one for one in parts if one.lots and one.vessel in (part.into or part.vessel,)), None)
        lots = user.lots if user is not None else ()
    chosen = [one for one in last.lots if not one.snippet and (not lots or one.name in lots)]
    return sum(one.mass_g for one in chosen)


def _ingredients(parts: Sequence[_Part]) -> list[str]:
    return list(dict.fromkeys(name for part in parts for name in part.grams))


Percents = Mapping[str, Mapping[str, Fraction]]


def _percents(parts: Sequence[_Part]) -> Percents:
    """Per cent of the fibre of each ingredient in each part, exact in what was put in."""
    found: dict[str, dict[str, Fraction]] = {}
    for part in parts:
        for name, grams in part.grams.items():
            if grams > 0 and part.fibre_g > 0:
                share = HUNDRED * exact(grams) / exact(part.fibre_g)
                found.setdefault(name, {})[part.name] = share
    return found


def _ingredient(last: State, name: str, percents: Percents, parts: Sequence[_Part]) -> dict[str, Any]:
    dose = next((one for one in last.doses if one.ingredient == name), None)
    table: dict[str, Any] = {
        "name": name,
        "substance": dict(last.substances).get(name, name),
        "role": dose.role if dose is not None else "assist",
        "dose": _percent(sum(percents[name].values(), Fraction(0))),
    }
    bagged = any(
        one.bagged for part in parts for step in part.steps for one in step.plan.add if one.ingredient == name
    )
    return {**table, "bagged": True} if bagged else table


def _percent(value: Fraction) -> str:
    text = f"{float(value):.{PERCENT_FIGURES}g}"
    if "e" in text:  # a trace, or a mountain: written out
        text = f"{float(value):.12f}".rstrip("0").rstrip(".")
    return f"{text} %"


def _liquor_ratio(parts: Sequence[_Part]) -> float:
    """Litres to the kilogram in the dye bath; on a day without one, in any bath with fibre in it."""
    with_fibre = [one for one in parts if one.lots and one.fibre_g > 0]
    baths = [one for one in with_fibre if one.first.plan.stage == "dye"] or with_fibre
    dyeing = [one for one in baths if one.water_l]
    if not dyeing:
        return USUAL_LIQUOR_RATIO
    ratio = GRAMS_PER_KG * (dyeing[0].water_l or 0.0) / dyeing[0].fibre_g
    return round(min(max(ratio, LEAST_RATIO), MOST_RATIO), 1)


def _step(
    day: LoggedDay, part: _Part, parts: Sequence[_Part], percents: Percents, paces: Sequence[Pace]
) -> dict[str, Any]:
    plan = part.first.plan
    rounds = sum(one.plan.again > 0 for one in part.steps) if part.into is not None else 0
    table: dict[str, Any] = {
        "name": part.name,
        "stage": plan.stage,
        "lane": plan.lane,
        "after": _after(part, parts),
        "vessel": plan.vessel,
        "add": [_addition(one, part.name, percents) for one in part.grams if one in percents],
        "enter": ["fibre"] if part.lots else [],
        "water": _water(part, parts),
        "refreshes": rounds or None,
        "into": part.into,
        "heat": heats(part.first.name, paces),
        "judge": _judge(part.first),
        "say": _say(day, part.name),
    }
    return {key: value for key, value in table.items() if value not in (None, "", [], {})}


def _addition(name: str, part: str, percents: Percents) -> Any:
    """All of an ingredient, or its share of it as a fraction: shares come to one exactly."""
    whole = sum(percents[name].values(), Fraction(0))
    share = percents[name].get(part, Fraction(0)) / whole
    return name if share == 1 else {name: str(share)}


def _after(part: _Part, parts: Sequence[_Part]) -> list[str]:
    """The nearest parts before it that had its pots or its fibre; what those came after is implied."""
    before = parts[: parts.index(part)]
    linked = [one for one in before if _linked(one, part)]
    implied = {name for one in linked for name in _all_before(one, parts)}
    return [one.name for one in linked if one.name not in implied]


def _linked(one: _Part, other: _Part) -> bool:
    dry = other.vessel is None and bool(one.lots)
    return bool(one.pots & other.pots) or (bool(one.lots) and bool(other.lots)) or dry


def _all_before(part: _Part, parts: Sequence[_Part]) -> set[str]:
    found: set[str] = set()
    for one in parts[: parts.index(part)]:
        if _linked(one, part):
            found |= {one.name, *_all_before(one, parts)}
    return found


def _water(part: _Part, parts: Sequence[_Part]) -> str | None:
    """Litres to the kilogram, of the dyestuff for an extraction; none for a bath that was gone on with."""
    if part.water_l is None or part.water_l <= 0:
        return None
    earlier = parts[: parts.index(part)]
    if part.vessel in {one.vessel for one in earlier} and not part.first.plan.fresh_water:
        return None
    if part.lots:
        return f"{_figure(GRAMS_PER_KG * part.water_l / part.fibre_g)} l/kg"
    name = next(iter(part.grams), "")
    if not name or part.grams[name] <= 0:
        return f"{_figure(part.water_l)} l"
    return f"{_figure(GRAMS_PER_KG * part.water_l / part.grams[name])} l/kg of {name}"


def _figure(value: float) -> str:
    return f"{value:.4g}" if value < 1000 else f"{value:.0f}"


def _judge(step: StepState) -> dict[str, str] | None:
    judge = step.plan.judge
    if judge is None:
        return None
    every = judge.snippet_every_min
    more = {"snippet_every": f"{every:g} min"} if every is not None else {}
    return {"least": f"{judge.least_min:g} min", "most": f"{judge.most_min:g} min", **more}


def _say(day: LoggedDay, name: str) -> str:
    """The recipe's own words for a step, where the day had a recipe."""
    recipe = day.header.get("recipe")
    steps = recipe.get("step", ()) if isinstance(recipe, Mapping) else ()
    found = (one.get("say", "") for one in steps if isinstance(one, Mapping) and one.get("name") == name)
    return str(next(found, ""))
