"""The pictures in the README are what the program draws now."""

import re
from pathlib import Path

import pytest

from dyesession.ui import readme_pictures
from dyesession.ui.contact_sheet import draw_for_readme
from dyesession.ui.readme_pictures import cells

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / readme_pictures.FOLDER
LARGEST_BYTES = 60_000


@pytest.mark.parametrize("name", readme_pictures.PICTURES)
def test_a_picture_is_what_the_program_draws_now(name: str) -> None:
    drawn = draw_for_readme(readme_pictures.PICTURES[name], readme_pictures.SIZE)
    assert cells(_kept(name)) == cells(drawn), f"renew them: {readme_pictures.RENEW}"


@pytest.mark.parametrize("name", readme_pictures.PICTURES)
def test_a_changed_word_colour_or_place_would_be_seen_and_another_way_to_write_it_would_not(
    name: str,
) -> None:
    svg, shown = _kept(name), cells(_kept(name))
    assert len(shown) > 200 and sum(len(sign) for sign, _, _ in shown.values()) == len(shown)
    assert cells(svg.replace(">e<", ">o<", 1)) != shown
    assert cells(svg.replace('fill="#f7f1e4"', 'fill="#000000"', 1)) != shown
    assert cells(svg.replace('<text y="14.8"', '<text y="34.8"', 1)) != shown
    assert cells(svg.replace(".8", ".9").replace(">\n<", "><").replace(' font-size="16.6"', "")) == shown


def _kept(name: str) -> str:
    return (FOLDER / f"{name}.svg").read_text("utf-8")


def test_every_picture_is_small_stands_in_the_readme_and_leads_nowhere() -> None:
    readme = (ROOT / "README.md").read_text("utf-8")
    files = sorted(one.name for one in FOLDER.iterdir())
    assert files == sorted(f"{name}.svg" for name in readme_pictures.PICTURES)
    for name in files:
        svg = (FOLDER / name).read_text("utf-8")
        assert len(svg.encode("utf-8")) < LARGEST_BYTES
        assert f"({readme_pictures.FOLDER}/{name})" in readme
        assert set(re.findall(r"\w+://[^\"' ]+", svg)) == {"http://www.w3.org/2000/svg"}
