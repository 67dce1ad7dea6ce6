"""The numbers a day's estimates start from, as its log holds them: `[[prior]]`, each with the days it comes from.

Pure. A log without them was begun from the usual guesses; a table that cannot be read is left out, never guessed.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Any

from dyesession.account.beside import Beside
from dyesession.account.unknowns import Starting
from dyesession.dyeing.bands import Scale
from dyesession.dyeing.priors import Prior

HEADING = "prior"
LEARNED = "learned"
POINTS = ("centre", "low", "high")
MOST_DAYS = 12  # sessions named for a number, the latest; our own choice, no source


def priors_for_log(starting: Starting, days: Mapping[str, Sequence[str]]) -> list[dict[str, Any]]:
    """The tables of a log's head, one a number that is the dyer's own, in the order of their names."""
    return [
        {
            "name": name,
            **dict(zip(POINTS, _rounded(prior), strict=True)),
            "scale": prior.scale,
            "how": LEARNED,
            "from": list(days.get(name, ()))[-MOST_DAYS:],
            **(_beside_for_log(starting.beside[name]) if name in starting.beside else {}),
        }
        for name, prior in sorted(starting.priors.items())
    ]


def _rounded(prior: Prior) -> list[float]:
    return [float(f"{one:.6g}") for one in (prior.centre, prior.low, prior.high)]


def _beside_for_log(beside: Beside) -> dict[str, Any]:
    """`beside` names the other unknown; each line of `at` is a place of it, then centre, low and high."""
    rows = [" ".join(f"{one:.6g}" for one in (place, p.centre, p.low, p.high)) for place, p in beside.at]
    return {"beside": beside.of, "beside_scale": beside.scale, "at": rows}


def starting_of(header: Mapping[str, Any]) -> Starting:
    """What a day's account starts from, by the head of its log."""
    tables = header.get(HEADING)
    found = [(_prior(one), one) for one in tables] if isinstance(tables, list) else []
    sound = {prior.name: (prior, table) for prior, table in found if prior is not None}
    beside = {name: _beside(prior, table) for name, (prior, table) in sound.items()}
    return Starting(
        priors={name: prior for name, (prior, _) in sound.items()},
        beside={name: one for name, one in beside.items() if one is not None},
    )


def _beside(prior: Prior, table: Mapping[str, Any]) -> Beside | None:
    """What the number is at places of another; None where the table does not say so soundly."""
    rows, scale = table.get("at"), table.get("beside_scale")
    if not isinstance(rows, list) or not rows or scale not in ("log", "logit"):
        return None
    try:
        at = [tuple(float(one) for one in str(row).split()) for row in rows]
        found = [(place, replace(prior, centre=centre, low=low, high=high)) for place, centre, low, high in at]
    except (TypeError, ValueError):
        return None
    rising = all(a < b for (a, _), (b, _) in pairwise(found))
    sound = all(_sound(one.centre, one.low, one.high, one.scale) for _, one in found)
    inside = found[0][0] > 0.0 and (scale == "log" or found[-1][0] < 1.0)
    return Beside(str(table.get("beside", "")), scale, tuple(found)) if rising and sound and inside else None


def _sound(centre: float, low: float, high: float, scale: Scale) -> bool:
    return 0.0 < low < centre < high < (math.inf if scale == "log" else 1.0)


def _prior(table: Any) -> Prior | None:
    if not isinstance(table, Mapping) or table.get("scale") not in ("log", "logit"):
        return None
    scale: Scale = table["scale"]
    try:
        name = str(table["name"])
        low, centre, high = (float(table[one]) for one in ("low", "centre", "high"))
    except (KeyError, TypeError, ValueError):
        return None
    days = table.get("from")
    named = ", ".join(str(one) for one in days) if isinstance(days, list) else ""
    if not _sound(centre, low, high, scale):
        return None
    return Prior(name, centre, low, high, scale, f"{LEARNED} from {named}")
