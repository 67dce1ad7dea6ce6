import random
import statistics
from collections.abc import Callable

import pytest

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab, lab_of_lch
from dyesession.colour.patches import Box, cut, patch_of
from dyesession.colour.photo import LIGHTS, Card, read_photo
from dyesession.colour.readings import Reading, plus_minus_between
from dyesession.colour.trouble import ColourError, OutOfRange, PhotoTrouble
from tests.colour.pictures import Scene, beside
from tests.colour.shades_of_cloth import INDIGO, MADDER, UNDYED, WELD, is_one_sentence

TRIALS = 100
KNOWN = (MADDER, WELD, INDIGO, UNDYED, Lab(55.0, 45.0, 2.0), Lab(38.0, 10.0, 18.0), Lab(45.0, -25.0, 18.0))


def known(number: int) -> Lab:
    """A colour of cloth that a screen can hold."""
    draw = random.Random(number)
    return KNOWN[number % len(KNOWN)] if number % 2 else lab_of_lch(
        draw.uniform(30, 80), draw.uniform(0, 30), draw.uniform(0, 360)
    )  # fmt: skip


def photographed(scene: Scene, lab: Lab, light: str = "daylight") -> Reading:
    return read_photo(scene.fibre(lab), Card(scene.card(), 0.18), light, frame="skein.jpg")


def misses(read: Callable[[Scene, Lab], Reading]) -> list[tuple[float, float]]:
    """For each trial how far a known colour was missed, and the ± that was claimed."""
    told = []
    for number in range(TRIALS):
        lab = known(number)
        reading = read(Scene(number), lab)
        told.append((de00(lab, reading.lab), reading.plus_minus))
    return told


def test_a_known_colour_comes_back_within_the_claimed_plus_minus() -> None:
    told = misses(photographed)
    assert statistics.fmean(miss <= claimed for miss, claimed in told) >= 0.9
    assert statistics.fmean(miss for miss, _ in told) < 2.0  # cast, exposure, slope and noise are taken off


def test_without_its_card_the_same_photo_would_break_that_claim() -> None:
    told = misses(lambda scene, lab: read_photo(scene.fibre(lab), None, "daylight"))
    with_card = LIGHTS["daylight"].with_card
    assert statistics.fmean(miss <= with_card for miss, _ in told) < 0.6
    assert all(claimed >= LIGHTS["daylight"].without_card for _, claimed in told)


def test_two_colours_in_one_frame_differ_by_what_they_differ_within_their_smaller_plus_minus() -> None:
    held = []
    for number in range(TRIALS):
        first = known(number)
        second = first._replace(lightness=first.lightness - 4.0)
        scene = Scene(number)
        one, other = (photographed(scene, lab) for lab in (first, second))
        plus_minus = plus_minus_between(one, other)
        assert plus_minus < 0.6 * plus_minus_between(one, Reading(other.lab, other.plus_minus))
        held.append(abs(de00(one.lab, other.lab) - de00(first, second)) <= plus_minus)
    assert statistics.fmean(held) >= 0.9


def test_a_reading_from_a_photo_keeps_its_conditions() -> None:
    found = photographed(Scene(1), MADDER)
    assert (found.by, found.how, found.frame) == ("photo with card", "read", "skein.jpg")
    assert found.conditions == "photo, card of 18 %, light daylight"
    wet = read_photo(Scene(1).fibre(MADDER), None, "lamp", wet=True)
    assert wet.wet and wet.by == "photo" and wet.conditions == "photo without a card, light lamp"


@pytest.mark.parametrize("card", [True, False])
def test_a_worse_light_claims_less(card: bool) -> None:
    def claimed(light: str) -> float:
        scene = Scene(2)
        return read_photo(scene.fibre(MADDER), Card(scene.card(), 0.18) if card else None, light).plus_minus

    assert claimed("daylight") < claimed("cool led") < claimed("lamp") == claimed("unknown")


def test_an_unevenly_dyed_skein_claims_less_than_an_even_one() -> None:
    scene = Scene(3, slope=0.0)
    even = photographed(scene, MADDER)
    darker = MADDER._replace(lightness=38.0)
    stripes = [row for _ in range(3) for row in (*scene.fibre(MADDER, size=30)[:5], *scene.fibre(darker)[:5])]
    uneven = read_photo(stripes, Card(scene.card(), 0.18), "daylight")
    patchy = [*scene.fibre(MADDER)[:15], *scene.fibre(darker)[:15]]
    assert even.plus_minus < 5 and uneven.plus_minus < 5.5
    assert read_photo(patchy, Card(scene.card(), 0.18), "daylight").plus_minus > even.plus_minus


