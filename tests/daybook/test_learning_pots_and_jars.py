"""What thermometers and dry colours teach: how a pot cools, what the stove puts in, jars beside each other, depth."""

import math
from dataclasses import replace
from datetime import timedelta

import pytest
from daybook.logged import logged
from days import Day

from dyesession.colour.depth import at_ratio
from dyesession.colour.typed import read_colour
from dyesession.daybook.learning import exponent_of, learnt, strengths
from dyesession.daybook.own_numbers import own_kitchen
from dyesession.daybook.repeating import repeat
from dyesession.dyeing.cooling import cooling_min
from dyesession.dyeing.heating import WATER_KJ_KG_K
from dyesession.kitchen import kitchen_for_log
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.plan.minutes import TAP_C, pot_minutes
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.suggest import Wait

UNDYED, SAMPLE = "lab(86 0 11)", "lab(55 30 25)"
JARS = ("spring jar", "autumn jar")


def shade(depth: float) -> str:
    """The colour at so many times the sample's depth, by the theory of depth."""
    found = at_ratio(read_colour(UNDYED), read_colour(SAMPLE), depth).lab
    return f"lab({found.lightness:.3f} {found.a:.3f} {found.b:.3f})"


def dyed(number: int, madder_g: float, depth: float, jar: str = JARS[0]) -> LoggedDay:
    """A madder day with so much madder from a jar, read before and, dry, afterwards."""
    run = Day()
    run.do(e.Read(lot="large skein", colour=UNDYED, wet=False))
    while run.state.status != "complete":
        act = run.suggest()
        if isinstance(act, e.Added) and act.ingredient == "madder":
            run.do(e.Added("madder", act.vessel, madder_g, "weighed"))
        else:
            run.space()
    run.do(e.Cared("dry shade", "large skein", "", shade(depth)))
    kitchen = Kitchen(jars=(Jar(jar, "madder root"),))
    day = logged(run, {"kitchen": kitchen_for_log(kitchen)})
    at = replace(day.opened, at=day.opened.at + timedelta(days=number))
    return replace(day, name=f"2026-04-{number:02}-day", opened=at)


def test_how_depth_follows_dose_is_learned_from_dyeings_at_several_doses() -> None:
    days = [dyed(i + 1, grams, (grams / 120.0) ** 0.8) for i, grams in enumerate((40.0, 60.0, 90.0, 120.0, 170.0, 240.0))]
    found = exponent_of(learnt(days), "madder root")
    assert found is not None and len(found.days) == 6
    assert found.own.low < 0.8 < found.own.high < found.guess.high
    assert exponent_of(learnt(days[3:4] * 1), "madder root") is None, "one dose tells no slope"
    half = repeat(days[3], (), Kitchen(), depth=0.5, learned=learnt(days))
    [dose] = [one for one in half.document["ingredient"] if one["role"] == "dyestuff"]
    assert float(dose["dose"].split()[0]) == pytest.approx(50.0 * 0.5 ** (1.0 / found.own.centre), rel=1e-3)


def test_a_stronger_jar_is_known_by_its_deeper_colours_and_takes_less_next_time() -> None:
    jars = [(JARS[0], 1.0), (JARS[1], 1.4), (JARS[0], 1.03), (JARS[1], 1.36), (JARS[0], 0.98), (JARS[1], 1.42)]
    days = [dyed(i + 1, 120.0, depth, jar) for i, (jar, depth) in enumerate(jars)]
    found = strengths(learnt(days))
    ratio = found["madder root", JARS[1]] / found["madder root", JARS[0]]
    assert 1.2 < ratio < 1.5
    one_jar = strengths(learnt([day for day, (jar, _) in zip(days, jars, strict=True) if jar == JARS[0]]))
    assert one_jar == {}, "one jar stands for itself"
    today = Kitchen(jars=(Jar(JARS[1], "madder root"),))
    again = repeat(days[0], (), today, learned=learnt(days))
    [dose] = [one for one in again.document["ingredient"] if one["role"] == "dyestuff"]
    assert float(dose["dose"].split()[0]) == pytest.approx(50.0 / ratio, rel=1e-3)
    assert any("times as strong as that day's" in one.text for one in again.changes)


def test_a_colour_without_its_undyed_fibre_teaches_nothing() -> None:
    day = dyed(1, 120.0, 1.0)
    without = replace(day, entries=tuple(one for one in day.entries if not (isinstance(one.event, e.Read) and one.event.lot)))
    assert strengths(learnt([without])) == {} and exponent_of(learnt([without]), "madder root") is None


def cooled(factor: float) -> LoggedDay:
    """A day on which the wash pot, 7.2 L, is read as it cools from 60 to 48 °C, `factor` times as slowly."""
    run = Day()
    while not ((step := run.state.running_in("wash pot")) is not None and step.segment == 2):
        run.space()
    run.do(e.Read("wash pot", temperature_c=60.0))
    run.pass_minutes(factor * cooling_min(60.0, 48.0, 7.2, lid_on=False))
    run.do(e.Read("wash pot", temperature_c=48.0))
    run.home()
    return logged(run)


@pytest.mark.parametrize("factor", [0.8, 1.0, 1.3])
def test_a_pot_s_own_cooling_is_learned_and_the_plan_goes_by_it(factor: float) -> None:
    learned = learnt([replace(cooled(factor), name=f"2026-05-0{i + 1}-day") for i in range(4)])
    found = learned.number("cooling", "wash pot")
    assert found is not None and found.own.centre == pytest.approx(factor, rel=0.05)
    plan = Day().plan
    usual = pot_minutes(plan.steps, ())["scour"]
    own = pot_minutes(plan.steps, (), own_kitchen(Kitchen(), learned).own)["scour"]
    assert own.after_min == pytest.approx(usual.after_min * found.own.centre, rel=1e-6)


def heated(slower: float) -> tuple[LoggedDay, float]:
    """A day on which the dye pot takes `slower` times its planned hour, and the watts that come to."""
    run, watts = Day(), 0.0
    while run.state.status != "complete":
        act = run.suggest()
        step = run.state.running_in("wash pot")
        if isinstance(act, Wait) and step is not None and step.segment == 0 and not watts:
            run.pass_minutes(slower * 30.0)
            run.do(e.Reached("wash pot", 60.0, "read"))
            kj = WATER_KJ_KG_K * (7.2 + 0.35 * 0.24) * (60.0 - TAP_C)
            watts = 1000.0 * kj / (slower * 30.0 * 60.0)
        else:
            run.space()
    return logged(run), watts


def test_a_rise_the_stove_set_the_pace_of_tells_its_heat_and_one_the_dyer_eased_tells_nothing() -> None:
    slow, watts = heated(1.6)
    found = learnt([replace(slow, name=f"2026-05-0{i + 1}-day") for i in range(4)]).number("stove power")
    assert found is not None and found.own.centre == pytest.approx(watts, rel=0.12)
    assert math.log(found.own.high / found.own.low) < math.log(found.guess.high / found.guess.low)
    eased, _ = heated(1.0)
    assert learnt([eased]).number("stove power") is None
