"""The numbers a day's estimates start from, as its log holds them: `[[prior]]`, each with the days it comes from.

Pure. A log without them was begun from the usual guesses; a table that cannot be read is left out, never guessed.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from dyesession.account.unknowns import Starting
from dyesession.dyeing.bands import Scale
from dyesession.dyeing.priors import Prior

HEADING = "prior"
LEARNED = "learned"
MOST_DAYS = 12  # sessions named for a number, the latest; our own choice, no source


def priors_for_log(priors: Mapping[str, Prior], days: Mapping[str, Sequence[str]]) -> list[dict[str, Any]]:
    """The tables of a log's head, one a number that is the dyer's own, in the order of their names."""
    return [
        {
            "name": name,
            "centre": float(f"{prior.centre:.6g}"),
            "low": float(f"{prior.low:.6g}"),
            "high": float(f"{prior.high:.6g}"),
            "scale": prior.scale,
            "how": LEARNED,
            "from": list(days.get(name, ()))[-MOST_DAYS:],
        }
        for name, prior in sorted(priors.items())
    ]


def starting_of(header: Mapping[str, Any]) -> Starting:
    """What a day's account starts from, by the head of its log."""
    tables = header.get(HEADING)
    found = [_prior(one) for one in tables] if isinstance(tables, list) else []
    return Starting(priors={one.name: one for one in found if one is not None})


def _prior(table: Any) -> Prior | None:
    if not isinstance(table, Mapping) or table.get("scale") not in ("log", "logit"):
        return None
    scale: Scale = table["scale"]
    try:
        name = str(table["name"])
        low, centre, high = (float(table[one]) for one in ("low", "centre", "high"))
    except (KeyError, TypeError, ValueError):
        return None
    sound = 0.0 < low < centre < high and (scale == "log" or high < 1.0)
    days = table.get("from")
    named = ", ".join(str(one) for one in days) if isinstance(days, list) else ""
    return Prior(name, centre, low, high, scale, f"{LEARNED} from {named}") if sound else None
