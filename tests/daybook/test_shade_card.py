import re
from dataclasses import replace
from pathlib import Path

import pytest
from coloured_days import coloured_day, plan_at
from daybook.written import written
from days import Day

from dyesession.colour.depth import NOT_FITTED
from dyesession.colour.typed import read_colour
from dyesession.daybook.shade_card import Shade, exponent_of, lot_of, nearest_shades, shades_of
from dyesession.daybook.shade_lines import (
    in_order,
    near_lines,
    shade_card_as_json,
    shade_card_lines,
    shade_card_page,
)
from dyesession.session import events as e
from dyesession.session.quick_day import read_facts_of_day
from dyesession.storage import DISK

UNDYED, MADDER = "lab(86 0 11) D65/2 ± 1.5 dry, colorimeter", "lab(42 45 30) D65/2 ± 1.5 dry, colorimeter"
HALF = "lab(50 42 28) D65/2 ± 1.5 dry, colorimeter"


def shades(*paths: Path) -> tuple[Shade, ...]:
    return shades_of(read_facts_of_day(DISK, one) for one in paths)


@pytest.fixture
def card(tmp_path: Path) -> tuple[Shade, ...]:
    return shades(
        coloured_day(tmp_path, MADDER, 50.0, "2026-03-14-madder-k7q2", UNDYED),
        coloured_day(tmp_path, HALF, 25.0, "2026-04-02-madder-m3xz"),
    )


def test_a_shade_has_its_recipe_dose_fibre_and_date(card: tuple[Shade, ...]) -> None:
    one = card[0]
    assert (one.recipe, one.day, one.lot) == ("Madder brick red on wool", "2026-03-14", "large skein")
    assert one.doses == "madder root 50 %" and (one.fibre, one.fibre_g) == ("wool", 165.0)
    assert one.reading.lab == (42.0, 45.0, 30.0) and one.reading.plus_minus == 1.5 and one.hex == "#ad3d34"
    assert one.undyed is not None and one.undyed.lab == (86.0, 0.0, 11.0)


def test_the_last_dry_colour_of_a_lot_counts(tmp_path: Path) -> None:
    later = e.Cared("dry shade", "large skein", colour="#8b3a2b")
    path = coloured_day(tmp_path, "#a03020", 50.0, "2026-03-14-a-day-k7q2", "", later)
    assert [one.hex for one in shades(path)] == ["#8b3a2b"]


def test_a_wet_colour_is_on_the_card_but_is_not_compared(tmp_path: Path) -> None:
    day = Day(plan_at(50.0))
    day.until(e.Closed)
    day.do(e.Read(lot="large skein", colour="#501010", wet=True))
    [one] = shades(written(day, tmp_path))
    assert one.reading.wet and nearest_shades([one], read_colour("#501010")) == ()


def test_the_nearest_past_colours_stand_first(card: tuple[Shade, ...]) -> None:
    near = nearest_shades(card, read_colour("lab(49 42 28)"))
    assert [one.shade.session[-4:] for one in near] == ["m3xz", "k7q2"] and near[0].de00 < 1.5 < near[1].de00
    assert nearest_shades(card, read_colour("lab(49 42 28) D65/10")) == ()


def test_two_doses_of_one_dye_say_how_depth_follows_dose(card: tuple[Shade, ...]) -> None:
    fitted = exponent_of(card[0], card)
    assert fitted.fitted and fitted.value == pytest.approx(1.0, abs=0.1) and fitted.plus_minus > 0.0
    assert exponent_of(card[0], card[:1]) == NOT_FITTED
    lot = lot_of(card[0], card)
    assert lot is not None and lot.exponent == fitted and (lot.fibre_g, lot.dye.percent) == (165.0, 50.0)


def test_a_dose_beside_another_mordant_teaches_nothing(card: tuple[Shade, ...]) -> None:
    other = replace(card[1], others=())
    assert exponent_of(card[0], (card[0], other)) == NOT_FITTED


def test_a_day_whose_colour_is_told_in_words_is_passed_over(tmp_path: Path) -> None:
    assert shades(coloured_day(tmp_path, "brick red")) == ()


@pytest.mark.parametrize("depth", ["full", "256", "16", "none"])
def test_the_card_is_legible_in_every_terminal(card: tuple[Shade, ...], depth: str) -> None:
    said = "\n".join(shade_card_lines(card, depth, 80))  # type: ignore[arg-type]
    assert "#ad3d34" in said and "lab(42 45 30)" in said and "madder root 50 %" in said
    escapes = re.findall(r"\x1b\[[^m]*m", said)
    assert bool(escapes) is (depth in ("full", "256"))
    if depth == "full":
        assert "\x1b[48;2;173;61;52m" in said and "\x1b[48;2;119;119;119m" in said
    if depth == "256":
        assert all(one.startswith("\x1b[48;5;") or one == "\x1b[0m" for one in escapes) and "256" in said
    assert all(len(re.sub(r"\x1b\[[^m]*m", "", line)) <= 100 for line in said.split("\n"))


def test_an_empty_card_says_how_to_fill_it() -> None:
    assert "No colour has been read yet" in shade_card_lines((), "full", 80)[0]
    assert "No dry colour" in near_lines((), "full", 80)[0]


def test_the_page_is_one_file_with_nothing_to_fetch(card: tuple[Shade, ...]) -> None:
    page = shade_card_page(in_order(card))
    assert page.count('<figure><div class="swatch"') == 2 and "background:#ad3d34" in page and "#777" in page
    assert "http" not in page and "src=" not in page and "url(" not in page


def test_the_document_has_lab_and_hex_and_the_distance(card: tuple[Shade, ...]) -> None:
    plain = shade_card_as_json(card, None)["shades"][0]
    assert plain["lab"] == [42.0, 45.0, 30.0] and plain["hex"] == "#ad3d34" and plain["read_by"] == "colorimeter"
    near = shade_card_as_json(card, nearest_shades(card, read_colour("#ad3d34")))["near"][0]
    assert near["session"] == "2026-03-14-madder-k7q2" and near["de00"] < 1.0


def test_greys_stand_first_then_the_hues(card: tuple[Shade, ...]) -> None:
    grey = replace(card[0], reading=read_colour("lab(60 1 2)"))
    blue = replace(card[0], reading=read_colour("lab(40 -4 -28)"))
    assert in_order((blue, card[0], grey)) == (grey, card[0], blue)
