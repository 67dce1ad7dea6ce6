"""The dyer's own numbers in words, and as JSON: each with its ±, the guess it replaces, and its days. Pure."""

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from textwrap import wrap
from typing import Any

from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.untaught import Untaught
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import STANDARD_LIQUOR_RATIO, Prior
from dyesession.units import show_percent

PER_CENT, MIN_PER_H = 100.0, 60.0
MOST_NAMED = 4  # days named in a line, the latest; our own choice, no source
_INDENT = "  "

NOTHING = "No day has taught a number yet: the usual guesses are used."
WOULD_TEACH = "What would teach one:"
HEAD = (
    "Your own numbers, which take the place of the usual guesses: in brackets, where nine of ten further days will lie."
)
DEMO_HEAD = "What the demo days would teach; none of it is used for a day of your own."
STILL = "Not learned yet, and what would teach it:"


@dataclass(frozen=True)
class ToldNumber:
    """A number in words: what it is about, the number with its band and that of a further day, the guess, the days."""

    title: str
    yours: str
    guess: str
    days: str


def told_number(one: Number) -> ToldNumber:
    """The words of a number, as every place says them."""
    return ToldNumber(title(one), _told(one), _of(one, one.guess), _days(one))


def number_page(one: Number) -> tuple[str, list[str]]:
    """A heading and the lines of a number's own page: the number, the guess it replaces, every day it comes from."""
    told = told_number(one)
    lines = [f"yours: {told.yours}", f"usual guess: {told.guess}", f"the guess is from: {one.guess.source}", ""]
    lines += [f"from {len(one.days)} {_day_word(one.days)}:"]
    lines += [f"  {day}{', hardly counted, being odd' if day in one.odd else ''}" for day in one.days]
    return told.title, lines


def head_of(learned: Learnt, demo: bool) -> str:
    """What stands over the numbers."""
    return NOTHING if not learned.numbers else DEMO_HEAD if demo else HEAD


def untaught_line(one: Untaught) -> str:
    """What is not learned yet, of what."""
    return f"{one.asks}: {', '.join(one.of)}" if one.of else one.asks


def learned_lines(
    learned: Learnt, width: int, demo: bool = False, lacking: Sequence[Untaught] = ()
) -> list[str]:
    """Every number, told in a few lines of at most `width` columns, then what is `lacking`."""
    lines = wrap(head_of(learned, demo), width)
    for one in map(told_number, learned.numbers):
        lines += ["", *_wrapped(f"{one.title}: {one.yours}", "", width)]
        lines += _wrapped(f"guessed {one.guess} before; {one.days}", _INDENT, width)
    if lacking:
        lines += ["", *wrap(STILL if learned.numbers else WOULD_TEACH, width)]
    for missing in lacking:
        lines += ["", *_wrapped(untaught_line(missing), "", width), *_wrapped(missing.reading, _INDENT, width)]
    return lines


def learned_as_json(learned: Learnt, demo: bool = False, lacking: Sequence[Untaught] = ()) -> dict[str, Any]:
    """Every number as another program reads it, on its own scale (partition in L/kg, shares from 0 to 1)."""
    return {
        "demo": demo,
        "numbers": numbers_as_json(learned.numbers),
        "not_learned_yet": [{"what": one.what, "of": list(one.of), "reading": one.reading} for one in lacking],
    }


def changed_lines(before: Learnt, after: Learnt, width: int) -> list[str]:
    """What a day taught: the numbers that rest on more days than they did without it."""
    told = [f"{title(one)}: {_told(one)}, {len(one.days)} {_day_word(one.days)}" for one in moved(before, after)]
    if not told:
        return []
    lines = wrap('This day taught (look at it all with "dyesession learn"):', width)
    return lines + [text for one in told for text in _wrapped(one, _INDENT, width)]


def numbers_as_json(numbers: Sequence[Number]) -> list[dict[str, Any]]:
    """Numbers as another program reads them, each with its guess and its days."""
    return [
        {
            "what": one.about.what,
            "of": one.about.of,
            "on": one.about.on,
            "title": title(one),
            "guess": _plain(one.guess),
            "own": _plain(one.own),
            "next_day": _plain(one.next_day),
            "days": list(one.days),
            "odd": list(one.odd),
        }
        for one in numbers
    ]


def moved(before: Learnt, after: Learnt) -> tuple[Number, ...]:
    """The numbers that rest on other days than they did."""
    return tuple(
        one
        for one in after.numbers
        if one.days != (was.days if (was := before.number(one.about.what, one.about.of, one.about.on)) else ())
    )


def title(one: Number) -> str:
    """What a number is about, in the trade's words."""
    about = one.about
    return {
        "exhaustion": f"{about.of} on {about.on}, taken at 1:{STANDARD_LIQUOR_RATIO:.0f}",
        "uptake rate": f"{about.of} on {about.on}, of that within an hour at heat",
        "kept share": f"{about.of}, kept by the first extraction",
        "stiffening": f"{about.of}, odds of keeping in the second extraction, times the first's",
        "liquor held": f"liquor in wet {about.of}, times its bone-dry weight",
        "cooling": f"minutes the {about.of} takes to cool, times the table's",
        "stove power": "heat your stove puts into a bath",
        "strength": f"a gram from the {about.on}, in grams of your other {about.of}",
        "depth exponent": f"{about.of} on {about.on}, depth as dose to the power of",
    }[about.what]


def _told(one: Number) -> str:
    return f"{_of(one, one.own)} [{_ends(one, one.next_day)}]"


def _of(one: Number, prior: Prior) -> str:
    return f"{_shown(one)(prior.centre)} ({_ends(one, prior)})"


def _ends(one: Number, prior: Prior) -> str:
    show = _shown(one)
    low, high = show(prior.low), show(prior.high)
    return low if low == high else f"{low.removesuffix(' %').removesuffix(' W')} to {high}"


def _shown(one: Number) -> Callable[[float], str]:
    what = one.about.what
    if what == "exhaustion":
        return lambda value: show_percent(PER_CENT * exhausted_share(value, STANDARD_LIQUOR_RATIO), estimate=True)
    if what == "uptake rate":
        return lambda value: show_percent(-PER_CENT * math.expm1(-MIN_PER_H * value), estimate=True)
    if what == "kept share":
        return lambda value: show_percent(PER_CENT * value, estimate=True)
    if what == "stove power":
        return lambda value: f"{value:.0f} W"
    return lambda value: f"{value:.2f}"


def _days(one: Number) -> str:
    odd = f"; hardly counted, being odd: {', '.join(one.odd)}" if one.odd else ""
    return f"{days_words(one.days)}{odd}"


def days_words(days: Sequence[str]) -> str:
    """Which days: the latest by name, and how many before them."""
    named = ", ".join(days[-MOST_NAMED:])
    more = f" and {len(days) - MOST_NAMED} before" if len(days) > MOST_NAMED else ""
    return f"from {len(days)} {_day_word(days)}: {named}{more}"


def _day_word(days: Sequence[str]) -> str:
    return "day" if len(days) == 1 else "days"


def _plain(prior: Prior) -> dict[str, Any]:
    return {"centre": prior.centre, "low": prior.low, "high": prior.high, "source": prior.source}


def _wrapped(text: str, indent: str, width: int) -> Iterable[str]:
    return wrap(
        text, width, initial_indent=indent, subsequent_indent=f"{indent}{_INDENT}", break_on_hyphens=False,
        break_long_words=False,
    )  # fmt: skip
