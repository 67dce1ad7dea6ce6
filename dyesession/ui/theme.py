"""The colours of the screens, named by what they are for. Knows nothing of what is drawn.

Contrast follows WCAG 2.2, "relative luminance" and "contrast ratio" (success criteria 1.4.3 and 1.4.11). The
colours themselves are our own choice; the sixteen are the ones rich maps to itself on a 16-colour terminal.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Literal

from textual.theme import Theme

if TYPE_CHECKING:
    from textual.app import App

Depth = Literal["full", "256", "16", "none"]


@dataclass(frozen=True)
class Palette:
    """One colour, as `#rrggbb`, for each role on a screen.

    `dyed` says whether the terminal can show a dyed colour at all; where it cannot, the hex value is printed
    beside a pot in the neutral colour. `alarm` is amber and is used for nothing but what rings or burns.
    """

    name: str
    ground: str  # behind everything
    band: str  # behind the next act
    text: str
    strong: str
    quiet: str
    line: str  # rules and lanes
    wall: str  # of a pot
    bare: str  # a liquor whose colour was not read
    ember: str  # under a pot on the heat
    alarm: str
    alarm_ink: str
    ask: str
    ask_ink: str
    ask_quiet: str
    grey_field: str  # around a dyed colour, so that nothing warm stands beside it
    dark: str  # the two colours of digits in a liquor: whichever contrasts more
    light: str
    dyed: bool = True
    approximate: bool = False  # 256 colours: a dyed colour is shown by the nearest there is

    def __hash__(self) -> int:
        return hash(self.name)  # of twenty colours it would take long, for every word that is drawn

    def colour(self, name: str) -> str:
        """The hex value of a role, or `name` itself where it is a hex value already."""
        return name if name.startswith("#") else str(getattr(self, name))


DARK = Palette(
    name="dark", ground="#171614", band="#302c25", text="#ddd6c9", strong="#f7f1e4", quiet="#9a9387",
    line="#6b655b", wall="#777068", bare="#4a4339", ember="#a3602a", alarm="#ffb000", alarm_ink="#171614",
    ask="#ece5d6", ask_ink="#171614", ask_quiet="#4a443a", grey_field="#777777", dark="#14110d",
    light="#f7f1e4",
)  # fmt: skip
LIGHT = Palette(
    name="light", ground="#f6f1e6", band="#e3dbc9", text="#38332b", strong="#14110d", quiet="#635d52",
    line="#a39b8c", wall="#857d70", bare="#d3c9b6", ember="#c9812f", alarm="#ffb000", alarm_ink="#14110d",
    ask="#2b2721", ask_ink="#f7f1e4", ask_quiet="#cfc7b8", grey_field="#777777", dark="#14110d",
    light="#fffaf0",
)  # fmt: skip
# rich's own table of the sixteen: black, brown, grey, dark grey, yellow, white map to themselves.
DARK_16 = Palette(
    name="dark 16", ground="#000000", band="#000000", text="#aaaaaa", strong="#ffffff", quiet="#aaaaaa",
    line="#aaaaaa", wall="#aaaaaa", bare="#555555", ember="#aa5500", alarm="#ffff55", alarm_ink="#000000",
    ask="#ffffff", ask_ink="#000000", ask_quiet="#000000", grey_field="#aaaaaa", dark="#000000",
    light="#ffffff", dyed=False,
)  # fmt: skip
LIGHT_16 = Palette(
    name="light 16", ground="#ffffff", band="#ffffff", text="#000000", strong="#000000", quiet="#000000",
    line="#555555", wall="#555555", bare="#aaaaaa", ember="#aa5500", alarm="#ffff55", alarm_ink="#000000",
    ask="#000000", ask_ink="#ffffff", ask_quiet="#ffffff", grey_field="#aaaaaa", dark="#000000",
    light="#ffffff", dyed=False,
)  # fmt: skip
THEME_NAMES = {True: "stove-dark", False: "stove-light"}
# Without colour an alarm is the one inverted block: bright on a dark ground, black on a light one.
_GREY_ALARM = {
    "dark": {"alarm": "#e0e0e0", "alarm_ink": "#000000", "ember": "#8a8a8a"},
    "light": {"alarm": "#141414", "alarm_ink": "#ffffff", "ember": "#6a6a6a"},
}


def _grey(colour: str) -> str:
    level = round(sum(int(colour[i : i + 2], 16) for i in (1, 3, 5)) / 3)
    return f"#{level:02x}{level:02x}{level:02x}"


def _without_colour(palette: Palette) -> Palette:
    greys: dict[str, Any] = {
        role: _grey(value) for role, value in vars(palette).items() if str(value).startswith("#")
    }
    greys |= _GREY_ALARM[palette.name]
    return replace(palette, name=f"{palette.name} without colour", dyed=False, **greys)


@lru_cache(maxsize=8)
def palette_for(dark: bool = True, depth: Depth = "full") -> Palette:
    """The palette for a dark or light ground and what the terminal can show."""
    if depth == "16":
        return DARK_16 if dark else LIGHT_16
    palette = DARK if dark else LIGHT
    if depth == "none":
        return _without_colour(palette)
    return replace(palette, approximate=True) if depth == "256" else palette


def palette_of(app: "App[Any]") -> Palette:
    """The palette for a running app: its theme's ground, NO_COLOR, and the terminal's colours."""
    return palette_for(app.current_theme.dark, depth_of(app))


def depth_of(app: "App[Any]") -> Depth:
    """What the terminal of an app can show. An app without a terminal is drawn in full."""
    forced: Depth | None = getattr(app, "forced_depth", None)
    if forced is not None:
        return forced
    if app.no_color:
        return "none"
    if app.is_headless:
        return "full"
    known: dict[str | None, Depth] = {"standard": "16", "windows": "16", "256": "256"}
    return known.get(app.console.color_system, "full")


def _theme(palette: Palette, dark: bool) -> Theme:
    return Theme(
        name=THEME_NAMES[dark], primary=palette.wall, secondary=palette.line, warning=palette.alarm,
        error=palette.alarm, success=palette.text, accent=palette.quiet, foreground=palette.text,
        background=palette.ground, surface=palette.ground, panel=palette.band, dark=dark,
    )  # fmt: skip


# For `App.register_theme`: the dark one first.
THEMES: tuple[Theme, ...] = (_theme(DARK, True), _theme(LIGHT, False))


def register_themes(app: "App[Any]", dark: bool = True) -> None:
    """Teach an app the two themes and choose one."""
    for theme in THEMES:
        app.register_theme(theme)
    app.theme = THEME_NAMES[dark]


def _channel(value: int) -> float:
    share = value / 255
    # WCAG 2.2, "relative luminance": the sRGB transfer curve with its published break at 0.04045.
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


@lru_cache(maxsize=512)
def luminance(colour: str) -> float:
    """Relative luminance of `#rrggbb`, 0 to 1 (WCAG 2.2)."""
    red, green, blue = (_channel(int(colour[i : i + 2], 16)) for i in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2.2)."""
    bright, dim = sorted((luminance(one), luminance(other)), reverse=True)
    return (bright + 0.05) / (dim + 0.05)


@lru_cache(maxsize=512)
def ink_on(ground: str, palette: Palette) -> str:
    """The digits' colour on a liquor: light or dark, whichever contrasts more."""
    return max((palette.light, palette.dark), key=lambda ink: contrast(ink, ground))
