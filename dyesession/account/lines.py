"""One line a movement: what happened to which bath, in words, and what that did to its litres and its colour.

Knows nothing of how a movement is reckoned: it compares holdings before and after. What time did to a pot
(steam, uptake, extraction) is told in lines of its own when something next happens to that pot.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from dyesession.account.holdings import Bath, Holdings
from dyesession.account.model import Amount, How, LedgerLine
from dyesession.account.pools import EMPTY, Pool
from dyesession.account.worlds import ZEROS, Vector, band, mean, minus, plus, times
from dyesession.session import events as e
from dyesession.session.fold import Entry

LEAST_L = 0.0005  # a line about less than half a millilitre tells nobody anything; our own choice, no source
LEAST_G = 0.0005
HOWS: Mapping[str, How] = {
    "weighed": "weighed",
    "read": "read",
    "matched": "matched",
    "typed": "typed",
    "planned": "planned",
}


# Litres and grams that one bath gained, in every world.
Change = tuple[Vector, tuple[tuple[str, Vector], ...]]


@dataclass(frozen=True)
class Movement:
    """A line before it is banded: what it did in every world."""

    n: int
    second: float
    vessel: str
    what: str
    volume_l: Vector = ZEROS
    changes: tuple[tuple[str, Vector], ...] = ()
    how: How = "modelled"


def banded(movements: Iterable[Movement], weights: Vector) -> tuple[LedgerLine, ...]:
    """The lines as they are shown, by what the worlds weigh now."""
    return tuple(
        LedgerLine(
            one.n,
            one.second,
            one.vessel,
            one.what,
            band(one.volume_l, weights),
            tuple([Amount(name, band(change, weights)) for name, change in one.changes]),
            one.how,
        )
        for one in movements
    )


def lines_of(
    entry: Entry, second: float, told: Holdings, before: Holdings, after: Holdings
) -> tuple[Movement, ...]:
    """Lines of one entry: what time did to each pot it touched, then what it did itself."""
    found: list[Movement] = []
    for name in _touched(before, after):
        found += _time_lines(name, told, before, entry.n, second)
        found += _own_line(entry, second, name, before, after)
    return (*found, *_strength_line(entry, second))


def _strength_line(entry: Entry, second: float) -> tuple[Movement, ...]:
    """A strength moves nothing: its line says what was read; what that did stands in the account's effects."""
    event = entry.event
    if not isinstance(event, e.Read) or event.strength is None:
        return ()
    of = f" of {event.against}" if event.against else ""
    by = f", {event.method}" if event.method else ""
    what = f"strength read: {event.strength:.2g}{of}{by}"
    return (Movement(entry.n, second, event.vessel, what, how=how_of(event)),)


def how_of(event: e.Event) -> How:
    """One word for where the figure of a line comes from."""
    if isinstance(event, e.Lifted):
        return "weighed" if event.wet_mass_g is not None else "modelled"
    if isinstance(event, e.Strained | e.Pooled | e.Drawn) and event.volume_l is None:
        return "modelled"
    if isinstance(event, e.Kept | e.Drawn):
        return "read" if event.volume_l is not None else "modelled"
    word = str(getattr(event, "how", "modelled"))
    return HOWS.get(word, "modelled")


def time_lines(told: Holdings, now: Holdings, n: int, second: float) -> tuple[Movement, ...]:
    """What time has done to each pot since the last line about it."""
    return tuple(line for name in now.baths for line in _time_lines(name, told, now, n, second))


def told_up_to(told: Holdings, before: Holdings, after: Holdings) -> Holdings:
    """The holdings as the lines tell them once the lines of this movement are written."""
    touched = _touched(before, after)
    baths = {**told.baths, **{name: after.baths[name] for name in touched if name in after.baths}}
    baths = {name: bath for name, bath in baths.items() if name in after.baths}
    return replace(told, baths=baths, kept=after.kept)


def not_counted(entry: Entry, why: str, second: float) -> Movement:
    """The line of an entry that does not fit what came before it."""
    vessel = str(getattr(entry.event, "vessel", ""))
    return Movement(entry.n, second, vessel, f"not counted: {why}")


def only_noted(entry: Entry, second: float) -> Movement:
    """The line of a figure that was doubted and insisted on: kept as a note, and nothing reckoned with it."""
    text = str(getattr(entry.event, "text", ""))
    return Movement(entry.n, second, "", f"kept as a note, not reckoned with: {text}", how="typed")


def _touched(before: Holdings, after: Holdings) -> tuple[str, ...]:
    names = dict.fromkeys((*before.baths, *after.baths, *before.kept, *after.kept))
    return tuple(name for name in names if _pool(before, name) is not _pool(after, name))


def _pool(held: Holdings, name: str) -> Pool:
    bath = held.baths.get(name) or held.kept.get(name)
    return bath.pool if bath is not None else EMPTY


