"""At which depth a day's colour comes nearest to another: a target typed or read. Pure.

Told only from a dry colour of the day and the colour of its undyed fibre; the theory of depth and its limits are
`colour.depth`'s.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.daybook.seen_colour import colours_of
from dyesession.daybook.walk import Pace
from dyesession.errors import UserError


class NoWayThere(UserError):
    """A target that more or less of the same dye does not come near, or a day whose colours were not read."""


@dataclass(frozen=True)
class Towards:
    """The depth over the day's that comes nearest, how far off it still is (CIEDE2000), and the ± of the shade."""

    depth: float
    apart: float
    plus_minus: float
    lot: str


def towards(name: str, paces: Sequence[Pace], target: str, undyed: str = "") -> Towards:
    """The depth for a target. `undyed` is the colour of the fibre alone where the day did not read it.

    Raises `NoWayThere`, and what `colour.typed.read_colour` and `colour.depth.at_ratio` raise.
    """
    from dyesession.colour.ciede2000 import de00
    from dyesession.colour.depth import at_ratio
    from dyesession.colour.shades import depth_ratio
    from dyesession.colour.typed import read_colour

    grounds, dyed = colours_of(paces)
    lot = next((one for one in dyed if undyed or one in grounds), "")
    if not lot:
        raise NoWayThere(
            f"{name} has no dry colour of its fibre both dyed and undyed, so no depth can be told; expected both, for"
            ' example --undyed "lab(86 0 11)" and a dry shade in its aftercare'
        )
    ground, sample, wanted = (read_colour(one) for one in (undyed or grounds[lot], dyed[lot], target))
    ratio = depth_ratio(ground.lab, sample.lab, wanted.lab, sample.viewing)
    if ratio is None:
        raise NoWayThere(
            f"No depth of {name}'s dye comes near {target}: it lies off the line from the undyed fibre through the"
            f" shade of the {lot}; expected a paler or deeper shade of the same dye, for example {dyed[lot]}"
        )
    found = at_ratio(ground, sample, ratio)
    return Towards(ratio, de00(found.lab, wanted.lab), found.plus_minus, lot)
