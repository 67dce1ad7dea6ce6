"""What the dyer's days have not taught yet, and the reading at the Stove that would teach it. Pure.

What each reading must be to be believed is said by `seen_baths`, `seen_heat` and `seen_colour`; this only words it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from dyesession.daybook.day_line import DayLine
from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.learning import LEAST_DOSE_RATIO
from dyesession.daybook.seen import What, family_of, key_of
from dyesession.daybook.seen_baths import LEAST_MIN
from dyesession.daybook.seen_heat import LEAST_FALL_C, LEAST_RISE_C

ASKS: dict[What, str] = {
    "exhaustion": "how much of a dyestuff the fibre takes",
    "kept share": "how much a dyestuff keeps back when it is extracted",
    "liquor held": "how much liquor wet fibre carries out",
    "cooling": "how slowly your pots cool",
    "stove power": "what heat your stove puts into a bath",
    "strength": "one jar beside another of the same dyestuff",
    "depth exponent": "how depth follows the dose",
}
READINGS: dict[What, str] = {
    "exhaustion": f"after {LEAST_MIN:.0f} minutes or more at heat, hold the dye bath beside a jar of it from before the"
    " fibre went in, and give its strength: 1:4 of before",
    "kept share": "hold a further strain beside the first before it is poured, and give its strength: 1:2 of the"
    " first strain",
    "liquor held": "give what a skein weighs wet as it is lifted, dripped off",
    "cooling": f"read the thermometer as a pot comes off the heat, and again once it is {LEAST_FALL_C:.0f} °C cooler",
    "stove power": f"read the thermometer before a pot is lit and as it reaches its heat, {LEAST_RISE_C:.0f} °C on or"
    " more; the bath's litres must be known",
    "strength": "dye from both jars, and read the dry colour of the fibre undyed and dyed",
    "depth exponent": f"dye from one jar at two doses, one {LEAST_DOSE_RATIO:g} times the other or more, and read the"
    " dry colour of the fibre undyed and dyed",
}
OF_DYESTUFF_AND_FIBRE: tuple[What, ...] = ("exhaustion", "depth exponent")


@dataclass(frozen=True)
class Untaught:
    """One kind of number: what it answers, of what it is not known yet ("" where of nothing), what teaches it."""

    what: What
    asks: str
    of: tuple[str, ...]
    reading: str


def untaught(learned: Learnt, days: Iterable[DayLine]) -> tuple[Untaught, ...]:
    """What is not known yet of the dyestuffs and the fibres of these days, in the order of `ASKS`."""
    dyed = list(days)
    found = []
    for what, asks in ASKS.items():
        of = _not_known(what, learned, dyed)
        if of or not any(one.about.what == what for one in learned.numbers):
            found.append(Untaught(what, asks, of, READINGS[what]))
    return tuple(found)


def _not_known(what: What, learned: Learnt, dyed: Sequence[DayLine]) -> tuple[str, ...]:
    """Of what a number could be known by what was dyed, and is not."""
    if what in OF_DYESTUFF_AND_FIBRE:
        pairs = dict.fromkeys(pair for day in dyed for pair in _pairs(day))
        return tuple(f"{of} on {on}" for of, on in pairs if learned.number(what, of, on) is None)
    if what == "kept share":
        dyestuffs = dict.fromkeys(key_of(one) for day in dyed for one in day.dyestuffs)
        return tuple(one for one in dyestuffs if learned.number(what, one) is None)
    if what == "liquor held":
        families = dict.fromkeys(one for day in dyed for one in _families(day))
        return tuple(one for one in families if learned.number(what, one) is None)
    return ()


def _pairs(day: DayLine) -> list[tuple[str, str]]:
    return [(key_of(dyestuff), family) for dyestuff in day.dyestuffs for family in _families(day)]


def _families(day: DayLine) -> list[str]:
    return [family for one in day.fibre if (family := family_of(one.kind)) is not None]
