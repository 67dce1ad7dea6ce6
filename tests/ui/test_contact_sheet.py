"""The contact sheet: one command, a picture for each fixture and size, one page that needs nothing else."""

import shutil
import xml.etree.ElementTree as ET

import pytest

from dyesession.ui import contact_sheet
from dyesession.ui.contact_sheet import SIZES, draw, main
from dyesession.ui.fixtures import FIXTURES, TWO_POTS


def test_the_command_writes_a_picture_for_each_and_one_page(tmp_path, capsys):
    assert main(["--into", str(tmp_path / "new"), "--fixture", "alarm", "--fixture", "typed"]) == 0
    written = {path.name for path in (tmp_path / "new").iterdir()}
    wanted = {f"{name}-{width}x{height}.svg" for name in ("alarm", "typed") for width, height in SIZES}
    assert wanted | {"index.html"} <= written
    page = (tmp_path / "new" / "index.html").read_text(encoding="utf-8")
    assert page.count("<svg") == 6 and page.count("<figcaption>") == 6
    assert "6 pictures" in capsys.readouterr().out


def test_the_pictures_need_nothing_from_anywhere():
    svg = draw(TWO_POTS, (80, 24))
    ET.fromstring(svg)
    assert svg.count("http") == 1 and "http://www.w3.org/2000/svg" in svg
    assert not any(word in svg for word in ("url(", "href", "@import", "<script", "<image"))


def test_a_text_cannot_break_a_picture():
    from dataclasses import replace

    svg = draw(replace(TWO_POTS, title='</svg><script>"&'), (80, 24))
    ET.fromstring(svg)
    assert "<script" not in svg


@pytest.mark.skipif(shutil.which("rsvg-convert") is None, reason="rsvg-convert is not installed")
def test_pngs_are_made_where_the_converter_is(tmp_path):
    main(["--into", str(tmp_path), "--fixture", "two-pots", "--size", "60x18"])
    assert (tmp_path / "two-pots-60x18.png").read_bytes().startswith(b"\x89PNG")


def test_without_the_converter_it_says_so(tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(contact_sheet.shutil, "which", lambda name: None)
    main(["--into", str(tmp_path), "--fixture", "two-pots", "--size", "60x18"])
    assert "no PNGs" in capsys.readouterr().out
    assert not list(tmp_path.glob("*.png"))


def test_sixteen_colours_in_a_picture_are_sixteen(tmp_path):
    few = draw(FIXTURES["alarm"], (80, 24), depth="16")
    colours = {part[:7] for part in few.split('fill="')[1:]}
    assert len(colours) <= 8


def test_the_fixtures_cover_the_states_that_matter():
    states = "nothing-open one-pot two-pots four-pots prompt alarm ask-number where-you-are away unsaved"
    wanted = {*states.split(), "strained", "rinse", "typed"}
    assert wanted <= set(FIXTURES)
