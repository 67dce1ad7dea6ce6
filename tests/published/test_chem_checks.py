"""The chemistry of dyeing against 102 worked values.

Source: `chem_checks.csv` beside this file, worked out apart from this program. Its formulas and figures
come from Broadbent, Basic Principles of Textile Coloration, ch. 11, p. 203 ("B1" in the table); the
isotherm, rate, extraction and Kubelka-Munk laws as named at the top of each file in `dyesession/dyeing`;
activation energies from Ajmal & Piergiovanni 2018, Chairat et al. 2005, Wei et al. 2013 and Septhum et
al. 2009 (abstracts).

Every number printed under `expected` is read from the table and compared in order. It must agree within
the row's own tolerance, or within half a unit of the last digit printed where the table rounds more
coarsely than that.
"""

import csv
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from dyesession.dyeing.diffusion import cylinder_share, cylinder_time
from dyesession.dyeing.exhaustion import affinity_kj_mol, exhausted_share, share_left_after, successive_dips
from dyesession.dyeing.extraction import TwoPools, kept_share_to_reach, pulls, two_pool_strains
from dyesession.dyeing.hydrates import mass_share, molar_mass
from dyesession.dyeing.isotherms import dual_mode_bath, freundlich_bath, langmuir_bath
from dyesession.dyeing.kinetics import (
    arrhenius_factor,
    cegarra_puente_share,
    first_order_share,
    second_order_half_min,
    second_order_start_mg_g_min,
    second_order_taken,
)
from dyesession.dyeing.reflectance import depth_of, reflectance_of
from dyesession.dyeing.rinsing import share_left
from dyesession.dyeing.steeping import peleg_strength, two_site_strength
from dyesession.dyeing.strains import fit_strains, left_from_fitted_line

TABLE = Path(__file__).parent / "chem_checks.csv"
ROWS = list(csv.DictReader(TABLE.read_text(encoding="utf-8").splitlines()))

NUMBER = r"(-?\d+(?:\.\d+)?(?:e[-+]?\d+)?)"
Numbers = tuple[float, ...]


def keyed(text: str) -> dict[str, float]:
    """Return the `name=number` pairs of a text."""
    return {name: float(number) for name, number in re.findall(rf"([A-Za-z][\w/^]*)={NUMBER}", text)}


def plain(text: str) -> list[float]:
    """Return the numbers that do not belong to a word."""
    return [float(number) for number in re.findall(rf"(?<![\w.]){NUMBER}", text)]


def number_after(word: str, text: str) -> float:
    found = re.search(rf"{re.escape(word)}\s*{NUMBER}", text)
    assert found, (word, text)
    return float(found.group(1))


def nernst(text: str) -> Numbers:
    given = keyed(text)
    return (exhausted_share(given["K"], given["L"]),)


def affinity(text: str) -> Numbers:
    given = keyed(text)
    value = affinity_kj_mol(given["K"], given["T"])
    return value, value  # the table prints it twice: worked out, and as in the book


def successive(text: str) -> Numbers:
    given = keyed(text)
    return (share_left_after(given["K"], [given["L"]] * int(given["n"])),)


def successive_carrying_out(text: str) -> Numbers:
    given = keyed(text)
    pass_number = int(number_after("pass", text))
    dips = successive_dips(
        given["D0"], given["V0"] / 1000, [given["m"]] * pass_number, given["K"], given["p"]
    )
    last = dips[-1]
    return (
        last.liquor_ratio,
        last.exhausted,
        last.on_fibre_g,
        last.carried_out_g,
        last.left_g,
        last.left_volume_l * 1000,
    )


def langmuir(text: str) -> Numbers:
    given = keyed(text)
    rest = langmuir_bath(given["c0"], given["L"], given["q_m"], given["K_L"])
    return rest.bath_mg_l, rest.on_fibre_mg_g, rest.exhausted


def freundlich(text: str) -> Numbers:
    given = keyed(text)
    rest = freundlich_bath(given["c0"], given["L"], given["K_F"], given["n"])
    return rest.bath_mg_l, rest.on_fibre_mg_g, rest.exhausted


def dual_mode(text: str) -> Numbers:
    given = keyed(text)
    rest = dual_mode_bath(given["c0"], given["L"], given["S"], given["K_L"], given["K_p"])
    return rest.bath_mg_l, rest.on_fibre_mg_g


def second_order_half(text: str) -> Numbers:
    given = keyed(text)
    return (
        second_order_half_min(given["q_e"], given["k2"]),
        second_order_start_mg_g_min(given["q_e"], given["k2"]),
    )


def cegarra(text: str) -> Numbers:
    given = keyed(text)
    return (cegarra_puente_share(given["k"], given["t"], given["a"]),)


