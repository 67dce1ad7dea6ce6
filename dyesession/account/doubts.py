"""Figures that can hardly be: one question in words before such a figure is logged, and what to log if the dyer
insists.

Pure. Nothing is clipped: a figure is asked about, and one insisted on is kept as a note, which the account tells
and does not reckon with. Bounds that need the account (how much a pot can hold by now) come from its bands.
"""

from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from typing import Any

from dyesession.account.estimate import Behind
from dyesession.account.model import Account
from dyesession.account.strengths import FRESH, sample_of, strain_named
from dyesession.dyeing.strength import UNLIKE_WARMTH_C
from dyesession.session import events as e
from dyesession.session.fit import misfit
from dyesession.session.state import OUT_WET, State
from dyesession.session.typed_strength import COOLED

ROOM_C = 20.0
JUG = 1.05  # a jug may overstate by so much before a volume is doubted: its usual error, no source
LEAST_L = 0.05
MANY_TIMES = 3.0  # a level so many times what went in is doubted: less may be water nobody wrote down; our own choice, no source
MEASURES: Mapping[str, str] = {
    "mass_g": "g",
    "wet_mass_g": "g",
    "volume_l": "L",
    "to_l": "L",
    "strength": "",
    "ph": "",
}
ORDINAL = ("", "first", "second", "third", "fourth", "fifth", "sixth")

Doubt = Callable[[Account, State, Any], str | None]


def doubts(account: Account, state: State, event: e.Event) -> str | None:
    """One question about a figure that can hardly be, or None. Ask it before the event is done.

    When the dyer insists, do `kept_as_note(event, question)` instead of the event.
    """
    if question := _below_nought(event):
        return question
    asked = (check(account, state, event) for check in _CHECKS.get(event.kind, ()))
    return next((one for one in asked if one), None)


def first_asked(account: Account, state: State, event: e.Event) -> str | None:
    """The question to ask before an act is done or refused; None where there is none, or where the act would be
    refused without its doubted figure too.
    """
    question = doubts(account, state, event)
    if question is None or misfit(state, event) is None:
        return question
    return question if misfit(state, kept_as_note(event, question)[0]) is None else None


def kept_as_note(event: e.Event, question: str) -> tuple[e.Event, ...]:
    """What to do when a doubted figure is insisted on: the act without its figure, where there was one, and a
    note of what was read, which nothing is reckoned with.
    """
    note = e.Noted(_as_text(event), doubted=question)
    if isinstance(event, e.Lifted):
        return (replace(event, wet_mass_g=None), note)
    if isinstance(event, e.Strained | e.Pooled):
        return (replace(event, volume_l=None, how="planned"), note)
    if isinstance(event, e.Kept):
        return (replace(event, volume_l=None), note)
    return (note,)


def _as_text(event: e.Event) -> str:
    says = {name: value for name, value in e.event_fields(event).items() if name != "how"}
    about = " ".join(str(says.pop(name)) for name in ("lot", "vessel", "ingredient") if name in says)
    figures = ", ".join(f"{_name(name)} {_figure(value)}{_unit(name)}" for name, value in says.items())
    return f"{about}: {figures}" if about else figures


def _figure(value: object) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)


def _name(field: str) -> str:
    return field.removesuffix("_g").removesuffix("_l").removesuffix("_c").replace("_", " ")


def _unit(field: str) -> str:
    unit = MEASURES.get(field, "°C" if field == "temperature_c" else "")
    return f" {unit}" if unit else ""


def _below_nought(event: e.Event) -> str | None:
    if isinstance(event, e.Unknown):
        return None
    for field in fields(event):
        value = getattr(event, field.name)
        wrong = isinstance(value, int | float) and not isinstance(value, bool) and value < 0
        if wrong and (field.name in MEASURES or field.name == "temperature_c"):
            figure, other = (f"{one:g}{_unit(field.name)}" for one in (value, -value))
            than = "ice" if field.name == "temperature_c" else "nothing"
            return f"{figure} is {'colder' if than == 'ice' else 'less'} than {than}: was it {other}?"
    return None


def _rising(account: Account, state: State, event: e.Read) -> str | None:
    """A strain no weaker than the one before it, or a bath stronger after its fibre than before."""
    behind = account.behind
    if event.strength is None or not isinstance(behind, Behind) or not event.vessel:
        return None
    sample = sample_of(behind.held, event.vessel, state)
    beside = strain_named(event.against)
    if sample is not None and event.strength > 1.0 and FRESH.search(event.against.casefold()):
        return (
            f"{100 * event.strength:.0f} % of what the {event.vessel} was before its fibre: it should be weaker now."
            " Were the glasses the right way round?"
        )
    if sample is None or sample.strain <= 1 or not beside:
        return None
    was = _read_before(account, sample.lot, sample.strain, beside)
    if was is None or event.strength < was:
        return None
    return _not_weaker(sample.strain, event.strength, was, beside)


def _read_before(account: Account, lot: str, number: int, beside: int) -> float | None:
    """The strength of the strain before, on the scale of the strain it is compared with."""
    if beside == number - 1:
        return 1.0
    read = [
        one.strength
        for one in account.strengths
        if one.lot == lot and one.strain == number - 1 and one.against_strain == beside
    ]
    return read[-1] if read else 1.0 if beside < number else None


