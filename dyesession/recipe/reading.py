"""One table of a recipe file at a time, turned into the model. What fits together is checked in `checks`.

Knows no other recipe, no kitchen, no fibre at hand. The words for shares are everyday ones.
"""

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any, TypeVar, cast

from dyesession.errors import UserError
from dyesession.recipe.model import (
    LANES,
    ROLES,
    STAGES,
    Addition,
    Heat,
    HeatKind,
    Ingredient,
    Judge,
    Lane,
    Role,
    Stage,
    Step,
)
from dyesession.recipe.trouble import Faults
from dyesession.tomlfile import Table
from dyesession.units import (
    OVERNIGHT,
    Dose,
    HeatWord,
    Quantity,
    read_dose,
    read_duration,
    read_percent,
    read_temperature,
    read_water,
)

Value = TypeVar("Value")

RECIPE_KEYS = ("format", "name", "summary", "source", "fibre", "liquor_ratio", "ingredient", "step")
INGREDIENT_KEYS = ("name", "substance", "role", "dose", "least", "most", "bagged")
STEP_KEYS = (
    "name", "stage", "lane", "after", "vessel", "add", "enter", "water", "refreshes", "into", "heat", "judge",
    "say",
)  # fmt: skip
HEAT_KINDS: tuple[HeatKind, ...] = ("to", "hold", "cool_to", "rest")
HEAT_KEYS = (*HEAT_KINDS, "over")
JUDGE_KEYS = ("least", "most", "snippet_every")

MOST_REFRESHES = 9
WITHOUT_VESSEL = ("rest", "dry")
HOTTEST_C = 105.0  # an open pot of liquor gets no hotter, even by the sea: common practice, no source
COLDEST_C = 0.0

SHARES = {
    "all": Fraction(1),
    "half": Fraction(1, 2),
    "a half": Fraction(1, 2),
    "third": Fraction(1, 3),
    "a third": Fraction(1, 3),
    "two thirds": Fraction(2, 3),
    "quarter": Fraction(1, 4),
    "a quarter": Fraction(1, 4),
    "three quarters": Fraction(3, 4),
}


def read_amount(table: Table, key: str, reader: Callable[[str], Value], example: str) -> Value:
    """Read a text of the table with one of the readers of `units`; its fault names file and line."""
    text = table.text(key, example=f'{key} = "{example}"')
    try:
        return reader(text)
    except UserError as error:
        raise table.problem(key, f"{key} in {table.label}: {error}") from error


def read_ingredient(table: Table, faults: Faults) -> Ingredient | None:
    """Read an ingredient, or None when it has no name to go by; every fault is noted."""
    faults.keys(table, INGREDIENT_KEYS)
    name = faults.take(lambda: table.text("name", example='name = "alum"'), "")
    substance = faults.take(lambda: table.text("substance", example='substance = "potassium alum"'), "")
    role = faults.take(lambda: table.text("role", choices=ROLES), "assist")
    dose = faults.take(lambda: _dose(table, "dose", required=role != "water"), None)
    least = faults.take(lambda: _dose(table, "least"), None)
    most = faults.take(lambda: _dose(table, "most"), None)
    bagged = faults.take(lambda: table.flag("bagged", default=False), False)
    _check_band(table, dose, least, most, faults)
    return Ingredient(name, substance, cast(Role, role), dose, least, most, bagged) if name else None


def _dose(table: Table, key: str, *, required: bool = False) -> Dose | None:
    if key not in table and not required:
        return None
    dose = read_amount(table, key, read_dose, "12 %")
    if dose.high <= 0:
        raise table.wrong(key, "more than nothing", f'{key} = "12 %"')
    return dose


