"""The map of what a dyer can do at the Stove: one message for each act, posted and never carried out here.

Knows no sessions: whoever listens decides what an act means now, or says in one line why it cannot be done.
"""

from textual.message import Message


class Act(Message):
    """Something the dyer pressed or touched. Every other message here is one of these."""


class Next(Act):
    """Done, or next: the one right thing now. Acknowledges what rings first."""


class ReadTemperature(Act):
    """A temperature was read."""


class ReadVolume(Act):
    """A volume or a level was read."""


class Weigh(Act):
    """Something was weighed."""


class ReadStrength(Act):
    """The bath's strength was read or matched."""


class ReadColour(Act):
    """A colour was read, wet or dry."""


class ReadAcidity(Act):
    """A pH was read."""


class WriteNote(Act):
    """A note is to be written."""


class DipSnippet(Act):
    """A snippet is dipped, or lifted."""


class OnShade(Act):
    """The eye says the shade is reached."""


class PauseOrGoOn(Act):
    """A countdown is paused, or goes on."""


class GiveLonger(Act):
    """A countdown is given longer."""


class SkipStep(Act):
    """The step is skipped; a reason is asked for."""


class Strain(Act):
    """A pot is strained into another now."""


class FreshWater(Act):
    """The dyestuff is extracted again, with fresh water."""


class TopUp(Act):
    """Water is topped up."""


class LiftFibre(Act):
    """The fibre is lifted, or goes in again."""


class OpenAccount(Act):
    """The bath's whole account is wanted."""


class ShowWhere(Act):
    """The page that says what is where is wanted."""


class Correct(Act):
    """An earlier entry is to be put right."""


class GoAway(Act):
    """The large clocks are wanted, to be read from across the room; or the ordinary Stove again."""


class ShowMore(Act):
    """Every other act is wanted as a list."""


class ShowHelp(Act):
    """The list of keys is wanted."""


class ChangePlan(Act):
    """The plan is to be changed, or a stage to come in: what and why is asked for."""


class SaveElsewhere(Act):
    """The day cannot be saved where it is: another folder is asked for."""


class AskOldBath(Act):
    """What a bath would still do for other fibre is asked; how much of which fibre is typed."""


class AskSnippet(Act):
    """How far along the fibre is by a dried snippet is asked; its depth or its colour is typed."""


class StopEarly(Act):
    """The day is to end early; a reason is asked for."""


class BreakOff(Act):
    """The day is broken off for safety; a reason is asked for, and the pots must be cleared."""


class QuitStove(Act):
    """The screen is closed; the clocks go on."""


class NotNow(Act):
    """An Ask is put off: logged, and the dyer goes on."""


class PutAway(Act):
    """What lies over the Stove (a page, a line) is put away. Never changes the session."""


class Typed(Act):
    """The text typed so far has changed; the answer is an echo of what it was understood as."""

    def __init__(self, text: str) -> None:
        self.text = text
        super().__init__()


class Entered(Act):
    """The text typed is meant to count. It stays until `clear_entry()`: a refusal loses nothing."""

    def __init__(self, text: str) -> None:
        self.text = text
        super().__init__()


class Chosen(Act):
    """One of an Ask's answers was chosen, by its letter or by touch."""

    def __init__(self, key: str) -> None:
        self.key = key
        super().__init__()


class RowMarked(Act):
    """The mark is to stand on another of the rows on offer."""

    def __init__(self, types: str) -> None:
        self.types = types
        super().__init__()


class RowChosen(Act):
    """A row on offer is chosen: what it types stands in the entry line from now on."""

    def __init__(self, types: str) -> None:
        self.types = types
        super().__init__()


class PotTouched(Act):
    """A pot was touched."""

    def __init__(self, letter: str) -> None:
        self.letter = letter
        super().__init__()


class KeyTouched(Message):
    """A word in the key line was touched: the screen treats it as that key. Goes no further."""

    def __init__(self, key: str) -> None:
        self.key = key
        super().__init__()


class PadTouched(Message):
    """A touch on the pad: a figure, a word, or one of the keys that end a text. Goes no further."""

    def __init__(self, types: str) -> None:
        self.types = types
        super().__init__()
