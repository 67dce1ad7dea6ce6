"""What can happen at the stove, one frozen fact a class; `kind` is its name in the log.

Facts only: what was done, read, weighed or said. Knows nothing of files, clocks or estimates.
A field that is None is left out of the log. Units stand in the names; volumes in litres, masses in grams.
`how` is one of *weighed, read, matched, typed, planned, modelled, learned*.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any, ClassVar


@dataclass(frozen=True)
class Begun:
    """A step was begun; `reminders` are the sentences shown with it; `early` says why before its time."""

    kind: ClassVar[str] = "begun"
    step: str
    reminders: tuple[str, ...] = ()
    early: str = ""


@dataclass(frozen=True)
class Confirmed:
    """An Ask was answered with a reading or a pot's letter."""

    kind: ClassVar[str] = "confirmed"
    ask: str
    answer: str
    vessel: str = ""
    temperature_c: float | None = None


@dataclass(frozen=True)
class PutOff:
    """An Ask was answered "not now"."""

    kind: ClassVar[str] = "put-off"
    ask: str
    vessel: str = ""


@dataclass(frozen=True)
class Weighed:
    """A dose was weighed out but is not yet in a pot."""

    kind: ClassVar[str] = "weighed"
    ingredient: str
    mass_g: float
    resolution_g: float | None = None
    how: str = "weighed"


@dataclass(frozen=True)
class Soaked:
    """Dyestuff was put to soak."""

    kind: ClassVar[str] = "soaked"
    ingredient: str
    vessel: str
    volume_l: float | None = None


@dataclass(frozen=True)
class Dissolved:
    """A powder was dissolved before it goes in."""

    kind: ClassVar[str] = "dissolved"
    ingredient: str
    volume_l: float | None = None


@dataclass(frozen=True)
class Filled:
    """A vessel was filled with water."""

    kind: ClassVar[str] = "filled"
    vessel: str
    volume_l: float
    how: str = "planned"


@dataclass(frozen=True)
class Added:
    """An ingredient, or a portion of it, went into a vessel."""

    kind: ClassVar[str] = "added"
    ingredient: str
    vessel: str
    mass_g: float
    how: str = "planned"
    portion: str = ""


@dataclass(frozen=True)
class Lit:
    """The heat under a vessel was turned on or off."""

    kind: ClassVar[str] = "lit"
    vessel: str
    on: bool = True


@dataclass(frozen=True)
class Reached:
    """A vessel reached the temperature its step was rising or cooling to; a hold starts here."""

    kind: ClassVar[str] = "reached"
    vessel: str
    temperature_c: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class Read:
    """A reading: of a vessel, a lot or a dyestuff; only what was read carries a value.

    `strength` is relative, on one linear scale; `against` names what it was compared with.
    """

    kind: ClassVar[str] = "read"
    vessel: str = ""
    lot: str = ""
    temperature_c: float | None = None
    ph: float | None = None
    volume_l: float | None = None
    mass_g: float | None = None
    strength: float | None = None
    against: str = ""
    colour: str = ""
    wet: bool | None = None
    how: str = "read"


@dataclass(frozen=True)
class Paused:
    """A step's countdown was stopped for a while."""

    kind: ClassVar[str] = "paused"
    step: str
    why: str = ""


@dataclass(frozen=True)
class Resumed:
    """A paused step goes on."""

    kind: ClassVar[str] = "resumed"
    step: str


@dataclass(frozen=True)
class Extended:
    """A step's running countdown was made longer."""

    kind: ClassVar[str] = "extended"
    step: str
    minutes: float


@dataclass(frozen=True)
class Strained:
    """The liquor of a vessel was strained into another; the spent dyestuff stays in the sieve."""

    kind: ClassVar[str] = "strained"
    vessel: str
    into: str
    volume_l: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class Refreshed:
    """Fresh water was given to strained dyestuff, to extract again."""

    kind: ClassVar[str] = "refreshed"
    vessel: str
    volume_l: float
    how: str = "planned"


