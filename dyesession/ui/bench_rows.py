"""How the Bench is drawn: the lines of its list, and what explains the marked one. Knows no files."""

from dyesession.ui.bench_view import (
    IMPROVISE,
    BenchView,
    DayLine,
    PotLine,
    RecipeLine,
    Swatch,
    WantLine,
    WayLine,
)
from dyesession.ui.ink import EMPTY, QUIET, STRONG, TEXT, Ink, Line, cut, cut_line, fill, say, width_of, wrap
from dyesession.ui.place_keys import BENCH
from dyesession.ui.rows import BLANK, Row, heading, paragraph, section, two_ends
from dyesession.ui.screens.place import Drawing
from dyesession.ui.theme import Palette

_NAME_CELLS = 44
_POT_CELLS = 16
_ALARM = Ink("alarm_ink", "alarm", bold=True)
_SWATCH = "    "
_IMPROVISE = Row((say("without a recipe"), say("   stages as you name them", QUIET)), IMPROVISE)
_PAD = ("g", "oz", "wool", ";", "large", "small", "skein", "silk", "cotton", "linen", "kg")


def bench_rows(view: BenchView, width: int, palette: Palette) -> tuple[Row, ...]:
    """Every line of the Bench, the most wanted first."""
    greeting = [row for text in view.greeting for row in paragraph(text, width, ink=TEXT)]
    found = f"recipes with “{view.find}” in them" if view.find else "recipes"
    recipes = [_recipe(one, width) for one in view.recipes] or [heading(" none")]
    parts = (
        *greeting,
        *section("under way", [row for one in view.under_way for row in _open_day(one, width)]),
        *section("wants you", [_want(one, width) for one in view.wants]),
        *section(found, [*recipes, *([_IMPROVISE] if not view.find else [])]),
        *section("dyed by nobody: demo days" if _only_demo(view) else "dyed before", [_done(one, width, palette) for one in view.done]),
        *section("go on to", [_way(one, width) for one in view.ways]),
        *((BLANK, heading("still looking through the logs …")) if view.looking else ()),
    )
    return tuple(parts[1:] if parts and parts[0] == BLANK else parts)


def _open_day(day: DayLine, width: int) -> list[Row]:
    left: Line = (say(day.recipe, STRONG), say(f"   {day.fibre}", QUIET))
    rows = [two_ends(left, (say(day.when, QUIET),), width, day.key)]
    rows += [Row(_pot(one), day.key) for one in day.pots]
    if day.stands:
        rows.append(Row((say(f"  {day.stands}"),), day.key))
    return rows


def _pot(pot: PotLine) -> Line:
    gap = " " * max(2, _POT_CELLS - width_of(pot.name))
    says = say(f" {pot.says} ", _ALARM) if pot.over else say(pot.says)
    return (say(f"  {pot.letter} ", STRONG), say(f"{pot.name}{gap}", QUIET), says)


def _want(want: WantLine, width: int) -> Row:
    why: Line = (say(f"   {want.why}", QUIET),) if want.why else EMPTY
    return Row((say(want.what), *why), want.key)


def _way(way: WayLine, width: int) -> Row:
    return Row(cut_line((say(way.place), say(f"   {way.asks}", QUIET)), width), way.key)


def _recipe(recipe: RecipeLine, width: int) -> Row:
    if recipe.fault:
        return Row((say(cut(recipe.name, _NAME_CELLS)), say("   cannot be read", QUIET)), recipe.key)
    own: Line = (say("  yours", QUIET),) if recipe.own else EMPTY
    return two_ends((say(recipe.name), *own), (say(recipe.fibre, QUIET),), min(width, 84), recipe.key)


def _done(day: DayLine, width: int, palette: Palette) -> Row:
    colours = swatches_line(day.swatches, palette)
    left: Line = (say(f"{day.when}  ", QUIET), say(day.recipe), say(f"   {day.fibre}", QUIET))
    left = (*left, say("   demo", QUIET)) if day.demo else left
    right: Line = colours or (say(day.stands, QUIET),)
    return two_ends(left, right, min(width, 84), day.key)


def _only_demo(view: BenchView) -> bool:
    return bool(view.done) and all(one.demo for one in view.done)


def swatches_line(swatches: tuple[Swatch, ...], palette: Palette) -> Line:
    """The colours read, each in a grey field beside its figure; where the terminal shows none, the figure alone."""
    spans: list[tuple[str, Ink]] = []
    for index, one in enumerate(swatches):
        spans += [say("  ")] if index else []
        spans += [*_field(one, _SWATCH), say(" ")] if palette.dyed else []
        spans.append(say(one.colour, QUIET))
    return tuple(spans)


def _field(swatch: Swatch, cells: str) -> Line:
    """A dyed colour with a cell of mid grey at either side: nothing warm stands beside it."""
    grey = (" ", Ink(ground="grey_field"))
    return (grey, (cells, Ink(ground=swatch.colour)), grey)


