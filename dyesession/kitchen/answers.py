"""A kitchen put together from short answers: `0.1 g letter scale`, `12 l stainless`, `1800 W electric`, `child 12 kg`.

Pure: a kitchen and a text in, a kitchen out. What a slot is called: `scale`, `pot`, `ring`, `jug`, `jar:SUBSTANCE`
for a new entry; the same with a number behind it, `pot:0`, for one that is there.
"""

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any, TypeVar

from dyesession.care import Household
from dyesession.errors import UserError
from dyesession.kitchen.amounts import figure, read_hardness_mg_l, read_power_w
from dyesession.kitchen.loading import HIGHEST_M, LOWEST_M
from dyesession.kitchen.model import BURNER_KINDS, Burner, Jar, Jug, Kitchen, Pot, Scale
from dyesession.kitchen.trouble import KitchenError
from dyesession.units import quoted, read_length, read_mass, read_volume, show_mass, show_volume

Value = TypeVar("Value")

MATERIAL_WORDS = (
    "stainless", "steel", "enamel", "enamelled", "aluminium", "aluminum", "iron", "copper", "brass", "glass", "plastic",
    "ceramic", "titanium",
)  # fmt: skip
CHILD_WORDS = ("child", "children", "kid", "kids", "baby", "toddler")
PET_WORDS = ("pet", "pets", "cat", "cats", "dog", "dogs", "rabbit", "rabbits", "bird", "birds")
FUEL_FIRST = BURNER_KINDS[::-1]  # a gas camp stove is a camp stove: the graver kind is taken
NOBODY = ("no", "none", "nobody", "no one", "nobody small")
YES_WORDS, NO_WORDS = ("yes", "one", "there is one", "thermometer"), ("no", "none", "no thermometer")
GRAMS_PER_KG = 1000.0
_PRICE = re.compile(r"(\d+(?:[.,]\d{1,2})?)(?:\s*(?:per|for|/)\s*100\s*g)?", re.IGNORECASE)


def answered(kitchen: Kitchen, slot: str, text: str) -> Kitchen:
    """The kitchen with an answer in its place. Raises `KitchenError`, or the amount's own error, for a text that is none."""
    kind, _, which = slot.partition(":")
    if not text.strip():
        raise KitchenError("Nothing was typed; expected an answer, or leave the question open with -.")
    read = _READERS.get(kind)
    if read is None:
        raise KitchenError(
            f"There is no place {quoted(slot)} in a kitchen; expected, for example, scale or pot."
        )
    return read(kitchen, which, text.strip())


def weighed_today(kitchen: Kitchen, was: Kitchen, today: str) -> Kitchen:
    """The kitchen with a day at every jar that says how much is in it: today's, unless it said the same before."""
    before = {(one.name, one.mass_left_g): one.weighed_on for one in was.jars}

    def dated(jar: Jar) -> Jar:
        if jar.mass_left_g is None or jar.weighed_on:
            return jar
        return replace(jar, weighed_on=before.get((jar.name, jar.mass_left_g), today))

    return replace(kitchen, jars=tuple(map(dated, kitchen.jars)))


def known(kitchen: Kitchen) -> tuple[tuple[str, str], ...]:
    """What is known, each with its slot, as it would be typed again."""
    found = [
        *((f"scale:{i}", _scale_words(one)) for i, one in enumerate(kitchen.scales)),
        *((f"pot:{i}", _pot_words(one)) for i, one in enumerate(kitchen.pots)),
        *((f"jug:{i}", f"{show_volume(one.volume_l)} {one.name}") for i, one in enumerate(kitchen.jugs)),
        *((f"ring:{i}", _ring_words(one)) for i, one in enumerate(kitchen.burners)),
    ]
    if kitchen.thermometer is not None:
        found.append(("thermometer", "yes" if kitchen.thermometer else "none"))
    if kitchen.elevation_m is not None:
        found.append(("height", f"{figure(kitchen.elevation_m)} m above the sea"))
    if kitchen.water.hardness_mg_l is not None:
        found.append(
            ("hardness", f"{figure(round(kitchen.water.hardness_mg_l, 1))} mg/l of hardness in the water")
        )
    if kitchen.household != Household():
        found.append(("household", _household_words(kitchen.household)))
    if kitchen.poison_centre:
        found.append(("poison", kitchen.poison_centre))
    found += [(f"jar:{i}", _jar_words(one)) for i, one in enumerate(kitchen.jars)]
    return tuple(found)


def taken_away(kitchen: Kitchen, slot: str) -> Kitchen:
    """The kitchen without what stands in a slot; a slot that holds nothing changes nothing."""
    kind, _, which = slot.partition(":")
    lists = {"scale": "scales", "pot": "pots", "jug": "jugs", "ring": "burners", "jar": "jars"}
    if kind in lists and which.isdigit():
        held = getattr(kitchen, lists[kind])
        rest: dict[str, Any] = {lists[kind]: tuple(one for i, one in enumerate(held) if i != int(which))}
        return replace(kitchen, **rest)
    empty: dict[str, Callable[[], Kitchen]] = {
        "thermometer": lambda: replace(kitchen, thermometer=None),
        "height": lambda: replace(kitchen, elevation_m=None),
        "hardness": lambda: replace(kitchen, water=replace(kitchen.water, hardness_mg_l=None)),
        "household": lambda: replace(kitchen, household=Household()),
        "poison": lambda: replace(kitchen, poison_centre=""),
    }
    return empty[kind]() if kind in empty else kitchen


