"""One demo day: a real session on a stepping clock, done as an invented dyer does it, then marked as demo.

Readings of heat and water are modelled (`rehearsal.world`); strengths, colours and verdicts are invented. The
log is copied under a name of its own with `demo = true` in its head, so that nobody takes it for a day that was
dyed.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path

from dyesession.account import Account
from dyesession.account.live import LiveReckoner
from dyesession.account.testimony import accounted
from dyesession.clock import Instant, SteppingClock
from dyesession.kitchen.model import Kitchen
from dyesession.plan import work_out
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe.model import Recipe
from dyesession.rehearsal import dyer
from dyesession.rehearsal.world import World
from dyesession.session import events as e
from dyesession.session import log
from dyesession.session.asking import Ask
from dyesession.session.fold import Entry
from dyesession.session.opening import begin_day, begin_improvised, resume_day
from dyesession.session.session import Session
from dyesession.session.state import State
from dyesession.session.suggest import Suggestion, Wait, suggest
from dyesession.session.typed import Hand, understand
from dyesession.storage import Storage

MOST_MOVES = 2000
STUCK_S = 600.0
EYE_ERRORS = (1.04, 0.95, 1.07, 0.97)  # of a strength matched by eye; invented
# Facts after which the account is told to the log.
TOLD_AFTER = frozenset({"strained", "lifted", "kept", "closed", "corrected"})
DAY_S = 86400.0
DAYS_KEPT = 2.0

Hook = Callable[["DemoDay", Suggestion], bool]


@dataclass
class DemoDay:
    """A day under way. `hooks` look at each suggestion first; one that answers True has done something."""

    storage: Storage
    folder: Path
    clock: SteppingClock
    kitchen: Kitchen
    session: Session[Account]
    hooks: list[Hook] = field(default_factory=list)
    verdict: str = ""
    world: World = field(default_factory=World)

    def do(self, *facts: e.Event) -> None:
        """Record facts, each with the time an act takes."""
        for fact in facts:
            before, now_s = self.session.snapshot.state, self.session.now_s()
            self.session.do(fact).result()
            self.world.after(fact, before, now_s)
            self.clock.advance(dyer.TAKES_MIN.get(fact.kind, dyer.USUAL_MIN) * 60)

    def say(self, stage: str) -> None:
        """A stage named at the stove, as it is typed."""
        self.do(understand("stage", stage, self.session.snapshot.state, Hand()).event)

    def last_n(self, kind: type[object]) -> int:
        """The number of the last entry of that kind."""
        entries = self.session.snapshot.entries
        return next(one.n for one in reversed(entries) if isinstance(one.event, kind))

    def until(self, over: Callable[["DemoDay"], bool]) -> None:
        """Do what is suggested until something holds. Raises RuntimeError for a day that never gets there."""
        for _ in range(MOST_MOVES):
            if over(self):
                return
            self._move(suggest(self.session.snapshot.state, self.session.now_s(), self.session.household))
        raise RuntimeError(f"{self.session.snapshot.name} does not get there in {MOST_MOVES} moves")

    def to_the_end(self) -> None:
        """Do what is suggested until the day is closed."""
        self.until(lambda day: day.session.snapshot.state.status == "complete")

    def step_over(self, name: str) -> None:
        """Do what is suggested until that step is over and its fibre is out of the pot."""
        self.until(lambda day: _over(day.session.snapshot.state, name))

    def power_cut(self, hours: float) -> None:
        """The machine goes dark and the day is taken up again hours later."""
        path = Path(self.session.snapshot.path)
        self.session.close()
        self.clock.reboot(hours * 3600)
        self.session = resume_day(self.storage, path, self.clock, self.kitchen.household, Sparing)

    def days_later(self, days: float, *facts: e.Event) -> None:
        """Aftercare, days after the close."""
        self.clock.advance(days * DAY_S)
        self.do(*facts)

    def throw_away(self, but: str = "") -> None:
        """Empty the jars on the shelf a while after, all but one whose label has that word."""
        kept = self.session.snapshot.state.kept
        gone = [e.Discarded(label=one.label) for one in kept if not but or but not in one.label]
        self.days_later(DAYS_KEPT, *gone)

    def _move(self, suggestion: Suggestion) -> None:
        for hook in tuple(self.hooks):
            if hook(self, suggestion):
                return
        state, now_s = self.session.snapshot.state, self.session.now_s()
        if isinstance(suggestion, Wait):
            until_s = suggestion.until_s if suggestion.until_s is not None else now_s + STUCK_S
            self.clock.advance(max(1.0, until_s - now_s))
            self.session.tick().result()
        elif isinstance(suggestion, Ask):
            self.do(dyer.answer(suggestion, self.world, now_s, self.kitchen))
        elif isinstance(suggestion, e.Closed):
            self.do(e.Closed(self.verdict))
        else:
            self.do(*dyer.facts_for(suggestion, state, self.world, self.kitchen, now_s))

    def marked(self, name: str, into: Path) -> Path:
        """Let go of the day and copy its log under the demo's own name, marked in its head."""
        path = Path(self.session.snapshot.path)
        self.session.close()
        contents = log.read_log(self.storage, path)
        ours = {"format", "session", "seal", "event"}
        header = {key: value for key, value in contents.header.items() if key not in ours}
        writer = log.create_log(self.storage, into, name, {"demo": True, **header})
        try:
            for one in contents.entries:
                writer.append(one.kind, one.instant, one.fields, one.happened)
        finally:
            writer.close()
        return into / f"{name}.toml"


