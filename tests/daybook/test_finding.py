"""The day book of a folder: every log in one line, the broken ones with their reason, two machines merged."""

import json
import shutil
from datetime import date, timedelta
from pathlib import Path

import pytest
from daybook.logged import logged
from daybook.written import written
from days import Day

from dyesession.daybook.aftercare import LAPSES_DAYS, aftercare_due, all_due
from dyesession.daybook.day_line import as_plain, day_line, from_plain
from dyesession.daybook.finding import FolderUnreadable, day_book
from dyesession.daybook.listed import day_book_as_json, day_book_lines
from dyesession.daybook.review import review
from dyesession.daybook.where import NotACondition, condition, matching
from dyesession.session import events as e
from dyesession.session.opening import read_day
from dyesession.storage import DISK

TODAY = date(2026, 3, 16)
FIRST, SECOND = "2026-03-14-a-day-k7q2", "2026-04-02-a-day-m3xz"


@pytest.fixture(scope="module")
def home() -> Day:
    """A whole day, with a note, closed with a verdict."""
    day = Day()
    while day.state.status != "complete":
        command = day.suggest()
        if isinstance(command, e.Closed):
            day.do(e.Noted("for the mittens"))
            day.do(e.Closed("even, a little pale"))
        else:
            day.space()
    return day


@pytest.fixture
def logs(home: Day, tmp_path: Path) -> Path:
    folder = tmp_path / "logs"
    written(home, folder, FIRST)
    return folder


def test_a_day_takes_one_line_with_all_that_one_looks_for(logs: Path) -> None:
    [line] = day_book(DISK, [logs]).days
    assert (line.session, line.day, line.status) == (FIRST, "2026-03-14", "complete")
    assert [(one.kind, one.mass_g) for one in line.fibre] == [("wool", 165.0), ("wool", 75.0)]
    assert line.dyestuffs == ("madder root",) and "potassium alum" in line.others
    assert line.verdict == "even, a little pale" and line.notes == ("for the mittens",)
    assert line.dyed and not line.rehearsal and not line.demo
    assert from_plain(json.loads(json.dumps(as_plain(line)))) == line


def test_a_correction_counts_in_the_line(home: Day, tmp_path: Path) -> None:
    day = Day()
    day.__dict__.update(home.__dict__)
    said = next(one for one in day.entries if isinstance(one.event, e.Closed))
    day.do(e.Corrected(said.n, "misheard", changes=({"key": "verdict", "value": "streaky"},)))
    written(day, tmp_path, FIRST)
    assert day_book(DISK, [tmp_path]).days[0].verdict == "streaky"


def test_the_newest_day_stands_first(home: Day, logs: Path) -> None:
    later = Day()
    later.clock.advance(19 * 86400)
    later.opened = later.clock.now()
    later.do(e.Noted("begun late"))
    written(later, logs, SECOND)
    assert [one.session for one in day_book(DISK, [logs]).days] == [SECOND, FIRST]


