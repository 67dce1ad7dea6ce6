"""Liquor that wet fibre and spent dyestuff carry away, in grams of water per gram of bone-dry goods.

Knows nothing of baths. Few figures are published: heavy squeeze rollers leave 0.5-1.0 on scoured wool
(teaching notes, read), household spinning 0.45-0.63 on cotton (a consumer guide, read, weak); Grothe 1882
in Beech, The Dyeing of Woollen Fabrics, 1902, p. 208 (read) gives the shares that wringing, pressing and
the centrifuge remove. Weigh the wet goods: that replaces everything here.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, TypeVar

from dyesession.dyeing.fibres import Family, fibre_family
from dyesession.dyeing.limits import OutOfRange, zero_or_more
from dyesession.dyeing.regain import bone_dry_of_air_dry_g

Squeeze = Literal["lifted", "squeezed", "spun"]
Drained = Literal["drained", "pressed", "not drained"]
Word = TypeVar("Word", bound=str)

RULE = "common practice, no source"
GRAIN = "by analogy with brewers' grain (notes quoting Aliyu & Bala, read); none found for dyestuffs"


@dataclass(frozen=True)
class Held:
    """Liquor held, grams per gram bone-dry: centre, 90 % band, and where it comes from."""

    centre: float
    low: float
    high: float
    source: str


WOOL_OR_SILK: dict[Squeeze, Held] = {
    "lifted": Held(3.9, 3.0, 5.0, RULE),
    "squeezed": Held(1.9, 1.5, 2.5, RULE),
    "spun": Held(0.67, 0.5, 0.9, RULE),
}

FIBRE_HELD: dict[Family, dict[Squeeze, Held]] = {
    "wool": WOOL_OR_SILK,
    "silk": WOOL_OR_SILK,
    "cellulose": {
        # What spinning leaves, over the 18.8 % that the centrifuge leaves of cotton's load; widened.
        "lifted": Held(
            3.0, 2.2, 4.2, "derived from Grothe 1882 in Beech 1902 p. 208 and household spinning; weak"
        ),
        "squeezed": Held(1.7, 1.3, 2.2, RULE),
        "spun": Held(
            0.54, 0.4, 0.7, "a consumer guide to spin classes, 0.45-0.63 (read, weak), widened; judgement"
        ),
    },
}

SPENT_HELD: dict[Drained, Held] = {
    "drained": Held(4.2, 2.3, 6.9, GRAIN + "; 4.0-5.7, well drained 2.3, slurry 6.87"),
    "pressed": Held(0.9, 0.5, 1.5, GRAIN + "; up to 1.5, lower end judgement"),
    "not drained": Held(
        6.9, 5.0, 9.5, "one brewery's slurry, 6.87 (Danilchenko et al. 2020, abstract read); judgement"
    ),
}


def fibre_held(fibre: str, squeeze: Squeeze) -> Held:
    """Starting guess for a fibre by how hard it was squeezed; raises `OutOfRange` for words not known."""
    return _looked_up("way of lifting fibre", squeeze, FIBRE_HELD[fibre_family(fibre)])


def spent_held(drained: Drained) -> Held:
    """Starting guess for spent dyestuff by how well it was drained.

    Raises `OutOfRange` for words not known.
    """
    return _looked_up("way of draining dyestuff", drained, SPENT_HELD)


def held_l(bone_dry_g: float, grams_per_gram: float) -> float:
    """Volume of liquor held by a bone-dry mass, L (a gram of dilute liquor is taken as a millilitre)."""
    ml_per_l = 1000.0
    return (
        zero_or_more("bone-dry mass", bone_dry_g, "86 g")
        * zero_or_more("liquor held", grams_per_gram, "2 g/g")
        / ml_per_l
    )


def held_from_weights(wet_g: float, air_dry_g: float, fibre: str) -> float:
    """Liquor held per gram bone-dry, from the wet weight and the air-dry weight of one skein.

    Raises `OutOfRange` when the wet weight lies below the air-dry one.
    """
    if wet_g < air_dry_g:
        raise OutOfRange(
            f"The skein weighs {wet_g:g} g wet and {air_dry_g:g} g air-dry;"
            " the wet weight must be the larger, for example 300 g wet and 100 g dry."
        )
    _, dry_g, _ = bone_dry_of_air_dry_g(air_dry_g, fibre)
    if dry_g == 0.0:
        raise OutOfRange("The air-dry weight is 0 g, but it must be more than 0, for example 100 g.")
    return (wet_g - dry_g) / dry_g


def _looked_up(what: str, word: Word, table: Mapping[Word, Held]) -> Held:
    if word not in table:
        raise OutOfRange(f'"{word}" is not a {what}; expected one of {", ".join(table)}.')
    return table[word]
