"""Every key of the Stove in one table: the key, its words, and the act it posts. No key does two things.

Knows nothing of sessions. `y` is left out on purpose: it must never answer anything.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from dyesession.ui import messages
from dyesession.ui.frame_view import KeyWord


@dataclass(frozen=True)
class Key:
    """A key as printed on the screen, its short word, the act it posts, and the act in a few words."""

    key: str
    word: str
    act: type[messages.Act]
    explained: str


KEYS: tuple[Key, ...] = (
    Key("space", "done", messages.Next, "done, or next: the one right thing now"),
    Key("t", "temperature", messages.ReadTemperature, "type a temperature you read"),
    Key("v", "volume", messages.ReadVolume, "type a volume or a level you read"),
    Key("s", "strength", messages.ReadStrength, "read or match the bath's strength"),
    Key("p", "pause", messages.PauseOrGoOn, "pause a clock, or let it go on"),
    Key("e", "longer", messages.GiveLonger, "give a clock longer"),
    Key("x", "strain", messages.Strain, "strain a pot into another now"),
    Key("o", "on shade", messages.OnShade, "your eye says the shade is reached"),
    Key("d", "dip", messages.DipSnippet, "dip a snippet, or lift it"),
    Key("c", "colour", messages.ReadColour, "type a colour you read, wet or dry"),
    Key("w", "weight", messages.Weigh, "type a weight from the scales"),
    Key("h", "pH", messages.ReadAcidity, "type a pH you read"),
    Key("j", "change", messages.ChangePlan, "change the plan: a lot joins, a weight, a dose, a stage"),
    Key("f", "fresh water", messages.FreshWater, "extract again with fresh water"),
    Key("u", "top up", messages.TopUp, "top a pot up with water"),
    Key("l", "lift", messages.LiftFibre, "lift the fibre, or let it in again"),
    Key("k", "skip", messages.SkipStep, "skip this step, and say why"),
    Key("n", "note", messages.WriteNote, "write a note"),
    Key("z", "correct", messages.Correct, "put an earlier entry right"),
    Key("b", "bath account", messages.OpenAccount, "every line of the bath's account"),
    Key("i", "what is where", messages.ShowWhere, "what is in which pot, and what was done last"),
    Key("a", "away", messages.GoAway, "large clocks, to read from across the room"),
    Key("-", "not now", messages.NotNow, "put a question off"),
    Key("escape", "put away", messages.PutAway, "put away what lies over the pots, or what is typed"),
    Key(".", "more", messages.ShowMore, "every other act"),
    Key("?", "help", messages.ShowHelp, "this list"),
    Key(">", "save elsewhere", messages.SaveElsewhere, "write the day to another folder, where it cannot be saved"),
    Key("g", "stop early", messages.StopEarly, "end the day early, and say why"),
    Key("!", "break off", messages.BreakOff, "break off for safety, and say why"),
    Key("q", "quit", messages.QuitStove, "close the screen; the clocks go on"),
)
BY_KEY: dict[str, Key] = {key.key: key for key in KEYS}
# Always at the end of the key line: whatever is dropped there can be found behind them.
ALWAYS_SHOWN = (".", "?")


def key_words(keys: Iterable[str]) -> tuple[KeyWord, ...]:
    """The words of the given keys, in the order given, for a view's key line. Unknown keys raise KeyError."""
    return tuple(KeyWord(key, BY_KEY[key].word) for key in keys)


def key_table() -> str:
    """Every key and what it does, one a line, for the help page and the manual."""
    widest = max(len(key.key) for key in KEYS)
    return "\n".join(f"{key.key:<{widest}}  {key.explained}" for key in KEYS) + "\n"
