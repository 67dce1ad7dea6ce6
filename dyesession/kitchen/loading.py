"""From `kitchen.toml` to a kitchen, and the faults in it. Knows no recipe and no session.

A whole kitchen, every entry of which may be left out:

    format = 1
    units = "metric"                  # or "imperial", "US"
    elevation = "400 m"
    thermometer = true
    poison_centre = "the number on the sheet by the telephone"

    [[scale]]
    name = "letter scale"
    resolution = "1 g"
    capacity = "5 kg"

    [[jug]]
    volume = "2 l"
    resolution = "50 ml"

    [[pot]]
    name = "big pot"
    volume = "12 l"
    diameter = "28 cm"
    lid = true
    material = "stainless"

    [[burner]]
    power = "1800 W"
    kind = "electric"

    [water]
    hardness = "12 dH"
    ph = 7.6

    [[jar]]
    name = "madder, autumn"
    substance = "madder root"
    price_per_100_g = 4.5
    mass_left = "350 g"
    weighed_on = 2026-03-14           # logs of that day and later are taken off

    [household]
    lightest_child = "12 kg"
    pets = true

    [alarm]
    repeat = "20 s"
    quiet = { from = "22:00", to = "07:00" }
"""

import re
from collections.abc import Callable, Collection
from datetime import date, datetime
from pathlib import Path
from typing import Any, TypeVar