# Readers: (kitchen, which, text) to a kitchen.


def _scale(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    said, _, most = text.partition(" up to ")
    mass, words = _amount_and_words(
        said, read_mass, "the smallest step of a scale", "0.1 g letter scale, up to 500 g"
    )
    resolution_g = _above_nothing(float(mass.aim), text, "1 g")
    capacity_g = float(read_mass(most).aim) if most.strip() else None
    if capacity_g is not None and capacity_g <= resolution_g:
        raise KitchenError(
            f"{quoted(text)} bears less than its step; expected, for example, “0.1 g up to 500 g”."
        )
    scale = Scale(words or _usual_scale_name(resolution_g), resolution_g, capacity_g)
    return replace(kitchen, scales=_put(kitchen.scales, which, scale))


def _pot(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    volume, words = _amount_and_words(text, read_volume, "what a pot holds to the brim", "12 l stainless")
    volume_l = _above_nothing(float(volume.aim), text, "12 l stainless")
    material = " ".join(word for word in words.split() if word.casefold() in MATERIAL_WORDS)
    name = " ".join(word for word in words.split() if word.casefold() not in MATERIAL_WORDS)
    others = [one for i, one in enumerate(kitchen.pots) if str(i) != which]
    was = kitchen.pots[int(which)] if which.isdigit() and int(which) < len(kitchen.pots) else None
    pot = Pot(_fresh_name(name or _usual_pot_name(volume_l), others), volume_l, material=material)
    if was is not None:
        pot = replace(pot, diameter_cm=was.diameter_cm, lid=was.lid)
    return replace(kitchen, pots=_put(kitchen.pots, which, pot))


def _material(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    return replace(
        kitchen, pots=tuple(replace(one, material=text) if one.name == which else one for one in kitchen.pots)
    )


def _jug(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    volume, words = _amount_and_words(text, read_volume, "what a jug holds", "1 l litre jug")
    volume_l = _above_nothing(float(volume.aim), text, "1 l")
    return replace(
        kitchen, jugs=_put(kitchen.jugs, which, Jug(words or f"{show_volume(volume_l)} jug", volume_l))
    )


def _ring(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    indoors = "outdoors" not in text.casefold()
    rest = re.sub(r"\boutdoors\b", "", text, flags=re.IGNORECASE).strip(" ,")
    kind = next((one for one in FUEL_FIRST if one in rest.casefold()), "")
    words = [one for one in BURNER_KINDS if kind and one in rest.casefold()]
    amount = re.sub("|".join(map(re.escape, words)), "", rest, flags=re.IGNORECASE).strip(" ,") if kind else rest
    power_w = read_power_w(amount) if amount else None
    if not kind and power_w is None:
        raise KitchenError(
            f"{quoted(text)} is no ring; expected a power, a kind or both, for example “1800 W electric”."
        )
    number = int(which) + 1 if which.isdigit() else len(kitchen.burners) + 1
    was = kitchen.burners[number - 1].name if number <= len(kitchen.burners) else f"ring {number}"
    return replace(kitchen, burners=_put(kitchen.burners, which, Burner(was, power_w, kind, indoors)))


def _thermometer(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    word = text.casefold()
    if word not in (*NO_WORDS, *YES_WORDS):
        raise KitchenError(
            f"{quoted(text)} does not say whether there is a thermometer; expected yes or none, for example “none”."
        )
    return replace(kitchen, thermometer=word in YES_WORDS)


def _height(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    metres = float(read_length(text.removesuffix("above the sea").strip()).aim)
    if not LOWEST_M <= metres <= HIGHEST_M:
        raise KitchenError(
            f"{quoted(text)} is no height of a kitchen; expected {LOWEST_M:g} to {HIGHEST_M:g} m, for example “400 m”."
        )
    return replace(kitchen, elevation_m=metres)


def _hardness(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    hardness = read_hardness_mg_l(text.removesuffix("of hardness in the water").strip())
    return replace(kitchen, water=replace(kitchen.water, hardness_mg_l=hardness))


def _household(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    if text.casefold() in NOBODY:
        return replace(kitchen, household=Household())
    home = Household()
    for part in re.split(r",|\band\b|;", text):
        home = _member(home, part.strip(), text) if part.strip() else home
    return replace(kitchen, household=home)


def _member(home: Household, part: str, text: str) -> Household:
    words = part.casefold().split()
    if "allergy" in words or "allergic" in words:
        return replace(home, insect_allergy=True)
    mass = " ".join(word for word in words if word not in (*CHILD_WORDS, *PET_WORDS, "a", "an", "of"))
    kg = float(read_mass(mass).aim) / GRAMS_PER_KG if mass else None
    if any(word in CHILD_WORDS for word in words):
        return replace(home, children=True, child_kg=_lighter(home.child_kg, kg))
    if any(word in PET_WORDS for word in words):
        return replace(home, pets=True, pet_kg=_lighter(home.pet_kg, kg))
    raise KitchenError(
        f"{quoted(part)} in {quoted(text)} is nobody we know of; expected, for example, “child 12 kg, cat 4 kg”."
    )


def _lighter(one: float | None, other: float | None) -> float | None:
    known_kg = [kg for kg in (one, other) if kg is not None]
    return min(known_kg, default=None)


def _poison(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    return replace(kitchen, poison_centre=text)


def _jar(kitchen: Kitchen, which: str, text: str) -> Kitchen:
    """`350 g, 4.50`: what is left, and what 100 g cost; either may be left out."""
    there = kitchen.jars[int(which)] if which.isdigit() and int(which) < len(kitchen.jars) else None
    substance, said = (there.substance, text) if there is not None else (which, text)
    if not substance:
        substance, _, said = (part.strip() for part in text.partition(":"))
        if not said:
            raise KitchenError(
                f"{quoted(text)} says nothing of what is in it; expected, for example, “madder root: 350 g, 4.50”."
            )
    left_g, price = None, None
    for part in (one.strip() for one in re.split(r"[;]|,\s", said) if one.strip()):
        if hit := _PRICE.fullmatch(part):
            price = float(hit[1].replace(",", "."))
        else:
            left_g = _above_nothing(float(read_mass(part).aim), text, "350 g, 4.50")
    weighed_on = there.weighed_on if there is not None and there.mass_left_g == left_g else ""
    known = there or Jar(substance, substance)
    jar = replace(known, price_per_100_g=price, mass_left_g=left_g, weighed_on=weighed_on)
    return replace(kitchen, jars=_put(kitchen.jars, which if there is not None else "", jar))


_READERS: dict[str, Callable[[Kitchen, str, str], Kitchen]] = {
    "scale": _scale, "pot": _pot, "material": _material, "jug": _jug, "ring": _ring, "height": _height,
    "hardness": _hardness, "household": _household, "poison": _poison, "jar": _jar, "thermometer": _thermometer,
}  # fmt: skip


def _amount_and_words(text: str, read: Callable[[str], Value], what: str, example: str) -> tuple[Value, str]:
    """The amount that a text begins with, and the words behind it."""
    pieces = text.replace(",", " ", 1).split() if re.search(r",\s", text) else text.split()
    for count in range(len(pieces), 0, -1):
        try:
            return read(" ".join(pieces[:count])), " ".join(pieces[count:])
        except UserError:
            continue
    raise KitchenError(f"{quoted(text)} does not begin with {what}; expected, for example, “{example}”.")


def _above_nothing(value: float, text: str, example: str) -> float:
    if value <= 0:
        raise KitchenError(f"{quoted(text)} is nothing; expected more, for example “{example}”.")
    return value


def _put(held: tuple[Value, ...], which: str, one: Value) -> tuple[Value, ...]:
    """The entry in place of the one of that number, or behind the last."""
    if which.isdigit() and int(which) < len(held):
        return tuple(one if i == int(which) else other for i, other in enumerate(held))
    return (*held, one)


def _fresh_name(name: str, others: list[Pot]) -> str:
    """A name no other pot has: two could not be told apart."""
    taken = {one.name.casefold() for one in others}
    names = [name, *(f"{name} {number}" for number in range(2, len(others) + 3))]
    return next(one for one in names if one.casefold() not in taken)


# Back into what would be typed.


def _scale_words(one: Scale) -> str:
    most = f" up to {show_mass(one.capacity_g)}" if one.capacity_g is not None else ""
    name = "" if one.name == _usual_scale_name(one.resolution_g) else f" {one.name}"
    return f"{figure(one.resolution_g)} g{name}{most}"


def _usual_scale_name(resolution_g: float) -> str:
    return f"{resolution_g:g} g scale"


def _pot_words(one: Pot) -> str:
    name = "" if one.name.startswith(_usual_pot_name(one.volume_l)) else one.name
    return " ".join(part for part in (f"{figure(one.volume_l)} L", name, one.material) if part)


def _usual_pot_name(volume_l: float) -> str:
    return f"{show_volume(volume_l)} pot"


def _ring_words(one: Burner) -> str:
    power = f"{figure(one.power_w)} W" if one.power_w is not None else ""
    return " ".join(word for word in (power, one.kind, "" if one.indoors else "outdoors") if word) or one.name


def _household_words(home: Household) -> str:
    child = (
        f"child {figure(home.child_kg)} kg"
        if home.child_kg is not None
        else "children"
        if home.children
        else ""
    )
    pet = f"pet {figure(home.pet_kg)} kg" if home.pet_kg is not None else "pets" if home.pets else ""
    return ", ".join(one for one in (child, pet, "insect allergy" if home.insect_allergy else "") if one)


def _jar_words(one: Jar) -> str:
    left = show_mass(one.mass_left_g) if one.mass_left_g is not None else ""
    price = f"{one.price_per_100_g:.2f}" if one.price_per_100_g is not None else ""
    return ", ".join(part for part in (left, price) if part) or "nothing known of it"