@dataclass(frozen=True)
class Pooled:
    """All or some of one bath was poured into another."""

    kind: ClassVar[str] = "pooled"
    vessel: str
    into: str
    volume_l: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class ToppedUp:
    """Water was added: up to a level (`to_l`) or by a volume."""

    kind: ClassVar[str] = "topped-up"
    vessel: str
    to_l: float | None = None
    volume_l: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class Entered:
    """A fibre lot went into a vessel."""

    kind: ClassVar[str] = "entered"
    lot: str
    vessel: str


@dataclass(frozen=True)
class Lifted:
    """A fibre lot or snippet came out, weighed wet or not."""

    kind: ClassVar[str] = "lifted"
    lot: str
    vessel: str
    wet_mass_g: float | None = None


@dataclass(frozen=True)
class Dipped:
    """A snippet of the same fibre went into a vessel."""

    kind: ClassVar[str] = "dipped"
    snippet: str
    vessel: str


@dataclass(frozen=True)
class OnShade:
    """The eye ended a dye step."""

    kind: ClassVar[str] = "on-shade"
    step: str
    why: str = ""


@dataclass(frozen=True)
class Finished:
    """A step is done."""

    kind: ClassVar[str] = "finished"
    step: str


@dataclass(frozen=True)
class Skipped:
    """A step is left out, and why."""

    kind: ClassVar[str] = "skipped"
    step: str
    why: str


@dataclass(frozen=True)
class Kept:
    """A bath was put by under a label."""

    kind: ClassVar[str] = "kept"
    vessel: str
    label: str
    volume_l: float | None = None


@dataclass(frozen=True)
class Drawn:
    """A kept bath, or some of it, was poured in; what is in it is copied here."""

    kind: ClassVar[str] = "drawn"
    vessel: str
    label: str
    session: str = ""
    volume_l: float | None = None
    contents: tuple[str, ...] = ()


@dataclass(frozen=True)
class Discarded:
    """A bath was thrown away: the one in a vessel, or a kept one by its label."""

    kind: ClassVar[str] = "discarded"
    vessel: str = ""
    label: str = ""


@dataclass(frozen=True)
class Replanned:
    """The plan changed at the stove, and why. What was done stays; `changes` holds what is left to do now.

    `change` is one of: "refresh" (one extraction more, after the strain `step`); "lot joins" (`lot` of
    `mass_g` of the fibre `fibre`, `mordanted` when it needs no mordant); "lot weight" (`lot` weighs
    `mass_g`); "dose" (`mass_g` of `ingredient` in all; `value` is the per cent of fibre, where it was said
    so); "step" (a stage comes in, named `step`); "recipe left" (the rest of the day is done freely).
    The tables of `changes` are those of `plan.changes`, worked out when the change was decided.
    """

    kind: ClassVar[str] = "replanned"
    change: str
    step: str = ""
    why: str = ""
    value: float | None = None
    lot: str = ""
    fibre: str = ""
    mass_g: float | None = None
    mordanted: str = ""
    ingredient: str = ""
    changes: tuple[Mapping[str, Any], ...] = ()


@dataclass(frozen=True)
class Noted:
    """A note in the dyer's words."""

    kind: ClassVar[str] = "noted"
    text: str
    step: str = ""


@dataclass(frozen=True)
class Corrected:
    """An earlier entry was wrong: `changes` sets fields of it, or `strike` takes it out; and why."""

    kind: ClassVar[str] = "corrected"
    entry: int
    why: str
    strike: bool = False
    changes: tuple[Mapping[str, Any], ...] = ()


@dataclass(frozen=True)
class Acknowledged:
    """ "I have seen it": a prompt or alarm was answered."""

    kind: ClassVar[str] = "acknowledged"
    countdown: str


@dataclass(frozen=True)
class Stopped:
    """The day was ended early in good order."""

    kind: ClassVar[str] = "stopped"
    why: str


