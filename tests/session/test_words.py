"""What the dyer is told to do: about the fire under a pot, wetted fibre, a pot that has no letter yet."""

from days import MORNING, Day

from dyesession.session import events as e
from dyesession.session import words


def until(day: Day, wanted: type[e.Event], step: str) -> e.Event:
    for _ in range(400):
        said = day.suggest()
        if isinstance(said, wanted) and getattr(said, "step", "") == step:
            return said
        day.space()
    raise AssertionError(f"{wanted.__name__} {step} never came")


def test_the_end_of_a_step_on_the_heat_is_told_as_turning_it_off() -> None:
    day = Day()
    done = until(day, e.Finished, "mordant")
    assert day.state.vessel("mordant pot").on_heat
    assert words.command_words(day.state, done) == "turn off the heat under B, mordant is done"
    assert words.short_words(day.state, done) == "turn off B"
    day.do(done)
    assert not day.state.vessel("mordant pot").on_heat


def test_before_the_end_it_is_told_too_and_a_step_off_the_heat_is_only_finished() -> None:
    day = Day()
    assert words.command_words(day.state, until(day, e.Finished, "scour")) == "scour is done", "it cooled off the heat"
    while (step := day.state.step("mordant")).status != "running" or step.segment != 1:
        day.space()
    assert words.after_words(day.state, step) == "turn off the heat under B, mordant is done"


def test_the_eye_and_leaving_out_end_a_step_and_the_heat_under_its_pot_is_spoken_of() -> None:
    day = Day()
    while day.state.step("dye").status != "running" or not day.state.vessel("dye pot").on_heat:
        day.space()
    for end in (e.OnShade("dye", "as the sample"), e.Skipped("dye", "dark enough")):
        assert words.heat_off_words(day.state, end) == "Turn off the heat under D."
    assert words.heat_off_words(day.state, e.Skipped("rinse", "no time")) == "", "it has not begun"
    day.do(e.Lit("dye pot", on=False))
    assert words.heat_off_words(day.state, e.OnShade("dye", "as the sample")) == ""


def test_fibre_that_goes_in_to_be_washed_is_not_said_to_be_wetted_out() -> None:
    day = Day()
    entered = until(day, e.Entered, "")
    assert words.command_words(day.state, entered) == "enter large skein into A"
    while not (isinstance(entered, e.Entered) and entered.vessel == "mordant pot"):
        entered = day.space()
    assert words.command_words(day.state, entered).endswith("into B, wetted out")


def test_a_pot_is_called_by_letter_and_name_and_by_its_name_alone_while_it_has_no_letter() -> None:
    day = Day()
    assert words.pot(day.state, "dye pot") == "D, the dye pot"
    assert words.pot(day.state, "blue pot") == "the blue pot"


def test_a_deadline_told_a_thousandth_too_early_is_told_by_its_own_minute() -> None:
    day = Day()
    on_the_minute_s = 60 - MORNING.second + day.state.now_s
    assert words.clock_text(day.state, on_the_minute_s - 0.004) == words.clock_text(day.state, on_the_minute_s) == "09:03"
    assert words.clock_text(day.state, on_the_minute_s - 1) == "09:02"
