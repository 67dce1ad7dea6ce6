"""The kitchen: scales, pots, stove, water, jars and household, and friendly loading of `kitchen.toml`."""

from dyesession.care import Household
from dyesession.kitchen.loading import check_kitchen, load_kitchen
from dyesession.kitchen.log import kitchen_for_log, kitchen_from_log, write_kitchen
from dyesession.kitchen.model import (
    Alarm,
    Burner,
    Jar,
    Jug,
    Kitchen,
    Pot,
    Scale,
    TapWater,
)
from dyesession.kitchen.trouble import KitchenError

__all__ = [
    "Alarm",
    "Burner",
    "Household",
    "Jar",
    "Jug",
    "Kitchen",
    "KitchenError",
    "Pot",
    "Scale",
    "TapWater",
    "check_kitchen",
    "kitchen_for_log",
    "kitchen_from_log",
    "load_kitchen",
    "write_kitchen",
]
