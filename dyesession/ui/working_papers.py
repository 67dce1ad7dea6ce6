"""What Working out can write down or run ahead of the day: the weighing list on paper, the day rehearsed.

Works nothing out itself; loaded when it is asked for.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.plan.sheet import sheet_lines, sheet_of
from dyesession.plan.sheet_html import sheet_html
from dyesession.rehearsal import rehearse, rehearsed_lines
from dyesession.storage import DISK

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.doses import Depth
    from dyesession.plan.model import FibreLot, Plan
    from dyesession.recipe.model import Recipe
    from dyesession.ui.workroom import Workroom


def write_list(workroom: Workroom, plan: Plan, recipe: Recipe, kitchen: Kitchen, now: datetime) -> str:
    """Write the weighing list into the workroom, as a page and as text; says where. Raises where it cannot be."""
    today = f"{now:%Y-%m-%d}"
    sheet = sheet_of(plan, kitchen, today)
    name = f"{today}-{Path(recipe.path).stem or 'recipe'}"
    page = workroom.keep_paper(f"{name}.html", sheet_html(sheet))
    workroom.keep_paper(f"{name}.txt", "\n".join(sheet_lines(sheet)) + "\n")
    # The nearest folder first: where the line is too short for the whole path, its far end goes.
    return f"Written: {page.name} and .txt in {page.parent.name}, of {page.parent.parent}."


def rehearsed(
    recipe: Recipe, lots: Sequence[FibreLot], kitchen: Kitchen, depth: Depth, now: datetime, width: int
) -> str:
    """The whole day run on a stepping clock, as lines; nothing of it is kept. Raises where it does not end."""
    day = rehearse(recipe, lots, kitchen, None, storage=DISK, start=now, depth=depth)
    return "\n".join(rehearsed_lines(day, width))
