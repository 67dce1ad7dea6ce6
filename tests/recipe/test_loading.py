from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.recipe import (
    ROLES,
    STAGES,
    Addition,
    Heat,
    Judge,
    RecipeError,
    check_recipe,
    find_recipe,
    load_recipe,
    recipe_from_document,
)
from dyesession.tomlfile import TomlFileError, parse_toml, write_document
from dyesession.units import Flat, PerBath, ShareOf, ShareOfFibre, WaterPerKg

RECIPES = Path(__file__).parents[2] / "recipes"

MADDER = """
format = 1
name = "Madder red"
fibre = ["wool"]

[[ingredient]]
name = "alum"
substance = "potassium alum"
role = "mordant"
dose = "12 %"
least = "8 %"
most = "15 %"

[[ingredient]]
name = "madder"
substance = "madder root"
role = "dyestuff"
dose = "50 %"

[[step]]
name = "mordant"
stage = "mordant"
lane = "fibre"
vessel = "mordant pot"
add = ["alum"]
enter = ["fibre"]
heat = [{ to = "85 degC", over = "45 min" }, { hold = "60 min" }, { rest = "overnight" }]

[[step]]
name = "extract"
stage = "extract"
lane = "liquor"
vessel = "extract pot"
add = ["madder"]
water = "20 l/kg of madder"
refreshes = 2
into = "dye pot"
heat = [{ to = "steaming" }, { hold = "60 min" }]

[[step]]
name = "dye"
stage = "dye"
lane = "fibre"
after = ["mordant", "extract"]
vessel = "dye pot"
enter = ["fibre"]
heat = [{ to = "80 degC", over = "60 min" }, { hold = "60 min" }]
judge = { least = "30 min", most = "120 min", snippet_every = "15 min" }
"""


def written(tmp_path, text):
    file = tmp_path / "r.toml"
    file.write_text(text, encoding="utf-8")
    return file


def faults(tmp_path, old, new):
    assert old in MADDER
    return check_recipe(written(tmp_path, MADDER.replace(old, new, 1)))


def line_of(text, sought):
    return text[: text.index(sought)].count("\n") + 1


def test_a_whole_recipe_is_read_as_written(tmp_path):
    recipe = load_recipe(written(tmp_path, MADDER))
    assert recipe.liquor_ratio == 30.0
    assert recipe.ingredient("alum").dose == ShareOfFibre(Fraction(3, 25), Fraction(3, 25), "12 %")
    assert recipe.ingredient("alum").least == ShareOfFibre(Fraction(2, 25), Fraction(2, 25), "8 %")
    mordant, extract, dye = recipe.steps
    assert mordant.heat == (
        Heat("to", 85.0, 45.0),
        Heat("hold", minutes=60.0),
        Heat("rest", overnight=True),
    )
    assert mordant.add == (Addition("alum", Fraction(1)),)
    assert extract.water == WaterPerKg(Fraction(20), Fraction(20), "madder", "20 l/kg of madder")
    assert (extract.refreshes, extract.into) == (2, "dye pot")
    assert extract.heat[0] == Heat("to", 67.5, None, word="steaming", margin_c=7.5)
    assert dye.judge == Judge(30.0, 120.0, 15.0)
    assert dye.after == ("mordant", "extract")


def test_the_copy_in_a_log_makes_the_same_recipe(tmp_path):
    recipe = load_recipe(written(tmp_path, MADDER))
    again = recipe_from_document(parse_toml(write_document(recipe.document).encode(), "log").values, "log")
    assert again == type(recipe)(**{**vars(recipe), "path": ""})


@pytest.mark.parametrize("file", sorted(RECIPES.glob("*.toml")), ids=lambda file: file.stem)
def test_every_recipe_of_the_house_is_sound(file):
    assert check_recipe(file) == []
    recipe = load_recipe(file)
    assert recipe.source, "each names its book or says that it is a house recipe"
    copied = recipe_from_document(parse_toml(write_document(recipe.document).encode(), "log").values, "log")
    assert copied.steps == recipe.steps
    assert copied.ingredients == recipe.ingredients


def test_the_recipes_of_the_house_use_every_stage_and_every_form_of_dose():
    recipes = [load_recipe(file) for file in RECIPES.glob("*.toml")]
    assert len(recipes) >= 10
    steps = [step for recipe in recipes for step in recipe.steps]
    assert {step.stage for step in steps} == set(STAGES)
    doses = [one.dose for recipe in recipes for one in recipe.ingredients]
    assert {type(dose) for dose in doses} == {ShareOfFibre, ShareOf, PerBath, Flat}
    assert any(dose.low < dose.high for dose in doses if "%" in dose.text)
    assert any("per 2 1/2 lb" in dose.text for dose in doses)
    assert any(" to " in dose.text and "oz" in dose.text for dose in doses)
    assert any("lb 3 oz" in dose.text for dose in doses)
    assert any(dose.high > 1 for dose in doses if isinstance(dose, ShareOfFibre)), "fresh plants, above 100 %"
    assert any(one.bagged for recipe in recipes for one in recipe.ingredients)
    assert any(addition.share < 1 for step in steps for addition in step.add)
    assert {one.role for recipe in recipes for one in recipe.ingredients} == set(ROLES) - {"water"}


