"""Times to a burn: never kinder than the tables, never longer when hotter."""

from math import inf

from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import scald_seconds
from dyesession.care.scalds import spoken

CELSIUS = st.floats(0.0, 105.0)


@given(CELSIUS, CELSIUS, st.booleans())
def test_hotter_liquor_never_burns_slower(one, other, baby):
    cooler, hotter = sorted((one, other))
    assert scald_seconds(hotter, baby)[0] <= scald_seconds(cooler, baby)[0]
    assert scald_seconds(hotter, baby)[1] <= scald_seconds(cooler, baby)[1]


@given(CELSIUS, st.booleans())
def test_the_shortest_time_is_never_longer_than_the_longest(temperature_c, baby):
    low, high = scald_seconds(temperature_c, baby)
    assert 0.0 <= low <= high


@given(CELSIUS)
def test_a_babys_shortest_time_is_never_kinder_than_an_adults_where_both_are_known(temperature_c):
    if 49.0 <= temperature_c <= 66.0:
        assert scald_seconds(temperature_c, baby=True)[0] <= scald_seconds(temperature_c)[0]


def test_between_rows_the_band_reaches_to_both_neighbours():
    assert scald_seconds(58.0) == (3.0, 10.0)


def test_beyond_the_tables_the_band_stays_open():
    assert scald_seconds(95.0) == (0.0, 1.0)
    assert scald_seconds(30.0) == (7200.0, inf)


def test_times_are_spoken_in_the_unit_a_person_would_use():
    said = [spoken(seconds) for seconds in (1.0, 1.5, 17.0, 90.0, 300.0, 7200.0)]
    assert said == ["1 s", "1.5 s", "17 s", "1.5 min", "5 min", "2 h"]
