"""The units a dyer may name, each an exact fraction of a gram, litre, metre or minute.

Knows no grammar of numbers. Where one word has several ordinary meanings there is no entry for the bare word,
only a question. Sources stand beside the figures; rarer names are in `longtail`.
"""

from dataclasses import dataclass
from fractions import Fraction

from dyesession.units.kinds import Kind, Unit
from dyesession.units.longtail import LONG_TAIL, long_tail_size


@dataclass(frozen=True)
class Option:
    """One meaning of an unclear word: a label to show, and words that are clear."""

    label: str
    words: str


# Pound: Weights and Measures Act 1985 (UK), Sch. 1 Pt V; the US pound is the same by the agreement of 1959.
POUND_G = Fraction("453.59237")
OUNCE_G = POUND_G / 16
# Grain = 1/7000 lb in all three systems; apothecaries drachm = 60 grains; troy and apothecaries ounce = 480
# grains; avoirdupois dram = 1/16 oz; short hundredweight 100 lb, long 112 lb: NIST Handbook 44, App. C.
GRAIN_G = POUND_G / 7000
APOTHECARIES_DRACHM_G = 60 * GRAIN_G
AVOIRDUPOIS_DRAM_G = OUNCE_G / 16
# A third reading, found by comparing two recipes for one scarlet (cochineal nos. 1 and 5): Mairet, A Book on
# Vegetable Dyes, 1916.
EIGHTH_OUNCE_DRACHM_G = OUNCE_G / 8
TROY_OUNCE_G = 480 * GRAIN_G
# Stone of 14 lb, hundredweight of 8 stones: the Act of 1878 as printed in Cooley's Cyclopaedia.
STONE_G = 14 * POUND_G
LONG_HUNDREDWEIGHT_G = 8 * STONE_G
SHORT_HUNDREDWEIGHT_G = 100 * POUND_G

# Imperial gallon: Weights and Measures Act 1985 (UK), as reported at sizes.com/units/gallon_imperial.htm.
IMPERIAL_GALLON_L = Fraction("4.54609")
# US gallon = 231 cubic inches, the inch being 2.54 cm: NIST Handbook 44, App. C.
US_GALLON_L = 231 * Fraction("0.254") ** 3
IMPERIAL_FLUID_OUNCE_L = IMPERIAL_GALLON_L / 160  # 20 to the pint, 8 pints to the gallon
US_FLUID_OUNCE_L = US_GALLON_L / 128  # 4 to the gill, 4 gills to the pint (NIST Handbook 44, App. C)
MILLILITRE_L = Fraction(1, 1000)

# Yard: Weights and Measures Act 1963 (UK) and the agreement of 1959; inch = 1/36 yard = 2.54 cm.
YARD_M = Fraction("0.9144")
SCOTCH_ELL_M = Fraction("37.2") * YARD_M / 36  # 37.2 in: Mairet's glossary

_M, _V, _L, _T = Kind.MASS, Kind.VOLUME, Kind.LENGTH, Kind.TIME

