"""Spectra rebuilt from Lab, depth series and two-dye mixes against values worked out apart from this program.

Sources: least hyperbolic tangent slope, S. A. Burns, scottburns.us ("Reflectance curves from sRGB", 2019-20);
single-constant Kubelka-Munk. The tables `colour_lhtss_check.csv` (optimum confirmed there by another solver),
`colour_depth_check.csv`, `colour_overdye_check.csv` and `colour_weights_10nm.csv` come from a separate
implementation of them in numpy. The weights are also rebuilt here from the CIE tables of colour-science.
"""

import csv
import warnings
from pathlib import Path

import pytest

from dyesession.colour.cielab import Lab, xyz_of_lab
from dyesession.colour.kubelka_munk import depths_of, dye_only, overdyed, spectrum_of
from dyesession.colour.rebuilt import rebuilt, seen
from dyesession.colour.shades import depth_line, depths, strength
from dyesession.colour.spectral_weights import BANDS_NM, weights_for, white_for
from dyesession.colour.viewing import A_2, A_10, D65_2, D65_10, Viewing

HERE = Path(__file__).parent
CURVES_WITHIN, LAB_WITHIN = 1e-6, 0.002
VIEWINGS = {"D65_2deg": D65_2, "D65_10deg": D65_10, "A_2deg": A_2, "A_10deg": A_10}


def rows(name: str) -> list[dict[str, str]]:
    return list(csv.DictReader((HERE / name).read_text(encoding="utf-8").splitlines()))


def lab_of(row: dict[str, str], prefix: str = "") -> Lab:
    return Lab(*(float(row[prefix + axis]) for axis in "Lab"))


REBUILT, DEPTHS = rows("colour_lhtss_check.csv"), rows("colour_depth_check.csv")
MIXES, WEIGHTS = rows("colour_overdye_check.csv"), rows("colour_weights_10nm.csv")


@pytest.mark.parametrize("row", REBUILT, ids=lambda row: row["name"])
def test_the_smoothest_curve_comes_out(row: dict[str, str]) -> None:
    curve = rebuilt(lab_of(row), D65_2)
    assert curve == pytest.approx([float(row[f"R{nm}"]) for nm in BANDS_NM], abs=CURVES_WITHIN)
    wanted = xyz_of_lab(lab_of(row), white_for(D65_2))
    assert wanted == pytest.approx([float(row[axis]) for axis in "XYZ"], abs=1e-8)


@pytest.mark.parametrize("row", DEPTHS, ids=lambda row: f"{row['name']} x{row['depth_ratio']}")
def test_a_depth_comes_out(row: dict[str, str]) -> None:
    line = depth_line(lab_of(row, "undyed_"), lab_of(row, "sample_"), D65_2)
    assert line(float(row["depth_ratio"])) == pytest.approx(lab_of(row, "pred_"), abs=LAB_WITHIN)


@pytest.mark.parametrize("row", MIXES, ids=lambda row: f"{row['name']} {row['cA']}:{row['cB']}")
def test_two_dyes_come_out(row: dict[str, str]) -> None:
    ground = depths(lab_of(row, "undyed_"), D65_2)
    mixed = ground
    for dye in "AB":
        own = dye_only(ground, depths(lab_of(row, f"{dye}_"), D65_2))
        mixed = overdyed(mixed, own, float(row[f"c{dye}"]))
    assert seen(spectrum_of(mixed), D65_2) == pytest.approx(lab_of(row, "pred_"), abs=LAB_WITHIN)


@pytest.mark.parametrize(
    ("name", "undyed", "sample", "expected", "most", "at_nm"),
    [
        ("madder on wool", (86, 0, 11), (42, 45, 30), 22.1346, 12.4927, 510),
        ("weld on wool", (86, 0, 11), (75, -5, 70), 8.8429, 9.3123, 400),
        ("indigo on cotton", (93, 0, 2), (38, -4, -28), 12.3904, 9.9221, 700),
        ("walnut on wool", (86, 0, 11), (38, 10, 18), 17.3717, 8.9504, 400),
    ],
)
def test_the_strength_of_a_dye_comes_out(
    name: str,
    undyed: tuple[float, ...],
    sample: tuple[float, ...],
    expected: float,
    most: float,
    at_nm: int,
) -> None:
    ground, dyed = Lab(*map(float, undyed)), Lab(*map(float, sample))
    assert strength(ground, dyed, D65_2) == pytest.approx(expected, abs=2e-4)
    own = dye_only(depths(ground, D65_2), depths(dyed, D65_2))
    assert max(own) == pytest.approx(most, abs=2e-4)
    assert BANDS_NM[own.index(max(own))] == at_nm


@pytest.mark.parametrize(
    ("share", "depth"), [(0.9, 0.0055556), (0.5, 0.25), (0.2, 1.6), (0.1, 4.05), (0.05, 9.025), (0.02, 24.01)]
)
def test_depth_of_a_reflectance_and_back(share: float, depth: float) -> None:
    assert depths_of((share,))[0] == pytest.approx(depth, rel=1e-5)
    assert spectrum_of((depth,))[0] == pytest.approx(share, rel=1e-5)


@pytest.mark.parametrize("name", VIEWINGS)
def test_the_weights_are_those_of_the_table(name: str) -> None:
    theirs = [tuple(float(row[f"{name}_{axis}"]) for axis in "XYZ") for row in WEIGHTS]
    for ours, theirs_row in zip(weights_for(VIEWINGS[name]), theirs, strict=True):
        assert ours == pytest.approx(theirs_row, abs=6e-11)
    assert white_for(VIEWINGS[name])[1] == pytest.approx(1.0, abs=1e-8)


def test_white_is_the_light_itself() -> None:
    assert white_for(D65_2) == pytest.approx((0.950174, 1.0, 1.088128), abs=2e-6)
    assert seen((1.0,) * 31, D65_2) == pytest.approx((100, 0, 0), abs=1e-9)


@pytest.mark.parametrize("name", VIEWINGS)
def test_the_weights_follow_from_the_cie_tables(name: str) -> None:
    ours = weights_for(VIEWINGS[name])
    for band, theirs in zip(ours, _from_cie_tables(VIEWINGS[name]), strict=True):
        assert band == pytest.approx(theirs, abs=2e-5)


def _from_cie_tables(viewing: Viewing) -> list[list[float]]:
    """Light times eye at every 10 nm from 380 to 780, the ends added to 400 and 700 nm, Y of white 1."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from colour import MSDS_CMFS, SDS_ILLUMINANTS, SpectralShape
    shape = SpectralShape(380, 780, 10)
    eye = MSDS_CMFS[
        f"CIE {1931 if viewing.observer_deg == 2 else 1964} {viewing.observer_deg} Degree Standard Observer"
    ]
    light = SDS_ILLUMINANTS[viewing.illuminant].copy().align(shape).values
    products = [
        [float(e * s) for e in row] for row, s in zip(eye.copy().align(shape).values, light, strict=True)
    ]
    folded = [[0.0, 0.0, 0.0] for _ in BANDS_NM]
    for index, row in enumerate(products):
        place = min(max(index - 2, 0), len(BANDS_NM) - 1)
        folded[place] = [a + b for a, b in zip(folded[place], row, strict=True)]
    whole = sum(row[1] for row in folded)
    return [[one / whole for one in row] for row in folded]


def test_the_tables_are_whole() -> None:
    assert (len(REBUILT), len(DEPTHS), len(MIXES), len(WEIGHTS)) == (10, 35, 18, 31)
