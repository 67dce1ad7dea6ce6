"""A dye day run by typed lines in a test: real log, real account, a clock that steps when told."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path

from days import MORNING

from dyesession.account.live import reckoner_for
from dyesession.account.model import Account
from dyesession.care import Household
from dyesession.clock import SteppingClock
from dyesession.kitchen import load_kitchen
from dyesession.kitchen.model import Kitchen
from dyesession.line import run_line
from dyesession.plan import lots_from_text, work_out
from dyesession.recipe import load_recipe
from dyesession.session.opening import begin_day, resume_day
from dyesession.session.session import Session
from dyesession.storage import DISK, Storage

ROOT = Path(__file__).resolve().parents[2]
BY_HAND_S = 20.0  # between one typed line and the next
FIBRE = ("165 g dry large skein", "75 g dry small skein")


def kitchen() -> Kitchen:
    return load_kitchen(ROOT / "dyesession" / "kitchen" / "example.toml")


class LinedDay:
    """One day, one clock; the program may be closed and opened again between the lines."""

    def __init__(
        self,
        folder: Path,
        recipe: str = "madder-brick-red-on-wool",
        storage: Storage = DISK,
        household: Household | None = None,
    ) -> None:
        self.clock = SteppingClock(MORNING)
        self.by_hand_s = BY_HAND_S
        self.kitchen = kitchen()
        if household is not None:
            self.kitchen = replace(self.kitchen, household=household)
        found = load_recipe(ROOT / "recipes" / f"{recipe}.toml")
        plan = work_out(found, lots_from_text(FIBRE, found.fibre[0]), self.kitchen)
        self.session: Session[Account] = begin_day(
            storage, folder, found, plan, self.kitchen, self.clock, reckoner_for
        )
        self.path = Path(self.session.snapshot.path)

    def type(self, lines: Iterable[str]) -> list[str]:
        """Type these lines and then end the input; what was printed, with each line typed behind "> "."""
        waiting = list(lines)
        printed = self._talk(lambda _: waiting.pop(0) if waiting else None)
        assert not waiting, f"the talk ended before these lines were read: {waiting}"
        return printed

    def _talk(self, next_line: Callable[[list[str]], str | None]) -> list[str]:
        printed: list[str] = []

        def read(prompt: str) -> str:
            self.clock.advance(self.by_hand_s)
            line = next_line(printed)
            if line is None:
                raise EOFError
            printed.append(f"{prompt}{line}")
            return line

        code = run_line(
            self.session,
            read,
            printed.append,
            kitchen=self.kitchen,
            sleep=lambda s: void(self.clock.advance(s)),
        )
        assert code == 0
        return printed

    def reopen(self, after_s: float) -> None:
        """Close the program, let time pass, open it again."""
        self.session.close()
        self.clock.advance(after_s)
        self.session = resume_day(DISK, self.path, self.clock, self.kitchen.household, reckoner_for)

    def spaces_until(self, wanted: str, most: int = 400) -> list[str]:
        """Empty lines, waits and honest answers until a line that begins so was printed."""
        typed = 0

        def next_line(printed: list[str]) -> str | None:
            nonlocal typed
            typed += 1
            if typed > most or any(line.startswith(wanted) for line in printed):
                return None
            return obvious(printed)

        printed = self._talk(next_line)
        if not any(line.startswith(wanted) for line in printed):
            raise AssertionError(f"“{wanted}” was never printed; at last: {printed[-8:]}")
        return printed


def obvious(printed: list[str]) -> str:
    """What a dyer in a hurry types: nothing, an honest answer where one is asked for, or wait."""
    last = next(line for line in reversed(printed) if line.startswith(("NEXT", "ASK")))
    if last.startswith("ASK How did"):
        return "a warm brick"
    if last.startswith("ASK") and "into which pot" in last:
        return "-"
    if last.startswith("ASK"):
        return "70"
    return "wait" if ", in " in last else ""


def void(_: object) -> None:
    """Drop what a call gave."""


def typed_after(printed: list[str], typed: str) -> list[str]:
    """What was printed between this typed line and the next one."""
    start = printed.index(f"> {typed}") + 1
    end = next((i for i in range(start, len(printed)) if printed[i].startswith("> ")), len(printed))
    return printed[start:end]


class Shelf:
    """One day stopped at several moments, each of which can be taken up as often as a test likes."""

    def __init__(self, folder: Path, moments: Iterable[str]) -> None:
        self._folder, self._copies = folder, 0
        self._kept: list[tuple[bytes, str, float]] = []
        day = LinedDay(folder)
        start = day.clock.now()
        self._keep(day, start.up_s)
        for wanted in moments:
            day.spaces_until(wanted)
            self._keep(day, start.up_s)
        day.session.close()

    def __len__(self) -> int:
        return len(self._kept)

    def _keep(self, day: LinedDay, start_s: float) -> None:
        self._kept.append((day.path.read_bytes(), day.path.name, day.clock.now().up_s - start_s))

    def take(self, index: int) -> LinedDay:
        """The day as it stood at that moment, in a copy of its log."""
        data, name, passed_s = self._kept[index]
        self._copies += 1
        folder = self._folder / str(self._copies)
        folder.mkdir(mode=0o700)
        path = folder / name
        path.write_bytes(data)
        path.chmod(0o600)
        day = LinedDay.__new__(LinedDay)
        day.clock, day.kitchen, day.by_hand_s, day.path = SteppingClock(MORNING), kitchen(), BY_HAND_S, path
        day.clock.advance(passed_s)
        day.session = resume_day(DISK, path, day.clock, day.kitchen.household, reckoner_for)
        return day
