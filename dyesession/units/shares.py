"""Arithmetic on amounts that were read: shares of a weight, sums, repeats, splits. All exact; all pure.

Knows no recipes and no care: a limit is whatever the caller says it is.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from dyesession.units.amount import Quantity
from dyesession.units.dose import HUNDRED, Dose, Flat, PerBath, ShareOf, ShareOfFibre
from dyesession.units.trouble import NeedsWeight, Wanted, sentence

_FIBRE_SHARE = Wanted("a share of the fibre", "12 %")


def percent_of_fibre(ingredient: Quantity, fibre: Quantity) -> Quantity:
    """Give an ingredient as a percentage of the fibre, both in grams; ranges give the widest range.

    Raises `NeedsWeight` when the fibre may weigh nothing.
    """
    if fibre.low <= 0:
        why = "is no weight of fibre, so the share cannot be worked out and needs a weight"
        raise NeedsWeight(sentence(fibre.text, why, Wanted("a weight of fibre", "240 g")))
    low, high = HUNDRED * ingredient.low / fibre.high, HUNDRED * ingredient.high / fibre.low
    return Quantity(low, high, f"{ingredient.text} per {fibre.text}")


def as_share_of_fibre(dose: Dose) -> ShareOfFibre:
    """Insist that a dose is a share of the fibre; of the bath or flat it needs the fibre's weight first.

    Raises `NeedsWeight`.
    """
    if isinstance(dose, ShareOfFibre):
        return dose
    raise NeedsWeight(sentence(dose.text, f"is {_what(dose)} and needs a weight of fibre", _FIBRE_SHARE))


def _what(dose: ShareOf | PerBath | Flat) -> str:
    if isinstance(dose, ShareOf):
        return f"a share of {dose.ingredient}"
    return "a dose for a volume of bath" if isinstance(dose, PerBath) else "a weight on its own"


def through(nested: ShareOf, base: ShareOfFibre) -> ShareOfFibre:
    """Turn a share of an ingredient into a share of the fibre, given the ingredient's own share."""
    return ShareOfFibre(nested.low * base.low, nested.high * base.high, nested.text)


def mass_of_share(share: ShareOfFibre, fibre: Quantity) -> Quantity:
    """Give the grams to weigh out for a share of so many grams of fibre."""
    return Quantity(share.low * fibre.low, share.high * fibre.high, f"{share.text} on {fibre.text}")


def total(amounts: Iterable[Quantity]) -> Quantity:
    """Add amounts of one kind, low ends to low ends and high to high."""
    listed = list(amounts)
    low = sum((one.low for one in listed), Fraction())
    high = sum((one.high for one in listed), Fraction())
    return Quantity(low, high, " + ".join(one.text for one in listed))


def repeated(amount: Quantity, least: int, most: int) -> Quantity:
    """Give the amount taken from `least` to `most` times over."""
    return Quantity(amount.low * least, amount.high * most, f"{amount.text}, {least} to {most} times")


def split(whole: Fraction, parts: Sequence[int]) -> tuple[Fraction, ...]:
    """Share `whole` out in proportion to `parts`, exactly. Raises `ValueError` when they come to nothing."""
    if sum(parts) <= 0:
        raise ValueError("parts must add up to more than nothing")
    return tuple(whole * part / sum(parts) for part in parts)


def within(masses: Iterable[Quantity], fibre: Quantity, limit: ShareOfFibre) -> bool:
    """Say whether the masses together, at their most, stay within `limit` of the fibre at its least."""
    return total(masses).high <= limit.high * fibre.low
