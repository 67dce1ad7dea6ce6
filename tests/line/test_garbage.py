"""Whatever is typed, the day goes on: nothing raises, nothing is lost, and the log says what was printed."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from line.lined import LinedDay, Shelf

from dyesession.line import table
from dyesession.session.fold import fold, opening_state
from dyesession.session.log import check_log
from dyesession.session.opening import read_day
from dyesession.storage import DISK

# "rescue" writes to whatever folder follows it: it has a test of its own.
WORDS = (
    *(one for one in table.BY_WORD if one != "rescue"), *table.BY_LETTER, "A", "B", "C", "D", "E", "F",
    "into", "to", "by", "as", "because", ":", "why",
    "large skein", "small skein", "snippet 1", "alum", "madder", "tartar", "wash", "scour", "mordant",
    "extract",
    "strain", "dye", "rinse", "extract 3", "82", "82 C", "1.8 l", "29 g", "1 1/2 oz", "10 min", "1:15",
    "31 %",
    "4.5", "17", "99", "-5", "1e9", "9" * 40, "1,000", "mass", "volume_l", "strike", "last", "new bucket",
    "off",
    "simmering", "overnight", "5 min ago", "ago", "not now", "y", "wet", "against", "½", "“", "\x1b[2J",
    "\x07", "",
)  # fmt: skip
sentences = st.lists(st.sampled_from(WORDS), min_size=1, max_size=7).map(" ".join)
garbage = st.one_of(
    st.text(max_size=40), sentences, sentences, st.binary(max_size=20).map(lambda b: b.decode("latin-1"))
)


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shelf]:
    """Days to take up, in a folder of their own: a garbled "rescue" may write a log beside them and nowhere
    else.
    """
    moments = (
        "NEXT begin: mordant",
        "ASK How hot is C",
        "NEXT begin: dye",
        "NEXT on shade",
        "NEXT close the day",
    )
    folder = tmp_path_factory.mktemp("shelf")
    with pytest.MonkeyPatch.context() as here:
        here.chdir(folder)
        yield Shelf(folder, moments)


def in_the_log(path: Path) -> object:
    book = read_day(DISK, path)
    return fold(opening_state(book.plan), book.entries, book.opened)


@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(moment=st.integers(0, 5), lines=st.lists(garbage, max_size=12))
def test_no_line_raises_or_loses_the_day(shelf: Shelf, moment: int, lines: list[str]) -> None:
    day = shelf.take(moment)
    printed = day_typed(day, lines)
    state = day.session.snapshot.state
    assert day.session.snapshot.saving == "saved"
    path = Path(day.session.snapshot.path)  # another one after a "rescue"
    day.session.close()
    assert check_log(path) == []
    assert in_the_log(path) == state
    assert all(line.isprintable() for line in printed if not line.startswith("> "))


def day_typed(day: LinedDay, lines: list[str]) -> list[str]:
    """Type lines that may quit or close the day before they end."""
    try:
        return day.type(lines)
    except AssertionError as early:
        assert "ended before" in str(early)
        return []


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(moment=st.integers(0, 5), lines=st.lists(sentences, max_size=8))
def test_after_any_lines_empty_ones_and_honest_answers_still_bring_the_day_home(
    shelf: Shelf, moment: int, lines: list[str]
) -> None:
    day = shelf.take(moment)
    day_typed(day, [line for line in lines if not line.startswith(("quit", "q ", "bye", "exit"))])
    if day.session.snapshot.state.status != "complete":
        day.spaces_until("The day is closed.", most=400)
    assert day.session.snapshot.state.status == "complete"
    day.session.close()
