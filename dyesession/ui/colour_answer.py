"""What the day book answers to the state that Colour is in. Pure; the kitchen's jars are handed in for their prices."""

from collections.abc import Iterable
from dataclasses import replace

from dyesession.colour.mend import MODIFIERS, Lot
from dyesession.daybook.hit import Hit, Overdye, hit, overdyes, prices_of, seconds_of
from dyesession.daybook.shade_card import Near, lot_of, nearest_shades
from dyesession.errors import UserError
from dyesession.kitchen.model import Jar
from dyesession.ui.colour_state import NEAREST, ColourState


def answer(state: ColourState, jars: Iterable[Jar]) -> tuple[Hit | None, tuple[Near, ...], str]:
    """Whether the skein hit it, where there is one, the past colours nearest what is wanted, and why not."""
    if state.aim is None:
        return None, (), ""
    near = nearest_shades(state.shades or (), state.aim.middle, NEAREST)
    if state.sample is None:
        return None, near, ""
    try:
        return hit(state.aim, state.sample, state.undyed, _lot(state, jars)), near, ""
    except UserError as trouble:
        return None, near, str(trouble)


def overdyes_for(state: ColourState, jars: Iterable[Jar]) -> tuple[Overdye, ...]:
    """A further dip and the dyer's own other dyes over the skein, the best first. Raises as `plan_overdye` does."""
    if state.aim is None or state.sample is None:
        return ()
    lot = _lot(state, jars)
    seconds = seconds_of(state.shades or (), state.sample, lot.dye.dyestuff if lot is not None else "")
    return overdyes(state.undyed, state.sample, state.aim, seconds, lot)


def _lot(state: ColourState, jars: Iterable[Jar]) -> Lot | None:
    """The skein's fibre and dye where it is a logged one, with the jars' prices."""
    lot = lot_of(state.shade, state.shades or ()) if state.shade is not None else None
    if lot is None:
        return None
    return replace(lot, price_per_100_g=prices_of(jars, (lot.dye.dyestuff, *MODIFIERS)))
