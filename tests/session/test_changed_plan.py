"""The plan changes at the stove: what is left is worked out again, what was done stays as it was logged."""

from dataclasses import replace
from typing import Any

import pytest
from days import Day
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.care import Household
from dyesession.errors import UserError
from dyesession.plan.model import FibreLot
from dyesession.session import events as e
from dyesession.session.engine import Refused
from dyesession.session.fold import Entry, fold, opening_state
from dyesession.session.situation import situation_of
from dyesession.session.typed import Hand, NotUnderstood, understand
from dyesession.session.words import happened_words


def typed(day: Day, text: str) -> e.Event:
    return understand("plan", text, day.state, Hand()).event


def until_over(day: Day, step: str) -> None:
    for _ in range(400):
        found = day.state.step(step)
        if found and found.status == "complete":
            return
        day.space()
    raise AssertionError(f"{step} is never over")


def still_g(day: Day, step: str, ingredient: str) -> float:
    found = day.state.step(step)
    assert found is not None
    return sum(one.mass_g for one in found.plan.add[found.added :] if one.ingredient == ingredient)


def test_a_second_skein_that_joins_after_mordanting_is_mordanted_by_itself_and_dyed_with_the_others() -> None:
    day = Day()
    until_over(day, "mordant")
    day.do(typed(day, "lot found skein 60 g joins because I found it under the table"))
    own = day.state.step("mordant found skein")
    assert own and own.plan.enter == ("found skein",)
    assert {one.ingredient: one.mass_g for one in own.plan.add} == {"alum": 7.2, "tartar": 3.6}
    day.home()
    dye, rinse = day.state.step("dye"), day.state.step("rinse")
    assert own and dye and rinse
    assert set(dye.entered) == set(rinse.entered) == {"large skein", "small skein", "found skein"}
    assert day.state.step("mordant found skein").entered == ("found skein",)  # type: ignore[union-attr]
    assert not day.state.flags


def test_a_skein_bought_mordanted_needs_no_mordant_of_its_own() -> None:
    day = Day()
    until_over(day, "mordant")
    day.do(typed(day, "60 g found skein joins, bought mordanted because it was in the drawer"))
    assert [one.name for one in day.state.steps if "found" in one.name] == []
    day.home()
    dye = day.state.step("dye")
    assert dye and "found skein" in dye.entered


def test_a_skein_that_joins_first_thing_goes_through_everything_with_the_others() -> None:
    day = Day()
    day.do(typed(day, "60 g found skein joins because I have time"))
    assert still_g(day, "mordant", "alum") == pytest.approx(36.0)
    assert still_g(day, "extract", "madder") == pytest.approx(150.0)
    day.home()
    assert all("found skein" in one.entered for one in day.state.steps if one.plan.enter)


def test_a_lot_in_the_mordant_stays_there_while_another_joins() -> None:
    day = Day()
    while (mordant := day.state.step("mordant")) and mordant.countdown is None:
        day.space()
    before = mordant.countdown
    day.do(typed(day, "60 g found skein joins because I found it"))
    mordant = day.state.step("mordant")
    assert mordant and mordant.countdown == before
    assert mordant.plan.enter == ("large skein", "small skein")
    assert not isinstance(day.suggest(), e.Lifted)
    day.home()


def test_a_corrected_weight_changes_what_is_left_to_weigh() -> None:
    day = Day()
    day.do(typed(day, "small skein weighs 95 g because I misread the scale"))
    assert still_g(day, "mordant", "alum") == pytest.approx(260 * 0.12)
    added = day.until(e.Added)
    assert isinstance(added, e.Added)
    mordant = day.state.step("mordant")
    assert mordant and mordant.plan.water_l == pytest.approx(7.2 * 260 / 240)
    assert day.state.lot("small skein").mass_g == 95.0  # type: ignore[union-attr]


