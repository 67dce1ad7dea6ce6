"""What Colour says is to be done next, and what is asked for while something is typed. Pure."""

from dyesession.colour.mend import GOOD_ENOUGH
from dyesession.ui.colour_state import CARD, NOTE, OVERDYE, ColourState
from dyesession.ui.frame_view import NextAct

EXAMPLES = {
    "target": "for example #a63e36, lab(42 45 30), or 42.1,45.3,29.8,D65,10 as a colorimeter writes it",
    "sample": "for example lab(46 44 29) ± 1.5 dry, or the name of a colorimeter's .csv file",
    "undyed": "for example lab(86 0 11): the same fibre before it met a dye",
    "photo": "for example skein.jpg, then point at card and skein; or skein.jpg card 10,10,80,80 skein 110,10,80,80",
}
WANTS = {"target": "the colour you want", "sample": "the skein", "undyed": "undyed", "photo": "photo"}
OTHER_EXAMPLE = "for example lab(95 0 2)"


def next_act(state: ColourState) -> NextAct:
    """The one right thing now."""
    if state.listing:
        return _in_a_list(state.listing)
    if state.day and state.sample is None:
        return NextAct("type the dry skein's colour, or take it from a photo", "it is noted on its day", "dry shade")
    if not state.target:
        return NextAct("type the colour you want", "or take it from your logs", "colour")
    if state.sample is None:
        return NextAct("type the skein's colour, dry", "or take it from your logs or a photo", "skein")
    if state.trouble:
        return NextAct("these two cannot be compared: type the skein's colour anew", "", "skein")
    if state.working or state.hit is None:
        return NextAct("one moment: looking", "", "")
    if not state.hit.advice:
        return NextAct("say which skein it is, and what mending costs is known", "", "which skein")
    first = state.hit.advice[0].act
    if first == GOOD_ENOUGH:
        return NextAct("good enough: keep it", "", "keep it")
    return NextAct(f"first: {first}", "", "mend")


def _in_a_list(listing: str) -> NextAct:
    if listing in (CARD, OVERDYE):
        return NextAct("read it in full", "", "read")
    if listing == NOTE:
        return NextAct("note the colour on the marked skein's day", "", "note it")
    return NextAct("take the marked colour", "", "take it")
