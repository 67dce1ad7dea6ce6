"""Published times to a serious burn, row by row.

[1] information table at antiscald.com (attributed there to Moritz & Henriques); [2] hospital table at
childrensal.org; [3] US consumer agency figures as repeated at 2024.hotenda.com/ask/1581; [4] gas-appliance
trade notice for a baby, theplumber.com/gama.html. The primary study was not read.
"""

import pytest

from dyesession.care import scald_seconds

MIN, H = 60.0, 3600.0

ADULT = [  # (°C, seconds, source); a pair from [1] is second degree, then third
    (45, 2 * H, 1), (45, 3 * H, 1), (47, 20 * MIN, 1), (47, 45 * MIN, 1),
    (48, 15 * MIN, 1), (48, 20 * MIN, 1), (49, 8 * MIN, 1), (49, 10 * MIN, 1),
    (51, 2 * MIN, 1), (51, 4.2 * MIN, 1), (55, 17, 1), (55, 30, 1), (60, 3, 1), (60, 5, 1),
    (49, 5 * MIN, 2), (52, 1.5 * MIN, 2), (52, 2 * MIN, 2), (54, 30, 2), (57, 10, 2), (60, 5, 2),
    (63, 3, 2), (66, 1.5, 2), (68, 1, 2),
    (66, 2, 3), (60, 6, 3), (54, 30, 3), (49, 5 * MIN, 3),
]  # fmt: skip

BABY = [(66, 0.5), (60, 1), (49, 4 * MIN)]


@pytest.mark.parametrize(("temperature_c", "seconds", "source"), ADULT)
def test_every_published_time_lies_in_the_band_given_for_its_temperature(temperature_c, seconds, source):
    low, high = scald_seconds(temperature_c)
    assert low <= seconds <= high, source


@pytest.mark.parametrize("temperature_c", sorted({row[0] for row in ADULT} - {63}))
def test_the_band_is_no_wider_than_what_was_published(temperature_c):
    published = [seconds for at_c, seconds, _ in ADULT if at_c == temperature_c]
    assert scald_seconds(temperature_c) == (min(published), max(published))


def test_at_63_degrees_only_an_upper_bound_was_published():
    assert scald_seconds(63) == (1.5, 3.0)


@pytest.mark.parametrize(("temperature_c", "seconds"), BABY)
def test_a_babys_time_is_the_trade_notices(temperature_c, seconds):
    assert scald_seconds(temperature_c, baby=True) == (seconds, seconds)
