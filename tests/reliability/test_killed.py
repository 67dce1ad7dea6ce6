"""The process is killed outright: what was called saved is there, and nothing that was never tried."""

from pathlib import Path

from reliability.campaign import run

RANDOM_KILLS = 1000


def test_a_thousand_kills_at_random_lose_nothing_that_was_called_saved(tmp_path: Path) -> None:
    counts = run("killing", "random", tmp_path, RANDOM_KILLS)
    assert counts["kills"] == RANDOM_KILLS
    assert counts["lost"] == counts["invented"] == 0
    assert counts["saved"] > RANDOM_KILLS


def test_a_kill_at_every_call_to_the_disk_loses_nothing_that_was_called_saved(tmp_path: Path) -> None:
    counts = run("killing", "every", tmp_path)
    assert counts["kills"] == 3 * counts["calls"] > 100
    assert {"lost", "invented", "torn end lost", "cannot go on", "after: lost"} & set(counts) == set()
    assert counts["saved"] > 100 and counts["found though not acknowledged"] > 0


def test_sabotage_a_disk_that_only_promises_to_have_written_is_caught(tmp_path: Path) -> None:
    assert run("killing", "lazy", tmp_path, 50)["lost"] > 0
