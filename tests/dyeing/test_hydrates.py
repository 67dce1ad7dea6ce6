import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.hydrates import FORMS, atoms, equal_mass_g, mass_share, molar_mass
from dyesession.dyeing.limits import OutOfRange

ALUM, IRON = "potassium alum", "ferrous sulphate heptahydrate"
# Grams of the first form that equal a gram of the second; worked out apart from this program.
EQUIVALENTS = [
    (ALUM, "dried alum", 1.8373),
    (ALUM, "aluminium sulphate octadecahydrate", 1.4237),
    (ALUM, "aluminium sulphate tetradecahydrate", 1.5963),
    (ALUM, "aluminium triacetate", 2.3242),
    (ALUM, "basic aluminium diacetate", 2.9269),
    (IRON, "ferrous sulphate monohydrate", 1.6361),
    (IRON, "anhydrous ferrous sulphate", 1.8301),
    ("copper sulphate pentahydrate", "anhydrous copper sulphate", 1.5644),
    ("washing soda", "soda ash", 2.6998),
    ("washing soda", "sodium carbonate monohydrate", 2.3075),
    ("citric acid monohydrate", "anhydrous citric acid", 1.0938),
]


@pytest.mark.parametrize(("wanted", "packet", "grams"), EQUIVALENTS)
def test_forms_exchange_at_published_rates(wanted: str, packet: str, grams: float) -> None:
    assert equal_mass_g(1, packet, wanted) == pytest.approx(grams, rel=1e-4)


@given(st.sampled_from(EQUIVALENTS), st.floats(0.01, 500))
def test_exchanging_there_and_back_changes_nothing(pair: tuple[str, str, float], grams: float) -> None:
    there = equal_mass_g(grams, pair[0], pair[1])
    assert equal_mass_g(there, pair[1], pair[0]) == pytest.approx(grams, rel=1e-12)


def test_atoms_are_counted_through_brackets_and_water() -> None:
    assert atoms("KAl(SO4)2.12H2O") == {"K": 1, "Al": 1, "S": 2, "O": 20, "H": 24}
    assert atoms("Al2(SO4)3.18H2O") == {"Al": 2, "S": 3, "O": 30, "H": 36}


def test_known_molar_masses() -> None:
    assert molar_mass("C6H8O7") == pytest.approx(192.123, abs=0.01)
    assert molar_mass("Na2CO3") == pytest.approx(105.99, abs=0.01)
    assert sum(mass_share(e, "FeSO4.7H2O") for e in ("Fe", "S", "O", "H")) == pytest.approx(1)


@pytest.mark.parametrize("formula", ["", "Xx2", "Al(SO4", "SO4)2", "k2CO3", "Na2 CO3", "Al(", ")"])
def test_a_formula_that_cannot_be_read_is_refused(formula: str) -> None:
    with pytest.raises(OutOfRange, match="cannot be read"):
        molar_mass(formula)


def test_forms_with_nothing_in_common_are_refused() -> None:
    with pytest.raises(OutOfRange, match="cannot stand for"):
        equal_mass_g(1, "soda ash", "citric acid monohydrate")
    with pytest.raises(OutOfRange, match="not known"):
        equal_mass_g(1, "moon dust", "soda ash")


def test_no_form_of_chrome_tin_or_oxalic_acid_is_offered() -> None:
    everything = " ".join(FORMS).casefold() + " ".join(form.formula for form in FORMS.values())
    for word in ("chrom", "tin", "oxal", "Cr", "Sn"):
        assert word not in everything