# (kind, size, names apart by |), then the same with a system before the names.
_PLAIN: tuple[tuple[Kind, Fraction, str], ...] = (
    (_M, Fraction(1), "g|gram|grams|gramme|grammes|gm|gms"),
    (_M, Fraction(1000), "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes"),
    (_M, Fraction(1, 1000), "mg|mgs|milligram|milligrams|milligramme|milligrammes"),
    (_M, Fraction(1, 10**6), "μg|ug|mcg|microgram|micrograms"),
    (_M, Fraction(10**6), "tonne|tonnes|metric ton|metric tons"),
    (_M, OUNCE_G, "oz|ozs|ounce|ounces"),
    (_M, POUND_G, "lb|lbs|pound|pounds"),
    (_M, STONE_G, "stone|stones"),
    (_M, GRAIN_G, "grain|grains|grn"),
    (_V, Fraction(1), "l|ltr|ltrs|litre|litres|liter|liters|ℓ"),
    (_V, MILLILITRE_L, "ml|mls|millilitre|millilitres|milliliter|milliliters|cc|ccs|cm³"),
    (_V, 10 * MILLILITRE_L, "cl|centilitre|centilitres|centiliter|centiliters"),
    (_V, 100 * MILLILITRE_L, "dl|decilitre|decilitres|deciliter|deciliters"),
    (_L, Fraction(1), "m|metre|metres|meter|meters"),
    (_L, Fraction(1, 100), "cm|cms|centimetre|centimetres|centimeter|centimeters"),
    (_L, Fraction(1, 1000), "mm|millimetre|millimetres|millimeter|millimeters"),
    (_L, Fraction(1000), "km|kilometre|kilometres|kilometer|kilometers"),
    (_L, YARD_M, "yd|yds|yard|yards"),
    (_L, YARD_M / 3, "ft|foot|feet"),
    (_L, YARD_M / 36, "in|ins|inch|inches"),
    (_T, Fraction(1), "min|mins|minute|minutes|m"),
    (_T, Fraction(1, 60), "s|sec|secs|second|seconds"),
    (_T, Fraction(60), "h|hr|hrs|hour|hours"),
    (_T, Fraction(24 * 60), "d|day|days"),
    (_T, Fraction(7 * 24 * 60), "week|weeks|wk|wks"),
    (Kind.PERCENT, Fraction(1), "%|percent|per cent"),
    (Kind.PARTS, Fraction(1), "part|parts"),
)

_OF_A_SYSTEM: tuple[tuple[str, Kind, Fraction, str], ...] = (
    ("troy", _M, TROY_OUNCE_G, "oz|ounce|ounces"),
    ("troy", _M, 12 * TROY_OUNCE_G, "lb|lbs|pound|pounds"),
    ("apothecaries", _M, TROY_OUNCE_G, "oz|ounce|ounces"),
    ("apothecaries", _M, APOTHECARIES_DRACHM_G, "dr|dram|drams|drachm|drachms"),
    ("avoirdupois", _M, OUNCE_G, "oz|ozs|ounce|ounces"),
    ("avoirdupois", _M, POUND_G, "lb|lbs|pound|pounds"),
    ("avoirdupois", _M, AVOIRDUPOIS_DRAM_G, "dr|dram|drams|drachm|drachms"),
    ("eighth", _M, EIGHTH_OUNCE_DRACHM_G, "dr|dram|drams|drachm|drachms"),
    ("imperial", _M, LONG_HUNDREDWEIGHT_G, "cwt|hundredweight|hundredweights"),
    ("US", _M, SHORT_HUNDREDWEIGHT_G, "cwt|hundredweight|hundredweights"),
    ("imperial", _M, 20 * LONG_HUNDREDWEIGHT_G, "ton|tons"),
    ("US", _M, 20 * SHORT_HUNDREDWEIGHT_G, "ton|tons"),
    ("imperial", _V, IMPERIAL_GALLON_L, "gal|gals|gallon|gallons"),
    ("US", _V, US_GALLON_L, "gal|gals|gallon|gallons"),
    ("imperial", _V, IMPERIAL_GALLON_L / 4, "qt|qts|quart|quarts"),
    ("US", _V, US_GALLON_L / 4, "qt|qts|quart|quarts"),
    ("imperial", _V, IMPERIAL_GALLON_L / 8, "pt|pts|pint|pints"),
    ("US", _V, US_GALLON_L / 8, "pt|pts|pint|pints"),
    ("imperial", _V, IMPERIAL_GALLON_L / 32, "gill|gills"),  # 5 fl oz, but the US gill is 4
    ("US", _V, US_GALLON_L / 32, "gill|gills"),
    ("imperial", _V, IMPERIAL_FLUID_OUNCE_L, "fl oz|floz|fluid oz|fluid ounce|fluid ounces"),
    ("US", _V, US_FLUID_OUNCE_L, "fl oz|floz|fluid oz|fluid ounce|fluid ounces"),
    ("imperial", _V, IMPERIAL_FLUID_OUNCE_L / 8, "fl dr|fluid dram|fluid drams|fluid drachm|fluid drachms"),
    ("US", _V, US_FLUID_OUNCE_L / 8, "fl dr|fluid dram|fluid drams|fluid drachm|fluid drachms"),
    # Spoons and cups: exact from the gallons above; 5, 15, 20 and 250 ml by definition of the country;
    # the imperial ones are the traditional sizes.
    ("US", _V, US_FLUID_OUNCE_L / 6, "tsp|teaspoon|teaspoons|teaspoonful|teaspoonfuls"),
    ("metric", _V, 5 * MILLILITRE_L, "tsp|teaspoon|teaspoons|teaspoonful|teaspoonfuls"),
    ("imperial", _V, IMPERIAL_FLUID_OUNCE_L / 8, "tsp|teaspoon|teaspoons|teaspoonful|teaspoonfuls"),
    ("US", _V, US_FLUID_OUNCE_L / 2, "tbsp|tablespoon|tablespoons|tablespoonful|tablespoonfuls"),
    ("metric", _V, 15 * MILLILITRE_L, "tbsp|tablespoon|tablespoons|tablespoonful|tablespoonfuls"),
    ("Australian", _V, 20 * MILLILITRE_L, "tbsp|tablespoon|tablespoons|tablespoonful|tablespoonfuls"),
    ("imperial", _V, IMPERIAL_FLUID_OUNCE_L / 2, "tbsp|tablespoon|tablespoons|tablespoonful|tablespoonfuls"),
    ("US", _V, 8 * US_FLUID_OUNCE_L, "cup|cups|cupful|cupfuls"),
    ("metric", _V, 250 * MILLILITRE_L, "cup|cups|cupful|cupfuls"),
    ("imperial", _V, 10 * IMPERIAL_FLUID_OUNCE_L, "cup|cups|cupful|cupfuls"),
    ("Japanese", _V, 200 * MILLILITRE_L, "cup|cups|cupful|cupfuls"),
    ("scotch", _L, SCOTCH_ELL_M, "ell|ells"),
)

