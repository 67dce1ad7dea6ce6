"""What can be wrong with a colour, each said in one sentence: what, where, what was expected, an example.

Knows nothing of how colours are worked out.
"""

from dyesession.errors import UserError

LONGEST_QUOTE = 48  # characters of the typed text repeated in a message: common practice, no source


class ColourError(UserError):
    """A colour that cannot be read, compared or worked out as it stands."""


class UnreadableColour(ColourError):
    """A text that is no colour."""


class NoIlluminant(ColourError):
    """A Lab from a file that does not say under which light, and for which observer, it was read."""


class Unlike(ColourError):
    """Two readings that must not be compared: another light, another observer, or one of them wet."""


class OutsideCloth(ColourError):
    """A colour that no dyed cloth can show."""


class TooDark(ColourError):
    """A sample deeper than the theory of depth reaches."""


class NoDye(ColourError):
    """A sample that is no deeper than the fibre it was dyed on."""


class OutOfRange(ColourError):
    """A number outside what can be worked out."""


class PhotoTrouble(ColourError):
    """A photo, or a patch of one, that no colour can be read from."""


def quoted(text: str) -> str:
    """The text between quotation marks, cut short; control characters become a harmless mark."""
    short = text if len(text) <= LONGEST_QUOTE else text[: LONGEST_QUOTE - 1] + "…"
    return "“" + "".join(one if one.isprintable() else "�" for one in short) + "”"
