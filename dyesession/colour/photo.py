"""The colour of dry fibre from a photo, corrected by a grey or white card in the same frame and light.

Knows nothing of files: it is handed patches as rows of pixels. Each channel is divided, in linear light, by
what the card gave. The ± are the 90 % points of a simulation with two measured cameras (those colour-science
carries) and the 99 test colours of CIE 224:2017, card-corrected, under daylights and lamps; a phone's own
beautifying comes on top. Without a card: abstracts at lawdata.com.tw 475787 (mean above 10).
"""

import math
from dataclasses import dataclass

from dyesession.colour.cielab import Lab
from dyesession.colour.patches import Patch, Rows, check_one_colour, patch_of, plain_lab, spread_of
from dyesession.colour.readings import Reading
from dyesession.colour.srgb import Channels, lab_of_linear, luminance
from dyesession.colour.trouble import OutOfRange, PhotoTrouble
from dyesession.colour.viewing import D65_2


@dataclass(frozen=True)
class Light:
    """A kind of light: its name, the ± with a card, without one, and of each of two colours in one frame."""

    name: str
    with_card: float
    without_card: float
    in_one_frame: float


# The two cameras: 3.5 and 5.4 (daylights), 7.2 and 7.7 (cool LED), 9 to 14 (bulb, tube, warm LED); in one
# frame a difference of two shades held within 1.2 to 2.9, 2.1 to 2.9, 3 to 4.4, which is shared out between
# the two.
LIGHTS = {
    light.name: light
    for light in (
        Light("daylight", 4.5, 10.0, 1.8),
        Light("cool led", 7.5, 15.0, 2.0),
        Light("lamp", 12.0, 25.0, 3.0),
        Light("unknown", 12.0, 25.0, 3.0),
    )
}
_ONE_CARD, _ONE_COLOUR = 5.0, 6.0  # CIEDE2000 between tiles of one card, of one fibre: our own choice
_MOST_CAST = {"daylight": 2.5}  # strongest over weakest channel of a grey card: our own choice
_MOST_CAST_OF_LAMPS = 8.0
_LEAST_EXPOSURE = 0.2  # of a white's full light: our own choice
_WHITER_THAN_WHITE = 1.05


@dataclass(frozen=True)
class Card:
    """A matt card: its patch, and the share of light it throws back, alike in all channels (0.18, 0.9)."""

    rows: Rows
    reflects: float


def read_photo(
    fibre: Rows, card: Card | None, light: str, *, frame: str = "", wet: bool = False, what: str = "the fibre"
) -> Reading:
    """The reading of one fibre area; `frame` names the photo, so that two of one photo are known as such.

    Raises `PhotoTrouble` for clipped, uneven or implausible patches, `OutOfRange` for an unknown light.
    """
    if light not in LIGHTS:
        raise OutOfRange(f"“{light}” is no light known here; expected one of {', '.join(LIGHTS)}.")
    patch = patch_of(fibre, what)
    white = _white(card, light) if card else (1.0, 1.0, 1.0)
    _check_below_white(patch, white, what)

    def lab_of(channels: Channels) -> Lab:
        return lab_of_linear(_over(channels, white))

    check_one_colour(
        patch,
        lab_of,
        _ONE_COLOUR,
        f"The patch given for {what} holds two colours; expected one even area of fibre, for example a "
        "smaller patch in the middle of the skein.",
    )
    return _reading(lab_of(patch.light), spread_of(patch, lab_of), card, LIGHTS[light], frame, wet)


def _reading(lab: Lab, spread: float, card: Card | None, light: Light, frame: str, wet: bool) -> Reading:
    base = light.with_card if card else light.without_card
    told = f"photo, card of {100.0 * card.reflects:.3g} %" if card else "photo without a card"
    return Reading(
        lab,
        math.hypot(base, spread),
        how="read",
        by="photo with card" if card else "photo",
        wet=wet,
        viewing=D65_2,
        repeats_within=math.hypot(light.in_one_frame, spread) if frame else None,
        frame=frame,
        conditions=f"{told}, light {light.name}",
    )


def _white(card: Card, light: str) -> Channels:
    """What a perfect white would have given in each channel of this photo."""
    if not 0.0 < card.reflects <= 1.0:
        raise OutOfRange(
            f"The card is said to throw back {100.0 * card.reflects:g} % of the light, but that must lie "
            "between 0 and 100 %, for example 18 for a grey card."
        )
    patch = patch_of(card.rows, "the card")
    cast = max(patch.light) / min(patch.light)
    if cast > _MOST_CAST.get(light, _MOST_CAST_OF_LAMPS):
        raise PhotoTrouble(
            "The patch given for the card is not grey, so the card is likely not there; expected a plain "
            "grey or white card, for example one of 18 %."
        )
    check_one_colour(
        patch,
        plain_lab,
        _ONE_CARD,
        "The patch given for the card is uneven, so more than the card is in it or a shadow lies on it; "
        "expected plain card only, for example a smaller patch in its middle.",
    )
    red, green, blue = (one / card.reflects for one in patch.light)
    if luminance((red, green, blue)) < _LEAST_EXPOSURE:
        raise PhotoTrouble(
            "The photo is too dark to read a colour from, by its card; expected a white to come near full "
            "light, for example the same photo with two stops more exposure."
        )
    return red, green, blue


def _check_below_white(patch: Patch, white: Channels, what: str) -> None:
    if luminance(_over(patch.light, white)) > _WHITER_THAN_WHITE:
        raise PhotoTrouble(
            f"By the card {what} would be lighter than white, so the card lay in shadow or throws back less "
            "than was said; expected card and fibre in the same light, for example side by side."
        )


def _over(light: Channels, white: Channels) -> Channels:
    return light[0] / white[0], light[1] / white[1], light[2] / white[2]
