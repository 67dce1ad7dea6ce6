"""What the program says about itself, and first aid that defers."""

import pytest

from dyesession.care import DISCLAIMER_LONG, DISCLAIMER_SHORT, FIRST_AID_KEYS, first_aid_line
from dyesession.substances import FIRST_AID


@pytest.mark.parametrize("text", [DISCLAIMER_SHORT, DISCLAIMER_LONG])
def test_the_disclaimer_puts_label_sheet_rules_and_licence_first(text):
    lowered = text.lower()
    assert "label" in lowered
    assert "safety data sheet" in lowered
    assert "local" in lowered
    assert "licensed" in lowered
    assert "outrank" in lowered


def test_the_short_disclaimer_fits_three_lines_of_eighty():
    assert len(DISCLAIMER_SHORT) <= 240


def test_the_long_disclaimer_names_what_is_left_out():
    for gap in ("pregnancy", "lead", "arsenic", "vapours", "workplaces"):
        assert gap in DISCLAIMER_LONG


def test_every_first_aid_key_a_substance_may_carry_has_its_line():
    assert set(FIRST_AID) | {"scald"} == set(FIRST_AID_KEYS)


@pytest.mark.parametrize("key", FIRST_AID)
def test_the_dyers_own_poison_centre_is_printed_in_the_line(key):
    assert "0123 456" in first_aid_line(key, "0123 456")
    assert "emergency number" in first_aid_line(key)
    assert "{" not in first_aid_line(key) + first_aid_line(key, "0123 456")


@pytest.mark.parametrize("key", FIRST_AID)
def test_every_line_defers_to_the_safety_data_sheet_and_forces_no_vomiting(key):
    line = first_aid_line(key)
    assert "safety data sheet" in line
    assert "!" not in line
    assert "make them vomit" not in line


def test_a_number_with_braces_or_line_breaks_in_it_cannot_break_the_line():
    line = first_aid_line("iron", " {0}\n12 ")
    assert "({0} 12)" in line


def test_an_unknown_key_is_an_error_of_the_caller():
    with pytest.raises(KeyError):
        first_aid_line("hiccups")