def test_a_step_of_the_house_wets_the_fibre_before_it_is_mordanted_or_dyed():
    for file in RECIPES.glob("*.toml"):
        recipe = load_recipe(file)
        by_name = {step.name: step for step in recipe.steps}
        for step in recipe.steps:
            if step.enter and step.stage in ("mordant", "dye", "modify"):
                before, seen = list(step.after), set()
                while before:
                    one = before.pop()
                    seen.add(by_name[one].stage)
                    before.extend(by_name[one].after)
                assert seen & {"scour", "wet"}, (file.name, step.name)


FAULTY = {
    "an unknown key is named with the nearest known one": (
        'role = "mordant"',
        'roll = "mordant"',
        ['"roll"', '"role"', "has no role"],
    ),
    "a wrong unit is told with an example": ('dose = "12 %"', 'dose = "12 frobs"', ["12 frobs", "12 %"]),
    "a dose without a weight is refused for that reason": (
        'dose = "50 %"',
        'dose = "3 oz per 10 yards"',
        ["needs a weight"],
    ),
    "a spoonful needs a weight": ('dose = "12 %"', 'dose = "2 tablespoons"', ["needs a weight"]),
    "a missing base is named": ('dose = "50 %"', 'dose = "50 % of allum"', ['"allum"', '"alum"']),
    "a dose on itself has nothing to stand on": ('dose = "50 %"', 'dose = "50 % of madder"', ["itself"]),
    "a dose of nothing is no dose": ('dose = "50 %"', 'dose = "0 %"', ["more than nothing"]),
    "an unknown stage is told the nearest": ('stage = "dye"', 'stage = "dyeing"', ['"dyeing"', '"dye"']),
    "an unknown lane is told the choices": ('lane = "liquor"', 'lane = "top"', ['"liquor"', '"fibre"']),
    "an unknown role is told the nearest": ('role = "dyestuff"', 'role = "dyestuf"', ['"dyestuff"']),
    "a step after an unknown step is told the nearest": (
        'after = ["mordant", "extract"]',
        'after = ["mordent", "extract"]',
        ['"mordent"', '"mordant"'],
    ),
    "an ingredient nobody defined is told the nearest": (
        'add = ["alum"]',
        'add = ["alumm"]',
        ['"alumm"', '"alum"'],
    ),
    "an ingredient never added is named": ('add = ["madder"]\n', "", ['"madder" is never added']),
    "more than all of it cannot be added": (
        'add = ["madder"]',
        'add = ["madder", { madder = "half" }]',
        ["more than all of it"],
    ),
    "a share above one is refused": ('add = ["madder"]', 'add = [{ madder = "3/2" }]', ["share"]),
    "a share must be a share": ('add = ["madder"]', 'add = [{ madder = "lots" }]', ["share"]),
    "straining is for extractions": (
        'enter = ["fibre"]\nheat = [{ to = "80',
        'enter = ["fibre"]\ninto = "bowl"\nheat = [{ to = "80',
        ["only an extract step"],
    ),
    "a refresh needs somewhere to strain into": ('into = "dye pot"\n', "", ["strained into no vessel"]),
    "a vessel is not strained into itself": ('into = "dye pot"', 'into = "extract pot"', ["into itself"]),
    "a liquor goes where something happens": (
        'into = "dye pot"',
        'into = "die pot"',
        ['"die pot"', '"dye pot"'],
    ),
    "one vessel holds one bath at a time": (
        'vessel = "extract pot"',
        'vessel = "mordant pot"',
        ['"mordant pot"', "at once"],
    ),
    "a liquor is not strained onto an unordered bath": (
        'into = "dye pot"',
        'into = "mordant pot"',
        ['"mordant pot"', "at once"],
    ),
    "only fibre is entered": ('enter = ["fibre"]', 'enter = ["fiber"]', ['"fiber"', '"fibre"']),
    "heat is one thing at a time": (
        '{ hold = "60 min" }',
        '{ hold = "60 min", rest = "1 h" }',
        ["one of to"],
    ),
    "only a rise takes its time over": (
        '{ hold = "60 min" }',
        '{ hold = "60 min", over = "1 h" }',
        ['"over" belongs to a rise'],
    ),
    "nobody holds a heat overnight": ('{ hold = "60 min" }', '{ hold = "overnight" }', ["overnight", "rest"]),
    "no pot gets hotter than boiling": ('to = "85 degC"', 'to = "150 degC"', ["0 to 105"]),
    "a heat needs a temperature": ('to = "85 degC"', 'to = "warmish"', ["warmish", "85 degC"]),
    "the eye's least comes before its most": ('least = "30 min"', 'least = "3 h"', ["shorter than least"]),
    "least is not above the dose": ('least = "8 %"', 'least = "13 %"', ["wrong side"]),
    "most is not below the dose": ('most = "15 %"', 'most = "10 %"', ["wrong side"]),
    "least is reckoned as the dose is": ('least = "8 %"', 'least = "5 g"', ["not reckoned as the dose is"]),
    "a vessel is wanted for a bath": ('vessel = "mordant pot"\n', "", ["has no vessel", "dye pot"]),
    "a water that covers is no amount": ('water = "20 l/kg of madder"', 'water = "to cover"', ["30 l/kg"]),
    "a water on an unknown base is told the nearest": (
        'water = "20 l/kg of madder"',
        'water = "20 l/kg of mader"',
        ['"mader"', '"madder"'],
    ),
    "a recipe is meant for some fibre": ('fibre = ["wool"]\n', "", ["no fibre"]),
    "two steps of one name cannot be told apart": (
        'name = "extract"',
        'name = "mordant"',
        ["names two steps"],
    ),
    "a ratio is a number": (
        'fibre = ["wool"]',
        'fibre = ["wool"]\nliquor_ratio = "1:30"',
        ["liquor_ratio = 30"],
    ),
}