def test_an_index_gives_the_same_book_without_reading_any_log_again(
    home: Day, logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    index = tmp_path / "cache" / "index.json"
    cold = day_book(DISK, [logs], index)

    def nobody(*_: object) -> None:
        raise AssertionError("a log was read again")

    monkeypatch.setattr("dyesession.daybook.finding.day_from_bytes", nobody)
    assert day_book(DISK, [logs], index) == cold
    written(home, logs, SECOND)
    with pytest.raises(AssertionError, match="read again"):
        day_book(DISK, [logs], index)


@pytest.mark.parametrize("spoilt", ["", "{", '{"mark": "another", "days": {}}', "[1]", "null", "{}"])
def test_a_spoilt_index_costs_only_time(logs: Path, tmp_path: Path, spoilt: str) -> None:
    index = tmp_path / "index.json"
    cold = day_book(DISK, [logs], index)
    index.write_text(spoilt, "utf-8")
    assert day_book(DISK, [logs], index) == cold
    table = json.loads(index.read_text("utf-8"))
    table["days"] = {key: {"session": 3} for key in table["days"]}
    index.write_text(json.dumps(table), "utf-8")
    assert day_book(DISK, [logs], index) == cold


def test_a_figure_changed_by_hand_is_seen_though_size_and_last_seal_are_the_same(
    logs: Path, tmp_path: Path
) -> None:
    index, path = tmp_path / "index.json", logs / f"{FIRST}.toml"
    assert not day_book(DISK, [logs], index).days[0].faults
    path.write_bytes(path.read_bytes().replace(b"for the mittens", b"for the kittens"))
    [line] = day_book(DISK, [logs], index).days
    assert any("changed after it was saved" in one for one in line.faults)


def test_an_index_that_cannot_be_kept_hurts_nobody(logs: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    assert day_book(DISK, [logs], tmp_path / "file" / "index.json").days


def test_broken_and_foreign_files_are_listed_with_their_reason_and_hurt_nothing(logs: Path) -> None:
    (logs / "empty.toml").touch()
    (logs / "foreign.toml").write_text("hello = 1\n")
    (logs / "folder.toml").mkdir()
    (logs / "leading.toml").symlink_to(logs / f"{FIRST}.toml")
    (logs / "newer.toml").write_bytes(
        (logs / f"{FIRST}.toml").read_bytes().replace(b"format = 1", b"format = 7", 1)
    )
    (logs / "notes.txt").write_text("not a log at all")
    book = day_book(DISK, [logs])
    assert [one.session for one in book.days] == [FIRST]
    reasons = {one.file: one.reason for one in book.aside}
    assert set(reasons) == {"empty.toml", "foreign.toml", "folder.toml", "leading.toml", "newer.toml"}
    assert "no session log" in reasons["empty.toml"] and "newer dyesession" in reasons["newer.toml"]
    assert "link, a pipe, a device or a folder" in reasons["folder.toml"]


def test_a_log_cut_short_by_a_half_done_copy_is_listed_with_what_is_wrong(logs: Path) -> None:
    path = logs / f"{FIRST}.toml"
    path.write_bytes(path.read_bytes()[:-100])
    [line] = day_book(DISK, [logs]).days
    assert line.session == FIRST and any("not a whole entry" in one for one in line.faults)
    assert any("not a whole entry" in one for one in day_book_lines([line], (), TODAY, 400))


def test_two_machines_folders_copied_together_give_one_day_book(home: Day, tmp_path: Path) -> None:
    one, other, both = tmp_path / "one", tmp_path / "other", tmp_path / "both"
    written(home, one, FIRST)
    written(home, other, SECOND)
    shutil.copytree(one, both)
    shutil.copytree(other, both, dirs_exist_ok=True)
    merged = day_book(DISK, [both])
    assert {line.session for line in merged.days} == {FIRST, SECOND} and not merged.aside
    assert merged == day_book(DISK, [one, other])


def test_an_older_copy_of_a_day_is_told_and_the_longer_one_counts(logs: Path) -> None:
    path = logs / f"{FIRST}.toml"
    whole = path.read_bytes()
    (logs / f"{FIRST} (copy).toml").write_bytes(whole[: whole.rindex(b"[[event]]")])
    book = day_book(DISK, [logs])
    assert [one.file for one in book.days] == [path.name]
    assert [one.reason for one in book.aside] == [
        f"{FIRST} (copy).toml is a copy, older or the same, of {path.name}"
    ]


def test_a_day_written_on_at_two_places_is_said_so(home: Day, logs: Path, tmp_path: Path) -> None:
    day = Day()
    day.__dict__.update(home.__dict__)
    day.do(e.Cared("rub test", result="clean"))
    written(day, tmp_path / "b", FIRST)
    day.__dict__.update(home.__dict__)
    day.do(e.Cared("window test", result="hung"))
    day.do(e.Cared("dry shade", result="red"))
    shutil.copy(written(day, tmp_path / "c", FIRST), logs / f"{FIRST}.toml")
    shutil.copy(tmp_path / "b" / f"{FIRST}.toml", logs / "other-copy.toml")
    book = day_book(DISK, [logs])
    assert [one.file for one in book.days] == [f"{FIRST}.toml"]
    assert "with other entries" in book.aside[0].reason


def test_a_folder_that_is_not_there_holds_nothing_and_a_file_is_no_folder(tmp_path: Path) -> None:
    assert day_book(DISK, [tmp_path / "none"]).days == ()
    (tmp_path / "file").touch()
    with pytest.raises(FolderUnreadable, match="cannot be looked into"):
        day_book(DISK, [tmp_path / "file"])


def test_a_rehearsal_never_counts_and_a_demo_day_only_among_its_like(home: Day, tmp_path: Path) -> None:
    written(home, tmp_path, "2026-03-14-a-rehearsal-aaaa", rehearsal=True)
    written(home, tmp_path, "demo-a-day", demo=True)
    book = day_book(DISK, [tmp_path])
    assert book.is_demo and [one.session for one in book.counted] == ["demo-a-day"]
    written(home, tmp_path, FIRST)
    book = day_book(DISK, [tmp_path])
    assert not book.is_demo and [one.session for one in book.counted] == [FIRST]


def test_aftercare_is_due_the_day_after_and_is_done_once_it_is_logged(home: Day, tmp_path: Path) -> None:
    day = Day()
    day.__dict__.update(home.__dict__)
    written(day, tmp_path, FIRST)
    [line] = day_book(DISK, [tmp_path]).days
    ended = date.fromisoformat(line.closed[:10])
    after = ended + timedelta(days=1)
    assert aftercare_due(line, ended) == ()
    assert [one.what for one in aftercare_due(line, after)] == [
        "dry shade", "rub on a white cloth", "window test",
    ]  # fmt: skip
    assert "second wash" in [one.what for one in aftercare_due(line, ended + timedelta(days=7))]
    assert aftercare_due(line, ended + timedelta(days=LAPSES_DAYS + 30)) == ()
    day.do(e.Cared("dry shade", "large skein", "brick red", "#8b3a2b"))
    day.do(e.Cared("rub test", result="clean"))
    day.do(e.Cared("window test", result="hung in the south window"))
    written(day, tmp_path / "cared", FIRST)
    [line] = day_book(DISK, [tmp_path / "cared"]).days
    assert aftercare_due(line, after) == ()
    assert [one.what for one in all_due([line], ended + timedelta(days=30))] == [
        "second wash", "window test, the look",
    ]  # fmt: skip


def test_a_rehearsal_and_a_day_that_dyed_nothing_want_no_aftercare(home: Day, tmp_path: Path) -> None:
    written(home, tmp_path, FIRST, rehearsal=True)
    undyed = Day()
    undyed.do(e.Stopped("no time"))
    written(undyed, tmp_path, SECOND)
    later = date(2026, 3, 30)
    assert all_due(day_book(DISK, [tmp_path]).days, later) == ()


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("dyestuff madder", True), ("dyestuff Rubia tinctorum", True), ("dyestuff weld", False),
        ("with alum", True), ("fibre wool", True), ("fibre silk", False), ("recipe brick", True),
        ("verdict pale", True), ("verdict streaks", False), ("notes mittens", True), ("notes hat", False),
        ("since 2026-03", True), ("since 2026-03-15", False), ("until 2026", True), ("until 2026-02", False),
        ("on 2026-03", True), ("on 2026-03-13", False), ("near #8b3a2b", True), ("near #8b3a2b within 3", True),
        ("near lab(90 0 0)", False), ("notes=mittens", True), ("kept", True), ("due dry", False),
        ("due", True), ("rehearsal", False), ("repeats", False),
    ],
)  # fmt: skip
def test_days_are_found_by_what_a_dyer_remembers(home: Day, tmp_path: Path, text: str, found: bool) -> None:
    day = Day()
    day.__dict__.update(home.__dict__)
    day.do(e.Cared("dry shade", "large skein", "brick red", "#8b3a2b"))
    written(day, tmp_path, FIRST)
    book = day_book(DISK, [tmp_path])
    assert bool(matching(book.days, [condition(text, date(2026, 4, 1))])) is found