SYSTEMS = {
    "imperial": "imperial", "imp": "imperial", "uk": "imperial", "british": "imperial", "english": "imperial",
    "long": "imperial", "gross": "imperial", "us": "US", "usa": "US", "american": "US", "short": "US",
    "metric": "metric", "australian": "Australian", "japanese": "Japanese", "troy": "troy",
    "apothecaries": "apothecaries", "apothecary": "apothecaries", "ap": "apothecaries",
    "avoirdupois": "avoirdupois", "avdp": "avoirdupois", "avoir": "avoirdupois",
    "1/8 oz": "eighth", "eighth of an ounce": "eighth", "scotch": "scotch", "scots": "scotch",
}  # fmt: skip

# Measures of a kitchen that no scale or jug stands behind.
HOUSEHOLD = {
    "spoon", "spoons", "spoonful", "spoonfuls", "dessertspoon", "dessertspoons", "dessertspoonful",
    "dessertspoonfuls", "teacup", "teacups", "teacupful", "teacupfuls", "saucer", "bowl", "bowls",
    "handful", "handfuls", "pinch", "pinches", "dash", "pail", "pails", "pailful", "bucket", "buckets",
    "bucketful", "bag", "bags", "bunch", "bunches", "piece", "pieces", "lump", "lumps", "stick",
    "sticks", "packet", "packets", "skein", "skeins", "hank", "hanks", "ball", "balls", "sheet",
    "sheets", "pot", "pots", "potful", "bath", "baths", "drop", "drops", "jar", "jars", "jarful",
    "glass", "glasses",
}  # fmt: skip

