"""What is dyed on a day without a recipe, as it is typed on the Bench. Loads nothing heavy until something is."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.plan.model import FibreLot

_DAMP = "Weigh it washed and air-dry, a day in the room; or give both: 212 g damp, 148 g dry wool."


def lots_typed(text: str) -> tuple[FibreLot, ...]:
    """The lots of "165 g large skein; 75 g small skein"; the line asks for washed, air-dry fibre, so they are taken
    to be. Raises a `UserError` of one sentence.
    """
    from dyesession.plan import PlanError, lots_from_text

    pieces = [one.strip() for one in re.split(r";|\n", text) if one.strip()]
    if not pieces:
        raise PlanError("Say what you dye and what it weighs, for example 240 g wool.")
    lots = lots_from_text(pieces, "wool")
    if any(one.air_dry is False for one in lots):
        raise PlanError(_DAMP)
    return tuple(replace(one, air_dry=True) for one in lots)


def echo_of_lots(text: str) -> str:
    """How the typed lots were understood; empty while they are not."""
    if not text.strip():
        return ""
    from dyesession.units import show_mass

    try:
        return "= " + ", ".join(f"{show_mass(one.mass_g)} {one.name}" for one in lots_typed(text))
    except UserError:
        return ""