@dataclass(frozen=True)
class Aborted:
    """The day was broken off for safety; it needs clearing before it goes on."""

    kind: ClassVar[str] = "aborted"
    why: str


@dataclass(frozen=True)
class Cleared:
    """The trouble that broke the day off is over."""

    kind: ClassVar[str] = "cleared"


@dataclass(frozen=True)
class Closed:
    """The day is done. `entries` counts what stands above, so that a missing end shows."""

    kind: ClassVar[str] = "closed"
    verdict: str = ""
    entries: int | None = None


@dataclass(frozen=True)
class Cared:
    """Aftercare: dry shade, second wash, rub or window test."""

    kind: ClassVar[str] = "cared"
    what: str
    lot: str = ""
    result: str = ""
    colour: str = ""


@dataclass(frozen=True)
class Accounted:
    """The program's testimony: what the dyer was shown after entry `after`. The fold ignores it."""

    kind: ClassVar[str] = "account"
    after: int
    baths: tuple[Mapping[str, Any], ...] = ()
    dyestuffs: tuple[Mapping[str, Any], ...] = ()
    fibres: tuple[Mapping[str, Any], ...] = ()
    how: str = "modelled"


@dataclass(frozen=True)
class ResumedAfterGap:
    """The program was opened again, or the machine woke."""

    kind: ClassVar[str] = "resumed-after-gap"
    away_s: float
    by: str = ""


@dataclass(frozen=True)
class ClockChanged:
    """The wall clock moved against the clock that counts sleep."""

    kind: ClassVar[str] = "clock-changed"
    by_s: float


@dataclass(frozen=True)
class Recovered:
    """A torn end of the file was set aside."""

    kind: ClassVar[str] = "recovered"
    bytes_aside: int
    aside: str = ""


@dataclass(frozen=True)
class AlarmRaised:
    """A pot was left longer than it should be, and the program called."""

    kind: ClassVar[str] = "alarm-raised"
    countdown: str
    vessel: str = ""
    over_s: float = 0.0


@dataclass(frozen=True)
class Unknown:
    """An entry this program does not know; kept as it stands."""

    kind: ClassVar[str] = "unknown"
    name: str
    data: tuple[tuple[str, Any], ...] = ()


Event = (
    Begun | Confirmed | PutOff | Weighed | Soaked | Dissolved | Filled | Added | Lit | Reached | Read
    | Paused | Resumed | Extended | Strained | Refreshed | Pooled | ToppedUp | Entered | Lifted | Dipped
    | OnShade | Finished | Skipped | Kept | Drawn | Discarded | Replanned | Noted | Corrected
    | Acknowledged | Stopped | Aborted | Cleared | Closed | Cared
    | Accounted | ResumedAfterGap | ClockChanged | Recovered | AlarmRaised | Unknown
)  # fmt: skip

KINDS: dict[str, type[Any]] = {one.kind: one for one in Event.__args__ if one is not Unknown}
PROGRAM_KINDS = frozenset({"account", "resumed-after-gap", "clock-changed", "recovered", "alarm-raised"})


def event_fields(event: Event) -> dict[str, Any]:
    """The event as plain log fields, those that are None or empty left out."""
    if isinstance(event, Unknown):
        return dict(event.data)
    values = {one.name: getattr(event, one.name) for one in fields(event)}
    return {
        name: list(value) if isinstance(value, tuple) else value
        for name, value in values.items()
        if value is not None and value != () and value != ""
    }


def event_from_fields(kind: str, data: Mapping[str, Any]) -> Event:
    """The event a log entry holds; `Unknown` where this program does not know the kind or its keys."""
    made = KINDS.get(kind)
    if made is None:
        return Unknown(kind, tuple(data.items()))
    known = {one.name for one in fields(made)}
    try:
        event: Event = made(
            **{k: tuple(v) if isinstance(v, list) else v for k, v in data.items() if k in known}
        )
    except TypeError:
        return Unknown(kind, tuple(data.items()))
    return event
