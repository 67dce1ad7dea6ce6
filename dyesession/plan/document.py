"""A plan as plain tables and back, so that the head of a log holds the whole of it.

Knows the plan's dataclasses only by their fields. A field that is None or holds nothing is left out, because
TOML has no word for it; reading puts the field's own default back.
"""

import dataclasses
from collections.abc import Mapping
from functools import cache
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from dyesession.plan.model import Plan, PlannedStage, PlannedStep
from dyesession.plan.trouble import PlanError
from dyesession.recipe.model import HeatKind

_NOTHING: tuple[object, ...] = (None, ())


def plan_for_log(plan: Plan) -> dict[str, Any]:
    """Turn a plan into tables, lists, text and numbers that TOML can hold; private reminders stay out."""
    public = tuple(one for one in plan.reminders if not one.private)
    return _table(dataclasses.replace(plan, reminders=public))


def plan_from_document(document: Mapping[str, Any]) -> Plan:
    """Rebuild the plan that `plan_for_log` wrote; raises `PlanError` for tables of something else."""
    try:
        plan = _thing(Plan, document)
    except (KeyError, TypeError, ValueError) as error:
        raise PlanError(
            f"The plan in this log cannot be read ({error}); expected the tables a session writes at its"
            " start,"
            ' for example [plan] with recipe = "Madder brick red on wool".'
        ) from error
    assert isinstance(plan, Plan)
    return plan


WITHOUT_VESSEL = ("rest", "dry")


def step_for_log(step: PlannedStep) -> dict[str, Any]:
    """Turn one step into a table of plain values, as an entry that brings it in holds it."""
    return _table(step)


def step_from_document(document: Mapping[str, Any]) -> PlannedStep:
    """Rebuild the step that `step_for_log` wrote; raises `PlanError` for a table of something else."""
    try:
        step = _thing(PlannedStep, document)
        assert isinstance(step, PlannedStep)
        _check_step(step)
    except (KeyError, TypeError, ValueError) as error:
        raise PlanError(
            f"A step of this log cannot be read ({error}); expected, for example,"
            ' {name = "sadden", stage = "modify", vessel = "iron pot"}.'
        ) from error
    return step


def _check_step(step: PlannedStep) -> None:
    """Refuse a step nobody could do: no name, no known stage, heat of no known kind, no vessel."""
    if not isinstance(step.name, str) or not step.name.strip():
        raise ValueError("a step has no name")
    if step.stage not in get_args(PlannedStage):
        raise ValueError(f"{step.stage} is no stage")
    if any(heat.kind not in get_args(HeatKind) for heat in step.heat):
        raise ValueError("heat is to, hold, cool_to or rest")
    if step.vessel is None and (step.stage not in WITHOUT_VESSEL or step.add):
        raise ValueError(f"{step.name} names no vessel")


def _plain(value: Any) -> Any:
    if dataclasses.is_dataclass(value):
        return _table(value)
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
    return value


def _table(thing: Any) -> dict[str, Any]:
    fields = ((field.name, getattr(thing, field.name)) for field in dataclasses.fields(thing))
    return {name: _plain(value) for name, value in fields if value not in _NOTHING}


@cache
def _hints(kind: type) -> dict[str, Any]:
    return get_type_hints(kind)


def _thing(kind: Any, table: Any) -> Any:
    """Build a dataclass from its table; a key the dataclass does not have is refused."""
    if not isinstance(table, Mapping):
        raise TypeError(f"{kind.__name__} is not a table")
    hints = _hints(kind)
    unknown = set(table) - set(hints)
    if unknown:
        raise KeyError(f"{kind.__name__} has no {min(unknown)}")
    required = [field for field in dataclasses.fields(kind) if field.name not in table]
    empty = {field.name: () for field in required if _needs_tuple(field, hints)}
    return kind(
        **empty, **_nones(required, hints), **{name: _value(hints[name], table[name]) for name in table}
    )


def _has_default(field: "dataclasses.Field[Any]") -> bool:
    return field.default is not dataclasses.MISSING or field.default_factory is not dataclasses.MISSING


def _needs_tuple(field: "dataclasses.Field[Any]", hints: Mapping[str, Any]) -> bool:
    return not _has_default(field) and get_origin(hints[field.name]) is tuple


def _nones(fields: "list[dataclasses.Field[Any]]", hints: Mapping[str, Any]) -> dict[str, None]:
    """Give None to every missing field that may be None and has no default of its own."""
    return {
        field.name: None
        for field in fields
        if not _has_default(field) and type(None) in get_args(hints[field.name])
    }


def _value(hint: Any, value: Any) -> Any:
    if get_origin(hint) in (Union, UnionType):
        return _value(next(one for one in get_args(hint) if one is not type(None)), value)
    if get_origin(hint) is tuple:
        return tuple(_value(get_args(hint)[0], one) for one in value)
    if dataclasses.is_dataclass(hint):
        return _thing(hint, value)
    # TOML tells 3 from 3.0; a person who edits a log may not.
    return float(value) if hint is float else value
