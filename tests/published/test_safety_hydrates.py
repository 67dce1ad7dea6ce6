"""What one form of a salt is worth in grams of another, molar masses from an independent package.

Molar masses: molmass (BSD-3), which takes the atomic weights of CIAAW and NIST. A dyewood's extract and an
indigo paste are no salts: Beech, The Dyeing of Woollen Fabrics, 1902, p. 88; Mairet, Vegetable Dyes, 1938,
pp. 51-53.
"""

import pytest
from molmass import Formula

from dyesession.substances import form_named, load

ALUM, AL2SO4 = "KAl(SO4)2(H2O)12", "Al2(SO4)3"

EQUIVALENTS = [  # (form, printed, formula of the substance, how many, formula of the form)
    ("dried alum", 1.8373, ALUM, 1, "KAl(SO4)2"),
    ("octadecahydrate", 1.4237, ALUM, 2, f"{AL2SO4}(H2O)18"),
    ("tetradecahydrate", 1.5963, ALUM, 2, f"{AL2SO4}(H2O)14"),
    ("aluminium triacetate", 2.3242, ALUM, 1, "Al(C2H3O2)3"),
    ("basic aluminium diacetate", 2.9269, ALUM, 1, "AlOH(C2H3O2)2"),
    ("ferrous sulphate monohydrate", 1.6361, "FeSO4(H2O)7", 1, "FeSO4H2O"),
    ("anhydrous ferrous sulphate", 1.8301, "FeSO4(H2O)7", 1, "FeSO4"),
    ("anhydrous copper sulphate", 1.5644, "CuSO4(H2O)5", 1, "CuSO4"),
    ("washing soda", 0.3704, "Na2CO3", 1, "Na2CO3(H2O)10"),
    ("sodium carbonate monohydrate", 2.3075, "Na2CO3(H2O)10", 1, "Na2CO3H2O"),
    ("citric acid monohydrate", 0.9143, "C6H8O7", 1, "C6H8O7H2O"),
    ("anhydrous oxalic acid", 1.4002, "C2H2O4(H2O)2", 1, "C2H2O4"),
    ("anhydrous tin chloride", 1.1900, "SnCl2(H2O)2", 1, "SnCl2"),
]
NO_SALTS = {"logwood extract", "indigo paste"}


@pytest.mark.parametrize(("form", "printed", "whole", "count", "bare"), EQUIVALENTS)
def test_a_form_is_worth_what_its_molar_masses_say(form, printed, whole, count, bare):
    assert form_named(form).grams == printed
    assert count * Formula(whole).mass / Formula(bare).mass == pytest.approx(printed, rel=2e-4)


def test_no_form_in_the_data_is_left_unchecked():
    shipped = {form.name for substance in load().values() for form in substance.forms}
    assert shipped == {row[0] for row in EQUIVALENTS} | {"dried ferrous sulphate"} | NO_SALTS
    assert form_named("dried ferrous sulphate").grams == form_named("ferrous sulphate monohydrate").grams


def test_a_dyewood_extract_is_about_five_times_its_wood_and_says_how_far_the_books_differ():
    extract = form_named("logwood extract")
    fifty_pounds_for_twelve, three_pounds_for_eight_ounces = 50 / 12, 3 / 0.5
    assert extract.grams == 5.0
    assert extract.low_grams == pytest.approx(fifty_pounds_for_twelve, abs=0.05)
    assert extract.high_grams == three_pounds_for_eight_ounces


def test_an_indigo_paste_is_a_fifth_indigo_or_a_quarter_as_the_book_mixes_it():
    paste = form_named("indigo paste")
    assert paste.grams == paste.low_grams == pytest.approx(2.0 / 10.0)
    assert paste.high_grams == pytest.approx(2.5 / (2.5 + 7.5))
