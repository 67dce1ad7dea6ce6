import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.cielab import Lab
from dyesession.colour.sensor_csv import reading_of_line, readings_of_csv
from dyesession.colour.trouble import ColourError, NoIlluminant, UnreadableColour
from dyesession.colour.viewing import A_10, D65_2, D65_10, Viewing
from tests.colour.shades_of_cloth import any_lab, is_one_sentence, unhurried

HEADER = "name,L*,a*,b*,illuminant,observer"


@unhurried
@given(any_lab)
def test_a_line_is_read_under_its_header(lab: Lab) -> None:
    line = f"skein,{lab.lightness:.5f},{lab.a:.5f},{lab.b:.5f},D65,10"
    found = reading_of_line(HEADER, line, "line 2")
    assert found.lab == pytest.approx(lab, abs=1e-5)
    assert (found.viewing, found.how, found.plus_minus) == (D65_10, "read", 1.5)


@pytest.mark.parametrize(
    ("text", "lab", "viewing"),
    [
        ("L,a,b,Illuminant,Observer\n42.1,45.3,29.8,D65,2°\n", (42.1, 45.3, 29.8), D65_2),
        ("Observer;Illuminant;b*;a*;L*\n10;A;29,8;45,3;42,1\n", (42.1, 45.3, 29.8), A_10),
        ("id\tL*\tC*\th\tilluminant/observer\nx\t42\t54.0833\t33.6901\tD65/10\n", (42, 45, 30), D65_10),
        ("\ufeffCIE L*,CIE a*,CIE b*,Viewing\r\n42,45,30,D50/2\r\n", (42, 45, 30), Viewing("D50", 2)),
    ],
)
def test_columns_are_found_by_name_whatever_parts_them(
    text: str, lab: tuple[float, ...], viewing: Viewing
) -> None:
    (found,) = readings_of_csv(text, "readings.csv")
    assert found.lab == pytest.approx(lab, abs=1e-3)
    assert found.viewing == viewing


def test_every_line_is_a_reading_and_wet_is_kept() -> None:
    text = f"{HEADER},state,note\na,42,45,30,D65,10,dry,north window\nb,30,40,25,D65,10,wet,\n"
    first, second = readings_of_csv(text, "readings.csv")
    assert (first.wet, first.conditions, second.wet) == (False, "north window", True)


@pytest.mark.parametrize(
    "text",
    [
        "L*,a*,b*\n42,45,30\n",
        "L*,a*,b*,illuminant\n42,45,30,D65\n",
        "L*,a*,b*,illuminant,observer\n42,45,30,,10\n",
        "L*,a*,b*,illuminant,observer\n42,45,30,D65,5\n",
        "L*,a*,b*,illuminant,observer\n42,45,30,D93,10\n",
    ],
)
def test_a_file_that_does_not_state_light_and_observer_is_refused_in_one_sentence(text: str) -> None:
    with pytest.raises(NoIlluminant) as refused:
        readings_of_csv(text, "readings.csv")
    assert is_one_sentence(str(refused.value)) and "Line 2 of readings.csv" in str(refused.value)


@pytest.mark.parametrize(
    "text", ["", HEADER, f"{HEADER}\nskein,x,45,30,D65,10\n", "colour,illuminant,observer\nred,D65,10\n"]
)
def test_a_file_without_readings_is_refused_in_one_sentence(text: str) -> None:
    with pytest.raises(UnreadableColour) as refused:
        readings_of_csv(text, "readings.csv")
    assert is_one_sentence(str(refused.value))


@unhurried
@given(st.text(max_size=80))
def test_any_file_is_readings_or_a_colour_error(text: str) -> None:
    try:
        readings_of_csv(f"{HEADER}\n{text}", "readings.csv")
    except ColourError as refused:
        assert str(refused)