@pytest.mark.parametrize("text", ["", "madder", "dyestuff", "since tomorrow", "dyestuf madder"])
def test_a_condition_nobody_can_look_for_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(NotACondition, match=r"expected|for example"):
        condition(text, TODAY)


def test_the_lines_fit_the_width_and_json_tells_what_is_due(logs: Path) -> None:
    book = day_book(DISK, [logs])
    for width in (40, 80):
        assert all(len(one) <= width for one in day_book_lines(book.days, book.aside, TODAY, width))
    told = day_book_as_json(book.days, book.aside, date(2026, 3, 20))
    assert "dry shade" in [one["what"] for one in told["days"][0]["aftercare_due"]]
    json.dumps(told)


def test_a_day_dyed_in_a_kept_bath_is_found_by_the_dyestuff_that_the_bath_brought(tmp_path: Path) -> None:
    day = Day()
    day.do(e.Drawn("dye pot", "weld bath 3", SECOND, 2.0, ("weld", "potassium alum")))
    written(day, tmp_path, FIRST)
    [line] = day_book(DISK, [tmp_path]).days
    assert line.dyestuffs == () and line.dyed_with == ("weld",)
    assert matching([line], [condition("dyestuff weld", TODAY)]) and not matching([line], [condition("dyestuff alum", TODAY)])
    assert f"from the kept bath “weld bath 3” of {SECOND}" in " ".join(" ".join(day_book_lines([line], (), TODAY, 200)).split())
    assert from_plain(json.loads(json.dumps(as_plain(line)))) == line


def test_what_was_read_before_the_dyeing_is_not_how_it_came_out(tmp_path: Path) -> None:
    day = Day()
    day.do(e.Read(lot="large skein", colour="#d9d2c3", wet=False))
    while (step := day.state.step("dye")) is None or step.status != "complete":
        day.space()
    written(day, tmp_path, FIRST)
    [line] = day_book(DISK, [tmp_path]).days
    assert line.colours == () and [one.colour for one in line.undyed] == ["#d9d2c3"]
    assert not matching([line], [condition("near #d9d2c3 within 3", TODAY)])
    day.do(e.Read(lot="large skein", colour="#8b3a2b", wet=True))
    written(day, tmp_path, SECOND)
    line = next(one for one in day_book(DISK, [tmp_path]).days if one.session == SECOND)
    assert [one.colour for one in line.colours] == ["#8b3a2b"], "what is read at the pot afterwards is"
    shades = review(read_day(DISK, tmp_path / f"{SECOND}.toml")).shades
    assert shades == ("large skein, before dyeing, dry: #d9d2c3", "large skein, wet: #8b3a2b")


def test_a_dry_reading_of_undyed_fibre_judges_no_dry_shade() -> None:
    day = Day()
    day.do(e.Read(lot="large skein", colour="#d9d2c3", wet=False))
    day.home()
    line = day_line(logged(day), "a.toml")
    assert "dry shade" in [one.what for one in aftercare_due(line, date(2026, 3, 20))]
