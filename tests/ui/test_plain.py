"""What may be drawn: nothing a terminal obeys or hides gets through, and nothing is taken for markup."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from textual.content import Content

from dyesession.ui.plain import plain

OBEYED_OR_HIDDEN = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}


@pytest.mark.parametrize(
    ("given_text", "shown"),
    [
        ("lot [/] of 120 g", "lot [/] of 120 g"),
        ("[@click=app.quit]go[/]", "[@click=app.quit]go[/]"),
        ("\x1b]52;c;aGk=\x07", "␛]52;c;aGk=␇"),
        ("two\nlines\tand a tab", "two␊lines␉and a tab"),
        ("a\x7fb\x9bc", "a␡b‹009B›c"),
        ("pot\u202eB", "pot‹202E›B"),
        ("mad\u200bder\ufeff", "mad‹200B›der‹FEFF›"),
        ("soft\u00adhyphen", "soft‹00AD›hyphen"),
        ("\ud800", "‹D800›"),
        ("\u3164\u2800", "‹3164›‹2800›"),
        ("x\ufe0f", "x‹FE0F›"),
        ("85\u202f°C\u2003now", "85\u00a0°C now"),
        ("cafe\u0301", "café"),
        ("\u0301e", "‹0301›e"),
        ("85 °C ± 2 – “brick” ☕", "85 °C ± 2 – “brick” ☕"),
    ],
)
def test_a_text_is_shown_as_it_was_written_or_with_marks(given_text, shown):
    assert plain(given_text) == shown


def test_no_letter_carries_a_heap_of_marks():
    assert plain("e" + "\u0323" * 9).count("‹0323›") >= 6


@given(st.text())
def test_nothing_a_terminal_obeys_or_hides_gets_through(text):
    assert not [char for char in plain(text) if unicodedata.category(char) in OBEYED_OR_HIDDEN]


@given(st.text())
def test_doing_it_twice_changes_nothing(text):
    assert plain(plain(text)) == plain(text)


@given(st.text(alphabet=st.characters(min_codepoint=32, max_codepoint=126)))
def test_an_ordinary_text_is_left_alone(text):
    assert plain(text) == text
    assert Content(plain(text)).plain == text
