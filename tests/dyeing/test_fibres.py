import pytest

from dyesession.dyeing.fibres import fibre_family
from dyesession.dyeing.limits import OutOfRange


@pytest.mark.parametrize(
    ("fibre", "family"), [("wool", "wool"), (" Alpaca", "wool"), ("silk", "silk"), ("linen", "cellulose")]
)
def test_a_fibre_borrows_from_the_nearest_with_figures(fibre: str, family: str) -> None:
    assert fibre_family(fibre) == family


def test_an_unknown_fibre_is_named_with_what_is_known() -> None:
    with pytest.raises(OutOfRange, match=r'"polyester".*wool.*silk.*cotton'):
        fibre_family("polyester")
