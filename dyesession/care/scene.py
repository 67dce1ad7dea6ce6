"""A situation with its substances looked up, and the words every reminder is made of. No figures here."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from dyesession.care.situation import Content, Situation
from dyesession.substances import Substance, find, strength_percent

LONGEST_NAME = 24  # characters of a dyer's own name for something that fit a line
_LONGEST_LIST = 36  # characters for several amounts
_WHOLE_GRAMS_FROM = 10.0


@dataclass(frozen=True, slots=True)
class Item:
    """Some of a substance, in the vessel with this letter. `substance` is None when nobody knows it.

    `more`: the vessel holds some of it already.
    """

    name: str
    substance: Substance | None
    mass_g: float | None
    letter: str
    more: bool = False

    @property
    def word(self) -> str:
        """The everyday word for it, or the dyer's own name, cut to fit."""
        return self.substance.word if self.substance else tidy(self.name)

    @property
    def amount(self) -> str:
        """ "29 g alum", "29 g more alum", or just "alum" where the mass is not known."""
        word = f"more {self.word}" if self.more else self.word
        return word if self.mass_g is None else f"{grams(self.mass_g)} {word}"

    @property
    def source(self) -> str:
        """Who says what its substance does; "" where the substance is not known."""
        return self.substance.source if self.substance else ""

    @property
    def codes(self) -> tuple[str, ...]:
        """Its hazard codes at the strength its name gives, or of the strongest where none is given."""
        if self.substance is None:
            return ()
        percent = strength_percent(self.name)
        band = None if percent is None else self.substance.band(percent)
        return self.substance.codes if band is None else band.codes

    def has(self, *traits: str) -> bool:
        """True when the substance is known and has any of these traits."""
        return self.substance is not None and self.substance.has(*traits)


@dataclass(frozen=True, slots=True)
class Scene:
    """A situation with every substance looked up once.

    `target` is what stands in the vessel this one is poured or strained into; it is in `elsewhere` too.
    `pouring` is what a kept bath brings.
    """

    at: Situation
    adding: tuple[Item, ...]
    pouring: tuple[Item, ...]
    contents: tuple[Item, ...]
    elsewhere: tuple[Item, ...]
    target: tuple[Item, ...]

    @property
    def pot(self) -> str:
        """The vessel's letter, or its word where it has none."""
        return tidy(self.at.letter) or f"the {tidy(self.at.vessel)}"

    @property
    def kept(self) -> str:
        """The label of the kept bath that is opened or poured in."""
        return tidy(self.at.pouring_from) or "the kept bath"

    @property
    def coming(self) -> tuple[Item, ...]:
        """What is about to go into the vessel."""
        return self.adding + self.pouring

    @property
    def here(self) -> tuple[Item, ...]:
        """What is in the vessel, and what is about to be."""
        return self.coming + self.contents

    @property
    def everywhere(self) -> tuple[Item, ...]:
        """What is in every vessel of the room."""
        return self.here + self.elsewhere

    @property
    def free_l(self) -> float | None:
        """Litres between the liquor and the rim, or None where the vessel or its liquor is not known."""
        if self.at.capacity_l is None or self.at.volume_l is None:
            return None
        return max(0.0, self.at.capacity_l - self.at.volume_l)

    @property
    def target_free_l(self) -> float | None:
        """Litres left in the vessel this one is poured into once it is in, or None where not known."""
        into = next((one for one in self.at.other_vessels if one.letter == self.at.into), None)
        if into is None or into.free_l is None or self.at.volume_l is None:
            return None
        return max(0.0, into.free_l - self.at.volume_l)

    @property
    def heat(self) -> str:
        """The bath's temperature in words, or "" where it is not known."""
        return "" if self.at.temperature_c is None else degrees(self.at.temperature_c)

    def does(self, *actions: str) -> bool:
        """True when the step does any of these."""
        return any(action in self.at.actions for action in actions)

    @property
    def to_be_heated(self) -> bool:
        """True when the temperature is where the bath is going, not where it is."""
        return self.does("heats") and self.at.temperature_how == "planned"

    def hot_when_added(self, temperature_c: float) -> bool:
        """True when what is added meets a bath this hot; a bath that is yet to be heated is not."""
        return self.at_least(temperature_c) and not self.to_be_heated

    def at_least(self, temperature_c: float) -> bool:
        """True when the bath is known to be this hot or hotter."""
        return self.at.temperature_c is not None and self.at.temperature_c >= temperature_c


def scene_of(situation: Situation) -> Scene:
    """Look up every substance of the situation."""
    others, letter = situation.other_vessels, situation.letter
    contents = _items(situation.contents, letter)
    elsewhere = tuple(item for vessel in others for item in _items(vessel.contents, vessel.letter))
    pouring = "pours" in situation.actions or "strains" in situation.actions
    return Scene(
        at=situation,
        adding=_marked(_items(situation.adding, letter), contents),
        pouring=_items(situation.pouring, letter),
        contents=contents,
        elsewhere=elsewhere,
        target=tuple(item for item in elsewhere if pouring and item.letter == situation.into),
    )


def with_trait(items: Iterable[Item], *traits: str) -> tuple[Item, ...]:
    """Those of the items that have any of these traits."""
    # Every reminder asks this of all there is in the room, at every act: `Item.has` is written out here.
    return tuple(
        [one for one in items if one.substance is not None and not one.substance.traits.isdisjoint(traits)]
    )


def amounts(items: Sequence[Item]) -> str:
    """ "29 g alum, 14 g tartar"; when that grows long, "29 g alum and 2 more". At least one item."""
    listed = ", ".join(item.amount for item in items)
    if len(items) == 1 or len(listed) <= _LONGEST_LIST:
        return listed
    return f"{items[0].amount} and {len(items) - 1} more"


def grams(mass_g: float) -> str:
    """A mass as a dyer says it: whole grams from ten up, one decimal below."""
    if mass_g >= _WHOLE_GRAMS_FROM:
        return f"{mass_g:.0f} g"
    return f"{mass_g:.1f}".removesuffix(".0") + " g" if mass_g >= 0.05 else f"{mass_g:.1g} g"


def litres(volume_l: float) -> str:
    """A volume to a tenth of a litre, which is as near as a pot is read."""
    return f"{volume_l:.1f} L"


def degrees(temperature_c: float) -> str:
    """A temperature in whole degrees."""
    return f"{temperature_c:.0f} °C"


def tidy(text: str, longest: int = LONGEST_NAME) -> str:
    """A person's own text on one line, printable, short enough to stand in a reminder."""
    line = " ".join("".join(_printable(text)).split())
    return line if len(line) <= longest else line[: longest - 1].rstrip() + "…"


def _printable(text: str) -> Iterator[str]:
    return (c if c.isprintable() else " " for c in text)


def _marked(adding: tuple[Item, ...], contents: tuple[Item, ...]) -> tuple[Item, ...]:
    """What is added, marked "more" where the vessel holds some of it."""
    held = {item.word for item in contents}
    return tuple(replace(item, more=item.word in held) for item in adding)


def _items(contents: tuple[Content, ...], letter: str) -> tuple[Item, ...]:
    return tuple(Item(name, find(name), mass_g, letter) for name, mass_g in contents)
