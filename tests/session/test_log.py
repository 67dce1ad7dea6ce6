"""The session log as other rooms use it: begin, save, close, reopen, look, refuse."""

import os
import stat
from datetime import date, datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.clock import Instant, SteppingClock
from dyesession.errors import UserError
from dyesession.session.log import (
    EntriesMissing,
    Entry,
    LogError,
    LogInUse,
    LogWriter,
    NameTaken,
    NewerFormat,
    NotALog,
    NotSaved,
    ReadOnly,
    check_log,
    create_log,
    log_stamp,
    open_log,
    read_log,
    session_name,
)
from dyesession.storage import DISK, DiskStorage
from dyesession.storage.faulty import Fault, FaultyStorage

NAME = "2026-03-14-madder-brick-k7q2"
OPENED = datetime(2026, 3, 14, 9, 2, 11, tzinfo=timezone(timedelta(hours=1)))
HEADER = {"opened": OPENED, "program": "dyesession 0.1.0", "recipe": {"name": "Madder brick red"}}
ALUM = {"ingredient": "alum", "mass_g": 29.0, "resolution_g": 1.0, "how": "weighed"}


@pytest.fixture
def clock() -> SteppingClock:
    return SteppingClock(OPENED, up_s=4211.8)


@pytest.fixture
def writer(tmp_path: Path):
    with create_log(DISK, tmp_path / "logs", NAME, HEADER) as writer:
        yield writer


def test_a_log_begins_with_its_format_its_name_and_the_head_it_was_given(writer: LogWriter) -> None:
    contents = read_log(DISK, writer.path)
    assert writer.path.name == f"{NAME}.toml" and writer.name == NAME
    assert list(contents.header) == ["format", "session", "opened", "program", "recipe"]
    assert dict(contents.header) == {"format": 1, "session": NAME, **HEADER}
    assert contents.whole and contents.entries == () and not contents.torn
    assert (writer.n, writer.contents) == (0, contents)


def test_an_entry_comes_back_as_it_went_out(writer: LogWriter, clock: SteppingClock) -> None:
    happened = OPENED - timedelta(minutes=10)
    entry = writer.append("weighed", clock.advance(60), ALUM, happened)
    assert entry == Entry(1, clock.now().at, happened, clock.now().boot, 4271.8, "weighed", ALUM)
    assert entry.instant == clock.now()
    assert read_log(DISK, writer.path).entries == (entry,)


def test_entries_go_on_being_numbered_after_reopening(tmp_path: Path, clock: SteppingClock) -> None:
    with create_log(DISK, tmp_path, NAME, HEADER) as writer:
        first = writer.append("weighed", clock.now(), ALUM)
    with open_log(DISK, writer.path) as writer:
        assert writer.contents.entries == (first,) and writer.recovered is None
        second = writer.append("noted", clock.now(), {"text": "on we go"})
    assert second.n == 2
    assert read_log(DISK, writer.path).entries == (first, second)
    assert check_log(writer.path) == []


def test_one_entry_is_one_write_and_one_fsync(tmp_path: Path, clock: SteppingClock) -> None:
    storage = FaultyStorage(DISK)
    with create_log(storage, tmp_path, NAME, HEADER) as writer:
        before = len(storage.calls)
        writer.append("weighed", clock.now(), ALUM)
    names = [call.name for call in storage.calls[before:]]
    assert names == ["same_file", "size", "write", "size", "fsync", "close"]


def test_opening_waits_once_for_what_a_dead_writer_may_have_left_unwaited(tmp_path: Path) -> None:
    create_log(DISK, tmp_path, NAME, HEADER).close()
    storage = FaultyStorage(DISK)
    open_log(storage, tmp_path / f"{NAME}.toml").close()
    assert [call.name for call in storage.calls] == [
        "open_append",
        "lock",
        "same_file",
        "read",
        "fsync",
        "close",
    ]


def test_the_seal_is_always_the_last_key_and_names_the_seal_before(
    writer: LogWriter, clock: SteppingClock
) -> None:
    for _ in range(3):
        writer.append("weighed", clock.now(), ALUM)
    head, *blocks = writer.path.read_text().split("\n[[event]]\n")
    before = head.split('header = "0-')[1][:8]
    for number, block in enumerate(blocks, 1):
        last = block.rstrip("\n").split("\n")[-1]
        n, previous, own = last.removeprefix('seal = "').rstrip('"').split("-")
        assert (n, previous) == (str(number), before)
        before = own


