"""A day as one HTML page, and tags to print: whole by itself, every text of a log taken literally."""

import re
from datetime import date
from html.parser import HTMLParser
from pathlib import Path

import pytest
from daybook.logged import logged
from daybook.written import written
from days import Day
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.daybook.curves import curves
from dyesession.daybook.day_line import day_line
from dyesession.daybook.page import day_page
from dyesession.daybook.paper import paper_page
from dyesession.daybook.skein_tags import tag_lines, tags_of
from dyesession.daybook.walk import walk
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay, read_day
from dyesession.session.quick_day import read_facts_of_day
from dyesession.storage import DISK

NASTY = '<script>alert("x")</script> & "quoted"'


class Tags(HTMLParser):
    """Counts tags and checks that they close."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: list[str] = []

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.seen.append(tag)
        if tag not in ("meta", "br"):
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: object) -> None:
        self.seen.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def parsed(page: str) -> Tags:
    parser = Tags()
    parser.feed(page)
    parser.close()
    assert parser.open == []
    return parser


@pytest.fixture(scope="module")
def day() -> LoggedDay:
    run = Day()
    while not isinstance(run.suggest(), e.Lifted):
        run.space()
    run.do(e.Read("mordant pot", temperature_c=83.0))
    run.home()
    run.do(e.Noted(NASTY))
    run.do(e.Cared("dry shade", "large skein", "brick red", "#8b3a2b"))
    run.do(e.Cared("rub test", "", NASTY))
    return logged(run, {"recipe": {"name": "m", "source": "dyed on 2026-01-02, log 2026-01-02-old-aaaa"}})


def test_the_page_stands_by_itself_and_closes_every_tag(day: LoggedDay) -> None:
    page = day_page(day)
    seen = parsed(page).seen
    assert not {"script", "link", "img", "iframe"} & set(seen) and "svg" in seen
    assert not re.search(r"(?:src|href)=|url\(|http", page)


def test_the_page_has_lanes_curves_doses_baths_the_shade_and_its_lineage(day: LoggedDay) -> None:
    page = day_page(day)
    for text in ("hollow as planned", "Temperature of the dye pot", "madder root", "reckoned now",
                 "large skein, dry: #8b3a2b", "Repeats 2026-01-02-old-aaaa"):  # fmt: skip
        assert text in page
    assert page.count("<circle") >= 1 and "stroke-dasharray" in page


def test_a_log_s_own_text_is_taken_literally(day: LoggedDay) -> None:
    page = day_page(day)
    assert "<script" not in page and "&lt;script&gt;" in page


@settings(max_examples=10, deadline=None)
@given(st.text(max_size=60))
def test_whatever_a_dyer_writes_the_page_stays_whole(text: str) -> None:
    run = Day()
    run.do(e.Noted(text))
    run.do(e.Stopped(text))
    parsed(day_page(logged(run)))


def test_a_curve_has_what_was_read_and_what_was_wanted(day: LoggedDay) -> None:
    paces = tuple(walk(day))
    [mordant] = [one for one in curves(paces, paces[-1].after) if one.vessel == "mordant pot"]
    assert any(degrees == 83.0 for _, degrees in mordant.read)
    [wanted] = mordant.wanted
    assert [degrees for _, degrees in wanted] == [15.0, 85.0, 85.0]
    assert wanted[1][0] - wanted[0][0] == 45.0 and wanted[2][0] - wanted[1][0] == 60.0


def test_every_lot_has_a_tag_with_its_own_colour(day: LoggedDay) -> None:
    large, small = tags_of(day_line(day, "x.toml"))
    assert (large.lot, large.colour, small.colour) == ("large skein", "#8b3a2b", "")
    rows = dict(large.rows)
    assert rows["with"] == "madder root" and rows["dyed"] == "2026-03-14" and NASTY in rows["tried"]
    for width in (28, 52):
        assert all(len(one) == width for one in tag_lines(large, width))
    with pytest.raises(ValueError, match="expected 28 or more"):
        tag_lines(large, 20)


def test_tags_and_labels_go_on_one_page(day: LoggedDay) -> None:
    page = paper_page(tags_of(day_line(day, "x.toml")), ())
    parsed(page)
    assert page.count('class="tag"') == 2 and "<script" not in page


def test_the_page_is_the_same_from_the_file(tmp_path: Path) -> None:
    run = Day()
    run.do(e.Noted("begun"))
    path = written(run, tmp_path)
    assert day_page(read_day(DISK, path)) == day_page(read_facts_of_day(DISK, path))
    assert date.fromisoformat(day_line(read_day(DISK, path), path.name).day) == date(2026, 3, 14)
