"""A change of the plan at the stove, piece by piece, as frozen data and as flat tables that a log can hold.

Knows no events and no arithmetic: `again` works the pieces out, the session's fold carries them out.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from dyesession.plan.document import step_for_log, step_from_document
from dyesession.plan.model import PlannedStep
from dyesession.plan.trouble import PlanError

GRAM_DECIMALS = 3  # a milligram: finer than any kitchen scale, and short in a log
LITRE_DECIMALS = 3


@dataclass(frozen=True)
class StillToAdd:
    """What is still to go into a step of one ingredient, all portions together, and what it was before."""

    step: str
    ingredient: str
    mass_g: float
    was_g: float


@dataclass(frozen=True)
class Water:
    """Litres a step's bath should hold now, what it was before, and the grams of fibre it is for."""

    step: str
    water_l: float
    was_l: float
    fibre_g: float = 0.0


@dataclass(frozen=True)
class Enters:
    """The lots a step enters, by name, where it had all of them before."""

    step: str
    enter: tuple[str, ...]


@dataclass(frozen=True)
class After:
    """The steps a step comes after."""

    step: str
    after: tuple[str, ...]


@dataclass(frozen=True)
class NewStep:
    """A step that comes in, standing behind another in the list ("" for the end)."""

    step: PlannedStep
    behind: str = ""


@dataclass(frozen=True)
class NewIngredient:
    """Something the day did not know before: what it is, and what it is for."""

    ingredient: str
    substance: str
    role: str


@dataclass(frozen=True)
class Miss:
    """What was done stays as it was logged: so much went in, and so much is wanted as things stand now."""

    step: str
    ingredient: str
    done_g: float
    wanted_g: float


@dataclass(frozen=True)
class Draws:
    """A kept bath is poured into a step's pot before its water: `draw_l` litres of it, all of it for None.

    `kept_by` is the day that kept it, `substances` what is in it, `look_again` its date as "2026-03-20".
    """

    step: str
    label: str
    kept_by: str = ""
    draw_l: float | None = None
    substances: tuple[str, ...] = ()
    look_again: str = ""


Change = StillToAdd | Water | Enters | After | NewStep | NewIngredient | Miss | Draws


def change_for_log(change: Change) -> dict[str, Any]:
    """A change as a table of plain values, rounded to what a kitchen can tell apart."""
    if isinstance(change, NewStep):
        behind = {"behind": change.behind} if change.behind else {}
        return {**step_for_log(change.step), **behind}
    return {name: _plain(name, value) for name, value in vars(change).items() if value is not None}


def _plain(name: str, value: Any) -> Any:
    if isinstance(value, tuple):
        return list(value)
    if name.endswith("_g"):
        return round(float(value), GRAM_DECIMALS)
    return round(float(value), LITRE_DECIMALS) if name.endswith("_l") else value


# The key that tells one kind of table from the others, in this order.
_KINDS: tuple[tuple[str, type[Any]], ...] = (
    ("label", Draws),
    ("substance", NewIngredient),
    ("done_g", Miss),
    ("water_l", Water),
    ("enter", Enters),
    ("after", After),
    ("mass_g", StillToAdd),
)


def change_from_log(table: Mapping[str, Any]) -> Change:
    """The change a table holds. Raises `PlanError` for a table of something else."""
    if "stage" in table:
        document = {key: value for key, value in table.items() if key != "behind"}
        return NewStep(step_from_document(document), str(table.get("behind", "")))
    kind = next((made for key, made in _KINDS if key in table), None)
    try:
        if kind is None:
            raise KeyError("no change this program knows")
        change: Change = kind(**{key: _value(key, value) for key, value in table.items()})
    except (KeyError, TypeError, ValueError) as error:
        raise PlanError(
            f"A change of the plan cannot be read ({error}); expected, for example,"
            ' {step = "mordant", ingredient = "alum", mass_g = 37.8, was_g = 28.8}.'
        ) from error
    return change


def _value(key: str, value: Any) -> Any:
    if key in ("enter", "after", "substances"):
        return tuple(str(one) for one in value)
    if key.endswith(("_g", "_l")):
        number = float(value)
        if not 0.0 <= number < float("inf"):
            raise ValueError(f"{key} is {number:g}")
        return number
    return str(value)
