"""Logs of every release stay readable: these files were written by version 1 and are never changed."""

import tomllib

import pytest
from reliability.days import DAYS, GOLDEN, Day, written

from dyesession.session.log import check_log, read_log
from dyesession.storage import DISK


@pytest.mark.parametrize("day", DAYS, ids=lambda day: day.name)
def test_a_log_of_version_1_reads_as_it_was_written(tmp_path, day: Day) -> None:
    path = GOLDEN / f"{day.name}.toml"
    contents = read_log(DISK, path)
    fresh, entries = written(tmp_path, day)
    assert check_log(path) == []
    assert contents.entries == tuple(entries)
    assert fresh.read_bytes() == path.read_bytes()


@pytest.mark.parametrize("day", DAYS, ids=lambda day: day.name)
def test_any_toml_reader_understands_a_log(day: Day) -> None:
    path = GOLDEN / f"{day.name}.toml"
    plain = tomllib.loads(path.read_text("utf-8"))
    contents = read_log(DISK, path)
    assert [one["kind"] for one in plain["event"]] == [one.kind for one in contents.entries]
    assert [{**one.fields} for one in contents.entries] == [
        {k: v for k, v in one.items() if k not in ("n", "at", "happened", "boot", "up_s", "kind", "seal")}
        for one in plain["event"]
    ]
    assert {key: plain[key] for key in contents.header} == dict(contents.header)


@pytest.mark.parametrize("day", DAYS, ids=lambda day: day.name)
def test_a_log_shown_by_a_plain_pager_holds_no_control_characters(day: Day) -> None:
    text = (GOLDEN / f"{day.name}.toml").read_text("utf-8")
    assert all(one.isprintable() or one == "\n" for one in text)
