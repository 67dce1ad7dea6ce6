"""What My kitchen shows, as plain words ready to draw. Must not know kitchens, plans or files."""

from dataclasses import dataclass

from dyesession.ui.frame_view import Frame


@dataclass(frozen=True)
class Asked:
    """A question the plan at hand would be better for: why, an example, and answers that can be chosen."""

    key: str
    asks: str
    why: str
    example: str
    choices: tuple[tuple[str, str], ...] = ()  # key and word of each


@dataclass(frozen=True)
class Known:
    """Something known of the kitchen: what it is, and as it would be typed again."""

    key: str
    what: str
    says: str


@dataclass(frozen=True)
class KitchenView:
    """Everything My kitchen draws at one moment. `about`: for which plan the questions are."""

    frame: Frame
    cursor: str = ""
    about: str = ""
    asked: tuple[Asked, ...] = ()
    known: tuple[Known, ...] = ()
    more: tuple[Known, ...] = ()
    alarm: str = ""
    file: str = ""
