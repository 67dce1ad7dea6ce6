"""A correction never hides what was there: after any action the old file is the beginning of the new one."""

import errno
import shutil
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule
from reliability.days import PLAIN, QUICK, START

from dyesession.clock import SteppingClock
from dyesession.session.log import Entry, LogWriter, NotSaved, Unsure, create_log, open_log, read_log
from dyesession.storage.faulty import Fault, FaultyStorage

SHORT = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)


class DyeDay(RuleBasedStateMachine):
    """Save, correct, close, reopen, fail, tear, rescue, in any order."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.clock = SteppingClock(START)
        self.storage = FaultyStorage(QUICK)
        self.writer: LogWriter | None = create_log(self.storage, self.folder, PLAIN.name, PLAIN.header)
        self.path = self.writer.path
        self.saved: list[Entry] = []
        self.doubtful = False
        self.before = self.path.read_bytes()

    def teardown(self) -> None:
        """Let go of everything."""
        if self.writer:
            self.writer.close()
        shutil.rmtree(self.folder)

    def save(self, kind: str, fields: dict[str, object]) -> None:
        assert self.writer is not None
        try:
            self.saved.append(self.writer.append(kind, self.clock.advance(30), fields))
        except NotSaved:
            return
        except Unsure:
            self.doubtful = True

    @precondition(lambda self: self.writer and not self.doubtful)
    @rule(mass_g=st.floats(0, 1e4), ingredient=SHORT)
    def weigh(self, mass_g: float, ingredient: str) -> None:
        self.save("weighed", {"ingredient": ingredient, "mass_g": mass_g, "how": "weighed"})

    @precondition(lambda self: self.writer and not self.doubtful and self.saved)
    @rule(data=st.data(), why=SHORT)
    def correct(self, data: st.DataObject, why: str) -> None:
        old = data.draw(st.sampled_from(self.saved))
        self.save("corrected", {"entry": old.n, "why": why, "mass_g": 1.0})

    @precondition(lambda self: self.writer and not self.doubtful)
    @rule(
        later=st.integers(1, 5),
        when=st.sampled_from(["before", "after", "part"]),
        code=st.sampled_from([0, errno.EIO, errno.ENOSPC, errno.EROFS]),
    )
    def fail_soon(self, later: int, when: str, code: int) -> None:
        self.storage.faults = {len(self.storage.calls) + later: Fault(when, code)}  # type: ignore[arg-type]
        self.save("noted", {"text": "on a failing disk"})
        self.storage.faults = {}

    @precondition(lambda self: self.writer and self.doubtful)
    @rule()
    def rescue(self) -> None:
        assert self.writer is not None
        self.writer = self.writer.rescue(self.folder)
        self.path, self.doubtful = self.writer.path, False
        self.saved = list(read_log(QUICK, self.path).entries)

    @precondition(lambda self: self.writer and not self.doubtful)
    @rule()
    def close(self) -> None:
        assert self.writer is not None
        self.writer.close()
        self.writer = None

    @precondition(lambda self: self.writer is None)
    @rule(torn=st.sampled_from([b"", b"\n[[event]]\nn = 9\n", bytes(9)]))
    def reopen(self, torn: bytes) -> None:
        with self.path.open("ab") as file:
            file.write(torn)
        self.writer = open_log(self.storage, self.path)
        assert (self.writer.recovered is not None) == bool(torn)
        if self.writer.recovered:
            assert self.writer.recovered.side_file.read_bytes() == torn

    @invariant()
    def the_old_file_is_the_beginning_of_the_new_one(self) -> None:
        now = self.path.read_bytes()
        assert now.startswith(self.before)
        if not self.doubtful:  # what a failed save may have left behind does not count yet
            self.before = now

    @invariant()
    def every_entry_once_saved_is_still_there_as_it_was(self) -> None:
        found = list(read_log(QUICK, self.path).entries)
        assert found[: len(self.saved)] == self.saved
        assert len(found) - len(self.saved) in ((0, 1) if self.doubtful else (0,))


DyeDay.TestCase.settings = settings(
    max_examples=150, stateful_step_count=25, deadline=None, suppress_health_check=list(HealthCheck)
)
test_after_any_action_the_old_file_begins_the_new_one = DyeDay.TestCase
