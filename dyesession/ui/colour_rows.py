"""How Colour is drawn: target, sample, the verdict, more or less of the dye, what would mend it. Knows no theory."""

from dyesession.ui.colour_view import ColourView, DoLine, ShadeLine
from dyesession.ui.ink import EMPTY, QUIET, STRONG, TEXT, Line, Span, cut, cut_line, say, width_of, wrap
from dyesession.ui.place_keys import COLOUR
from dyesession.ui.rows import BLANK, Row, heading, paragraph, section
from dyesession.ui.screens.place import Drawing
from dyesession.ui.swatches import field, swatch
from dyesession.ui.theme import Palette

_NAME, _DOES, _HEX = 14, 24, 9
_LEAST_SAYS = 12  # cells; less of a remark is not worth an ellipsis
_FIELD_CELLS, _LARGE_FIELD, _LARGE_ROWS = 30, 12, 9
_PAD = ("lab(", ")", "#", "D65/2", "D65/10", "±", "dry", "wet", "photo")


def colour_rows(view: ColourView, width: int, palette: Palette) -> tuple[Row, ...]:
    """Every line of Colour; a list that stands for the whole page alone."""
    if view.listing:
        return _listing(view, width, palette)
    verdict = [
        *paragraph(view.words, width, ink=STRONG),
        *paragraph(view.numbers, width, ink=TEXT),
        *(row for note in view.notes for row in paragraph(note, width)),
    ]
    aim = [_shade(view.aim, width, palette)] if view.aim is not None else []
    target, sample = [*_shades(view.target, width, palette), *aim], _shades(view.sample, width, palette)
    target_do, sample_do = _dos(view.target_do, width), _dos(view.sample_do, width)
    looking = (BLANK, heading("looking …")) if view.working else ()
    answer = (
        *section("did it hit", verdict if view.words or view.numbers else []),
        *section("what would mend it", _dos(view.mend, width)),
        *section("more or less of the same dye, modelled", _series(view, width, palette)),
        *section("dyed before", [*_two_lines(view.near, width, palette), *_dos(view.past_do, width)]),
        *section("does it stay", _dos(view.tests, width)),
    )
    if target and sample:  # the answer is what is wanted now; other readings wait below it
        asked = (
            *section("wanted, and the skein", [*target, *sample]),
            *looking,
            *answer,
            *section("other readings", [*target_do, *sample_do]),
        )
    else:
        asked = (
            *section("the colour you want", [*target, *target_do]),
            *section("the skein, dry", [*sample, *sample_do]),
            *looking,
            *answer,
        )
    return tuple(asked[1:])


def _series(view: ColourView, width: int, palette: Palette) -> list[Row]:
    told = list(paragraph(view.series_says, width)) if view.series_says else []
    return [*_shades(view.series, width, palette), *told]


def _listing(view: ColourView, width: int, palette: Palette) -> tuple[Row, ...]:
    rows = [*_dos(view.listed_do, width), *_two_lines(view.listed, width, palette)]
    looking = [heading("looking …")] if view.working else []
    return (heading(view.listing), *looking, *(rows or ([] if view.working else [heading("none")])))


def _shades(shades: tuple[ShadeLine, ...], width: int, palette: Palette) -> list[Row]:
    return [_shade(one, width, palette) for one in shades]


def _shade(shade: ShadeLine, width: int, palette: Palette) -> Row:
    """Its swatch, its name, its hex and its figures; what else is said of it where there is room."""
    name = cut(shade.name, _NAME - 1)
    spans = [*swatch(shade.hex, palette), say("  " if palette.dyed else "")]
    spans.append(say(f"{name}{' ' * (_NAME - width_of(name))}"))
    if shade.hex:
        hexed = f"{shade.hex}{'' if shade.exact else '*'}"
        spans.append(say(f"{hexed}{' ' * (_HEX - width_of(hexed))}", STRONG))
    spans.append(say(shade.figures))
    if shade.says and width_of(tuple(spans)) + _LEAST_SAYS <= width:
        spans.append(say(f"   {shade.says}", QUIET))
    return Row(cut_line(tuple(spans), width), shade.key)


