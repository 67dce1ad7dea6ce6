from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from dyesession.plan.minutes import PotMinutes, pot_minutes
from dyesession.plan.model import PlannedStep
from dyesession.plan.timetable import BEGIN_MIN, END_MIN, end_min, timetable
from dyesession.recipe.model import Heat

STAGES = ("scour", "mordant", "extract", "dye", "rinse")


def a_step(name, stage="mordant", after=(), lane="fibre", vessel="pot"):
    return PlannedStep(name, stage, lane, vessel, name, tuple(after))


@st.composite
def days(draw):
    """Any day: up to eight steps, each after some of those before it, each with its minutes on the heat."""
    count = draw(st.integers(1, 8))
    steps = []
    for i in range(count):
        earlier = draw(st.lists(st.integers(0, i - 1), unique=True, max_size=3)) if i else []
        steps.append(a_step(f"s{i}", draw(st.sampled_from(STAGES)), [f"s{j}" for j in sorted(earlier)]))
    spans = st.tuples(st.integers(0, 60), st.integers(0, 300), st.integers(0, 60))
    minutes = draw(st.lists(spans, min_size=count, max_size=count))
    return steps, {step.name: PotMinutes(*map(float, m)) for step, m in zip(steps, minutes, strict=True)}


def on_the_heat(minutes):
    return PotMinutes(heated_min=minutes)


def longest_chain(steps, minutes):
    length = {}
    for step in steps:
        own = BEGIN_MIN[step.stage] + minutes[step.name].total_min + END_MIN.get(step.stage, 0.0)
        length[step.name] = own + max((length[a] for a in step.after), default=0.0)
    return max(length.values())


burners = st.none() | st.integers(1, 4)


@given(days(), burners)
def test_no_step_begins_before_what_it_comes_after_is_over(day, rings):
    steps, minutes = day
    rows = {row.step: row for row in timetable(steps, minutes, rings)}
    for step in steps:
        assert all(rows[a].end_min <= rows[step.name].start_min + 1e-6 for a in step.after)


@given(days(), burners)
def test_the_critical_rows_cover_the_day_without_a_gap(day, rings):
    steps, minutes = day
    rows = timetable(steps, minutes, rings)
    reached = 0.0
    for row in sorted((r for r in rows if r.critical), key=lambda r: r.start_min):
        assert row.start_min <= reached + 1e-6
        reached = max(reached, row.end_min)
    assert abs(reached - end_min(rows)) < 1e-6


@given(days(), burners)
def test_the_day_is_no_shorter_than_its_longest_chain_and_no_longer_than_all_in_a_row(day, rings):
    steps, minutes = day
    end = end_min(timetable(steps, minutes, rings))
    alone = sum(BEGIN_MIN[s.stage] + minutes[s.name].total_min + END_MIN.get(s.stage, 0.0) for s in steps)
    assert longest_chain(steps, minutes) - 1e-6 <= end <= alone + 1e-6


@given(days(), st.integers(1, 4))
def test_there_are_never_more_pots_lit_than_burners(day, rings):
    steps, minutes = day
    rows = [row for row in timetable(steps, minutes, rings) if row.lit_min is not None]
    for row in rows:
        lit = [one for one in rows if one.lit_min <= row.lit_min + 1e-9 < one.off_min - 1e-9]
        assert len(lit) <= rings


@given(days(), st.integers(1, 4))
def test_the_day_has_room_for_all_its_heating(day, rings):
    steps, minutes = day
    heating = sum(one.heated_min for one in minutes.values())
    assert end_min(timetable(steps, minutes, rings)) >= heating / rings - 1e-6


@given(days())
def test_a_burner_for_every_pot_is_as_good_as_no_limit(day):
    steps, minutes = day
    assert timetable(steps, minutes, len(steps)) == timetable(steps, minutes)


