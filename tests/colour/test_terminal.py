import pytest
from hypothesis import given

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.srgb import LIGHT_OF_BYTE, lab_of_linear
from dyesession.colour.terminal import nearest_of_16, nearest_of_256, palette_bytes
from tests.colour.shades_of_cloth import MADDER, any_lab, unhurried


def lab_of(number: int) -> Lab:
    red, green, blue = palette_bytes(number)
    return lab_of_linear((LIGHT_OF_BYTE[red], LIGHT_OF_BYTE[green], LIGHT_OF_BYTE[blue]))


@pytest.mark.parametrize(
    ("number", "stored"),
    [(16, (0, 0, 0)), (21, (0, 0, 255)), (67, (95, 135, 175)), (231, (255, 255, 255)), (232, (8, 8, 8)),
     (255, (238, 238, 238)), (9, (255, 0, 0))],
)  # fmt: skip
def test_the_palette_is_the_one_terminals_carry(number: int, stored: tuple[int, int, int]) -> None:
    assert palette_bytes(number) == stored


@unhurried
@given(any_lab)
def test_no_other_colour_of_the_palette_is_nearer(lab: Lab) -> None:
    found = nearest_of_256(lab)
    assert found.miss == pytest.approx(de00(lab, lab_of(found.number)))
    assert 16 <= found.number <= 255
    assert found.miss <= min(de00(lab, lab_of(number)) for number in range(16, 256, 7)) + 1e-9


@pytest.mark.parametrize("number", [16, 67, 110, 200, 240])
def test_a_colour_of_the_palette_is_its_own_nearest(number: int) -> None:
    found = nearest_of_256(lab_of(number))
    assert found.miss == pytest.approx(0, abs=1e-9)
    assert palette_bytes(found.number) == palette_bytes(number)


def test_sixteen_colours_miss_by_more_than_256() -> None:
    assert nearest_of_16(MADDER).miss > nearest_of_256(MADDER).miss
    found = nearest_of_256(MADDER)
    assert bytes.fromhex(found.hex.removeprefix("#")) == bytes(palette_bytes(found.number))
