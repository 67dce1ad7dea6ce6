"""Where the day stands: frozen data that the fold of the facts makes. Never an estimate, never a clock.

Times in here are session seconds: seconds since the log was opened, counted by the clock that counts
sleep where one run of the machine allows it. Volumes in litres, masses in grams, temperatures in °C.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from dyesession.clock import Instant, elapsed_s
from dyesession.plan.changes import Draws
from dyesession.plan.model import PlannedAddition, PlannedDose, PlannedStep
from dyesession.plan.words import letter_of

StepStatus = Literal["waiting", "running", "paused", "complete", "skipped", "stopped"]
SessionStatus = Literal["open", "stopped", "aborted", "complete"]
CountdownKind = Literal["rise", "hold", "cool", "rest"]

ENDED: frozenset[StepStatus] = frozenset({"complete", "skipped", "stopped"})
OUT_DRY, OUT_WET, DONE = "out dry", "out wet", "done"
JAR, SIEVE = "jar", "sieve"


@dataclass(frozen=True)
class Lot:
    """A lot of fibre or a snippet. `place` is a vessel's name or "out dry", "out wet", "done"."""

    name: str
    kind: str
    mass_g: float
    place: str = OUT_DRY
    snippet: bool = False
    wet_mass_g: float | None = None
    colour: str = ""
    mordanted: str = ""


@dataclass(frozen=True)
class Dyestuff:
    """A dyestuff as it goes through the day. `place` is "jar", a vessel's name or "sieve"."""

    name: str
    substance: str
    mass_g: float = 0.0
    place: str = JAR
    pulls: int = 0


@dataclass(frozen=True)
class Content:
    """An ingredient in a bath, and how much of it went in."""

    ingredient: str
    mass_g: float


@dataclass(frozen=True)
class PutIn:
    """What went in while a step was under way in that vessel; `step` is "" when none was."""

    step: str
    ingredient: str
    mass_g: float


@dataclass(frozen=True)
class Bath:
    """What is in a vessel. `volume_l` is None where no fact says it; `fresh` until fibre has been in."""

    number: int
    volume_l: float | None
    contents: tuple[Content, ...] = ()
    liquor_of: tuple[str, ...] = ()
    uses: int = 0


@dataclass(frozen=True)
class KeptBath:
    """A bath put by under a label."""

    label: str
    bath: Bath


@dataclass(frozen=True)
class Vessel:
    """A vessel by its name and letter; at most one bath in it."""

    name: str
    letter: str
    capacity_l: float | None = None
    material: str = ""
    bath: Bath | None = None
    on_heat: bool = False
    temperature_c: float | None = None
    temperature_s: float | None = None
    reached_c: float | None = None
    lid: bool | None = None


@dataclass(frozen=True)
class Countdown:
    """A deadline, not a ticking number: start plus minutes, moved by pauses and extensions."""

    key: str
    step: str
    vessel: str
    kind: CountdownKind
    target_c: float | None
    start_s: float
    length_s: float
    overnight: bool = False
    paused_at_s: float | None = None
    acknowledged_s: float | None = None
    raised: bool = False

    @property
    def deadline_s(self) -> float:
        """Session second at which it is due."""
        return self.start_s + self.length_s

    def left_s(self, now_s: float) -> float:
        """Seconds left at a session second; negative when overdue. Stands still while paused."""
        return self.deadline_s - (now_s if self.paused_at_s is None else self.paused_at_s)


@dataclass(frozen=True)
class StepState:
    """A planned step and how far it has come. `segment` counts the heating stretches already over.

    `draw` is the kept bath that goes in before its water; None where there is none, or it is in.
    """

    plan: PlannedStep
    status: StepStatus = "waiting"
    begun_s: float | None = None
    ended_s: float | None = None
    filled: bool = False
    added: int = 0
    entered: tuple[str, ...] = ()
    strained: bool = False
    segment: int = 0
    countdown: Countdown | None = None
    held_since_s: float | None = None
    why: str = ""
    draw: Draws | None = None

    @property
    def name(self) -> str:
        """The step's name."""
        return self.plan.name

    @property
    def next_addition(self) -> PlannedAddition | None:
        """The addition that comes next, or None when all are in."""
        return self.plan.add[self.added] if self.added < len(self.plan.add) else None


def to_come(plan: PlannedStep) -> StepState:
    """A planned step nobody has begun. Without a pot there is nothing to heat: only its rests are kept."""
    if plan.vessel is not None or all(one.kind == "rest" for one in plan.heat):
        return StepState(plan)
    return StepState(replace(plan, heat=tuple(one for one in plan.heat if one.kind == "rest")))