def test_what_was_done_on_the_wrong_weight_stays_and_is_told() -> None:
    day = Day()
    until_over(day, "mordant")
    added = [one.event for one in day.entries if isinstance(one.event, e.Added)]
    day.do(typed(day, "large skein weighs 190 g because I misread the scale"))
    told = happened_words(day.state, day.entries[-1].event)
    assert "28.8 g alum went in with mordant" in told and "too little as it stands now" in told
    assert [one.event for one in day.entries if isinstance(one.event, e.Added)] == added
    day.home()


def test_a_raised_dose_comes_out_of_what_is_still_to_go_in() -> None:
    day = Day()
    day.do(typed(day, "alum 15 % because the water is hard"))
    replanned = day.entries[-1].event
    assert isinstance(replanned, e.Replanned) and replanned.value == 15.0
    assert still_g(day, "mordant", "alum") == pytest.approx(36.0)


def test_a_dose_raised_while_the_skeins_are_in_lifts_them_adds_the_rest_and_enters_them_again() -> None:
    day = Day()
    while (mordant := day.state.step("mordant")) and mordant.countdown is None:
        day.space()
    day.do(typed(day, "alum 5 g more because it felt too little"))
    seen = []
    while still_g(day, "mordant", "alum") > 0:
        act = day.space()
        if getattr(act, "vessel", "") == "mordant pot":
            seen.append(act)
    lifted = [one for one in seen if isinstance(one, e.Lifted)]
    added = [one for one in seen if isinstance(one, e.Added)]
    assert [one.lot for one in lifted] == ["large skein", "small skein"]
    assert added[-1].mass_g == pytest.approx(5.0) and added[-1].portion == "more"
    day.home()
    assert {one.status for one in day.state.steps} == {"complete"}


def test_a_dose_that_is_in_already_cannot_be_lowered() -> None:
    day = Day()
    until_over(day, "mordant")
    with pytest.raises(Refused, match=r"28\.8 g of alum is in already"):
        day.do(typed(day, "alum 20 g because it is too much"))


def test_one_extraction_fewer_leaves_out_the_last() -> None:
    day = Day()
    until_over(day, "strain")
    day.do(typed(day, "once less because it runs pale"))
    assert {one.name for one in day.state.steps if one.status == "skipped"} == {"extract 3", "strain 3"}
    day.home()


def test_when_the_recipe_is_left_what_runs_goes_on_and_the_rest_is_named_as_it_comes() -> None:
    day = Day()
    while (mordant := day.state.step("mordant")) and mordant.countdown is None:
        day.space()
    day.do(typed(day, "leave the recipe because I want to see what walnut does"))
    assert day.state.free
    assert mordant.name in [one.name for one in day.state.steps if one.status == "running"]
    assert not [one for one in day.state.steps if one.status == "waiting"]
    until_over(day, "mordant")
    day.do(typed(day, "dye in the walnut pot with walnut hull 50 %, 7 l, to 85 over 45, hold 60"))
    dye = day.state.step("dye 2")
    assert dye and dye.plan.add[0].mass_g == pytest.approx(120.0)
    assert day.state.dyestuff("walnut hull")
    day.home()
    assert day.state.step("dye 2").entered == ("large skein", "small skein")  # type: ignore[union-attr]


def test_a_kept_bath_poured_in_is_topped_up_and_not_thrown_away() -> None:
    day = Day()
    day.do(e.Filled("jar pot", 4.0))
    day.do(e.Added("alum", "jar pot", 20.0))
    day.do(e.Kept("jar pot", "old alum", 4.0))
    day.do(typed(day, "pour old alum into the mordant pot because it is hardly used"))
    pot = day.state.vessel("mordant pot")
    assert pot and pot.bath and pot.bath.volume_l == 4.0
    assert [one.ingredient for one in pot.bath.contents] == ["alum"] and not day.state.kept
    until_over(day, "mordant")
    into = [one.event for one in day.entries if getattr(one.event, "vessel", "") == "mordant pot"]
    assert [type(one) for one in into[:2]] == [e.Drawn, e.ToppedUp]
    assert not any(isinstance(one, e.Discarded | e.Filled) for one in into)


