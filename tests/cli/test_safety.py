"""`dyesession safety`: what a person at the command line is shown."""

import json

import pytest

from dyesession.care import KEEP_APART
from dyesession.cli import main
from dyesession.substances import load


@pytest.fixture
def workroom(tmp_path, monkeypatch):
    monkeypatch.setenv("DYESESSION_WORKROOM", str(tmp_path))
    return tmp_path


def _lines(text):
    return " ".join(text.split())


def test_alone_it_prints_the_disclaimer_what_to_keep_apart_and_every_substance(workroom, capsys):
    assert main(["safety"]) == 0
    shown = _lines(capsys.readouterr().out)
    assert shown.startswith("These are the cautions a careful home dyer would give a neighbour")
    assert "ammonia or stale urine + bleach: chloramine gas. No bleach in a dye room." in shown
    for key in load():
        assert key in shown
    for pair in KEEP_APART:
        assert f"{pair.one} + {pair.other}" in shown


@pytest.mark.parametrize("name", [["copperas"], ["green", "vitriol"], ["7782-63-0"], ["Iron(II)", "sulfate"]])
def test_a_substance_is_shown_by_any_name_or_number_with_the_disclaimer(workroom, capsys, name):
    assert main(["safety", *name]) == 0
    shown = _lines(capsys.readouterr().out)
    assert shown.startswith("Ferrous sulphate")
    assert "your poison centre or the emergency number" in shown
    assert "Labels, safety data sheets, local rules and licensed practitioners outrank it." in shown


def test_the_kitchens_own_poison_centre_and_smallest_child_stand_on_the_page(workroom, capsys):
    (workroom / "kitchen.toml").write_text(
        'format = 1\npoison_centre = "0123 456"\n[household]\nlightest_child = "12 kg"\n', "utf-8"
    )
    assert main(["safety", "iron"]) == 0
    shown = _lines(capsys.readouterr().out)
    assert "your poison centre (0123 456)" in shown
    assert "12 kg child: ill from 1.2 g" in shown


def test_a_kitchen_that_cannot_be_read_stops_no_first_aid(workroom, capsys):
    (workroom / "kitchen.toml").write_text("format = 1\npoison_centre = [", "utf-8")
    assert main(["safety", "lye"]) == 0
    shown = _lines(capsys.readouterr().out)
    assert "running water" in shown
    assert "Your kitchen file could not be read" in shown


def test_a_strength_in_the_name_is_answered(workroom, capsys):
    assert main(["safety", "60", "%", "acetic", "acid"]) == 0
    assert "at 60 %: Danger, H290, H314" in _lines(capsys.readouterr().out)


def test_a_name_nobody_knows_is_one_sentence_with_the_nearest(workroom, capsys):
    assert main(["safety", "maddr", "root"]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert "did you mean madder root" in told.err
    assert main(["safety", "evil\x1b[31m dust"]) == 1
    assert "\x1b" not in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [["safety"], *(["safety", key] for key in sorted(load()))])
def test_every_page_fits_eighty_columns(workroom, capsys, arguments):
    assert main(arguments) == 0
    too_long = [
        line for line in capsys.readouterr().out.splitlines() if len(line) > 80 and " " in line.strip()
    ]
    assert too_long == []


def test_json_is_one_document_for_a_substance_and_for_all(workroom, capsys):
    assert main(["safety", "chalk", "--json"]) == 0
    one = json.loads(capsys.readouterr().out)
    assert one["key"] == "chalk"
    assert one["gas"]["value"] == 0.24
    assert one["disclaimer"]
    assert main(["safety", "--json"]) == 0
    every = json.loads(capsys.readouterr().out)
    assert sorted(key for keys in every["substances"].values() for key in keys) == sorted(load())
    assert every["keep_apart"] and every["disclaimer"]
