"""Odd logs: what only an attacker, a sick disk or a strange editor would leave."""

import errno
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reliability.days import DAYS, GOLDEN, PLAIN, QUICK, START
from reliability.oracle import look, original

from dyesession.clock import Instant
from dyesession.errors import UserError
from dyesession.session import log_recover, seal_scan, seal_split
from dyesession.session.log import (
    UNREADABLE,
    LogError,
    NotALog,
    NotSaved,
    Unsure,
    create_log,
    open_log,
    read_log,
)
from dyesession.session.seal import checksum, sealed_block, sealed_header
from dyesession.session.seal_scan import scan
from dyesession.storage import TooLarge
from dyesession.storage.faulty import Fault, FaultyStorage
from dyesession.tomlfile import LOG

NOW = Instant(START, "ffffffff", 1.0)
PLAIN_LOG = GOLDEN / f"{PLAIN.name}.toml"


def sealed(*blocks: str) -> bytes:
    """A log whose blocks are as given, each with a right seal."""
    data, own = sealed_header('format = 1\nsession = "log"\n')
    for number, block in enumerate(blocks, 1):
        text, seal = sealed_block(f"[[event]]\n{block}", number, own)
        data, own = data + b"\n" + text.encode(), seal.own
    return data


WHEN = f"at = {START.isoformat()}\n"


@pytest.mark.parametrize(
    "block",
    [
        "n = 1\n",
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = nan\nkind = "x"\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\nkind = "x"\nmass_g = inf\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\nkind = "x"\nmany = 0x{"f" * 40}\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\nkind = "x"\nbaths = [{{mass_g = nan}}]\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = true\nkind = "x"\n',
        f'n = 1\n{WHEN}boot = 7\nup_s = 1.0\nkind = "x"\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\nkind = "x"\nhappened = "noon"\n',
        'n = 1\nat = 2026-03-14T09:00:00\nboot = "b"\nup_s = 1.0\nkind = "x"\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\nkind = "x"\n[event.sub]\n',
        "n = 1\nnot toml\n",
        f"n = 1\n{'a.' * 20}a = 1\n",
        f"n = 1\ndeep = {'[' * 30}{']' * 30}\n",
        f'n = 1\nlong = "{"x" * 20_000}"\n',
        f'n = 1\n{WHEN}boot = "b"\nup_s = 1.0\nkind = "x"\n' + f"{'# filler' * 100}\n" * 80,
    ],
)
def test_a_sealed_block_that_is_no_entry_keeps_its_number_and_is_marked(block: str) -> None:
    good = f'n = 2\n{WHEN}boot = "b"\nup_s = 2.0\nkind = "noted"\n'
    found = scan(sealed(block, good))
    assert [(one.n, one.kind, bool(one.trouble)) for one in found.entries] == [
        (1, UNREADABLE, True),
        (2, "noted", False),
    ]
    assert found.faults and not found.torn


def test_a_whole_number_of_seconds_is_a_number_of_seconds() -> None:
    found = scan(sealed(f'n = 1\n{WHEN}boot = "b"\nup_s = 7\nkind = "noted"\n'))
    assert found.entries[0].up_s == 7.0 and not found.faults


def test_a_block_whose_number_and_seal_differ_is_kept_and_marked() -> None:
    found = scan(sealed(f'n = 4\n{WHEN}boot = "b"\nup_s = 7.0\nkind = "noted"\n'))
    assert [(one.n, one.trouble) for one in found.entries] == [(1, "its number and its seal differ")]


def test_damage_that_leaves_no_text_is_marked_in_the_middle_and_set_aside_at_the_end(tmp_path: Path) -> None:
    true = original(PLAIN_LOG)
    for number in range(5):
        start = true.starts[number] + 30
        holed = true.data[:start] + bytes(20) + true.data[start + 20 :]
        found = look(holed)
        assert found is not None
        if number < 4:
            assert [one.n for one in found.entries if one.trouble] == [number + 1]
            assert found.entries[number].kind == UNREADABLE and len(found.entries) == 5
        else:
            assert found.entries == true.entries[:4] and found.torn


