"""Whole documents for people: laid out as one would write them by hand, and the same when read back."""

import tomllib
from datetime import datetime, timedelta, timezone
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.tomlfile import Unwritable, write_document
from dyesession.tomlfile.flat import same

WHEN = datetime(2026, 3, 14, 9, 5, 40, 120_999, tzinfo=timezone(timedelta(hours=1)))

TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
PLAIN = st.one_of(
    TEXT,
    st.integers(-(2**63), 2**63 - 1),
    st.floats(allow_nan=False, allow_infinity=False),
    st.booleans(),
    st.just(WHEN.replace(microsecond=120_000)),
)
DOCUMENTS = st.dictionaries(
    TEXT,
    st.recursive(
        PLAIN,
        lambda inner: st.lists(inner, max_size=3) | st.dictionaries(TEXT, inner, max_size=3),
        max_leaves=8,
    ),
    max_size=5,
)


@given(values=DOCUMENTS)
def test_any_document_comes_back_the_same(values: dict[str, Any]) -> None:
    text = write_document(values)
    assert same(tomllib.loads(text), values)
    assert not [one for one in text if "\x80" <= one <= "\x9f" or "\u2028" <= one <= "\u202e"]


def test_a_document_is_laid_out_as_by_hand() -> None:
    document = {
        "format": 1,
        "opened": WHEN,
        "ingredient": [{"name": "alum", "dose": "12 %", "role": "mordant"}, {"name": "tartar"}],
        "step": [
            {
                "name": "mordant",
                "add": ("alum", "tartar"),
                "heat": [{"to": "85 degC", "over": "45 min"}, {"hold": "60 min"}],
                "judge": {"least": "30 min"},
            }
        ],
        "kitchen": {"pot": [{"name": "dye pot", "volume_l": 9.0, "lid": True}], "tap": {}},
        "note \u202e": "\x9b",
    }
    assert write_document(document) == (
        "format = 1\n"
        "opened = 2026-03-14T09:05:40.120+01:00\n"
        '"note \\u202e" = "\\u009b"\n'
        '\n[[ingredient]]\nname = "alum"\ndose = "12 %"\nrole = "mordant"\n'
        '\n[[ingredient]]\nname = "tartar"\n'
        '\n[[step]]\nname = "mordant"\nadd = [\n    "alum",\n    "tartar",\n]\nheat = [\n'
        '    { to = "85 degC", over = "45 min" },\n    { hold = "60 min" },\n]\n'
        '\n[step.judge]\nleast = "30 min"\n'
        '\n[[kitchen.pot]]\nname = "dye pot"\nvolume_l = 9.0\nlid = true\n'
        "\n[kitchen.tap]\n"
    )


@pytest.mark.parametrize("value", [None, float("nan"), 2**63, "\ud800", {"\ud800": 1}, datetime(2026, 3, 14)])
def test_what_toml_cannot_hold_is_refused(value: object) -> None:
    with pytest.raises(Unwritable):
        write_document({"key": value})


def test_a_document_that_would_read_back_otherwise_never_goes_out(monkeypatch: pytest.MonkeyPatch) -> None:
    import tomli_w

    monkeypatch.setattr(tomli_w, "dumps", lambda values: "format = 2\n")
    with pytest.raises(Unwritable, match="read back"):
        write_document({"format": 1})
