"""`daybook`, `shelf`, `repeat`, `compare`, `label`, `review --write` as they are typed, on the demo season."""

import json
import tomllib
from pathlib import Path

import pytest
from daybook.written import written
from days import MORNING, Day

from dyesession.cli import main
from dyesession.cli.demo import DAYS, MADDER, MORDANT, ONION, REPEAT, SECOND, THIRD, WELD, make_season
from dyesession.cli.demo import main as make
from dyesession.cli.dyers_folder import DyersFolder
from dyesession.cli.learn import learnt_for
from dyesession.cli.workroom import Workroom
from dyesession.clock import SteppingClock
from dyesession.daybook.finding import DayBook, day_book
from dyesession.kitchen.model import Kitchen
from dyesession.plan import work_out
from dyesession.plan.model import FibreLot
from dyesession.recipe import check_recipe
from dyesession.session import events as e
from dyesession.session import log
from dyesession.session.log import check_log
from dyesession.session.opening import LoggedDay, read_day
from dyesession.storage import DISK

ROOT = Path(__file__).resolve().parents[2]
SHIPPED = ROOT / "logs"
OURS = {"format", "session", "seal", "event"}  # what the log writes itself


@pytest.fixture(scope="module")
def room(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A room with the season that comes with the program as its own logs."""
    folder = tmp_path_factory.mktemp("demo room")
    (folder / "logs").mkdir()
    for name in DAYS:
        (folder / "logs" / f"{name}.toml").write_bytes((SHIPPED / f"{name}.toml").read_bytes())
    return folder


@pytest.fixture(scope="module")
def made_again(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("made again")
    make_season(folder)
    return folder


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def book(room: Path) -> DayBook:
    return day_book(DISK, [room / "logs"])


def typed(capsys: pytest.CaptureFixture[str], room: Path, *words: str, code: int = 0) -> str:
    assert main([words[0], "--workroom", str(room), *words[1:]]) == code
    said = capsys.readouterr()
    return said.out if code == 0 else said.err


def test_every_demo_log_is_whole_marked_and_closed(room: Path, book: DayBook) -> None:
    assert [one.file for one in sorted(book.days, key=lambda one: one.file)] == [
        f"{name}.toml" for name in sorted(DAYS)
    ]
    for line in book.days:
        assert check_log(room / "logs" / line.file) == []
        assert line.demo and not line.rehearsal and line.status == "complete" and line.verdict
        assert read_day(DISK, room / "logs" / line.file).header["demo"] is True
    assert len(DAYS) >= 8 and book.is_demo and not book.aside


def test_the_season_has_a_bath_used_twice_a_correction_an_interruption_and_a_repeat(
    room: Path, book: DayBook
) -> None:
    second, third = book.day(SECOND), book.day(THIRD)
    assert second.drawn[0].session == MADDER and third.drawn[0].session == SECOND
    kinds = {
        name: [one.event.kind for one in read_day(DISK, room / "logs" / f"{name}.toml").entries] for name in DAYS
    }
    assert "corrected" in kinds[WELD] and "resumed-after-gap" in kinds["demo-2025-05-24-onion-skins"]
    assert book.day(REPEAT).from_logs == (MADDER,)
    assert book.day(MORDANT).waiting == ("autumn skein", "odd ends")
    for name in DAYS:
        day = read_day(DISK, room / "logs" / f"{name}.toml")
        assert not [one for one in day.entries if one.trouble]


def test_the_season_that_comes_with_the_program_is_the_one_it_makes(made_again: Path) -> None:
    """What was done, with how much of what, how it came out; estimates and minutes may be reckoned better."""
    shipped = {one.name for one in SHIPPED.glob("*.toml")}
    assert {f"{name}.toml" for name in DAYS} <= shipped
    for name in DAYS:
        made, ours = (read_day(DISK, one / f"{name}.toml") for one in (made_again, SHIPPED))
        assert _done(made) == _done(ours), f"make {name} again: python -m dyesession.cli.demo --into logs"
        assert ours.header["demo"] is True and made.recipe == ours.recipe


def _done(day: LoggedDay) -> list[tuple[object, ...]]:
    """The acts that make a colour, and what was said of it."""
    acts = (e.Added, e.Strained, e.Entered, e.Lifted, e.Kept, e.Drawn, e.Cared, e.Closed, e.Corrected)
    told: list[tuple[object, ...]] = []
    for event in (one.event for one in day.entries):
        if isinstance(event, e.Added):
            told.append((event.kind, event.ingredient, event.vessel, pytest.approx(event.mass_g, rel=0.02)))
        elif isinstance(event, e.Cared):
            told.append((event.kind, event.what, event.lot, event.colour))
        elif isinstance(event, e.Read) and (event.colour or event.strength is not None):
            told.append((event.kind, event.vessel, event.lot, event.colour, event.strength))
        elif isinstance(event, acts):
            told.append((event.kind, getattr(event, "lot", ""), getattr(event, "verdict", "")))
    return told


def test_the_wheel_takes_every_demo_day_and_no_other_log() -> None:
    project = tomllib.loads((SHIPPED.parent / "pyproject.toml").read_text("utf-8"))
    taken = project["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    logs = {one.removeprefix("logs/"): to for one, to in taken.items() if one.startswith("logs")}
    assert logs == {f"{name}.toml": f"dyesession/shipped_logs/{name}.toml" for name in DAYS}


def test_the_same_season_comes_out_every_time(made_again: Path, tmp_path: Path) -> None:
    for path in make_season(tmp_path, names=(ONION, MORDANT)):
        assert (made_again / path.name).read_bytes() == path.read_bytes()
    assert make(["--into", str(made_again)]) == 1  # nothing is ever written over


def test_the_daybook_lists_filters_and_speaks_json(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "Madder brick red on wool, 165 g wool, 75 g wool (demo)" in typed(capsys, room, "daybook")
    silk = typed(capsys, room, "daybook", "--where", "fibre silk")
    assert THIRD in silk and MADDER not in silk
    near = json.loads(typed(capsys, room, "daybook", "--where", "near #8f3f2c within 4", "--json"))
    assert {one["session"] for one in near["days"]} == {MADDER, REPEAT}
    assert "No day answers" in typed(capsys, room, "daybook", "--where", "fibre linen")
    assert "dyestuff madder" in typed(capsys, room, "daybook", "--where", "linen", code=1)


def test_an_empty_workroom_is_told_how_to_begin(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = typed(capsys, tmp_path, "daybook")
    assert told.startswith("No day of your own yet") and "dyesession begin" in told
    assert told.count(" (demo)") == len(DAYS)


def test_the_demo_season_is_gone_once_there_is_a_day_of_one_s_own(
    room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    day = written(Day(), tmp_path / "logs")
    told = typed(capsys, tmp_path, "daybook")
    assert day.stem in told and "(demo)" not in told
    assert "Nothing stands on the shelf" in typed(capsys, tmp_path, "label", code=1)


def test_nothing_is_written_into_a_demo_day(room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "nothing is written into it" in typed(capsys, tmp_path, "resume", MADDER, code=1)


def test_the_shelf_shows_the_bath_that_was_used_twice_and_the_fibre_that_waits(
    room: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = typed(capsys, room, "shelf")
    assert "madder bath, used twice (demo)" in text and "autumn skein" in text
    told = json.loads(typed(capsys, room, "shelf", "--json"))
    twice = next(one for one in told["baths"] if one["label"] == "madder bath, used twice")
    assert twice["uses"] == 2 and twice["draws"][0]["volume_l"] == 3.5
    assert not any(one["label"].startswith("madder bath 3") for one in told["baths"])
    assert {one["lot"] for one in told["waiting"]} == {"autumn skein", "odd ends"}


def test_a_repeat_is_written_once_and_never_over_another(
    room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "again.toml"
    text = typed(capsys, room, "repeat", REPEAT, "--fibre", "90 g silk, washed", "--write", str(file))
    assert f"which goes back to {MADDER}" in text and "silk for wool" in text
    assert check_recipe(file) == []
    before = file.read_bytes()
    assert "is there already" in typed(capsys, room, "repeat", REPEAT, "--write", str(file), code=1)
    assert file.read_bytes() == before
    told = json.loads(typed(capsys, room, "repeat", MADDER, "--depth", "0.5", "--json"))
    assert told["lineage"] == [MADDER] and told["changes"][0]["about"] == "depth"
    assert "[[ingredient]]" in typed(capsys, room, "repeat", MADDER)


def test_two_days_are_compared(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = typed(capsys, room, "compare", MADDER, REPEAT)
    assert "apart (CIEDE2000)" in text and "The same:" in text
    told = json.loads(typed(capsys, room, "compare", MADDER, WELD, "--json"))
    assert told["differences"][0]["what"] in ("madder root", "dried weld")


def test_labels_and_tags_are_printed_and_written(
    room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "NOT FOOD: DYE" in typed(capsys, room, "label", "madder bath, used twice")
    tags = typed(capsys, room, "label", MADDER)
    assert "large skein, 165 g wool" in tags and "#8f3f2c" in tags
    page = tmp_path / "tags.html"
    assert "Written to" in typed(capsys, room, "label", SECOND, "--write", str(page))
    text = page.read_text("utf-8")
    assert "third skein" in text and "<svg" in text and "NOT FOOD: DYE" in text


def test_a_day_is_written_as_one_page(room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    page = tmp_path / "day.html"
    assert "Written to" in typed(capsys, room, "review", MADDER, "--write", str(page))
    text = page.read_text("utf-8")
    assert '<span class="mark">demo</span>' in text and "#8f3f2c" in text and text.count("<svg") >= 6


def test_demo_days_are_shown_learning_and_teach_nobody(
    room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    told = typed(capsys, tmp_path, "learn")
    assert told.startswith("What the demo days would teach") and "madder root on wool, taken at 1:30" in told
    assert json.loads(typed(capsys, tmp_path, "learn", "--json"))["demo"] is True
    assert learnt_for(Workroom(tmp_path), ["madder root"]).numbers == ()
    written(Day(), tmp_path / "logs")
    assert "No day has taught a number yet" in " ".join(typed(capsys, tmp_path, "learn").split())


def test_a_new_day_starts_from_what_days_taught_and_its_log_says_so(
    room: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A demo day under a name of the dyer's own, without its mark, is a day like any other."""
    text = (room / "logs" / f"{MADDER}.toml").read_text("utf-8")
    header = {**read_day(DISK, room / "logs" / f"{MADDER}.toml").header}
    assert header.pop("demo") is True and "[[prior]]" not in text
    day = read_day(DISK, room / "logs" / f"{MADDER}.toml")
    copied = log.create_log(DISK, tmp_path / "logs", "2025-04-12-own", {k: v for k, v in header.items() if k not in OURS})
    for one in day.entries:
        copied.append(one.event.kind, one.instant, e.event_fields(one.event), one.happened)
    copied.close()
    folder = DyersFolder(Workroom(tmp_path), DISK, SteppingClock(MORNING))
    recipe = folder.recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml")
    plan = work_out(recipe, (FibreLot("skein", "wool", 100.0, air_dry=True),), Kitchen())
    session = folder.begin(recipe, plan, Kitchen())
    path = Path(session.snapshot.path)
    session.close()
    tables = read_day(DISK, path).header["prior"]
    assert {one["name"] for one in tables} == {
        "partition of madder on wool", "rate of madder", "kept share of madder", "stiffening of madder",
        "liquor held by wool",
    }  # fmt: skip
    assert all(one["from"] == ["2025-04-12-own"] and one["how"] == "learned" for one in tables)
    assert check_log(path) == []
    again = folder.resume(path)
    again.close()
    freely = folder.begin_freely(plan.lots)
    improvised = Path(freely.snapshot.path)
    freely.close()
    by_substance = read_day(DISK, improvised).header["prior"]
    assert {one["name"].replace("madder root", "madder") for one in by_substance} == {one["name"] for one in tables}
    assert all(one["from"] == ["2025-04-12-own"] for one in by_substance) and check_log(improvised) == []


def test_a_day_is_repeated_towards_a_target(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = json.loads(typed(capsys, room, "repeat", MADDER, "--fibre", "90 g wool", "--target", "#b5715f", "--json"))
    assert 0.1 < told["towards"]["depth"] < 1.0 and told["towards"]["lot"] == "large skein"
    expected = told["expected_depth"]
    assert expected["low"] < told["towards"]["depth"] < expected["high"]
    assert "no depth can be told" in typed(capsys, room, "repeat", THIRD, "--target", "#b5715f", code=1)
