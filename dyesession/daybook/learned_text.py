"""The dyer's own numbers in words, and as JSON: each with its ±, the guess it replaces, and its days. Pure."""

from collections.abc import Callable, Iterable, Sequence
from textwrap import wrap
from typing import Any

from dyesession.daybook.learning import Learnt, Number
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import STANDARD_LIQUOR_RATIO, Prior
from dyesession.units import show_percent

PER_CENT = 100.0
MOST_NAMED = 4  # days named in a line, the latest; our own choice, no source
_INDENT = "  "

NOTHING = (
    "No day has taught a number yet: the usual guesses are used. Read a bath before and after its fibre (“strength"
    " 0.2 of before”), a further strain beside the first, a wet skein's weight, a dry colour of undyed and dyed fibre."
)


def learned_lines(learned: Learnt, width: int, demo: bool = False) -> list[str]:
    """Every number, told in a few lines of at most `width` columns."""
    if not learned.numbers:
        return wrap(NOTHING, width)
    head = "What the demo days would teach; none of it is used for a day of your own." if demo else (
        "Your own numbers, which take the place of the usual guesses: in brackets, where nine of ten further days"
        " will lie."
    )
    lines = wrap(head, width)
    for one in learned.numbers:
        lines += ["", *_wrapped(f"{title(one)}: {_told(one)}", "", width)]
        lines += _wrapped(f"guessed {_of(one, one.guess)} before; {_days(one)}", _INDENT, width)
    return lines


def learned_as_json(learned: Learnt, demo: bool = False) -> dict[str, Any]:
    """Every number as another program reads it, on its own scale (partition in L/kg, shares from 0 to 1)."""
    return {
        "demo": demo,
        "numbers": [
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
            for one in learned.numbers
        ],
    }


def changed_lines(before: Learnt, after: Learnt, width: int) -> list[str]:
    """What a day taught: the numbers that rest on more days than they did without it."""
    moved = [
        one
        for one in after.numbers
        if one.days != (was.days if (was := before.number(one.about.what, one.about.of, one.about.on)) else ())
    ]
    told = [f"{title(one)}: {_told(one)}, {len(one.days)} {_day_word(one.days)}" for one in moved]
    if not told:
        return []
    lines = wrap('This day taught (look at it all with "dyesession learn"):', width)
    return lines + [text for one in told for text in _wrapped(one, _INDENT, width)]


def title(one: Number) -> str:
    """What a number is about, in the trade's words."""
    about = one.about
    return {
        "exhaustion": f"{about.of} on {about.on}, taken at 1:{STANDARD_LIQUOR_RATIO:.0f}",
        "kept share": f"{about.of}, kept by the first extraction",
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
    if what == "kept share":
        return lambda value: show_percent(PER_CENT * value, estimate=True)
    if what == "stove power":
        return lambda value: f"{value:.0f} W"
    return lambda value: f"{value:.2f}"


def _days(one: Number) -> str:
    named = ", ".join(one.days[-MOST_NAMED:])
    more = f" and {len(one.days) - MOST_NAMED} before" if len(one.days) > MOST_NAMED else ""
    odd = f"; hardly counted, being odd: {', '.join(one.odd)}" if one.odd else ""
    return f"from {len(one.days)} {_day_word(one.days)}: {named}{more}{odd}"


def _day_word(days: Sequence[str]) -> str:
    return "day" if len(days) == 1 else "days"


def _plain(prior: Prior) -> dict[str, Any]:
    return {"centre": prior.centre, "low": prior.low, "high": prior.high, "source": prior.source}


def _wrapped(text: str, indent: str, width: int) -> Iterable[str]:
    return wrap(
        text, width, initial_indent=indent, subsequent_indent=f"{indent}{_INDENT}", break_on_hyphens=False,
        break_long_words=False,
    )  # fmt: skip
