"""How long the day book of 1,000 logs of 300 entries takes: first page again, and from cold beside `tomllib`.

Run `python tests/bench/bench_daybook.py` (from the project's top); a number sets how many logs.
Goals: again within 0.3 s; from cold within 1.3 times `tomllib` over the same files; growth no worse than linear.
"""

import gc
import sys
import tempfile
import time
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from dyesession.daybook.finding import day_book
from dyesession.daybook.listed import day_book_lines
from dyesession.kitchen.model import Kitchen, Scale
from dyesession.plan import lots_from_text
from dyesession.recipe import load_recipe
from dyesession.rehearsal import rehearse
from dyesession.session.seal import sealed_block, sealed_header
from dyesession.session.seal_split import read_head, split_blocks
from dyesession.storage import DISK
from dyesession.tomlfile import block_text, write_document

LOGS, ENTRIES, PAGE = 1000, 300, 20
AGAIN_S, COLD_SHARE = 0.3, 1.3
RECIPE = Path(__file__).resolve().parents[2] / "recipes" / "madder-brick-red-on-wool.toml"
START = datetime.fromisoformat("2026-03-14T09:00:00+01:00")


def a_log(folder: Path) -> bytes:
    """A rehearsed madder day as its log has it."""
    kitchen = Kitchen(scales=(Scale("kitchen scale", 1.0),))
    lots = lots_from_text(["165 g wool, washed", "75 g wool, washed"], "wool")
    path = rehearse(load_recipe(RECIPE), lots, kitchen, folder, storage=DISK, start=START).path
    assert path is not None
    return path.read_bytes()


def blocks_of(data: bytes, entries: int) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    """The head, and so many entries: the day's own, the last readings and accounts told over before the end."""
    head = read_head(data)
    tables = [
        tomllib.loads(data[one.start : one.end].decode())["event"][0]
        for one in split_blocks(data, head.end)
    ]
    *day, end = [one for one in tables if one["kind"] != "account" or one["n"] < tables[-2]["n"]]
    again = [one for one in day if one["kind"] in ("read", "account")]
    padded = day + [again[i % len(again)] for i in range(entries - len(day) - 1)] + [end]
    return dict(head.values), padded


def written(head: dict[str, Any], entries: list[dict[str, Any]], name: str) -> bytes:
    """A whole, sealed log of that name."""
    sealed, own = sealed_header(write_document({**head, "session": name}))
    parts = [sealed]
    for n, entry in enumerate(entries, 1):
        keys = {key: value for key, value in entry.items() if key not in ("n", "seal")}
        text, seal = sealed_block(block_text("event", {"n": n, **keys}), n, own)
        parts.append(("\n" + text).encode())
        own = seal.own
    return b"".join(parts)


def seconds(work: Callable[[], object], times: int) -> float:
    best = float("inf")
    for _ in range(times):
        gc.collect()
        begun = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - begun)
    return best


@dataclass(frozen=True)
class Book:
    """Seconds for a day book of so many logs: `tomllib` over the files, the book from cold, its first page again."""

    logs: int
    size_mb: float
    tomllib_s: float
    cold_s: float
    again_s: float

    @property
    def cold_times(self) -> float:
        """How many times as long as `tomllib` the book takes from cold."""
        return self.cold_s / self.tomllib_s


def measured(logs: int = LOGS) -> Book:
    """Write so many logs, then read them plainly, from cold, and again."""
    with tempfile.TemporaryDirectory() as named:
        folder, index = Path(named) / "logs", Path(named) / "cache" / "index.json"
        head, entries = blocks_of(a_log(Path(named)), ENTRIES)
        folder.mkdir()
        for number in range(logs):
            name = f"2026-03-14-madder-{number:05}"
            (folder / f"{name}.toml").write_bytes(written(head, entries, name))
        files = sorted(folder.iterdir())

        def parse() -> None:
            for one in files:
                tomllib.loads(one.read_text("utf-8"))

        def cold() -> None:
            index.unlink(missing_ok=True)
            book = day_book(DISK, [folder], index)
            assert len(book.days) == logs and not book.aside and not any(one.faults for one in book.days)

        def page() -> None:
            book = day_book(DISK, [folder], index)
            assert day_book_lines(book.days[:PAGE], book.aside, START.date(), 100)

        size_mb = sum(one.stat().st_size for one in files) / 1e6
        return Book(logs, size_mb, seconds(parse, 1), seconds(cold, 1), seconds(page, 3))


def main(logs: int = LOGS) -> int:
    book, again_goal_s = measured(logs), AGAIN_S * max(1.0, logs / LOGS)
    print(f"{logs} logs of {ENTRIES} entries, {book.size_mb:.0f} MB")
    print(f"tomllib over the files     {book.tomllib_s:8.2f} s")
    print(f"day book from cold         {book.cold_s:8.2f} s  ({book.cold_times:.2f} of it; goal {COLD_SHARE:g})")
    print(f"first page again           {book.again_s:8.3f} s  (goal {again_goal_s:g})")
    return 0 if book.cold_times <= COLD_SHARE and book.again_s <= again_goal_s else 1


if __name__ == "__main__":
    raise SystemExit(main(*(int(one) for one in sys.argv[1:2])))
