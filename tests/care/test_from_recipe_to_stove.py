"""Every hazard that is to raise a caution does so from a recipe on paper to the words at the stove; a recipe a step
away does not.
"""

from pathlib import Path

import pytest
from care.shipped import KITCHENS, ROOMY, SCALES
from days import Day

from dyesession.care import Household
from dyesession.kitchen.model import Burner, Kitchen
from dyesession.plan import Refused, lots_from_text, work_out
from dyesession.recipe import load_recipe
from dyesession.session import events as e
from dyesession.session.asking import care_now

ORDINARY = KITCHENS["ordinary"]


def recipe(tmp_path: Path, ingredients: str, steps: str):
    """A recipe of `name: substance dose` lines and of steps as TOML."""
    head = 'format = 1\nname = "On trial"\nsummary = "For a test."\nsource = "none"\nfibre = ["wool"]\nliquor_ratio = 30\n'
    listed = ""
    for line in ingredients.strip().splitlines():
        name, role, substance, dose = (part.strip() for part in line.split("|"))
        listed += f'\n[[ingredient]]\nname = "{name}"\nsubstance = "{substance}"\nrole = "{role}"\ndose = "{dose}"\n'
    path = tmp_path / "on-trial.toml"
    path.write_text(head + listed + steps, "utf-8")
    return load_recipe(path)


def step(name, stage, vessel, add, heat='{ to = "40 degC", over = "10 min" }, { hold = "10 min" }', enter=True, after=""):
    fibre = 'enter = ["fibre"]' if enter else ""
    comes = f'after = ["{after}"]' if after else ""
    adds = ", ".join(f'"{one}"' for one in add)
    lines = (f'name = "{name}"', f'stage = "{stage}"', 'lane = "fibre"', f'vessel = "{vessel}"', comes)
    return "\n".join(("", "[[step]]", *lines, f"add = [{adds}]", fibre, f"heat = [ {heat} ]", ""))


def told(tmp_path, ingredients, steps, kitchen=ORDINARY, at=""):
    """What the dyer is told at a step, on the plan and as it begins in the day; they must agree on it."""
    made = recipe(tmp_path, ingredients, steps)
    plan = work_out(made, lots_from_text(["120 g dry wool"], "wool"), kitchen)
    name = at or plan.steps[-1].name
    day = Day(plan, kitchen.household)
    while not (isinstance(begun := day.suggest(), e.Begun) and begun.step == name):
        day.space()
    in_the_day = " / ".join(care_now(day.state, None, name, kitchen.household))
    on_the_plan = " / ".join(one.text for one in plan.reminders if one.step == name)
    return on_the_plan, in_the_day


CHILD = Kitchen(scales=SCALES, pots=ROOMY, burners=ORDINARY.burners, household=Household(child_kg=12.0))
HOT = '{ to = "80 degC", over = "30 min" }, { hold = "30 min" }'

# what: ingredients, steps, kitchen, what is said; then the recipe or kitchen a step away that does not say it
CASES = {
    "a hot bath lifted from": (
        ("alum | mordant | potassium alum | 12 %", step("mordant", "mordant", "pot", ["alum"], HOT), ORDINARY),
        "at 80 °C: one second burns. Lift with tongs",
        ("alum | mordant | potassium alum | 12 %", step("mordant", "mordant", "pot", ["alum"]), ORDINARY),
    ),
    "chalk with alum": (
        (
            "alum | mordant | potassium alum | 12 %\nchalk | assist | chalk | 20 %",
            step("mordant", "mordant", "pot", ["alum", "chalk"]),
            ORDINARY,
        ),
        "24 g chalk on alum in A: up to 5.8 L gas",
        ("chalk | assist | chalk | 20 %", step("mordant", "mordant", "pot", ["chalk"]), ORDINARY),
    ),
    "an acid after a dithionite vat": (
        (
            "hydros | assist | sodium dithionite | 5 %\nvinegar | assist | vinegar | 20 %",
            step("vat", "dye", "vat", ["hydros"], enter=False) + step("sour", "modify", "vat", ["vinegar"], after="vat"),
            ORDINARY,
        ),
        "sulphur dioxide",
        (
            "hydros | assist | sodium dithionite | 5 %\nwash | scour | neutral textile wash | 2 g/l",
            step("vat", "dye", "vat", ["hydros"], enter=False) + step("sour", "modify", "vat", ["wash"], after="vat"),
            ORDINARY,
        ),
    ),
    "iron with a child in the house": (
        ("iron | modifier | copperas | 2 %", step("sadden", "modify", "iron pot", ["iron"]), CHILD),
        "1.2 g swallowed can make a 12 kg child ill",
        ("iron | modifier | copperas | 2 %", step("sadden", "modify", "iron pot", ["iron"]), ORDINARY),
    ),
    "iron above four per cent": (
        ("iron | modifier | copperas | 5 %", step("sadden", "modify", "iron pot", ["iron"]), ORDINARY),
        "over the limit of 4 %",
        ("iron | modifier | copperas | 2 %", step("sadden", "modify", "iron pot", ["iron"]), ORDINARY),
    ),
    "an insect ground": (
        ("insects | dyestuff | lac | 20 %", step("dye", "dye", "pot", ["insects"]), ORDINARY),
        "its dust can start asthma",
        ("weld | dyestuff | weld | 20 %", step("dye", "dye", "pot", ["weld"]), ORDINARY),
    ),
    "copper": (
        ("copper | mordant | copper sulphate | 3 %", step("mordant", "mordant", "pot", ["copper"]), ORDINARY),
        "off unless you chose it",
        ("alum | mordant | potassium alum | 3 %", step("mordant", "mordant", "pot", ["alum"]), ORDINARY),
    ),
    "lye": (
        ("lye | assist | lye | 1 %", step("vat", "dye", "pot", ["lye"]), ORDINARY),
        "into cold water, bit by bit, no water onto lye",
        ("soda | assist | soda ash | 1 %", step("vat", "dye", "pot", ["soda"]), ORDINARY),
    ),
    "a powder that wants a mask": (
        ("alum | mordant | potassium alum | 12 %", step("mordant", "mordant", "pot", ["alum"]), ORDINARY),
        "mask on, damp cloth under, shut the jar first",
        ("vinegar | assist | vinegar | 12 %", step("mordant", "mordant", "pot", ["vinegar"]), ORDINARY),
    ),
    "ammonia": (
        ("ammonia | modifier | ammonia 5 % | 5 %", step("shift", "modify", "pot", ["ammonia"]), ORDINARY),
        "window wide, best outdoors, never bleach in the room",
        ("soda | modifier | soda ash | 1 %", step("shift", "modify", "pot", ["soda"]), ORDINARY),
    ),
    "a lid on what ferments": (
        ("bran | assist | bran | 50 %", step("sour", "modify", "pot", ["bran"]), ORDINARY),
        "leave the lid loose",
        ("bran | assist | bran | 50 %", step("sour", "modify", "pot", ["bran"]), KITCHENS["no lids"]),
    ),
    "a substance nobody knows": (
        ("glitter | assist | unicorn salt | 5 %", step("dye", "dye", "pot", ["glitter"]), ORDINARY),
        "No hazards known here: read its safety sheet",
        ("tartar | assist | cream of tartar | 5 %", step("dye", "dye", "pot", ["tartar"]), ORDINARY),
    ),
    "a pot of bare aluminium": (
        ("soda | assist | soda ash | 5 %", step("scour", "scour", "pot", ["soda"]), KITCHENS["bare aluminium"]),
        "in bare aluminium A: eats it",
        ("soda | assist | soda ash | 5 %", step("scour", "scour", "pot", ["soda"]), ORDINARY),
    ),
}


