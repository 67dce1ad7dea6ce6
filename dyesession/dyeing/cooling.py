"""A pot taken off the heat, or held: how long it stays warm and what holding costs.

Knows nothing of clocks. Figures: a simulation of a 28 cm stainless pot in a 20 °C room at 50 % humidity
(derived). A covered pot cools by Newton's law; an open one loses faster the hotter it is, so its table is
not one constant.
"""

import math

from dyesession.dyeing.limits import OutOfRange, above_zero, within

ROOM_C = 20.0
TABLE_C = (90.0, 80.0, 70.0, 60.0, 50.0, 40.0, 30.0)

# Minutes from 90 °C down to each of TABLE_C, by litres.
LID_ON_MIN = {
    5.0: (0, 43, 100, 178, 288, 460, 794),
    10.0: (0, 58, 133, 232, 372, 588, 1005),
    15.0: (0, 66, 149, 259, 413, 650, 1107),
}
OPEN_MIN = {
    5.0: (0, 7, 19, 38, 69, 126, 245),
    10.0: (0, 14, 34, 67, 120, 214, 407),
    15.0: (0, 19, 47, 90, 160, 281, 527),
}
COOLING_FACTOR = 1.5  # 90 % band for another pot and room, either way; judgement

# Loss of a 10 L pot: °C, watts lid on, watts open.
HOLDING_W = (
    (40.0, 25.0, 56.0),
    (50.0, 42.0, 104.0),
    (60.0, 61.0, 174.0),
    (70.0, 83.0, 278.0),
    (80.0, 109.0, 430.0),
    (85.0, 123.0, 530.0),
    (90.0, 139.0, 651.0),
    (95.0, 156.0, 794.0),
)


def cooling_min(from_c: float, to_c: float, water_l: float, lid_on: bool) -> float:
    """Minutes to cool between two temperatures from 90 to 30 °C, good to a factor `COOLING_FACTOR`.

    Between 5 and 15 L; smaller and larger pots are taken as these. Raises `OutOfRange` when it does not
    cool.
    """
    above_zero("water", water_l, "10 L")
    if to_c > from_c:
        raise OutOfRange(
            f"A pot left alone does not warm from {from_c:g} to {to_c:g} °C; expected, say, 90 to 40."
        )
    table = LID_ON_MIN if lid_on else OPEN_MIN
    volumes = sorted(table)
    litres = min(max(water_l, volumes[0]), volumes[-1])
    times = [_since_90(from_c, to_c, table[volume]) for volume in volumes]
    return _joined(volumes, times, litres)


def holding_w(bath_c: float, lid_on: bool) -> float:
    """Power that keeps 10 L in a 28 cm pot at a temperature from 40 to 95 °C, W."""
    within("temperature", bath_c, HOLDING_W[0][0], HOLDING_W[-1][0], "85 °C")
    losses = [closed if lid_on else bare for _, closed, bare in HOLDING_W]
    return _joined([c for c, _, _ in HOLDING_W], losses, bath_c)


def time_constant_from_cooling_min(from_c: float, to_c: float, minutes: float, room_c: float) -> float:
    """Time constant of this pot and lid from its own cooling: t/ln((T1 - Ta)/(T2 - Ta)) (textbook form)."""
    above_zero("time between readings", minutes, "60 min")
    if not room_c < to_c < from_c:
        raise OutOfRange(
            f"A pot that cools from {from_c:g} to {to_c:g} °C in a room of {room_c:g} °C tells"
            " no time constant; expected falling readings above the room, for example 90 to 80 °C at 20 °C."
        )
    return minutes / math.log((from_c - room_c) / (to_c - room_c))


def _since_90(from_c: float, to_c: float, times: tuple[float, ...]) -> float:
    return _at(to_c, times) - _at(from_c, times)


def _at(temperature_c: float, times: tuple[float, ...]) -> float:
    """Minutes after 90 °C; straight in ln(T - room), which is exact for Newton's law."""
    within("temperature", temperature_c, TABLE_C[-1], TABLE_C[0], "60 °C")
    depths = [-math.log(c - ROOM_C) for c in TABLE_C]
    return _joined(depths, list(times), -math.log(temperature_c - ROOM_C))


def _joined(xs: list[float], ys: list[float], at: float) -> float:
    for i in range(1, len(xs)):
        if at <= xs[i] or i == len(xs) - 1:
            return ys[i - 1] + (ys[i] - ys[i - 1]) * (at - xs[i - 1]) / (xs[i] - xs[i - 1])
    return ys[-1]
