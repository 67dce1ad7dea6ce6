"""The pictures in the README are what the program draws now."""

import re
from pathlib import Path

import pytest

from dyesession.ui import readme_pictures
from dyesession.ui.contact_sheet import draw_for_readme

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / readme_pictures.FOLDER
LARGEST_BYTES = 60_000


@pytest.mark.parametrize("name", readme_pictures.PICTURES)
def test_a_picture_is_what_the_program_draws_now(name: str) -> None:
    drawn = draw_for_readme(readme_pictures.PICTURES[name], readme_pictures.SIZE)
    assert (FOLDER / f"{name}.svg").read_text("utf-8") == drawn, f"renew them: {readme_pictures.RENEW}"


def test_every_picture_is_small_stands_in_the_readme_and_leads_nowhere() -> None:
    readme = (ROOT / "README.md").read_text("utf-8")
    files = sorted(one.name for one in FOLDER.iterdir())
    assert files == sorted(f"{name}.svg" for name in readme_pictures.PICTURES)
    for name in files:
        svg = (FOLDER / name).read_text("utf-8")
        assert len(svg.encode("utf-8")) < LARGEST_BYTES
        assert f"({readme_pictures.FOLDER}/{name})" in readme
        assert set(re.findall(r"\w+://[^\"' ]+", svg)) == {"http://www.w3.org/2000/svg"}
