"""How many megabytes the libraries take that the program needs to run, as they lie installed here.

Read from the metadata of what is installed: what `pyproject.toml` names, and what that names in turn. Byte code
counts, as pip writes it.
"""

import tomllib
from collections.abc import Iterable
from importlib.metadata import distribution
from importlib.util import cache_from_source
from pathlib import Path

from packaging.requirements import Requirement  # comes with pytest

ROOT = Path(__file__).resolve().parents[2]


def footprint() -> dict[str, float]:
    """Megabytes of each library, by name. Raises PackageNotFoundError where one is not installed here."""
    named = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["dependencies"]
    waiting, seen = _needed(named, ()), set[tuple[str, frozenset[str]]]()
    while waiting:
        name, extras = one = waiting.pop()
        if one not in seen:
            seen.add(one)
            waiting += _needed(distribution(name).requires or (), extras)
    return {name: _megabytes(name) for name in sorted({name for name, _ in seen})}


def _needed(lines: Iterable[str], extras: Iterable[str]) -> list[tuple[str, frozenset[str]]]:
    """What the lines ask for on this system, with the optional parts they ask for."""
    asked = [Requirement(line) for line in lines]
    marks = [{"extra": one} for one in ("", *extras)]
    return [
        (one.name.lower().replace("_", "-"), frozenset(one.extras))
        for one in asked
        if one.marker is None or any(one.marker.evaluate(mark) for mark in marks)
    ]


def _megabytes(name: str) -> float:
    files = {Path(str(one.locate())).resolve() for one in distribution(name).files or ()}
    files |= {Path(cache_from_source(one)) for one in files if one.suffix == ".py"}
    return sum(one.stat().st_size for one in files if one.is_file()) / 1e6
