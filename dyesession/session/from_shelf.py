"""What a day is told of the bath shelf as it opens: kept baths, mordanted fibre that waits, what does not add up.

Facts only, handed in once; nothing here looks into other logs. What goes into a hot bath next is chosen from
them at the lift.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date

from dyesession.session import events as e
from dyesession.session.brought import Brought, for_log
from dyesession.session.fit_pots import ROUNDING_L
from dyesession.session.names import letter
from dyesession.session.situation import temperature
from dyesession.session.state import ENDED, Lot, State, Vessel
from dyesession.units import show_mass, show_volume

COLOURED = frozenset({"dye", "modify"})
HOT_C = 40.0  # cooler than that nobody calls it hot: hand-hot, common practice, no source
NAMED = 2  # lots named in one line; our own choice, no source


@dataclass(frozen=True)
class ShelfBath:
    """A bath of another day: its label, the session that kept it, litres by the facts, substances in it."""

    label: str
    session: str
    volume_l: float | None = None
    substances: tuple[str, ...] = ()


@dataclass(frozen=True)
class ShelfFibre:
    """Fibre mordanted on another day that waits for a bath; grams air-dry, how it was mordanted."""

    lot: str
    kind: str
    mass_g: float
    how: str
    since: date
    session: str


# What so many litres of a bath bring along, asked for only when it is poured: it has to be reckoned.
Bringing = Callable[[ShelfBath, float | None], tuple[Brought, ...]]


def not_reckoned(bath: ShelfBath, volume_l: float | None) -> tuple[Brought, ...]:
    """Nobody reckons it here."""
    return ()


@dataclass(frozen=True)
class FromShelf:
    """What the shelf tells a day; `told` are sentences that two days disagree about, this one among them.

    `bringing` reckons what a bath brings along.
    """

    baths: tuple[ShelfBath, ...] = ()
    fibre: tuple[ShelfFibre, ...] = ()
    told: tuple[str, ...] = ()
    bringing: Bringing = field(default=not_reckoned, compare=False)

    def bath(self, label: str) -> ShelfBath | None:
        """The bath of that label, large and small letters alike; None where none stands."""
        return next((one for one in self.baths if one.label.casefold() == label.casefold()), None)


NOTHING_STANDS = FromShelf()


def completed(shelf: FromShelf, state: State, command: e.Event) -> e.Event:
    """A draw from another day's bath, with that day's name and what is in it; any other command as it is."""
    if not isinstance(command, e.Drawn) or command.session or command.contents:
        return command
    if any(one.label == command.label for one in state.kept) or (bath := shelf.bath(command.label)) is None:
        return command
    litres = bath.volume_l if command.volume_l is None else command.volume_l
    return replace(
        command, label=bath.label, session=bath.session, volume_l=litres, contents=bath.substances
    )


def with_brought(shelf: FromShelf, command: e.Event) -> e.Event:
    """A draw from another day's bath with the grams that come along, where the shelf can reckon them; any other
    command as it is.
    """
    if not isinstance(command, e.Drawn) or not command.session or command.brought:
        return command
    bath = next((one for one in shelf.baths if _is_of(one, command)), None)
    if bath is None:
        return command
    litres = bath.volume_l if command.volume_l is None else command.volume_l
    return replace(command, brought=for_log(shelf.bringing(bath, litres)), brought_l=litres)


def beyond(shelf: FromShelf, command: e.Event) -> str | None:
    """Why more is drawn from another day's bath than it holds, in one sentence; None where it is not."""
    if not isinstance(command, e.Drawn) or not command.session or command.volume_l is None:
        return None
    bath = next((one for one in shelf.baths if _is_of(one, command)), None)
    if bath is None or bath.volume_l is None or command.volume_l <= bath.volume_l + ROUNDING_L:
        return None
    return (
        f"“{bath.label}” holds {show_volume(bath.volume_l)}, so {show_volume(command.volume_l)} cannot be drawn:"
        " draw less, or say at the bath shelf how much there is"
    )


