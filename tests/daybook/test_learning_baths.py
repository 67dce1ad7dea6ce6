"""What baths and strains teach is never known better than the errors that all of a dyer's days share."""

import math

from dyesession.daybook.learning_baths import MINUTES_SD, STRAIN_SD, kept, left_in_bath, over_first, taken
from dyesession.daybook.seen import FurtherStrain, Uptake
from dyesession.dyeing.bands import Z_90

DAYS = 24


def test_the_rate_is_known_no_better_than_the_minutes_at_heat() -> None:
    holds = [20.0, 35.0, 60.0, 100.0, 160.0, 240.0]
    told = [
        Uptake(f"day {i}", "weld", "wool", math.log(left_in_bath(60.0, 0.03, 30.0, hold)), 0.05, 30.0, hold)
        for i, hold in enumerate(holds * (DAYS // len(holds)))
    ]
    [rate] = [one for one in taken(told) if one.about.what == "uptake rate"]
    assert rate.own.low < 0.03 < rate.own.high
    assert math.log(rate.own.high / rate.own.low) / 2.0 >= Z_90 * MINUTES_SD * 0.99
    assert MINUTES_SD >= 0.1


def test_the_share_kept_is_known_no_better_than_what_no_strain_tells() -> None:
    """The same error in every further strain moves the share by so much, however many days there are."""
    told = [FurtherStrain(f"day {i}", "madder", math.log(over_first(0.35, 1.5, 1)), 0.05, 1) for i in range(DAYS)]
    [share] = [one for one in kept(told) if one.about.what == "kept share"]

    def logit(x: float) -> float:
        return math.log(x / (1.0 - x))

    step = 1e-4
    up, down = (1.0 / (1.0 + math.exp(-(logit(share.own.centre) + s))) for s in (step, -step))
    slope = (math.log(over_first(up, 1.5, 1)) - math.log(over_first(down, 1.5, 1))) / (2.0 * step)
    half = (logit(share.own.high) - logit(share.own.low)) / 2.0
    assert share.own.low < 0.35 < share.own.high
    assert half >= 0.9 * Z_90 * STRAIN_SD / slope and STRAIN_SD > 0.05
