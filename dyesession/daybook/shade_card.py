"""The shade card: every colour in the logs with its recipe, dose, fibre and date; the past colours nearest a target.

Pure; knows no files and no screens. A lot counts once, by its last dry reading, else by its last wet one, which
is shown and never compared.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from dyesession.colour.ciede2000 import de00
from dyesession.colour.depth import NOT_FITTED, Exponent, fit_exponent
from dyesession.colour.mend import Dose, Lot
from dyesession.colour.readings import Reading, check_alike
from dyesession.colour.screen import screen_of
from dyesession.colour.typed import read_colour
from dyesession.daybook.day_facts import day_facts
from dyesession.daybook.day_line import is_demo
from dyesession.daybook.walk import Pace, walk
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay

COLOURED = frozenset({"dye", "modify"})
DYESTUFF = "dyestuff"
LEAST_STEP = 1.2  # two doses nearer than this say nothing of how depth follows dose: our own choice


@dataclass(frozen=True)
class Shade:
    """One colour of one lot of one day. `dyes` are per cent of the fibre; `hex` is for a screen, "" where none.

    `undyed` is the same lot's dry colour before it met a dye, where it was read.
    """

    session: str
    day: str
    recipe: str
    lot: str
    fibre: str
    fibre_g: float
    dyes: tuple[Dose, ...]
    others: tuple[Dose, ...]
    reading: Reading
    hex: str
    exact: bool = True
    undyed: Reading | None = None
    drawn: tuple[str, ...] = ()
    demo: bool = False

    @property
    def key(self) -> str:
        """What names it among all shades."""
        return f"{self.session}|{self.lot}"

    @property
    def doses(self) -> str:
        """Its dyes and their doses: "madder root 50 %"."""
        dyes = [f"{one.dyestuff} {one.percent:.3g} %" for one in self.dyes]
        return " and ".join((*dyes, *(f"out of {one}" for one in self.drawn))) or "no dyestuff noted"


def shades_of(days: Iterable[LoggedDay]) -> tuple[Shade, ...]:
    """Every colour of these days, in their order; a colour told in words is passed over."""
    return tuple(shade for day in days for shade in _of_day(day))


def _of_day(day: LoggedDay) -> tuple[Shade, ...]:
    paces = tuple(walk(day))
    read = _dyed(paces)
    if not read:
        return ()
    facts, before = day_facts(day), _undyed(paces)
    last = paces[-1].after
    doses = sorted(facts.dosed.values(), key=lambda one: -one.percent)
    dyes = tuple(Dose(one.substance, one.percent) for one in doses if one.role == DYESTUFF)
    others = tuple(Dose(one.substance, one.percent) for one in doses if one.role not in (DYESTUFF, "scour"))
    found = []
    for name, reading in read.items():
        lot = last.lot(name) if name else None
        try:
            screen = screen_of(reading.lab, reading.viewing)
        except UserError:
            continue
        found.append(
            Shade(
                session=day.name,
                day=f"{day.opened.at:%Y-%m-%d}",
                recipe=day.recipe,
                lot=name,
                fibre=lot.kind if lot is not None else facts.fibre,
                fibre_g=lot.mass_g if lot is not None else facts.fibre_g,
                dyes=dyes,
                others=others,
                reading=reading,
                hex=screen.hex,
                exact=screen.exact,
                undyed=before.get(name),
                drawn=facts.drawn,
                demo=is_demo(day),
            )
        )
    return tuple(found)


def _dyed(paces: Iterable[Pace]) -> dict[str, Reading]:
    """The last dry reading of each lot that met a dye, else its last wet one. Aftercare looks at dry fibre."""
    found: dict[str, Reading] = {}
    for pace in paces:
        event = pace.entry.event
        if not isinstance(event, e.Read | e.Cared) or not event.colour or pace.after.flags != pace.before.flags:
            continue
        if isinstance(event, e.Read) and (not event.lot or not _met_dye(pace, event.lot)):
            continue
        reading = _reading(event)
        if reading is None or (reading.wet and event.lot in found and not found[event.lot].wet):
            continue
        found[event.lot] = reading
    return found


def _undyed(paces: Iterable[Pace]) -> dict[str, Reading]:
    """The dry reading of each lot before it met a dye."""
    found: dict[str, Reading] = {}
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Read) and event.lot and event.colour and not _met_dye(pace, event.lot):
            reading = _reading(event)
            if reading is not None and not reading.wet:
                found[event.lot] = reading
    return found


def _met_dye(pace: Pace, lot: str) -> bool:
    return any(one.plan.stage in COLOURED and lot in one.entered for one in pace.before.steps)


def _reading(event: e.Read | e.Cared) -> Reading | None:
    try:
        found = read_colour(event.colour)
    except UserError:
        return None  # a colour told in words
    return replace(found, wet=event.wet is not False) if isinstance(event, e.Read) else replace(found, wet=False)


@dataclass(frozen=True)
class Near:
    """A past colour and how far it lies from the one wanted (CIEDE2000)."""

    shade: Shade
    de00: float


def nearest_shades(shades: Iterable[Shade], target: Reading, count: int | None = None) -> tuple[Near, ...]:
    """The dry shades read for the target's light and observer, the nearest first."""
    found = []
    for one in shades:
        try:
            check_alike(one.reading, target)
        except UserError:
            continue  # wet, or read for another light: its figures are not comparable
        found.append(Near(one, de00(target.lab, one.reading.lab)))
    return tuple(sorted(found, key=lambda near: near.de00)[:count])


def lot_of(shade: Shade, shades: Sequence[Shade] = ()) -> Lot | None:
    """The fibre and dye of a shade, to be mended; None where no weight or no dye is known.

    How depth follows dose is fitted where the dyer has the same dye at another dose among `shades`.
    """
    if not shade.dyes or shade.fibre_g <= 0.0:
        return None
    return Lot(shade.fibre_g, shade.dyes[0], exponent=exponent_of(shade, shades))


def exponent_of(shade: Shade, shades: Iterable[Shade]) -> Exponent:
    """How depth follows dose for this shade's dye, from the farthest other dose of the same dye on like fibre."""
    twins = [one for one in shades if _same_dye(shade, one)]
    if not twins:
        return NOT_FITTED
    other = max(twins, key=lambda one: _ratio(one, shade))
    pale, deep = sorted((shade, other), key=lambda one: one.dyes[0].percent)
    undyed = shade.undyed or other.undyed
    if undyed is None:
        return NOT_FITTED
    try:
        return fit_exponent(
            undyed, pale.reading, pale.dyes[0].percent, deep.reading, deep.dyes[0].percent
        )
    except UserError:
        return NOT_FITTED


def _same_dye(one: Shade, other: Shade) -> bool:
    """The same single dye over the same other things, on the same fibre, dry, at clearly another dose."""
    alike = len(one.dyes) == len(other.dyes) == 1 and one.dyes[0].dyestuff == other.dyes[0].dyestuff
    beside = {dose.dyestuff for dose in one.others} == {dose.dyestuff for dose in other.others}
    read = not (one.reading.wet or other.reading.wet) and one.reading.viewing == other.reading.viewing
    return alike and beside and read and one.fibre == other.fibre and _ratio(one, other) >= LEAST_STEP


def _ratio(one: Shade, other: Shade) -> float:
    low, high = sorted((one.dyes[0].percent, other.dyes[0].percent))
    return high / low if low > 0.0 else 0.0
