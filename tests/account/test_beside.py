"""A learned number that hangs on another: in every world it is what the days say at that world's other number."""

import math

from days import madder_plan

from dyesession.account.beside import Beside
from dyesession.account.unknowns import Starting, giving_name, partition_name, rate_name, unknowns
from dyesession.dyeing.priors import UPTAKE_RATE, Prior

TAKEN, RATE = partition_name("madder", "wool"), rate_name("madder")


def about(centre: float) -> Prior:
    return Prior(TAKEN, centre, centre / 1.1, centre * 1.1, "log", "learned")


def test_a_world_where_it_goes_slowly_has_the_greater_partition() -> None:
    slow, quick = 0.02, 0.1
    hanging = Beside(RATE, "log", ((slow, about(400.0)), (quick, about(100.0))))
    found = unknowns(madder_plan(), Starting({TAKEN: about(150.0)}, {TAKEN: hanging}))
    for taken, rate in zip(found[TAKEN], found[RATE], strict=True):
        share = min(1.0, max(0.0, math.log(rate / slow) / math.log(quick / slow)))
        middle = 400.0 * (100.0 / 400.0) ** share
        assert middle / 2.0 < taken < middle * 2.0  # a band of a tenth, its tails to a half
    assert max(found[TAKEN]) > 300.0 and min(found[TAKEN]) < 110.0


def test_what_the_fibre_s_pace_taught_says_nothing_of_the_dyestuff_s() -> None:
    plan = madder_plan()
    usual = unknowns(plan, Starting())
    assert giving_name("madder") not in usual.values and usual.giving("madder") is usual[RATE]
    known = unknowns(plan, Starting({RATE: Prior(RATE, 0.03, 0.029, 0.031, "log", "learned")}))
    assert max(known[RATE]) < 0.04 and max(known.giving("madder")) > UPTAKE_RATE.high