def _check_band(
    table: Table, dose: Dose | None, least: Dose | None, most: Dose | None, faults: Faults
) -> None:
    """Least, dose and most must be of one kind and rise."""
    for low, high, key in ((least, dose, "least"), (dose, most, "most"), (least, most, "most")):
        if low is None or high is None:
            continue
        if type(low) is not type(high) or getattr(low, "ingredient", "") != getattr(high, "ingredient", ""):
            faults.at(
                table,
                key,
                f"{key} in {table.label} is not reckoned as the dose is; expected both alike, for"
                ' example dose = "12 %" and least = "8 %"',
            )
        elif low.low > high.high:
            faults.at(
                table,
                key,
                f"{key} in {table.label} lies on the wrong side of the dose; expected least, dose"
                ' and most to rise, for example "8 %", "12 %", "15 %"',
            )


def read_step(table: Table, faults: Faults) -> Step | None:
    """Read a step, or None when it has no name to go by; every fault is noted."""
    faults.keys(table, STEP_KEYS)
    name = faults.take(lambda: table.text("name", example='name = "mordant"'), "")
    stage = cast(Stage, faults.take(lambda: table.text("stage", choices=STAGES), "dye"))
    lane = cast(Lane, faults.take(lambda: table.text("lane", choices=LANES), "fibre"))
    step = Step(
        name=name,
        stage=stage,
        lane=lane,
        vessel=faults.take(lambda: _vessel(table, stage), None),
        after=faults.take(lambda: table.texts("after", example='after = ["mordant"]'), ()),
        add=faults.take(lambda: _additions(table), ()),
        enter=faults.take(lambda: table.texts("enter", choices=("fibre",)), ()),
        water=faults.take(lambda: _optional(table, "water", read_water, "30 l/kg"), None),
        refreshes=faults.take(lambda: table.whole("refreshes", 0, MOST_REFRESHES, default=0), 0),
        into=faults.take(lambda: table.text("into", example='into = "dye pot"', default=None), None),
        heat=_heating(table, faults),
        judge=faults.take(lambda: _judge(table, faults), None),
        say=faults.take(lambda: table.text("say", default=""), ""),
    )
    _check_straining(table, step, faults)
    return step if name else None


def _vessel(table: Table, stage: Stage) -> str | None:
    if "vessel" not in table and stage in WITHOUT_VESSEL:
        return None
    return table.text("vessel", example='vessel = "dye pot"')


def _optional(table: Table, key: str, reader: Callable[[str], Value], example: str) -> Value | None:
    return read_amount(table, key, reader, example) if key in table else None


def _additions(table: Table) -> tuple[Addition, ...]:
    """Read `add`: names, or tables of a name and its share."""
    example = 'add = ["alum"] or add = [{ madder = "half" }]'
    items = table.values.get("add", [])
    if not isinstance(items, list):
        raise table.wrong("add", "a list", example)
    found: list[Addition] = []
    for item in items:
        if isinstance(item, str) and item.strip():
            found.append(Addition(item))
        elif isinstance(item, Mapping) and item:
            found.extend(Addition(name, _share(table, name, share)) for name, share in item.items())
        else:
            raise table.wrong("add", "names of ingredients", example)
    return tuple(found)


def _share(table: Table, name: str, given: Any) -> Fraction:
    """Read a share: a word, a fraction, a percentage, or a number up to one."""
    share = _share_of(given)
    if share is None or not 0 < share <= 1:
        raise table.problem(
            "add",
            f'the share of "{name}" added in {table.label} is not between nothing and all of it;'
            " expected, for"
            f' example, add = [{{ {name} = "half" }}]',
        )
    return share


def _share_of(given: Any) -> Fraction | None:
    if isinstance(given, (int, float)) and not isinstance(given, bool):
        return Fraction(str(given)) if abs(given) <= 1 else None
    spoken = " ".join(given.casefold().split()) if isinstance(given, str) else ""
    if spoken in SHARES:
        return SHARES[spoken]
    try:
        return Fraction(spoken) if "%" not in spoken else read_percent(spoken).aim / 100
    except (ValueError, ZeroDivisionError, UserError):
        return None


