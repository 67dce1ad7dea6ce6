"""Amounts as a person reads them: short, with the figures that mean something and no trailing zeros.

Knows no screens. `estimate=True` keeps two significant figures and never a second decimal. Halves are rounded
away from zero, exactly, so that what is shown is what the sum gives.
"""

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache

from dyesession.units.heat import HeatWord, fahrenheit
from dyesession.units.names import OUNCE_G

Figure = Fraction | float | int

GRAMS_PER_KG = 1000
KILOGRAMS_FROM_G = 10_000  # below this a kitchen speaks of grams: common practice, no source
EXACT_FIGURES = 3  # significant figures of an amount to weigh: common practice, no source
ESTIMATE_FIGURES = 2
MOST_DECIMALS = 2  # kitchen scales go no further
ESTIMATE_DECIMALS = 1
TRACE_DECIMALS = 6  # a millionth; anything less is nothing
OUNCES_PER_POUND = 16
EIGHTHS = 8  # old scales and books go by eighths of an ounce
_MINUTES_PER_HOUR, _SECONDS_PER_MINUTE, _HOURS_PER_DAY = 60, 60, 24
_DAYS_FROM_H = 48  # below two days people count hours: common practice, no source
_SECONDS_BELOW_MIN = 10


def exact(value: Figure) -> Fraction:
    """Turn a figure into a fraction, a float by the decimals it prints. Raises `ValueError` for nan."""
    return value if isinstance(value, Fraction) else Fraction(repr(value))


def rounded(value: Figure, decimals: int) -> Fraction:
    """Round to so many decimals, halves away from zero."""
    scaled = abs(exact(value)) * 10**decimals
    size = Fraction((2 * scaled + 1) // 2, 10**decimals)
    return size if exact(value) >= 0 else -size


@lru_cache(maxsize=1024)  # the same few figures stand on a screen that is drawn every second
def show_figure(value: Figure, *, estimate: bool = False) -> str:
    """Write a bare figure: whole from 100 up (from 10 as an estimate), fewer decimals the larger it is."""
    number = exact(value)
    figures, most = (ESTIMATE_FIGURES, ESTIMATE_DECIMALS) if estimate else (EXACT_FIGURES, MOST_DECIMALS)
    decimals = min(max(figures - _figures_before_point(number), 0), most)
    if not estimate and abs(number) < Fraction(1, 10):
        decimals = _decimals_for_two_figures(number)
    return _written(rounded(number, decimals), decimals)


def _figures_before_point(number: Fraction) -> int:
    return len(str(int(abs(number)))) if abs(number) >= 1 else 0


def _decimals_for_two_figures(number: Fraction) -> int:
    """Count decimals for a trace, so that it does not show as nothing."""
    decimals = MOST_DECIMALS
    while abs(number) * 10**decimals < 10 and decimals < TRACE_DECIMALS:
        decimals += 1
    return decimals


def _written(number: Fraction, decimals: int) -> str:
    sign = "-" if number < 0 else ""
    whole, part = divmod(int(abs(number) * 10**decimals), 10**decimals)
    after = str(part).rjust(decimals, "0").rstrip("0") if decimals else ""
    return f"{sign}{whole}.{after}" if after else f"{sign}{whole}"


def show_mass(grams: Figure, *, estimate: bool = False) -> str:
    """Write grams as `17.8 g`, or from ten kilograms up as `12.5 kg`."""
    if abs(exact(grams)) >= KILOGRAMS_FROM_G:
        return f"{show_figure(exact(grams) / GRAMS_PER_KG, estimate=estimate)} kg"
    return f"{show_figure(grams, estimate=estimate)} g"


def show_volume(litres: Figure, *, estimate: bool = False) -> str:
    """Write litres as `4.4 L`, and less than one as `120 mL`."""
    if 0 < abs(exact(litres)) < 1:
        millilitres = show_figure(exact(litres) * 1000, estimate=estimate)
        return "1 L" if millilitres == "1000" else f"{millilitres} mL"
    return f"{show_figure(litres, estimate=estimate)} L"


def show_percent(percent: Figure, *, estimate: bool = False) -> str:
    """Write parts of a hundred (12, not 0.12) as `12 %`."""
    return f"{show_figure(percent, estimate=estimate)} %"


def show_temperature(degrees_c: Figure | HeatWord) -> str:
    """Write degC to the nearest tenth as `85 °C`, or the heat word itself."""
    if isinstance(degrees_c, HeatWord):
        return degrees_c.word
    return f"{_written(rounded(degrees_c, 1), 1)} °C"


def show_fahrenheit(degrees_c: Figure) -> str:
    """Write degC as whole degrees Fahrenheit, for a kitchen that prefers them."""
    return f"{_written(rounded(fahrenheit(exact(degrees_c)), 0), 0)} °F"


def show_duration(minutes: Figure) -> str:
    """Write minutes as `45 min`, `1 h 15 min`, `2 days 3 h`; seconds only under ten minutes."""
    total = exact(minutes)
    if total < 0:
        return f"-{show_duration(-total)}"
    if total < _SECONDS_BELOW_MIN:
        return _counted(int(rounded(total * _SECONDS_PER_MINUTE, 0)), _SECONDS_PER_MINUTE, "min", "s")
    whole = int(rounded(total, 0))
    if whole < _DAYS_FROM_H * _MINUTES_PER_HOUR:
        return _counted(whole, _MINUTES_PER_HOUR, "h", "min")
    return _counted(int(rounded(Fraction(whole, _MINUTES_PER_HOUR), 0)), _HOURS_PER_DAY, "days", "h")


def _counted(small: int, per_large: int, large_name: str, small_name: str) -> str:
    large, small = divmod(small, per_large)
    if not large:
        return f"{small} {small_name}"
    return f"{large} {large_name} {small} {small_name}" if small else f"{large} {large_name}"


def show_range(low: Figure, high: Figure, show: Callable[[Figure], str]) -> str:
    """Write `58 to 84 g`: both ends by the same function, the unit once; one end alone if they look alike."""
    below, above = show(low), show(high)
    if below == above:
        return above
    figure, _, unit = below.partition(" ")
    return (
        f"{figure} to {above}"
        if unit == above.partition(" ")[2] and " " not in unit
        else f"{below} to {above}"
    )


def show_avoirdupois(grams: Figure) -> str:
    """Write grams as pounds and ounces to the nearest eighth, `2 lb 3 oz`, `1 1/2 oz`; a trace decimally."""
    number = exact(grams)
    if number < 0:
        return f"-{show_avoirdupois(-number)}"
    eighths = int(rounded(number / OUNCE_G * EIGHTHS, 0))
    if eighths < EIGHTHS // 4:  # under a quarter of an ounce an eighth is too coarse
        return f"{show_figure(number / OUNCE_G)} oz"
    pounds, eighths = divmod(eighths, OUNCES_PER_POUND * EIGHTHS)
    ounces = f"{_mixed(eighths)} oz" if eighths else ""
    return " ".join(piece for piece in (f"{pounds} lb" if pounds else "", ounces) if piece)


def _mixed(eighths: int) -> str:
    whole, part = divmod(eighths, EIGHTHS)
    return " ".join(str(piece) for piece in (whole, Fraction(part, EIGHTHS)) if piece)
