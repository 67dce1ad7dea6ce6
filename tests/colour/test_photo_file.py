import io
import os
from pathlib import Path

import pytest
from PIL import Image, ImageCms

from dyesession.colour.ciede2000 import de00
from dyesession.colour.patches import Box
from dyesession.colour.photo import Card, read_photo
from dyesession.colour.photo_file import patches_of_file
from dyesession.colour.trouble import PhotoTrouble
from tests.colour.pictures import Scene
from tests.colour.shades_of_cloth import MADDER, is_one_sentence

FIBRE, CARD = Box(120, 20, 80, 80), Box(20, 20, 80, 80)


def photo(scene: Scene) -> Image.Image:
    picture = Image.new("RGB", (240, 120), (90, 90, 90))
    for box, rows in ((FIBRE, scene.fibre(MADDER, size=80)), (CARD, scene.card(size=80))):
        patch = Image.new("RGB", (80, 80))
        for y, row in enumerate(rows):
            for x, pixel in enumerate(row):
                patch.putpixel((x, y), pixel)
        picture.paste(patch, (box.left, box.top))
    return picture


@pytest.mark.parametrize(
    ("name", "kind"), [("a.png", "PNG"), ("a.jpg", "JPEG"), ("a.tif", "TIFF"), ("a.webp", "WEBP")]
)
def test_a_photo_on_disk_gives_the_colour_that_was_put_in(tmp_path: Path, name: str, kind: str) -> None:
    path = tmp_path / name
    photo(Scene(7)).save(path, kind, quality=95)
    patches = patches_of_file(path, {"the fibre": FIBRE, "the card": CARD})
    found = read_photo(patches["the fibre"], Card(patches["the card"], 0.18), "daylight")
    assert de00(found.lab, MADDER) < found.plus_minus


def test_a_photo_is_turned_as_its_camera_noted(tmp_path: Path) -> None:
    path = tmp_path / "turned.jpg"
    noted = Image.Exif()
    noted[0x0112] = 6  # to be turned a quarter to the right: EXIF 2.3, Orientation
    photo(Scene(7)).transpose(Image.Transpose.ROTATE_90).save(path, "JPEG", quality=95, exif=noted)
    patches = patches_of_file(path, {"the fibre": FIBRE, "the card": CARD})
    found = read_photo(patches["the fibre"], Card(patches["the card"], 0.18), "daylight")
    assert de00(found.lab, MADDER) < 3


def test_a_plain_profile_changes_nothing_and_another_one_is_taken_into_account(tmp_path: Path) -> None:
    flat = Image.new("RGB", (40, 40), (150, 80, 70))
    plain, tagged, lab = tmp_path / "plain.png", tmp_path / "srgb.png", tmp_path / "broken.png"
    flat.save(plain)
    flat.save(tagged, icc_profile=ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    flat.save(lab, icc_profile=ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes())
    box = {"the fibre": Box(0, 0, 40, 40)}
    assert patches_of_file(plain, box) == patches_of_file(tagged, box)
    with pytest.raises(PhotoTrouble) as refused:
        patches_of_file(lab, box)
    assert is_one_sentence(str(refused.value))


def test_a_large_patch_is_thinned_without_changing_its_colour(tmp_path: Path) -> None:
    path = tmp_path / "large.png"
    Image.effect_noise((900, 900), 40).convert("RGB").save(path)
    (rows,) = patches_of_file(path, {"the fibre": Box(0, 0, 900, 900)}).values()
    assert len(rows) * len(rows[0]) <= 50_000
    mean = sum(pixel[0] for row in rows for pixel in row) / (len(rows) * len(rows[0]))
    assert mean == pytest.approx(
        sum(Image.open(path).convert("L").histogram()[i] * i for i in range(256)) / 810_000, abs=1
    )


def _no_picture(folder: Path) -> Path:
    path = folder / "notes.jpg"
    path.write_text("madder, 50 %", encoding="utf-8")
    return path


def _torn(folder: Path) -> Path:
    whole = io.BytesIO()
    photo(Scene(7)).save(whole, "JPEG")
    path = folder / "torn.jpg"
    path.write_bytes(whole.getvalue()[: len(whole.getvalue()) // 3])
    return path


def _vector(folder: Path) -> Path:
    path = folder / "drawing.eps"
    path.write_bytes(b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 10 10\n")
    return path


def _pipe(folder: Path) -> Path:
    path = folder / "pipe.jpg"
    os.mkfifo(path)
    return path


def _bomb(folder: Path) -> Path:
    path = folder / "bomb.png"
    Image.new("L", (12_000, 12_000)).save(path)
    return path


@pytest.mark.parametrize(
    "make",
    [_no_picture, _torn, _vector, _pipe, _bomb, lambda folder: folder / "none.jpg", lambda folder: folder],
)
def test_what_is_no_photo_is_refused_in_one_sentence(tmp_path: Path, make: object) -> None:
    with pytest.raises(PhotoTrouble) as refused:
        patches_of_file(make(tmp_path), {"the fibre": FIBRE})  # type: ignore[operator]
    assert is_one_sentence(str(refused.value))


def test_a_box_outside_the_photo_is_refused_by_name(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    photo(Scene(7)).save(path)
    with pytest.raises(PhotoTrouble) as refused:
        patches_of_file(path, {"the fibre": FIBRE, "the card": Box(200, 20, 80, 80)})
    assert "the card" in str(refused.value) and "240 by 120" in str(refused.value)