@pytest.mark.parametrize("case", FAULTY, ids=[name.replace(" ", "_") for name in FAULTY])
def test_a_fault_is_one_sentence_with_file_line_and_example(tmp_path, case):
    old, new, wanted = FAULTY[case]
    found = faults(tmp_path, old, new)
    assert found
    said = " | ".join(found)
    for words in wanted:
        assert words in said, said
    for sentence in found:
        assert "r.toml, line " in sentence or "names no fibre" in sentence
        assert "expected" in sentence
        assert "\n" not in sentence
    with pytest.raises((RecipeError, TomlFileError)) as caught:
        load_recipe(tmp_path / "r.toml")
    assert str(caught.value) == found[0]


def test_a_ring_of_steps_is_told_with_its_members(tmp_path):
    text = MADDER.replace('name = "mordant"\nstage', 'name = "mordant"\nafter = ["dye"]\nstage')
    [sentence] = check_recipe(written(tmp_path, text))
    assert "none could begin" in sentence
    assert '"mordant"' in sentence
    assert '"dye"' in sentence


def test_a_day_of_a_thousand_steps_is_refused(tmp_path):
    rinse = '[[step]]\nname = "r{}"\nstage = "rinse"\nlane = "fibre"\nvessel = "b{}"\nafter = ["{}"]\n'
    steps = "".join(rinse.format(i, i, f"r{i - 1}" if i else "dye") for i in range(1000))
    [sentence] = check_recipe(written(tmp_path, MADDER + steps))
    assert "no more than 60" in sentence


def test_what_has_no_weight_is_no_base(tmp_path):
    rain = '\n[[ingredient]]\nname = "rain"\nsubstance = "water"\nrole = "water"\n'
    for old, new in (("50 %", "50 % of rain"), ("20 l/kg of madder", "20 l/kg of rain")):
        [sentence] = check_recipe(written(tmp_path, MADDER.replace(old, new) + rain))
        assert "no weight" in sentence


def test_nothing_is_added_to_no_vessel(tmp_path):
    dry = '\n[[step]]\nname = "dry"\nstage = "dry"\nlane = "fibre"\nafter = ["dye"]\nadd = ["alum"]\n'
    found = check_recipe(written(tmp_path, MADDER.replace('add = ["alum"]\n', "") + dry))
    assert ["to no vessel" in sentence for sentence in found] == [True]


def test_the_line_of_a_fault_is_the_line_in_the_file(tmp_path):
    text = MADDER.replace('dose = "50 %"', 'dose = "50 carrots"')
    [sentence] = check_recipe(written(tmp_path, text))
    assert f"line {line_of(text, '50 carrots')}:" in sentence


def test_all_faults_are_found_and_not_only_the_first(tmp_path):
    text = (
        MADDER.replace('role = "mordant"', 'role = "salt"')
        .replace('"80 degC"', '"hotter"')
        .replace("hold", "held", 1)
    )
    assert len(check_recipe(written(tmp_path, text))) == 3


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (MADDER.replace("format = 1", "format = 2"), "newer"),
        (MADDER.replace("format = 1\n", ""), "format = 1"),
        ("format = 1\nname = 'x'\nfibre = ['wool']\n", "no step"),
        ("format = ", "line 1"),
        ("", "format"),
    ],
)
def test_a_file_that_is_no_recipe_of_this_format_says_so(tmp_path, text, words):
    found = check_recipe(written(tmp_path, text))
    assert words in found[0]
    assert found == check_recipe(tmp_path / "r.toml")
    with pytest.raises((RecipeError, TomlFileError)):
        load_recipe(tmp_path / "r.toml")


