"""`dyesession stock`: jars less what the logs used, the next plans, the faults a hand can make."""

import json
from pathlib import Path

import pytest
from daybook.written import written
from jars_used import KITCHEN, used_once

from dyesession.cli import FINE, TO_PUT_RIGHT, USAGE, main

MADDER = ("madder-brick-red-on-wool", "--fibre", "240 g wool")
WELD = ("weld-yellow-on-wool", "--fibre", "60 g wool", "--fibre", "40 g wool")


@pytest.fixture(autouse=True)
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("DYESESSION_WORKROOM", str(tmp_path))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    day = used_once(tmp_path)
    written(day, tmp_path / "logs", "2026-03-15-tried-out-aaaa", rehearsal=True)
    written(day, tmp_path / "logs", "demo-2026-03-16-shown-aaaa", demo=True)
    return tmp_path


def test_only_the_dyers_own_days_are_taken_off_a_jar(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["stock"]) == FINE
    assert "madder, autumn: 230 g left (350 g on 2026-03-01, 120 g used since on one day)" in capsys.readouterr().out


def test_two_plans_find_the_jar_as_the_one_before_left_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["stock", *MADDER, *WELD, *MADDER, "--json"]) == FINE
    told = json.loads(capsys.readouterr().out)
    assert [one["fibre_g"] for one in told["plans"]] == [240.0, 100.0, 240.0]
    [jar] = told["jars"]
    assert (jar["left_g"], jar["plans_take_g"], jar["after_g"]) == (230.0, 230.0, 0.0)
    assert told["buy_g"] == {"madder root": pytest.approx(10.0)}
    assert told["plans"][0]["price_per_100_g"] == pytest.approx(120 * 4.5 / 100 / 2.4)


def test_working_out_finds_the_jar_as_the_days_left_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["work-out", "madder-brick-red-on-wool", "--fibre", "500 g wool"]) == FINE
    out = capsys.readouterr().out
    assert "250 g of madder is wanted and your jars hold 230 g" in out


def test_a_plan_without_fibre_and_fibre_without_a_plan_are_told_apart(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["stock", "madder-brick-red-on-wool"]) == TO_PUT_RIGHT
    assert "has no fibre behind it" in capsys.readouterr().err
    with pytest.raises(SystemExit) as left:
        main(["stock", "--fibre", "240 g wool"])
    assert left.value.code == USAGE
    assert "stands behind its recipe" in capsys.readouterr().err


@pytest.mark.parametrize("day", ['"last week"', "2026-03-01T09:00:00+01:00", "12"])
def test_a_day_that_is_none_is_said_with_its_line(
    room: Path, capsys: pytest.CaptureFixture[str], day: str
) -> None:
    (room / "kitchen.toml").write_text(KITCHEN.replace("2026-03-01", day), "utf-8")
    assert main(["stock"]) == TO_PUT_RIGHT
    err = capsys.readouterr().err
    assert "line 7" in err and "weighed_on" in err and "2026-03-14" in err
