"""What the pots, the liquor and the fibre forbid: one sentence for every fact that does not fit them, else
None.

Pure. Part of `fit`, which puts it together with what the steps and the day forbid.
"""

from collections.abc import Callable
from typing import Any

from dyesession.session import events as e
from dyesession.session.state import SIEVE, State
from dyesession.units import show_volume


def _bath(state: State, name: str) -> str | None:
    vessel = state.vessel(name)
    if vessel is None:
        return f'there is no vessel "{name}": {_vessel_names(state)}'
    return None if vessel.bath else f"there is nothing in the {name}: fill it first"


def _vessel_names(state: State) -> str:
    names = ", ".join(f"{one.letter} {one.name}" for one in state.vessels)
    return f"the vessels are {names}" if names else "none is in use yet"


def _filled(state: State, event: e.Filled) -> str | None:
    vessel = state.vessel(event.vessel)
    if vessel is not None and vessel.bath is not None:
        return f"the {event.vessel} already holds a bath: top it up, keep it or discard it first"
    return None


def _lifted_first(state: State, event: e.Added | e.Drawn) -> str | None:
    lots = [one.name for one in state.lots_in(event.vessel) if not one.snippet]
    if lots:
        return f"lift {' and '.join(lots)} out of the {event.vessel} before anything is added"
    return None


def _drawn(state: State, event: e.Drawn) -> str | None:
    kept = next((one for one in state.kept if one.label == event.label), None)
    there_l = kept.bath.volume_l if kept is not None else None
    if there_l is not None and event.volume_l is not None and event.volume_l > there_l + ROUNDING_L:
        return (
            f"the kept bath {event.label} holds {show_volume(there_l)}, so {show_volume(event.volume_l)}"
            " cannot be drawn: draw less, or correct its volume first"
        )
    return _lifted_first(state, event)


ROUNDING_L = 5e-4  # a volume shown to the half millilitre may be drawn whole


def _strained(state: State, event: e.Strained) -> str | None:
    if event.vessel == event.into:
        return f"the {event.vessel} cannot be strained into itself: name another vessel"
    if trouble := _bath(state, event.vessel):
        return trouble
    lots = [one.name for one in state.lots_in(event.vessel)]
    return f"lift {' and '.join(lots)} out of the {event.vessel} before it is strained" if lots else None


def _refreshed(state: State, event: e.Refreshed) -> str | None:
    vessel = state.vessel(event.vessel)
    if vessel is not None and vessel.bath is not None:
        return f"the {event.vessel} still holds liquor: strain it first"
    if not any(one.place == SIEVE for one in state.dyestuffs):
        return "no strained dyestuff is waiting in the sieve to be extracted again"
    return None


def _pooled(state: State, event: e.Pooled) -> str | None:
    if event.vessel == event.into:
        return f"the {event.vessel} cannot be poured into itself: name another vessel"
    trouble = _bath(state, event.vessel)
    if trouble or event.volume_l is not None:
        return trouble
    return _emptied(state, event.vessel)


def _emptied(state: State, name: str) -> str | None:
    if trouble := _bath(state, name):
        return trouble
    lots = [one.name for one in state.lots_in(name)]
    return f"lift {' and '.join(lots)} out of the {name} first" if lots else None


def _discarded(state: State, event: e.Discarded) -> str | None:
    if event.vessel:
        return _emptied(state, event.vessel)
    labels = [one.label for one in state.kept]
    if event.label in labels:
        return None
    return f'no kept bath is labelled "{event.label}": kept are {", ".join(labels) or "none"}'


def _topped_up(state: State, event: e.ToppedUp) -> str | None:
    if event.to_l is None and event.volume_l is None:
        return "say how much water was added, or up to which mark, for example 7.2 L"
    return _bath(state, event.vessel)


def _entered(state: State, event: e.Entered) -> str | None:
    lot = state.lot(event.lot)
    if lot is None:
        return f'there is no lot "{event.lot}": the lots are {", ".join(one.name for one in state.lots)}'
    if lot.place == event.vessel:
        return f"{event.lot} is already in the {event.vessel}"
    if state.vessel(lot.place):
        return f"{event.lot} is in the {lot.place}: lift it first"
    return None


def _lifted(state: State, event: e.Lifted) -> str | None:
    lot = state.lot(event.lot)
    if lot is None or lot.place != event.vessel:
        return f"{event.lot} is not in the {event.vessel}, so it cannot be lifted from there"
    if event.wet_mass_g is not None and event.wet_mass_g < lot.mass_g * _LIGHTEST_WET:
        return (
            f"{event.wet_mass_g:g} g is less than {event.lot} weighs dry ({lot.mass_g:g} g): "
            "weigh it again, or keep it as a note"
        )
    return None


# Air-dry wool at 18.25 % regain is 0.85 of its weight bone dry (EU Reg. 1007/2011 Annex IX): below that no
# fibre can weigh, wet or dry.
_LIGHTEST_WET = 0.84


def _dipped(state: State, event: e.Dipped) -> str | None:
    lot = state.lot(event.snippet)
    if lot is not None and state.vessel(lot.place):
        return f"{event.snippet} is in the {lot.place}: lift it first"
    return _bath(state, event.vessel)


def _reached(state: State, event: e.Reached) -> str | None:
    if state.vessel(event.vessel) is None:
        return f'there is no vessel "{event.vessel}": {_vessel_names(state)}'
    return None


def _read(state: State, event: e.Read) -> str | None:
    if event.vessel and state.vessel(event.vessel) is None:
        return f'there is no vessel "{event.vessel}": {_vessel_names(state)}'
    return None


CHECKS: dict[str, Callable[[State, Any], str | None]] = {
    "filled": _filled,
    "added": _lifted_first,
    "drawn": _drawn,
    "strained": _strained,
    "refreshed": _refreshed,
    "pooled": _pooled,
    "topped-up": _topped_up,
    "entered": _entered,
    "lifted": _lifted,
    "dipped": _dipped,
    "reached": _reached,
    "read": _read,
    "kept": lambda state, event: _emptied(state, event.vessel),
    "discarded": _discarded,
}
