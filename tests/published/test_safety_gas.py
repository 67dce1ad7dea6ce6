"""Carbon dioxide from carbonates at 20 °C and one atmosphere, molar masses from an independent package.

Molar masses: molmass (BSD-3), which takes the atomic weights of CIAAW and NIST. R 8.314 462 6 J/(mol K), one
atmosphere 101 325 Pa. Foaming of carbonates with acids: ILO/WHO International Chemical Safety Card 1135.
"""

import pytest
from molmass import Formula

from dyesession.care import Situation, foam_litres, reminders
from dyesession.substances import load

LITRES_PER_MOL = 8.3144626 * 293.15 / 101325 * 1000

CARBONATES = {
    "chalk": (0.240, "CaCO3"),
    "soda ash": (0.227, "Na2CO3"),
    "washing soda": (0.084, "Na2CO3(H2O)10"),
    "baking soda": (0.286, "NaHCO3"),
    "potash": (0.174, "K2CO3"),
    "ammonium carbonate": (0.250, "(NH4)2CO3"),
}


@pytest.mark.parametrize("name", CARBONATES)
def test_litres_of_gas_from_a_gram(name):
    printed, formula = CARBONATES[name]
    assert foam_litres(name, 1.0) == pytest.approx(printed, abs=1e-9)
    assert printed == pytest.approx(LITRES_PER_MOL / Formula(formula).mass, abs=6e-4)


def test_no_carbonate_in_the_data_is_left_unchecked():
    assert {one.key for one in load().values() if one.gas} == set(CARBONATES)


def test_twenty_grams_of_chalk_in_an_acid_pot_can_push_out_4_8_litres():
    assert foam_litres("chalk", 20.0) == pytest.approx(4.8)
    situation = Situation(
        letter="B",
        adding=(("chalk", 20.0),),
        contents=(("citric acid", 4.0),),
        volume_l=6.0,
        capacity_l=10.0,
    )
    (line,) = [r for r in reminders(situation) if r.trigger == "foam"]
    assert "up to 4.8 L gas, 4.0 L free" in line.text
    assert line.severity == 3
