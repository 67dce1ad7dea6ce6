"""What is told of a log that was torn or damaged, to somebody who takes the day up again."""

from dataclasses import replace

from days import Day

from dyesession.session import events as e
from dyesession.session.amiss import amiss_words


def entries_of(day: Day, *events: e.Event):
    for event in events:
        day.do(event)
    return day.entries


def test_nothing_is_told_of_a_whole_log() -> None:
    assert amiss_words(entries_of(Day(), e.Begun("scour"), e.Filled("wash pot", 7.2))) == ()


def test_a_torn_end_is_told_once_and_says_where_it_was_put() -> None:
    day = Day()
    torn = entries_of(day, e.Begun("scour"), e.Recovered(64, "day.torn-1"))
    (said,) = amiss_words(torn)
    assert "64 bytes were set aside in day.torn-1" in said and "do it again if it is not" in said
    assert amiss_words(entries_of(day, e.Filled("wash pot", 7.2))) == (), "the dyer has gone on"


def test_damaged_entries_are_told_by_the_first_of_them_and_how_many_more() -> None:
    whole = entries_of(Day(), e.Begun("scour"), e.Filled("wash pot", 7.2))
    damaged = tuple(replace(one, trouble="it is damaged and cannot be read") for one in whole)
    assert amiss_words(damaged[:1])[0].startswith("Entry 1 of the log: it is damaged and cannot be read;")
    assert amiss_words(damaged)[0].startswith("Entry 1 of the log (and 1 more): it is damaged")
