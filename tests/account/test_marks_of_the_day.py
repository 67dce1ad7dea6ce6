"""What a vessel held at each moment is kept for the picture of the day, but not for every look at the thermometer."""

from account.by_hand import Pages, one_dye_plan

from dyesession.account.course import MARKS_APART_S
from dyesession.account.estimate import Behind
from dyesession.account.over_the_day import over_the_day
from dyesession.session import events as e

LOOKS, MINUTES_APART = 240, 0.5


def day_of_many_looks() -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write(e.Filled("extract pot", 2.0)).write(e.Added("madder", "extract pot", 50.0))
    day.write(e.Begun("extract", early="now")).write(e.Lit("extract pot")).write(e.Reached("extract pot", 90.0))
    for look in range(LOOKS):
        day.write(e.Read("extract pot", temperature_c=90.0 + look % 2), MINUTES_APART)
    return day


def test_a_day_of_many_looks_at_the_thermometer_keeps_few_marks() -> None:
    account = day_of_many_looks().account()
    behind = account.behind
    assert isinstance(behind, Behind)
    hours_s = LOOKS * MINUTES_APART * 60.0
    assert hours_s / MARKS_APART_S <= len(behind.marks) <= hours_s / MARKS_APART_S + 8


def test_the_picture_still_ends_where_the_bath_stands_and_rises_on_the_way() -> None:
    day = day_of_many_looks()
    account = day.account()
    points, bath = over_the_day(account, "extract pot"), account.bath("extract pot")
    assert bath is not None
    assert points[-1].volume_l == bath.volume_l and points[-1].grams == bath.grams("madder")
    drawn = [one.grams.mean for one in points]
    assert drawn == sorted(drawn) and drawn[-1] > drawn[0]


def test_every_act_has_its_mark_however_soon_it_comes() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0)).write(e.Filled("dye pot", 2.0))
    for _ in range(5):
        day.write(e.ToppedUp("dye pot", volume_l=0.1), 0.1)
    behind = day.account().behind
    assert isinstance(behind, Behind) and len(behind.marks) == 6
