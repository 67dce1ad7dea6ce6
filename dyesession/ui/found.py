"""A look round the workroom: recipes and logs read, and made into what the Bench shows. Estimates nothing.

Runs beside the screen, after the Bench is up: reading many logs takes its time. What cannot be read is told,
never skipped in silence.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path

from dyesession.care.keeping import keeping
from dyesession.clock import Instant, elapsed_s
from dyesession.colour.logged import screen_hex
from dyesession.daybook.day_line import is_demo
from dyesession.errors import UserError
from dyesession.plan.model import FibreLot
from dyesession.recipe.model import Recipe
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.fold import Entry, fold, opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import KeptBath, State, StepState, Vessel
from dyesession.session.suggest import rings
from dyesession.ui.bench_view import TAUGHT, DayLine, PotLine, RecipeLine, Swatch, WantLine, name_of_file
from dyesession.ui.stove_view import countdown_clock
from dyesession.ui.workroom import Workroom
from dyesession.units import show_mass

# So many logs are read to their end for the Bench; older ones only tell whether they are closed. Our own choice.
READ_WHOLE = 12
MOST_SWATCHES = 3
UNKNOWN_FILL = 0.5
# After this long a skein is dry in the shade, and its shade can be judged: common practice, no source.
DRY_AFTER = timedelta(hours=20)


@dataclass(frozen=True)
class Found:
    """What a look round brought."""

    recipes: tuple[RecipeLine, ...] = ()
    under_way: tuple[DayLine, ...] = ()
    done: tuple[DayLine, ...] = ()
    wants: tuple[WantLine, ...] = ()


def look_round(workroom: Workroom) -> Found:
    """Read what there is."""
    now = workroom.now()
    recipes = tuple(_recipe_line(workroom, path) for path in workroom.recipe_files())
    days, wants = [], [_unread_recipe(one) for one in recipes if one.fault and one.own]
    for path in workroom.log_files()[:READ_WHOLE]:
        try:
            days.append((path, workroom.day(path)))
        except UserError as trouble:
            wants.append(WantLine(f"log:{path}", f"The log {path.stem} cannot be read", str(trouble)))
    own = [(path, day, _folded(day)) for path, day in days if not day.rehearsal]
    return Found(
        recipes=recipes,
        under_way=tuple(
            _open_day(path, day, state, now) for path, day, state in own if state.status != "complete"
        ),
        done=tuple(
            _done_day(path, day, state, now) for path, day, state in own if state.status == "complete"
        ),
        wants=(
            *wants,
            *(one for path, day, state in own if not is_demo(day) for one in _wanting(path, day, state, now)),
            *_taught(workroom, now),
        ),
    )


def _taught(workroom: Workroom, now: Instant) -> list[WantLine]:
    """What the newest day has taught, as long as it is news."""
    try:
        found = workroom.newly_taught()
    except UserError:
        return []  # a logs' folder that cannot be read is told by what else wants it
    if found is None or not found.is_news(now.at.date()):
        return []
    return [WantLine(TAUGHT, f"Your own numbers: {found.in_short}", f"by {found.recipe}, {found.closed[:10]}")]


def _recipe_line(workroom: Workroom, path: Path) -> RecipeLine:
    own = workroom.is_own(path)
    try:
        recipe = workroom.recipe(path)
    except UserError as trouble:
        return RecipeLine(f"recipe:{path}", name_of_file(path), own=own, fault=str(trouble))
    fibre, liquor, together = _lanes(recipe)
    return RecipeLine(
        f"recipe:{path}",
        recipe.name,
        " or ".join(recipe.fibre),
        recipe.summary,
        recipe.source,
        _colour_from(recipe),
        own,
        fibre_steps=fibre,
        liquor_steps=liquor,
        together_steps=together,
    )


def _lanes(recipe: Recipe) -> tuple[tuple[str, ...], tuple[str, ...], tuple[str, ...]]:
    """The steps of the fibre, of the liquor, and those that come, near or far, after steps of both."""
    behind: dict[str, set[str]] = {}
    found: dict[str, list[str]] = {"fibre": [], "liquor": [], "together": []}
    for step in recipe.steps:
        before = set().union(*(behind.get(name, set()) for name in step.after)) if step.after else set()
        behind[step.name] = before | {step.lane}
        found["together" if len(before) > 1 else step.lane].append(step.name)
    return tuple(found["fibre"]), tuple(found["liquor"]), tuple(found["together"])


def _colour_from(recipe: Recipe) -> str:
    """What the colour comes from and what holds it, in one line."""
    named = {
        role: [one.substance for one in recipe.ingredients if one.role == role]
        for role in ("dyestuff", "mordant")
    }
    colour, held = " and ".join(named["dyestuff"]), " and ".join(named["mordant"])
    return f"{colour} over {held}" if colour and held else colour or held


def _unread_recipe(recipe: RecipeLine) -> WantLine:
    return WantLine(recipe.key, f"Your recipe “{recipe.name}” cannot be read", recipe.fault)


def _folded(day: LoggedDay) -> State:
    return fold(opening_state(day.plan), day.entries, day.opened)


def fibre_words(lots: tuple[FibreLot, ...]) -> str:
    """What is dyed, in a few words: "240 g wool, 2 lots"."""
    total = show_mass(sum(one.mass_g for one in lots))
    kinds = " and ".join(dict.fromkeys(one.kind for one in lots))
    return f"{total} {kinds}" + (f", {len(lots)} lots" if len(lots) > 1 else "")


def _open_day(path: Path, day: LoggedDay, state: State, now: Instant) -> DayLine:
    return open_day_line(str(path), day.recipe, day.plan.lots, state, now, day.opened.at, day.entries)


def open_day_line(
    path: str,
    recipe: str,
    lots: tuple[FibreLot, ...],
    state: State,
    now: Instant,
    opened: datetime,
    entries: tuple[Entry, ...],
) -> DayLine:
    """A day under way as the Bench shows it, at one moment."""
    second = state.seconds(now)
    over = {one.vessel for one in rings(state, second)}
    pots = tuple(
        replace(_pot_line(state, one, step, second, one.name in over), liquor=_liquor(entries, one.name))
        for one in state.vessels
        if (step := state.running_in(one.name)) is not None
    )
    begun = f"begun {words.day_text(opened, now.at)}"
    stands = "" if pots else "nothing on the heat; the next step waits"
    return DayLine(f"day:{path}", recipe, fibre_words(lots), begun, stands, pots)


def _pot_line(state: State, vessel: Vessel, step: StepState, second: float, over: bool) -> PotLine:
    says = f"{step.name}, {words.stretch_words(state, step, second)}"
    clock = countdown_clock(step.countdown.left_s(second)) if step.countdown is not None else None
    return PotLine(
        vessel.letter,
        vessel.name,
        says,
        over,
        _fill(vessel),
        clock=None
        if clock is None or step.countdown is None or step.countdown.overnight
        else (clock.text, clock.unit),
        on_heat=vessel.on_heat,
    )


def _liquor(entries: tuple[Entry, ...], vessel: str) -> str | None:
    """The liquor's own colour, once it has been read and as long as the same bath stands there."""
    for entry in reversed(entries):
        event = entry.event
        if isinstance(event, e.Read) and event.vessel == vessel and event.colour.startswith("#"):
            return event.colour
        if isinstance(event, e.Kept | e.Discarded | e.Filled) and event.vessel == vessel:
            return None
    return None


