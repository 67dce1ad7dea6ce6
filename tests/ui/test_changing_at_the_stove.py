"""The plan changes at the stove: rows for who has no words, a text for who has, what it means said before it counts."""

import functools
from pathlib import Path

import pytest
from ui.at_places import Room, in_a_room

from dyesession.kitchen import load_kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.recipe import load_recipe
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.suggest import Wait

ROOT = Path(__file__).resolve().parents[2]
KITCHEN = ROOT / "dyesession" / "kitchen" / "example.toml"


def a_madder_day(*fibre, **options):
    """Run a test at the Stove of a madder day on these lots."""

    def wrap(test):
        @in_a_room(kitchen=True, **options)
        async def run(room: Room):
            recipe, kitchen = load_recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml"), load_kitchen(KITCHEN)
            plan = work_out(recipe, lots_from_text(list(fibre), "wool"), kitchen)
            room.app.begin_day(recipe, plan, kitchen)
            await room.settle()
            await test(room)

        functools.update_wrapper(run, test)
        del run.__wrapped__
        return run

    return wrap


async def until(room, wanted, most=200):
    """Let the day run to the first suggestion that is wanted: the acts before it are tried elsewhere."""
    session = room.app.session
    for _ in range(most):
        suggestion = room.app.suggestion()
        if wanted(suggestion):
            await room.settle()
            room.clock.advance(5.0)
            return suggestion
        if isinstance(suggestion, Wait):
            room.clock.advance(max(6.0, (suggestion.until_s or 0.0) - session.now_s()))
            session.tick().result(10)
        else:
            room.clock.advance(5.0)
            session.do(suggestion.honest_answer() if isinstance(suggestion, Ask) else suggestion).result(10)
    raise AssertionError(f"never: {room.app.suggestion()}\n{room.text()}")


def changes(room):
    return [one.event for one in room.app.session.snapshot.entries if isinstance(one.event, e.Replanned)]


@a_madder_day("240 g dry wool")
async def test_a_corrected_weight_changes_what_is_left_to_weigh(room):
    alum = await until(room, lambda one: isinstance(one, e.Added) and one.ingredient == "alum")
    assert alum.mass_g == pytest.approx(28.8)
    await room.press("j")
    assert "still to weigh" in room.flat() and "alum 28.8 g, with mordant" in room.flat()
    await room.type("wool weighs 200 g because it was weighed again")
    assert "= wool weighs 200 g;" in room.flat()
    assert "alum still to go in with mordant: 24 g, not 28.8 g" in room.flat(), "what it means, before it counts"
    assert not changes(room)
    await room.press("enter")
    assert changes(room)[0].mass_g == 200.0
    assert "alum still to go in with mordant: 24 g" in room.flat()
    assert room.app.suggestion().mass_g == pytest.approx(24.0) and "24 g alum" in room.flat()


@a_madder_day("165 g dry large skein")
async def test_a_second_skein_joins_after_mordanting_by_touch_and_digits_alone(room):
    await until(room, lambda one: isinstance(one, e.Begun) and one.step == "dye")
    madder = room.app.session.snapshot.state.substances[0]
    await more(room, "change the plan")
    await room.touch("another lot joins")
    await room.tap("7", "5", "g", "joins mordanted because it was found")
    assert "another skein, 75 g, joins" in room.flat()
    await room.tap("enter")
    joined = changes(room)[0]
    assert (joined.lot, joined.mass_g, joined.why) == ("another skein", 75.0, "it was found")
    assert "mordant" in joined.mordanted and madder
    await until(room, lambda one: isinstance(one, e.Entered) and one.lot == "another skein")
    assert "240 g wool, 2 lots" in room.flat()


async def more(room, words):
    await room.touch(". more")
    if words not in room.text():
        await room.touch("touch here")
    await room.touch(words)


