"""Invented worked examples. The arithmetic is from these sources:

a tared dose on a scale that shows d rounds twice, u = d/sqrt(6) (rectangular error, NIST TN 1297 section 4),
with a repeatability of d/2 taken besides (judgement), told at two standard deviations; a dose in per cent of
the fibre's washed, air-dry weight is mass x per cent / 100 (definition); a stock of 1 % holds 1 g in 100 mL
(definition); iron is 20.09 % of ferrous sulphate heptahydrate (molar masses) and 20 mg of iron per kg of body
brings symptoms (McGuigan 1996). A pot is filled to two thirds: common practice, no source. Trade facts of
common practice, no source: 3 to 5 % of cochineal on 80 g is 2.4 to 4.0 g, which a scale that shows grams
cannot weigh; 2.5 oz is 70.87 g.
"""

import math

import pytest

from dyesession.kitchen import Household, Kitchen, Pot, Scale
from dyesession.plan import PlanError, lot_from_text, work_out
from dyesession.recipe import recipe_from_document
from dyesession.units import read_mass

GRAM_SCALE = Scale("kitchen scale", 1.0, 5000.0)


def a_recipe(ingredient, **step):
    tables = {
        "format": 1,
        "name": "A trial",
        "fibre": ["wool"],
        "liquor_ratio": 30,
        "ingredient": [ingredient],
        "step": [{"lane": "fibre", "enter": ["fibre"], **step}],
    }
    return recipe_from_document(tables, "trial")


ALUM = a_recipe(
    {"name": "alum", "substance": "potassium alum", "role": "mordant", "dose": "12 %"},
    name="mordant",
    stage="mordant",
    vessel="mordant pot",
    add=["alum"],
)


def iron(dose):
    return a_recipe(
        {"name": "iron", "substance": "ferrous sulphate", "role": "modifier", "dose": dose},
        name="sadden",
        stage="modify",
        vessel="iron pot",
        add=["iron"],
    )


def cochineal(dose):
    return a_recipe(
        {"name": "cochineal", "substance": "cochineal", "role": "dyestuff", "dose": dose},
        name="extract",
        stage="extract",
        vessel="dye pot",
        add=["cochineal"],
    )


class TestDampYarn:
    """212 g as it comes off the line, 148 g when last air-dry; a pot of 6 L, a scale that shows grams."""

    KITCHEN = Kitchen(scales=(GRAM_SCALE,), pots=(Pot("pot", 6.0),))

    def plan(self):
        return work_out(ALUM, [lot_from_text("212 g damp, 148 g dry wool", "wool")], self.KITCHEN)

    def test_the_dose_is_reckoned_on_the_dry_weight(self):
        dose = self.plan().dose("alum")
        assert dose.mass_g.aim == pytest.approx(148 * 0.12)
        assert f"{dose.mass_g.aim:.1f}" == "17.8"
        assert dose.weigh.how == "scale"
        assert dose.weigh.say == "weigh 18 g, ± 1.3 g on your 1 g scale"
        assert dose.weigh.sd_g == pytest.approx(math.sqrt(1 / 6 + 1 / 4))

    def test_the_damp_weight_would_have_given_43_per_cent_too_much(self):
        said = "17.8 g of alum, on 148 g air-dry; on 212 g you would give 25.4 g, 43 % over."
        assert said in self.plan().warnings

    def test_the_pot_takes_a_shorter_ratio(self):
        [bath] = self.plan().baths
        assert bath.water_l == pytest.approx(4.0)
        assert bath.fits is True
        assert bath.say == "1:30 wants 4.4 L; two thirds of your pot is 4.0 L: use 1:27"

    def test_the_damp_weight_alone_is_refused_and_what_to_do_is_said(self):
        with pytest.raises(
            PlanError, match=r"212 g is not the washed, air-dry weight .* lie in the room for a day"
        ):
            work_out(ALUM, [lot_from_text("212 g damp wool", "wool")], self.KITCHEN)


class TestIron:
    """120 g of wool, saddening at 2 %, a scale that shows grams, a child of 12 kg in the house."""

    KITCHEN = Kitchen(scales=(GRAM_SCALE,), household=Household(child_kg=12.0))

    def plan(self):
        return work_out(iron("2 %"), [lot_from_text("120 g dry wool", "wool")], self.KITCHEN)

    def test_a_stock_solution_measures_what_the_scale_cannot(self):
        dose = self.plan().dose("iron")
        assert dose.mass_g.aim == pytest.approx(2.4)
        assert dose.weigh.how == "stock solution"
        assert (dose.weigh.take_g, dose.weigh.make_up_l) == (10.0, 1.0)
        assert dose.weigh.use_l == pytest.approx(0.240)
        assert dose.weigh.say == (
            "2.4 g; your 1 g scale could miss that by 1.3 g. Dissolve 10 g to 1 L and add 120 mL with the"
            " fibre lifted, ten minutes, look; up to 120 mL more (± 13 %)"
        )

    def test_the_error_is_that_of_weighing_the_stock_and_measuring_it_out(self):
        weighing = 2 * math.sqrt(1 / 6 + 1 / 4) / 10
        whole = math.sqrt(weighing**2 + 0.02**2 + 0.03**2)
        assert round(100 * whole) == 13
        assert self.plan().dose("iron").weigh.sd_g == pytest.approx(2.4 * whole / 2)

    def test_the_child_in_the_house_is_thought_of(self):
        said = [one.text for one in self.plan().reminders if one.severity >= 3]
        # 12 kg x 20 mg/kg is 240 mg of iron, in 1.2 g of the crystals.
        assert any("1.2 g" in text and "12 kg child" in text for text in said)
        assert any(one.startswith("Iron is in this plan.") and "poison centre" in one for one in self.plan().warnings)

    def test_the_house_recipe_gives_the_same_in_two_halves(self):
        from pathlib import Path

        from dyesession.recipe import load_recipe

        recipe = load_recipe(Path(__file__).parents[2] / "recipes" / "iron-saddening.toml")
        plan = work_out(recipe, [lot_from_text("120 g dry wool", "wool")], self.KITCHEN)
        assert plan.dose("iron").weigh == self.plan().dose("iron").weigh
        assert [plan.step(name).add[0].mass_g for name in ("sadden", "sadden more")] == pytest.approx(
            [1.2, 1.2]
        )


@pytest.mark.parametrize(("dose", "grams"), [("3 %", 2.4), ("3 to 5 %", 3.2), ("5 %", 4.0)])
def test_a_little_cochineal_cannot_be_weighed_in_grams_and_becomes_a_stock_liquor(dose, grams):
    plan = work_out(cochineal(dose), [lot_from_text("80 g dry wool", "wool")], Kitchen(scales=(GRAM_SCALE,)))
    found = plan.dose("cochineal")
    assert found.mass_g.aim == pytest.approx(grams)
    assert found.weigh.how == "stock liquor"
    assert found.weigh.use_l / found.weigh.make_up_l * found.weigh.take_g == pytest.approx(grams)


def test_two_and_a_half_ounces_are_70_87_grams():
    assert float(read_mass("2.5 oz").aim) == pytest.approx(70.87, abs=0.005)