def test_a_kept_bath_brings_what_is_in_it_to_the_cautions() -> None:
    day = Day()
    day.do(e.Filled("jar pot", 4.0))
    day.do(e.Added("alum", "jar pot", 20.0))
    day.do(e.Kept("jar pot", "old alum", 4.0))
    situation = situation_of(day.state, e.Drawn("dye pot", "old alum"), Household())
    assert situation is not None
    assert situation.pouring == (("potassium alum", 20.0),) and situation.pouring_from == "old alum"


def test_a_share_of_a_kept_bath_leaves_the_rest_on_the_shelf() -> None:
    day = Day()
    day.do(e.Filled("jar pot", 4.0))
    day.do(e.Added("alum", "jar pot", 20.0))
    day.do(e.Kept("jar pot", "old alum", 4.0))
    day.do(e.Drawn("bucket", "old alum", volume_l=1.5))
    assert day.state.kept[0].bath.volume_l == pytest.approx(2.5)
    assert day.state.vessel("bucket").bath.volume_l == 1.5  # type: ignore[union-attr]
    with pytest.raises(Refused, match=r"holds 2\.5 L, so 3 L cannot be drawn"):
        day.do(e.Drawn("bucket", "old alum", volume_l=3.0))


def test_iron_named_at_the_stove_sadden_before_the_rinse_with_its_cautions() -> None:
    day = Day()
    until_over(day, "dye")
    day.do(typed(day, "sadden in the iron pot with iron 2 %, 7 l, to 60, hold 15 because it is too bright"))
    sadden, rinse = day.state.step("sadden"), day.state.step("rinse")
    assert sadden and sadden.plan.add[0].mass_g == pytest.approx(4.8)
    assert rinse and "sadden" in rinse.plan.after and not day.state.ready(rinse)
    day.home()
    begun = next(
        one.event for one in day.entries if isinstance(one.event, e.Begun) and one.event.step == "sadden"
    )
    assert any("iron" in text.casefold() for text in begun.reminders)


@pytest.mark.parametrize("stuff", ["tin", "chrome", "oxalic acid"])
def test_a_refused_substance_is_never_planned_at_the_stove_either(stuff: str) -> None:
    day = Day()
    with pytest.raises(Refused, match="is refused"):
        day.do(typed(day, f"modify in the iron pot with {stuff} 2 % because it is brighter"))


def test_copper_is_off_until_it_is_chosen_with_a_reason() -> None:
    day = Day()
    day.do(e.Replanned("recipe left", why="freely"))
    with pytest.raises(Refused, match="off until you choose it"):
        day.do(understand("stage", "modify in the iron pot with copper 2 %", day.state, Hand()).event)
    day.do(
        understand(
            "stage", "modify in the iron pot with copper 2 % because I know it", day.state, Hand()
        ).event
    )


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("alum 15 %", "Say why"),
        ("small skein 75 g joins because I found it", 'a lot "small skein" already'),
        ("75 g wool joins because I found it", "Give the lot that joins a name"),
        ("112 g damp found skein joins because I found it", "is damp"),
        ("big skein weighs 82 g because misread", 'No lot is called "big skein"'),
        ("indigo 5 g because blue", 'Nothing called "indigo"'),
        ("once less because pale", "No further extraction"),
        ("pour old red into D because it is there", 'No bath is kept as "old red", today or on the shelf'),
        ("whatever because", "is no change of the plan"),
        ("dye with madder 10 % because", "in which pot"),
        ("dye in D with mystery because red", "was not understood in this stage"),
        ("dye in Z with madder 10 % because red", 'No pot has the letter "Z"'),
        ("mordant in B with alum 2 g/l because more", "Say the litres as well"),
        ("leave the recipe", "Say why"),
    ],
)
def test_what_cannot_be_understood_or_done_is_answered_in_one_sentence(text: str, says: str) -> None:
    day = Day()
    until_over(day, "strain 3")
    with pytest.raises(UserError) as caught:
        day.do(typed(day, text))
    sentence = str(caught.value)
    assert says in sentence and "\n" not in sentence and sentence.endswith(".")