# A bare word that is asked about; each option says its size, so that a person can tell which one is at hand.
_ASKED: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    ("gal|gals|gallon|gallons", (("imperial (4.55 l)", "imperial {}"), ("US (3.79 l)", "US {}"))),
    ("qt|qts|quart|quarts", (("imperial (1.14 l)", "imperial {}"), ("US (946 ml)", "US {}"))),
    ("pt|pts|pint|pints", (("imperial (568 ml)", "imperial {}"), ("US (473 ml)", "US {}"))),
    ("gill|gills", (("imperial (142 ml)", "imperial {}"), ("US (118 ml)", "US {}"))),
    (
        "fl oz|floz|fluid oz|fluid ounce|fluid ounces",
        (("imperial (28.4 ml)", "imperial {}"), ("US (29.6 ml)", "US {}")),
    ),
    (
        "fl dr|fluid dram|fluid drams|fluid drachm|fluid drachms",
        (("imperial (3.55 ml)", "imperial {}"), ("US (3.7 ml)", "US {}")),
    ),
    ("peck|pecks", (("imperial (9.09 l)", "imperial {}"), ("US (8.81 l)", "US {}"))),
    ("bushel|bushels", (("imperial (36.4 l)", "imperial {}"), ("US (35.2 l)", "US {}"))),
    ("minim|minims", (("imperial (0.0592 ml)", "imperial {}"), ("US (0.0616 ml)", "US {}"))),
    ("cwt|hundredweight|hundredweights", (("long (112 lb)", "long {}"), ("short (100 lb)", "short {}"))),
    (
        "ton|tons",
        (("long (2240 lb)", "long {}"), ("short (2000 lb)", "short {}"), ("metric (1000 kg)", "tonne")),
    ),
    (
        "dr|dram|drams|drachm|drachms",
        (
            ("one eighth of an ounce (3.54 g)", "{} (1/8 oz)"),
            ("avoirdupois (1.77 g)", "avoirdupois {}"),
            ("apothecaries (3.89 g)", "apothecaries {}"),
        ),
    ),
    ("gr|grs", (("gram (1 g)", "g"), ("grain (0.0648 g)", "grains"))),
    (
        "tsp|teaspoon|teaspoons|teaspoonful|teaspoonfuls",
        (
            ("metric (5 ml)", "metric {}"),
            ("US (4.93 ml)", "US {}"),
            ("old imperial (3.55 ml)", "imperial {}"),
        ),
    ),
    (
        "tbsp|tablespoon|tablespoons|tablespoonful|tablespoonfuls",
        (
            ("metric (15 ml)", "metric {}"),
            ("US (14.8 ml)", "US {}"),
            ("Australian (20 ml)", "Australian {}"),
            ("old imperial (14.2 ml)", "imperial {}"),
        ),
    ),
    (
        "cup|cups|cupful|cupfuls",
        (
            ("metric (250 ml)", "metric {}"),
            ("US (237 ml)", "US {}"),
            ("old imperial (284 ml)", "imperial {}"),
            ("Japanese (200 ml)", "Japanese {}"),
        ),
    ),
)


def _by_name() -> dict[tuple[str, str], tuple[Unit, ...]]:
    """Index every unit under (system, name); a name may measure two things, as m does."""
    found: dict[tuple[str, str], tuple[Unit, ...]] = {}
    rows = [("", *row) for row in _PLAIN] + list(_OF_A_SYSTEM)
    for system, kind, size, names in rows:
        for name in names.split("|"):
            found[system, name] = (*found.get((system, name), ()), Unit(kind, size))
    return found


def _asked_by_name() -> dict[str, tuple[Option, ...]]:
    return {
        name: tuple(Option(label, words.format(name)) for label, words in options)
        for names, options in _ASKED
        for name in names.split("|")
    }


BY_NAME = _by_name()
ASKED = _asked_by_name()


def kinds_called(system: str, name: str) -> tuple[Kind, ...]:
    """Give the kinds of unit that go by `name` in `system` (empty for none); nothing is loaded for it."""
    ours = tuple(unit.kind for unit in BY_NAME.get((system, name), ()))
    return ours or tuple(rare.kind for rare in [LONG_TAIL.get((system, name))] if rare)


def sized(system: str, name: str, kind: Kind) -> Unit:
    """Give the unit of that kind called `name`, from our own table or else from pint."""
    for unit in BY_NAME.get((system, name), ()):
        if unit.kind is kind:
            return unit
    return Unit(kind, long_tail_size(LONG_TAIL[system, name]))
