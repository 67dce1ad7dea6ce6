"""What Colour is in the middle of, and the view of it. Pure: readings, answers and shades in, lines out."""

from dataclasses import dataclass, replace

from dyesession.colour.mend import GOOD_ENOUGH
from dyesession.colour.readings import Reading
from dyesession.colour.targets import Target
from dyesession.daybook.dyed_lots import DyedLot
from dyesession.daybook.fastness import TESTS
from dyesession.daybook.hit import Hit, Overdye
from dyesession.daybook.shade_card import Near, Shade
from dyesession.daybook.shade_lines import in_order
from dyesession.ui import colour_lines as lines
from dyesession.ui.colour_view import ColourView, DoLine, ShadeLine
from dyesession.ui.frame_view import Frame

TO_TARGET, TO_SAMPLE, CARD, OVERDYE, NOTE = "target", "sample", "card", "overdye", "note"
LISTINGS = {
    TO_TARGET: "which of your colours do you want again?",
    TO_SAMPLE: "which skein is it?",
    CARD: "shade card: every colour in your logs",
    OVERDYE: "over this skein, the nearest first; try it on a few grams",
    NOTE: "which skein has this colour? It is noted on that day",
}
CARDS = {0.18: "a grey card of 18 %", 0.9: "a white card of 90 %", 0.0: "no card"}
NEAREST = 4


@dataclass(frozen=True)
class ColourState:
    """Everything Colour keeps. `shade` is the logged colour that the sample is, where it is one.

    `day` is a day whose dry skein is to be judged: its colour is noted there. `shades` is None as long as the logs
    are being read; `trouble` says why the two cannot be compared; `working` while an answer is being reckoned.
    """

    target: tuple[Reading, ...] = ()
    aim: Target | None = None
    sample: Reading | None = None
    shade: Shade | None = None
    undyed: Reading | None = None
    hit: Hit | None = None
    trouble: str = ""
    overdyes: tuple[Overdye, ...] | None = None
    shades: tuple[Shade, ...] | None = None
    lots: tuple[DyedLot, ...] | None = None
    near: tuple[Near, ...] = ()
    listing: str = ""
    day: str = ""
    light: str = "daylight"
    card: float = 0.18
    working: bool = False