def test_a_time_finer_than_a_millisecond_is_cut_the_same_in_memory_and_in_the_file(writer: LogWriter) -> None:
    fine = Instant(OPENED + timedelta(microseconds=1999), "b", 0.1)
    entry = writer.append("noted", fine, {"when": OPENED + timedelta(microseconds=1)})
    assert entry.at == OPENED + timedelta(milliseconds=1)
    assert read_log(DISK, writer.path).entries == (entry,)


@given(
    fields=st.dictionaries(
        st.from_regex(r"[a-z][a-z0-9_]{0,12}", fullmatch=True).filter(
            lambda key: key not in ("n", "at", "happened", "boot", "up_s", "kind", "seal")
        ),
        st.one_of(
            st.text(st.characters(exclude_categories=["Cs"]), max_size=60),
            st.integers(-(2**63), 2**63 - 1),
            st.floats(allow_nan=False, allow_infinity=False),
            st.booleans(),
            st.lists(st.text(st.characters(exclude_categories=["Cs"]), max_size=20), max_size=4),
            st.lists(st.fixed_dictionaries({"lot": st.text("ab", max_size=3), "mass_g": st.floats(0, 1e6)})),
        ),
        max_size=6,
    )
)
def test_whatever_plain_facts_are_saved_come_back_the_same(
    fields: dict[str, object], tmp_path_factory: pytest.TempPathFactory
) -> None:
    with create_log(DISK, tmp_path_factory.mktemp("logs"), NAME, {}) as writer:
        writer.append("noted", Instant(OPENED, "b", 1.0), fields)
        entry = writer.append("noted", Instant(OPENED, "b", 2.0), fields)
    contents = read_log(DISK, writer.path)
    assert contents.whole
    assert contents.entries[1] == entry
    assert contents.entries[1].fields == fields


# --- what is refused before a byte goes out


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"mass_g": float("nan")}, "nan"),
        ({"mass_g": float("inf")}, "inf"),
        ({"mass_g": None}, "expected text, a number"),
        ({"n_g": 2**63}, "too large"),
        ({"text": "half \ud800"}, "half a character"),
        ({"half \ud800": 1}, "half a character"),
        ({"text": "long " * 4000}, "characters long"),
        ({f"text{number}": "x" * 15_000 for number in range(5)}, "over 64000 bytes"),
        ({"when": datetime(2026, 3, 14, 9, 5)}, "offset"),
    ],
)
def test_a_fact_that_cannot_be_written_is_not_saved_and_harms_nothing(
    writer: LogWriter, clock: SteppingClock, fields: dict[str, object], said: str
) -> None:
    before = writer.path.read_bytes()
    with pytest.raises(NotSaved, match=said) as refused:
        writer.append("noted", clock.now(), fields)
    assert "Entry 1 is not saved" in str(refused.value) and not refused.value.retry
    assert writer.path.read_bytes() == before
    assert writer.append("noted", clock.now(), {"text": "shorter"}).n == 1


@pytest.mark.parametrize("key", ["n", "at", "happened", "boot", "up_s", "kind", "seal"])
def test_the_logs_own_keys_cannot_be_fields(writer: LogWriter, clock: SteppingClock, key: str) -> None:
    with pytest.raises(ValueError, match=key):
        writer.append("noted", clock.now(), {key: 1})


@pytest.mark.parametrize("key", ["seal", "event"])
def test_the_logs_own_keys_cannot_be_in_the_head(tmp_path: Path, key: str) -> None:
    with pytest.raises(ValueError, match="own keys"):
        create_log(DISK, tmp_path, NAME, {key: 1})


@pytest.mark.parametrize(
    "header", [{"fibre": None}, {"mass_g": float("nan")}, {"notes": ["x" * 9000 for _ in range(60)]}]
)
def test_a_head_that_cannot_be_written_begins_no_session(tmp_path: Path, header: dict[str, object]) -> None:
    with pytest.raises(NotSaved, match="The session is not begun"):
        create_log(DISK, tmp_path, NAME, header)
    assert list(tmp_path.iterdir()) == []


def test_a_log_is_never_begun_over_another(writer: LogWriter) -> None:
    before = writer.path.read_bytes()
    with pytest.raises(NameTaken, match="is there already"):
        create_log(DISK, writer.path.parent, NAME, {})
    assert writer.path.read_bytes() == before
    assert len(list(writer.path.parent.iterdir())) == 1


