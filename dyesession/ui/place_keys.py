"""The keys before the Stove in one table: the key, its words, the act it posts, and where it is live.

No key does two things: one that the Stove has too means the same there. `y` answers nothing anywhere.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import KeyWord

BENCH, WORKING_OUT, KITCHEN, PHOTO = "Bench", "Working out", "My kitchen", "Photo"
DAY_BOOK, SHELF, COLOUR, JARS = "Day book", "Bath shelf", "Colour", "Jars"
DAY, REPEAT, COMPARE, WRONG, BATH = "Day", "Repeat this colour", "Compare", "What went wrong?", "Kept bath"
OWN_NUMBERS = "Your own numbers"
ROUND = (BENCH, DAY_BOOK, SHELF, COLOUR)  # the places tab leads round, in this order
EVERYWHERE = (*ROUND, WORKING_OUT, KITCHEN, PHOTO, DAY, REPEAT, COMPARE, WRONG, BATH, JARS, OWN_NUMBERS)


@dataclass(frozen=True)
class PlaceKey:
    """A key as printed, its short word, the act in a few words, the act, and the places it is live in.

    `act` is None for the keys that the screen itself turns into an act: they depend on the mark.
    """

    key: str
    word: str
    explained: str
    act: type[p.PlaceAct] | None = None
    places: tuple[str, ...] = EVERYWHERE


PLACE_KEYS: tuple[PlaceKey, ...] = (
    PlaceKey("space", "next", "what NEXT says; what rings is seen first"),
    PlaceKey("enter", "choose", "choose the marked line; on a figure: where it comes from, in full"),
    PlaceKey("up", "up", "move the mark up"),
    PlaceKey("down", "down", "move the mark down"),
    PlaceKey("left", "left", "move the mark left", places=(PHOTO,)),
    PlaceKey("right", "right", "move the mark right", places=(PHOTO,)),
    PlaceKey("home", "first", "move the mark to the first line"),
    PlaceKey("end", "last", "move the mark to the last line"),
    PlaceKey("pageup", "page up", "move the mark eight lines up"),
    PlaceKey("pagedown", "page down", "move the mark eight lines down"),
    PlaceKey("tab", "next place", "on to the next place: Bench, Day book, Bath shelf, Colour", p.NextPlace, ROUND),
    PlaceKey("/", "find", "find: a recipe by a word, a day by what was dyed", p.FindRecipe, (BENCH, DAY_BOOK)),
    PlaceKey("+", "no recipe", "begin a day without a recipe: stages come in as you name them", p.Improvise, (BENCH,)),
    PlaceKey("c", "colour", "type a colour: the one you want, then the skein's", p.TypeColour, (COLOUR,)),
    PlaceKey("-", "not now", "leave a question open", p.SkipQuestion, (WORKING_OUT, KITCHEN, PHOTO)),
    PlaceKey("delete", "take away", "take the marked lot or entry away", p.TakeAway, (WORKING_OUT, KITCHEN, COLOUR)),
    PlaceKey("m", "my kitchen", "what is known of your kitchen", p.OpenKitchen, (BENCH, WORKING_OUT)),
    PlaceKey("r", "try alarm", "let the alarm ring on trial; again: still", p.TryAlarm),
    PlaceKey("escape", "put away", "put away what is typed, or the line above the keys", p.LayAside),
    PlaceKey("?", "help", "this page", p.PlaceHelp),
    PlaceKey("q", "leave", "back to where you came from; from the Bench, out", p.LeavePlace),
)
BY_PLACE_KEY: dict[str, PlaceKey] = {key.key: key for key in PLACE_KEYS}


def live_key(key: str, place: str) -> PlaceKey | None:
    """The table's entry of a key that is live in a place, or None."""
    found = BY_PLACE_KEY.get(key)
    return found if found is not None and place in found.places else None


def place_key_words(keys: Iterable[str]) -> tuple[KeyWord, ...]:
    """The words of the given keys for a key line, in the order given. Unknown keys raise KeyError."""
    return tuple(KeyWord(key, BY_PLACE_KEY[key].word) for key in keys)


def place_key_table(place: str) -> str:
    """Every key of a place and what it does, one a line."""
    live = [key for key in PLACE_KEYS if place in key.places]
    widest = max(len(key.key) for key in live)
    return "\n".join(f"{key.key:<{widest}}  {key.explained}" for key in live) + "\n"