def _fill(vessel: Vessel) -> float:
    """How full a pot is drawn; half, where neither its litres nor its size are known."""
    litres = vessel.bath.volume_l if vessel.bath is not None else None
    if litres is None or not vessel.capacity_l:
        return UNKNOWN_FILL
    return min(1.0, litres / vessel.capacity_l)


def _done_day(path: Path, day: LoggedDay, state: State, now: Instant) -> DayLine:
    verdict = f" “{state.verdict}”" if state.verdict else ""
    return DayLine(
        f"day:{path}",
        day.recipe,
        fibre_words(day.plan.lots),
        f"{day.opened.at:%Y-%m-%d}",
        f"done{verdict}",
        swatches=_swatches(day),
        demo=is_demo(day),
    )


def _swatches(day: LoggedDay) -> tuple[Swatch, ...]:
    """Colours read of fibre, the latest of each lot, dry before wet."""
    read: dict[str, Swatch] = {}
    for entry in day.entries:
        event = entry.event
        colour = screen_hex(event.colour) if isinstance(event, e.Read | e.Cared) else ""
        if isinstance(event, e.Read) and event.lot and colour:
            wet = " wet" if event.wet else ""
            read[event.lot] = Swatch(colour, f"{event.lot}{wet}, read {entry.instant.at:%d.%m.}")
        if isinstance(event, e.Cared) and colour:
            read[event.lot] = Swatch(colour, f"{event.lot}, {event.what}, {entry.instant.at:%d.%m.}".strip(", "))
    return tuple(read.values())[:MOST_SWATCHES]


def _wanting(path: Path, day: LoggedDay, state: State, now: Instant) -> list[WantLine]:
    """What a day that is over still wants: a kept bath looked at, a dry shade judged."""
    if state.status != "complete":
        return []
    found = [one for kept in state.kept if (one := _kept_bath(path, day, kept, now)) is not None]
    closed = next((one.instant for one in reversed(day.entries) if isinstance(one.event, e.Closed)), None)
    cared = any(isinstance(one.event, e.Cared) for one in day.entries)
    if closed is not None and not cared and elapsed_s(closed, now).seconds > DRY_AFTER.total_seconds():
        found.append(
            WantLine(
                f"dry:{path}",
                f"{day.recipe}: dry by now",
                "judge its shade in daylight, rub it on a white cloth",
            )
        )
    return found


def _kept_bath(path: Path, day: LoggedDay, kept: KeptBath, now: Instant) -> WantLine | None:
    """A kept bath whose day to be looked at has come."""
    put_by = next(
        (
            one.instant
            for one in day.entries
            if isinstance(one.event, e.Kept) and one.event.label == kept.label
        ),
        None,
    )
    if put_by is None:
        return None
    substances = {one.ingredient: one.substance for one in day.plan.doses}
    inside = [one.ingredient for one in kept.bath.contents] + list(kept.bath.liquor_of)
    keeps = keeping(tuple((substances.get(one, one), None) for one in inside))
    days = elapsed_s(put_by, now).seconds / timedelta(days=1).total_seconds()
    if days < keeps.days:
        return None
    age = f"kept {int(days)} day{'s' if int(days) != 1 else ''}"
    return WantLine(
        f"kept:{path}:{kept.label}", f"The {kept.label}, {age}: look at it", f"{keeps.what}: {keeps.source}"
    )
