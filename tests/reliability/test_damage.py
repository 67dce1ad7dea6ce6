"""Bit rot, hand edits, blocks cut, swapped and pasted: never silent, and no more doubted than was touched."""

import re
from itertools import combinations
from pathlib import Path

import pytest
from reliability.days import DAYS, GOLDEN, PLAIN, QUICK, START, Day
from reliability.oracle import Original, look, numbers, original

from dyesession.clock import Instant
from dyesession.session import seal_split
from dyesession.session.log import EntriesMissing, check_log, open_log, read_log
from dyesession.storage import DISK

NOW = Instant(START, "ffffffff", 1.0)


def golden(day: Day) -> Original:
    return original(GOLDEN / f"{day.name}.toml")


def head_of(true: Original) -> object:
    found = look(true.data)
    assert found is not None
    return found.header


def silent_flips(day: Day) -> int:
    """How many of all single-bit flips of a log change what is read without a word."""
    true = golden(day)
    head, silent = head_of(true), 0
    damaged = bytearray(true.data)
    for bit in range(len(damaged) * 8):
        damaged[bit // 8] ^= 1 << bit % 8
        found = look(bytes(damaged))
        damaged[bit // 8] ^= 1 << bit % 8
        if found is None:
            continue
        sound = [one for one in found.entries if one.trouble is None]
        changed = found.entries != true.entries or found.header != head
        silent += (changed and not found.faults) or any(one not in true.entries for one in sound)
    return silent


@pytest.mark.parametrize("day", DAYS, ids=lambda day: day.name)
def test_no_flipped_bit_changes_a_log_silently(day: Day) -> None:
    assert silent_flips(day) == 0


def test_sabotage_flips_are_silent_to_a_reader_that_does_not_check_the_seal(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(seal_split, "fits", lambda *_: True)
    assert silent_flips(PLAIN) > 100


def test_a_flipped_bit_never_takes_another_entry_with_it() -> None:
    true = golden(PLAIN)
    damaged = bytearray(true.data)
    for at in range(true.head_end, len(damaged)):
        damaged[at] ^= 0x01
        found = look(bytes(damaged))
        damaged[at] ^= 0x01
        assert found is not None
        hit = next(number for number, end in enumerate(true.ends, 1) if at < end)
        sound = {one.n for one in found.entries if one.trouble is None}
        lost_beside = set(numbers(true.entries)) - sound - {hit, hit - 1}
        assert lost_beside <= {hit + 1}, at  # what follows a lost entry is kept, but said to follow a gap
        assert lost_beside <= set(numbers(found.entries))


# --- an editor was at it


@pytest.mark.parametrize("number", range(5))
def test_a_hand_edit_marks_the_edited_entry_and_no_other(tmp_path: Path, number: int) -> None:
    true = golden(PLAIN)
    edited = true.block(number).replace(b'kind = "', b'kind = "re-')
    path = tmp_path / "log.toml"
    path.write_bytes(true.data.replace(true.block(number), edited))
    with open_log(QUICK, path) as writer:
        assert writer.recovered is None
        entries = writer.contents.entries
        writer.append("noted", NOW, {"text": "on we go"})
    assert [one.n for one in entries if one.trouble] == [number + 1]
    assert entries[number].kind.startswith("re-")
    assert len(check_log(path)) == 2  # the entry, and the name of the copy
    assert read_log(QUICK, path).entries[-1].trouble is None


def test_an_edited_head_is_marked_and_its_entries_are_not(tmp_path: Path) -> None:
    true = golden(PLAIN)
    path = tmp_path / "log.toml"
    path.write_bytes(true.data.replace(b"mass_g = 165.0", b"mass_g = 156.0", 1))
    contents = read_log(DISK, path)
    assert contents.header_trouble and contents.header["fibre"][0]["mass_g"] == 156.0
    assert contents.entries == true.entries


def test_an_editors_line_ends_and_byte_order_mark_do_no_harm(tmp_path: Path) -> None:
    true = golden(DAYS[1])
    path = tmp_path / f"{DAYS[1].name}.toml"
    path.write_bytes(b"\xef\xbb\xbf" + true.data.replace(b"\n", b"\r\n"))
    contents = read_log(DISK, path)
    assert contents.entries == true.entries
    assert contents.header == head_of(true)
    assert contents.notes == (
        f"{path.name}, line 1: an editor has put a byte order mark before the first line.",
    )


def test_text_typed_between_entries_is_shown_and_not_counted(tmp_path: Path) -> None:
    true = golden(PLAIN)
    for number, place in enumerate([true.head_end, true.ends[1]]):
        found = look(true.data[:place] + b"# the skein felted\n" + true.data[place:])
        assert found is not None and found.entries == true.entries
        assert [one for one in found.faults if "belongs to no entry" in one], number


def test_text_typed_at_the_end_is_set_aside_not_lost(tmp_path: Path) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(golden(PLAIN).data + b"# dried overnight\n")
    with open_log(QUICK, path) as writer:
        assert writer.recovered is not None
        assert writer.recovered.side_file.read_bytes() == b"# dried overnight\n"


def test_a_copied_entry_with_a_new_number_but_the_old_seal_is_not_counted() -> None:
    true = golden(PLAIN)
    pasted = re.sub(rb"n = 2\n", b"n = 6\n", true.block(1))
    found = look(true.data + pasted)
    assert found is not None and found.entries == true.entries and found.torn


# --- whole blocks cut, swapped, pasted


def rebuilt(true: Original, order: list[int]) -> bytes:
    return true.data[: true.head_end] + b"".join(true.block(number) for number in order)


def test_every_entry_cut_from_the_middle_is_missed_and_named(tmp_path: Path) -> None:
    true = golden(PLAIN)
    everything = list(range(len(true.ends)))
    path = tmp_path / "log.toml"
    for gone in (set(some) for size in (1, 2, 3) for some in combinations(everything[:-1], size)):
        path.write_bytes(rebuilt(true, [one for one in everything if one not in gone]))
        with pytest.raises(EntriesMissing, match=str(min(gone) + 1)):
            open_log(QUICK, path)
        contents = read_log(QUICK, path)
        missing = {n - 1 for first, last in contents.missing for n in range(first, last + 1)}
        assert missing == gone
        assert numbers(contents.entries) == [one + 1 for one in everything if one not in gone]


def test_the_dyer_may_go_on_after_a_gap_and_the_gap_stays_visible(tmp_path: Path) -> None:
    true = golden(PLAIN)
    path = tmp_path / "log.toml"
    path.write_bytes(rebuilt(true, [0, 1, 3, 4]))
    with open_log(QUICK, path, go_on=True) as writer:
        assert writer.append("noted", NOW, {}).n == 6
    contents = read_log(QUICK, path)
    assert contents.missing == ((3, 3),)
    assert [(one.n, one.trouble) for one in contents.entries if one.trouble] == [
        (4, "it comes after missing entries")
    ]


def test_every_two_entries_swapped_are_shown_and_put_back_in_order() -> None:
    true = golden(PLAIN)
    for first, second in combinations(range(len(true.ends)), 2):
        order = list(range(len(true.ends)))
        order[first], order[second] = second, first
        found = look(rebuilt(true, order))
        assert found is not None and found.faults
        assert numbers(found.entries) == [1, 2, 3, 4, 5]
        assert not found.missing
        doubted = [one.n for one in found.entries if one.trouble]
        assert doubted == list(range(first + 1, second + 1))  # and not one of those behind the two
        assert len(found.faults) == len(doubted)


def test_every_entry_pasted_a_second_time_is_shown_and_counted_once() -> None:
    true = golden(PLAIN)
    everything = list(range(len(true.ends)))
    for copied in everything:
        for place in everything:
            order = [*everything[: place + 1], copied, *everything[place + 1 :]]
            found = look(rebuilt(true, order))
            assert found is not None
            if order[place] == order[place + 1] or copied <= place:
                assert found.faults
            assert numbers(found.entries) == [1, 2, 3, 4, 5]


def test_an_entry_of_another_day_pasted_in_is_shown_and_not_counted() -> None:
    true, other = golden(PLAIN), golden(DAYS[2])
    for place in range(len(true.ends)):
        for number in range(len(other.ends)):
            at = true.ends[place]
            found = look(true.data[:at] + other.block(number) + true.data[at:])
            assert found is not None and found.faults
            assert [one for one in found.entries if one.trouble is None] == list(true.entries)
            foreign = [one for one in found.entries if one.trouble]
            assert not foreign or (place == len(true.ends) - 1 and found.missing)


def test_what_cannot_be_seen_whole_entries_gone_from_the_end() -> None:
    """Stated, not promised: only the entry that closes a session, which gives their count, can tell."""
    true = golden(PLAIN)
    found = look(rebuilt(true, [0, 1, 2]))
    assert found is not None and not found.faults
    assert numbers(found.entries) == [1, 2, 3]
