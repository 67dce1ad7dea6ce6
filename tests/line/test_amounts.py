"""Amounts as they are typed at the prompt: bare figures, units, ranges, and how long ago."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.errors import UserError
from dyesession.line import amounts
from dyesession.line.trouble import LineError


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (amounts.temperature, "82", 82.0),
        (amounts.temperature, "180 F", 82.22),
        (amounts.temperature, "simmering", 90.0),
        (amounts.mass, "29", 29.0),
        (amounts.mass, "2,5", 2.5),
        (amounts.mass, "1 1/2 oz", 42.5242846875),
        (amounts.volume, "1.8", 1.8),
        (amounts.volume, "500 ml", 0.5),
        (amounts.minutes, "10", 10.0),
        (amounts.minutes, "1 h 15", 75.0),
        (amounts.share, "31 %", 0.31),
        (amounts.share, "0.31", 0.31),
    ],
)
def test_a_bare_figure_takes_the_unit_of_the_act(read: object, text: str, value: float) -> None:
    assert read(text).value == pytest.approx(value)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("read", "text", "echo"),
    [
        (amounts.mass, "29", "29 g."),
        (amounts.mass, "29 g", ""),
        (amounts.mass, "2.5 oz", "2.5 oz is 70.9 g."),
        (amounts.temperature, "158 F", "158 F is 70 °C."),
        (amounts.volume, "1.8 L", ""),
    ],
)
def test_what_was_understood_is_said_back_unless_it_is_plain(read: object, text: str, echo: str) -> None:
    assert read(text).echo == echo  # type: ignore[operator]


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (amounts.mass, "3 to 4 oz"),
        (amounts.mass, "a handful"),
        (amounts.mass, "1.8 l"),
        (amounts.volume, "1 pint"),
        (amounts.temperature, "158"),
        (amounts.minutes, "overnight"),
        (amounts.minutes, "1:15"),
        (amounts.plain, "four"),
    ],
)
def test_an_amount_that_may_mean_two_things_or_none_is_asked_about(read: object, text: str) -> None:
    with pytest.raises(UserError, match="for example"):
        read(text)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("text", "sort"),
    [
        ("82 C", "temperature"),
        ("82 °C", "temperature"),
        ("29 g", "mass"),
        ("2 lb 3 oz", "mass"),
        ("1.8 l", "volume"),
        ("10 min", "time"),
        ("31 %", "share"),
    ],
)
def test_the_unit_says_what_sort_of_amount_it_is(text: str, sort: str) -> None:
    found = amounts.any_sort(text)
    assert found is not None and found.sort == sort


def test_a_bare_figure_has_no_sort_of_its_own() -> None:
    assert amounts.any_sort("82") is None


@pytest.mark.parametrize(
    ("text", "before", "minutes"),
    [
        ("B 82, 10 min ago", "B 82", 10),
        ("B 82 10 min ago", "B 82", 10),
        ("82, 1 h 5 min ago", "82", 65),
        ("C into D 1.8 l, 2 min ago", "C into D 1.8 l", 2),
    ],
)
def test_an_act_may_have_happened_a_while_ago(text: str, before: str, minutes: float) -> None:
    assert amounts.split_ago(text) == (before, timedelta(minutes=minutes))


def test_without_ago_nothing_is_split_off() -> None:
    assert amounts.split_ago("B 82") == ("B 82", None)


@pytest.mark.parametrize("text", ["B 82, 3 days ago", "B 82, 5 ago", "B 82, 5 bananas ago"])
def test_how_long_ago_needs_a_time_within_a_day(text: str) -> None:
    with pytest.raises(LineError, match="how long ago"):
        amounts.split_ago(text)


@given(st.text(max_size=30))
def test_any_text_is_an_amount_or_a_sentence_to_the_dyer(text: str) -> None:
    for read in (
        amounts.temperature,
        amounts.mass,
        amounts.volume,
        amounts.minutes,
        amounts.share,
        amounts.any_sort,
    ):
        try:
            read(text)
        except UserError as sentence:
            assert str(sentence)