def test_means_are_taken_in_linear_light() -> None:
    """Coarse yarn: the mean of stored bytes would be darker than the yarn."""
    scene = Scene(4, noise=0.0, slope=0.0, cast=0.0)
    rows = scene.fibre(UNDYED._replace(lightness=60.0), coarse=0.35, size=60)
    read_by_light = read_photo(rows, Card(scene.card(), 0.18), "daylight").lab
    assert read_by_light.lightness == pytest.approx(60.0, abs=0.6)
    grey = statistics.fmean(pixel[1] for row in rows for pixel in row) / 255
    assert patch_of(rows, "the fibre").light[1] > (grey + 0.055) ** 2.4 / 1.055**2.4 * 1.02


def _clipped() -> object:
    bright = [[(255, 240, 200)] * 30 for _ in range(30)]
    return read_photo(bright, None, "daylight")


def _crushed() -> object:
    return read_photo([[(30, 1, 0)] * 30 for _ in range(30)], None, "daylight")


def _clipped_card() -> object:
    return read_photo(Scene(1).fibre(MADDER), Card([[(255, 255, 255)] * 30] * 30, 0.9), "daylight")


def _no_card_there() -> object:
    return read_photo(Scene(1).fibre(MADDER), Card(Scene(1).fibre(MADDER), 0.18), "daylight")


def _half_a_card() -> object:
    scene = Scene(1)
    return read_photo(scene.fibre(MADDER), Card(beside(scene.card(), scene.card(0.5)), 0.18), "daylight")


def _two_colours() -> object:
    scene = Scene(1)
    return read_photo(beside(scene.fibre(MADDER), scene.fibre(WELD)), Card(scene.card(), 0.18), "daylight")


def _card_in_the_shade() -> object:
    scene = Scene(1)
    return read_photo(scene.fibre(Lab(90.0, 0.0, 3.0)), Card(scene.card(0.18), 0.6), "daylight")


def _too_dark() -> object:
    scene = Scene(1)
    return read_photo(scene.fibre(MADDER), Card(scene.card(0.03), 0.18), "daylight")


def _too_small() -> object:
    return read_photo(Scene(1).fibre(MADDER, size=5), None, "daylight")


@pytest.mark.parametrize(
    ("make", "says"),
    [
        (_clipped, "clipped"),
        (_crushed, "clipped"),
        (_clipped_card, "the card is so bright"),
        (_no_card_there, "not grey"),
        (_half_a_card, "uneven"),
        (_two_colours, "two colours"),
        (_card_in_the_shade, "lighter than white"),
        (_too_dark, "too dark"),
        (_too_small, "too small"),
    ],
)
def test_a_photo_no_colour_can_be_read_from_is_refused_in_one_sentence(
    make: Callable[[], object], says: str
) -> None:
    with pytest.raises(PhotoTrouble) as refused:
        make()
    assert says in str(refused.value) and is_one_sentence(str(refused.value))


@pytest.mark.parametrize(
    "box", [Box(20, 20, 30, 30), Box(-1, 0, 20, 20), Box(100, 100, 20, 20), Box(0, 0, 5, 5)]
)
def test_a_card_that_is_not_in_the_frame_is_refused_in_one_sentence(box: Box) -> None:
    with pytest.raises(PhotoTrouble) as refused:
        cut(Scene(1).fibre(MADDER, size=40), box, "the card")
    assert "the card" in str(refused.value) and is_one_sentence(str(refused.value))


def test_a_patch_is_cut_where_it_was_said() -> None:
    picture = [[(x, y, 0) for x in range(40)] for y in range(30)]
    part = cut(picture, Box(10, 5, 20, 12), "the fibre")
    assert (len(part), len(part[0]), part[0][0], part[-1][-1]) == (12, 20, (10, 5, 0), (29, 16, 0))


@pytest.mark.parametrize(("light", "reflects"), [("moonlight", 0.18), ("daylight", 0.0), ("daylight", 1.8)])
def test_an_unknown_light_and_an_impossible_card_are_refused(light: str, reflects: float) -> None:
    scene = Scene(1)
    with pytest.raises(OutOfRange) as refused:
        read_photo(scene.fibre(MADDER), Card(scene.card(), reflects), light)
    assert isinstance(refused.value, ColourError) and str(refused.value).endswith(".")
