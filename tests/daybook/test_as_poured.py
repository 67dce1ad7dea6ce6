"""Where a repeat follows the day's water and extractions and not its plan: told with both figures."""

from daybook.logged import logged
from days import Day

from dyesession.daybook.as_poured import poured, unattended
from dyesession.daybook.repeating import repeat
from dyesession.daybook.walk import walk
from dyesession.kitchen.model import Kitchen
from dyesession.session import events as e


def other_than_planned() -> Day:
    """The madder day: three litres and not 2.4 on the root, and the third extraction left out."""
    run = Day()
    while run.state.status != "complete":
        act = run.suggest()
        if isinstance(act, e.Filled) and act.vessel == "extract pot":
            run.do(e.Filled("extract pot", 3.0, "read"))
        elif isinstance(act, e.Begun) and act.step in ("extract 3", "strain 3"):
            run.do(e.Skipped(act.step, "pale enough"))
        else:
            run.space()
    return run


def test_water_and_extractions_other_than_planned_are_told_with_both_figures() -> None:
    day = logged(other_than_planned())
    said = [one.text for one in repeat(day, (), Kitchen()).changes]
    assert any(one.startswith("extract in 3 L as it was poured, not 2.4 L as planned") for one in said), said
    assert any(one == "extract: twice as it was done, not 3 times as planned" for one in said), said


def test_a_day_done_as_planned_has_nothing_to_tell() -> None:
    run = Day()
    run.home()
    day = logged(run)
    paces = tuple(walk(day))
    assert list(poured(day, paces)) == [] and list(unattended(paces)) == []
