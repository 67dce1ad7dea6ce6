"""Amounts from what people type, exact; and back into what people read.

Knows no recipes, files or clocks. Sources of the figures stand beside them in `names`, `heat` and
`hydrometer`.
"""

from dyesession.units.amount import Quantity
from dyesession.units.dose import Dose, Flat, PerBath, ShareOf, ShareOfFibre, read_dose
from dyesession.units.heat import OVERNIGHT, HeatWord, Overnight, by_eye, read_duration, read_temperature
from dyesession.units.hydrometer import baume, read_specific_gravity, twaddell
from dyesession.units.readers import (
    FibreText,
    read_fibre,
    read_length,
    read_mass,
    read_percent,
    read_volume,
    refuse_spoon_for,
)
from dyesession.units.shares import (
    as_share_of_fibre,
    mass_of_share,
    percent_of_fibre,
    repeated,
    split,
    through,
    total,
    within,
)
from dyesession.units.show import (
    exact,
    rounded,
    show_avoirdupois,
    show_duration,
    show_fahrenheit,
    show_figure,
    show_mass,
    show_percent,
    show_range,
    show_temperature,
    show_volume,
)
from dyesession.units.sign import read_signed_temperature, sign_of
from dyesession.units.trouble import Ambiguous, Choice, NeedsWeight, UnitError, quoted
from dyesession.units.water import WaterPerKg, WaterText, WaterVolume, read_water

__all__ = [
    "OVERNIGHT",
    "Ambiguous",
    "Choice",
    "Dose",
    "FibreText",
    "Flat",
    "HeatWord",
    "NeedsWeight",
    "Overnight",
    "PerBath",
    "Quantity",
    "ShareOf",
    "ShareOfFibre",
    "UnitError",
    "WaterPerKg",
    "WaterText",
    "WaterVolume",
    "as_share_of_fibre",
    "baume",
    "by_eye",
    "exact",
    "mass_of_share",
    "percent_of_fibre",
    "quoted",
    "read_dose",
    "read_duration",
    "read_fibre",
    "read_length",
    "read_mass",
    "read_percent",
    "read_signed_temperature",
    "read_specific_gravity",
    "read_temperature",
    "read_volume",
    "read_water",
    "refuse_spoon_for",
    "repeated",
    "rounded",
    "show_avoirdupois",
    "show_duration",
    "show_fahrenheit",
    "show_figure",
    "show_mass",
    "show_percent",
    "show_range",
    "show_temperature",
    "show_volume",
    "sign_of",
    "split",
    "through",
    "total",
    "twaddell",
    "within",
]
