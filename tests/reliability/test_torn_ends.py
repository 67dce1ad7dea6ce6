"""A log cut short at any byte, with anything behind: nothing lost, nothing silently wrong, all set aside."""

import random
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from reliability.days import BROKEN_UP, DAYS, GOLDEN, PLAIN, QUICK, RICH, START, Day
from reliability.oracle import Original, broken_promises, look, original

from dyesession.clock import Instant
from dyesession.session import log_recover, seal_scan, seal_split
from dyesession.session.log import EntriesMissing, NotALog, open_log, read_log

NOW = Instant(START, "ffffffff", 1.0)
KINDS_OF_TAIL = 7


def golden(day: Day) -> Original:
    return original(GOLDEN / f"{day.name}.toml")


ANOTHER_DAY = golden(BROKEN_UP).data[golden(BROKEN_UP).head_end :]


def tails(true: Original, cut: int, noise: random.Random) -> Iterator[tuple[str, bytes]]:
    """What may lie behind a cut: nothing, zeros, noise, stale text or blocks, another day, the rest holed."""
    yield "nothing", b""
    yield "zeros", bytes(64)
    yield "noise", noise.randbytes(64)
    yield "stale text", true.data[-333:-20]
    yield "stale blocks", true.block(0) + true.block(len(true.ends) - 1)
    yield "another day", ANOTHER_DAY
    yield "a hole", true.data[cut + 7 : cut + 400]


def every_damage(day: Day) -> Iterator[tuple[Original, int, str, bytes]]:
    true, noise = golden(day), random.Random(1)
    for cut in range(len(true.data)):
        for kind, tail in tails(true, cut, noise):
            yield true, cut, kind, true.data[:cut] + tail


def all_broken(day: Day) -> Counter[str]:
    """How often each promise was broken over every damage of a day's log."""
    broken: Counter[str] = Counter()
    for true, cut, _, damaged in every_damage(day):
        broken.update(broken_promises(true, true.acknowledged(cut), look(damaged), damaged))
    return broken


@pytest.mark.parametrize("day", DAYS, ids=lambda day: day.name)
def test_a_log_cut_anywhere_with_anything_behind_loses_and_falsifies_nothing(day: Day) -> None:
    assert all_broken(day) == Counter()


def test_sabotage_a_reader_that_does_not_check_the_seal_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(seal_split, "fits", lambda *_: True)
    assert all_broken(PLAIN)["silently wrong"] > 0


def test_sabotage_a_reader_that_does_not_check_the_seal_before_is_caught(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def careless(self, number, block, seal) -> None:
        self._keep(block, seal.n, None)

    monkeypatch.setattr(seal_scan._Chain, "_take_odd", careless)
    assert all_broken(RICH)["not reported"] > 0


def test_sabotage_a_reader_content_with_what_parses_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    """Take the last unsealed block for an entry when it reads as one, as a plain TOML reader would."""
    honest = seal_scan._Chain._stray

    def trusting(self, number: int, why: str) -> None:
        values = seal_split.block_values(self.data, self.blocks[number])
        values = values and {**values, "seal": "none"}
        if self.blocks[number].seal is None and values and seal_scan.entry_from(dict(values), self.n + 1):
            self._keep(self.blocks[number], self.n + 1, None, values)
        else:
            honest(self, number, why)

    monkeypatch.setattr(seal_scan._Chain, "_stray", trusting)
    assert all_broken(PLAIN)["silently wrong"] > 100


# --- on disk: what is cut off is kept


def mishaps(folder: Path, day: Day, step: int = 1) -> Counter[str]:
    """Open a log after every damage; how often bytes or entries were lost, or no new entry could follow."""
    broken: Counter[str] = Counter()
    path = folder / f"{day.name}.toml"
    for true, cut, kind, damaged in every_damage(day):
        if cut % step:
            continue
        for old in folder.iterdir():
            old.unlink()
        path.write_bytes(damaged)
        broken.update(mishap(path, true, cut, damaged))
        broken[f"tried: {kind}"] += 1
    return broken


def mishap(path: Path, true: Original, cut: int, damaged: bytes) -> Iterator[str]:
    try:
        with open_log(QUICK, path) as writer:
            recovered = writer.recovered
            writer.append("noted", NOW, {"text": "back at the stove"})
    except (EntriesMissing, NotALog) as refused:
        if path.read_bytes() != damaged or (isinstance(refused, NotALog) and true.acknowledged(cut)):
            yield "touched what it refused"
        return
    contents = read_log(QUICK, path)
    after = path.read_bytes()
    aside = recovered.side_file.read_bytes() if recovered else b""
    kept = after[: after.rindex(b"\n[[event]]")]
    if kept + aside != damaged or (recovered and recovered.torn_bytes != len(aside)):
        yield "bytes lost"
    if contents.entries[: true.acknowledged(cut)] != true.entries[: true.acknowledged(cut)]:
        yield "entries lost"
    if contents.entries[-1].fields != {"text": "back at the stove"} or contents.torn:
        yield "no new entry"


def test_what_is_cut_off_is_kept_byte_for_byte_and_the_day_goes_on(tmp_path: Path) -> None:
    counts = mishaps(tmp_path, PLAIN)
    assert all(name.startswith("tried") for name in counts), counts
    assert sum(counts.values()) == KINDS_OF_TAIL * len(golden(PLAIN).data)


@pytest.mark.parametrize("day", [DAYS[1], DAYS[2]], ids=lambda day: day.name)
def test_the_other_days_recover_too(tmp_path: Path, day: Day) -> None:
    counts = mishaps(tmp_path, day, step=7)
    assert all(name.startswith("tried") for name in counts), counts


def test_sabotage_cutting_without_setting_aside_is_caught(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real: Callable[..., Path] = log_recover.keep_tail
    monkeypatch.setattr(log_recover, "keep_tail", lambda storage, path, tail: real(storage, path, tail[:-1]))
    assert mishaps(tmp_path, PLAIN, step=29)["bytes lost"] > 0
