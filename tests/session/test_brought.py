"""What a bath of another day brings along: written with the pouring, read again, and hostile tables passed over."""

import math
from dataclasses import replace
from typing import Any

from days import Day
from hypothesis import given
from hypothesis import strategies as st

from dyesession.session import events as e
from dyesession.session.brought import Brought, brought_in, for_log, ingredient_of
from dyesession.session.events import event_fields, event_from_fields
from dyesession.session.from_shelf import FromShelf, ShelfBath, drawn_down, with_brought

MADDER = Brought("madder", "madder root", "dyestuff", 20.0, 8.0, 35.0)
ALUM = Brought("alum", "potassium alum", "mordant", 9.0, 6.0, 12.0)
BATH = ShelfBath("old red", "2026-03-01-first-k7q2", 5.0, ("madder root",))

grams = st.lists(st.floats(0.001, 500.0), min_size=3, max_size=3).map(sorted)
things = st.builds(
    lambda name, role, g: Brought(name, f"{name} root", role, g[1], g[0], g[2]),
    st.text("abc", min_size=1, max_size=4), st.sampled_from(["dyestuff", "mordant", "assist"]), grams,
)
anything = st.recursive(
    st.none() | st.booleans() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(
        st.sampled_from(["ingredient", "substance", "role", "mean_g", "low_g", "high_g"]), inner, max_size=6
    ),
    max_leaves=12,
)


@given(st.lists(things, max_size=4))
def test_what_is_written_is_read_again_to_a_tenth_of_a_milligram(told: list[Brought]) -> None:
    event = e.Drawn("dye pot", "old red", BATH.session, 2.0, brought=for_log(told), brought_l=2.0)
    back = event_from_fields("drawn", event_fields(event))
    assert isinstance(back, e.Drawn)
    found = brought_in(back.brought)
    assert [(one.ingredient, one.substance, one.role) for one in found] == [
        (one.ingredient, one.substance, one.role) for one in told
    ]
    for one, was in zip(found, told, strict=True):
        assert max(abs(one.mean_g - was.mean_g), abs(one.low_g - was.low_g), abs(one.high_g - was.high_g)) <= 5e-5


@given(st.lists(anything, max_size=4))
def test_a_table_that_makes_no_band_is_passed_over(tables: list[Any]) -> None:
    for one in brought_in(tables):
        assert 0.0 <= one.low_g <= one.mean_g <= one.high_g and 0.0 < one.high_g < math.inf
        assert one.ingredient and one.substance and one.role


def test_a_band_that_falls_or_is_not_a_number_is_no_band() -> None:
    [good] = for_log([MADDER])
    for wrong in ({"low_g": 30.0}, {"mean_g": math.nan}, {"high_g": math.inf}, {"low_g": -1.0}, {"mean_g": True}):
        assert brought_in([{**good, **wrong}]) == ()
    assert brought_in([good]) == (MADDER,)


def test_colour_of_another_day_goes_by_a_name_of_its_own() -> None:
    assert MADDER.lot == "madder from the shelf" and ALUM.lot == "alum"
    assert ingredient_of(MADDER.lot) == "madder" and ingredient_of("madder") == "madder"


def test_a_pouring_is_told_what_comes_along_by_how_much_is_poured() -> None:
    asked: list[float | None] = []

    def bringing(bath: ShelfBath, volume_l: float | None) -> tuple[Brought, ...]:
        asked.append(volume_l)
        return (MADDER.share((volume_l or 5.0) / 5.0),)

    shelf = FromShelf((BATH,), bringing=bringing)
    some = with_brought(shelf, e.Drawn("dye pot", BATH.label, BATH.session, 2.0))
    assert isinstance(some, e.Drawn) and brought_in(some.brought) == (MADDER.share(0.4),) and some.brought_l == 2.0
    rest = with_brought(drawn_down(shelf, some), e.Drawn("dye pot", BATH.label, BATH.session))
    assert isinstance(rest, e.Drawn) and rest.brought_l == 3.0 and asked == [2.0, 3.0]
    told = replace(some, brought=for_log([ALUM]))
    assert with_brought(shelf, told) is told
    other = e.Drawn("dye pot", "somebody else's", "2026-01-01-other-aaaa", 1.0)
    assert with_brought(shelf, other) is other
    assert with_brought(shelf, e.Filled("dye pot", 2.0)) == e.Filled("dye pot", 2.0) and len(asked) == 2


def test_a_day_writes_what_comes_along_only_where_it_is_told() -> None:
    day = Day()
    day.do(e.Drawn("dye pot", BATH.label, BATH.session, 2.0, ("madder root",)))
    assert "brought" not in event_fields(day.entries[-1].event)
