"""Reading a recipe or kitchen file: every mistake answered with the file, the line, what was expected."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.errors import UserError
from dyesession.storage import DISK
from dyesession.tomlfile import HAND_WRITTEN, Limits, TomlFileError, parse_toml, read_toml
from dyesession.tomlfile.limits import blanked, check_limits
from dyesession.tomlfile.lines import index_lines

RECIPE = '''format = 1
name = "Madder brick red"   # [[not]] a heading
summary = """
name = "not a key"
[[step]]
"""

[[ingredient]]
name = "alum"
dose = "12 %"

[[ingredient]]
name = "tartar"
"odd.key" = 1

[[step]]
name = "scour"
heat = [ { to = "60 degC", over = "30 min" }, { hold = "30 min" } ]
judge.least = "30 min"

[[step]]
name = "mordant"
add = [
  "alum",      # weighed dry
  "tartar",
]
heat = [
  { to = "85 degC" },

  { hold = "60 min" },
]
[step.judge]
least = "30 min"

[[step.portion]]
of = "alum"
[[step.portion]]
of = "tartar"
'''


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("format",), 1),
        (("name",), 2),
        (("summary",), 3),
        (("ingredient", 0), 8),
        (("ingredient", 0, "dose"), 10),
        (("ingredient", 1, "name"), 13),
        (("ingredient", 1, "odd.key"), 14),
        (("step", 0, "heat"), 18),
        (("step", 0, "heat", 1, "hold"), 18),
        (("step", 0, "judge", "least"), 19),
        (("step", 1, "add", 0), 24),
        (("step", 1, "add", 1), 25),
        (("step", 1, "heat", 0), 28),
        (("step", 1, "heat", 1, "hold"), 30),
        (("step", 1, "judge", "least"), 33),
        (("step", 1, "portion", 1, "of"), 38),
        (("step", 1, "nothing"), 21),
        (("nothing",), 0),
    ],
)
def test_every_key_is_found_on_its_line(path: tuple[str | int, ...], line: int) -> None:
    document = parse_toml(RECIPE.encode(), "madder.toml")
    assert document.line_of(path) == line


def test_a_document_reads_as_the_standard_parser_reads_it(tmp_path: Path) -> None:
    import tomllib

    path = tmp_path / "madder.toml"
    path.write_text(RECIPE)
    document = read_toml(path)
    assert document.values == tomllib.loads(RECIPE)
    assert document.where == str(path) and document.notes == ()
    assert document.top.text("name") == "Madder brick red"


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("a = 1\nname madder\n", 2, 'expected a key, "="'),
        ("a = 1\n= 2\n", 2, 'expected a key, "="'),
        ("a = 1\nname = madder\n", 2, "text in quotes"),
        ("dose = 12 %\n", 1, "text in quotes"),
        ("a = 1\n\na = 2\n", 3, "twice"),
        ("[a]\n[a]\n", 2, "twice"),
        ("a = [1\n", 1, 'a list is not closed: expected "]"'),
        ("a = {b = 1\n", 1, 'a table is not closed: expected "}"'),
        ('\n\na = "x\n', 3, "cannot be typed"),
        ("a = 'x", 1, "not closed"),
        ('a = "x', 1, "not closed"),
        ('a = "\\q"\n', 1, "needs another before it"),
        ("[a\n", 1, "in brackets"),
        ("a = []\n[[a]]\n", 2, "closed above"),
        ("a = 2026-02-30T10:00:00Z\n", 1, "no such day"),
        ("a = " + "9" * 5000 + "\n", 0, "thousands of digits"),
        ('a = "\\ud800"\n', 1, "expected TOML"),
        ("a.é = 1\n", 1, "letters, digits"),
    ],
)
def test_a_mistake_is_told_with_its_line_and_an_example(text: str, line: int, said: str) -> None:
    with pytest.raises(TomlFileError, match=f"^madder.toml{f', line {line}' if line else ''}: ") as told:
        parse_toml(text.encode(), "madder.toml")
    assert said in str(told.value)
    assert (told.value.where, told.value.line) == ("madder.toml", line)
    assert "expected" in str(told.value)


def test_brackets_too_deep_even_for_the_parser_are_told_in_plain_words() -> None:
    deep = Limits(1_000_000, line_length=100_000, nesting=100_000)
    with pytest.raises(TomlFileError, match="brackets stand too deep"):
        parse_toml(b"a = " + b"[" * 20_000, "madder.toml", deep)


def test_what_is_not_utf_8_is_told_with_its_line() -> None:
    with pytest.raises(TomlFileError, match=r"madder\.toml, line 2: not UTF-8 text") as told:
        parse_toml(b"a = 1\nb = '\xe2\x82'\n", "madder.toml")
    assert told.value.line == 2


def test_an_editors_byte_order_mark_is_left_out_and_said() -> None:
    document = parse_toml(b"\xef\xbb\xbfa = 1\r\nb = 2\r\n", "kitchen.toml")
    assert document.values == {"a": 1, "b": 2}
    assert len(document.notes) == 1 and "byte order mark" in document.notes[0]
    assert document.line_of(("b",)) == 2


def test_a_file_that_is_not_there_is_told_in_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(TomlFileError, match="it is not there; expected a file that can be read"):
        read_toml(tmp_path / "none.toml")


def test_a_file_beyond_the_limit_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "big.toml"
    path.write_bytes(b"#" * 1001)
    with pytest.raises(UserError, match="larger than"):
        read_toml(path, DISK, Limits(1000))
    with pytest.raises(TomlFileError, match="over 1000 bytes"):
        parse_toml(b"#" * 1001, "big.toml", Limits(1000))
    assert read_toml(path, DISK, Limits(1001)).values == {}


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("a = 1\n" + "a." * 9 + "a = 1\n", 2),
        ('a = """\n"""\n\n' + "a . " * 9 + "a = 1\n", 4),
        ("\n" + "'.'." * 9 + "a = 1\n", 2),
        ("\n[" + "a." * 9 + "a]\n", 2),
        ("x = {" + "a." * 9 + "a = 1}\n", 1),
        ("a = [\n" + "[" * 16 + "]" * 16 + "]\n", 2),
        ("\n\nx = '" + "y" * 16_000 + "'\n", 3),
    ],
)
def test_what_is_too_deep_or_too_long_is_told_with_its_line(text: str, line: int) -> None:
    with pytest.raises(TomlFileError) as told:
        check_limits(text, "madder.toml", HAND_WRITTEN)
    assert told.value.line == line


@pytest.mark.parametrize(
    "text",
    [
        "a." * 8 + "a = 1\n",
        "note = 'a.b.c.d.e.f.g.h.i.j.k.l'\n",
        "# a.b.c.d.e.f.g.h.i.j.k.l [[[[[[[[[[[[[[[[[[[[[[[[[\n",
        "v = [1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5]\n",
        "a = " + "[" * 16 + "]" * 16 + "\n",
        'a = "[[[[[[[[[[[[[[[[[[[[[[[[["\n',
    ],
)
def test_what_is_within_the_limits_passes(text: str) -> None:
    check_limits(text, "madder.toml", HAND_WRITTEN)
    parse_toml(text.encode(), "madder.toml")


@given(text=st.text(st.sampled_from("ab\"'\\#\n =[."), max_size=80))
def test_blanking_keeps_every_character_in_its_place(text: str) -> None:
    bare = blanked(text)
    assert len(bare) == len(text)
    assert [at for at, one in enumerate(bare) if one == "\n"] == [
        at for at, one in enumerate(text) if one == "\n"
    ]
    assert not set(bare) & set("\"'#")


def test_blanking_knows_every_kind_of_text() -> None:
    assert blanked("a = 'x' # y\n") == "a = sss    \n"
    assert blanked('a = "x\\"#" # y') == "a = ssssss    "
    assert blanked('a = """x"#\n""" + 1') == "a = ssssss\nsss + 1"
    assert blanked("a = '''x'#\n''''") == "a = ssssss\nssss"
    assert blanked('a = "unclosed\nb = 1') == "a = sssssssss\nb = 1"


def test_a_key_that_cannot_be_taken_apart_still_has_a_line() -> None:
    assert index_lines('a = 1\n"\\q".b = 2\n') == {("a",): 1, ('"\\q".b',): 2}