@a_madder_day("240 g dry wool", size=(60, 18))
async def test_a_change_without_a_reason_is_asked_why_and_the_text_stays(room):
    await room.press("j")
    await room.type("alum 15 %")
    assert "Say why as well" in room.flat()
    await room.press("enter")
    assert not changes(room) and room.app.screen.typed == "alum 15 %"
    await room.tap("because the water is hard", "enter")
    assert changes(room)[0].why == "the water is hard" and changes(room)[0].value == 15.0


@a_madder_day("240 g dry wool")
async def test_words_nobody_knows_get_an_example_and_an_empty_entry_gets_rows(room):
    await room.press("j")
    assert "for example small skein 75 g joins because I found it" in room.flat()
    assert {"wool weighs ", "another skein ", "alum "} <= {one.types for one in room.view.offers}
    await room.type("less red please because no")
    assert "is no change of the plan that is known here; for example" in room.flat()
    await room.press("escape", "escape")
    assert not room.view.offers and not changes(room)


@a_madder_day("240 g dry wool")
async def test_rows_are_marked_with_the_arrows_and_chosen_with_enter(room):
    await room.press("j", "down", "down", "down", "up", "enter")
    assert room.app.screen.typed == "alum " or room.app.screen.typed.endswith(" ")
    chosen = room.app.screen.typed
    await room.press("escape", "escape", "j")
    assert chosen in {one.types for one in room.view.offers}


@a_madder_day("240 g dry wool")
async def test_the_recipe_is_left_and_a_stage_of_ones_own_comes_in(room):
    await until(room, lambda one: isinstance(one, e.Begun) and one.step == "dye")
    await room.press("j")
    await room.touch("leave the recipe")
    await room.press("enter")
    assert room.app.session.snapshot.state.free and changes(room)[0].change == "recipe left"
    await room.press("j")
    await room.type("rinse in A")
    assert "= rinse in the wash pot" in room.flat()
    await room.press("enter")
    assert room.app.session.snapshot.state.step("rinse 2") or room.app.session.snapshot.state.step("rinse")
    assert changes(room)[-1].change == "step" and changes(room)[-1].why == ""


@a_madder_day("240 g dry wool")
async def test_a_refused_substance_is_refused_while_it_is_being_typed(room):
    await room.press("j")
    await room.type("mordant in A with chrome 3 % because it is bright")
    assert "chrome" in room.flat() and not changes(room)
    said = room.view.note
    await room.press("enter")
    assert not changes(room) and said and room.app.screen.typed.startswith("mordant in A")


@a_madder_day("240 g dry wool")
async def test_an_entry_is_put_right_by_touch_alone(room):
    await until(room, lambda one: isinstance(one, e.Lit))
    await more(room, "put an earlier entry right")
    added = next(one for one in room.app.session.snapshot.entries if isinstance(one.event, e.Added))
    await room.touch(f"{added.n}  wash")
    await room.touch("mass, in g: was")
    await room.tap("2", "9", "because I misread the scale", "enter")
    corrected = [one.event for one in room.app.session.snapshot.entries if isinstance(one.event, e.Corrected)]
    assert corrected[0].entry == added.n and corrected[0].changes[0]["value"] == 29.0


@a_madder_day("240 g dry wool")
async def test_a_note_is_typed_while_a_question_stands_and_answers_nothing(room):
    await until(room, lambda one: isinstance(one, Ask) and one.kind == "temperature")
    await room.press("n")
    await room.type("70 steps to the well")
    await room.press("enter")
    noted = [one.event for one in room.app.session.snapshot.entries if isinstance(one.event, e.Noted)]
    assert noted[0].text == "70 steps to the well" and isinstance(room.app.suggestion(), Ask)


@a_madder_day("240 g dry wool", size=(200, 60))
async def test_what_the_recipe_says_of_a_step_stands_beside_it(room):
    await until(room, lambda one: isinstance(one, e.Begun) and one.step.startswith("strain"))
    assert "HOW Through a cloth or sieve, away from you; let the dyestuff drain and keep it." in room.flat()
    await until(room, lambda one: isinstance(one, e.Begun) and one.step == "rinse")
    assert "HOW Near the bath's own temperature, again and again, until a white cloth pressed on the wool" in room.flat()
