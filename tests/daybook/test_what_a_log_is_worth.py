"""What a log is worth, on simulated days whose truths nobody in them knows: the smaller twin of `bench/seasons.py`."""

from bench.seasons import MADDER, OTHER, SWINGS, repeats, seasons

SWING = SWINGS["as guessed"]


def test_a_colour_repeated_by_its_log_comes_as_near_as_is_claimed_and_by_the_recipe_alone_it_does_not() -> None:
    found = repeats(80, SWING)
    assert 0.85 <= found.by_log / found.trials <= 0.95
    assert found.by_recipe / found.trials < 0.6
    assert found.off_by_recipe > 2.0 * found.off_by_log


def test_a_season_s_readings_narrow_the_share_taken_threefold_for_a_dyestuff_without_a_figure() -> None:
    found = seasons(24, SWING, OTHER)
    assert found.before / found.after >= 3.0
    assert 0.85 <= found.held_after / found.days <= 0.96
    assert found.number >= 20, "the number's own band: nine of ten dyers claimed"


def test_steadier_hands_are_learned_as_such() -> None:
    steady, usual = (seasons(12, SWINGS[name], MADDER) for name in ("half as far as guessed", "as guessed"))
    assert steady.after < usual.after
    assert steady.before / steady.after >= 3.0
    assert steady.number + usual.number >= 20
