"""Readers of the amounts only a kitchen has: power, air pressure, hardness; and words for writing them back.

Knows no tables. Sizes of units: SI and its definitions; hardness units are those of `dyeing.hardness`.
"""

import re
from collections.abc import Mapping
from fractions import Fraction

from dyesession.dyeing.hardness import UNIT_MG_L
from dyesession.kitchen.trouble import KitchenError
from dyesession.units import quoted

_FIGURE = re.compile(r"(\d+(?:[.,]\d+)?)\s*(.*)", re.DOTALL)

POWER_W = {"w": 1.0, "watt": 1.0, "watts": 1.0, "kw": 1000.0}
# 1 mmHg = 0.133322 kPa, 1 inHg = 25.4 mmHg (conventional millimetre of mercury).
MMHG_KPA = 0.133322387415
PRESSURE_KPA = {
    "kpa": 1.0, "hpa": 0.1, "mbar": 0.1, "mb": 0.1, "pa": 0.001, "mmhg": MMHG_KPA, "torr": MMHG_KPA,
    "inhg": 25.4 * MMHG_KPA,
}  # fmt: skip
_GERMAN, _FRENCH, _CLARK = UNIT_MG_L["German degree"], UNIT_MG_L["French degree"], UNIT_MG_L["Clark degree"]
HARDNESS_MG_L = {
    "mg/l": 1.0, "mg/l caco3": 1.0, "ppm": 1.0,
    "mmol/l": UNIT_MG_L["mmol/L"], "meq/l": UNIT_MG_L["meq/L"],
    "°dh": _GERMAN, "dh": _GERMAN, "german degrees": _GERMAN, "german degree": _GERMAN,
    "°fh": _FRENCH, "fh": _FRENCH, "°f": _FRENCH, "french degrees": _FRENCH, "french degree": _FRENCH,
    "clark degrees": _CLARK, "clark degree": _CLARK, "english degrees": _CLARK, "°clark": _CLARK,
    "°e": _CLARK,
    "gpg": UNIT_MG_L["grain per US gallon"], "grains per us gallon": UNIT_MG_L["grain per US gallon"],
}  # fmt: skip


def read_power_w(text: str) -> float:
    """Read a rated power, `1800 W` or `1.8 kW`, in watts. Raises `KitchenError`."""
    return _read(text, POWER_W, "a power", "1800 W")


def read_pressure_kpa(text: str) -> float:
    """Read an air pressure as a barometer shows it, `950 hPa`, in kilopascals. Raises `KitchenError`."""
    return _read(text, PRESSURE_KPA, "an air pressure", "950 hPa")


def read_hardness_mg_l(text: str) -> float:
    """Read a hardness, `12 dH` or `210 mg/l`, in mg/L as calcium carbonate. Raises `KitchenError`."""
    return _read(text, HARDNESS_MG_L, "a hardness with its unit", "12 dH")


def figure(value: float) -> str:
    """Write a number so that it reads back exactly, without an exponent or a needless point."""
    exact = Fraction(repr(value))
    if exact.denominator == 1:
        return str(exact.numerator)
    text = f"{value!r}"
    return text if "e" not in text else f"{value:.12f}".rstrip("0")


def _read(text: str, sizes: Mapping[str, float], what: str, example: str) -> float:
    hit = _FIGURE.fullmatch(text.strip())
    unit = " ".join(hit[2].casefold().split()) if hit else ""
    if hit is None or unit not in sizes:
        raise KitchenError(
            f"{quoted(text)} is not {what}; expected a figure and its unit, for example “{example}”."
        )
    return float(hit[1].replace(",", ".")) * sizes[unit]