def test_after_an_entry_that_cannot_vouch_for_the_next_the_next_is_kept_and_marked() -> None:
    true = original(PLAIN_LOG)
    block = true.block(1)
    spoilt = block.replace(b"85.25", b"85.95")
    spoilt = spoilt[:-4] + (b"0" if spoilt[-4:-3] != b"0" else b"1") + spoilt[-3:]  # and its own checksum
    found = look(true.data.replace(block, spoilt))
    assert found is not None
    assert [one.n for one in found.entries] == [1, 2, 3, 4, 5]
    assert [one.n for one in found.entries if one.trouble] == [2, 3]


@pytest.mark.parametrize("seal", [b'seal = "9-73', b'seal = "2-99'])
def test_an_entry_damaged_beyond_its_place_does_not_take_what_follows_with_it(seal: bytes) -> None:
    true = original(PLAIN_LOG)
    assert b'seal = "2-73' in true.block(1)
    spoilt = true.block(1).replace(b"n = 2", b"n = 7").replace(b'seal = "2-73', seal)
    found = look(true.data.replace(true.block(1), spoilt))
    assert found is not None
    assert [one.n for one in found.entries] == [1, 3, 4, 5]
    assert found.missing == ((2, 2),)


def test_a_damaged_head_seal_costs_no_entry(tmp_path: Path) -> None:
    true = original(PLAIN_LOG)
    for spoilt in (
        true.data.replace(b'header = "0-', b'header = "0_'),
        true.data.replace(b"[seal]", b"[seel]"),
    ):
        path = tmp_path / "log.toml"
        path.write_bytes(spoilt)
        with open_log(QUICK, path) as writer:
            assert writer.contents.header_trouble
            assert [one.n for one in writer.contents.entries] == [1, 2, 3, 4, 5]
            assert writer.append("noted", NOW, {}).n == 6


def test_a_head_that_is_no_toml_costs_no_entry() -> None:
    true = original(PLAIN_LOG)
    found = look(true.data.replace(b'name = "large skein"', b"name = large skein"))
    assert found is not None and "cannot be read" in (found.header_trouble or "")
    assert found.header == {} and found.entries == true.entries


def test_a_header_checksum_that_was_spoilt_does_not_spoil_the_first_entry() -> None:
    true = original(PLAIN_LOG)
    found = look(true.data.replace(b'header = "0-1', b'header = "0-2'))
    assert found is not None and found.header_trouble
    assert found.entries == true.entries


