"""A kitchen with a jar of madder, and the day that took from it: shared by what tells of jars in lines and on a screen."""

from pathlib import Path

from daybook.written import written
from days import Day

KITCHEN = """\
format = 1
[[jar]]
name = "madder, autumn"
substance = "madder root"
price_per_100_g = 4.5
mass_left = "350 g"
weighed_on = 2026-03-01
"""


def used_once(folder: Path, kitchen: str = KITCHEN) -> Day:
    """That kitchen in a folder, and a day in its logs that used 120 g of the madder; the day."""
    (folder / "kitchen.toml").write_text(kitchen, "utf-8")
    day = Day()
    day.home()
    written(day, folder / "logs", "2026-03-14-a-day-k7q2")
    return day
