import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.cielab import Lab
from dyesession.colour.readings import Reading
from dyesession.colour.screen import screen_of
from dyesession.colour.trouble import ColourError, NoIlluminant
from dyesession.colour.typed import read_colour
from dyesession.colour.viewing import A_2, D65_2, D65_10, Viewing
from tests.colour.shades_of_cloth import any_lab, cloth, is_one_sentence, unhurried


@unhurried
@given(any_lab)
def test_a_lab_is_read_as_it_is_typed(lab: Lab) -> None:
    if lab.chroma <= 140:
        found = read_colour(f"lab({lab.lightness:.6f} {lab.a:.6f} {lab.b:.6f})")
        assert found.lab == pytest.approx(lab, abs=1e-6)
        assert found.viewing == D65_2 and found.how == "typed" and not found.wet


@pytest.mark.parametrize(
    ("text", "viewing"),
    [
        ("lab(42 45 30)", D65_2),
        ("lab(42 45 30) D65/10", D65_10),
        ("lab(42, 45, 30) d65 10°", D65_10),
        ("lab(42,45,30) D65 10 deg", D65_10),
        ("LAB( 42% 36% 24% ) A", A_2),
        ("lab(42 45 30) D50 dry", Viewing("D50", 2)),
        ("lch(42 54.0833 33.6901)", D65_2),
        ("lch(42 54.0833 33.6901deg) D65/10 ± 1.5", D65_10),
    ],
)
def test_light_and_observer_are_what_is_said_and_d65_with_2_degrees_unless_said(
    text: str, viewing: Viewing
) -> None:
    found = read_colour(text)
    assert found.viewing == viewing
    assert found.lab == pytest.approx((42, 45, 30), abs=1e-3)


def test_wet_and_plus_minus_are_read_in_any_order() -> None:
    first = read_colour("lab(42 45 30) wet ± 1,5 D65/10")
    assert first == read_colour("lab(42 45 30) D65/10 +/- 1.5 wet")
    assert first.wet and first.plus_minus == 1.5


@pytest.mark.parametrize("text", ["#a63e36", "#A63E36", "rgb(166 62 54)", "rgb(166, 62, 54)", "#a63e36ff"])
def test_css_colours_are_matched_by_eye_and_say_so(text: str) -> None:
    found = read_colour(text)
    assert found.lab == pytest.approx((40.928, 42.356, 27.418), abs=0.03)
    assert (found.how, found.by, found.plus_minus) == ("matched", "eye", 7.5)
    assert read_colour(f"{text} ± 2").plus_minus == 2.0


def test_short_hex_names_and_other_spaces_are_css_too() -> None:
    assert read_colour("#fff").lab == pytest.approx((100, 0, 0), abs=1e-3)
    assert read_colour("black").lab == pytest.approx((0, 0, 0), abs=1e-3)
    assert read_colour("oklch(50% 0.1 30)").lab.chroma == pytest.approx(35.8, abs=0.2)


@unhurried
@given(cloth)
def test_a_hex_comes_back_as_the_nearest_of_its_kind(lab: Lab) -> None:
    screen = screen_of(lab)
    if screen.exact:
        assert read_colour(screen.hex).lab == pytest.approx(lab, abs=1.2)


def test_a_colour_beyond_a_screen_is_said_to_be() -> None:
    assert not screen_of(Lab(40.0, -45.0, -30.0)).exact
    assert screen_of(Lab(42.0, 45.0, 30.0)).exact


def test_a_lab_for_another_light_is_shown_as_it_looks_in_daylight() -> None:
    white = screen_of(Lab(100.0, 0.0, 0.0), A_2)
    assert white.hex == "#ffffff"
    assert screen_of(Lab(42.0, 45.0, 30.0), D65_10).hex != screen_of(Lab(42.0, 45.0, 30.0)).hex


@pytest.mark.parametrize(
    "text",
    [
        "", "rubbish", "lab(42 45)", "lab(42 45 30 20)", "lab(42 45 x)", "lab(nan 0 0)",
        "lab(42 45 30 / 0.5)", "#a63e3680", "#a63e3", "lab(142 0 0)", "lab(-3 0 0)", "lab(50 300 0)",
        "#fff D50", "lab(42 45 30) D93", "lab(42 45 30) ± 900", "rgb(1 2)", "x" * 5000, "\x1b[2J",
        "lab(42 45 30) D65/5",
    ],
)  # fmt: skip
def test_what_is_no_colour_is_refused_in_one_sentence_without_its_control_characters(text: str) -> None:
    with pytest.raises(ColourError) as refused:
        read_colour(text)
    message = str(refused.value)
    assert is_one_sentence(message) and message.isprintable() and len(message) < 300


@unhurried
@given(st.text(max_size=40))
def test_any_text_is_a_reading_or_a_colour_error(text: str) -> None:
    try:
        assert isinstance(read_colour(text), Reading)
    except ColourError as refused:
        assert str(refused).isprintable()


@pytest.mark.parametrize("text", ["lab(42 45 30)", "lch(42 54 34)"])
def test_a_lab_from_a_file_must_state_its_light(text: str) -> None:
    with pytest.raises(NoIlluminant) as refused:
        read_colour(text, viewing=None)
    assert is_one_sentence(str(refused.value))
    assert read_colour(f"{text} D65/10", viewing=None).viewing == D65_10