def _heating(table: Table, faults: Faults) -> tuple[Heat, ...]:
    segments = faults.take(
        lambda: table.tables(
            "heat", example='heat = [{ to = "85 degC", over = "45 min" }, { hold = "60 min" }]'
        ),
        (),
    )
    read = (faults.take(lambda one=one: _heat(one), None) for one in segments)  # type: ignore[misc]
    return tuple(heat for heat in read if heat is not None)


def _heat(table: Table) -> Heat:
    """Read one stretch of heating, which is exactly one of to, hold, cool_to and rest."""
    table.unknown_keys(HEAT_KEYS)
    kinds = [kind for kind in HEAT_KINDS if kind in table]
    if len(kinds) != 1:
        raise table.problem(
            None,
            "a stretch of heat is one of to, hold, cool_to or rest;"
            ' expected, for example, { to = "85 degC", over = "45 min" }',
        )
    kind = kinds[0]
    if "over" in table and kind != "to":
        raise table.problem(
            "over", f'"over" belongs to a rise, not to {kind}; expected {{ {kind} = "60 min" }}'
        )
    if kind in ("to", "cool_to"):
        return _temperature(table, kind)
    return _wait(table, kind)


def _temperature(table: Table, kind: HeatKind) -> Heat:
    read = read_amount(table, kind, read_temperature, "85 degC")
    low, high = (read.low_c, read.high_c) if isinstance(read, HeatWord) else (read.low, read.high)
    if low < COLDEST_C or high > HOTTEST_C:
        raise table.wrong(
            kind, f"{COLDEST_C:g} to {HOTTEST_C:g} °C, as an open pot can be", f'{kind} = "85 degC"'
        )
    return Heat(
        kind,
        temperature_c=float((low + high) / 2),
        minutes=float(_minutes(table, "over").aim) if "over" in table else None,
        word=read.word if isinstance(read, HeatWord) else None,
        margin_c=float((high - low) / 2),
    )


def _wait(table: Table, kind: HeatKind) -> Heat:
    read = read_amount(table, kind, read_duration, "60 min")
    if isinstance(read, Quantity):
        return Heat(kind, minutes=float(read.aim))
    if kind == "hold":
        raise table.problem(
            kind, 'nobody holds a temperature overnight; expected { rest = "overnight" }, off the heat'
        )
    return Heat(kind, overnight=read is OVERNIGHT)


def _minutes(table: Table, key: str) -> Quantity:
    read = read_amount(table, key, read_duration, "45 min")
    if not isinstance(read, Quantity):
        raise table.problem(
            key, f'{key} in {table.label} is "overnight"; expected minutes, for example "45 min"'
        )
    return read


def _judge(table: Table, faults: Faults) -> Judge | None:
    inner = table.table("judge", example='judge = { least = "30 min", most = "120 min" }')
    if inner is None:
        return None
    faults.keys(inner, JUDGE_KEYS)
    least, most = float(_minutes(inner, "least").aim), float(_minutes(inner, "most").aim)
    if least > most:
        raise inner.problem(
            "most", 'most is shorter than least; expected, for example, least = "30 min", most = "2 h"'
        )
    every = float(_minutes(inner, "snippet_every").aim) if "snippet_every" in inner else None
    return Judge(least, most, every)


def _check_straining(table: Table, step: Step, faults: Faults) -> None:
    """Straining is part of an extraction, and of nothing else."""
    if step.stage != "extract":
        for key in ("into", "refreshes"):
            if table.values.get(key):
                faults.at(
                    table,
                    key,
                    f"{key} in {table.label} strains a liquor, which only an extract step does;"
                    ' expected stage = "extract" there',
                )
    elif step.refreshes and step.into is None and "into" not in table:
        faults.at(
            table,
            "refreshes",
            f"{table.label} is refreshed but strained into no vessel;"
            ' expected, for example, into = "dye pot"',
        )
    if step.into is not None and step.into == step.vessel:
        faults.at(
            table,
            "into",
            f'{table.label} strains "{step.into}" into itself; expected another vessel,'
            ' for example into = "dye pot"',
        )