def bench_aside(view: BenchView, width: int, height: int, palette: Palette) -> list[Line]:
    """What explains the marked line: a recipe's summary and source, a day's colours, why something is wanted."""
    recipe = next((one for one in view.recipes if one.key == view.cursor), None)
    if recipe is not None:
        return _about_recipe(recipe, width, height, palette)
    day = next((one for one in (*view.under_way, *view.done) if one.key == view.cursor), None)
    if day is not None:
        return _about_day(day, width, height, palette)
    if view.cursor == IMPROVISE:
        return wrap([say(_IMPROVISED, QUIET)], width, height)
    want = next((one for one in view.wants if one.key == view.cursor), None)
    if want is not None:
        return wrap([say(want.what, STRONG), say(f" {want.why}")], width, height)
    way = next((one for one in view.ways if one.key == view.cursor), None)
    return wrap([say(way.place, STRONG), say(f"  {way.asks}")], width, height) if way else []


def _about_recipe(recipe: RecipeLine, width: int, height: int, palette: Palette) -> list[Line]:
    """Its steps drawn as they are at the Stove, what it gives, what the colour comes from, whose it is."""
    if recipe.fault:
        return wrap([say(recipe.fault)], width, height)
    roomy = height > _ASIDE_ROWS
    lines = _steps(recipe, width, palette)
    lines += [EMPTY] if roomy and lines else []
    lines += wrap([say(recipe.summary or recipe.name)], width, max(1, height - len(lines)))
    for about in (recipe.colour_from, f"source: {recipe.source}" if recipe.source else ""):
        lines += [EMPTY] if roomy and about else []
        lines += wrap([say(about, QUIET)], width, max(0, height - len(lines))) if about else []
    return lines[:height]


def _steps(recipe: RecipeLine, width: int, palette: Palette) -> list[Line]:
    if not (recipe.fibre_steps or recipe.liquor_steps):
        return []
    # Only wanted once recipes have been read: the Bench must be up before that.
    from dyesession.ui.stove_view import Lane, Lanes, Stage
    from dyesession.ui.widgets.lanes import draw_lanes

    def stages(names: tuple[str, ...]) -> tuple[Stage, ...]:
        return tuple(Stage(name) for name in names)

    lanes = (("fibre", recipe.fibre_steps), ("liquor", recipe.liquor_steps))
    rows = tuple(Lane(name, stages(steps)) for name, steps in lanes if steps)
    return draw_lanes(Lanes(rows, stages(recipe.together_steps)), width, len(rows), palette)


def _about_day(day: DayLine, width: int, height: int, palette: Palette) -> list[Line]:
    """What is dyed; its pots, or the colours that were read of it, as pictures where there is room."""
    said = [say(f"{day.recipe}, {day.fibre}", STRONG), say(f" {day.stands or day.when}", QUIET)]
    lines = wrap(said, width, height)
    room = height - len(lines) - 1
    if day.pots and room >= _POT_ROWS:
        return [*lines, EMPTY, *_pictures(day.pots, width, palette)]
    for one in day.swatches:
        lines += swatch_block(one, 4 if room >= 5 * len(day.swatches) else 1, palette)
    return lines[:height]


def swatch_block(swatch: Swatch, tall: int, palette: Palette) -> list[Line]:
    """A colour in its field, so many rows high, and its figure beside it."""
    lines: list[Line] = [EMPTY] if tall > 1 else []
    for row in range(tall):
        block: Line = (*_field(swatch, _SWATCH * 3), say("  ")) if palette.dyed else EMPTY
        words: Line = (say(f"{swatch.colour}  "), say(swatch.of, QUIET)) if row == tall // 2 else EMPTY
        lines.append((*block, *words))
    return lines


def _pictures(pots: tuple[PotLine, ...], width: int, palette: Palette) -> list[Line]:
    """The pots as the Stove draws them, as many as stand side by side."""
    from dyesession.ui.block_text import SNUG
    from dyesession.ui.stove_view import Clock, Pot, PotState
    from dyesession.ui.widgets.pot import PotPart, draw_pot

    lines: list[Line] = [EMPTY] * _POT_ROWS
    for one in pots[: max(1, width // (_POT_WIDTH + 2))]:
        clock = Clock(*one.clock) if one.clock else None
        state: PotState = "overdue" if one.over else "running"
        pot = Pot(one.letter, one.name, one.fill, liquor=one.liquor, clock=clock, state=state, on_heat=one.on_heat)
        drawn = draw_pot(PotPart(pot, 1, SNUG), _POT_WIDTH, _POT_ROWS, palette)
        lines = [(*line, *fill(more, _POT_WIDTH), say("  ")) for line, more in zip(lines, drawn, strict=True)]
    return lines


_IMPROVISED = (
    "Say what you dye, then each stage when you come to it; clocks, doses and cautions are as in any day. Afterwards "
    "the day can be repeated as a recipe."
)
_POT_ROWS, _POT_WIDTH = 10, 28
_ASIDE_ROWS = 4
BENCH_DRAWING: Drawing[BenchView] = Drawing(BENCH, bench_rows, bench_aside, aside_rows=_ASIDE_ROWS, pad=_PAD)
