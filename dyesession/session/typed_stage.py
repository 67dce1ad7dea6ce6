"""A stage as it is typed: "mordant in A with alum 12 %, tartar 6 %, 7 l, to 85 °C over 45 min, hold 60 min".

Pure; knows no screen. Pieces stand between commas; what is not said is left to the usual ratio or to the eye.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from fractions import Fraction

from dyesession.errors import UserError
from dyesession.plan.changes import Change, NewIngredient, NewStep, change_for_log
from dyesession.plan.doses import NOTHING, Base, Grams, amount_g
from dyesession.plan.model import PlannedAddition, PlannedStage, PlannedStep
from dyesession.recipe.model import Heat, Judge
from dyesession.session import events as e
from dyesession.session.replan import today
from dyesession.session.state import State
from dyesession.session.understood import NotUnderstood, Understood, pot_named
from dyesession.substances import find
from dyesession.units import (
    Dose,
    HeatWord,
    Overnight,
    PerBath,
    exact,
    read_dose,
    read_duration,
    read_temperature,
    read_volume,
    show_duration,
    show_mass,
    show_temperature,
    show_volume,
)

# The words a stage may be named by; the left-hand word of each line is the stage's own.
STAGES: dict[str, PlannedStage] = {
    "scour": "scour", "wet": "wet", "wet out": "wet", "mordant": "mordant", "soak": "soak",
    "extract": "extract", "dye": "dye", "modify": "modify", "sadden": "modify", "rinse": "rinse",
    "rest": "rest", "dry": "dry",
}  # fmt: skip
STAGE = re.compile(
    rf"^(?P<word>{'|'.join(sorted(STAGES, key=len, reverse=True))})\b(?P<again>\s+again)?"
    r"(?P<rest>(?:\s+(?:in|into|with|overnight)\b|\s*,|\s*$).*)$",
    re.IGNORECASE | re.DOTALL,
)
# What an ingredient of a stage is for, the likeliest first.
ROLES: dict[str, tuple[str, ...]] = {
    "scour": ("scour", "assist"),
    "mordant": ("mordant", "tannin", "assist"),
    "soak": ("dyestuff", "tannin", "assist"),
    "extract": ("dyestuff", "tannin", "assist"),
    "dye": ("dyestuff", "tannin", "assist", "modifier", "mordant"),
    "modify": ("modifier", "assist", "mordant"),
}
FIBRE_STAGES = ("scour", "wet", "mordant", "dye", "modify", "rinse")
BY_EYE = Judge(30.0, 120.0, 15.0)  # a dyeing no hold was named for; common practice, no source
EXAMPLE = "mordant in the mordant pot with alum 12 %, 7 l, to 85 °C over 45 min, hold 60 min"
_PIECES = re.compile(r",\s+|;\s*|\s+with\s+|\s+and\s+")


@dataclass
class _Said:
    """What the pieces of a stage have said so far."""

    state: State
    stage: PlannedStage
    vessel: str | None = None
    into: str | None = None
    water_l: float | None = None
    heat: list[Heat] = field(default_factory=list)
    lots: list[str] = field(default_factory=list)
    no_fibre: bool = False
    after: list[str] = field(default_factory=list)
    doses: list[tuple[str, Dose]] = field(default_factory=list)


def read_stage(text: str, state: State, why: str = "") -> Understood:
    """The stage a text names. Raises `NotUnderstood` or a `UnitError` with one sentence."""
    found = STAGE.match(text.strip())
    if found is None:
        stages = ", ".join(dict.fromkeys(STAGES.values()))
        raise NotUnderstood(f"A stage begins with one of {stages}; for example {EXAMPLE}.")
    word = " ".join(found["word"].casefold().split())
    said = _Said(state, STAGES[word])
    for piece in _PIECES.split(" " + found["rest"].strip(" ,;")):
        if piece.strip():
            _take(said, piece.strip())
    return _understood(said, word + (" again" if found["again"] else ""), why)


def _take(said: _Said, piece: str) -> None:
    for pattern, reader in _READERS:
        if match := pattern.match(piece):
            reader(said, match)
            return
    if not (_taken_as_lot(said, piece) or _taken_as_water(said, piece) or _taken_as_dose(said, piece)):
        raise NotUnderstood(f'"{piece}" was not understood in this stage; for example {EXAMPLE}.')


def _in_pot(said: _Said, found: re.Match[str]) -> None:
    """A pot, and the litres that may stand behind it: "in A 7 l"."""
    inside = re.match(r"^(.*?)(?:\s+([\d½¼¾].*))?$", found[1])
    name, volume = (inside[1], inside[2]) if inside else (found[1], None)
    said.vessel = pot_named(name, said.state)
    if volume:
        said.water_l = float(read_volume(volume).aim)


def _strained_into(said: _Said, found: re.Match[str]) -> None:
    said.into = pot_named(found[1], said.state)


def _rise(said: _Said, found: re.Match[str]) -> None:
    minutes = _minutes(found[2]) if found[2] else None
    said.heat.append(_temperature("to", found[1], minutes))


def _cool(said: _Said, found: re.Match[str]) -> None:
    said.heat.append(_temperature("cool_to", found[1], None))


def _temperature(kind: str, text: str, minutes: float | None) -> Heat:
    read = read_temperature(text)
    if isinstance(read, HeatWord):
        half = float((read.high_c - read.low_c) / 2)
        return Heat(kind, float(read.aim), minutes, word=read.word, margin_c=half)  # type: ignore[arg-type]
    half = float((read.high - read.low) / 2)
    return Heat(kind, float(read.aim), minutes, margin_c=half)  # type: ignore[arg-type]


def _hold(said: _Said, found: re.Match[str]) -> None:
    said.heat.append(Heat("hold", minutes=_minutes(found[1])))


def _rest(said: _Said, found: re.Match[str]) -> None:
    read = read_duration(_with_unit(found[1]))
    overnight = isinstance(read, Overnight)
    said.heat.append(
        Heat("rest", minutes=None if isinstance(read, Overnight) else float(read.aim), overnight=overnight)
    )


def _minutes(text: str) -> float:
    read = read_duration(_with_unit(text))
    if isinstance(read, Overnight):
        raise NotUnderstood("Nobody keeps a heat overnight; let it rest overnight, off the heat.")
    return float(read.aim)


def _with_unit(text: str) -> str:
    return f"{text} min" if re.fullmatch(r"[\d\s.,/½¼¾]+", text) else text


def _after(said: _Said, found: re.Match[str]) -> None:
    step = next((one for one in said.state.steps if one.name.casefold() == found[1].casefold()), None)
    if step is None:
        names = ", ".join(one.name for one in said.state.steps) or "none"
        raise NotUnderstood(f'No step is called "{found[1]}"; the steps are {names}.')
    said.after.append(step.name)


def _no_fibre(said: _Said, found: re.Match[str]) -> None:
    said.no_fibre = True


def _all_fibre(said: _Said, found: re.Match[str]) -> None:
    said.lots = ["fibre"]


_READERS: tuple[tuple[re.Pattern[str], Callable[[_Said, re.Match[str]], None]], ...] = tuple(
    (re.compile(rf"^{pattern}$", re.IGNORECASE), reader)
    for pattern, reader in (
        (r"in\s+(.+)", _in_pot),
        (r"(?:strained?\s+)?into\s+(.+)", _strained_into),
        (r"(?:heat(?:ed)?\s+)?(?:up\s+)?to\s+(.+?)(?:\s+(?:over|in)\s+(.+))?", _rise),
        (r"cool(?:ed)?(?:\s+down)?(?:\s+to)?\s+(.+)", _cool),
        (r"(?:hold|held|keep|kept)(?:\s+for)?\s+(.+)", _hold),
        (r"(?:rest|leave|left|steep|soak)(?:\s+for)?\s+(.+)", _rest),
        (r"(overnight)", _rest),
        (r"after\s+(.+)", _after),
        (r"no\s+(?:fibre|wool)", _no_fibre),
        (r"(?:all(?:\s+the)?(?:\s+(?:fibre|wool|lots|skeins))?|fibre|the\s+fibre)", _all_fibre),
    )
)


def _taken_as_lot(said: _Said, piece: str) -> bool:
    lot = next((one for one in said.state.lots if one.name.casefold() == piece.casefold()), None)
    if lot is not None:
        said.lots.append(lot.name)
    return lot is not None


def _taken_as_water(said: _Said, piece: str) -> bool:
    text = re.sub(r"\s+(?:of\s+)?(?:fresh\s+)?water$", "", piece, flags=re.IGNORECASE)
    try:
        said.water_l = float(read_volume(text).aim)
    except UserError:
        return False
    return True


def _taken_as_dose(said: _Said, piece: str) -> bool:
    """ "alum 12 %" or "29 g potassium alum": the longest run of words at one end that reads as a dose."""
    words = piece.split()
    for length in range(len(words) - 1, 0, -1):
        for amount, name in ((words[:length], words[length:]), (words[-length:], words[:-length])):
            dose = _dose(" ".join(amount))
            if dose is not None:
                said.doses.append((" ".join(name).removeprefix("of "), dose))
                return True
    return False


def _dose(text: str) -> Dose | None:
    try:
        return read_dose(text)
    except UserError:
        return None


def _understood(said: _Said, name: str, why: str) -> Understood:
    heated = any(one.kind != "rest" for one in said.heat)
    if said.vessel is None and (heated or said.stage not in ("rest", "dry")):
        raise NotUnderstood(f"Say in which pot, by letter or name; for example {EXAMPLE}.")
    named = [_ingredient(said, one) for one, _ in said.doses]
    new = tuple(one for one in named if isinstance(one, NewIngredient))
    names = [one.ingredient if isinstance(one, NewIngredient) else one for one in named]
    step = PlannedStep(
        name=name,
        stage=said.stage,
        lane="fibre",
        vessel=said.vessel,
        of=name,
        after=tuple(said.after),
        add=_additions(said, names),
        enter=_enter(said),
        water_l=said.water_l,
        into=said.into,
        heat=tuple(said.heat),
        judge=BY_EYE if said.stage == "dye" and not any(one.kind == "hold" for one in said.heat) else None,
    )
    changes: list[Change] = [*dict.fromkeys(new), NewStep(step)]
    event = e.Replanned("step", name, why, changes=tuple(map(change_for_log, changes)))
    return Understood(event, _echo(step, new))


def _enter(said: _Said) -> tuple[str, ...]:
    if said.lots:
        return ("fibre",) if "fibre" in said.lots else tuple(said.lots)
    return ("fibre",) if said.stage in FIBRE_STAGES and not said.no_fibre else ()


def _ingredient(said: _Said, name: str) -> str | NewIngredient:
    """The ingredient of today that is meant, by name or as the same substance; else a new one."""
    substance = find(name)
    for known, stuff in said.state.substances:
        same = find(stuff)
        if known.casefold() == name.casefold() or (
            same is not None and substance is not None and same.key == substance.key
        ):
            return known
    likely = ROLES.get(said.stage, ("assist",))
    roles = substance.roles if substance is not None else ()
    role = next((one for one in likely if one in roles), likely[0])
    return NewIngredient(name, name, role)


def _additions(said: _Said, names: list[str]) -> tuple[PlannedAddition, ...]:
    lots, day = _enter(said), today(said.state)
    fibre_g = day.mass_g(lots) if lots and "fibre" not in lots else day.fibre_g
    made: list[PlannedAddition] = []

    def other(name: str) -> Grams:
        grams = exact(sum((one.mass_g for one in made if one.ingredient.casefold() == name.casefold()), 0.0))
        if not grams:
            raise NotUnderstood(
                f'"of {name}" names nothing before it in this stage; name {name} and its weight first.'
            )
        return replace(NOTHING, low=grams, aim=grams, high=grams)

    for name, (_, dose) in zip(names, said.doses, strict=True):
        if isinstance(dose, PerBath) and said.water_l is None:
            raise NotUnderstood(
                f"Say the litres as well, since the {name} goes by the litre; for example 7 l."
            )
        base = Base(exact(fibre_g), {name: exact(said.water_l or 0.0)})
        made.append(PlannedAddition(name, _grams(amount_g(dose, name, base, other).aim)))
    return tuple(made)


def _grams(grams: Fraction) -> float:
    return round(float(grams), 3)


def _echo(step: PlannedStep, new: tuple[NewIngredient, ...]) -> str:
    pieces = [f"{one.ingredient} {show_mass(one.mass_g)}" for one in step.add]
    if step.water_l is not None:
        pieces.append(show_volume(step.water_l))
    pieces += [_heat_words(one) for one in step.heat]
    if step.into:
        pieces.append(f"then strained into the {step.into}")
    where = f" in the {step.vessel}" if step.vessel else ""
    unknown = [one.ingredient for one in new if find(one.substance) is None]
    loud = "".join(f"; NOT KNOWN: {one}, so none of its hazards is shown" for one in unknown)
    return f"{step.name}{where}: {', '.join(pieces) or 'nothing added'}{loud}"


def _heat_words(heat: Heat) -> str:
    if heat.temperature_c is not None:
        over = f" over {show_duration(heat.minutes)}" if heat.minutes is not None else ""
        degrees = heat.word or show_temperature(heat.temperature_c)
        return f"{'to' if heat.kind == 'to' else 'cool to'} {degrees}{over}"
    length = "overnight" if heat.overnight else show_duration(heat.minutes or 0.0)
    return f"{heat.kind} {length}"
