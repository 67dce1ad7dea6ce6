"""The kitchen as a log carries it, and back; and a kitchen as a file.

Knows what must stay at home: household, telephone number and alarm command never enter a log. In a log plain
numbers carry their unit in the name, so any reader of TOML understands them.
"""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any, TypeVar

from dyesession.care import Household
from dyesession.kitchen.amounts import figure
from dyesession.kitchen.model import Alarm, Burner, Jar, Jug, Kitchen, Pot, Scale, TapWater
from dyesession.kitchen.trouble import KitchenError
from dyesession.tomlfile import write_document

Entry = TypeVar("Entry")

NEVER_LOGGED = ("household", "poison_centre", "alarm", "path", "own")
LISTS: Mapping[str, type[Any]] = {"scales": Scale, "jugs": Jug, "pots": Pot, "burners": Burner, "jars": Jar}
FORMAT = 1


def kitchen_for_log(kitchen: Kitchen) -> dict[str, Any]:
    """Turn a kitchen into plain tables for a log: what is known of it, without what stays at home."""
    table = _known(kitchen)
    return {key: value for key, value in table.items() if key not in NEVER_LOGGED}


def kitchen_from_log(table: Mapping[str, Any]) -> Kitchen:
    """Rebuild a kitchen from a log's table. Raises `KitchenError` when it is not one.

    What days had taught is passed over where an older log holds it: it is learned from the logs anew.
    """
    try:
        table = {key: value for key, value in table.items() if key != "own"}
        known = {key: value for key, value in table.items() if key not in (*LISTS, "water")}
        allowed = {field.name for field in fields(Kitchen)} - set(NEVER_LOGGED)
        if not allowed.issuperset(known):
            raise KeyError(min(set(known) - allowed))
        lists: dict[str, Any] = {
            key: tuple(_entry(kind, one) for one in table.get(key, ())) for key, kind in LISTS.items()
        }
        return Kitchen(**known, **lists, water=_entry(TapWater, table.get("water", {})))
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise KitchenError(
            f"The kitchen in this log cannot be read ({error}); expected the tables a session writes,"
            " for example [[kitchen.scales]] with resolution_g = 1.0."
        ) from error


def write_kitchen(kitchen: Kitchen) -> str:
    """Write a kitchen as the text of a `kitchen.toml`, household and all, which `load_kitchen` reads back."""
    top: dict[str, Any] = {"format": FORMAT, "units": kitchen.units}
    if kitchen.elevation_m is not None:
        top["elevation"] = f"{figure(kitchen.elevation_m)} m"
    if kitchen.station_pressure_kpa is not None:
        top["station_pressure"] = f"{figure(kitchen.station_pressure_kpa)} kPa"
    top |= _present(thermometer=kitchen.thermometer, poison_centre=kitchen.poison_centre or None)
    top |= _present(
        water=_water(kitchen.water), household=_household(kitchen.household), alarm=_alarm(kitchen.alarm)
    )
    top |= _present(
        scale=[_scale(one) for one in kitchen.scales],
        jug=[_jug(one) for one in kitchen.jugs],
        pot=[_pot(one) for one in kitchen.pots],
        burner=[_burner(one) for one in kitchen.burners],
        jar=[_jar(one) for one in kitchen.jars],
    )
    return write_document(top)


def _known(thing: Any) -> dict[str, Any]:
    """Give the fields of a dataclass that hold something."""
    found: dict[str, Any] = {}
    for field in fields(thing):
        value = getattr(thing, field.name)
        if is_dataclass(value):
            value = _known(value)
        elif isinstance(value, tuple):
            value = [_known(one) if is_dataclass(one) else one for one in value]
        if value not in (None, "", [], {}):
            found[field.name] = value
    return found


def _entry(kind: type[Entry], table: Mapping[str, Any]) -> Entry:
    return kind(**table)


def _present(**entries: Any) -> dict[str, Any]:
    return {key: value for key, value in entries.items() if value not in (None, [], {}, "")}


def _with(unit: str, value: float | None) -> str | None:
    return None if value is None else f"{figure(value)} {unit}"


def _scale(one: Scale) -> dict[str, Any]:
    return _present(
        name=one.name,
        resolution=_with("g", one.resolution_g),
        capacity=_with("g", one.capacity_g),
        repeatability=_with("g", one.repeatability_g),
    )


def _jug(one: Jug) -> dict[str, Any]:
    return _present(name=one.name, volume=_with("l", one.volume_l), resolution=_with("l", one.resolution_l))


def _pot(one: Pot) -> dict[str, Any]:
    return _present(
        name=one.name,
        volume=_with("l", one.volume_l),
        diameter=_with("cm", one.diameter_cm),
        lid=one.lid,
        material=one.material,
    )


def _burner(one: Burner) -> dict[str, Any]:
    return _present(name=one.name, power=_with("W", one.power_w), kind=one.kind, indoors=one.indoors)


def _jar(one: Jar) -> dict[str, Any]:
    return _present(
        name=one.name,
        substance=one.substance,
        form=one.form,
        strength=one.strength,
        price_per_100_g=one.price_per_100_g,
        mass_left=_with("g", one.mass_left_g),
        weighed_on=one.weighed_on,
    )


def _water(water: TapWater) -> dict[str, Any]:
    return _present(
        hardness=_with("mg/l", water.hardness_mg_l),
        alkalinity=_with("mg/l", water.alkalinity_mg_l),
        ph=water.ph,
    )


def _household(home: Household) -> dict[str, Any]:
    if home == Household():
        return {}
    return _present(
        children=home.children,
        pets=home.pets,
        lightest_child=_with("kg", home.child_kg),
        lightest_pet=_with("kg", home.pet_kg),
        insect_dye_allergy=home.insect_allergy,
    )


def _alarm(alarm: Alarm) -> dict[str, Any]:
    if alarm == Alarm():
        return {}
    quiet = {"from": alarm.quiet_from, "to": alarm.quiet_to} if alarm.quiet_from else None
    return _present(
        bell=alarm.bell, repeat=f"{figure(alarm.repeat_s)} s", quiet=quiet, command=list(alarm.command)
    )
