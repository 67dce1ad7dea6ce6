"""Which form is on the packet: molar masses and how much of one form equals another.

Knows nothing of doses. Everything is derived from formulas and the abridged standard atomic masses of
IUPAC (from memory; checked against published equivalents in the tests). The wrong hydrate is a 1.4 to 2.9
times error.
"""

import re
from collections import Counter
from dataclasses import dataclass

from dyesession.dyeing.limits import OutOfRange, zero_or_more

ATOMIC_MASS = {
    "H": 1.008,
    "C": 12.011,
    "O": 15.999,
    "Na": 22.990,
    "Mg": 24.305,
    "Al": 26.982,
    "S": 32.06,
    "K": 39.098,
    "Ca": 40.078,
    "Fe": 55.845,
    "Cu": 63.546,
}


@dataclass(frozen=True)
class Form:
    """A form of a substance as sold: its formula and the part that counts when forms are exchanged."""

    formula: str
    counts_as: str
    parts: int = 1


ALUMINIUM, IRON, COPPER = "aluminium", "iron", "copper"
SODA, CITRIC, TARTAR = "sodium carbonate", "citric acid", "bitartrate"

FORMS = {
    "potassium alum": Form("KAl(SO4)2.12H2O", ALUMINIUM),
    "dried alum": Form("KAl(SO4)2", ALUMINIUM),
    "aluminium sulphate octadecahydrate": Form("Al2(SO4)3.18H2O", ALUMINIUM, 2),
    "aluminium sulphate tetradecahydrate": Form("Al2(SO4)3.14H2O", ALUMINIUM, 2),
    "aluminium triacetate": Form("Al(C2H3O2)3", ALUMINIUM),  # ideal formula; commercial products vary
    "basic aluminium diacetate": Form("AlOH(C2H3O2)2", ALUMINIUM),  # the same
    "ferrous sulphate heptahydrate": Form("FeSO4.7H2O", IRON),
    "ferrous sulphate monohydrate": Form("FeSO4.H2O", IRON),
    "anhydrous ferrous sulphate": Form("FeSO4", IRON),
    "copper sulphate pentahydrate": Form("CuSO4.5H2O", COPPER),
    "anhydrous copper sulphate": Form("CuSO4", COPPER),
    "washing soda": Form("Na2CO3.10H2O", SODA),
    "sodium carbonate monohydrate": Form("Na2CO3.H2O", SODA),
    "soda ash": Form("Na2CO3", SODA),
    "citric acid monohydrate": Form("C6H8O7.H2O", CITRIC),
    "anhydrous citric acid": Form("C6H8O7", CITRIC),
    "cream of tartar": Form("KC4H5O6", TARTAR),
}

TOKEN = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|\)(\d*)")


def molar_mass(formula: str) -> float:
    """Molar mass in g/mol of a formula such as "KAl(SO4)2.12H2O".

    Raises `OutOfRange` when it cannot be read.
    """
    return sum(ATOMIC_MASS[element] * count for element, count in atoms(formula).items())


def mass_share(element: str, formula: str) -> float:
    """Share of a formula's mass that is one element."""
    return ATOMIC_MASS[element] * atoms(formula)[element] / molar_mass(formula)


def equal_mass_g(mass_g: float, packet: str, wanted: str) -> float:
    """Grams of the wanted form that do the work of `mass_g` of the form on the packet.

    Raises `OutOfRange` for a form not known, or two forms with nothing in common.
    """
    zero_or_more("mass", mass_g, "10 g")
    have, want = _form(packet), _form(wanted)
    if have.counts_as != want.counts_as:
        raise OutOfRange(
            f"{packet} cannot stand for {wanted}: one counts by {have.counts_as},"
            f" the other by {want.counts_as}; expected two"
            " forms of one substance, for example washing soda and soda ash."
        )
    moles = mass_g * have.parts / molar_mass(have.formula)
    return moles * molar_mass(want.formula) / want.parts


def atoms(formula: str) -> Counter[str]:
    """Count the atoms of a formula with brackets and dots for water.

    Raises `OutOfRange` when it cannot be read.
    """
    total: Counter[str] = Counter()
    for part in formula.split("."):
        times, body = _leading_number(part)
        for element, count in _bracketed(body, formula).items():
            total[element] += times * count
    return total


def _form(name: str) -> Form:
    if name not in FORMS:
        raise OutOfRange(f'The form "{name}" is not known; expected one of {", ".join(FORMS)}.')
    return FORMS[name]


def _leading_number(part: str) -> tuple[int, str]:
    digits = re.match(r"\d*", part)
    number = digits.group() if digits else ""
    return int(number or 1), part[len(number) :]


def _bracketed(body: str, formula: str) -> Counter[str]:
    levels: list[Counter[str]] = [Counter()]
    at = 0
    while at < len(body):
        token = TOKEN.match(body, at)
        if token is None or (token.group(1) or "H") not in ATOMIC_MASS:
            raise _unreadable(formula)
        _take(token, levels, formula)
        at = token.end()
    if len(levels) != 1 or not body:
        raise _unreadable(formula)
    return levels[0]


def _take(token: re.Match[str], levels: list[Counter[str]], formula: str) -> None:
    element, count, opening, times = token.groups()
    if element:
        levels[-1][element] += int(count or 1)
    elif opening:
        levels.append(Counter())
    elif len(levels) < 2:
        raise _unreadable(formula)
    else:
        for name, number in levels.pop().items():
            levels[-1][name] += number * int(times or 1)


def _unreadable(formula: str) -> OutOfRange:
    return OutOfRange(f'The formula "{formula}" cannot be read; expected, for example, "KAl(SO4)2.12H2O".')
