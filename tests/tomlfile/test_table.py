"""What a loader is told when a value will not do: file, line, what was expected, an example."""

from datetime import UTC, datetime

import pytest

from dyesession.tomlfile import Table, TomlFileError, parse_toml


def table(text: str) -> Table:
    return parse_toml(text.encode(), "madder.toml").top


def said(act, *arguments, **more) -> str:
    with pytest.raises(TomlFileError) as told:
        act(*arguments, **more)
    assert str(told.value).isprintable()
    return str(told.value)


FULL = table(
    """name = "Madder"
ratio = 30
exact = 2.5
wet = true
opened = 2026-03-14T09:00:00Z
add = ["alum", "tartar"]
[judge]
least = "30 min"
[[step]]
name = "scour"
[[step]]
name = "dye"
dose = 3
"""
)


def test_every_question_gets_the_right_kind_of_answer() -> None:
    assert FULL.text("name") == "Madder"
    assert FULL.text("name", choices={"Madder", "Weld"}) == "Madder"
    assert (FULL.number("ratio", 1, 100), type(FULL.number("ratio", 1, 100))) == (30.0, float)
    assert FULL.number("exact", 0, 2.5) == 2.5
    assert FULL.whole("ratio", 30, 30) == 30
    assert FULL.flag("wet") is True
    assert FULL.moment("opened") == datetime(2026, 3, 14, 9, tzinfo=UTC)
    assert FULL.texts("add") == ("alum", "tartar")
    judge = FULL.table("judge")
    assert judge is not None and judge.text("least") == "30 min" and judge.label == "judge"
    assert [step.text("name") for step in FULL.tables("step")] == ["scour", "dye"]
    assert "name" in FULL and "none" not in FULL
    assert FULL.line() == 0 and FULL.line("wet") == 4 and FULL.tables("step")[1].line() == 11


def test_what_is_absent_is_the_default_or_nothing() -> None:
    assert FULL.text("none", default=None) is None
    assert FULL.number("none", 0, 1, default=0.5) == 0.5
    assert FULL.whole("none", 0, 1, default=None) is None
    assert FULL.flag("none", default=False) is False
    assert FULL.moment("none", default=None) is None
    assert FULL.texts("none") == () and FULL.tables("none") == () and FULL.table("none") is None


def test_what_is_absent_and_needed_is_told_with_an_example() -> None:
    step = FULL.tables("step")[1]
    assert said(step.text, "lane", choices=["fibre", "liquor"]) == (
        'madder.toml, line 11: step 2 ("dye") has no lane; expected, for example, lane = "fibre"'
    )
    assert said(FULL.number, "mass_g", 0.5, 9) == (
        "madder.toml: the file has no mass_g; expected, for example, mass_g = 0.5"
    )
    assert "has no count; expected, for example, count = 2" in said(FULL.whole, "count", 2, 9)
    assert "has no lid; expected, for example, lid = true" in said(FULL.flag, "lid")
    assert "has no at; expected, for example, at = 2026-" in said(FULL.moment, "at")
    assert said(FULL.text, "dose", example='dose = "12 %"').endswith('dose = "12 %"')


@pytest.mark.parametrize(
    ("value", "question", "expected"),
    [
        ("3", "text", 'x in the file is 3; expected text in quotes, for example x = "some words"'),
        ('" "', "text", 'x in the file is " "; expected text in quotes'),
        ('"' + "y" * 4001 + '"', "text", "expected at most 4000 characters"),
        (
            '"12"',
            "number",
            'x in the file is "12"; expected a number without quotes or unit, for example x = 1',
        ),
        ("true", "number", "x in the file is true; expected a number"),
        ("11", "number", "expected a number from 1 to 10"),
        ("0.99", "number", "expected a number from 1 to 10"),
        ("nan", "number", "x in the file is nan; expected a number from 1 to 10"),
        ("1e999", "number", "x in the file is inf; expected a number from 1 to 10"),
        ("9" * 400, "number", "x in the file is a number with too many digits; expected a number from"),
        ("2.0", "whole", "expected a whole number from 1 to 10"),
        ("true", "whole", "expected a whole number from 1 to 10"),
        ("0x" + "f" * 30, "whole", "expected a whole number from 1 to 10"),
        ("1", "flag", "x in the file is 1; expected true or false, for example x = true"),
        ("09:00:00", "moment", "x in the file is 09:00:00; expected a date and time with its offset"),
        ("2026-03-14T09:00:00", "moment", "expected a date and time with its offset"),
        ('"a"', "texts", 'x in the file is "a"; expected a list of texts, for example x = ["alum"]'),
        ('["a", 3]', "texts", "x in the file is 3; expected a list of texts in quotes"),
        ("[[]]", "texts", "x in the file is a list; expected a list of texts in quotes"),
        ("1", "table", "x in the file is 1; expected a table, for example [x]"),
        ("{a = 1}", "tables", "x in the file is a table; expected a list of tables, for example [[x]]"),
        ("[1]", "tables", "x in the file is 1; expected a list of tables, for example [[x]]"),
        ('"\\u001b[31m"', "number", 'x in the file is "\\x1b[31m"; expected a number'),
    ],
)
def test_a_value_that_will_not_do_is_told(value: str, question: str, expected: str) -> None:
    one = table(f"\nx = {value}\n")
    bounds = (1, 10) if question in ("number", "whole") else ()
    message = said(getattr(one, question), "x", *bounds)
    assert message.startswith("madder.toml, line 2: ") and expected in message


def test_an_item_of_a_list_is_told_on_its_own_line() -> None:
    one = table('add = [\n  "alum",\n  3,\n]\n')
    assert said(one.texts, "add").startswith("madder.toml, line 3: ")


def test_a_word_nearly_right_is_set_right_and_a_strange_one_gets_the_list() -> None:
    one = table('stage = "scuor"\nlane = "x"\nadd = ["allum"]\n')
    assert 'expected perhaps "scour", for example' in said(one.text, "stage", choices=["scour", "wet", "dye"])
    assert 'expected one of "fibre", "liquor"' in said(one.text, "lane", choices=["liquor", "fibre"])
    assert 'expected perhaps "alum"' in said(one.texts, "add", choices=["alum", "tartar"])


def test_an_unknown_key_is_told_with_the_nearest_known_one() -> None:
    one = table('[[ingredient]]\nname = "alum"\ndoze = "12 %"\n').tables("ingredient")[0]
    assert said(one.unknown_keys, ["name", "dose", "role"]) == (
        'madder.toml, line 3: "doze" is not known in ingredient 1 ("alum"); expected perhaps "dose"'
    )
    one.unknown_keys(["name", "doze"])
    assert 'expected one of "a", "b"' in said(one.unknown_keys, ["b", "a"])


def test_a_loader_may_say_its_own_words() -> None:
    step = FULL.tables("step")[1]
    assert str(step.problem("dose", "too much")) == "madder.toml, line 13: too much"
    assert str(step.problem(None, "too much")) == "madder.toml, line 11: too much"
    assert "dose in step 2" in str(step.wrong("dose", "less", "dose = 2"))
