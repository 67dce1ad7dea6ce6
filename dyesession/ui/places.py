"""What every place before the Stove has: somebody who looks after its screen. Knows no place in particular."""

from typing import Protocol

from textual.screen import Screen

from dyesession.ui.place_messages import PlaceAct


class Place(Protocol):
    """Whoever looks after one screen."""

    @property
    def screen(self) -> Screen[None]:
        """The screen looked after."""
        ...

    def carry_out(self, act: PlaceAct) -> None:
        """Do what was pressed or touched on it."""
        ...

    def refresh(self) -> None:
        """Show it as it stands now: the time of day, what rings."""
        ...

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        ...
