from hypothesis import given
from hypothesis import strategies as st

from dyesession.plan.model import PlannedStep
from dyesession.plan.timetable import BEGIN_MIN, END_MIN, end_min, timetable

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
    minutes = draw(st.lists(st.integers(0, 300), min_size=count, max_size=count))
    return steps, {step.name: float(m) for step, m in zip(steps, minutes, strict=True)}


def longest_chain(steps, minutes):
    length = {}
    for step in steps:
        own = BEGIN_MIN[step.stage] + minutes[step.name] + END_MIN.get(step.stage, 0.0)
        length[step.name] = own + max((length[a] for a in step.after), default=0.0)
    return max(length.values())


@given(days())
def test_no_step_begins_before_what_it_comes_after_is_over(day):
    steps, minutes = day
    rows = {row.step: row for row in timetable(steps, minutes)}
    for step in steps:
        assert all(rows[a].end_min <= rows[step.name].start_min + 1e-6 for a in step.after)


@given(days())
def test_the_critical_rows_cover_the_day_without_a_gap(day):
    steps, minutes = day
    rows = timetable(steps, minutes)
    reached = 0.0
    for row in sorted((r for r in rows if r.critical), key=lambda r: r.start_min):
        assert row.start_min <= reached + 1e-6
        reached = max(reached, row.end_min)
    assert abs(reached - end_min(rows)) < 1e-6


@given(days())
def test_the_day_is_no_shorter_than_its_longest_chain_and_no_longer_than_all_in_a_row(day):
    steps, minutes = day
    end = end_min(timetable(steps, minutes))
    alone = sum(BEGIN_MIN[s.stage] + minutes[s.name] + END_MIN.get(s.stage, 0.0) for s in steps)
    assert longest_chain(steps, minutes) - 1e-6 <= end <= alone + 1e-6


def test_one_chain_of_steps_ends_when_its_critical_path_is_walked():
    steps = [
        a_step("scour", "scour"),
        a_step("mordant", after=["scour"]),
        a_step("dye", "dye", ["mordant"]),
    ]
    minutes = {"scour": 60.0, "mordant": 105.0, "dye": 120.0}
    rows = timetable(steps, minutes)
    assert all(row.critical for row in rows)
    assert end_min(rows) == longest_chain(steps, minutes)


def test_two_pots_heat_together_while_one_dyer_begins_them_one_after_the_other():
    steps = [a_step("mordant"), a_step("extract", "extract", lane="liquor")]
    rows = timetable(steps, {"mordant": 100.0, "extract": 40.0})
    assert rows[0].start_min == 0.0
    assert rows[1].start_min == BEGIN_MIN["mordant"]
    assert rows[1].end_min < rows[0].end_min


def test_a_step_that_could_wait_is_not_critical():
    steps = [
        a_step("mordant"),
        a_step("extract", "extract", lane="liquor"),
        a_step("dye", "dye", ["mordant", "extract"]),
    ]
    rows = {row.step: row for row in timetable(steps, {"mordant": 200.0, "extract": 30.0, "dye": 60.0})}
    assert rows["mordant"].critical
    assert rows["dye"].critical
    assert not rows["extract"].critical


def test_a_day_without_steps_ends_at_once():
    assert end_min(timetable((), {})) == 0.0
