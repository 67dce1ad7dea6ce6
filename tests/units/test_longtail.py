"""The rarer units, and the words pint must never be asked about."""

import pytest

from dyesession.units import Ambiguous, UnitError, read_length, read_mass, read_volume
from dyesession.units.longtail import LONG_TAIL, _registry, long_tail_size
from dyesession.units.names import ASKED

OTHER_COUNTRY = ("imperial_", "UK_", "long_")


@pytest.mark.parametrize("key", sorted(LONG_TAIL), ids=" ".join)
def test_every_rare_unit_has_an_exact_size(key: tuple[str, str]) -> None:
    assert long_tail_size(LONG_TAIL[key]) > 0


@pytest.mark.parametrize("key", sorted(LONG_TAIL), ids=" ".join)
def test_a_rare_unit_that_differs_between_countries_is_asked_about(key: tuple[str, str]) -> None:
    system, name = key
    differs = any(prefix + LONG_TAIL[key].pint_name in _registry() for prefix in OTHER_COUNTRY)
    if differs or system:
        assert name in ASKED and ("", name) not in LONG_TAIL
    else:
        assert name not in ASKED


@pytest.mark.parametrize(
    "word", ["bag", "shot", "fifth", "barrel", "hogshead", "slug", "hand", "point", "a", "t", "T"]
)
def test_an_everyday_word_is_not_taken_for_a_unit(word: str) -> None:
    for read in (read_mass, read_volume, read_length):
        with pytest.raises(UnitError) as error:
            read(f"3 {word}")
        assert not isinstance(error.value, Ambiguous)


@pytest.mark.parametrize("typed", ["lb*oz", "3 lb*oz", "3 g**2", "3 __import__", "3 kilo gram gram", "3 g;g"])
def test_an_expression_is_no_unit(typed: str) -> None:
    with pytest.raises(UnitError):
        read_mass(typed)
