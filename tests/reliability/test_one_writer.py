"""One writer: of several programs that reach for a log at once one gets it, and the others are told who."""

from pathlib import Path

from reliability.campaign import run

RACES = 100


def test_of_four_that_open_a_log_one_gets_it_and_the_others_name_it_and_may_look(tmp_path: Path) -> None:
    counts = run("racing", "open", tmp_path, RACES)
    assert counts["races"] == counts["one winner"] == counts["holder named"] == RACES


def test_of_four_that_begin_a_log_of_one_name_one_gets_it_and_it_is_whole(tmp_path: Path) -> None:
    counts = run("racing", "create", tmp_path, RACES)
    assert counts["races"] == counts["one winner"] == counts["whole log"] == RACES


def test_sabotage_without_the_lock_several_writers_are_caught(tmp_path: Path) -> None:
    assert run("racing", "unlocked", tmp_path, 5)["several winners"] > 0
