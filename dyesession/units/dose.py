"""The reader of a dose, as recipes and old books write it.

Knows no recipes and no substances: a dose says only what it is a share of. Nothing without a weight is
taken as zero.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import NoReturn

from dyesession.units.amount import Amount, amount, asking, take_unit
from dyesession.units.cursor import Ask, Cursor, Token
from dyesession.units.kinds import Kind
from dyesession.units.names import Option
from dyesession.units.readers import weighable
from dyesession.units.trouble import NeedsWeight, Wanted, quoted, sentence

DOSE = Wanted("a dose", "12 %")
HUNDRED = 100

_KINDS = (Kind.PERCENT, Kind.MASS, Kind.VOLUME, Kind.LENGTH)


@dataclass(frozen=True)
class ShareOfFibre:
    """A fraction, from `low` to `high`, of the dry weight of fibre: 12 % is 3/25."""

    low: Fraction
    high: Fraction
    text: str


@dataclass(frozen=True)
class ShareOf:
    """A fraction of the weight of another ingredient, named as typed."""

    ingredient: str
    low: Fraction
    high: Fraction
    text: str


@dataclass(frozen=True)
class PerBath:
    """Grams for each litre of bath."""

    low: Fraction
    high: Fraction
    text: str


@dataclass(frozen=True)
class Flat:
    """Grams, whatever the fibre weighs."""

    low: Fraction
    high: Fraction
    text: str


Dose = ShareOfFibre | ShareOf | PerBath | Flat


# Words for what is being dyed, as the old books and a spinner say them.
_FIBRE_WORDS = {
    "fibre", "fibres", "fiber", "fibers", "wool", "silk", "cotton", "linen", "goods", "yarn", "yarns",
    "cloth", "fleece", "wof", "owf",
}  # fmt: skip
_WORDS_ROUND_FIBRE = {
    "on", "of", "the", "its", "weight", "dry", "air-dry", "washed", "scoured", "raw", "grey",
}  # fmt: skip
_BATH_WORDS = frozenset(("water", "bath", "liquor", "the bath", "the water", "the liquor"))


@asking
def read_dose(text: str) -> Dose:
    """Read a dose: a share of the fibre, of another ingredient, of the bath, or a flat weight.

    `12 %`, `1 oz per lb`, `1 1/2 oz per 2 1/2 lb`, `5 parts to 32`, `6.25 % of alum`, `1/16 of the alum`,
    `2 g/l`, `5 g`. Raises `NeedsWeight` for a dose without a weight in it (a handful, a tablespoon, per
    10 yards), `Ambiguous` for a gallon, drachm and the like, `UnitError` for anything else.
    """
    cursor = Cursor(text, DOSE)
    dose = _as_much_as(cursor) or _counted(cursor)
    cursor.settle()
    return dose


def _as_much_as(cursor: Cursor) -> Dose | None:
    """Read `as much as the alum`."""
    words = ("as", "much", "as")
    if any(cursor.peek(ahead).key != word for ahead, word in enumerate(words)):
        return None
    cursor.at += len(words)
    return _share(cursor, Fraction(1), Fraction(1), share_base(cursor))


def _counted(cursor: Cursor) -> Dose:
    start = cursor.at
    found = amount(cursor, _KINDS)
    if found is None:
        _needs_weight(cursor, "gives nothing to weigh")
    if found.kind is Kind.PERCENT:
        return _share(cursor, found.low / HUNDRED, found.high / HUNDRED, share_base(cursor))
    if found.kind is Kind.PARTS:
        return _parts(cursor, found)
    if found.kind is None:
        return _times(cursor, found)
    weighable(cursor, found)
    if per(cursor):
        return _rate(cursor, found)
    _ask_proportion(cursor, cursor.tokens[start : cursor.at])
    return Flat(found.low, found.high, cursor.text)


def _needs_weight(cursor: Cursor, why: str) -> NoReturn:
    raise NeedsWeight(sentence(cursor.text, f"{why} and needs a weight", cursor.wanted))


def per(cursor: Cursor) -> bool:
    """Step over the word that makes a rate, if it is next."""
    if cursor.peek().key in ("to", "for") and cursor.peek(1).key in ("the", "a", "each", "every"):
        cursor.at += 2
        return True
    return cursor.skip("per", "/", "for")


def _rate(cursor: Cursor, found: Amount) -> Dose:
    """Read what a weight is given for: a weight of fibre or ingredient, or a volume of bath."""
    base = one_or_more(cursor)
    if base.kind is Kind.VOLUME:
        _in_bath(cursor)
        return PerBath(found.low / base.high, found.high / base.low, cursor.text)
    if base.kind is not Kind.MASS:
        _needs_weight(cursor, f"is a dose for {base.kind.value if base.kind else 'a number without a unit'}")
    return _share(cursor, found.low / base.high, found.high / base.low, share_base(cursor))


def one_or_more(cursor: Cursor) -> Amount:
    """Read `lb` or `2 1/2 lb` after per; a bare unit is one of it."""
    found = amount(cursor, _KINDS) if cursor.sees_number() else _bare_unit(cursor)
    if found is None:
        _needs_weight(cursor, f"is a dose for {quoted(cursor.rest())}")
    if not found.low:
        cursor.refuse("divides by nothing")
    return found


def _bare_unit(cursor: Cursor) -> Amount | None:
    unit = take_unit(cursor, _KINDS)
    return Amount(unit.size, unit.size, unit.kind) if unit else None


def _in_bath(cursor: Cursor) -> None:
    if cursor.skip("of"):
        if cursor.rest().casefold() not in _BATH_WORDS:
            cursor.refuse(f"is a dose for a volume of {quoted(cursor.rest())}")
        cursor.at = len(cursor.tokens)


def share_base(cursor: Cursor) -> str | None:
    """Read what a share is of: None for the fibre, else the ingredient's name as typed."""
    rest = cursor.rest()
    if not rest:
        return None
    cursor.at = len(cursor.tokens)
    name = rest
    for lead in ("of", "the", "weight of", "the"):
        name = name[len(lead) :].lstrip() if name.casefold().startswith(lead + " ") else name
    if _is_fibre(name):
        return None
    if name == rest and not rest.casefold().startswith("of ") and cursor.tokens[0].key != "as":
        cursor.refuse(f"has something left over, {quoted(rest)}")
    if not name.isprintable() or not name[0].isalpha():
        cursor.refuse(f"is a share of {quoted(name)}, which names nothing")
    return name


