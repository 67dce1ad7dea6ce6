"""What can be wrong with a recipe, and how all of it is gathered before anything is said. Knows no recipe."""

from collections.abc import Callable, Collection
from typing import TypeVar

from dyesession.errors import UserError
from dyesession.tomlfile import Table

Value = TypeVar("Value")
Otherwise = TypeVar("Otherwise")


class RecipeError(UserError):
    """A recipe that cannot be read or found; the sentence names file, line and what was expected."""


class Faults:
    """The faults found so far, one sentence each, in the order they were met."""

    def __init__(self) -> None:
        self.sentences: list[str] = []

    def take(self, read: Callable[[], Value], otherwise: Otherwise) -> Value | Otherwise:
        """Return what `read` gives, or note its fault and return `otherwise`."""
        try:
            return read()
        except UserError as error:
            self.note(str(error))
            return otherwise

    def at(self, table: Table, key: str | None, wrong: str) -> None:
        """Note a fault at a key of a table, or at the table itself."""
        self.note(str(table.problem(key, wrong)))

    def keys(self, table: Table, allowed: Collection[str]) -> None:
        """Note every key that is not allowed in a table, with the nearest that is."""
        named = {key: value for key, value in table.values.items() if key == "name"}
        for key, value in table.values.items():
            alone = Table(table.document, table.path, {**named, key: value})
            self.take(lambda one=alone: one.unknown_keys(allowed), None)  # type: ignore[misc]

    def note(self, sentence: str) -> None:
        """Note one sentence, once."""
        if sentence not in self.sentences:
            self.sentences.append(sentence)
