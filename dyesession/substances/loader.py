"""Reads the shipped `*.toml` files into substances, once. Knows nothing of files that people write.

A substance is its file's `[default]`, then whatever it is `like`, then its own keys; later wins.
"""

import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from dyesession.substances.model import Band, Figure, Form, Substance, Wording

_WORDING = "wording.toml"
_OWN = ("key", "names", "word", "like", "cas", "cas_note")  # never inherited
_LISTS = ("names", "roles", "protection", "codes", "pictograms", "must_not_meet")
_FIGURES = ("lots_vary", "solubility", "limit", "gas", "iron_share")

Table = dict[str, Any]


@cache
def load() -> Mapping[str, Substance]:
    """Every shipped substance by its key, in the order of the files. Read once."""
    return MappingProxyType({substance.key: substance for substance in _substances()})


@cache
def wording() -> Wording:
    """The shared lines: air, protection, disposal, hazard codes, pictograms."""
    tables = tomllib.loads(_text(_WORDING))
    return Wording(**{name: MappingProxyType(lines) for name, lines in tables.items()})


def data_files() -> tuple[str, ...]:
    """Names of the shipped data files, one for each group of substances."""
    found = (entry.name for entry in files(__package__).iterdir())
    return tuple(sorted(name for name in found if name.endswith(".toml") and name != _WORDING))


def _text(name: str) -> str:
    return files(__package__).joinpath(name).read_text(encoding="utf-8")


def _substances() -> Iterator[Substance]:
    for name in data_files():
        document = tomllib.loads(_text(name))
        whole: dict[str, Table] = {}
        for own in document["substance"]:
            whole[own["key"]] = _complete(own, document["default"], whole)
            yield _substance(whole[own["key"]])


def _complete(own: Table, default: Table, earlier: Mapping[str, Table]) -> Table:
    """`own` laid over what it is like, laid over the file's default."""
    base = earlier[own["like"]] if "like" in own else default
    inherited = {key: value for key, value in base.items() if key not in _OWN}
    return {**inherited, **{key: value for key, value in own.items() if key != "like"}}


def _substance(table: Table) -> Substance:
    made: Table = {**table, "traits": frozenset(table.get("traits", ()))}
    made.setdefault("word", made["key"])
    for key in _LISTS:
        made[key] = tuple(table.get(key, ()))
    for key in _FIGURES:
        made[key] = Figure(**table[key]) if key in table else None
    made["forms"] = tuple(Form(**form) for form in table.get("forms", ()))
    made["bands"] = tuple(_band(band) for band in table.get("bands", ()))
    return Substance(**made)


def _band(table: Table) -> Band:
    return Band(**{**table, "codes": tuple(table["codes"])})