def test_a_full_log_takes_no_more(
    writer: LogWriter, clock: SteppingClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    from dyesession.session import log_writer
    from dyesession.tomlfile import Limits

    monkeypatch.setattr(log_writer, "LOG", Limits(file_bytes=len(writer.path.read_bytes()) + 300))
    writer.append("noted", clock.now(), {})
    with pytest.raises(NotSaved, match="begin a new session"):
        writer.append("noted", clock.now(), {"text": "x" * 200})
    writer.append("noted", clock.now(), {})


def test_a_closed_log_saves_nothing_and_may_be_closed_again(writer: LogWriter, clock: SteppingClock) -> None:
    writer.close()
    writer.close()
    with pytest.raises(NotSaved, match="the log is closed"):
        writer.append("noted", clock.now(), {})


# --- somebody else is at the file


def test_a_second_opening_names_the_first_and_offers_a_look(writer: LogWriter) -> None:
    with pytest.raises(LogInUse, match=f"process {os.getpid()} on .*looked at") as refused:
        open_log(DISK, writer.path)
    assert (refused.value.pid, refused.value.path) == (os.getpid(), writer.path)
    assert read_log(DISK, writer.path).whole


def test_where_the_system_does_not_tell_another_program_is_named(
    writer: LogWriter, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(DiskStorage, "holder", lambda *_: None)
    with pytest.raises(LogInUse, match="another program") as refused:
        open_log(DISK, writer.path)
    assert refused.value.pid is None


def test_the_lock_is_let_go_with_the_log(writer: LogWriter) -> None:
    writer.close()
    open_log(DISK, writer.path).close()


@pytest.mark.parametrize("mischief", ["added to", "cut", "removed", "replaced"])
def test_a_log_changed_behind_our_back_is_not_written_to_and_can_be_rescued(
    writer: LogWriter, clock: SteppingClock, tmp_path: Path, mischief: str
) -> None:
    first = writer.append("weighed", clock.now(), ALUM)
    if mischief == "added to":
        with writer.path.open("ab") as file:
            file.write(b"\n")
    elif mischief == "cut":
        os.truncate(writer.path, 10)
    elif mischief == "removed":
        writer.path.unlink()
    else:
        (tmp_path / "other").write_text("other")
        (tmp_path / "other").replace(writer.path)
    for why in ("changed, moved or removed", "the log is stopped"):
        with pytest.raises(NotSaved, match=why) as refused:
            writer.append("weighed", clock.now(), ALUM)
        assert not refused.value.retry
    with writer.rescue(tmp_path / "stick") as rescued:
        second = rescued.append("weighed", clock.now(), ALUM)
    assert writer.state == "closed"
    assert read_log(DISK, rescued.path).entries == (first, second)
    assert rescued.path == tmp_path / "stick" / writer.path.name


def test_a_log_replaced_while_it_was_being_opened_is_tried_again_later(writer: LogWriter) -> None:
    class Swapped(DiskStorage):
        def same_file(self, fd: int, path: Path) -> bool:
            return False

    writer.close()
    with pytest.raises(LogError, match="replaced just now"):
        open_log(Swapped(), writer.path)


def test_rescue_copies_never_overwrite_one_another_and_check_clean(
    writer: LogWriter, clock: SteppingClock
) -> None:
    names = []
    for _ in range(3):
        writer = writer.rescue(str(writer.path.parent))
        names.append(writer.path.name)
    writer.append("noted", clock.now(), {})
    writer.close()
    assert names[0] == f"{NAME}-rescue-1.toml" and len(set(names)) == 3
    assert check_log(writer.path) == []


def test_too_many_rescue_copies_are_refused(writer: LogWriter, monkeypatch: pytest.MonkeyPatch) -> None:
    from dyesession.session import log_writer

    monkeypatch.setattr(log_writer, "MOST_RESCUES", 0)
    with pytest.raises(NotSaved, match="rescue copies"):
        writer.rescue(writer.path.parent)
    assert writer.state == "open"


# --- what is no log, or not for us


def test_a_newer_format_is_refused_untouched_and_in_one_sentence(writer: LogWriter) -> None:
    writer.close()
    for newer in (
        b"format = 2\n[seal2]\nwhatever = 1\n",
        writer.path.read_bytes().replace(b"= 1", b"= 7", 1),
    ):
        writer.path.write_bytes(newer + b"unsealed tail")
        for opener in (open_log, read_log):
            with pytest.raises(NewerFormat, match="newer dyesession"):
                opener(DISK, writer.path)
        assert writer.path.read_bytes() == newer + b"unsealed tail"
    assert len(list(writer.path.parent.iterdir())) == 1


def test_a_newer_format_is_refused_even_where_its_line_is_odd(tmp_path: Path) -> None:
    (tmp_path / "log.toml").write_text("'format' = 3\n[seal]\nheader = \"0-00000000\"\n")
    with pytest.raises(NewerFormat):
        read_log(DISK, tmp_path / "log.toml")


@pytest.mark.parametrize(
    "data", [b"", b"\0" * 300, b"name = 'a recipe'\n", b'format = 1\nsession = "x', b"[[event]]\n"]
)
def test_what_is_no_log_is_left_as_it_is(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(data)
    for opener in (open_log, read_log):
        with pytest.raises(NotALog, match="no session log"):
            opener(DISK, path)
    assert path.read_bytes() == data
    assert len(list(tmp_path.iterdir())) == 1


def test_a_log_that_may_only_be_read_says_so(writer: LogWriter) -> None:
    import errno

    writer.close()
    storage = FaultyStorage(DISK, {1: Fault("before", errno.EROFS)})
    with pytest.raises(ReadOnly, match="only be read"):
        open_log(storage, writer.path)


def test_a_missing_log_is_told_in_plain_words(tmp_path: Path) -> None:
    for opener in (open_log, read_log):
        with pytest.raises(LogError, match="it is not there"):
            opener(DISK, tmp_path / "none.toml")


def test_a_gap_is_told_with_its_numbers(writer: LogWriter, clock: SteppingClock) -> None:
    for _ in range(5):
        writer.append("weighed", clock.now(), ALUM)
    writer.close()
    blocks = writer.path.read_bytes().split(b"\n\n[[event]]\n")
    writer.path.write_bytes(b"\n\n[[event]]\n".join([blocks[0], blocks[1], blocks[4], blocks[5]]))
    with pytest.raises(EntriesMissing, match="numbered 2 to 3;"):
        open_log(DISK, writer.path)
    assert check_log(writer.path)[0].endswith("entries 2 to 3 are missing.")


# --- looking closely


def test_a_check_finds_a_clock_that_ran_backwards_and_a_file_of_another_name(
    writer: LogWriter, tmp_path: Path
) -> None:
    writer.append("noted", Instant(OPENED, "one", 50.0), {})
    writer.append("noted", Instant(OPENED, "one", 49.0), {})
    writer.append("noted", Instant(OPENED, "two", 1.0), {})
    writer.close()
    other = writer.path.rename(tmp_path / "other.toml")
    assert check_log(other) == [
        "other.toml: entry 2 was recorded before entry 1 by the machine's own clock.",
        f"other.toml: the log inside is named {NAME}.",
    ]


def test_a_stamp_changes_with_every_entry_and_with_nothing_else(
    writer: LogWriter, clock: SteppingClock
) -> None:
    stamps = [log_stamp(DISK, writer.path)]
    assert stamps[0] == log_stamp(DISK, writer.path)
    for _ in range(2):
        writer.append("weighed", clock.now(), ALUM)
        stamps.append(log_stamp(DISK, writer.path))
    assert len(set(stamps)) == 3
    assert stamps[2][1].startswith("2-")
    (writer.path.parent / "no-log").write_text("x")
    assert log_stamp(DISK, writer.path.parent / "no-log") == (1, "")


def test_a_log_and_its_folder_are_for_their_owner_alone(writer: LogWriter) -> None:
    assert stat.S_IMODE(writer.path.stat().st_mode) == 0o600
    assert stat.S_IMODE(writer.path.parent.stat().st_mode) == 0o700


# --- names


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Madder brick", "2026-03-14-madder-brick-aaaa"),
        ("Krapp, röt & mehr!", "2026-03-14-krapp-rot-mehr-aaaa"),
        ("../../etc/passwd\0", "2026-03-14-etc-passwd-aaaa"),
        ("茜染め", "2026-03-14-session-aaaa"),
        ("x" * 300, f"2026-03-14-{'x' * 37}-aaaa"),
        ("a" * 36 + "-b", f"2026-03-14-{'a' * 36}-aaaa"),
    ],
)
def test_a_session_is_named_by_its_day_and_title(title: str, name: str) -> None:
    assert session_name(title, date(2026, 3, 14), lambda letters: letters[0]) == name


@given(title=st.text(max_size=300))
def test_whatever_the_title_the_name_leads_nowhere_else(title: str) -> None:
    name = session_name(title, date(2026, 3, 14))
    assert len(name) <= 48 + 5
    assert set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert name.startswith("2026-03-14-") and "--" not in name


@pytest.mark.parametrize(
    "name",
    ["", "../x", "/x", "a/b", ".hidden", "con.txt", "A", "a b", "nul\0", "a" * 90, "-x", "x\n", "x\u202e"],
)
def test_a_name_that_could_lead_elsewhere_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(NotSaved, match="will not do as the name") as refused:
        create_log(DISK, tmp_path, name, {})
    assert str(refused.value).isprintable()
    assert list(tmp_path.iterdir()) == []


def test_every_trouble_is_a_users_error() -> None:
    for kind in (LogError, NotSaved, NotALog, NewerFormat, EntriesMissing, LogInUse, ReadOnly, NameTaken):
        assert issubclass(kind, UserError)