def test_a_file_that_is_mostly_something_else_is_no_log(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(seal_scan, "MOST_STRAYS", 10)
    monkeypatch.setattr(seal_split, "MOST_STRAYS", 10)
    path = tmp_path / "log.toml"
    stale = original(PLAIN_LOG).block(0)
    for unit in (b"\n[[event]]\nx = 1\n", stale):
        path.write_bytes(sealed() + unit * 12)
        with pytest.raises(NotALog):
            read_log(QUICK, path)
    path.write_bytes(sealed() + b"\n[[event]]\nx = 1\n" * 10)
    assert read_log(QUICK, path).torn


@pytest.mark.parametrize("moved", [1, 60, 80])
def test_a_long_run_of_entries_pasted_elsewhere_is_put_back_in_order(moved: int) -> None:
    def block(n: int) -> str:
        return f'n = {n}\n{WHEN}boot = "b"\nup_s = {n}.0\nkind = "noted"\n'

    data = sealed(*(block(n) for n in range(1, 101)))
    head, *blocks = data.split(b"\n\n[[event]]")
    order = [*blocks[moved:], *blocks[:moved]]
    found = look(b"".join([head + b"\n", *(b"\n[[event]]" + one.rstrip(b"\n") + b"\n" for one in order)]))
    assert found is not None and not found.missing
    assert [one.n for one in found.entries] == list(range(1, 101))
    assert 0 < len([one for one in found.entries if one.trouble]) < 100


def test_an_entry_line_with_spaces_after_it_is_an_entry_line() -> None:
    true = original(PLAIN_LOG)
    found = look(true.data.replace(b"[[event]]\nn = 2", b"[[event]] \t\nn = 2"))
    assert found is not None
    assert [one.n for one in found.entries if one.trouble] == [2]
    found = look(true.data.replace(b"[[event]]\nn = 2", b"[[event]]x\nn = 2"))
    assert found is not None and found.missing == ((2, 2),)
    found = look(b"[[event]]\n" + true.data)
    assert found is not None and not found.sealed_head


# --- a disk that is full of torn ends, too large, or short


def test_torn_ends_get_names_of_their_own(tmp_path: Path) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(PLAIN_LOG.read_bytes())
    for number in range(1, 4):
        with path.open("ab") as file:
            file.write(b"torn %d" % number)
        with open_log(QUICK, path) as writer:
            assert writer.recovered == log_recover.Recovered(6, tmp_path / f"log.torn-{number}")
    assert [(tmp_path / f"log.torn-{number}").read_bytes() for number in (1, 2, 3)] == [
        b"torn 1",
        b"torn 2",
        b"torn 3",
    ]
    assert path.read_bytes() == PLAIN_LOG.read_bytes()


def test_with_too_many_torn_ends_beside_it_a_log_is_left_as_it_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(log_recover, "MOST_SIDE_FILES", 1)
    path = tmp_path / "log.toml"
    path.write_bytes(PLAIN_LOG.read_bytes() + b"torn")
    (tmp_path / "log.torn-1").write_bytes(b"earlier")
    with pytest.raises(LogError, match="can still be looked at"):
        open_log(QUICK, path)
    assert path.read_bytes() == PLAIN_LOG.read_bytes() + b"torn"
    assert (tmp_path / "log.torn-1").read_bytes() == b"earlier"


def test_a_torn_end_is_told_in_one_sentence_with_its_line_and_length() -> None:
    data = PLAIN_LOG.read_bytes()
    tail = b"\n[[event]]\nn = 6\n\n[[event]]\nn = 7\n"
    found = look(data + tail)
    assert found is not None
    assert found.faults == (
        f"line {data.count(10) + 1}: {len(tail)} bytes at the end are not a whole entry.",
    )


def test_a_whole_strand_of_another_day_behind_a_tear_is_all_set_aside() -> None:
    true, other = original(PLAIN_LOG), original(GOLDEN / f"{DAYS[2].name}.toml")
    for cut in range(2, 5):
        found = look(true.data[: true.ends[cut - 1]] + other.data[other.head_end :])
        assert found is not None
        assert found.entries == true.entries[:cut] and not found.missing and found.torn


def test_blank_lines_at_the_end_are_no_torn_end(tmp_path: Path) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(PLAIN_LOG.read_bytes() + b"\n \r\n")
    with open_log(QUICK, path) as writer:
        assert writer.recovered is None and writer.contents.whole
        writer.append("noted", NOW, {})
    assert read_log(QUICK, path).whole
    assert path.read_bytes().startswith(PLAIN_LOG.read_bytes() + b"\n \r\n")


def test_a_log_beyond_the_limit_is_refused_for_reading_and_writing(tmp_path: Path) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(PLAIN_LOG.read_bytes() + b"\n" * LOG.file_bytes)
    for opener in (open_log, read_log):
        with pytest.raises(TooLarge):
            opener(QUICK, path)


def test_where_links_cannot_be_made_a_log_begins_all_the_same(tmp_path: Path) -> None:
    storage = FaultyStorage(QUICK, {5: Fault("before", errno.EPERM)})
    with create_log(storage, tmp_path, "log", {}) as writer:
        assert storage.calls[4].name == "link"
        writer.append("noted", NOW, {})
    assert [one.name for one in tmp_path.iterdir()] == ["log.toml"]
    assert read_log(QUICK, writer.path).whole


@pytest.mark.parametrize("number", [9, 10, 11, 12])
def test_where_links_cannot_be_made_a_failed_beginning_leaves_nothing(tmp_path: Path, number: int) -> None:
    faults = {5: Fault("before", errno.EPERM), number: Fault("before", errno.ENOSPC)}
    with pytest.raises(NotSaved, match="the disk is full"):
        create_log(FaultyStorage(QUICK, faults), tmp_path, "log", {})
    assert list(tmp_path.iterdir()) == []


def test_without_links_another_log_of_the_name_is_still_not_overwritten(tmp_path: Path) -> None:
    (tmp_path / "log.toml").write_text("mine")
    storage = FaultyStorage(QUICK, {5: Fault("before", errno.EPERM)})
    with pytest.raises(UserError, match="is there already"):
        create_log(storage, tmp_path, "log", {})
    assert (tmp_path / "log.toml").read_text() == "mine"
    assert len(list(tmp_path.iterdir())) == 1


def test_a_beginning_whose_name_may_not_last_leaves_nothing(tmp_path: Path) -> None:
    storage = FaultyStorage(QUICK, {7: Fault("before", errno.EIO)})
    with pytest.raises(NotSaved, match="the disk reported an error"):
        create_log(storage, tmp_path, "log", {})
    assert storage.calls[6].name == "fsync_folder"
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "code", [errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EROFS, errno.EACCES, errno.EPERM]
)
def test_a_write_that_was_refused_is_not_saved_and_may_be_tried_again(tmp_path: Path, code: int) -> None:
    storage = FaultyStorage(QUICK, {10: Fault("before", code)})
    with create_log(storage, tmp_path, "log", {}) as writer:
        with pytest.raises(NotSaved) as refused:
            writer.append("noted", NOW, {})
        assert storage.calls[9].name == "write" and refused.value.retry
        assert writer.append("noted", NOW, {}).n == 1


