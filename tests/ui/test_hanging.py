"""Pages in a narrow window: what explains a word stays in its column."""

import pytest

from dyesession.ui.explained_places import EXPLAINED, STOVE_HELP, help_of
from dyesession.ui.hanging import hung

PAGES = [STOVE_HELP, *(help_of(place) for place in EXPLAINED)]
LANES = "lanes        the fibre's way and the liquor's, to where they meet\n             in the dye pot\nNEXT         what now"


def test_what_explains_a_word_stays_in_its_column() -> None:
    assert hung(LANES, 50) == (
        "lanes        the fibre's way and the liquor's, to\n"
        "             where they meet in the dye pot\n"
        "NEXT         what now"
    )


def test_a_wide_window_takes_each_word_and_what_explains_it_in_one_line() -> None:
    assert hung(LANES, 200).split("\n")[0].endswith("to where they meet in the dye pot")


@pytest.mark.parametrize("width", [56, 76, 196])
@pytest.mark.parametrize("page", PAGES)
def test_no_help_page_is_broken_into_the_margin(page: str, width: int) -> None:
    lines = hung(page, width).split("\n")
    assert max(map(len, lines)) <= width
    assert " ".join(" ".join(lines).split()) == " ".join(page.split())


def test_nothing_typed_is_lost_however_narrow() -> None:
    for width in (1, 8, 20):
        assert hung("a  b" * 30, width).replace(" ", "").replace("\n", "") == ("ab" * 30)
