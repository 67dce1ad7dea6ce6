"""A line of craft for every stage, short enough for a screen, each with its source."""

from typing import get_args

import pytest

from dyesession.plan.model import PlannedStage
from dyesession.session.craft import CRAFT, PRACTICE, craft_line

AT_80_CELLS = 80 - len(" HAND   ") - 1  # the whole line, in the smallest common window
BOOKS = ("Mairet", "Beech")


@pytest.mark.parametrize("stage", get_args(PlannedStage))
def test_every_stage_has_one_line_with_its_source(stage: PlannedStage) -> None:
    craft = CRAFT[stage]
    assert craft.text.endswith(".") and len(craft.text) <= AT_80_CELLS and "\n" not in craft.text
    assert craft.source == PRACTICE or any(book in craft.source for book in BOOKS)
    assert craft_line(stage) == f"{craft.text} ({craft.source})"


def test_the_straining_and_rinsing_are_said_where_they_help() -> None:
    assert "Bag the dyestuff from the start" in craft_line("extract")
    assert "paper clogs" in craft_line("strain") and "settle" in craft_line("strain")
    assert "near the bath's own heat" in craft_line("rinse")
    assert "cools in the bath" in craft_line("dye")
    assert "knots survive the pot" in craft_line("scour")
