"""Weights as they are typed at the Stove: what goes into a pot, and fibre weighed wet as it comes out of one."""

import pytest
from days import Day

from dyesession.session import events as e
from dyesession.session.typed import Hand, NotUnderstood, understand


def weighed(day: Day, text: str, hand: Hand | None = None, meaning: str = "weight"):
    return understand(meaning, text, day.state, hand or Hand())


@pytest.fixture
def scouring() -> Day:
    day = Day()
    while not day.state.lots_in("wash pot"):
        day.space()
    return day


@pytest.mark.parametrize("text", ["large skein 420 g", "420 g large skein", "420 g large skein wet", "Large Skein 420"])
def test_fibre_in_a_pot_that_is_weighed_is_lifted_with_that_weight(scouring, text):
    found = weighed(scouring, text)
    assert found.event == e.Lifted("large skein", "wash pot", 420.0) and found.echo == "large skein lifted, 420 g wet"


def test_fibre_that_lies_out_wet_is_read_on_the_scales(scouring):
    scouring.do(e.Lifted("large skein", "wash pot"))
    found = weighed(scouring, "large skein 420 g")
    assert found.event == e.Read(lot="large skein", mass_g=420.0, how="weighed") and found.echo.endswith("420 g wet")
    assert weighed(scouring, "420", Hand(lot="large skein"), "wet weight").event == found.event


def test_an_ingredient_is_weighed_as_ever_and_a_kind_names_a_lot_only_where_it_is_the_only_one(scouring):
    assert weighed(scouring, "29 g alum").event == e.Weighed("alum", 29.0)
    assert weighed(scouring, "29", Hand(ingredient="alum")).event == e.Weighed("alum", 29.0)
    with pytest.raises(NotUnderstood, match="620 g wool"):
        weighed(scouring, "420 g")
    with pytest.raises(NotUnderstood, match="Which ingredient"):
        weighed(scouring, "420 g wool")  # two skeins are of wool
    with pytest.raises(NotUnderstood, match="Which fibre"):
        weighed(scouring, "420 g", Hand(), "wet weight")