def _is_fibre(name: str) -> bool:
    spoken = set(name.casefold().replace(".", "").split())
    return bool(spoken & _FIBRE_WORDS) and spoken <= _FIBRE_WORDS | _WORDS_ROUND_FIBRE


def _share(cursor: Cursor, low: Fraction, high: Fraction, base: str | None) -> ShareOfFibre | ShareOf:
    if base is None:
        return ShareOfFibre(low, high, cursor.text)
    return ShareOf(base, low, high, cursor.text)


def _parts(cursor: Cursor, found: Amount) -> ShareOfFibre | ShareOf:
    """Read `5 parts to 32` or `1 part to 4 of cotton`."""
    if not (cursor.skip("to", "per", "in", "for") and cursor.sees_number()):
        cursor.refuse("says how many parts but not of how many")
    base = amount(cursor, (Kind.PARTS,))
    if base is None or base.kind not in (None, Kind.PARTS) or not base.low:
        cursor.refuse("says how many parts but not of how many")
    return _share(cursor, found.low / base.high, found.high / base.low, share_base(cursor))


def _times(cursor: Cursor, found: Amount) -> ShareOfFibre | ShareOf:
    """Read `1/16 of the alum` or `2 1/2 times the wool`; a bare figure is refused."""
    if cursor.skip("times") or (cursor.peek().key == "of" and 0 < found.high <= 1):
        return _share(cursor, found.low, found.high, share_base(cursor))
    if cursor.sees("word"):
        cursor.refuse(f"has no unit this program knows ({quoted(cursor.peek().text)})")
    cursor.refuse("has no unit")


def _ask_proportion(cursor: Cursor, tokens: tuple[Token, ...]) -> None:
    """Note the question of `1 oz to 10 lb`: an ounce for every ten pounds, or anything between the two."""
    for before, joint, after in zip(tokens, tokens[1:], tokens[3:], strict=False):
        unlike = before.key.rstrip("s") != after.key.rstrip("s")
        if joint.key == "to" and before.sort == after.sort == "word" and unlike:
            options = (Option("the first for every one of the second", "per"), Option("a range", "–"))
            question = f"What does “to” mean in {quoted(cursor.text)}?"
            cursor.asks.append(Ask(question, joint.start, joint.end, options))
