"""Pictures of the day for a wide screen: the temperature curve against the wanted one, what each strain brought.

Pure; reckons nothing: the figures are the plan's, the readings' and the account's.
"""

from dyesession.account import Account, Band90
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.session import Snapshot
from dyesession.session.state import State, StepState
from dyesession.ui import stove_view as v
from dyesession.units import show_range

TAP_C = 15.0  # a wanted curve starts from cold tap water; common practice, no source
LOOK_MIN = 45.0  # drawn for a rise that names no time; common practice, no source


def curve(snapshot: Snapshot[Account], now_s: float) -> v.Curve | None:
    """The temperature of the heated pot that was read last, else begun first: wanted, read, now."""
    state = snapshot.state
    heated = [one for one in state.steps if one.status == "running" and _heated(one)]
    step = max(heated, key=lambda one: _read_s(state, one), default=None)
    if step is None or step.begun_s is None or step.plan.vessel is None:
        return None
    wanted = _wanted(step)
    start_s = step.begun_s
    letter = words.letter(snapshot.state, step.plan.vessel)
    end_s = start_s + wanted[-1].minute * 60
    return v.Curve(
        title=f"{letter}  {step.plan.vessel}, temperature",
        wanted=wanted,
        read=_readings(snapshot, step, start_s),
        now_minute=(now_s - start_s) / 60,
        start=words.clock_text(snapshot.state, start_s),
        end=words.clock_text(snapshot.state, max(end_s, now_s)),
    )


def _read_s(state: State, step: StepState) -> float:
    vessel = state.vessel(step.plan.vessel)
    return vessel.temperature_s if vessel is not None and vessel.temperature_s is not None else -1.0


def _heated(step: StepState) -> bool:
    return any(one.kind == "to" for one in step.plan.heat)


def _wanted(step: StepState) -> tuple[v.CurvePoint, ...]:
    minute, temperature_c = 0.0, TAP_C
    points = [v.CurvePoint(minute, temperature_c)]
    for index, heat in enumerate(step.plan.heat):
        if heat.overnight or heat.kind == "cool_to":
            break
        minute += heat.minutes if heat.minutes is not None else LOOK_MIN
        temperature_c = c.held_at_c(step.plan, index) or temperature_c
        points.append(v.CurvePoint(minute, temperature_c))
    return tuple(points)


def _readings(snapshot: Snapshot[Account], step: StepState, start_s: float) -> tuple[v.CurvePoint, ...]:
    last = snapshot.state.instant
    if last is None:
        return ()
    points = []
    for entry in snapshot.entries:
        event = entry.event
        if not isinstance(event, e.Read | e.Reached | e.Confirmed) or event.vessel != step.plan.vessel:
            continue
        second = snapshot.state.now_s - (last.at - entry.instant.at).total_seconds()
        if event.temperature_c is not None and second >= start_s:
            points.append(v.CurvePoint((second - start_s) / 60, event.temperature_c))
    return tuple(points)


def bars(account: Account) -> v.Bars | None:
    """What was drawn from the dyestuff, and what one more extraction would bring."""
    drawn = next((one for one in account.dyestuffs if one.pulls), None)
    if drawn is None:
        return None
    rows = [_bar("drawn so far", drawn.drawn, True), _bar("once more", drawn.next_pull, False)]
    rows.append(_bar("left in it", drawn.left_in_dyestuff, False))
    return v.Bars(f"colour drawn, g of your {drawn.lot}", tuple(rows), remark="modelled; readings narrow it")


def _bar(word: str, band: Band90, brought: bool) -> v.Bar:
    shown = show_range(round(band.low), round(band.high), lambda grams: f"{grams} g")
    return v.Bar(word, band.low, band.mean, band.high, shown, brought)
