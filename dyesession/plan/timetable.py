"""When each step runs: both lanes at once, one dyer's two hands, so many burners, and the chain that decides
the end.

Knows nothing of water or doses: it is given how long each step takes. The handling minutes are common
practice, no source. Heating pots look after themselves; beginning and ending a step takes the dyer, one step
at a time. A pot that heats or is held warm needs a burner to itself.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dyesession.plan.minutes import PotMinutes
from dyesession.plan.model import PlannedStage, PlannedStep, TimetableRow

# Minutes of the dyer's own time: to begin a step (fill, dissolve, add, enter) and to end it (lift, press,
# empty).
BEGIN_MIN: Mapping[PlannedStage, float] = {
    "scour": 10.0,
    "wet": 5.0,
    "mordant": 15.0,
    "soak": 10.0,
    "extract": 10.0,
    "strain": 10.0,
    "dye": 10.0,
    "modify": 10.0,
    "rinse": 25.0,
    "rest": 5.0,
    "dry": 10.0,
}
END_MIN: Mapping[PlannedStage, float] = {"scour": 5.0, "mordant": 5.0, "dye": 5.0, "modify": 5.0}

SAME_MOMENT_MIN = 1e-9  # two reckonings of one moment may differ by rounding alone


@dataclass(frozen=True)
class _Block:
    """A stretch of a step that needs the dyer (`hands`), a burner (`lit`), or only the pot."""

    step: int
    part: int
    minutes: float
    hands: bool = False
    lit: bool = False


@dataclass(frozen=True)
class _Placed:
    block: _Block
    start_min: float
    end_min: float
    binding: tuple["_Placed", ...]


def timetable(
    steps: Sequence[PlannedStep], pot_min: Mapping[str, PotMinutes], burners: int | None = None
) -> tuple[TimetableRow, ...]:
    """Lay out the day. `pot_min` gives each step's unattended minutes; a step missing there takes none.

    Starts are as early as the order, one dyer and so many burners allow (one at least; None: no limit).
    A row is critical when it lies on a chain, without a gap, from the start of the day to its end. The
    steps stand in an order in which they can be done.
    """
    placed = _place(steps, pot_min, None if burners is None else max(1, burners))
    critical = _critical_steps(placed)
    return tuple(_row(i, step, placed, i in critical) for i, step in enumerate(steps))


def end_min(rows: Sequence[TimetableRow]) -> float:
    """Minutes from the start of the day to the end of its last step."""
    return max((row.end_min for row in rows), default=0.0)


def _row(i: int, step: PlannedStep, placed: Sequence[_Placed], critical: bool) -> TimetableRow:
    mine = [one for one in placed if one.block.step == i]
    start, end = min(one.start_min for one in mine), max(one.end_min for one in mine)
    lit = next((one for one in mine if one.block.lit and one.block.minutes > 0), None)
    return TimetableRow(
        step.name,
        step.stage,
        step.lane,
        step.vessel,
        start,
        end,
        critical,
        lit_min=lit.start_min if lit else None,
        off_min=lit.end_min if lit else None,
    )


def _blocks(i: int, step: PlannedStep, pot: PotMinutes) -> tuple[_Block, ...]:
    return (
        _Block(i, 0, BEGIN_MIN[step.stage], hands=True),
        _Block(i, 1, pot.before_min),
        _Block(i, 2, pot.heated_min, lit=True),
        _Block(i, 3, pot.after_min),
        _Block(i, 4, END_MIN.get(step.stage, 0.0), hands=True),
    )


NO_MINUTES = PotMinutes()


def _place(
    steps: Sequence[PlannedStep], pot_min: Mapping[str, PotMinutes], burners: int | None
) -> list[_Placed]:
    """Give every block the earliest start it can have, the longest remaining chain first on a tie.

    Blocks are placed in the order of their starts, so that whatever is lit later is placed later.
    """
    number = {step.name: i for i, step in enumerate(steps)}
    before = [tuple(number[name] for name in step.after) for step in steps]
    waiting = [list(_blocks(i, step, pot_min.get(step.name, NO_MINUTES))) for i, step in enumerate(steps)]
    tails = _tails([sum(block.minutes for block in blocks) for blocks in waiting], before)
    placed: list[_Placed] = []
    last: dict[int, _Placed] = {}
    while any(waiting):
        shared = (_hands(placed), _burner(placed, burners))
        ready = [
            _next_start(blocks[0], before[i], last, shared)
            for i, blocks in enumerate(waiting)
            if blocks and not any(waiting[j] for j in before[i])
        ]
        one = min(ready, key=lambda it: (it.start_min, -tails[it.block.step], it.block.step))
        waiting[one.block.step].pop(0)
        placed.append(one)
        last[one.block.step] = one
    return placed


def _hands(placed: Sequence[_Placed]) -> _Placed | None:
    """What the dyer's hands did last."""
    done = (one for one in reversed(placed) if one.block.hands and one.block.minutes > 0)
    return next(done, None)


def _burner(placed: Sequence[_Placed], burners: int | None) -> _Placed | None:
    """The pot that must leave its burner before one more can be lit: None while a burner is free."""
    lit = sorted(
        (one for one in placed if one.block.lit and one.block.minutes > 0), key=lambda it: it.end_min
    )
    return lit[-burners] if burners is not None and len(lit) >= burners else None


def _next_start(
    block: _Block,
    before: tuple[int, ...],
    last: Mapping[int, _Placed],
    shared: tuple[_Placed | None, _Placed | None],
) -> _Placed:
    """Place one block after whatever it waits for, and remember which of those decided its start."""
    waits_for = [last[block.step]] if block.part else [last[j] for j in before]
    for other, needed in zip(shared, (block.hands, block.lit), strict=True):
        if other is not None and needed and block.minutes > 0:
            waits_for.append(other)
    start = max((one.end_min for one in waits_for), default=0.0)
    binding = tuple(one for one in waits_for if one.end_min >= start - SAME_MOMENT_MIN)
    return _Placed(block, start, start + block.minutes, binding)


def _tails(lengths: Sequence[float], before: Sequence[tuple[int, ...]]) -> list[float]:
    """Minutes of the longest chain that begins with each step; steps in order."""
    tails = list(lengths)
    for i in reversed(range(len(lengths))):
        for j in before[i]:
            tails[j] = max(tails[j], lengths[j] + tails[i])
    return tails


def _critical_steps(placed: Sequence[_Placed]) -> set[int]:
    """Walk back from the last block through whatever decided each start."""
    if not placed:
        return set()
    end = max(one.end_min for one in placed)
    back = [one for one in placed if one.end_min >= end - SAME_MOMENT_MIN]
    seen: set[tuple[int, int]] = set()
    while back:
        one = back.pop()
        if (one.block.step, one.block.part) not in seen:
            seen.add((one.block.step, one.block.part))
            back.extend(one.binding)
    return {step for step, _ in seen}
