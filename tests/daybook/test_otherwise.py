"""What went otherwise than planned, and a day's lanes and heat in plain characters."""

from dataclasses import replace

from daybook.logged import logged
from days import Day

from dyesession.account.logged import priors_for_log
from dyesession.account.unknowns import Starting
from dyesession.daybook.pictures import heat_lines, lanes_lines
from dyesession.daybook.printed import review_lines
from dyesession.daybook.review import review
from dyesession.dyeing.priors import KEPT_SHARE
from dyesession.session import events as e
from dyesession.session.suggest import Wait


def a_day(late_min: float = 0.0, madder_g: float | None = None, hold_more_min: float = 0.0) -> Day:
    run = Day()
    while run.state.status != "complete":
        act = run.suggest()
        if isinstance(act, e.Begun) and act.step == "mordant":
            run.pass_minutes(late_min)
            late_min = 0.0
        if isinstance(act, e.Added) and act.ingredient == "madder" and madder_g is not None:
            run.do(e.Added("madder", act.vessel, madder_g, "weighed"))
        elif isinstance(act, Wait) and hold_more_min and (step := run.state.running_in("dye pot")) is not None and step.segment == 1:
            run.do(e.Extended("dye", hold_more_min))
            hold_more_min = 0.0
        else:
            run.space()
    return run


def test_another_dose_and_a_longer_hold_are_told_and_a_day_as_planned_tells_neither() -> None:
    told = " / ".join(review(logged(a_day(madder_g=150.0, hold_more_min=30.0))).otherwise)
    assert "madder as it went in, 150 g, not 120 g as planned" in told
    assert "dye held 90 min as it was, not 60 as planned" in told
    plain = " / ".join(review(logged(a_day())).otherwise)
    assert "madder" not in plain and "held" not in plain


def test_a_gap_is_told_by_its_length() -> None:
    run = a_day()
    gap = replace(run.entries[-1], event=e.ResumedAfterGap(12_600.0, "sleep"), n=run.state.n + 1)
    found = review(replace(logged(run), entries=(*run.entries, gap)))
    assert "nobody was there for 3 h 30 min" in found.otherwise


def test_lanes_are_drawn_to_scale_in_plain_characters() -> None:
    found = review(logged(a_day()))
    lines = lanes_lines(found.steps, 80)
    assert all(line.isascii() and len(line) <= 80 for line in lines)
    rows = [line for line in lines if "#" in line]
    begun = [one for one in found.steps if one.actual.start_min is not None and one.actual.end_min is not None]
    assert len(rows) == len(begun)
    longest = max(begun, key=lambda one: (one.actual.end_min or 0.0) - (one.actual.start_min or 0.0))
    assert max(rows, key=lambda row: row.count("#")) == rows[begun.index(longest)]
    assert lanes_lines((), 80) == []


def test_heat_is_told_as_wanted_and_as_read() -> None:
    run = Day()
    run.until(e.Lifted)
    run.do(e.Read("mordant pot", temperature_c=83.0))
    run.home()
    [mordant] = [one for one in heat_lines(review(logged(run)).curves) if one.startswith("mordant pot")]
    assert "wanted 85 °C by " in mordant and "83 °C at " in mordant


def test_the_report_names_the_numbers_of_the_dyer_s_own_and_their_days() -> None:
    tables = priors_for_log(Starting({"kept share of madder": KEPT_SHARE}), {"kept share of madder": ["2026-03-01-a", "2026-03-08-b"]})
    lines = review_lines(review(logged(a_day(), {"prior": tables})), 200)
    told = "\n".join(lines)
    assert "kept share of madder: 0.35 (0.15 to 0.6), learned from 2026-03-01-a, 2026-03-08-b" in told
    assert "Your own numbers" not in "\n".join(review_lines(review(logged(a_day())), 200))
