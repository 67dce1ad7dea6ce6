import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.scales import (
    can_be_weighed,
    reading_sd_g,
    smallest_dose_g,
    stock_error_share,
    tared_sd_g,
    weighing_error_share,
    weighing_sd_g,
)

# Display step, dose, per cent error from the step alone and with usual repeatability; worked out apart from
# this program.
WORKED_OUT = [
    (1, 0.5, 163.3, 258.2),
    (1, 2, 40.8, 64.5),
    (1, 20, 4.1, 6.5),
    (0.1, 0.5, 16.3, 25.8),
    (0.1, 10, 0.8, 1.3),
    (0.01, 2, 0.4, 0.6),
    (0.01, 0.1, 8.2, 12.9),
]


@pytest.mark.parametrize(("step", "dose", "step_only", "usual"), WORKED_OUT)
def test_weighing_errors(step: float, dose: float, step_only: float, usual: float) -> None:
    assert 100 * weighing_error_share(dose, step, 0) == pytest.approx(step_only, abs=0.06)
    assert 100 * weighing_error_share(dose, step) == pytest.approx(usual, abs=0.06)


@given(st.floats(0.001, 10), st.floats(0.001, 0.5))
def test_the_smallest_dose_is_just_within_its_tolerance(step: float, tolerance: float) -> None:
    assert weighing_error_share(smallest_dose_g(step, tolerance), step) == pytest.approx(tolerance)


@pytest.mark.parametrize(("tolerance", "steps"), [(0.05, 26), (0.10, 13), (0.02, 65)])
def test_how_many_steps_a_dose_must_be(tolerance: float, steps: float) -> None:
    assert smallest_dose_g(1, tolerance) == pytest.approx(steps, abs=0.5)


@given(st.floats(0.001, 5), st.floats(0, 5), st.floats(0, 500), st.floats(0, 0.05))
def test_more_to_go_wrong_never_shrinks_the_error(
    step: float, scatter: float, dose: float, slope: float
) -> None:
    alone = weighing_sd_g(dose, step, 0)
    assert alone == pytest.approx(tared_sd_g(step)) and alone > reading_sd_g(step)
    assert weighing_sd_g(dose, step, scatter, slope) >= alone


def test_two_grams_want_a_finer_scale_than_one_that_steps_by_a_gram() -> None:
    assert not can_be_weighed(2, 1)
    assert not can_be_weighed(2, 0.1)
    assert can_be_weighed(2, 0.01)


def test_a_stock_solution_on_a_coarse_scale() -> None:
    coarse = stock_error_share(weighing_error_share(20, 1), 0.02, 0.03)
    fine = stock_error_share(weighing_error_share(10, 0.1), 0.02, 0.03)
    assert coarse == pytest.approx(0.074, abs=5e-4)
    assert fine == pytest.approx(0.038, abs=5e-4)


def test_a_negative_dose_and_a_scale_without_a_step_are_refused() -> None:
    with pytest.raises(OutOfRange, match="dose"):
        weighing_sd_g(-1, 0.1)
    with pytest.raises(OutOfRange, match="display step"):
        weighing_sd_g(1, 0)