@pytest.mark.parametrize("code", [errno.EIO, errno.EBADF, errno.EAGAIN])
def test_a_write_that_failed_for_no_known_reason_leaves_it_unsure(tmp_path: Path, code: int) -> None:
    storage = FaultyStorage(QUICK, {10: Fault("before", code)})
    with create_log(storage, tmp_path, "log", {}) as writer, pytest.raises(Unsure):
        writer.append("noted", NOW, {})


def test_a_link_made_though_the_word_of_it_was_lost_counts(tmp_path: Path) -> None:
    storage = FaultyStorage(QUICK, {5: Fault("after", errno.EIO)})
    create_log(storage, tmp_path, "log", {}).close()
    assert [one.name for one in tmp_path.iterdir()] == ["log.toml"]


def test_a_file_that_did_not_grow_as_it_should_is_not_trusted(tmp_path: Path) -> None:
    class Forgetful(FaultyStorage):
        def write(self, fd: int, data: bytes) -> int:
            super().write(fd, data[:-9])
            return len(data)

    with create_log(QUICK, tmp_path, "log", {}) as writer:
        path = writer.path
    with open_log(Forgetful(QUICK), path) as writer, pytest.raises(Unsure, match="did not grow"):
        writer.append("noted", NOW, {})


# --- whatever the bytes


def test_the_checksum_is_crc_32() -> None:
    assert checksum(b"123456789") == "cbf43926"  # the standard check value of CRC-32


@given(data=st.binary(max_size=600))
def test_no_bytes_make_the_reader_stumble(data: bytes) -> None:
    found = look(data)
    assert found is None or found.sealed_head or found.entries


@given(
    day=st.sampled_from(DAYS),
    edits=st.lists(st.tuples(st.integers(0, 1300), st.integers(0, 40), st.binary(max_size=40)), max_size=4),
)
def test_no_edit_of_a_log_makes_the_reader_stumble_or_lose_a_byte(
    day, edits: list[tuple[int, int, bytes]], tmp_path_factory: pytest.TempPathFactory
) -> None:
    data = (GOLDEN / f"{day.name}.toml").read_bytes()
    for at, length, new in edits:
        data = data[:at] + new + data[at + length :]
    path = tmp_path_factory.mktemp("logs") / "log.toml"
    path.write_bytes(data)
    try:
        with open_log(QUICK, path, go_on=True) as writer:
            aside = writer.recovered.side_file.read_bytes() if writer.recovered else b""
            assert path.read_bytes() + aside == data
            entry = writer.append("noted", NOW, {"text": "after the edit"})
    except UserError as refused:
        assert path.read_bytes() == data
        assert str(refused).count("\n") == 0
    else:
        assert read_log(QUICK, path).entries[-1] == entry
        assert not read_log(QUICK, path).torn


def test_a_time_of_another_zone_is_the_same_moment(tmp_path: Path) -> None:
    there = datetime(2026, 3, 14, 17, 2, 11, tzinfo=timezone(timedelta(hours=9)))
    with create_log(QUICK, tmp_path, "log", {"opened": there}) as writer:
        assert writer.contents.header["opened"] == START
