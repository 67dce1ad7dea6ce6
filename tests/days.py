"""Plans and days that several rooms' tests share: our own invented madder day, built by hand."""

from dataclasses import replace
from datetime import datetime, timedelta, timezone

from dyesession.care import Household
from dyesession.clock import Instant, SteppingClock
from dyesession.plan.model import (
    Band,
    FibreLot,
    Plan,
    PlannedAddition,
    PlannedDose,
    PlannedStep,
    PlannedVessel,
    Weigh,
)
from dyesession.recipe.model import Heat, Judge
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.engine import decide
from dyesession.session.fold import Entry, apply, opening_state
from dyesession.session.state import State
from dyesession.session.suggest import Wait, suggest

MORNING = datetime(2026, 3, 14, 9, 2, 11, tzinfo=timezone(timedelta(hours=1)))
NOBODY = Household()


def to(temperature_c: float, minutes: float) -> Heat:
    return Heat("to", temperature_c, minutes)


def hold(minutes: float) -> Heat:
    return Heat("hold", minutes=minutes)


def dose(ingredient: str, substance: str, role: str, percent: float, mass_g: float) -> PlannedDose:
    band = Band(mass_g, mass_g, mass_g)
    weigh = Weigh("scale", 0.65, f"weigh {mass_g:g} g")
    return PlannedDose(ingredient, substance, role, Band(percent, percent, percent), band, weigh)  # type: ignore[arg-type]


def madder_plan() -> Plan:
    """240 g of grey-faced handspun for mittens, in two skeins: a madder brick red."""
    pulls: list[PlannedStep] = []
    for again, (extract, strain) in enumerate(
        [("extract", "strain"), ("extract again", "strain again"), ("extract 3", "strain 3")]
    ):
        pulls.append(
            PlannedStep(
                extract,
                "extract",
                "liquor",
                "extract pot",
                "extract",
                after=(pulls[-1].name,) if pulls else (),
                add=(PlannedAddition("madder", 120.0),) if not again else (),
                water_l=2.4,
                heat=(to(70, 40), hold(60)),
                again=again,
            )
        )
        pulls.append(
            PlannedStep(
                strain,
                "strain",
                "liquor",
                "extract pot",
                "extract",
                after=(extract,),
                into="dye pot",
                again=again,
            )
        )
    steps = (
        PlannedStep(
            "scour",
            "scour",
            "fibre",
            "wash pot",
            "scour",
            add=(PlannedAddition("wash", 14.4),),
            enter=("fibre",),
            water_l=7.2,
            heat=(to(60, 30), hold(30), Heat("cool_to", 40)),
        ),
        PlannedStep(
            "mordant",
            "mordant",
            "fibre",
            "mordant pot",
            "mordant",
            after=("scour",),
            add=(PlannedAddition("alum", 28.8), PlannedAddition("tartar", 14.4)),
            enter=("fibre",),
            water_l=7.2,
            heat=(to(85, 45), hold(60)),
        ),
        *pulls,
        PlannedStep(
            "dye",
            "dye",
            "fibre",
            "dye pot",
            "dye",
            after=("mordant", "strain 3"),
            enter=("fibre",),
            water_l=7.2,
            heat=(to(80, 60), hold(60)),
            judge=Judge(30, 120, 15),
        ),
        PlannedStep(
            "rinse",
            "rinse",
            "fibre",
            "rinse bowl",
            "rinse",
            after=("dye",),
            enter=("fibre",),
            water_l=5.0,
            fresh_water=True,
        ),
        PlannedStep("dry", "dry", "fibre", None, "dry", after=("rinse",), heat=(Heat("rest", overnight=True),)),
    )
    return Plan(
        recipe="Madder brick red on wool",
        lots=(FibreLot("large skein", "wool", 165.0), FibreLot("small skein", "wool", 75.0)),
        fibre_mass_g=240.0,
        boiling_c=100.0,
        boiling_margin_c=1.0,
        doses=(
            dose("wash", "neutral textile wash", "scour", 6.0, 14.4),
            dose("alum", "potassium alum", "mordant", 12.0, 28.8),
            dose("tartar", "cream of tartar", "assist", 6.0, 14.4),
            dose("madder", "madder root", "dyestuff", 50.0, 120.0),
        ),
        baths=(),
        vessels=(
            PlannedVessel("wash pot", "A", "", 12.0, "stainless"),
            PlannedVessel("mordant pot", "B", "", 12.0, "stainless"),
            PlannedVessel("extract pot", "C", "", 5.0, "stainless"),
            PlannedVessel("dye pot", "D", "", 12.0, "stainless"),
            PlannedVessel("rinse bowl", "E", "", 10.0, ""),
        ),
        steps=steps,
        timetable=(),
    )


class Day:
    """A day run by hand in a test: pure engine, stepping clock, entries in memory."""

    def __init__(self, plan: Plan | None = None, household: Household = NOBODY) -> None:
        self.plan = plan or madder_plan()
        self.clock = SteppingClock(MORNING)
        self.household = household
        self.opened: Instant = self.clock.now()
        self.state: State = replace(opening_state(self.plan), instant=self.opened)
        self.entries: tuple[Entry, ...] = ()

    def do(self, command: e.Event, happened: datetime | None = None) -> State:
        now = self.clock.now()
        event = decide(self.state, command, now, self.household)
        entry = Entry(self.state.n + 1, now, event, happened)
        self.entries = (*self.entries, entry)
        self.state = apply(self.state, entry)
        return self.state

    def pass_minutes(self, minutes: float) -> None:
        self.clock.advance(minutes * 60)

    @property
    def now_s(self) -> float:
        return self.state.seconds(self.clock.now())

    def suggest(self) -> e.Event | Ask | Wait:
        return suggest(self.state, self.now_s, self.household)

    def space(self) -> e.Event | Ask | Wait:
        """Do what is suggested; answer an Ask honestly; let time pass for a wait. Returns what it was."""
        suggestion = self.suggest()
        if isinstance(suggestion, Wait):
            until_s = suggestion.until_s if suggestion.until_s is not None else self.now_s + 60
            self.clock.advance(max(1.0, until_s - self.now_s))
        elif isinstance(suggestion, Ask):
            self.do(suggestion.honest_answer())
        else:
            self.do(suggestion)
        return suggestion

    def until(self, wanted: type[object], most: int = 400) -> object:
        """Press space until a suggestion of this kind stands; returns it, not yet done."""
        for _ in range(most):
            suggestion = self.suggest()
            if isinstance(suggestion, wanted):
                return suggestion
            self.space()
        raise AssertionError(f"no {wanted.__name__} in {most} moves")

    def home(self, most: int = 600) -> int:
        """Press space until the day is complete; returns the moves it took."""
        for moves in range(most):
            if self.state.status == "complete":
                return moves
            self.space()
        raise AssertionError(f"not home in {most} moves: {self.suggest()}")


def weighed_wet(wet_mass_g: float = 480.0) -> Day:
    """The whole madder day with the large skein weighed wet as it comes out of its wash."""
    day = Day()
    while day.state.status != "complete":
        act = day.suggest()
        if isinstance(act, e.Lifted) and act.lot == "large skein" and act.vessel == "wash pot":
            day.do(e.Lifted(act.lot, act.vessel, wet_mass_g))
        else:
            day.space()
    return day