@given(days(), burners)
def test_a_pot_stands_lit_for_as_long_as_it_heats_and_holds(day, rings):
    steps, minutes = day
    for row in timetable(steps, minutes, rings):
        if row.lit_min is None:
            assert minutes[row.step].heated_min == 0.0
        else:
            assert row.start_min <= row.lit_min and row.off_min <= row.end_min
            assert abs(row.off_min - row.lit_min - minutes[row.step].heated_min) < 1e-6


def test_two_pots_take_turns_on_one_burner_and_the_second_is_critical_through_the_first():
    steps = [a_step("mordant"), a_step("extract", "extract", lane="liquor", vessel="other")]
    minutes = {"mordant": on_the_heat(100.0), "extract": on_the_heat(40.0)}
    alone = {row.step: row for row in timetable(steps, minutes, 1)}
    assert alone["extract"].lit_min == alone["mordant"].off_min
    assert alone["mordant"].critical and alone["extract"].critical
    beside = {row.step: row for row in timetable(steps, minutes, 2)}
    assert beside["extract"].lit_min < beside["mordant"].off_min
    assert not beside["extract"].critical


def test_a_pot_that_rests_overnight_leaves_its_burner_to_another():
    heat = (Heat("to", 85.0, 45.0), Heat("hold", minutes=60.0), Heat("rest", overnight=True))
    mordant = replace(a_step("mordant"), heat=heat)
    extract = replace(
        a_step("extract", "extract", vessel="other"),
        heat=(Heat("to", 70.0, 40.0), Heat("hold", minutes=60.0)),
    )
    minutes = pot_minutes([mordant, extract], ())
    assert minutes["mordant"] == PotMinutes(0.0, 105.0, 720.0)
    rows = {row.step: row for row in timetable([mordant, extract], minutes, 1)}
    assert rows["extract"].lit_min == rows["mordant"].off_min < rows["mordant"].end_min - 700


def test_a_soak_before_the_heat_needs_no_burner_and_a_cooling_after_it_neither():
    heat = (
        Heat("rest", minutes=120.0),
        Heat("to", 80.0, 30.0),
        Heat("hold", minutes=60.0),
        Heat("rest", minutes=30.0),
    )
    assert pot_minutes([replace(a_step("dye", "dye"), heat=heat)], ())["dye"] == PotMinutes(120.0, 90.0, 30.0)


def test_one_chain_of_steps_ends_when_its_critical_path_is_walked():
    steps = [
        a_step("scour", "scour"),
        a_step("mordant", after=["scour"]),
        a_step("dye", "dye", ["mordant"]),
    ]
    minutes = {"scour": on_the_heat(60.0), "mordant": on_the_heat(105.0), "dye": on_the_heat(120.0)}
    rows = timetable(steps, minutes)
    assert all(row.critical for row in rows)
    assert end_min(rows) == longest_chain(steps, minutes)


def test_two_pots_heat_together_while_one_dyer_begins_them_one_after_the_other():
    steps = [a_step("mordant"), a_step("extract", "extract", lane="liquor")]
    rows = timetable(steps, {"mordant": on_the_heat(100.0), "extract": on_the_heat(40.0)})
    assert rows[0].start_min == 0.0
    assert rows[1].start_min == BEGIN_MIN["mordant"]
    assert rows[1].end_min < rows[0].end_min


def test_a_step_that_could_wait_is_not_critical():
    steps = [
        a_step("mordant"),
        a_step("extract", "extract", lane="liquor"),
        a_step("dye", "dye", ["mordant", "extract"]),
    ]
    minutes = {"mordant": on_the_heat(200.0), "extract": on_the_heat(30.0), "dye": on_the_heat(60.0)}
    rows = {row.step: row for row in timetable(steps, minutes)}
    assert rows["mordant"].critical
    assert rows["dye"].critical
    assert not rows["extract"].critical


def test_a_day_without_steps_ends_at_once():
    assert end_min(timetable((), {})) == 0.0
