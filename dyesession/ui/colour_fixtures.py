"""Moments of Colour and of its photo page, of the same invented dyer. Every reading is invented; what is answered to
them is reckoned, so that the pages show what they would.

They stay as the pages' snapshots, and every drawing function is tried on them.
"""

from dataclasses import replace

from dyesession.colour.mend import Dose
from dyesession.colour.screen import screen_of
from dyesession.colour.targets import target_of
from dyesession.colour.typed import read_colour
from dyesession.daybook.hit import hit, overdyes, seconds_of
from dyesession.daybook.shade_card import Shade, lot_of, nearest_shades
from dyesession.ui.colour_state import CARD, OVERDYE, ColourState, view_of
from dyesession.ui.colour_view import ColourView
from dyesession.ui.frame_view import Entry, Frame, NextAct
from dyesession.ui.photo_view import PhotoView, Pointed
from dyesession.ui.place_keys import place_key_words

_KEYS, _TYPING = ("space", "enter", "c", "tab", "q", "delete", "r", "?"), ("enter", "escape")
_MADDER, _WELD, _INDIGO, _WALNUT = "madder root", "dried weld", "indigo", "walnut hull"
_ALUM = (Dose("potassium alum", 12.0),)
_READ = "± 1.5 dry, colorimeter"


def _shade(
    session: str, recipe: str, lot: str, fibre_g: float, dye: Dose, colour: str, others: tuple[Dose, ...] = ()
) -> Shade:
    reading, undyed = read_colour(colour), read_colour(f"lab(86 0 11) {_READ}")
    hexed = screen_of(reading.lab).hex
    return Shade(session, session[:10], recipe, lot, "wool", fibre_g, (dye,), others, reading, hexed, undyed=undyed)


_SHADES = (
    _shade("2026-03-14-madder-k7q2", "Madder brick red on wool", "large skein", 165.0, Dose(_MADDER, 50.0),
           f"lab(42 45 30) {_READ}", _ALUM),
    _shade("2026-02-21-madder-m3xz", "Madder brick red on wool", "small skein", 75.0, Dose(_MADDER, 25.0),
           f"lab(50 42 28) {_READ}", _ALUM),
    _shade("2026-02-07-weld-p4aa", "Weld yellow on wool", "skein", 140.0, Dose(_WELD, 75.0),
           f"lab(75 -5 70) {_READ}", _ALUM),
    _shade("2026-01-31-indigo-c2dd", "Indigo, two dips", "skein", 100.0, Dose(_INDIGO, 4.0),
           f"lab(38 -4 -28) {_READ}"),
    _shade("2026-01-10-walnut-f9kk", "Walnut brown without mordant", "fleece yarn", 120.0, Dose(_WALNUT, 25.0),
           "#5a3d28"),
)  # fmt: skip
_BASE = ColourState(shades=_SHADES)


def _wants(state: ColourState, *texts: str) -> ColourState:
    target = tuple(read_colour(one) for one in texts)
    aim = target_of(target)
    return replace(state, target=target, aim=aim, near=nearest_shades(_SHADES, aim.middle, 4))


def _answered(state: ColourState, shade: Shade) -> ColourState:
    lot = lot_of(shade, _SHADES)
    assert lot is not None and state.aim is not None
    priced = replace(lot, price_per_100_g={_MADDER: 4.5, _WELD: 6.0})
    found = hit(state.aim, shade.reading, shade.undyed, priced)
    return replace(state, sample=shade.reading, shade=shade, undyed=shade.undyed, hit=found)


def _overdyed(state: ColourState) -> ColourState:
    assert state.sample is not None and state.aim is not None and state.shade is not None
    seconds = seconds_of(_SHADES, state.sample, _MADDER)
    found = overdyes(state.undyed, state.sample, state.aim, seconds, lot_of(state.shade, _SHADES))
    return replace(state, listing=OVERDYE, overdyes=found)


def _frame(act: NextAct, entry: Entry | None = None, note: str = "", beside: str = "did I hit it?") -> Frame:
    keys = place_key_words(_TYPING if entry is not None else _KEYS)
    return Frame("Colour", beside, "14:20", act, keys, entry, None, note)


_TYPE_IT = NextAct("type the colour you want", "or take it from your logs", "colour")
_SKEIN = NextAct("type the skein's colour, dry", "or take it from your logs or a photo", "skein")
_MEND, _KEEP = NextAct("first: wash again", "", "mend"), NextAct("good enough: keep it", "", "keep it")
_READ_IT = NextAct("read it in full", "", "read")
_ONE = _wants(_BASE, f"lab(40 46 22) {_READ}")
_MISSED = _answered(_ONE, _SHADES[1])
_INSIDE = _answered(
    _wants(_BASE, f"lab(42 46 31) {_READ}", f"lab(44 44 29) {_READ}", f"lab(41 45 33) {_READ}"), _SHADES[0]
)
_GREENER = _answered(_wants(_BASE, f"lab(45 -21 25) {_READ}"), _SHADES[2])
_EXAMPLE = "for example lab(46 44 29) ± 1.5 dry, or the name of a colorimeter's .csv file"
_WET = (
    "A wet colour was given, and wet fibre shows another colour than dry; expected a reading of the dry fibre, for "
    'example "lab(42 45 30) dry".'
)

COLOUR_FIXTURES: dict[str, ColourView] = {
    "colour-new": view_of(_BASE, _frame(_TYPE_IT), "target+"),
    "colour-typing": view_of(
        _ONE,
        _frame(_SKEIN, Entry("the skein", "lab(46 44 29) ± 1.5", "= lab(46 44 29) ± 1.5 #b74b40"), _EXAMPLE),
        "sample+",
    ),
    "colour-refused": view_of(_ONE, _frame(_SKEIN, Entry("the skein", "lab(46 44 29) wet"), _WET), "sample+"),
    "colour-missed": view_of(_MISSED, _frame(_MEND), "sample"),
    "colour-mend": view_of(_MISSED, _frame(_MEND), "mend:1"),
    "colour-series": view_of(_MISSED, _frame(_MEND), "depth:2"),
    "colour-inside": view_of(_INSIDE, _frame(_KEEP), "sample"),
    "colour-overdye": view_of(_overdyed(_GREENER), _frame(_READ_IT, beside=""), "over:0"),
    "colour-card": view_of(
        replace(_BASE, listing=CARD), _frame(_READ_IT, beside=""), f"shade:{_SHADES[0].key}"
    ),
}


def _photo() -> tuple[tuple[str, ...], ...]:
    """A grey card, a skein that is wanted and one that was dyed, on a table."""
    table, card, wanted, skein = "#c4bcac", "#767573", "#b03e32", "#c0584a"

    def square(x: int, y: int) -> str:
        if 4 <= x < 18 and 8 <= y < 28:
            return card
        if 6 <= y < 30 and (24 <= x < 38 or 42 <= x < 57):
            return wanted if x < 38 else skein
        return table

    return tuple(tuple(square(x, y) for x in range(60)) for y in range(36))


PHOTO_PAGE = PhotoView(
    Frame("Photo", "skein.jpg", "14:22", NextAct("point at the skein, where it is even", "", "skein"),
          place_key_words(("enter", "-", "q", "?"))),
    _photo(), 0.82, 0.5, (0.78, 0.43, 0.06, 0.1),
    (Pointed("card", (0.15, 0.45, 0.06, 0.1)), Pointed("want", (0.48, 0.45, 0.06, 0.1))),
)  # fmt: skip
