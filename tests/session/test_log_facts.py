"""Reading a whole log's facts quickly: the same facts as the careful reader gives, and any doubt goes there."""

from pathlib import Path

import pytest
from daybook.written import written
from days import Day
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.log import NewerFormat, NotALog, read_log
from dyesession.session.log_facts import facts_of, read_facts
from dyesession.session.log_read import contents_of, understood
from dyesession.session.quick_day import read_facts_of_day
from dyesession.storage import DISK


@pytest.fixture(scope="module")
def log(tmp_path_factory: pytest.TempPathFactory) -> Path:
    day = Day()
    for _ in range(30):
        day.space()
    state = day.state
    day.entries = (
        *day.entries,
        type(day.entries[0])(state.n + 1, day.clock.now(), e.Accounted(after=state.n, baths=({"lot": "madder"},))),
    )
    day.state = state.__class__(**{**state.__dict__, "n": state.n + 1})
    day.do(e.Noted('kind = "account"\nsaid the note'))
    return written(day, tmp_path_factory.mktemp("logs"))


def test_a_whole_log_gives_its_facts_without_the_account(log: Path) -> None:
    careful, quick = read_log(DISK, log), read_facts(DISK, log)
    assert quick.entries == tuple(one for one in careful.entries if one.kind != "account")
    assert len(quick.entries) == len(careful.entries) - 1
    assert quick.header == careful.header and quick.whole


def test_a_note_that_speaks_of_the_account_is_no_account(log: Path) -> None:
    assert read_facts(DISK, log).entries[-1].fields["text"].endswith("said the note")


def test_the_day_has_its_plan_and_its_name(log: Path) -> None:
    day = read_facts_of_day(DISK, log)
    assert day.name == log.stem and day.plan.fibre_mass_g == 240.0


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_a_damaged_log_reads_as_the_careful_reader_reads_it(log: Path, data: st.DataObject) -> None:
    whole = log.read_bytes()
    cut = data.draw(st.integers(0, len(whole) - 1))
    odd = data.draw(st.sampled_from([b"", b"x", b"\n", b"9"]))
    bad = whole[:cut] if data.draw(st.booleans()) else whole[:cut] + odd + whole[cut + 1 :]
    try:
        careful = contents_of(log, understood(bad, log))
    except UserError as trouble:
        with pytest.raises(type(trouble)):
            facts_of(log, bad)
        return
    quick = facts_of(log, bad)
    assert [one for one in quick.entries if one.kind != "account"] == [
        one for one in careful.entries if one.kind != "account"
    ]
    assert quick.notes == careful.notes and quick.header == careful.header


def test_a_newer_or_foreign_file_is_refused(log: Path) -> None:
    with pytest.raises(NewerFormat):
        facts_of(log, log.read_bytes().replace(b"format = 1", b"format = 2", 1))
    with pytest.raises(NotALog):
        facts_of(log, b"hello = 1\n")