@pytest.mark.parametrize("what", CASES)
def test_it_is_said_on_the_plan_and_in_the_day(tmp_path, what):
    (ingredients, steps, kitchen), said, _ = CASES[what]
    on_the_plan, in_the_day = told(tmp_path, ingredients, steps, kitchen)
    assert said in on_the_plan and said in in_the_day, (on_the_plan, in_the_day)


@pytest.mark.parametrize("what", CASES)
def test_it_is_not_said_a_step_away(tmp_path, what):
    _, said, (ingredients, steps, kitchen) = CASES[what]
    assert not any(said in one for one in told(tmp_path, ingredients, steps, kitchen))


@pytest.mark.parametrize("substance", ["potassium dichromate", "chrome", "tin crystals", "tin chloride", "oxalic acid", "rhubarb leaf"])
def test_what_is_refused_is_refused_with_a_safer_way_beside_it(tmp_path, substance):
    made = recipe(tmp_path, f"thing | mordant | {substance} | 3 %", step("mordant", "mordant", "pot", ["thing"]))
    with pytest.raises(Refused, match=r"is refused: .+; instead, .+\."):
        work_out(made, lots_from_text(["120 g dry wool"], "wool"), ORDINARY)


def test_a_fuel_stove_indoors_is_refused_and_one_in_the_yard_is_not(tmp_path):
    made = recipe(tmp_path, "alum | mordant | potassium alum | 12 %", step("mordant", "mordant", "pot", ["alum"]))
    lots = lots_from_text(["120 g dry wool"], "wool")
    with pytest.raises(Refused, match="carbon monoxide"):
        work_out(made, lots, Kitchen(burners=(Burner("stove", None, "camp stove"),)))
    assert work_out(made, lots, Kitchen(burners=(Burner("stove", None, "camp stove", indoors=False),))).steps


def test_a_colour_named_after_a_drug_refuses_nothing(tmp_path):
    """Drugs are known by what they are: a recipe's "Oxalis" or "Chrome" in a colour's name means nothing."""
    made = recipe(tmp_path, "chrome yellow | dyestuff | weld | 30 %", step("dye", "dye", "pot", ["chrome yellow"]))
    assert work_out(made, lots_from_text(["120 g dry wool"], "wool"), ORDINARY).doses


@pytest.mark.parametrize(("past", "said"), [(True, "past its date"), (False, "lid off away from your face")])
def test_a_kept_bath_of_another_day_is_looked_at_before_it_goes_in(tmp_path, past, said):
    made = recipe(tmp_path, "alum | mordant | potassium alum | 12 %", step("mordant", "mordant", "pot", ["alum"]))
    day = Day(work_out(made, lots_from_text(["120 g dry wool"], "wool"), ORDINARY))
    again = f"{day.clock.now().at.date().replace(day=10 if past else 20).isoformat()}"
    drawn = e.Drawn("pot", "old madder bath", "a day before", 2.0, ("madder root",), look_again=again)
    assert any(said in text for text in care_now(day.state, drawn, "", Household()))


def test_a_kept_bath_that_must_not_meet_what_stands_in_the_pot_is_cried_out_against(tmp_path):
    made = recipe(tmp_path, "vinegar | assist | vinegar | 20 %", step("sour", "modify", "pot", ["vinegar"]))
    day = Day(work_out(made, lots_from_text(["120 g dry wool"], "wool"), ORDINARY))
    day.until(e.Lit)
    vat = e.Drawn("pot", "old vat", "a day before", 2.0, ("sodium dithionite",))
    assert "sulphur dioxide" in care_now(day.state, vat, "", Household())[0]
    mild = e.Drawn("pot", "old madder bath", "a day before", 2.0, ("madder root",))
    assert not any("Never" in text for text in care_now(day.state, mild, "", Household()))