def drawn_down(shelf: FromShelf, fact: e.Event) -> FromShelf:
    """The shelf after a fact of this day: a bath that was drawn from holds less, and one drawn whole is gone."""
    if not isinstance(fact, e.Drawn) or not fact.session:
        return shelf
    less = (_less(one, fact) if _is_of(one, fact) else one for one in shelf.baths)
    return replace(shelf, baths=tuple(one for one in less if one is not None))


def _is_of(bath: ShelfBath, drawn: e.Drawn) -> bool:
    return (bath.label, bath.session) == (drawn.label, drawn.session)


def _less(bath: ShelfBath, drawn: e.Drawn) -> ShelfBath | None:
    if drawn.volume_l is None or (bath.volume_l is not None and drawn.volume_l >= bath.volume_l - ROUNDING_L):
        return None
    return bath if bath.volume_l is None else replace(bath, volume_l=bath.volume_l - drawn.volume_l)


def next_in(state: State, shelf: FromShelf) -> str:
    """At the lift: what mordanted fibre could go into the bath that is still hot; "" when nothing waits for it.

    Today's own lots come first, then what waits on the shelf, the kind that was in the bath before others.
    """
    if state.status != "open":
        return ""
    for vessel in state.vessels:
        words = _waiting_for(state, shelf, vessel)
        if words:
            what = ", or ".join(words[:NAMED])
            return f"{letter(state, vessel.name)} is still hot: what goes in next? {what}"
    return ""


def _waiting_for(state: State, shelf: FromShelf, vessel: Vessel) -> list[str]:
    dyed = _dyed_in(state, vessel.name)
    if not dyed or vessel.bath is None or not _hot(state, vessel):
        return []
    if any(not one.snippet for one in state.lots_in(vessel.name)) or _more_to_come(state, vessel.name):
        return []
    kinds = {one.kind for one in state.lots if one.name in dyed}
    own = [_lot_words(one) for one in _own(state) if one.kind in kinds]
    others = sorted(shelf.fibre, key=lambda one: (one.kind not in kinds, one.since, one.lot))
    taken = {one.name for one in state.lots if one.mordanted}
    return own + [_fibre_words(one) for one in others if one.lot not in taken]


def _dyed_in(state: State, vessel: str) -> set[str]:
    """The lots dyed in a pot; none where it was saddened or otherwise modified: nothing else should go in there."""
    steps = [one for one in state.steps if one.plan.vessel == vessel and one.plan.stage in COLOURED]
    if any(one.plan.stage == "modify" and one.entered for one in steps):
        return set()
    return {lot for one in steps for lot in one.entered}


def _more_to_come(state: State, vessel: str) -> bool:
    """Whether a dyeing under way or to come in this pot enters its own fibre anyway."""
    steps = [one for one in state.steps if one.plan.vessel == vessel and one.plan.stage in COLOURED]
    return any(one.status not in ENDED and not one.entered for one in steps)


def _hot(state: State, vessel: Vessel) -> bool:
    degrees_c, _ = temperature(state, vessel)
    return vessel.on_heat or (degrees_c is not None and degrees_c >= HOT_C)


def _own(state: State) -> list[Lot]:
    """Today's lots that were mordanted and have a dye bath neither behind nor before them."""
    coloured = {lot for one in state.steps if one.plan.stage in COLOURED for lot in one.entered}
    mordanted = {lot for one in state.steps if one.plan.stage == "mordant" for lot in one.entered}
    return [
        one
        for one in state.lots
        if not one.snippet
        and one.name not in coloured
        and (one.mordanted or one.name in mordanted)
        and state.vessel(one.place) is None
    ]


def _lot_words(lot: Lot) -> str:
    how = f", mordanted: {lot.mordanted}" if lot.mordanted else ", mordanted today"
    return f"{lot.name}, {show_mass(lot.mass_g)} {lot.kind}{how}"


def _fibre_words(one: ShelfFibre) -> str:
    how = f" ({one.how})" if one.how else ""
    return f"{one.lot}, {show_mass(one.mass_g)} {one.kind}, mordanted {one.since}{how}"
