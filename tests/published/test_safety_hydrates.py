"""What one form of a salt is worth in grams of another, from molar masses.

K 39.098, Al 26.982, S 32.06, O 15.999, H 1.008, C 12.011, Fe 55.845, Cu 63.546, Na 22.990, Sn 118.710,
Cl 35.453.
"""

import pytest

from dyesession.substances import form_named, load

K, AL, S, OX, H, C = 39.098, 26.982, 32.06, 15.999, 1.008, 12.011
FE, CU, NA, SN, CL = 55.845, 63.546, 22.990, 118.710, 35.453
WATER, SO4, ACETATE = 2 * H + OX, S + 4 * OX, 2 * C + 3 * H + 2 * OX

ALUM = K + AL + 2 * SO4 + 12 * WATER
AL2SO4 = 2 * AL + 3 * SO4
FESO4, CUSO4, SODA = FE + SO4, CU + SO4, 2 * NA + C + 3 * OX
CITRIC, OXALIC, TIN = 6 * C + 8 * H + 7 * OX, 2 * C + 2 * H + 4 * OX, SN + 2 * CL

EQUIVALENTS = [
    ("dried alum", 1.8373, ALUM / (K + AL + 2 * SO4)),
    ("octadecahydrate", 1.4237, 2 * ALUM / (AL2SO4 + 18 * WATER)),
    ("tetradecahydrate", 1.5963, 2 * ALUM / (AL2SO4 + 14 * WATER)),
    ("aluminium triacetate", 2.3242, ALUM / (AL + 3 * ACETATE)),
    ("basic aluminium diacetate", 2.9269, ALUM / (AL + OX + H + 2 * ACETATE)),
    ("ferrous sulphate monohydrate", 1.6361, (FESO4 + 7 * WATER) / (FESO4 + WATER)),
    ("anhydrous ferrous sulphate", 1.8301, (FESO4 + 7 * WATER) / FESO4),
    ("anhydrous copper sulphate", 1.5644, (CUSO4 + 5 * WATER) / CUSO4),
    ("washing soda", 0.3704, SODA / (SODA + 10 * WATER)),
    ("sodium carbonate monohydrate", 2.3075, (SODA + 10 * WATER) / (SODA + WATER)),
    ("citric acid monohydrate", 0.9143, CITRIC / (CITRIC + WATER)),
    ("anhydrous oxalic acid", 1.4002, (OXALIC + 2 * WATER) / OXALIC),
    ("anhydrous tin chloride", 1.1900, (TIN + 2 * WATER) / TIN),
]


@pytest.mark.parametrize(("form", "printed", "worked"), EQUIVALENTS)
def test_a_form_is_worth_what_its_molar_masses_say(form, printed, worked):
    assert form_named(form).grams == printed
    assert worked == pytest.approx(printed, rel=2e-4)


def test_no_form_in_the_data_is_left_unchecked():
    shipped = {form.name for substance in load().values() for form in substance.forms}
    assert shipped == {row[0] for row in EQUIVALENTS} | {"dried ferrous sulphate"}
    assert form_named("dried ferrous sulphate").grams == form_named("ferrous sulphate monohydrate").grams
