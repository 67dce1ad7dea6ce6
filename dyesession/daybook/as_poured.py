"""Where a repeat follows the day's water and extractions and not its plan, and where nobody saw what the heat did. Pure."""

from collections.abc import Iterator, Sequence

from dyesession.daybook.called_out import Change
from dyesession.daybook.walk import Pace
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.state import StepState
from dyesession.units import show_duration, show_volume

WORTH_SHARE = 0.1  # litres this far off the plan are told: what a jug and an eye make of it; our own choice
SECONDS_PER_MIN = 60.0


def poured(day: LoggedDay, paces: Sequence[Pace]) -> Iterator[Change]:
    """Water that was other than planned, and extractions more or fewer than planned."""
    planned = {one.name: one.water_l for one in day.plan.steps}
    for pace in paces:
        event = pace.entry.event
        step = pace.before.running_in(event.vessel) if isinstance(event, e.Filled | e.Refreshed) else None
        wanted = planned.get(step.name) if step is not None else None
        if step is None or wanted is None or not isinstance(event, e.Filled | e.Refreshed) or not event.volume_l:
            continue
        if abs(event.volume_l - wanted) >= WORTH_SHARE * wanted:
            told = f"{step.name} in {show_volume(event.volume_l)} as it was poured, not {show_volume(wanted)} as planned"
            yield Change("done", told)
    yield from _rounds(day, paces)


def _rounds(day: LoggedDay, paces: Sequence[Pace]) -> Iterator[Change]:
    steps = paces[-1].after.steps if paces else ()
    wanted: dict[str, int] = {}
    for planned in day.plan.steps:
        if planned.stage == "extract":
            wanted[planned.of] = wanted.get(planned.of, 0) + 1
    for name, count in wanted.items():
        made = sum(1 for one in steps if one.plan.of == name and one.plan.stage == "extract" and _was_made(one))
        if made and made != count:
            yield Change("done", f"{name}: {_times(made)} as it was done, not {_times(count)} as planned")


def _was_made(step: StepState) -> bool:
    return step.begun_s is not None and step.status != "skipped"


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def unattended(paces: Sequence[Pace]) -> Iterator[Change]:
    """A stretch that nobody wrote anything in, while something was to be brought to its heat."""
    for pace in paces:
        event = pace.entry.event
        if not isinstance(event, e.ResumedAfterGap):
            continue
        rising = [one.name for one in pace.before.steps if rises(one)]
        if rising:
            away = show_duration(event.away_s / SECONDS_PER_MIN)
            yield Change(
                "done",
                f"nobody was there for {away} while {' and '.join(rising)} warmed up: that rise is taken as planned",
                "how hot it stood meanwhile is not known",
            )


def rises(step: StepState) -> bool:
    """Whether a step is on its way up to a heat."""
    countdown = step.countdown
    return step.status == "running" and countdown is not None and countdown.kind == "rise"
