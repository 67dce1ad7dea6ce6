import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.bands import (
    Scale,
    from_scale,
    quantile,
    quantile_points,
    share_below,
    t4_quantile,
    t4_share_below,
    to_scale,
)
from dyesession.dyeing.limits import OutOfRange

shares = st.floats(1e-6, 1 - 1e-6)
NORMAL_95, NORMAL_99_9 = 1.6449, 3.0902  # points of the normal distribution

log_bands = st.tuples(st.floats(0.01, 50), st.floats(1.01, 5), st.floats(1.01, 5)).map(
    lambda t: (t[0], t[0] / t[1], t[0] * t[2], "log")
)
logit_bands = st.tuples(st.floats(0.02, 0.3), st.floats(0.31, 0.6), st.floats(0.61, 0.98)).map(
    lambda t: (t[1], t[0], t[2], "logit")
)
bands = st.one_of(log_bands, logit_bands)
Given = tuple[float, float, float, Scale]


@given(shares)
def test_quantile_and_share_of_t_undo_each_other(share: float) -> None:
    assert t4_share_below(t4_quantile(share)) == pytest.approx(share, abs=1e-9)


@pytest.mark.parametrize(
    ("share", "value"),
    [(0.5, 0.0), (0.75, 0.7407), (0.9, 1.5332), (0.95, 2.1318), (0.975, 2.7764), (0.995, 4.6041)],
)
def test_t_agrees_with_printed_tables(share: float, value: float) -> None:
    """Student's t, 4 df, as printed in any statistical table."""
    assert t4_quantile(share) == pytest.approx(value, abs=5e-5)
    assert t4_quantile(1 - share) == pytest.approx(-value, abs=5e-5)


@given(bands)
def test_the_band_holds_nine_tenths_and_its_centre_is_the_median(band: Given) -> None:
    centre, low, high, _ = band
    assert quantile(*band, 0.05) == pytest.approx(low, rel=1e-9)
    assert quantile(*band, 0.5) == pytest.approx(centre, rel=1e-7)
    assert quantile(*band, 0.95) == pytest.approx(high, rel=1e-9)


@given(bands, st.floats(0.001, 0.999))
def test_band_quantile_and_share_below_undo_each_other(band: Given, share: float) -> None:
    assert share_below(*band, quantile(*band, share)) == pytest.approx(share, abs=1e-6)


@given(bands, st.integers(1, 60))
def test_points_rise_and_nine_tenths_of_them_lie_in_the_band(band: Given, count: int) -> None:
    points = quantile_points(*band, count)
    assert len(points) == count
    assert list(points) == sorted(points)
    inside = sum(band[1] <= point <= band[2] for point in points)
    assert abs(inside - 0.9 * count) <= 1.0


def test_tails_are_heavier_than_a_normals() -> None:
    band: Given = (1.0, 0.5, 2.0, "log")
    far = quantile(*band, 0.999)
    normal_far = math.exp(math.log(2) / NORMAL_95 * NORMAL_99_9)
    assert far > 1.5 * normal_far


@given(st.floats(-20, 20))
def test_scales_undo_themselves(point: float) -> None:
    for scale in ("log", "logit"):
        assert to_scale(from_scale(point, scale), scale) == pytest.approx(point, abs=1e-6)


@pytest.mark.parametrize("band", [(0.5, 0.6, 0.9, "log"), (0.5, 0.1, 0.5, "log"), (0.5, 0.5, 0.9, "logit")])
def test_a_band_that_does_not_hold_its_centre_is_refused(band: Given) -> None:
    with pytest.raises(OutOfRange, match="does not hold its centre"):
        quantile(*band, 0.5)


def test_a_share_off_the_logit_scale_is_refused() -> None:
    with pytest.raises(OutOfRange, match="logit scale"):
        quantile(0.5, 0.0, 0.9, "logit", 0.5)