def test_a_newer_format_raises_that_one_fault_alone(tmp_path):
    found = check_recipe(written(tmp_path, MADDER.replace("format = 1", "format = 7").replace("12 %", "no")))
    assert len(found) == 1


def test_a_missing_file_is_one_sentence(tmp_path):
    [sentence] = check_recipe(tmp_path / "none.toml")
    assert "none.toml" in sentence


def test_a_refused_substance_may_be_read_in_an_old_recipe(tmp_path):
    recipe = load_recipe(written(tmp_path, MADDER.replace("potassium alum", "bichromate of potash")))
    assert recipe.ingredient("alum").substance == "bichromate of potash"


def test_two_liquors_may_be_strained_into_one_pot(tmp_path):
    second = """
[[ingredient]]
name = "weld"
substance = "weld"
role = "dyestuff"
dose = "20 %"

[[step]]
name = "extract weld"
stage = "extract"
lane = "liquor"
vessel = "weld pot"
add = ["weld"]
into = "dye pot"
"""
    text = MADDER.replace('["mordant", "extract"]', '["mordant", "extract", "extract weld"]') + second
    assert check_recipe(written(tmp_path, text)) == []


@pytest.mark.parametrize(
    ("written_share", "share"),
    [("half", "1/2"), ("1/4", "1/4"), ("25 %", "1/4"), ("two thirds", "2/3"), ("all", "1"), ("3/8", "3/8")],
)
def test_a_portion_may_be_a_word_a_fraction_or_a_percentage(tmp_path, written_share, share):
    text = MADDER.replace('add = ["madder"]', f'add = [{{ madder = "{written_share}" }}]')
    assert load_recipe(written(tmp_path, text)).steps[1].add == (Addition("madder", Fraction(share)),)


def test_a_recipe_is_found_by_path_by_file_name_and_by_its_own_name(tmp_path):
    file = written(tmp_path, MADDER).rename(tmp_path / "my-red.toml")
    for asked in (str(file), "my-red", "my-red.toml", "My Red", "madder red", "Madder-Red"):
        assert find_recipe(asked, [tmp_path]) == file


def test_the_first_folder_wins(tmp_path):
    mine, theirs = tmp_path / "a", tmp_path / "b"
    for folder in (mine, theirs):
        folder.mkdir()
        (folder / "red.toml").write_text(MADDER, encoding="utf-8")
    assert find_recipe("red", [mine, theirs]) == mine / "red.toml"
    assert find_recipe("Madder red", [theirs, mine]) == theirs / "red.toml"


def test_a_recipe_nobody_has_is_told_the_nearest(tmp_path):
    written(tmp_path, MADDER)
    with pytest.raises(RecipeError, match='perhaps "madder-red"'):
        find_recipe("Mader red", [tmp_path, tmp_path / "no such folder"])


def test_a_beginning_that_only_one_recipe_has_is_enough():
    assert find_recipe("madder brick", [RECIPES]).stem == "madder-brick-red-on-wool"
    with pytest.raises(RecipeError, match='perhaps "madder-brick-red-on-wool" or'):
        find_recipe("madder", [RECIPES])


def test_where_there_are_no_recipes_a_miss_says_so(tmp_path):
    with pytest.raises(RecipeError, match="none, for there are none"):
        find_recipe("madder", [tmp_path])


@given(st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(
        ("name", "stage", "lane", "add", "heat", "to", "hold", "dose", "water", "after", "judge", "least")
    ), inner, max_size=4),
    max_leaves=12,
))  # fmt: skip
def test_whatever_stands_in_a_table_is_a_recipe_or_one_sentence(thing):
    tables = {"format": 1, "name": "x", "fibre": ["wool"], "step": thing, "ingredient": thing}
    try:
        recipe_from_document(tables, "log")
    except RecipeError as error:
        assert "\n" not in str(error)


def one_step_more(*lines: str) -> str:
    return MADDER + '\n[[step]]\nname = "rinse"\nstage = "rinse"\nlane = "fibre"\nvessel = "basin"\n' + "\n".join(lines)


def test_the_fibre_cannot_be_in_two_steps_at_once(tmp_path: Path) -> None:
    path = tmp_path / "own.toml"
    path.write_text(one_step_more('enter = ["fibre"]'), "utf-8")
    (fault,) = check_recipe(path)
    assert '"rinse" at once' in fault and 'after = ["' in fault
    path.write_text(one_step_more('enter = ["fibre"]', 'after = ["dye"]'), "utf-8")
    assert check_recipe(path) == []
