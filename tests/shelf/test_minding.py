"""What is said before a kept bath is drawn: metals, old mordant, its date; and what is never poured together."""

from dataclasses import replace
from datetime import date, datetime

import pytest

from dyesession.account import Band90
from dyesession.care import Situation
from dyesession.shelf import KeptBath, drawing
from dyesession.shelf.minding import MustNotMix, comes_along
from dyesession.shelf.model import Inside

BATH = KeptBath(
    "2026-03-01-madder-k7q2", "madder bath", "madder", datetime(2026, 3, 5, 18), 9, Band90(4.0, 3.8, 4.2),
    (Inside("madder", "madder root", "dyestuff", Band90(30.0, 20.0, 40.0), 120.0),
     Inside("alum", "potassium alum", "mordant", Band90(6.0, 4.0, 8.0))),
    1, True, ("240 g wool",), None, None, date(2026, 3, 14), "our own choice, no source", False, "modelled", (),
    left_l=4.0, began_on=date(2026, 3, 1),
)  # fmt: skip
IRON = Inside("iron", "ferrous sulphate", "modifier", Band90(2.0, 1.0, 3.0))
COPPER = Inside("copper", "copper sulphate", "mordant", Band90(2.0, 1.0, 3.0))


def texts(bath: KeptBath, *there: str) -> str:
    return " ".join(one.text for one in comes_along(bath, "D", there))


def test_iron_and_copper_that_come_along_are_said_and_the_pot_marked() -> None:
    both = replace(BATH, inside=(*BATH.inside, IRON, COPPER))
    assert "iron in it: all that goes into D saddens" in texts(both) and "copper in it" in texts(both)
    assert "copper" not in texts(both, "copper sulphate") and "iron in it" in texts(both, "copper sulphate")
    assert "iron" not in texts(BATH)


def test_mordant_from_the_time_before_is_said_with_its_band_and_since_when() -> None:
    assert "brings 6 ± 2 g alum of 2026-03-01: count it in" in texts(BATH)
    assert "brings" not in texts(replace(BATH, inside=(COPPER,))), "a metal is said as a metal"


def test_a_bath_past_its_date_is_looked_at_outdoors_and_one_in_time_is_not() -> None:
    in_time = " ".join(one.text for one in drawing(replace(BATH, age_days=13), "D"))
    assert "lid off away" in in_time and "past its date" not in in_time
    late = drawing(replace(BATH, age_days=20), "D")
    assert "7 days past its date" in late[0].text and late[0].severity == 3


def test_what_must_never_be_poured_together_is_refused_with_what_would_happen() -> None:
    sour = replace(BATH, inside=(Inside("vinegar", "vinegar", "assist", Band90(50.0, 40.0, 60.0)),))
    pot = Situation(
        step="dye", actions=("opens", "pours"), vessel="dye pot", letter="D", contents=(("chlorine bleach", 20.0),),
        pouring=sour.contents, pouring_from=sour.label,
    )  # fmt: skip
    with pytest.raises(MustNotMix, match="must not be poured together"):
        drawing(sour, "D", pot)
