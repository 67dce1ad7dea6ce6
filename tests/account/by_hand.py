"""Entries written by hand on a stepping clock, past the engine's refusals, and known numbers for the
unknowns.
"""

from collections.abc import Iterable
from datetime import datetime, timedelta, timezone

from dyesession.account.ledger import Ledger
from dyesession.account.model import Account
from dyesession.account.unknowns import (
    EYE,
    JUG,
    LID,
    MORDANT_RATE,
    STEAM,
    Starting,
    fades_name,
    held_name,
    kept_name,
    known,
    partition_name,
    rate_name,
    spent_name,
    stiffens_name,
)
from dyesession.clock import SteppingClock
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
from dyesession.recipe.model import Heat
from dyesession.session import events as e
from dyesession.session.fold import Entry

MORNING = datetime(2026, 3, 14, 9, 2, 11, tzinfo=timezone(timedelta(hours=1)))


class Pages:
    """A log in the making: each fact so many minutes after the one before."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.clock = SteppingClock(MORNING)
        self.opened = self.clock.now()
        self.entries: tuple[Entry, ...] = ()

    def write(self, event: e.Event, minutes: float = 0.0, happened: datetime | None = None) -> "Pages":
        now = self.clock.advance(minutes * 60.0)
        self.entries = (*self.entries, Entry(len(self.entries) + 1, now, event, happened))
        return self

    def write_all(self, events: Iterable[e.Event], minutes: float = 0.0) -> "Pages":
        for event in events:
            self.write(event, minutes)
        return self

    def ledger(self, starting: Starting | None = None) -> Ledger:
        return Ledger.start(self.plan, self.opened, starting).following(self.entries)

    def account(self, starting: Starting | None = None) -> Account:
        return self.ledger(starting).account()


def dose(ingredient: str, substance: str, role: str, percent: float, mass_g: float) -> PlannedDose:
    mass = Band(mass_g, mass_g, mass_g)
    share = Band(percent, percent, percent)
    return PlannedDose(ingredient, substance, role, share, mass, Weigh("scale", 0.1, ""))  # type: ignore[arg-type]


def one_dye_plan(
    dyestuff: str = "cochineal",
    substance: str = "cochineal",
    percent: float = 5.0,
    wool_g: float = 100.0,
    dye_water_l: float = 3.0,
    extract_water_l: float = 1.0,
) -> Plan:
    """Wool in one skein, one dyestuff extracted apart and dyed at a simmer; `wool_g` of it in a second
    skein.
    """
    mass_g = percent * wool_g / 100.0
    hot = (Heat("to", 90.0, 30.0), Heat("hold", minutes=30.0))
    extract = PlannedStep(
        "extract",
        "extract",
        "liquor",
        "extract pot",
        "extract",
        add=(PlannedAddition(dyestuff, mass_g),),
        water_l=extract_water_l,
        heat=hot,
    )
    strain = PlannedStep("strain", "strain", "liquor", "extract pot", "extract", into="dye pot")
    dye = PlannedStep(
        "dye", "dye", "fibre", "dye pot", "dye", enter=("fibre",), water_l=dye_water_l, heat=hot
    )
    return Plan(
        recipe="one dye",
        lots=(FibreLot("first skein", "wool", wool_g), FibreLot("second skein", "wool", wool_g)),
        fibre_mass_g=wool_g,
        boiling_c=100.0,
        boiling_margin_c=1.0,
        doses=(
            dose(dyestuff, substance, "dyestuff", percent, mass_g),
            dose("tartar", "tartar", "assist", 6, 6),
        ),
        baths=(),
        vessels=(
            PlannedVessel("extract pot", "A", "", 4.0, "stainless"),
            PlannedVessel("dye pot", "B", "", 8.0, "stainless"),
        ),
        steps=(extract, strain, dye),
        timetable=(),
    )


def all_known(dyestuff: str, **numbers: float) -> Starting:
    """Every unknown of a one-dye plan as a known number: no steam, water as told, nothing held, the same share
    kept each time, unless given.
    """
    usual = {
        "kept": 0.35,
        "partition": 120.0,
        "rate": 10.0,
        "held": 0.0,
        "spent": 0.0,
        "lid": 0.0,
        "water": 1.0,
        "stiffens": 1.0,
        "fades": 0.5,
        "steam": 1.0,
    } | numbers
    named = {
        kept_name(dyestuff): usual["kept"],
        partition_name(dyestuff, "wool"): usual["partition"],
        rate_name(dyestuff): usual["rate"],
        spent_name(dyestuff): usual["spent"],
        held_name("wool"): usual["held"],
        stiffens_name(dyestuff): usual["stiffens"],
        fades_name(dyestuff): usual["fades"],
        STEAM: usual["steam"],
        LID: usual["lid"],
        EYE: usual["water"],
        JUG: usual["water"],
        MORDANT_RATE: usual["rate"],
    }
    return Starting({name: known(name, value) for name, value in named.items()})
