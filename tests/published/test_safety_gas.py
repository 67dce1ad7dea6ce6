"""Carbon dioxide from carbonates, worked from molar masses at 20 °C and one atmosphere.

R 8.314 462 6 J/(mol K), one atmosphere 101 325 Pa; Ca 40.078, Na 22.990, K 39.098, C 12.011, O 15.999,
H 1.008, N 14.007. Foaming of carbonates with acids: ILO/WHO International Chemical Safety Card 1135.
"""

import pytest

from dyesession.care import Situation, foam_litres, reminders

CA, NA, K, C, OX, H, N = 40.078, 22.990, 39.098, 12.011, 15.999, 1.008, 14.007
LITRES_PER_MOL = 8.3144626 * 293.15 / 101325 * 1000
CO3 = C + 3 * OX


@pytest.mark.parametrize(
    ("name", "printed", "molar_mass"),
    [
        ("chalk", 0.240, CA + CO3),
        ("soda ash", 0.227, 2 * NA + CO3),
        ("washing soda", 0.084, 2 * NA + CO3 + 10 * (2 * H + OX)),
        ("baking soda", 0.286, NA + H + CO3),
        ("potash", 0.174, 2 * K + CO3),
        ("ammonium carbonate", 0.250, 2 * (N + 4 * H) + CO3),
    ],
)
def test_litres_of_gas_from_a_gram(name, printed, molar_mass):
    assert foam_litres(name, 1.0) == pytest.approx(printed, abs=1e-9)
    assert printed == pytest.approx(LITRES_PER_MOL / molar_mass, abs=6e-4)


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