def view_of(state: ColourState, frame: Frame, cursor: str) -> ColourView:
    """The whole page, or the list that stands for it."""
    if state.listing:
        return _listed(state, frame, cursor)
    hit, aim = state.hit, state.aim
    return ColourView(
        frame,
        cursor,
        target=tuple(
            lines.reading_line(f"target:{at}", "wanted", one) for at, one in enumerate(state.target)
        ),
        aim=_aim(aim) if aim is not None and len(state.target) > 1 else None,
        target_do=_target_do(state),
        sample=(_sample_line(state),) if state.sample is not None else (),
        sample_do=_sample_do(state),
        words=_capital(hit.found.words) + "." if hit is not None else "",
        numbers=lines.numbers_of(hit) if hit is not None else state.trouble,
        notes=hit.notes if hit is not None else (),
        series=_series(state),
        series_says=_series_says(state),
        mend=_mend(state),
        near=tuple(lines.near_line(one) for one in state.near),
        past_do=_past(state),
        tests=_tests(state),
        working=state.working,
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _aim(aim: Target) -> ShadeLine:
    count = f"{len(aim.readings)} readings within {lines.figure(aim.spread)}"
    return lines.reading_line("", "their middle", aim.middle, count)


def _sample_line(state: ColourState) -> ShadeLine:
    assert state.sample is not None
    says = f"{state.shade.recipe}, {state.shade.day}, {state.shade.lot or 'all lots'}" if state.shade else ""
    return lines.reading_line("sample", "the skein", state.sample, says)


def _target_do(state: ColourState) -> tuple[DoLine, ...]:
    if not state.target:
        return (
            DoLine("target+", "type it", "for example #a63e36, lab(42 45 30)"),
            DoLine("logs:target", "take it from your logs", "a colour you have dyed before"),
        )
    return (DoLine("target+", "another wanted reading", "several make one target, with its spread"),)


def _sample_do(state: ColourState) -> tuple[DoLine, ...]:
    typed = "type another skein" if state.sample is not None else "type it"
    undyed = (
        lines.reading_line("", "", state.undyed).figures
        if state.undyed is not None
        else "natural wool is taken, until you say"
    )
    return (
        DoLine("sample+", typed, "for example lab(46 44 29) dry"),
        DoLine("logs:sample", "take it from your logs", "then its fibre, dye and dose are known too"),
        DoLine("photo", "take it from a photo", "best with the colour you want in it too"),
        DoLine("card", "card in photos", f"{CARDS[state.card]}: enter changes it"),
        DoLine("light", "their light", f"{state.light}: enter changes it"),
        DoLine("undyed", "the fibre, undyed", undyed),
    )


def _series(state: ColourState) -> tuple[ShadeLine, ...]:
    if state.hit is None or state.sample is None:
        return ()
    shades = [lines.series_line(one, state.sample.viewing) for one in state.hit.series]
    paler = sum(one.ratio < 1.0 for one in state.hit.series)
    as_it_is = replace(lines.reading_line("depth:1", "as it is", state.sample), says="") if shades else None
    return tuple(one for one in (*shades[:paler], as_it_is, *shades[paler:]) if one is not None)


def _series_says(state: ColourState) -> str:
    if state.hit is None:
        return ""
    exponent = state.hit.exponent
    learned = (
        f"Depth follows dose to the power {exponent.value:.1f} ± {max(exponent.plus_minus, 0.1):.1f}, learned from "
        "two of your doses."
        if exponent.fitted
        else ""
    )
    notes = dict.fromkeys(note for one in state.hit.series for note in one.notes)
    return " ".join((state.hit.trouble, *notes, learned)).strip()


def _mend(state: ColourState) -> tuple[DoLine, ...]:
    if state.hit is None:
        return ()
    steps = tuple(lines.mend_line(at, one) for at, one in enumerate(state.hit.advice))
    if not steps:
        steps = (DoLine("note:mend", "say which skein it is", "its weight, dye and dose say what mending costs"),)
    if steps[0].does == GOOD_ENOUGH:
        return steps
    return (*steps, DoLine("overdye", "an overdye", "look for one among your own dyes, last of all"))


def _past(state: ColourState) -> tuple[DoLine, ...]:
    if state.shades is None:
        return (DoLine("", "reading your logs …"),)
    count = len(state.shades)
    return (DoLine("shades", "shade card", f"{count} colour{'s' if count != 1 else ''} in your logs"),)


def _tests(state: ColourState) -> tuple[DoLine, ...]:
    off = DoLine("off", "colour comes off", "on a white cloth, or on your hands")
    if state.shade is None:
        way = "note:tests" if state.sample is not None else "logs:sample:tests"
        return (off, DoLine(way, "rub, wash, window tests", "say first which skein it is"))
    return (*(DoLine(f"test:{one.what}", one.what, f"{one.of}, before and after") for one in TESTS), off)


def _unread(state: ColourState) -> bool:
    """Whether what is listed is still being read."""
    return state.lots is None if state.listing == NOTE else state.listing != OVERDYE and state.shades is None


def _listed(state: ColourState, frame: Frame, cursor: str) -> ColourView:
    listed: tuple[ShadeLine, ...] = ()
    dos: tuple[DoLine, ...] = ()
    if state.listing == OVERDYE and state.sample is not None:
        found = state.overdyes or ()
        listed = tuple(lines.overdye_line(at, one, state.sample.viewing) for at, one in enumerate(found))
    elif state.listing == NOTE:
        lots = [one for one in state.lots or () if state.day in ("", one.session)]
        listed = tuple(lines.lot_line(one) for one in lots)
    elif state.shades is not None:
        shades = in_order(state.shades) if state.listing == CARD else state.shades
        listed = tuple(lines.shade_line(one) for one in shades)
        dos = (DoLine("page", "write it as a page", "to be looked at or printed"),) if state.listing == CARD else ()
    aim = lines.reading_line("", "wanted", state.aim.middle) if state.aim is not None else None
    sample = (_sample_line(state),) if state.sample is not None else ()
    return ColourView(
        frame,
        cursor,
        aim=aim,
        sample=sample,
        words=_capital(state.hit.found.words) + "." if state.hit is not None else "",
        listing=LISTINGS[state.listing],
        listed=listed,
        listed_do=dos,
        working=state.working or _unread(state),
    )
