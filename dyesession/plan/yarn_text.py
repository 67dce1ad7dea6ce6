"""Yarn, thickness, patterns and swatches as they are typed: "320 g, 210 m/100 g", "5 oz of worsted 2/20".

Knows no reckoning. Yards to the hank are `dyeing.yarn`; the lengths of hand-knitting thicknesses are from
memory, unverified, and differ from mill to mill.
"""

import re
from collections.abc import Mapping

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.yarn import LENGTH_ERROR, metres_per_100_g, tex_of
from dyesession.errors import UserError
from dyesession.plan.trouble import PlanError
from dyesession.plan.yarn_need import Pattern, Swatch, Thickness, YarnAtHand
from dyesession.units import quoted, read_fibre, read_length, read_mass

HANK_SOURCE = "yards to the hank: Taylor, Cotton Weaving and Designing, 6th ed., and spinners' count tables"
LABEL_SOURCE = "a length told with its weight; good to 5 %: common practice, no source"
MEMORY = "from memory, unverified"

SYSTEMS: Mapping[str, str] = {
    "nm": "Nm", "metric": "Nm",
    "worsted": "worsted", "new": "worsted",
    "cotton": "cotton", "ne": "cotton", "nec": "cotton",
    "spun silk": "spun silk", "silk": "spun silk",
    "linen lea": "linen lea", "lea": "linen lea", "linen": "linen lea",
    "woollen run": "woollen run", "run": "woollen run",
    "woollen cut": "woollen cut", "cut": "woollen cut",
    "yorkshire skein": "Yorkshire skein", "yorkshire": "Yorkshire skein",
    "tex": "tex", "dtex": "dtex", "denier": "denier", "den": "denier",
}  # fmt: skip

# Metres in 100 g of hand-knitting yarns by their names: low and high. From memory, unverified.
NAMED: Mapping[str, tuple[float, float]] = {
    "lace": (600.0, 900.0),
    "3 ply": (450.0, 550.0), "light fingering": (450.0, 550.0),
    "4 ply": (350.0, 450.0), "fingering": (350.0, 450.0), "sock": (350.0, 450.0),
    "5 ply": (270.0, 340.0), "sport": (270.0, 340.0),
    "double knitting": (200.0, 260.0), "dk": (200.0, 260.0), "8 ply": (200.0, 260.0),
    "worsted": (170.0, 220.0), "medium": (170.0, 220.0),
    "aran": (150.0, 190.0), "10 ply": (150.0, 190.0),
    "chunky": (90.0, 140.0), "bulky": (90.0, 140.0), "12 ply": (90.0, 140.0),
    "super chunky": (45.0, 90.0), "super bulky": (45.0, 90.0),
}  # fmt: skip

_NUMBER = r"\d+(?:[.,]\d+)?"
_PER = re.compile(
    r"^(?P<length>[\d½¼¾][^/]*?\s*(?:m|km|yd|yds|yards?|metres?|meters?))\s*(?:/|per|to|in)\s*(?:the\s+)?(?P<mass>.+)$",
    re.IGNORECASE,
)
_COUNT = re.compile(rf"(?<![\d/])(?P<one>{_NUMBER})(?:\s*/\s*(?P<other>{_NUMBER}))?(?![\d/])")
_SIDES = re.compile(
    rf"^(?P<w>{_NUMBER})\s*(?:cm)?\s*(?:x|by|×)\s*(?P<h>{_NUMBER})\s*cm\b[,;]?\s*(?P<rest>.*)$", re.IGNORECASE
)
_PIECE = re.compile(
    rf"^(?:(?P<n>\d+)\s*(?:of|x|×|times)?\s+)?(?P<w>{_NUMBER})\s*(?:cm)?\s*(?:x|by|×)\s*(?P<h>{_NUMBER})\s*cm$",
    re.IGNORECASE,
)
# Trades write 2/28 and 28/2 for the same yarn. Nobody doubles more than six, or spins a count below eight
# fine: common practice, no source; anything between is asked about.
MOST_STRANDS, LEAST_COUNT = 6.0, 8.0


def thickness_from_text(text: str) -> Thickness:
    """How thick a yarn is: `210 m/100 g`, `1000 yd/lb`, `Nm 2/28`, `worsted 2/20`, `250 tex`, `aran`.

    Raises `PlanError` for anything else, and for a count that could be read two ways.
    """
    spoken = " ".join(text.casefold().replace("-", " ").split()).strip(" ,;.")
    if found := _PER.match(text.strip(" ,;.")):
        return _per_weight(found, text)
    name = re.sub(r"\s+(?:weight|yarn|wool|thickness)$", "", spoken)
    if name in NAMED:
        low, high = NAMED[name]
        aim = (low + high) / 2
        return Thickness(aim, (high - low) / 2 / aim, name, MEMORY)
    return _counted(text, spoken)


def _per_weight(found: re.Match[str], text: str) -> Thickness:
    length = read_length(found["length"])
    mass_text = found["mass"] if re.match(r"[\d½¼¾]", found["mass"]) else f"1 {found['mass']}"
    mass_g = float(read_mass(mass_text).aim)
    metres = float(length.aim)
    if mass_g <= 0 or metres <= 0:
        raise PlanError(f"{quoted(text)} is no thickness; expected, for example, 210 m/100 g.")
    return Thickness(100.0 * metres / mass_g, LENGTH_ERROR, text.strip(), LABEL_SOURCE)