def _two_lines(shades: tuple[ShadeLine, ...], width: int, palette: Palette) -> list[Row]:
    """Each with its hex, its figures and its whole name, and below that what else is said of it."""
    rows = []
    for one in shades:
        blank = swatch("", palette)
        figures = f"  {one.figures}" if one.figures else ""
        hexed: Line = (say("  "), say(f"{one.hex}{'' if one.exact else '*'}", STRONG)) if one.hex else EMPTY
        first: Line = (*swatch(one.hex, palette), *hexed, say(figures))
        rows.append(Row(cut_line((*first, say(f"  {one.name}")), width), one.key))
        rows += [
            Row((*(swatch(one.hex, palette) if at == 0 else blank), say("  "), *line), one.key)
            for at, line in enumerate(wrap([say(one.says, QUIET)], width - width_of(blank) - 2, 2))
        ]
    return rows


def _dos(dos: tuple[DoLine, ...], width: int) -> list[Row]:
    return [row for one in dos for row in _do(one, width)]


def _do(do: DoLine, width: int) -> list[Row]:
    """A few words, and what they would bring; where both do not fit, the rest stands on a line of its own."""
    gap = " " * max(2, _DOES - width_of(do.does))
    whole: Line = (say(do.does), say(f"{gap}{do.says}" if do.says else "", QUIET))
    if width_of(whole) <= width or not do.says:
        return [Row(cut_line(whole, width), do.key)]
    rest = wrap([say(do.says, QUIET)], width - 4)
    return [Row((say(do.does),), do.key), *(Row((say("    "), *line), do.key) for line in rest)]


def colour_aside(view: ColourView, width: int, height: int, palette: Palette) -> list[Line]:
    """The target and the marked or dry colour touching, as large as there is room, with their figures."""
    marked = _marked(view)
    aim = view.aim or (view.target[0] if view.target else None)
    pair = tuple(one for one in (aim, marked) if one is not None and one.hex)
    if not pair:
        return wrap([say(_HOW, QUIET)], width, height)
    if height >= _LARGE_ROWS:
        return _large(pair, view, width, height, palette)
    drawn = field(tuple(one.hex for one in pair), min(_FIELD_CELLS, width // 2), height, palette)
    room = width - (min(_FIELD_CELLS, width // 2) + 2 if drawn else 0)
    words = [line for one in _words(pair, view) for line in wrap(one, room, 2)][:height]
    if not drawn:
        return words
    return [
        (*line, say("  "), *(words[at] if at < len(words) else EMPTY)) for at, line in enumerate(drawn[:height])
    ]


def _large(
    pair: tuple[ShadeLine, ...], view: ColourView, width: int, height: int, palette: Palette
) -> list[Line]:
    said = [line for one in _words(pair, view) for line in wrap(one, width)]
    rows = min(_LARGE_FIELD, max(0, height - len(said) - 1))
    drawn = field(tuple(one.hex for one in pair), min(width, 2 * _FIELD_CELLS), rows, palette)
    return [*drawn, *([EMPTY] if drawn else []), *said][:height]


def _words(pair: tuple[ShadeLine, ...], view: ColourView) -> list[list[Span]]:
    named = [[say(f"{one.hex} ", STRONG), say(f"{one.name} {one.figures}")] for one in pair]
    said = [[say(view.words, STRONG)]] if view.words and not view.listing else []
    return [*named, *said]


def _marked(view: ColourView) -> ShadeLine | None:
    """What is held beside the target: the marked colour, else the skein."""
    beside = (*view.sample, *view.series, *view.near, *view.listed)
    marked = next((one for one in beside if one.key == view.cursor), None)
    return marked or (view.sample[0] if view.sample and not view.listing else None)


_HOW = (
    "Measure dry, by a north window or under an overcast sky. A photo with a grey card in it beats a hex picked by eye; "
    "target and skein in one photo beat two photos."
)
COLOUR_DRAWING: Drawing[ColourView] = Drawing(COLOUR, colour_rows, colour_aside, aside_rows=4, pad=_PAD)