CHANGES = (
    "60 g found skein joins because I found it",
    "60 g found skein joins, bought mordanted because I found it",
    "60 g silk found skein joins because I found it",
    "large skein weighs 200 g because misread",
    "large skein weighs 90 g because misread",
    "alum 20 % because hard water",
    "madder 60 % because redder",
    "madder 30 % because paler",
    "leave the recipe because I know better",
    "once more because there is colour",
    "once less because it is pale",
    "sadden in the iron pot with iron 2 %, 7 l, to 60, hold 15 because it is too bright",
    "dye in D with madder 10 % because redder",
    "mordant in B with alum 5 % because more",
    "extract in C with madder 20 %, into D because more",
    "rinse in E because once more",
)


@pytest.mark.parametrize("text", CHANGES)
@given(spaces=st.integers(0, 110), later=st.integers(0, 30), again=st.sampled_from(CHANGES))
@settings(max_examples=25, deadline=None)
def test_from_any_moment_a_changed_plan_still_gets_home(
    text: str, spaces: int, later: int, again: str
) -> None:
    day = Day()
    done = 0
    for moves, change in ((spaces, text), (later, again)):
        for _ in range(moves):
            day.space()
        try:
            day.do(typed(day, change))
            done += 1
        except (Refused, NotUnderstood):
            pass
    day.home()
    assert not day.state.flags
    assert fold(opening_state(day.plan), day.entries, day.opened) == day.state
    entered = {one.event.lot for one in day.entries if isinstance(one.event, e.Entered)}
    assert {one.place for one in day.state.lots} == {"done"}
    assert entered <= {one.name for one in day.state.lots}


@given(st.integers(0, 110), st.sampled_from(CHANGES), st.data())
@settings(max_examples=60, deadline=None)
def test_a_change_leaves_what_was_done_as_it_was_logged(spaces: int, text: str, data: Any) -> None:
    day = Day()
    for _ in range(spaces):
        day.space()
    before, entries = day.state, day.entries
    try:
        day.do(typed(day, text))
    except (Refused, NotUnderstood):
        assert day.state == before
        return
    assert day.entries[:-1] == entries
    assert day.state.put_in == before.put_in
    assert day.state.vessels[: len(before.vessels)] == before.vessels
    for step in before.steps:
        after = day.state.step(step.name)
        assert after is not None
        assert (after.added, after.entered, after.begun_s) == (step.added, step.entered, step.begun_s)
        assert after.plan.add[: step.added] == step.plan.add[: step.added]


def test_a_correction_that_names_itself_or_a_later_entry_changes_nothing() -> None:
    day = Day()
    for _ in range(6):
        day.space()
    odd = e.Corrected(len(day.entries) + 2, "from a file mended by hand", strike=True)
    entries = (*day.entries, Entry(len(day.entries) + 1, day.clock.now(), odd))
    added = day.until(e.Added)
    assert isinstance(added, e.Added)
    later = Entry(len(entries) + 1, day.clock.now(), e.Noted("kept"))
    state = fold(opening_state(day.plan), (*entries, later), day.opened)
    assert state.notes == ("kept",)


def test_a_correction_that_was_itself_struck_changes_nothing() -> None:
    day = Day()
    added = day.until(e.Added)
    assert isinstance(added, e.Added)
    day.do(added)
    n = day.state.n
    day.do(e.Corrected(n, "misread", changes=({"key": "mass_g", "value": 20.0},)))
    day.do(e.Corrected(n + 1, "it was right after all", strike=True))
    state = fold(opening_state(day.plan), day.entries, day.opened)
    assert state.put_in[0].mass_g == pytest.approx(added.mass_g)


def test_a_lot_is_known_by_the_plan_as_mordanted_when_it_was_bought_so() -> None:
    plan = Day().plan
    lots = (FibreLot("large skein", "wool", 165.0, mordanted="bought mordanted"),)
    state = opening_state(replace(plan, lots=lots))
    assert state.lots[0].mordanted == "bought mordanted"
