"""How fast hot liquor burns. Published times only; the study behind most of them was not read.

Sources: [1] table at antiscald.com (attributed there to Moritz & Henriques); [2] hospital table at
childrensal.org; [3] the US consumer agency's figures as repeated at 2024.hotenda.com/ask/1581;
[4] gas-appliance trade notice for a baby, theplumber.com/gama.html. They agree within a factor of two.
"""

from bisect import bisect_left, bisect_right
from math import inf

SOURCE = "burn tables: antiscald.com; childrensal.org; US consumer agency figures; theplumber.com for a baby"

HOT_FROM_C = 45.0
"""Where lifting, straining and rinsing get a word: the coolest row of table [1]; own choice."""

ONE_SECOND_FROM_C = 60.0
"""Where "one second burns" is said: a baby's time at 60 °C [4], the strictest row."""

COOL_C = 40.0
"""To here before bare hands or moving a pot: own choice, below the coolest row of every table."""

_MIN, _H = 60.0, 3600.0

# How coarsely a cooling time is said; common practice, no source.
_HOURS_FROM_MIN, _MIN_STEP, _HALF_HOUR_MIN = 120.0, 10, 30.0

# (temperature °C, shortest s, longest s) over the adult rows of [1], [2] and [3], second or third degree.
_ADULT = (
    (45.0, 2 * _H, 3 * _H),        # [1]
    (47.0, 20 * _MIN, 45 * _MIN),  # [1]
    (48.0, 15 * _MIN, 20 * _MIN),  # [1]
    (49.0, 5 * _MIN, 10 * _MIN),   # [1] 8 to 10 min, [2] over 5, [3] 5
    (51.0, 2 * _MIN, 4.2 * _MIN),  # [1]
    (52.0, 1.5 * _MIN, 2 * _MIN),  # [2]
    (54.0, 30.0, 30.0),            # [2] [3]
    (55.0, 17.0, 30.0),            # [1]
    (57.0, 10.0, 10.0),            # [2]
    (60.0, 3.0, 6.0),              # [1] 3 to 5, [2] under 5, [3] 6
    (63.0, 1.5, 3.0),              # [2] under 3; the shorter bound is the next row's
    (66.0, 1.5, 2.0),              # [2] [3]
    (68.0, 1.0, 1.0),              # [2]
)  # fmt: skip

_BABY = (
    (49.0, 4 * _MIN, 4 * _MIN),  # [4]
    (60.0, 1.0, 1.0),            # [4]
    (66.0, 0.5, 0.5),            # [4]
)  # fmt: skip


def scald_seconds(temperature_c: float, baby: bool = False) -> tuple[float, float]:
    """Seconds of contact to a serious burn, (shortest, longest) as published.

    Between two rows the shortest time is the hotter row's and the longest the cooler row's, so the band
    is never too kind. Above the last row it runs from 0; below the first row to infinity. °C in.
    """
    table = _BABY if baby else _ADULT
    rows = [row[0] for row in table]
    hotter, cooler = bisect_left(rows, temperature_c), bisect_right(rows, temperature_c) - 1
    low = table[hotter][1] if hotter < len(table) else 0.0
    high = table[cooler][2] if cooler >= 0 else inf
    return low, high


def spoken(seconds: float) -> str:
    """A contact time as one says it: "10 s", "1.5 min", "2 h"."""
    if seconds < _MIN:
        return f"{seconds:.1f}".removesuffix(".0") + " s"
    if seconds < _H:
        return f"{seconds / _MIN:.1f}".removesuffix(".0") + " min"
    return f"{seconds / _H:.1f}".removesuffix(".0") + " h"


def roughly(low_min: float, high_min: float) -> str:
    """A span of minutes as nobody would measure it finer: "50 to 110 min", "2 to 4 h"."""
    if high_min < _HOURS_FROM_MIN:
        low, high = (max(1, round(minutes / _MIN_STEP)) * _MIN_STEP for minutes in (low_min, high_min))
        return f"{low} min" if low == high else f"{low} to {high} min"
    low_h, high_h = (_half_hours(minutes) for minutes in (low_min, high_min))
    return f"{low_h} h" if low_h == high_h else f"{low_h} to {high_h} h"


def _half_hours(minutes: float) -> str:
    return f"{max(1, round(minutes / _HALF_HOUR_MIN)) / 2:g}"
