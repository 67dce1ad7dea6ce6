"""Whom to ring stands on everything with cautions that is printed from a plan."""

from dataclasses import replace

import pytest
from care.shipped import KITCHENS, RECIPES, planned

from dyesession.plan import plan_lines
from dyesession.plan.sheet import sheet_lines, sheet_of
from dyesession.plan.sheet_html import sheet_html

NUMBER = "0123 <456>"


def texts(recipe, number):
    plan, kitchen = planned(recipe), replace(KITCHENS["ordinary"], poison_centre=number)
    sheet = sheet_of(plan, kitchen, "2026-03-14")
    return "\n".join(plan_lines(plan, number)), "\n".join(sheet_lines(sheet)), sheet_html(sheet)


@pytest.mark.parametrize("recipe", RECIPES)
def test_the_number_stands_below_the_cautions(recipe):
    for text, wanted in zip(texts(recipe, NUMBER), (NUMBER, NUMBER, "0123 &lt;456&gt;"), strict=True):
        assert f"Poison centre: {wanted}" in text
        assert text.index("Care") < text.index("Poison centre")
        assert "ring your poison centre or the emergency number first" in " ".join(text.split())


def test_without_a_number_there_is_a_line_to_write_it_on():
    for text in texts("iron-saddening", ""):
        assert "Poison centre: ______" in text