def _time_lines(name: str, told: Holdings, now: Holdings, n: int, second: float) -> list[Movement]:
    was, is_now = told.baths.get(name, Bath()).pool, now.baths.get(name, Bath()).pool
    if was is is_now:
        return []
    found = []
    steam = minus(is_now.volume_l, was.volume_l)
    if abs(mean(steam)) >= LEAST_L:
        found.append(Movement(n, second, name, "steamed off", steam))
    changes = _changes(was, is_now)
    into = tuple(one for one in changes if mean(one[1]) > 0)
    out = tuple(one for one in changes if mean(one[1]) < 0)
    if into:
        found.append(Movement(n, second, name, "drawn out of the dyestuff", ZEROS, into))
    if out:
        found.append(Movement(n, second, name, "taken up by the fibre", ZEROS, out))
    return found


def _own_line(entry: Entry, second: float, name: str, before: Holdings, after: Holdings) -> list[Movement]:
    volume, changes = _change(name, before, after)
    if abs(mean(volume)) < LEAST_L and not changes and not _tells_nothing_new(entry):
        return []
    words, how = words_of(entry.event, name), how_of(entry.event)
    into = _poured_into(entry.event, name)
    if into:
        return _both_sides(entry, second, name, (volume, changes), _change(into, before, after), words)
    return [Movement(entry.n, second, name, words, volume, changes, how)]


def _poured_into(event: e.Event, name: str) -> str:
    """Where liquor that left the bath of that name went by this event; "" where it went to no other bath."""
    if isinstance(event, e.Strained | e.Pooled) and name == event.vessel:
        return event.into
    if isinstance(event, e.Kept) and name == event.vessel:
        return event.label
    return event.vessel if isinstance(event, e.Drawn) and name == event.label else ""


def _both_sides(
    entry: Entry, second: float, name: str, own: Change, there: Change, words: str
) -> list[Movement]:
    """What left a bath, just as much as came in where it was poured; the rest, which the sieve holds or a volume
    that was read puts right, is a line of its own and comes first.
    """
    out = (_negative(there[0]), tuple((dye, _negative(grams)) for dye, grams in there[1]))
    rest = plus(own[0], there[0])
    own_g, there_g = dict(own[1]), dict(there[1])
    differ = ((dye, plus(own_g.get(dye, ZEROS), there_g.get(dye, ZEROS))) for dye in {**own_g, **there_g})
    rest_g = tuple((dye, grams) for dye, grams in differ if _tells(grams, LEAST_G))
    found = [Movement(entry.n, second, name, words, *out, how_of(entry.event))]
    if rest_g or _tells(rest, LEAST_L):
        found.insert(0, Movement(entry.n, second, name, _REST[entry.event.kind], rest, rest_g))
    return found


def _tells(change: Vector, least: float) -> bool:
    """Whether a change is more than nothing in any world."""
    return max(map(abs, change)) >= least


def _negative(change: Vector) -> Vector:
    return change if change is ZEROS else times(change, -1.0)


def _tells_nothing_new(entry: Entry) -> bool:
    """A reading is told even where it found just what was reckoned."""
    return isinstance(entry.event, e.Read)


def _change(name: str, before: Holdings, after: Holdings) -> Change:
    was, is_now = _pool(before, name), _pool(after, name)
    return minus(is_now.volume_l, was.volume_l), _changes(was, is_now)


def _changes(was: Pool, is_now: Pool) -> tuple[tuple[str, Vector], ...]:
    names = dict.fromkeys((*was.held_g, *is_now.held_g))
    differences = ((name, _difference(was, is_now, name)) for name in names)
    return tuple((name, change) for name, change in differences if abs(mean(change)) >= LEAST_G)


def _difference(was: Pool, is_now: Pool, name: str) -> Vector:
    before, after = was.grams(name), is_now.grams(name)
    return ZEROS if before is after else minus(after, before)


def words_of(event: e.Event, name: str) -> str:
    """What an event did to the bath of that name, in plain words."""
    says = _WORDS.get(event.kind)
    if isinstance(event, e.Strained | e.Pooled):
        verb = "strained" if isinstance(event, e.Strained) else "poured"
        return (
            f"{verb} into the {event.into}" if name == event.vessel else f"{verb} in from the {event.vessel}"
        )
    if isinstance(event, e.Kept):
        return f"put by as {event.label}" if name == event.vessel else f"put by from the {event.vessel}"
    if isinstance(event, e.Drawn):
        return f"drawn from {event.label}" if name == event.vessel else f"drawn into the {event.vessel}"
    return says.format_map(_Fields(event)) if says is not None else event.kind


class _Fields(dict[str, object]):
    """An event's fields for a sentence."""

    def __init__(self, event: e.Event) -> None:
        super().__init__(e.event_fields(event))

    def __missing__(self, key: str) -> str:
        return ""


_WORDS: Mapping[str, str] = {
    "filled": "filled with water",
    "refreshed": "fresh water on the dyestuff",
    "added": "{ingredient} added",
    "topped-up": "topped up",
    "entered": "{lot} entered",
    "dipped": "{snippet} dipped",
    "lifted": "{lot} lifted, carried out with it",
    "read": "volume read",
    "discarded": "thrown away",
}

# What of a pour the other bath did not get.
_REST: Mapping[str, str] = {
    "strained": "held by the dyestuff in the sieve, or put right by the volume read",
    "pooled": "put right by the volume read",
    "kept": "put right by the volume read",
    "drawn": "put right by the volume drawn",
}
