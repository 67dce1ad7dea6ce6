"""A change of the plan as a log may hold it, whole or mangled: it is carried out, or flagged, and breaks
nothing.
"""

from typing import Any

import pytest
from days import Day
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.session import events as e
from dyesession.session.engine import Refused
from dyesession.session.fit import misfit
from dyesession.session.fold import Entry, apply
from dyesession.session.words import happened_words

STEP = {"name": "sadden", "stage": "modify", "lane": "fibre", "vessel": "iron pot", "of": "sadden"}


def by_hand(day: Day, *changes: dict[str, Any], change: str = "step", **more: Any) -> e.Replanned:
    return e.Replanned(change, why="by hand", changes=changes, **more)


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        (({**STEP, "after": ["nowhere"]},), 'is to come after "nowhere"'),
        (({**STEP, "name": "dye"},), 'a step "dye" already'),
        (({**STEP, "enter": ["nobody"]},), 'is to take in "nobody"'),
        (({**STEP, "after": ["rinse"]}, {"step": "rinse", "after": ["sadden"]}), "wait for each other"),
        (({"ingredient": "x", "substance": "tin", "role": "mordant"}, STEP), "is refused"),
        (({"ingredient": "x", "substance": "iron", "role": "spice"}, STEP), "is no role"),
        (
            ({"ingredient": "alum", "substance": "alum", "role": "mordant"}, STEP),
            'an ingredient "alum" already',
        ),
        (({**STEP, "stage": "fry"},), "cannot be read"),
        (({"step": "mordant"},), "names what is done"),
    ],
)
def test_a_stage_that_does_not_fit_is_said_in_one_sentence(changes: Any, says: str) -> None:
    day = Day()
    sentence = misfit(day.state, by_hand(day, *changes))
    assert sentence is not None and says in sentence and not sentence.endswith(".")


@pytest.mark.parametrize(
    "event",
    [
        e.Replanned("turn", why="x"),
        e.Replanned("refresh", "nowhere", "x"),
        e.Replanned("lot joins", why="x", lot="", mass_g=5.0),
        e.Replanned("lot joins", why="x", lot="fibre", mass_g=5.0),
        e.Replanned("lot joins", why="x", lot="late"),
        e.Replanned("lot weight", why="x", lot="large skein", mass_g=0.0),
        e.Replanned("dose", why="x", ingredient="alum"),
        e.Replanned("step", why="x"),
        e.Replanned("draw", "dye", "x"),
        e.Replanned("draw", "nowhere", "x", changes=({"step": "nowhere", "label": "madder 3"},)),
        e.Replanned("draw", "dye", "x", changes=({"step": "rinse", "label": "madder 3"},)),
        e.Replanned("draw", "dye", "x", changes=({"step": "dye", "label": " "},)),
        e.Replanned("draw", "dye", "x", changes=({"step": "dye", "label": "madder 3", "draw_l": 0.0},)),
        e.Replanned("recipe left"),
    ],
)
def test_a_change_short_of_something_is_refused_and_nothing_has_changed(event: e.Replanned) -> None:
    day = Day()
    before = day.state
    with pytest.raises(Refused):
        day.do(event)
    assert day.state is before and not day.entries


def test_a_stage_called_as_another_gets_a_name_of_its_own() -> None:
    day = Day()
    day.do(by_hand(day, {**STEP, "name": "dye", "of": "dye"}))
    event = day.entries[-1].event
    assert isinstance(event, e.Replanned) and event.step == "dye 2"
    assert day.state.step("dye 2") is not None


values: st.SearchStrategy[Any] = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-3, 3)
    | st.floats(allow_nan=True)
    | st.sampled_from(("dye", "alum", "", "fibre")),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(("kind", "temperature_c", "ingredient", "mass_g")), inner, max_size=3
        )
    ),
    max_leaves=6,
)
KEYS = (
    "step", "ingredient", "mass_g", "was_g", "water_l", "was_l", "fibre_g", "enter", "after", "substance",
    "role", "done_g", "wanted_g", "name", "stage", "lane", "vessel", "of", "add", "heat", "behind", "judge",
    "label", "kept_by", "draw_l", "substances", "odd",
)  # fmt: skip
keys = st.sampled_from(KEYS)
tables = st.dictionaries(keys, values, max_size=6) | st.dictionaries(keys, values, max_size=3).map(
    lambda odd: {**STEP, **odd}
)
hostile = st.builds(
    e.Replanned,
    st.sampled_from(("refresh", "lot joins", "lot weight", "dose", "step", "draw", "recipe left", "odd")),
    st.sampled_from(("", "dye", "strain")),
    st.sampled_from(("", "because")),
    value=st.none() | st.floats(allow_nan=True),
    lot=st.sampled_from(("", "late", "large skein")),
    mass_g=st.none() | st.floats(allow_nan=True),
    ingredient=st.sampled_from(("", "alum", "odd")),
    changes=st.lists(tables, max_size=3).map(tuple),
)


@given(hostile, st.integers(0, 60))
@settings(max_examples=300, deadline=None)
def test_whatever_a_log_holds_as_a_change_the_day_goes_on(event: e.Replanned, spaces: int) -> None:
    day = Day()
    for _ in range(spaces):
        day.space()
    entry = Entry(day.state.n + 1, day.clock.now(), event)
    day.entries = (*day.entries, entry)
    day.state = apply(day.state, entry)
    assert happened_words(day.state, event)
    day.home(most=1500)
