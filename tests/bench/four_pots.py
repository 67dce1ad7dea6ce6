"""A Stove with four countdowns running, for measuring: `python tests/bench/four_pots.py FOLDER` runs it on its own.

The day is our own, begun there and then by the real clock and written to a real log.
"""

import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from days import hold, madder_plan

from dyesession.account import Account
from dyesession.account.live import reckoner_for
from dyesession.clock import Clock, SystemClock
from dyesession.kitchen.model import Kitchen
from dyesession.plan.model import FibreLot, Plan, PlannedAddition, PlannedStep, PlannedVessel
from dyesession.recipe import load_recipe
from dyesession.session.asking import Ask
from dyesession.session.opening import begin_day
from dyesession.session.session import Session
from dyesession.session.suggest import Wait, suggest
from dyesession.storage import DISK, Storage

RECIPE = Path(__file__).resolve().parents[2] / "recipes" / "madder-brick-red-on-wool.toml"
POTS = ("first pot", "second pot", "third pot", "fourth pot")
HOLD_MIN = 9.5  # below ten minutes every clock counts in seconds, so that every tick has four to paint


def four_pots_plan(hold_min: float = HOLD_MIN) -> Plan:
    """Four skeins mordanted side by side, each in its own pot."""
    plan = madder_plan()
    lots = tuple(FibreLot(f"skein {n}", "wool", 60.0) for n in range(1, 5))
    steps = tuple(
        PlannedStep(
            f"mordant {lot.name[-1]}", "mordant", "fibre", pot, "mordant",
            add=(PlannedAddition("alum", 7.2),), enter=(lot.name,), water_l=2.0, heat=(hold(hold_min),),
        )
        for lot, pot in zip(lots, POTS, strict=True)
    )  # fmt: skip
    vessels = tuple(
        PlannedVessel(pot, letter, "", 5.0, "stainless") for pot, letter in zip(POTS, "ABCD", strict=True)
    )
    doses = tuple(one for one in plan.doses if one.ingredient == "alum")
    return replace(plan, lots=lots, fibre_mass_g=240.0, steps=steps, vessels=vessels, doses=doses)


def with_four_clocks(
    folder: Path, clock: Clock, storage: Storage = DISK, hold_min: float = HOLD_MIN
) -> Session[Account]:
    """The day, gone on with until there is nothing to do but wait for the four clocks."""
    plan = four_pots_plan(hold_min)
    session = begin_day(storage, folder, load_recipe(RECIPE), plan, Kitchen(), clock, reckoner_for)
    go_on(session, lambda suggestion: isinstance(suggestion, Wait))
    running = [one for one in session.snapshot.state.steps if one.countdown is not None]
    assert len(running) == len(POTS)
    return session


def go_on(session: Session[Account], enough: Callable[[object], bool], most: int = 200) -> None:
    """Do what is suggested until enough is done."""
    for _ in range(most):
        suggestion = suggest(session.snapshot.state, session.now_s(), session.household)
        if enough(suggestion):
            return
        assert not isinstance(suggestion, Wait)
        session.do(suggestion.honest_answer() if isinstance(suggestion, Ask) else suggestion).result(10)
    raise AssertionError(f"not there in {most} moves")


if __name__ == "__main__":
    from dyesession.ui.run import run_stove

    raise SystemExit(run_stove(with_four_clocks(Path(sys.argv[1]), SystemClock())))
