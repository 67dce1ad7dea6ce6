"""The map of what a dyer can do before the Stove: on the Bench, in Working out, in My kitchen.

Posted by a place's screen and carried out by whoever looks after that place; knows no files and no plans.
"""

from textual.message import Message


class PlaceAct(Message):
    """Something the dyer pressed or touched in a place. Every other message here is one of these."""

    place: str = ""  # which place it was pressed in; the screen writes it here


class Choose(PlaceAct):
    """A line is chosen: the marked one, or one that was touched."""

    def __init__(self, key: str) -> None:
        self.key = key
        super().__init__()


class Mark(PlaceAct):
    """The mark is to stand on another line."""

    def __init__(self, key: str) -> None:
        self.key = key
        super().__init__()


class TypedSoFar(PlaceAct):
    """The text typed so far has changed; the answer is an echo of what it was understood as."""

    def __init__(self, text: str) -> None:
        self.text = text
        super().__init__()


class TypedOut(PlaceAct):
    """The text typed is meant to count. It stays until `clear_entry()`: a refusal loses nothing."""

    def __init__(self, text: str) -> None:
        self.text = text
        super().__init__()


class DoNext(PlaceAct):
    """What the next act says is to be done."""


class Seen(PlaceAct):
    """What rings has been seen."""


class OpenKitchen(PlaceAct):
    """My kitchen is wanted."""


class TryAlarm(PlaceAct):
    """The alarm is to ring once on trial, or to be still again."""


class NextPlace(PlaceAct):
    """On to the next place of the round."""


class FindRecipe(PlaceAct):
    """A word is to be typed by which recipes, or days, are found."""


class Spot(PlaceAct):
    """A spot of a photo is meant, as shares of its width and height, 0 to 1; `taken` when it counts."""

    def __init__(self, x: float, y: float, taken: bool = True) -> None:
        self.x, self.y, self.taken = x, y, taken
        super().__init__()


class TypeColour(PlaceAct):
    """A colour is to be typed."""


class Improvise(PlaceAct):
    """A day without a recipe is to begin; what is dyed is asked for."""


class SkipQuestion(PlaceAct):
    """The question is left open."""


class TakeAway(PlaceAct):
    """The marked entry is taken away."""


class PlaceHelp(PlaceAct):
    """The page that explains this place is wanted."""


class LayAside(PlaceAct):
    """What is being typed, or the line above the keys, is put away; where there is neither, nothing."""


class LeavePlace(PlaceAct):
    """Back to where the dyer came from."""