def arrhenius(text: str) -> Numbers:
    energy = keyed(text)["Ea"]
    return arrhenius_factor(energy, 60, 80), arrhenius_factor(energy, 80, 90)


def washing(text: str) -> Numbers:
    given = keyed(text)
    water, held = number_after("water", text), number_after("held liquor", text)
    return last_pull(given["S"], water, held, 0.0, int(number_after("pull", text)))


def washing_with_bound_colour(text: str) -> Numbers:
    assert text.startswith("as above")  # the colour, the water and the held liquor of the rows before it
    bound_ml = number_after("marc", text) * keyed(text)["K_d"]
    return last_pull(100.0, 1000.0, 60.0, bound_ml, int(number_after("pull", text)))


def last_pull(colour: float, water: float, held: float, bound: float, count: int) -> Numbers:
    last = pulls(colour, [water] * count, held, bound)[-1]
    return last.strength_per_ml, last.strained, last.left


def two_strains(text: str) -> Numbers:
    given = keyed(text)
    told = fit_strains([given["A1"], given["A2"]], 1.0)
    return told.ratio, told.total, told.left, told.left_error, told.total_error


def three_strains(text: str) -> Numbers:
    strains = [float(part) for part in text.removeprefix("A=").split(",")]
    told = fit_strains(strains, 0.0)
    return told.ratio, told.left, left_from_fitted_line(strains)


def two_pool_trap(text: str) -> Numbers:
    fast, fast_kept, slow, slow_kept = plain(text)
    drawn = two_pool_strains(TwoPools(fast, fast_kept, slow, slow_kept), 3)
    strained = [out for out, _ in drawn]
    return (
        *strained,
        fit_strains(strained[:2], 0.0).left,
        drawn[1][1],
        fit_strains(strained[1:], 0.0).left,
        drawn[2][1],
    )


def kept_per_pull(text: str) -> Numbers:
    count = int(keyed(text)["n"])
    five_pct, one_pct = re.findall(r"(\d+) %", text)
    return kept_share_to_reach(int(five_pct) / 100, count), kept_share_to_reach(int(one_pct) / 100, count)


def peleg(text: str) -> Numbers:
    given = keyed(text)
    return (peleg_strength(given["K1"], given["K2"], given["t"]),)


def two_site(text: str) -> Numbers:
    found = re.match(r"(\d+)\(1-e\^-([\d.]+)t\)\+(\d+)\(1-e\^-([\d.]+)t\); t=(\d+)$", text)
    assert found, text
    washed, wash_rate, diffused, diffusion_rate, minutes = (float(group) for group in found.groups())
    return (two_site_strength(washed, wash_rate, diffused, diffusion_rate, minutes),)


def rinses(text: str) -> Numbers:
    held, fresh = plain(text)
    return share_left(held, fresh, 1), share_left(held, fresh, 2), share_left(held, fresh, 3)


def rinses_with_loose_dye(text: str) -> Numbers:
    given = keyed(text)
    return (
        share_left(given["p"], given["w"], 1, partition=given["K"]),
        share_left(given["p"], given["w"], 3, partition=given["K"]),
    )


def aluminium(text: str) -> Numbers:
    found = re.fullmatch(rf"(\S+\.12H2O) {NUMBER} g/mol; anhydrous {NUMBER}", text)
    assert found, text
    crystals = found.group(1)
    dried = crystals.removesuffix(".12H2O")
    assert molar_mass(crystals) == pytest.approx(float(found.group(2)), rel=1e-4)
    assert molar_mass(dried) == pytest.approx(float(found.group(3)), rel=1e-4)
    return 100 * mass_share("Al", crystals), 100 * mass_share("Al", dried)


