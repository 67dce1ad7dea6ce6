"""Colours: everything said in words can be read in both themes, with few colours and with none."""

import re

import pytest
from rich.color import Color, ColorSystem
from ui.on_screen import drawn

from dyesession.ui.fixtures import FIXTURES
from dyesession.ui.theme import DARK, LIGHT, Palette, contrast, ink_on, palette_for

PALETTES = [palette_for(dark, depth) for dark in (True, False) for depth in ("full", "16", "none")]
LEAST_FOR_TEXT = 4.5  # WCAG 2.2, 1.4.3
LEAST_FOR_LARGE = 3.0  # WCAG 2.2, 1.4.3 (large text) and 1.4.11 (marks)
BIG_INK = set("▀▄█")


def pieces(palette):
    for name, view in FIXTURES.items():
        for part, strips in drawn(view, 200, 60, palette).items():
            for strip in strips:
                for segment in strip:
                    yield name, part, segment


@pytest.mark.parametrize("palette", PALETTES, ids=lambda palette: palette.name)
def test_every_word_on_every_screen_stands_out_from_its_ground(palette):
    seen = 0
    for name, part, segment in pieces(palette):
        if re.search(r"\w", segment.text):
            front, ground = segment.style.color.name, segment.style.bgcolor.name
            assert contrast(front, ground) >= LEAST_FOR_TEXT, (name, part, segment)
            seen += 1
    assert seen > 500


@pytest.mark.parametrize(
    "liquor", ["#6e2a1b", "#d9b79c", "#777777", "#a8644b", "#0a0a0a", "#ffffff", "#c9a227"]
)
@pytest.mark.parametrize("palette", PALETTES, ids=lambda palette: palette.name)
def test_the_digits_stand_out_from_any_liquor(palette: Palette, liquor):
    assert contrast(ink_on(liquor, palette), liquor) >= LEAST_FOR_LARGE


@pytest.mark.parametrize("palette", [DARK, LIGHT], ids=lambda palette: palette.name)
def test_amber_is_one_colour_and_nothing_else_has_it(palette):
    others = [value for role, value in vars(palette).items() if role != "alarm"]
    assert palette.alarm not in others


@pytest.mark.parametrize("dark", [True, False])
def test_sixteen_colours_are_colours_a_terminal_of_sixteen_has(dark):
    for value in vars(palette_for(dark, "16")).values():
        if str(value).startswith("#"):
            there = Color.parse(value).downgrade(ColorSystem.STANDARD)
            assert there.number in range(16)
            assert there.number in {0, 3, 7, 8, 11, 15}


@pytest.mark.parametrize("dark", [True, False])
def test_without_colour_everything_is_grey(dark):
    for value in vars(palette_for(dark, "none")).values():
        if str(value).startswith("#"):
            assert len({value[1:3], value[3:5], value[5:7]}) == 1


def test_amber_is_used_only_where_something_rings_burns_or_is_not_saved():
    for name, part, segment in pieces(DARK):
        if DARK.alarm in (segment.style.color.name, segment.style.bgcolor.name) and segment.text.strip():
            assert part in ("ringing", "care", "notice", "headline", "where", "pot B", "away"), (name, part)
            assert part != "headline" or "NOT SAVED" in segment.text


def test_contrast_is_the_published_one():
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)  # WCAG 2.2: the largest there is
    assert contrast("#777777", "#ffffff") == pytest.approx(
        4.48, abs=0.01
    )  # WCAG's own example of just too little
