"""Kitchen physics and arithmetic against 40 worked values.

Source: `physics_check_values.csv` beside this file, each row worked out apart from this program and
checked with what its last column names (iapws, CoolProp, psychrolib, fluids, definitions, closed forms).
The inputs are read from the table, every number printed under `expected` is compared with the row's own
tolerance.
"""

import csv
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from dyesession.dyeing.boiling import boiling_point_by_rule_c, boiling_point_c, pressure_kpa_at
from dyesession.dyeing.eta import Reading, from_three_readings, straight_line_min
from dyesession.dyeing.evaporation import (
    air_over,
    carrier_kg_m2_h,
    latent_heat_bound_kg_h,
    room_air,
    shah_kg_m2_h,
)
from dyesession.dyeing.hardness import in_mg_l
from dyesession.dyeing.heating import (
    KJ_PER_KWH,
    heat_capacity_kj_k,
    heat_kj,
    minutes_to,
    settling_c,
    temperature_after_c,
    time_constant_min,
)
from dyesession.dyeing.hydrates import FORMS, equal_mass_g, mass_share
from dyesession.dyeing.ph import acid_by_rule_g_l, acid_for_ph_g_l, ph_with_acid
from dyesession.dyeing.regain import bone_dry_g, mass_at_regain_g
from dyesession.dyeing.rinsing import rinses_needed, share_left
from dyesession.dyeing.scales import smallest_dose_g, tared_sd_g
from dyesession.dyeing.spoons import MEASURE_ML
from dyesession.dyeing.stock import bath_g_l, dose_g, stock_ml
from dyesession.dyeing.water import density_kg_m3, saturation_pressure_kpa
from dyesession.dyeing.yarn import metres_per_100_g, metres_per_100_g_of, tex_of

TABLE = Path(__file__).parent / "physics_check_values.csv"
ROWS = {row["id"]: row for row in csv.DictReader(TABLE.read_text(encoding="utf-8").splitlines())}

Numbers = tuple[float, ...]
NUMBER = r"-?\d+(?:\.\d+)?"


def plain(text: str) -> list[float]:
    """Return the numbers that do not belong to a word."""
    return [float(number) for number in re.findall(rf"(?<![\w.])(?:(?<=[\s=@(,])-)?{NUMBER}", text)]


def inputs(row_id: str) -> list[float]:
    return plain(ROWS[row_id]["inputs"])


# The rows newton-1, -2 and -3 share one pot, given in the first of them.
POWER_W, LOSS_W_K, CAPACITY_J_K, ROOM_C, START_C, _ = inputs("newton-1")
SETTLES_C = settling_c(ROOM_C, POWER_W, LOSS_W_K)
CONSTANT_MIN = time_constant_min(CAPACITY_J_K / 1000, LOSS_W_K)


def pot_c(seconds: float) -> float:
    return temperature_after_c(START_C, SETTLES_C, CONSTANT_MIN, seconds / 60)


def heat(row_id: str) -> Numbers:
    mass_kg, from_c, to_c = inputs(row_id)
    kj = heat_kj(heat_capacity_kj_k(mass_kg), from_c, to_c)
    return kj / 1000, kj / KJ_PER_KWH


def newton_eta(row_id: str) -> Numbers:
    (target_c,) = inputs(row_id)
    return (60 * minutes_to(target_c, START_C, SETTLES_C, CONSTANT_MIN),)


def three_readings(row_id: str) -> Numbers:
    """The row needs exact readings; the printed ones agree with ours to the digits printed."""
    *printed, apart_s = inputs(row_id)
    exact = [pot_c(apart_s), pot_c(2 * apart_s), pot_c(3 * apart_s)]
    assert [round(c, 4) for c in exact] == printed
    settles_c, constant_min = from_three_readings(*exact, apart_s / 60)
    return settles_c, 60 * constant_min, 60 * minutes_to(85.0, exact[-1], settles_c, constant_min)


def straight_line(row_id: str) -> Numbers:
    first_c, first_s, second_c, second_s, target_c = inputs(row_id)
    line_s = 60 * straight_line_min(
        target_c, Reading(first_s / 60, first_c), Reading(second_s / 60, second_c)
    )
    truth_s = 60 * minutes_to(target_c, second_c, SETTLES_C, CONSTANT_MIN)
    assert round(100 * (1 - line_s / truth_s)) == 13  # "13 % short", printed beside the figure
    return (line_s,)


def boil_off(row_id: str) -> Numbers:
    kilowatts, bath_c = inputs(row_id)
    return (latent_heat_bound_kg_h(1000 * kilowatts, bath_c),)


def steam(law: Callable[..., float]) -> Callable[[str], Numbers]:
    def from_row(row_id: str) -> Numbers:
        bath_c, room_c, humidity_pct, *draught = inputs(row_id)
        return (law(air_over(bath_c), room_air(room_c, humidity_pct / 100), *draught),)

    return from_row


def acid_ph(acid: str) -> Callable[[str], Numbers]:
    return lambda row_id: (ph_with_acid(acid, *inputs(row_id)),)


def acid_dose(row_id: str) -> Numbers:
    target, alkalinity = inputs(row_id)
    return acid_by_rule_g_l("citric", target, alkalinity), acid_for_ph_g_l("citric", target, alkalinity)


