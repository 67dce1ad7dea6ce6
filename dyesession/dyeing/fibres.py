"""Which family a fibre belongs to, as far as this room's figures can tell fibres apart.

Knows nothing of lots or recipes. The grouping is common practice, no source: the figures found are for
wool, silk, and cotton or linen, and every other fibre borrows from the nearest of them.
"""

from typing import Literal

from dyesession.dyeing.limits import OutOfRange

Family = Literal["wool", "silk", "cellulose"]

WOOL = ("wool", "alpaca", "mohair", "angora", "cashmere", "camel", "llama", "yak", "hair")
SILK = ("silk",)
CELLULOSE = ("cotton", "linen", "flax", "hemp", "ramie", "jute", "nettle", "viscose", "lyocell", "cellulose")


def fibre_family(fibre: str) -> Family:
    """Family of a fibre named in plain words, such as "wool" or "linen".

    Raises `OutOfRange` when not known.
    """
    name = fibre.strip().casefold()
    if name in WOOL:
        return "wool"
    if name in SILK:
        return "silk"
    if name in CELLULOSE:
        return "cellulose"
    known = ", ".join(WOOL + SILK + CELLULOSE)
    raise OutOfRange(f'No figures are known for the fibre "{fibre}"; expected one of {known}.')
