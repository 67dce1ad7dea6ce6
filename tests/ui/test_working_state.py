"""What Working out keeps, without a screen: lots come, change and go, and the plan and the next act follow."""

from dataclasses import replace
from pathlib import Path

import pytest

from dyesession.kitchen.loading import load_kitchen
from dyesession.plan import lot_from_text
from dyesession.recipe.loading import load_recipe
from dyesession.ui.working_next import next_act, next_key, next_mark
from dyesession.ui.working_state import WorkingState, next_depth, with_lot, without_lot, worked_out

ROOT = Path(__file__).resolve().parents[2]


def told(recipe: str = "madder-brick-red-on-wool") -> WorkingState:
    kitchen = load_kitchen(ROOT / "dyesession/kitchen/example.toml")
    return WorkingState(load_recipe(ROOT / "recipes" / f"{recipe}.toml"), kitchen, kitchen)


def dry(text: str):
    return replace(lot_from_text(text, "wool"), air_dry=True)


def test_a_second_lot_of_the_same_name_is_numbered_and_both_are_dosed() -> None:
    one = with_lot(told(), dry("100 g wool"))
    two = with_lot(one, dry("140 g wool"))
    assert [lot.name for lot in two.lots] == ["wool", "wool 2"]
    assert one.plan is not None and two.plan is not None
    assert two.plan.dose("alum").mass_g.aim == pytest.approx(one.plan.dose("alum").mass_g.aim * 2.4)


def test_a_lot_typed_anew_stands_where_the_old_one_stood_and_keeps_its_name() -> None:
    two = with_lot(with_lot(told(), dry("100 g large skein")), dry("50 g small skein"))
    again = with_lot(two, dry("90 g large skein"), instead_of="large skein")
    assert [(lot.name, lot.mass_g) for lot in again.lots] == [("large skein", 90.0), ("small skein", 50.0)]


def test_the_last_lot_taken_away_leaves_no_plan_and_asks_for_fibre_again() -> None:
    none = without_lot(with_lot(told(), dry("100 g wool")), "wool")
    assert none.plan is None and none.shopping is None and not none.trouble
    assert next_key(none) == "lot+" and "fibre" in next_act(none).act


def test_fibre_nobody_called_dry_is_asked_about_before_anything_else() -> None:
    unsure = with_lot(told(), lot_from_text("100 g wool", "wool"))
    assert next_key(unsure) == "dry:wool" == next_mark(unsure, "recipe")
    damp = worked_out(replace(unsure, lots=(replace(unsure.lots[0], air_dry=False),)))
    assert damp.plan is None and "air-dry" in damp.trouble
    assert next_key(damp) == "lot:wool" and "both its weights" in next_act(damp).act


def test_deeper_asks_for_more_dyestuff_and_after_it_paler_comes_round() -> None:
    usual = with_lot(told("logwood-purple-on-wool"), dry("100 g wool"))
    deeper = next_depth(usual)
    paler = next_depth(deeper)
    assert [one.depth for one in (usual, deeper, paler)] == ["aim", "high", "low"]
    masses = [one.plan.dose("logwood").mass_g.aim for one in (paler, usual, deeper) if one.plan is not None]
    assert len(masses) == 3 and masses == sorted(masses) and masses[0] < masses[2]
