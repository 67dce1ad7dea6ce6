"""The table of keys: no key does two things, none is a chord, and the words on the screen come from it."""

import inspect

import pytest

from dyesession.ui import messages
from dyesession.ui.fixtures import FIXTURES
from dyesession.ui.keys import BY_KEY, KEYS, key_table, key_words

POSTED_OTHERWISE = {
    "Act", "Typed", "Entered", "Chosen", "PotTouched", "RowMarked", "RowChosen",
    "AskOldBath", "AskSnippet",  # the keys of the account's own page
}  # fmt: skip


def test_no_key_does_two_things_and_no_act_has_two_keys():
    assert len({key.key for key in KEYS}) == len(KEYS)
    assert len({key.act for key in KEYS}) == len(KEYS)


def test_every_act_of_the_map_has_a_key_or_is_typed_or_touched():
    acts = {
        name
        for name, found in inspect.getmembers(messages, inspect.isclass)
        if issubclass(found, messages.Act)
    }
    assert {key.act.__name__ for key in KEYS} | POSTED_OTHERWISE == acts


def test_no_key_is_a_chord_and_none_a_digit():
    for key in KEYS:
        assert key.key in ("space", "escape") or (len(key.key) == 1 and not key.key.isdigit())
        assert key.key == key.key.lower()


def test_y_answers_nothing():
    assert "y" not in BY_KEY


def test_the_key_table_names_every_key():
    table = key_table().splitlines()
    assert len(table) == len(KEYS)
    assert all(
        line.startswith(key.key) and line.endswith(key.explained)
        for line, key in zip(table, KEYS, strict=True)
    )


def test_a_key_that_is_not_there_cannot_be_offered():
    with pytest.raises(KeyError):
        key_words(["y"])


@pytest.mark.parametrize("name", FIXTURES)
def test_every_key_on_a_fixture_is_in_the_table(name):
    assert all(key.key in BY_KEY for key in FIXTURES[name].keys)
