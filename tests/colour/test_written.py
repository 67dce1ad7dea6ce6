from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.readings import PLUS_MINUS, Reading
from dyesession.colour.typed import read_colour
from dyesession.colour.viewing import ILLUMINANTS, OBSERVERS_DEG, Viewing
from dyesession.colour.written import lab_text, written
from tests.colour.shades_of_cloth import cloth, unhurried

readings = st.builds(
    Reading,
    cloth,
    st.floats(0.1, 30.0),
    by=st.sampled_from(sorted(PLUS_MINUS)),
    wet=st.booleans(),
    viewing=st.builds(Viewing, st.sampled_from(ILLUMINANTS), st.sampled_from(OBSERVERS_DEG)),
)


@unhurried
@given(readings)
def test_what_is_written_is_read_back_to_a_tenth(reading: Reading) -> None:
    back = read_colour(written(reading))
    assert (back.by, back.wet, back.viewing) == (reading.by, reading.wet, reading.viewing)
    assert abs(back.plus_minus - reading.plus_minus) <= 0.051
    assert all(abs(one - other) <= 0.051 for one, other in zip(back.lab, reading.lab, strict=True))
    assert written(back) == written(reading)


def test_a_photos_reading_stays_a_photos() -> None:
    text = "lab(42.1 45 30) D65/2 ± 4.5 dry, photo with card"
    assert written(read_colour(text)) == text and read_colour(text).how == "read"


def test_a_lab_is_shown_in_whole_figures_and_never_as_minus_nought() -> None:
    assert lab_text(read_colour("lab(42.4 -0.2 30.6)").lab) == "lab(42 0 31)"
