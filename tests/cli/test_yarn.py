"""`dyesession yarn` as it is typed: enough or short, and the doses for it."""

import json

import pytest

from dyesession.cli import main


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    code = main(["yarn", *arguments])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_it_says_how_much_is_to_spare_and_what_to_dye(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "--pattern", "400 m", "--have", "320 g, 200 m/100 g")
    assert code == 0
    assert "needed:  200 g ± 22 g, about 400 m" in out
    assert "enough:  120 g ± 22 g to spare" in out
    assert max(map(len, out.splitlines())) <= 80


def test_a_recipe_gives_the_doses_on_what_is_to_be_dyed(capsys: pytest.CaptureFixture[str]) -> None:
    arguments = (
        "--pattern",
        "800 m",
        "--have",
        "150 g, 200 m/100 g",
        "--recipe",
        "weld-yellow-on-wool",
        "--json",
    )
    code, out, _ = run(capsys, *arguments)
    answer = json.loads(out)
    assert code == 0 and answer["verdict"] == "short"
    alum = next(one for one in answer["doses"] if one["ingredient"] == "alum")
    assert alum["mass_g"]["aim"] == pytest.approx(answer["dye_g"] * 0.08)


def test_a_measure_short_of_something_is_one_sentence_and_code_one(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, out, err = run(capsys, "--have", "320 g")
    assert code == 1 and out == "" and err.count("\n") == 1 and "--pattern" in err
