"""What an error looks like to the person who caused it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.errors import UserError
from dyesession.units import Ambiguous, Choice, NeedsWeight, UnitError, quoted, read_mass


def test_every_error_here_is_one_a_person_may_see() -> None:
    assert issubclass(UnitError, UserError)
    assert issubclass(NeedsWeight, UnitError) and issubclass(Ambiguous, UnitError)


def test_control_characters_are_shown_as_marks() -> None:
    assert quoted("5\x1b[31m\ng\x7f\u202e") == "“5␛[31m␊g␡�”"


def test_a_long_text_is_cut_short() -> None:
    assert quoted("g" * 500) == "“" + "g" * 39 + "…”"


@given(st.text())
def test_a_quoted_text_can_be_printed(text: str) -> None:
    assert quoted(text).isprintable() and len(quoted(text)) <= 42


def test_a_message_says_what_was_expected_with_an_example() -> None:
    with pytest.raises(UnitError) as error:
        read_mass("5 \x1bg")
    assert str(error.value) == ("“5 ␛g” has no unit; expected a weight with its unit, for example “240 g”.")


def test_a_question_is_one_sentence_that_names_every_choice() -> None:
    unclear = Ambiguous(
        "What does “gallon” mean?", (Choice("imperial", "3 imperial gallon"), Choice("US", "3 US gallon"))
    )
    assert str(unclear) == (
        "What does “gallon” mean: imperial or US; write it out, for example “3 imperial gallon”."
    )