def hardness_of(unit: str) -> Callable[[str], Numbers]:
    return lambda row_id: (in_mg_l(plain(ROWS[row_id]["formula"])[0], unit),)


def smallest_dose(row_id: str) -> Numbers:
    resolution_g, tolerance_pct = inputs(row_id)
    return (smallest_dose_g(resolution_g, tolerance_pct / 100, repeatability_g=0),)


def on_fibre(row_id: str) -> Numbers:
    percent, fibre_g, liquor_ratio = inputs(row_id)
    return dose_g(percent, fibre_g), bath_g_l(percent, liquor_ratio)


def rinses(row_id: str) -> Numbers:
    carry_over, fresh, count = inputs(row_id)
    return (share_left(carry_over, fresh, count),)


def rinse_count(row_id: str) -> Numbers:
    carry_over, fresh, wanted = inputs(row_id)
    return (rinses_needed(wanted, carry_over, fresh),)


def washing_soda(row_id: str) -> Numbers:
    return (equal_mass_g(*inputs(row_id), "washing soda", "soda ash"),)


def alum_equal(row_id: str) -> Numbers:
    grams = plain(ROWS[row_id]["formula"])[0]
    return (equal_mass_g(grams, "aluminium sulphate octadecahydrate", "potassium alum"),)


OURS: dict[str, Callable[[str], Numbers]] = {
    "atm-1": lambda row_id: (1000 * pressure_kpa_at(*inputs(row_id)),),
    "atm-2": lambda row_id: (1000 * pressure_kpa_at(*inputs(row_id)),),
    "boil-1": lambda row_id: (boiling_point_c(*inputs(row_id)),),
    "boil-2": lambda row_id: (boiling_point_c(*inputs(row_id)),),
    "boil-3": lambda row_id: (boiling_point_c(*inputs(row_id)),),
    "boil-lin": lambda row_id: (boiling_point_by_rule_c(*inputs(row_id)),),
    "rho-1": lambda row_id: (density_kg_m3(*inputs(row_id)),),
    "rho-2": lambda row_id: (density_kg_m3(*inputs(row_id)),),
    "psat": lambda row_id: (saturation_pressure_kpa(*inputs(row_id)),),
    "heat": heat,
    "newton-1": lambda row_id: (pot_c(inputs(row_id)[-1]),),
    "newton-2": lambda row_id: (pot_c(inputs(row_id)[-1]),),
    "newton-3": lambda row_id: (pot_c(inputs(row_id)[-1]),),
    "newton-eta": newton_eta,
    "eta-3pt": three_readings,
    "eta-lin": straight_line,
    "boiloff": boil_off,
    "evap-carrier": steam(carrier_kg_m2_h),
    "evap-shah": steam(shah_kg_m2_h),
    "regain": lambda row_id: (bone_dry_g(*inputs(row_id)),),
    "regain-2": lambda row_id: (mass_at_regain_g(*inputs(row_id)),),
    "rinse": rinses,
    "rinse-n": rinse_count,
    "hard-dH": hardness_of("German degree"),
    "hard-gpg": hardness_of("grain per US gallon"),
    "hard-clark": hardness_of("Clark degree"),
    "tsp": lambda _: (MEASURE_ML["US teaspoon"],),
    "scale": lambda row_id: (tared_sd_g(*inputs(row_id)),),
    "scale-min": smallest_dose,
    "yarn": lambda row_id: (tex_of("worsted", *inputs(row_id)),),
    "yarn-2": lambda row_id: (metres_per_100_g(*inputs(row_id)),),
    "yarn-3": lambda row_id: (metres_per_100_g_of(*inputs(row_id)),),
    "ph-citric": acid_ph("citric"),
    "ph-vinegar": acid_ph("acetic"),
    "ph-dose": acid_dose,
    "hydrate": washing_soda,
    "alum-eq": alum_equal,
    "fe": lambda _: (100 * mass_share("Fe", FORMS["ferrous sulphate heptahydrate"].formula),),
    "owf": on_fibre,
    "stock": lambda row_id: (stock_ml(*inputs(row_id)),),
}

EXACT = 1e-12  # relative: a row that says "exact" or 0 allows only the last digits of a float


def expected_numbers(row: dict[str, str]) -> list[float]:
    """Numbers under `expected`, without a remark such as "(13 % short)" or the 2 of "kg/m2h"."""
    text = re.sub(r"\(\d+ % short\)", "", row["expected"])
    return plain(text)


def allowed(row: dict[str, str], expected: float) -> float:
    words = row["tolerance"].split()
    if words[0] in ("exact", "0"):
        return EXACT * max(1.0, abs(expected))
    if len(words) > 1 and words[1] == "%":
        return float(words[0]) / 100 * abs(expected)
    return float(words[0])


@pytest.mark.parametrize("row_id", ROWS)
def test_the_worked_value_comes_out(row_id: str) -> None:
    row = ROWS[row_id]
    expected, computed = expected_numbers(row), OURS[row_id](row_id)
    assert len(expected) == len(computed) > 0
    for value, printed in zip(computed, expected, strict=True):
        assert abs(value - printed) <= allowed(row, printed), (value, printed)


def test_all_40_worked_values_are_there_and_each_has_a_function_of_ours() -> None:
    assert len(ROWS) == 40
    assert set(OURS) == set(ROWS)
