"""A figure of a plan explained: sentences, each with its own source, and what they are made from.

Adds no figure of its own. A source is a book, paper or table, or says `common practice, no source`, or names
the dyer's own file. The figures themselves: `explained_doses` and `explained_day`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from dyesession.kitchen.model import Kitchen
from dyesession.plan.doses import Depth
from dyesession.plan.model import Plan
from dyesession.recipe.model import Recipe

PRACTICE = "common practice, no source"
ARITHMETIC = "arithmetic"
DEPTH_WORDS: Mapping[Depth, str] = {"low": "paler", "aim": "usual", "high": "deeper"}


@dataclass(frozen=True)
class Because:
    """One reason, and where it comes from."""

    says: str
    source: str = PRACTICE


@dataclass(frozen=True)
class Explained:
    """A figure, and everything behind it."""

    figure: str
    because: tuple[Because, ...]

    def lines(self) -> list[str]:
        """The same as plain lines, each source under its sentence."""
        found = [self.figure]
        for one in self.because:
            found += ["", one.says, f"    ({one.source})"]
        return found


@dataclass(frozen=True)
class Worked:
    """A plan and all it was made of. `remarks` is what the recipe's file says behind its figures."""

    plan: Plan
    recipe: Recipe
    kitchen: Kitchen
    depth: Depth = "aim"
    remarks: Mapping[str, str] = field(default_factory=dict)

    def remark(self, name: str) -> str:
        """The source of a recipe's figure: the recipe, and what stands behind the figure in its file."""
        beside = self.remarks.get(name, "")
        recipe = (
            f"the recipe ({self.recipe.source})"
            if self.recipe.source
            else "the recipe, which names no source"
        )
        return f"{recipe}; behind it in the file: “{beside}”" if beside else recipe


def as_written(recipe: Recipe, part: str, name: str, key: str) -> str:
    """A figure as the recipe's file writes it."""
    tables: Any = recipe.document.get(part, ())
    found = next((one for one in tables if isinstance(one, Mapping) and one.get("name") == name), {})
    return str(found.get(key, ""))


def sentence(text: str) -> str:
    """A text as one sentence: a capital first, one full stop last."""
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."
