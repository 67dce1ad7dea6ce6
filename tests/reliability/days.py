"""Three small days at the stove, told as plain facts, for the tests that tear, kill and fill disks."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

from dyesession.clock import SteppingClock
from dyesession.session.log import Entry, LogWriter, create_log
from dyesession.storage import DiskStorage, Storage

START = datetime(2026, 3, 14, 9, 2, 11, tzinfo=timezone(timedelta(hours=1)))
GOLDEN = Path(__file__).parent / "golden"

Fact = tuple[str, dict[str, Any]]


class QuickDisk(DiskStorage):
    """A real disk that is not waited for: for tests that are not about the waiting."""

    def fsync(self, fd: int) -> None:
        """Not waited for."""

    def fsync_folder(self, folder: Path) -> None:
        """Not waited for."""


QUICK = QuickDisk()


@dataclass(frozen=True)
class Day:
    """One day: its log's name, its head, and what happened in order."""

    name: str
    header: dict[str, Any]
    facts: Sequence[Fact | Callable[[SteppingClock], object]]


def _head(**more: Any) -> dict[str, Any]:
    return {"opened": START, "program": "dyesession 0.1.0", **more}


PLAIN = Day(
    "2026-03-14-madder-brick-k7q2",
    _head(
        fibre=[
            {"name": "large skein", "kind": "wool", "mass_g": 165.0},
            {"name": "small skein", "kind": "wool", "mass_g": 75.0},
        ]
    ),
    [
        ("weighed", {"ingredient": "alum", "mass_g": 29.0, "resolution_g": 1.0, "how": "weighed"}),
        ("read", {"vessel": "mordant pot", "temperature_c": 85.25, "how": "typed"}),
        ("entered", {"lot": "large skein", "vessel": "mordant pot", "wet": True}),
        ("noted", {"text": "The small skein is felting."}),
        ("strained", {"vessel": "extract pot", "into": "dye pot", "volume_l": 1.8, "how": "read"}),
    ],
)

RICH = Day(
    "2026-03-15-weld-and-madder-b3xz",
    _head(recipe={"name": 'Krapp "brick" — 50 % [/alum]', "step": [{"name": "dye", "hold": "60 min"}]}),
    [
        ("noted", {"text": 'a "quoted" \\ line\nand another\ttab; C1 \x9b, right-to-left \u202e, 茜 🧶'}),
        (
            "account",
            {
                "after": 1,
                "baths": [
                    {"vessel": "dye pot", "volume_l": 1.8, "dye": [{"lot": "madder", "mass_g": 71.2}]},
                    {"vessel": "extract pot", "volume_l": 2.0, "dye": [{"lot": "madder", "mass_g": 12.5}]},
                ],
                "how": "modelled",
            },
        ),
        ("read", {"vessel": "dye pot", "strength": 0.000012, "large": 1e22, "below": -12, "also": [1, 2.5]}),
        (
            "begun",
            {"step": "dye", "reminders": ["Open a window.", "Gloves on: [[event]] is only text here."]},
        ),
    ],
)

BROKEN_UP = Day(
    "2026-03-16-overnight-4mtw",
    _head(rehearsal=False),
    [
        ("lit", {"vessel": "dye pot", "burner": 2}),
        lambda clock: clock.reboot(7200.0),
        ("read", {"vessel": "dye pot", "temperature_c": 61.0, "how": "typed"}),
        lambda clock: clock.set_zone(2),
        ("corrected", {"entry": 2, "why": "misread the scale", "temperature_c": 81.0}),
        ("closed", {"verdict": "a clear brick red", "entries": 4}),
        ("cared", {"what": "second wash", "ran": False}),
    ],
)

DAYS = (PLAIN, RICH, BROKEN_UP)


def play(writer: LogWriter, day: Day) -> list[Entry]:
    """Save a day's facts, about a minute apart; the entries as they were acknowledged."""
    clock = SteppingClock(START, up_s=4200.0)
    saved: list[Entry] = []
    for fact in day.facts:
        clock.advance(61.037)
        if callable(fact):
            fact(clock)
            continue
        kind, fields = fact
        happened = clock.now().at - timedelta(minutes=10) if kind == "entered" else None
        saved.append(writer.append(kind, clock.now(), fields, happened))
    return saved


def written(folder: Path, day: Day, storage: Storage = QUICK) -> tuple[Path, list[Entry]]:
    """A day's log on disk, closed, and its entries."""
    with create_log(storage, folder, day.name, day.header) as writer:
        return writer.path, play(writer, day)