# For each kind of row: our function over its inputs, and how its expected numbers are printed.
KINDS: dict[str, tuple[Callable[[str], Numbers], str]] = {
    "nernst_E": (nernst, NUMBER),
    "affinity_kJ": (affinity, rf"{NUMBER} \(B1 prints {NUMBER}\)"),
    "successive_left": (successive, NUMBER),
    "successive_with_pickup": (
        successive_carrying_out,
        rf"L={NUMBER} E={NUMBER} on fibre {NUMBER}(?: g)?, carried out {NUMBER}(?: g)?,"
        rf" left {NUMBER}(?: g)? in {NUMBER} mL",
    ),
    "langmuir_bath": (langmuir, rf"c={NUMBER} mg/L q={NUMBER} mg/g E={NUMBER}"),
    "freundlich_bath": (freundlich, rf"c={NUMBER} q={NUMBER} E={NUMBER}"),
    "dual_bath": (dual_mode, rf"c={NUMBER} q={NUMBER}"),
    "pfo_F": (lambda text: (first_order_share(keyed(text)["k1"], keyed(text)["t"]),), NUMBER),
    "pso_q": (
        lambda text: (second_order_taken(keyed(text)["q_e"], keyed(text)["k2"], keyed(text)["t"]),),
        rf"{NUMBER} mg/g",
    ),
    "pso_half": (second_order_half, rf"{NUMBER} min; h={NUMBER} mg/g/min"),
    "cylinder_F": (lambda text: (cylinder_share(keyed(text)["Dt/r^2"]),), NUMBER),
    "cylinder_half": (lambda text: (cylinder_time(keyed(text)["F"]),), rf"Dt/r\^2={NUMBER}"),
    "cegarra_F": (cegarra, NUMBER),
    "arrhenius_factor": (arrhenius, rf"60->80 C x{NUMBER}; 80->90 C x{NUMBER}"),
    "wash_extraction": (washing, rf"c={NUMBER} strained={NUMBER} left={NUMBER}"),
    "wash_extraction_bound": (washing_with_bound_colour, rf"c={NUMBER} strained={NUMBER} left={NUMBER}"),
    "ratio_estimate": (
        two_strains,
        rf"rho={NUMBER} total={NUMBER} left={NUMBER}; rel\. error of left = {NUMBER} x s,"
        rf" of total = {NUMBER} x s \(s = rel\. error of each strength\)",
    ),
    "ratio_estimate_log_fit": (
        three_strains,
        rf"rho={NUMBER}; left after 3 = {NUMBER} using the last observed amount"
        rf" \({NUMBER} using the fitted one\)",
    ),
    "ratio_two_pool_trap": (
        two_pool_trap,
        rf"A={NUMBER},{NUMBER},{NUMBER}; two-point estimate after pull 2 = {NUMBER} but truth = {NUMBER};"
        rf" from pulls 2,3 estimate {NUMBER}, truth {NUMBER}",
    ),
    "kept_share_per_pull": (kept_per_pull, rf"{NUMBER} / {NUMBER}"),
    "peleg": (peleg, NUMBER),
    "two_site": (two_site, NUMBER),
    "rinse_dilution": (rinses, rf"share left after 1,2,3: {NUMBER} {NUMBER} {NUMBER}"),
    "rinse_desorption": (rinses_with_loose_dye, rf"kept per rinse {NUMBER}; after 3: {NUMBER}"),
    "kubelka_munk": (lambda text: (depth_of(keyed(text)["R"]),), rf"K/S={NUMBER}"),
    "kubelka_munk_inverse": (lambda text: (reflectance_of(keyed(text)["K/S"]),), rf"R={NUMBER}"),
    "al_content": (aluminium, rf"Al {NUMBER} % ; {NUMBER} %"),
}


def half_last_digit(printed: str) -> float:
    """Half a unit of the last digit printed."""
    mantissa, _, exponent = printed.partition("e")
    return 0.5 * 10.0 ** (int(exponent or 0) - len(mantissa.partition(".")[2]))


def allowed(printed: str, tolerance: str) -> float:
    amount, kind = tolerance.split()
    asked = float(amount) * (abs(float(printed)) if kind == "rel" else 1.0)
    return max(asked, half_last_digit(printed) * (1 + 1e-9)) if "." in printed else asked


def label(row: dict[str, str]) -> str:
    return f"{row['check']}: {row['inputs']}"


@pytest.mark.parametrize("row", ROWS, ids=label)
def test_the_worked_value_comes_out(row: dict[str, str]) -> None:
    ours, printed_as = KINDS[row["check"]]
    found = re.fullmatch(printed_as, row["expected"])
    assert found, f"cannot read {row['expected']!r}"
    computed = ours(row["inputs"])
    assert len(computed) == len(found.groups())
    for value, printed in zip(computed, found.groups(), strict=True):
        assert abs(value - float(printed)) <= allowed(printed, row["tolerance"]), (value, printed)


def test_all_102_worked_values_are_there_and_of_a_known_kind() -> None:
    assert len(ROWS) == 102
    assert set(Counter(row["check"] for row in ROWS)) == set(KINDS)


def test_a_wrong_value_would_be_noticed() -> None:
    assert allowed("0.500000", "1e-4 rel") == pytest.approx(5e-5)
    assert allowed("0.0061", "1e-3 rel") == pytest.approx(5e-5)
    assert allowed("40", "1e-4 rel") == pytest.approx(4e-3)
    assert abs(exhausted_share(20, 20.1) - 0.5) > allowed("0.500000", "1e-4 rel")
