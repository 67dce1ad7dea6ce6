"""Random histories of a dye day: whatever a hand at the stove may press, in any order, at any time."""

from typing import Any

from days import Day
from hypothesis import strategies as st

from dyesession.session import events as e
from dyesession.session.engine import Refused

VESSELS = ("wash pot", "mordant pot", "extract pot", "dye pot", "rinse bowl", "bucket")
LOTS = ("large skein", "small skein", "snippet 1", "nobody")
STEPS = ("scour", "mordant", "extract", "strain", "extract again", "strain again", "dye", "rinse", "dry")
INGREDIENTS = ("wash", "alum", "tartar", "madder", "salt")

vessels = st.sampled_from(VESSELS)
lots = st.sampled_from(LOTS)
steps = st.sampled_from(STEPS)
ingredients = st.sampled_from(INGREDIENTS)
litres = st.floats(0.1, 9, allow_nan=False)
grams = st.floats(0.5, 200, allow_nan=False)
maybe_litres = st.none() | litres

commands: st.SearchStrategy[Any] = st.one_of(
    st.builds(e.Begun, steps, early=st.sampled_from(("", "because"))),
    st.builds(e.Weighed, ingredients, grams, st.just(1.0)),
    st.builds(e.Filled, vessels, litres),
    st.builds(e.Added, ingredients, vessels, grams),
    st.builds(e.Lit, vessels, st.booleans()),
    st.builds(e.Reached, vessels, st.none() | st.floats(20, 100)),
    st.builds(e.Read, vessels, temperature_c=st.floats(5, 100), volume_l=maybe_litres),
    st.builds(e.Paused, steps),
    st.builds(e.Resumed, steps),
    st.builds(e.Extended, steps, st.floats(-60, 60)),
    st.builds(e.Strained, vessels, vessels, maybe_litres),
    st.builds(e.Refreshed, vessels, litres),
    st.builds(e.Pooled, vessels, vessels, maybe_litres),
    st.builds(e.ToppedUp, vessels, maybe_litres, maybe_litres),
    st.builds(e.Entered, lots, vessels),
    st.builds(e.Lifted, lots, vessels, st.none() | st.floats(10, 900)),
    st.builds(e.Dipped, st.sampled_from(("snippet 1", "snippet 2")), vessels),
    st.builds(e.OnShade, steps, why=st.sampled_from(("", "dark enough"))),
    st.builds(e.Finished, steps),
    st.builds(e.Skipped, steps, st.just("left out")),
    st.builds(e.Kept, vessels, st.just("put by")),
    st.builds(e.Discarded, vessels),
    st.builds(e.Replanned, st.just("refresh"), steps, st.just("more colour")),
    st.builds(e.Noted, st.text(max_size=20)),
    st.builds(e.Stopped, st.just("called away")),
    st.builds(e.Aborted, st.just("boiled over")),
    st.builds(e.Cleared),
)
move = st.one_of(st.just("space"), st.just("space"), st.floats(0, 300), commands)
# Begun anywhere in the day: so many times space, then whatever a hand may press.
moves = st.builds(
    lambda spaces, rest: ["space"] * spaces + rest, st.integers(0, 110), st.lists(move, max_size=25)
)


def play(day: Day, history: list[Any]) -> list[tuple[Any, str]]:
    """Play moves; a refused one is kept with its sentence, and nothing else of it."""
    refused = []
    for move in history:
        if move == "space":
            day.space()
        elif isinstance(move, float):
            day.pass_minutes(move)
        else:
            before = day.state
            try:
                day.do(move)
            except Refused as sentence:
                assert day.state is before
                refused.append((move, str(sentence)))
    return refused
