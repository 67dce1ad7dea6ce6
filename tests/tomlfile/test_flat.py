"""The flat writer and its quick reader: one block out, the same block back, for any TOML reader."""

import enum
import tomllib
from datetime import UTC, datetime, timedelta, timezone
from types import MappingProxyType
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.tomlfile import Unwritable, parsed_back, read_block, render_block
from dyesession.tomlfile.flat import same

WHEN = datetime(2026, 3, 14, 9, 5, 40, 120_000, tzinfo=timezone(timedelta(hours=1)))

TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
TIMES = st.datetimes(datetime(1, 1, 3), datetime(9999, 12, 29)).map(
    lambda one: one.replace(microsecond=one.microsecond // 1000 * 1000)
)
ZONES = st.integers(-23 * 60 - 59, 23 * 60 + 59).map(lambda minutes: timezone(timedelta(minutes=minutes)))
MOMENTS = st.builds(lambda time, zone: time.replace(tzinfo=zone), TIMES, ZONES)
PLAIN = st.one_of(
    TEXT,
    st.integers(-(2**63), 2**63 - 1),
    st.floats(allow_nan=False, allow_infinity=False),
    st.booleans(),
    MOMENTS,
)
VALUES = st.recursive(
    PLAIN,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(TEXT, inner, max_size=3),
    max_leaves=6,
)
BLOCKS = st.dictionaries(st.from_regex(r"[A-Za-z0-9_-]{1,12}", fullmatch=True) | TEXT, VALUES, max_size=6)


@given(values=BLOCKS)
def test_any_block_comes_back_the_same_from_the_standard_parser_and_from_ours(values: dict[str, Any]) -> None:
    text = render_block("event", values)
    assert same(tomllib.loads(text), {"event": [values]})
    assert same(read_block(text, "event"), values)


@given(values=BLOCKS)
def test_no_block_holds_a_character_that_does_something_on_a_screen(values: dict[str, Any]) -> None:
    text = render_block("event", values)
    unsafe = {*range(0x20), *range(0x7F, 0xA0), 0x061C, 0x200E, 0x200F, *range(0x2028, 0x202F), 0xFEFF}
    unsafe |= set(range(0x2066, 0x206A))
    assert not unsafe & {ord(one) for one in text if one != "\n"}
    assert text.split("\n").count("[[event]]") == 1


def test_a_block_is_plain_to_read() -> None:
    values = {
        "n": 1,
        "at": WHEN,
        "mass_g": 29.0,
        "tiny": 1e-9,
        "huge": 1e22,
        "wet": True,
        "text": 'a "b" \\ c\n\t\x9b\u202e',
        "odd key": [],
        "baths": [{"vessel": "dye pot", "dye": [{"lot": "madder", "mass_g": 71.2}]}],
    }
    assert render_block("event", values) == (
        "[[event]]\n"
        "n = 1\n"
        "at = 2026-03-14T09:05:40.120+01:00\n"
        "mass_g = 29.0\n"
        "tiny = 1.0e-09\n"
        "huge = 1.0e+22\n"
        "wet = true\n"
        'text = "a \\"b\\" \\\\ c\\n\\t\\u009b\\u202e"\n'
        '"odd key" = []\n'
        'baths = [{vessel = "dye pot", dye = [{lot = "madder", mass_g = 71.2}]}]\n'
    )


def test_a_long_list_has_one_item_to_a_line() -> None:
    text = render_block("event", {"reminders": ["Open a window and keep it open.", "Gloves on."] * 3})
    assert text.count('\n  "') == 6
    assert max(map(len, text.split("\n"))) < 60


def test_what_is_nearly_plain_is_written_as_what_it_is() -> None:
    class Role(enum.StrEnum):
        MORDANT = "mordant"

    class Count(enum.IntEnum):
        TWO = 2

    class Grams(float):
        pass

    values = {"role": Role.MORDANT, "count": Count.TWO, "mass_g": Grams(2.5), "add": ("a", "b"), "at": WHEN}
    back = read_block(render_block("event", MappingProxyType(values)), "event")
    assert same(back, {"role": "mordant", "count": 2, "mass_g": 2.5, "add": ["a", "b"], "at": WHEN})


def test_times_are_cut_to_milliseconds_and_whole_minutes_of_offset() -> None:
    odd = datetime(1850, 1, 1, 12, 0, 0, 1999, tzinfo=timezone(timedelta(seconds=3208)))
    assert "at = 1849-12-31T" not in render_block("event", {"at": odd})
    assert "at = 1850-01-01T11:59:32.001+00:53" in render_block("event", {"at": odd})
    assert "at = 2026-03-14T08:05:40.120+00:00" in render_block("event", {"at": WHEN.astimezone(UTC)})


@pytest.mark.parametrize(
    "value",
    [
        None,
        float("nan"),
        float("inf"),
        -float("inf"),
        2**63,
        -(2**63) - 1,
        b"bytes",
        {1, 2},
        object(),
        datetime(2026, 3, 14),
        datetime.min.replace(tzinfo=timezone(timedelta(seconds=45))),
        "half \ud800",
        [["deep"]] * 1,
        {"a": {"b": None}},
    ],
)
def test_what_toml_cannot_hold_is_refused(value: object) -> None:
    nested: Any = value
    if value == [["deep"]]:
        for _ in range(20):
            nested = [nested]
    with pytest.raises(Unwritable) as refused:
        render_block("event", {"key": nested})
    assert str(refused.value).isprintable()


def test_a_block_that_would_read_back_otherwise_never_goes_out() -> None:
    for text, meant in [
        ("[[event]]\nn = 1\n", {"n": 2}),
        ("[[event]]\nn = 1\n", {"n": 1.0}),
        ("[[event]]\nn = 1\n", {"n": True}),
        ("[[event]]\nn = 1\n[[event]]\n", {"n": 1}),
        ("[[event]]\nn = \n", {"n": 1}),
        ("n = 1\n", {"n": 1}),
        ("[[event]]\nn = [1]\n", {"n": [1.0]}),
        ("[[event]]\nn = [1]\n", {"n": [1, 2]}),
        ("[[event]]\nat = 2026-03-14T08:05:40.120Z\n", {"at": WHEN}),
        ("[[event]]\nn = 1\n", {"m": 1}),
    ]:
        with pytest.raises(Unwritable):
            parsed_back(text, "event", meant)


# --- the quick reader


@pytest.mark.parametrize(
    "line",
    [
        "n = 01",
        "n = 1_000",
        "n = +1",
        "n = -0",
        "n = 0x1f",
        "n = 1.",
        "n = 1.5e3",
        "n = -0.0",
        "n = nan",
        "n=1",
        " n = 1",
        "n = 1 # said",
        "n = 'text'",
        'n = """text"""',
        'n = "a\\tb"',
        'n = "a\tb"',
        'n = "a\x7fb"',
        "a.b = 1",
        '"a" = 1',
        "n = 2026-13-01T00:00:00.000+01:00",
        "n = 2026-03-14T09:05:40.120Z",
        "n = 2026-03-14T09:05:40.120-00:00",
        "n = 2026-03-14 09:05:40.120+01:00",
        "n = 2026-03-14T09:05:40.120+24:00",
        "n = 2026-03-14",
        "n = [1, 2]",
        "n = [1, 2]\nn = [1, 2]",
        "n = [1, 2]\n[event.n]",
        "n = [1, 2]\n[[event.n]]",
        "n = [1\n]",
        "n = [\n  1,\n  2,\n]",
        "n = [\n  1]\n  m = 2\n  k = [\n]",
        "n = [\n  1]\n  [event]\n]",
        "n = [\n  1]\n  [event.sub]\n  a = [3\n]",
        'n = ["""\nm = 1\n"""]',
        'n = ["""]\nm = [1]\n"""]',
        "n = [1] # [2]",
        "n = [1] m = [2]",
        "n = [1",
        "n = [1]]",
        "n = " + "[" * 2000 + "]" * 2000,
        "n = {a = 1}",
        "n = 1\nn = 1",
        "n = 1\n\nm = 2",
        "n = " + "9" * 30,
        "n = 0." + "1" * 30,
        "é = 1",
        "n = true\nm = false",
        "[event.sub]\nn = 1",
        "[other]\nn = 1",
        "[[event]]",
    ],
)
def test_the_quick_reader_agrees_with_the_standard_one_on_every_odd_line(line: str) -> None:
    text = f"[[event]]\n{line}\n"
    try:
        blocks = tomllib.loads(text)["event"]
    except (ValueError, RecursionError):
        blocks = []
    if len(blocks) == 1:
        assert repr(read_block(text, "event")) == repr(blocks[0])
    else:
        with pytest.raises((ValueError, RecursionError)):
            read_block(text, "event")


@given(text=st.text(st.sampled_from("ab =.\"\\[]{}-+0129T:\n#'e_"), max_size=60))
def test_the_quick_reader_agrees_with_the_standard_one_on_any_text(text: str) -> None:
    whole = f"[[event]]\n{text}\n"
    try:
        blocks: Any = tomllib.loads(whole)["event"]
    except (ValueError, RecursionError):
        blocks = []
    if isinstance(blocks, list) and len(blocks) == 1:
        assert same(read_block(whole, "event"), blocks[0])
    else:
        with pytest.raises((ValueError, RecursionError)):
            read_block(whole, "event")


def test_another_heading_is_no_block_of_ours() -> None:
    with pytest.raises(KeyError):
        read_block("[[other]]\nn = 1\n", "event")
    for text in ("event = 1\n", "event = 12\n"):
        with pytest.raises(ValueError, match="one"):
            read_block(text, "event")
