"""What the Bench shows, as plain words ready to draw. Must not know sessions, files or estimates."""

from dataclasses import dataclass
from pathlib import Path

from dyesession.ui.frame_view import Frame


@dataclass(frozen=True)
class PotLine:
    """A pot of a day under way: its letter, its name, and what is in it or runs in it; `over`: it rings.

    For its picture: how full (0 to 1 of its brim), the liquor's colour where it was read, its clock in two words.
    """

    letter: str
    name: str
    says: str = ""
    over: bool = False
    fill: float = 0.5
    liquor: str | None = None
    clock: tuple[str, str] | None = None
    on_heat: bool = False


@dataclass(frozen=True)
class Swatch:
    """A colour that was read, `#rrggbb`, and of what."""

    colour: str
    of: str = ""


@dataclass(frozen=True)
class DayLine:
    """A day: what was dyed by which recipe, when, how it stands, its pots or its colours."""

    key: str
    recipe: str
    fibre: str = ""
    when: str = ""
    stands: str = ""
    pots: tuple[PotLine, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    demo: bool = False


@dataclass(frozen=True)
class WantLine:
    """Something that wants the dyer, and why."""

    key: str
    what: str
    why: str = ""


@dataclass(frozen=True)
class RecipeLine:
    """A recipe on offer. `own`: it lies in this workroom; `fault`: it cannot be read, and why.

    Its steps are those of the fibre, of the liquor, and those that come after both.
    """

    key: str
    name: str
    fibre: str = ""
    summary: str = ""
    source: str = ""
    colour_from: str = ""
    own: bool = False
    fault: str = ""
    fibre_steps: tuple[str, ...] = ()
    liquor_steps: tuple[str, ...] = ()
    together_steps: tuple[str, ...] = ()


TAUGHT = "taught"  # the key of the line that says what the last day has taught
IMPROVISE = "improvise"  # the key of the line that begins a day without a recipe


@dataclass(frozen=True)
class WayLine:
    """A place one can go on to, and what one goes there to see."""

    key: str
    place: str
    asks: str


@dataclass(frozen=True)
class BenchView:
    """Everything the Bench draws at one moment. `looking`: the logs and recipes are still being read."""

    frame: Frame
    cursor: str = ""
    greeting: tuple[str, ...] = ()
    under_way: tuple[DayLine, ...] = ()
    wants: tuple[WantLine, ...] = ()
    recipes: tuple[RecipeLine, ...] = ()
    done: tuple[DayLine, ...] = ()
    ways: tuple[WayLine, ...] = ()
    find: str = ""
    looking: bool = False


def name_of_file(path: Path) -> str:
    """A recipe's name as its file suggests it, until it has been read."""
    words = path.stem.replace("-", " ").strip()
    return words[:1].upper() + words[1:]
