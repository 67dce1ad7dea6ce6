"""Random histories of a dye day: whatever a hand at the stove may press, in any order, at any time."""

from typing import Any

from days import Day
from hypothesis import strategies as st

from dyesession.plan.changes import Draws, NewIngredient, NewStep, change_for_log
from dyesession.plan.model import PlannedAddition, PlannedStep
from dyesession.recipe.model import Heat
from dyesession.session import events as e
from dyesession.session.engine import Refused

VESSELS = ("wash pot", "mordant pot", "extract pot", "dye pot", "rinse bowl", "bucket")
LOTS = ("large skein", "small skein", "found skein", "snippet 1", "nobody")
STEPS = ("scour", "mordant", "extract", "strain", "extract again", "strain again", "dye", "rinse", "dry")
INGREDIENTS = ("wash", "alum", "tartar", "madder", "salt", "iron")

vessels = st.sampled_from(VESSELS)
lots = st.sampled_from(LOTS)
steps = st.sampled_from(STEPS)
ingredients = st.sampled_from(INGREDIENTS)
litres = st.floats(0.1, 9, allow_nan=False)
grams = st.floats(0.5, 200, allow_nan=False)
maybe_litres = st.none() | litres


def a_stage(
    name: str, stage: str, vessel: str, enter: bool, into: str, add: tuple[Any, ...], hold: float
) -> Any:
    """A stage as it is named at the stove: what, where, with what, and whether it is strained."""
    heat = (Heat("to", 80.0, 30.0), Heat("hold", minutes=hold)) if hold else ()
    strained = into if stage == "extract" and into != vessel else None
    fibre = ("fibre",) if enter and stage != "extract" else ()
    step = PlannedStep(
        name,
        stage,  # type: ignore[arg-type]
        "fibre",
        None if stage == "dry" else vessel,
        name,
        add=tuple(PlannedAddition(one, grams) for one, grams in add if stage != "dry"),
        enter=fibre,
        into=strained,
        heat=heat,
    )
    return e.Replanned("step", name, "as it comes", changes=(change_for_log(NewStep(step)),))


def a_draw(step: str, label: str, volume_l: float | None) -> e.Replanned:
    """A kept bath chosen for a step."""
    return e.Replanned("draw", step, "from the shelf", changes=(change_for_log(Draws(step, label, "", volume_l)),))


IRON = (change_for_log(NewIngredient("iron", "ferrous sulphate", "modifier")),)
SADDEN = PlannedStep(
    "sadden", "modify", "fibre", "bucket", "sadden", add=(PlannedAddition("iron", 3.0),), enter=("fibre",)
)

changes: st.SearchStrategy[Any] = st.one_of(
    st.builds(e.Replanned, st.just("refresh"), steps, st.just("more colour")),
    st.builds(
        e.Replanned,
        st.just("lot joins"),
        why=st.sampled_from(("found it", "")),
        lot=st.sampled_from(("found skein", "late skein", "small skein")),
        fibre=st.sampled_from(("wool", "silk", "cotton")),
        mass_g=st.floats(0.0, 200.0),
        mordanted=st.sampled_from(("", "bought mordanted")),
    ),
    st.builds(
        e.Replanned, st.just("lot weight"), why=st.just("misread"), lot=lots, mass_g=st.floats(0.0, 300.0)
    ),
    st.builds(e.Replanned, st.just("dose"), why=st.just("paler"), ingredient=ingredients, mass_g=grams),
    st.builds(a_draw, steps, st.sampled_from(("put by", "madder bath 3")), maybe_litres),
    st.builds(e.Replanned, st.just("recipe left"), why=st.just("by eye from here")),
    st.builds(
        a_stage,
        st.sampled_from(("one more", "dye", "sadden")),
        st.sampled_from(
            ("scour", "wet", "mordant", "soak", "extract", "dye", "modify", "rinse", "rest", "dry")
        ),
        vessels,
        st.booleans(),
        vessels,
        st.lists(st.tuples(st.sampled_from(("alum", "madder")), st.floats(1.0, 50.0)), max_size=2).map(tuple),
        st.sampled_from((0.0, 20.0)),
    ),
    st.just(e.Replanned("step", "sadden", "to sadden it", changes=(*IRON, change_for_log(NewStep(SADDEN))))),
)

commands: st.SearchStrategy[Any] = st.one_of(
    changes,
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
    st.builds(e.Drawn, vessels, st.sampled_from(("put by", "madder bath 3")), volume_l=maybe_litres),
    st.builds(e.Noted, st.text(max_size=20)),
    st.builds(e.Stopped, st.just("called away")),
    st.builds(e.Aborted, st.just("boiled over")),
    st.builds(e.Cleared),
)
move = st.one_of(st.just("space"), st.just("space"), st.floats(0, 300), commands)
changing = st.one_of(st.just("space"), changes, st.floats(0, 120), move)
# Begun anywhere in the day: so many times space, then whatever a hand may press.
moves = st.builds(
    lambda spaces, rest: ["space"] * spaces + rest,
    st.integers(0, 110),
    st.lists(move, max_size=25) | st.lists(changing, max_size=12),
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