def _counted(text: str, spoken: str) -> Thickness:
    found = _COUNT.search(spoken)
    words = " ".join(_COUNT.sub(" ", spoken).replace("count", " ").split())
    system = SYSTEMS.get(words)
    if found is None or (system is None and words):
        raise PlanError(
            f"{quoted(text)} is no thickness known here; expected, for example, 210 m/100 g, Nm 2/28,"
            " worsted 2/20, 250 tex or aran."
        )
    if system is None:
        raise PlanError(
            f"{quoted(text)} is a count of which trade? Expected, for example, Nm {found[0]},"
            f" worsted {found[0]} or cotton {found[0]}."
        )
    strands, count = _strands(found, text, system)
    try:
        metres = metres_per_100_g(tex_of(system, count, strands))
    except OutOfRange as error:
        raise PlanError(str(error)) from error
    said = f"{system} {count:g}" if strands == 1 else f"{strands} strands of {system} {count:g}"
    return Thickness(metres, LENGTH_ERROR, said, HANK_SOURCE)


def _strands(found: re.Match[str], text: str, system: str) -> tuple[int, float]:
    """Which number is the strands: the small whole one, where there can be no doubt."""
    one = float(found["one"].replace(",", "."))
    if found["other"] is None:
        return 1, one
    other = float(found["other"].replace(",", "."))
    few, many = min(one, other), max(one, other)
    if few == int(few) and 1 <= few <= MOST_STRANDS and many >= LEAST_COUNT:
        return int(few), many
    raise PlanError(
        f"In {quoted(text)}, which number is the strands? Expected the yarn as one: for example"
        f" {system} {many / few:g} for {few:g} strands of {many:g}."
    )


def yarn_from_text(text: str, swatch: Swatch | None = None) -> YarnAtHand:
    """Yarn at hand: `320 g`, `320 g, 210 m/100 g`, `2 lb of worsted 2/8`, `320 g aran`."""
    read = read_fibre(text)
    mass_g = float(read.mass.aim)
    if mass_g <= 0:
        raise PlanError(f"{quoted(text)} is no yarn; expected, for example, 320 g, 210 m/100 g.")
    words = re.sub(r"^(?:of|at)\s+", "", read.words.strip(" ,;"))
    return YarnAtHand(mass_g, thickness_from_text(words) if words else None, swatch)


def pattern_from_text(text: str) -> Pattern:
    """What a pattern asks for: `400 m`, `450 to 500 yd`, `250 g`, `5 oz of double knitting`.

    Raises `PlanError` for anything else.
    """
    try:
        metres = read_length(text)
    except UserError:
        return _by_weight(text)
    if metres.low <= 0:
        raise PlanError(f"{quoted(text)} is no length of yarn; expected, for example, 400 m.")
    return Pattern("metres", float(metres.low), float(metres.high), text.strip())


def _by_weight(text: str) -> Pattern:
    try:
        read = read_fibre(text)
    except UserError as error:
        raise PlanError(
            f"{quoted(text)} is neither a length nor a weight of yarn; expected, for example, 400 m, 250 g or"
            " 5 oz of double knitting."
        ) from error
    if read.mass.low <= 0:
        raise PlanError(f"{quoted(text)} is no weight of yarn; expected, for example, 250 g.")
    words = re.sub(r"^(?:of|at)\s+", "", read.words.strip(" ,;"))
    thickness = thickness_from_text(words) if words else None
    return Pattern("grams", float(read.mass.low), float(read.mass.high), text.strip(), thickness)


def swatch_from_text(text: str, resolution_g: float = 1.0) -> Swatch:
    """A swatch: `10 x 12 cm, 6 g`. `resolution_g` is the step of the scale it was weighed on."""
    found = _SIDES.match(" ".join(text.split()))
    if found is None or not found["rest"]:
        raise PlanError(
            f"{quoted(text)} is no swatch; expected its sides and its weight, for example 10 x 12 cm, 6 g."
        )
    width_cm, height_cm = _number(found["w"]), _number(found["h"])
    mass_g = float(read_mass(found["rest"]).aim)
    if mass_g <= 0 or width_cm <= 0 or height_cm <= 0:
        raise PlanError(
            f"{quoted(text)} is no swatch; expected more than nothing, for example 10 x 12 cm, 6 g."
        )
    return Swatch(width_cm, height_cm, mass_g, resolution_g)


def pieces_from_text(text: str) -> Pattern:
    """The pieces of a garment: `2 of 50 x 60 cm, 2 of 40 x 45 cm`."""
    area_cm2 = 0.0
    for piece in re.split(r"[,;]\s+|\s+and\s+|\s*\+\s*", " ".join(text.split())):
        found = _PIECE.match(piece.strip())
        if found is None:
            raise PlanError(
                f"{quoted(piece)} is no piece of a garment; expected its sides, for example 2 of 50 x 60 cm."
            )
        area_cm2 += int(found["n"] or 1) * _number(found["w"]) * _number(found["h"])
    if area_cm2 <= 0:
        raise PlanError(f"{quoted(text)} has no area; expected, for example, 2 of 50 x 60 cm.")
    return Pattern("square centimetres", area_cm2, area_cm2, text.strip())


def _number(text: str) -> float:
    return float(text.replace(",", "."))
