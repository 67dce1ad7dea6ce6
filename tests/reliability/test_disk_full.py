"""The disk is full: a clear word, nothing lost, and the next save works once there is room."""

from pathlib import Path

from reliability.campaign import run
from reliability.filling import SIZES


def test_a_full_disk_costs_nothing_but_a_plain_word_at_every_size(tmp_path: Path) -> None:
    counts = run("filling", tmp_path)
    assert counts["fillings"] == len(SIZES)
    assert counts["plain words"] == counts["nothing lost"] == counts["goes on"] == len(SIZES)
