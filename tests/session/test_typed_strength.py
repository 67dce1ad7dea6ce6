"""A strength typed as it was taken, four ways, is read back as a share of the other liquor with its error."""

from dataclasses import replace

import pytest
from days import madder_plan

from dyesession.dyeing.limits import OutOfRange
from dyesession.session.fold import opening_state
from dyesession.session.state import Dyestuff
from dyesession.session.typed import Hand, understand
from dyesession.session.typed_strength import held_against, read_of, said_back, taken


@pytest.mark.parametrize(
    ("text", "share", "method", "against"),
    [
        ("1:2 of the first strain", 1 / 3, "dilution match", "the first strain"),
        ("1 spoon and 2 spoons of water of the first strain", 1 / 3, "dilution match", "the first strain"),
        ("2 : 1 water", 2 / 3, "dilution match", ""),
        ("30/25 mm of the first strain", 25 / 30, "equal columns", "the first strain"),
        ("30 and 25 mm against C", 25 / 30, "equal columns", "C"),
        ("1:2 of the first strain", 1 / 3, "dilution match", "the first strain"),
        ("30/30 mm, thinned 2 times of the first strain", 2.0, "equal columns", "the first strain"),
        ("#808080 #808080 #f0f0f0 of the first strain", 1.0, "white dish", "the first strain"),
        ("glass #808080 #808080 #f0f0f0 of C", 1.0, "liquor colour", "C"),
    ],
)
def test_each_way_of_taking_it(text, share, method, against):
    found = taken(text)
    assert found is not None
    strength, beside = found
    assert strength.share == pytest.approx(share) and strength.method == method and beside == against
    read = read_of("dye pot", strength, beside)
    assert (
        read.strength == pytest.approx(share, abs=1e-3) and read.method == method and read.against == against
    )
    assert read.error_share == pytest.approx(strength.sd, abs=1e-3) and read.error_share > 0
    assert read.how == ("matched" if method in ("dilution match", "equal columns") else "read")
    assert method in said_back(strength, beside)


def test_a_paler_liquor_in_the_dishes_is_the_weaker():
    strength, _ = taken("#c0a090 #a06040 #f4f0ec of the first strain")
    assert 0.1 < strength.share < 0.9


@pytest.mark.parametrize("text", ["31 %", "0.31 of the first strain", "1/3 of the first strain", "dark", ""])
def test_what_is_none_of_the_four_is_left_to_the_plain_reading(text):
    assert taken(text) is None


def test_two_liquors_too_dark_to_read_are_refused_in_a_sentence():
    with pytest.raises(OutOfRange, match="too dark"):
        taken("#050202 #040101 #f0f0f0 of the first strain")


@pytest.mark.parametrize("word", [", cooled", " both cooled", ", samples cooled."])
@pytest.mark.parametrize(
    ("text", "method"), [("1:4 of the first strain", "dilution match, "), ("31 % of the first strain", "")]
)
def test_that_both_samples_had_cooled_is_written_down_with_the_way_it_was_taken(text, method, word):
    state = opening_state(madder_plan())
    plain, cooled = (
        understand("strength", one, state, Hand("extract pot")).event for one in (text, f"{text}{word}")
    )
    assert cooled.method == f"{method}samples cooled" and "cooled" not in plain.method
    assert replace(cooled, method="") == replace(plain, method="")


def test_dyestuff_in_the_pot_again_is_held_beside_its_first_strain_where_nothing_else_is_named():
    again = (Dyestuff("madder", "madder root", 120.0, "extract pot", 1),)
    state = replace(opening_state(madder_plan()), dyestuffs=again)
    assert held_against(state, "extract pot", "") == "first strain"
    assert held_against(state, "extract pot", "C") == "C"
    assert held_against(state, "dye pot", "") == ""
    fresh = replace(state, dyestuffs=(replace(again[0], pulls=0),))
    assert held_against(fresh, "extract pot", "") == ""
    understood = understand("strength", "1:4", state, Hand("extract pot"))
    assert understood.event.against == "first strain" and "20 % of first strain" in understood.echo
