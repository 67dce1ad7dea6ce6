"""A kitchen without a thermometer is told heat by its look; the degrees of the recipe stand behind, as "about"."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.kitchen import load_kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.recipe import load_recipe
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.fold import opening_state
from dyesession.units import HeatWord, by_eye

ROOT = Path(__file__).resolve().parents[2]
KITCHEN = load_kitchen(ROOT / "dyesession" / "kitchen" / "example.toml")


@pytest.mark.parametrize("word", HeatWord)
def test_the_middle_of_a_heat_word_looks_like_that_word(word: HeatWord) -> None:
    looks = by_eye(float(word.aim))
    assert looks.removeprefix("a ").removeprefix("the ") in (
        word.word,
        word.word.removesuffix("ing"),
        "simmer",
    )


@given(st.floats(0, 105), st.floats(0, 105))
def test_a_hotter_bath_never_looks_cooler(one: float, other: float) -> None:
    order = [
        "lukewarm",
        "hand-hot",
        "hot, not steaming",
        "steaming",
        "steaming, not simmering",
        "a simmer",
        "the boil",
    ]
    low, high = sorted((one, other))
    assert order.index(by_eye(low)) <= order.index(by_eye(high))


@pytest.mark.parametrize(
    ("thermometer", "wanted"), [(False, "steaming (about 60 °C)"), (None, "60 °C"), (True, "60 °C")]
)
def test_what_to_wait_for_is_said_as_this_kitchen_can_tell_it(thermometer: bool | None, wanted: str) -> None:
    recipe = load_recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml")
    kitchen = replace(KITCHEN, thermometer=thermometer)
    state = opening_state(work_out(recipe, lots_from_text(["240 g dry wool"], "wool"), kitchen))
    said = words.command_words(state, e.Reached("scour pot", 60.0)).replace("\N{NO-BREAK SPACE}", " ")
    assert said.endswith(f"is at {wanted}")
    if thermometer is False:
        assert not re.search(r"(?<!about )\b60 °C", said)
