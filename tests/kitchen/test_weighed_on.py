"""The day on which a jar was weighed: written down by itself, kept while nobody weighs anew."""

from dataclasses import replace

from dyesession.kitchen import Kitchen, kitchen_for_log
from dyesession.kitchen.answers import answered, weighed_today
from dyesession.kitchen.log import kitchen_from_log, write_kitchen
from dyesession.kitchen.model import Jar

JAR = Jar("madder", "madder root", mass_left_g=350.0)
TODAY, BEFORE = "2026-03-14", "2026-02-01"


def test_a_jar_that_says_its_grams_for_the_first_time_gets_todays_date() -> None:
    [jar] = weighed_today(Kitchen(jars=(JAR,)), Kitchen(), TODAY).jars
    assert jar.weighed_on == TODAY
    [unweighed] = weighed_today(Kitchen(jars=(replace(JAR, mass_left_g=None),)), Kitchen(), TODAY).jars
    assert unweighed.weighed_on == ""


def test_the_date_stays_while_the_grams_stay_and_moves_when_it_is_weighed_anew() -> None:
    was = Kitchen(jars=(replace(JAR, weighed_on=BEFORE),))
    same = answered(was, "jar:0", "350 g, 4.50")
    assert weighed_today(same, was, TODAY).jars[0].weighed_on == BEFORE
    anew = answered(was, "jar:0", "200 g, 4.50")
    assert weighed_today(anew, was, TODAY).jars[0].weighed_on == TODAY


def test_the_date_is_in_the_file_and_in_a_log() -> None:
    kitchen = Kitchen(jars=(replace(JAR, weighed_on=BEFORE),))
    assert f'weighed_on = "{BEFORE}"' in write_kitchen(kitchen)
    assert kitchen_from_log(kitchen_for_log(kitchen)) == kitchen