def _not_weaker(number: int, strength: float, was: float, beside: int) -> str:
    name, before = _ordinal(number), _ordinal(number - 1)
    against = (
        ""
        if beside == number - 1
        else f" of the {_ordinal(beside)}, which the {before} had at {100 * was:.0f} %"
    )
    scale = f"{100 * strength:.0f} % of the {before}" if not against else f"{100 * strength:.0f} %{against}"
    return f"The {name} strain at {scale}: each should be weaker than the one before. Were the glasses the right way round?"


def _ordinal(number: int) -> str:
    return ORDINAL[number] if number < len(ORDINAL) else f"{number}th"


def _unlike_warmth(account: Account, state: State, event: e.Read) -> str | None:
    """Liquors compared hot with cold: a strain or a sample set aside is taken as cooled."""
    behind = account.behind
    if event.strength is None or not event.against or not isinstance(behind, Behind) or COOLED in event.method:
        return None
    if event.vessel not in behind.held.baths:
        return None
    mine_c, other_c = behind.held.bath(event.vessel).temperature_c, ROOM_C
    other = next(
        (
            one
            for one in state.vessels
            if event.against.casefold() in (one.name.casefold(), one.letter.casefold())
        ),
        None,
    )
    if other is not None and other.name in behind.held.baths:
        other_c = behind.held.bath(other.name).temperature_c
    if abs(mine_c - other_c) <= UNLIKE_WARMTH_C:
        return None
    return (
        f"The {event.vessel} is at about {mine_c:.0f} °C and {event.against} at about {other_c:.0f} °C: were both samples"
        " as warm when you compared them? Let them stand until they are; if they had, type “cooled” behind it"
    )


def _more_than_there(account: Account, state: State, event: e.Strained | e.Pooled | e.Kept) -> str | None:
    """More poured out of a pot than can be in it."""
    bath = account.bath(event.vessel)
    if event.volume_l is None or bath is None:
        return None
    most = bath.volume_l.high * JUG + LEAST_L
    if event.volume_l <= most:
        return None
    return (
        f"{event.volume_l:g} L out of the {event.vessel}, and by all that went in it holds no more than"
        f" {bath.volume_l.high:.1f} L: was the jug read right?"
    )


def _far_more(account: Account, state: State, event: e.Read) -> str | None:
    """A level many times what can be in the pot, where its brim is not known."""
    bath, vessel = account.bath(event.vessel), state.vessel(event.vessel)
    if event.volume_l is None or bath is None or (vessel is not None and vessel.capacity_l is not None):
        return None
    if event.volume_l <= bath.volume_l.high * MANY_TIMES + LEAST_L:
        return None
    return (
        f"{event.volume_l:g} L in the {event.vessel}, and by all that went in it holds no more than"
        f" {bath.volume_l.high:.1f} L: is that the figure meant?"
    )


def _over_brim(account: Account, state: State, event: Any) -> str | None:
    """A level above the brim of its pot."""
    litres = max(
        (value for name in ("volume_l", "to_l") if (value := getattr(event, name, None)) is not None),
        default=None,
    )
    vessel = state.vessel(getattr(event, "vessel", ""))
    if litres is None or vessel is None or vessel.capacity_l is None or litres <= vessel.capacity_l:
        return None
    return f"{litres:g} L in the {vessel.name}, whose brim is at {vessel.capacity_l:g} L: is that the figure meant?"


def _into_over_brim(account: Account, state: State, event: e.Strained | e.Pooled) -> str | None:
    """More poured into a pot than it holds."""
    vessel, there = state.vessel(event.into), account.bath(event.into)
    if event.volume_l is None or vessel is None or vessel.capacity_l is None:
        return None
    all_l = event.volume_l + (there.volume_l.low if there is not None else 0.0)
    if all_l <= vessel.capacity_l:
        return None
    return f"That makes {all_l:.1f} L in the {event.into}, whose brim is at {vessel.capacity_l:g} L: is that the figure meant?"


def _lighter_than_dry(account: Account, state: State, event: e.Lifted | e.Read) -> str | None:
    """Wet fibre that weighs less than it does dry."""
    lot = state.lot(event.lot)
    wet_g = event.wet_mass_g if isinstance(event, e.Lifted) else event.mass_g
    if lot is None or wet_g is None or wet_g >= lot.mass_g:
        return None
    if isinstance(event, e.Read) and lot.place != OUT_WET:
        return None
    return f"{wet_g:g} g wet, and the {lot.name} weighs {lot.mass_g:g} g dry: was the scale set to nought with the bowl on it?"


_CHECKS: Mapping[str, tuple[Doubt, ...]] = {
    "read": (_over_brim, _far_more, _lighter_than_dry, _rising, _unlike_warmth),
    "strained": (_more_than_there, _into_over_brim),
    "pooled": (_more_than_there, _into_over_brim),
    "kept": (_more_than_there,),
    "filled": (_over_brim,),
    "refreshed": (_over_brim,),
    "topped-up": (_over_brim,),
    "lifted": (_lighter_than_dry,),
}