@dataclass(frozen=True)
class Flag:
    """An entry that no longer fits what came before it, and why. Kept, shown, never dropped."""

    n: int
    text: str


@dataclass(frozen=True)
class State:
    """The whole day as far as facts say. `free`: no recipe leads it, steps come as the dyer names them."""

    status: SessionStatus = "open"
    n: int = 0
    now_s: float = 0.0
    instant: Instant | None = None
    steps: tuple[StepState, ...] = ()
    lots: tuple[Lot, ...] = ()
    dyestuffs: tuple[Dyestuff, ...] = ()
    vessels: tuple[Vessel, ...] = ()
    kept: tuple[KeptBath, ...] = ()
    weighed: tuple[tuple[str, float], ...] = ()
    answered: tuple[str, ...] = ()
    put_off: tuple[tuple[str, float], ...] = ()
    baths_made: int = 0
    notes: tuple[str, ...] = ()
    flags: tuple[Flag, ...] = ()
    why: str = ""
    verdict: str = ""
    substances: tuple[tuple[str, str], ...] = ()
    doses: tuple[PlannedDose, ...] = ()
    put_in: tuple[PutIn, ...] = ()
    boiling_c: float = 100.0
    by_eye: bool = False
    cooling: float = 1.0
    free: bool = False
    burner: str = ""
    indoors: bool = True

    def seconds(self, now: Instant) -> float:
        """Session seconds at an instant: never less than those of the last entry."""
        return self.now_s if self.instant is None else self.now_s + elapsed_s(self.instant, now).seconds

    def step(self, name: str) -> StepState | None:
        """The step of that name."""
        return next((one for one in self.steps if one.name == name), None)

    def vessel(self, name: str | None) -> Vessel | None:
        """The vessel of that name."""
        return next((one for one in self.vessels if one.name == name), None)

    def lot(self, name: str) -> Lot | None:
        """The lot or snippet of that name."""
        return next((one for one in self.lots if one.name == name), None)

    def dyestuff(self, name: str) -> Dyestuff | None:
        """The dyestuff of that ingredient name."""
        return next((one for one in self.dyestuffs if one.name == name), None)

    def lots_in(self, vessel: str) -> tuple[Lot, ...]:
        """Lots and snippets in a vessel."""
        return tuple(one for one in self.lots if one.place == vessel)

    def running_in(self, vessel: str) -> StepState | None:
        """The step under way in a vessel, paused or not."""
        return next(
            (one for one in self.steps if one.plan.vessel == vessel and one.status in ("running", "paused")),
            None,
        )

    def ready(self, step: StepState) -> bool:
        """Whether every step this one comes after is over."""
        return step.status == "waiting" and all(self.over(name) for name in step.plan.after)

    def over(self, name: str) -> bool:
        """Whether a step has ended; one left out is over only when all that it came after is."""
        step = self.step(name)
        if step is None or step.status not in ENDED:
            return False
        return step.status != "skipped" or step.begun_s is not None or all(map(self.over, step.plan.after))

    def wanted_lots(self, step: StepState) -> tuple[str, ...]:
        """Names of the lots a step enters: "fibre" stands for every lot that is not a snippet."""
        names: list[str] = []
        for word in step.plan.enter:
            names += [one.name for one in self.lots if not one.snippet] if word == "fibre" else [word]
        return tuple(dict.fromkeys(names))

    def with_step(self, name: str, change: Callable[[StepState], StepState]) -> "State":
        """A copy with one step changed."""
        return replace(self, steps=tuple(change(one) if one.name == name else one for one in self.steps))

    def with_vessel(self, name: str, change: Callable[[Vessel], Vessel]) -> "State":
        """A copy with one vessel changed; a vessel not seen before is made, with the next letter."""
        state = self if self.vessel(name) else self._with_new_vessel(name)
        return replace(
            state, vessels=tuple(change(one) if one.name == name else one for one in state.vessels)
        )

    def with_lot(self, name: str, change: Callable[[Lot], Lot]) -> "State":
        """A copy with one lot changed."""
        return replace(self, lots=tuple(change(one) if one.name == name else one for one in self.lots))

    def with_dyestuff(self, name: str, change: Callable[[Dyestuff], Dyestuff]) -> "State":
        """A copy with one dyestuff changed."""
        changed = tuple(change(one) if one.name == name else one for one in self.dyestuffs)
        return replace(self, dyestuffs=changed)

    def flagged(self, text: str) -> "State":
        """A copy with a flag at the entry being applied."""
        return replace(self, flags=(*self.flags, Flag(self.n, text)))

    def _with_new_vessel(self, name: str) -> "State":
        return replace(self, vessels=(*self.vessels, Vessel(name, letter_of(len(self.vessels)))))