from dyesession.care import Household
from dyesession.errors import UserError
from dyesession.kitchen.amounts import read_hardness_mg_l, read_power_w, read_pressure_kpa
from dyesession.kitchen.model import (
    BURNER_KINDS,
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
from dyesession.storage import DISK, Storage
from dyesession.tomlfile import Document, Table, read_toml
from dyesession.units import Overnight, Quantity, read_duration, read_length, read_mass, read_volume

Value = TypeVar("Value")

FORMAT = 1
UNITS = ("metric", "imperial", "US")
KEYS: dict[str, tuple[str, ...]] = {
    "": (
        "format", "units", "elevation", "station_pressure", "thermometer", "poison_centre", "scale", "jug",
        "pot", "burner", "water", "jar", "household", "alarm",
    ),
    "scale": ("name", "resolution", "capacity", "repeatability"),
    "jug": ("name", "volume", "resolution"),
    "pot": ("name", "volume", "diameter", "lid", "material"),
    "burner": ("name", "power", "kind", "indoors"),
    "water": ("hardness", "alkalinity", "ph"),
    "jar": ("name", "substance", "form", "strength", "price_per_100_g", "mass_left", "weighed_on"),
    "household": ("children", "pets", "lightest_child", "lightest_pet", "insect_dye_allergy"),
    "alarm": ("bell", "repeat", "quiet", "command"),
    "quiet": ("from", "to"),
}  # fmt: skip

_CLOCK = re.compile(r"(?:[01]\d|2[0-3]):[0-5]\d")
LOWEST_M, HIGHEST_M = -500.0, 5000.0  # what `dyeing.boiling` covers
LOWEST_KPA, HIGHEST_KPA = 50.0, 108.5
SECONDS_PER_MIN = 60
GRAMS_PER_KG = 1000
CM_PER_M = 100
SHORTEST_RING_S, LONGEST_RING_S = 1.0, 3600.0  # common practice, no source


def load_kitchen(path: Path, storage: Storage = DISK) -> Kitchen:
    """Read a kitchen. Raises `KitchenError` with the first fault, or the file's own error."""
    kitchen, faults = _read(read_toml(Path(path), storage), str(path))
    if faults:
        raise KitchenError(faults[0])
    return kitchen


def check_kitchen(path: Path, storage: Storage = DISK) -> list[str]:
    """List every fault of a kitchen file, one sentence each; empty when it is sound."""
    try:
        document = read_toml(Path(path), storage)
    except UserError as error:
        return [str(error)]
    return _read(document, str(path))[1]


class _Reader:
    """The faults met so far, and the reading that goes on after one."""

    def __init__(self) -> None:
        self.faults: list[str] = []

    def take(self, read: Callable[[], Value], otherwise: Any) -> Any:
        try:
            return read()
        except UserError as error:
            if str(error) not in self.faults:
                self.faults.append(str(error))
            return otherwise

    def keys(self, table: Table, allowed: Collection[str]) -> None:
        for key, value in table.values.items():
            one = Table(table.document, table.path, {key: value})
            self.take(lambda one=one: one.unknown_keys(allowed), None)  # type: ignore[misc]

    def each(self, top: Table, key: str, read: Callable[[Table], Value]) -> tuple[Value, ...]:
        """Read the tables of one list; a faulty one is noted and left out."""
        found = []
        for table in self.take(lambda: top.tables(key), ()):
            self.keys(table, KEYS[key])
            found.append(self.take(lambda table=table: read(table), None))  # type: ignore[misc]
        return tuple(one for one in found if one is not None)

    def one(self, top: Table, key: str, read: Callable[[Table], Value], otherwise: Value) -> Value:
        """Read one table, or `otherwise` when there is none or it is faulty."""
        table: Table | None = self.take(lambda: top.table(key), None)
        if table is None:
            return otherwise
        self.keys(table, KEYS[key])
        read_it: Value = self.take(lambda: read(table), otherwise)
        return read_it


def _read(document: Document, path: str) -> tuple[Kitchen, list[str]]:
    top, reader = document.top, _Reader()
    if not reader.take(lambda: _check_format(top), False):
        return Kitchen(path=path), reader.faults
    reader.keys(top, KEYS[""])
    kitchen = Kitchen(
        scales=reader.each(top, "scale", _scale),
        jugs=reader.each(top, "jug", _jug),
        pots=reader.each(top, "pot", _pot),
        burners=reader.each(top, "burner", _burner),
        thermometer=reader.take(lambda: top.flag("thermometer", default=None), None),
        elevation_m=reader.take(lambda: _elevation(top), None),
        station_pressure_kpa=reader.take(lambda: _pressure(top), None),
        water=reader.one(top, "water", _water, TapWater()),
        jars=reader.each(top, "jar", _jar),
        household=reader.one(top, "household", _household, Household()),
        poison_centre=reader.take(lambda: top.text("poison_centre", default=""), ""),
        alarm=reader.one(top, "alarm", _alarm, Alarm()),
        units=reader.take(lambda: top.text("units", choices=UNITS, default="metric"), "metric"),
        path=path,
    )
    _check_names(top, reader)
    return kitchen, reader.faults


def _check_format(top: Table) -> bool:
    number = top.values.get("format")
    if isinstance(number, int) and not isinstance(number, bool) and number > FORMAT:
        raise top.problem(
            "format",
            f"format {number} is newer than this program reads; expected format = {FORMAT}, or a newer"
            " dyesession",
        )
    return top.whole("format", FORMAT, FORMAT, example=f"format = {FORMAT}") == FORMAT


def _check_names(top: Table, reader: _Reader) -> None:
    """Two pots, or two jars, of one name could not be told apart."""
    for key in ("pot", "jar"):
        seen: set[str] = set()
        for table in reader.take(lambda key=key: top.tables(key), ()):  # type: ignore[misc]
            name = str(table.values.get("name", "")).casefold()
            if name and name in seen:
                wrong = f'two {key}s are called "{name}"; expected a name of its own'
                reader.faults.append(str(table.problem("name", f'{wrong}, for example "second {name}"')))
            seen.add(name)


def _amount(table: Table, key: str, read: Callable[[str], Value], example: str) -> Value:
    text = table.text(key, example=f'{key} = "{example}"')
    try:
        return read(text)
    except UserError as error:
        raise table.problem(key, f"{key} in {table.label}: {error}") from error


def _mass_g(table: Table, key: str, example: str) -> float | None:
    if key not in table:
        return None
    grams = float(_amount(table, key, read_mass, example).aim)
    return _above_zero(table, key, grams, example)


def _above_zero(table: Table, key: str, value: float, example: str) -> float:
    if value <= 0:
        raise table.wrong(key, "more than nothing", f'{key} = "{example}"')
    return value


def _volume_l(table: Table, key: str, example: str) -> float:
    return _above_zero(table, key, float(_amount(table, key, read_volume, example).aim), example)


def _name(table: Table, otherwise: str) -> str:
    return table.text("name", default=otherwise)


def _number_in_list(table: Table) -> int:
    return int(table.path[-1]) + 1


def _scale(table: Table) -> Scale:
    resolution_g = _mass_g(table, "resolution", "1 g")
    if resolution_g is None:
        raise table.missing("resolution", 'resolution = "1 g"')
    capacity_g = _mass_g(table, "capacity", "5 kg")
    if capacity_g is not None and capacity_g <= resolution_g:
        raise table.wrong("capacity", "more than the resolution", 'capacity = "5 kg"')
    repeatability_g = _mass_g(table, "repeatability", "0.5 g")
    return Scale(_name(table, f"{resolution_g:g} g scale"), resolution_g, capacity_g, repeatability_g)


def _jug(table: Table) -> Jug:
    volume_l = _volume_l(table, "volume", "2 l")
    resolution_l = _volume_l(table, "resolution", "50 ml") if "resolution" in table else None
    return Jug(_name(table, f"{volume_l:g} L jug"), volume_l, resolution_l)


def _pot(table: Table) -> Pot:
    diameter = _amount(table, "diameter", read_length, "28 cm") if "diameter" in table else None
    return Pot(
        _name(table, f"pot {_number_in_list(table)}"),
        _volume_l(table, "volume", "9 l"),
        None if diameter is None else _above_zero(table, "diameter", float(CM_PER_M * diameter.aim), "28 cm"),
        table.flag("lid", default=None),
        table.text("material", default=""),
    )


def _burner(table: Table) -> Burner:
    power_w = _amount(table, "power", read_power_w, "1800 W") if "power" in table else None
    return Burner(
        _name(table, f"burner {_number_in_list(table)}"),
        None if power_w is None else _above_zero(table, "power", power_w, "1800 W"),
        table.text("kind", choices=BURNER_KINDS, default=""),
        table.flag("indoors", default=True),
    )


def _elevation(top: Table) -> float | None:
    if "elevation" not in top:
        return None
    metres = float(_amount(top, "elevation", read_length, "400 m").aim)
    return _between(top, "elevation", metres, LOWEST_M, HIGHEST_M, "400 m")


def _pressure(top: Table) -> float | None:
    if "station_pressure" not in top:
        return None
    kpa = _amount(top, "station_pressure", read_pressure_kpa, "950 hPa")
    return _between(top, "station_pressure", kpa, LOWEST_KPA, HIGHEST_KPA, "950 hPa")


def _between(table: Table, key: str, value: float, low: float, high: float, example: str) -> float:
    if not low <= value <= high:
        raise table.wrong(
            key, f"{low:g} to {high:g} {'m' if key == 'elevation' else 'kPa'}", f'{key} = "{example}"'
        )
    return value


def _water(table: Table) -> TapWater:
    hardness = _amount(table, "hardness", read_hardness_mg_l, "12 dH") if "hardness" in table else None
    alkalinity = (
        _amount(table, "alkalinity", read_hardness_mg_l, "150 mg/l") if "alkalinity" in table else None
    )
    return TapWater(hardness, alkalinity, table.number("ph", 4.0, 11.0, example="ph = 7.6", default=None))


def _jar(table: Table) -> Jar:
    substance = table.text("substance", example='substance = "madder root"')
    return Jar(
        _name(table, substance),
        substance,
        table.text("form", default=""),
        table.number("strength", 0.01, 100.0, example="strength = 1.1", default=None),
        table.number("price_per_100_g", 0.0, 1e6, example="price_per_100_g = 4.5", default=None),
        _mass_g(table, "mass_left", "350 g"),
        _day(table, "weighed_on"),
    )


def _day(table: Table, key: str) -> str:
    """A day as TOML writes it or as text, "" where there is none."""
    value = table.values.get(key, "")
    if value == "":
        return ""
    try:
        day = date.fromisoformat(value) if isinstance(value, str) else value
    except ValueError:
        day = None
    if not isinstance(day, date) or isinstance(day, datetime):
        raise table.wrong(key, "a day", f"{key} = 2026-03-14")
    return day.isoformat()


def _household(table: Table) -> Household:
    child_g = _mass_g(table, "lightest_child", "12 kg")
    pet_g = _mass_g(table, "lightest_pet", "4 kg")
    return Household(
        child_kg=None if child_g is None else child_g / GRAMS_PER_KG,
        pet_kg=None if pet_g is None else pet_g / GRAMS_PER_KG,
        children=table.flag("children", default=child_g is not None),
        pets=table.flag("pets", default=pet_g is not None),
        insect_allergy=table.flag("insect_dye_allergy", default=False),
    )


def _alarm(table: Table) -> Alarm:
    quiet = table.table("quiet", example='quiet = { from = "22:00", to = "07:00" }')
    if quiet is not None:
        quiet.unknown_keys(KEYS["quiet"])
    return Alarm(
        table.flag("bell", default=True),
        _repeat_s(table),
        "" if quiet is None else _clock(quiet, "from"),
        "" if quiet is None else _clock(quiet, "to"),
        table.texts("command", example='command = ["notify-send", "dyesession"]'),
    )


def _repeat_s(table: Table) -> float:
    if "repeat" not in table:
        return Alarm().repeat_s
    read: Quantity | Overnight = _amount(table, "repeat", read_duration, "20 s")
    seconds = float(read.aim * SECONDS_PER_MIN) if isinstance(read, Quantity) else 0.0
    if not SHORTEST_RING_S <= seconds <= LONGEST_RING_S:
        raise table.wrong("repeat", f"{SHORTEST_RING_S:g} s to an hour", 'repeat = "20 s"')
    return seconds


def _clock(table: Table, key: str) -> str:
    text = table.text(key, example=f'{key} = "22:00"')
    if not _CLOCK.fullmatch(text):
        raise table.wrong(key, "a time of day", f'{key} = "22:00"')
    return text