def _over(state: State, name: str) -> bool:
    step = state.step(name)
    return step is not None and step.ended_s is not None and not state.lots_in(step.plan.vessel or "")


def by_recipe(
    storage: Storage, folder: Path, recipe: Recipe, lots: Sequence[FibreLot], kitchen: Kitchen, start: datetime
) -> DemoDay:
    """A day by a recipe, begun."""
    clock = SteppingClock(start)
    plan = work_out(recipe, lots, kitchen)
    session = begin_day(storage, folder, recipe, plan, kitchen, clock, Sparing)
    return DemoDay(storage, folder, clock, kitchen, session)


def without_recipe(
    storage: Storage, folder: Path, name: str, lots: Sequence[FibreLot], kitchen: Kitchen, start: datetime
) -> DemoDay:
    """An improvised day, begun."""
    clock = SteppingClock(start)
    session = begin_improvised(storage, folder, lots, kitchen, clock, Sparing, name=name)
    return DemoDay(storage, folder, clock, kitchen, session)


class Sparing:
    """The account of a demo day, told to the log only where something came to an end: demo logs stay small."""

    def __init__(self, plan: Plan, opened: Instant) -> None:
        self._reckoner = LiveReckoner(plan, opened)
        self._account, _ = self._reckoner(())

    def __call__(self, entries: tuple[Entry, ...]) -> tuple[Account, e.Accounted | None]:
        """The account as it was last told, and what to write down of it, if this is a moment for it."""
        if not entries or not _worth_telling(entries[-1].event):
            return self._account, None
        self._account, _ = self._reckoner(entries)
        return self._account, accounted(self._account, entries[-1].n)


def _worth_telling(event: e.Event) -> bool:
    return event.kind in TOLD_AFTER or (isinstance(event, e.Read) and event.strength is not None)


@dataclass
class StrengthReader:
    """A dyer who holds each further strain beside the first, and the used bath beside the fresh one.

    `keeps` is the invented share of its colour that the dyestuff keeps per extraction, `takes` the share
    that the fibre takes; an eye's error comes on top, the same every time.
    """

    keeps: float
    takes: float
    _read: set[tuple[str, int]] = field(default_factory=set)

    def __call__(self, day: DemoDay, suggestion: Suggestion) -> bool:
        """Read before a further strain, and before the dye bath is put by."""
        if not isinstance(suggestion, e.Strained | e.Kept):
            return False
        state = day.session.snapshot.state
        pulls = next((one.pulls for one in state.dyestuffs if one.place == suggestion.vessel), 0)
        vessel = state.vessel(suggestion.vessel)
        if isinstance(suggestion, e.Strained):
            share, against = self.keeps**pulls, "first strain"
        else:
            share, against = 1.0 - self.takes, "before"
            pulls = 1 if vessel is not None and vessel.bath is not None and vessel.bath.liquor_of else 0
        key = (suggestion.vessel, pulls)
        if not pulls or key in self._read:
            return False
        self._read.add(key)
        error = EYE_ERRORS[len(self._read) % len(EYE_ERRORS)]
        read = e.Read(suggestion.vessel, strength=round(share * error, 2), against=against, how="matched")
        day.do(read)
        return True


def misreads(ingredient: str, shown_g: float) -> Hook:
    """The dyer writes a wrong weight down once."""
    done: list[bool] = []

    def hook(day: DemoDay, suggestion: Suggestion) -> bool:
        if done or not isinstance(suggestion, e.Added) or suggestion.ingredient != ingredient:
            return False
        done.append(True)
        day.do(e.Added(ingredient, suggestion.vessel, shown_g, "weighed", suggestion.portion))
        return True

    return hook
