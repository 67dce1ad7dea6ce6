"""How long a kept bath, a stock or a dry jar stands before it is to be looked at again.

No published figure was found for any of them: every row says whether it is common practice or our own choice.
It is a date to look, never a promise that the bath is good until then.
"""

from dataclasses import dataclass

from dyesession.care.reminder import PRACTICE
from dyesession.care.situation import Content
from dyesession.substances import Substance, find

PLACES = ("room", "cold", "frozen")
FORMS = ("bath", "stock", "dry")
OWN = "own choice, no source"


@dataclass(frozen=True, slots=True)
class Keeping:
    """Days until it is to be looked at: the shorter and the longer usual time, of what, and who says so."""

    what: str
    days: float
    most_days: float
    source: str


_PLANT = {
    "room": Keeping("plant dyebath", 2, 3, PRACTICE),
    "cold": Keeping("plant dyebath, in a cold box that holds no food", 7, 14, PRACTICE),
    "frozen": Keeping("plant dyebath, frozen", 90, 180, PRACTICE),
}
_BATHS = {
    "tannin": Keeping("tannin bath", 2, 5, PRACTICE),
    "iron": Keeping("iron bath", 2, 5, f"{OWN}: practice says days, before it is rust sludge"),
    "alum": Keeping("alum bath", 14, 60, f"{OWN}: practice says weeks to months, until plant rests mould"),
    "alkali": Keeping("alkali bath", 14, 60, f"{OWN}: taken as an alum bath"),
    "acid": Keeping("sour bath", 14, 60, f"{OWN}: taken as an alum bath"),
    "vat": Keeping("vat", 7, 7, f"{OWN}: a vat keeps while it stays reduced"),
}
_STOCKS = {
    "alum": Keeping("alum stock", 180, 180, PRACTICE),
    "alkali": Keeping("soda stock", 180, 180, PRACTICE),
    "acid": Keeping("sour stock", 30, 60, f"{PRACTICE}: it moulds"),
    "tannin": Keeping("tannin stock", 7, 7, PRACTICE),
    "iron": Keeping("iron stock", 7, 14, PRACTICE),
}
_MINERALS = {"aluminium salt": "alum", "alkali": "alkali", "carbonate": "alkali", "acid": "acid"}
_DRY = Keeping("dry jar", 730, 730, f"{OWN}: practice says years, if it stays dry")


def keeping(contents: tuple[Content, ...], place: str = "room", form: str = "bath") -> Keeping:
    """When what is in the jar is to be looked at: the earliest that anything in it asks for.

    `place` is one of PLACES, `form` one of FORMS. What nobody knows is taken for a plant dyebath. Cold and
    frost lengthen only a plant dyebath, for nothing is said of the others. Raises ValueError for a place or
    a form not listed.
    """
    if place not in PLACES or form not in FORMS:
        raise ValueError(f"{place!r}, {form!r}: expected one of {PLACES} and one of {FORMS}")
    if form == "dry":
        return _DRY
    times = [_of(find(name), place, form) for name, _ in contents]
    return min(times, key=lambda one: one.days, default=_PLANT[place])


def is_organic(substance: Substance | None) -> bool:
    """True for what moulds or ferments; also for what nobody knows."""
    if substance is None:
        return True
    return substance.kind in ("dyestuff", "tannin") or substance.has("plant slurry", "ferments", "flour")


def _of(substance: Substance | None, place: str, form: str) -> Keeping:
    kind = "plant" if substance is None else _kind(substance)
    listed = _STOCKS.get(kind) if form == "stock" else None
    return listed or _BATHS.get(kind) or _PLANT[place]


def _kind(substance: Substance) -> str:
    """Which row of the tables a substance falls under; worst-keeping first."""
    if substance.has("iron"):
        return "iron"
    if substance.kind == "tannin":
        return "tannin"
    if substance.kind == "vat" or substance.has("reducing"):
        return "vat"
    if substance.kind == "dyestuff" or substance.has("plant slurry"):
        return "plant"
    return next((kind for trait, kind in _MINERALS.items() if substance.has(trait)), "plant")
