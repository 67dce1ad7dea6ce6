"""Letters and digits made of blocks, to be read from across a kitchen. Knows nothing of what they say.

Our own bitmaps, five rows high. A capital wants 16 to 22 minutes of arc (NUREG-0700 Rev. 2, guideline
1.3.1-4): 9 to 13 mm at two metres. On a small laptop's 24 rows that is a row and a half; the smallest
face has two and a half.
"""

import unicodedata
from dataclasses import dataclass
from functools import lru_cache

from dyesession.ui.plain import plain

# One entry per character: five rows, `#` is ink. Lower case is drawn as capitals.
_BITMAPS = {
    "0": "### #.# #.# #.# ###", "1": "##. .#. .#. .#. ###", "2": "### ..# ### #.. ###",
    "3": "### ..# ### ..# ###", "4": "#.# #.# ### ..# ..#", "5": "### #.. ### ..# ###",
    "6": "### #.. ### #.# ###", "7": "### ..# ..# ..# ..#", "8": "### #.# ### #.# ###",
    "9": "### #.# ### ..# ###", ":": ". # . # .", ".": ". . . . #", ",": ".. .. .. .# #.",
    "-": "... ... ### ... ...", "±": ".#. ### .#. ... ###", "%": "#.# ..# .#. #.. #.#",
    "/": "..# ..# .#. #.. #..", "°": "## ## .. .. ..", "?": "### ..# .## ... .#.", "!": "# # # . #",
    "+": "... .#. ### .#. ...", "→": "..#. ...# #### ...# ..#.", "~": ".... .#.# #.#. .... ....",
    "'": "# # . . .", "(": ".# #. #. #. .#", ")": "#. .# .# .# #.", "A": "### #.# ### #.# #.#",
    "B": "##. #.# ##. #.# ##.", "C": "### #.. #.. #.. ###", "D": "##. #.# #.# #.# ##.",
    "E": "### #.. ##. #.. ###", "F": "### #.. ##. #.. #..", "G": "### #.. #.# #.# ###",
    "H": "#.# #.# ### #.# #.#", "I": "# # # # #", "J": "..# ..# ..# #.# ###",
    "K": "#.# #.# ##. #.# #.#", "L": "#.. #.. #.. #.. ###", "M": "#...# ##.## #.#.# #...# #...#",
    "N": "#..# ##.# #.## #..# #..#", "O": "### #.# #.# #.# ###", "P": "### #.# ### #.. #..",
    "Q": "### #.# #.# ### ..#", "R": "##. #.# ##. #.# #.#", "S": ".## #.. .#. ..# ##.",
    "T": "### .#. .#. .#. .#.", "U": "#.# #.# #.# #.# ###", "V": "#.# #.# #.# #.# .#.",
    "W": "#...# #...# #.#.# ##.## #...#", "X": "#.# #.# .#. #.# #.#", "Y": "#.# #.# .#. .#. .#.",
    "Z": "### ..# .#. #.. ###", " ": ". . . . .",
}  # fmt: skip
_GLYPHS = {char: tuple(rows.split(" ")) for char, rows in _BITMAPS.items()}
_ROWS = 5
# Upper and lower half of a cell inked: the four block characters.
_HALVES = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}


@dataclass(frozen=True)
class Face:
    """A size of block text: cells across each dot of a digit, half rows down each dot, cells between."""

    across: tuple[int, int, int]
    halves: int
    gap: int

    @property
    def rows(self) -> int:
        """Rows of the screen that the face takes."""
        return -(-_ROWS * self.halves // 2)


def even_face(size: int) -> Face:
    """A face whose dots are `size` cells wide and `size` half rows high: square on most terminals."""
    return Face((size, size, size), size, size)


SMALL, BIG = even_face(1), even_face(2)
# Digits for narrow pots: full height, less width. Upright strokes stay two cells as long as they can.
SNUG = Face((2, 1, 2), 2, 1)
NARROW = Face((1, 2, 1), 2, 1)
CLOCK_FACES = (even_face(4), even_face(3), BIG, SNUG, NARROW)


def _letters(text: str) -> str:
    """The text in the characters there are bitmaps for: capitals, accents taken off, single spaces."""
    bare = "".join(
        c for c in unicodedata.normalize("NFKD", plain(text).upper()) if not unicodedata.combining(c)
    )
    return " ".join(bare.split())


def _glyph_width(glyph: tuple[str, ...], face: Face) -> int:
    dots = len(glyph[0])
    return sum(face.across) if dots == 3 else dots * face.across[0]


@lru_cache(maxsize=512)
def block_width(text: str, face: Face) -> int | None:
    """Cells the text takes in a face, or None where a character has no bitmap or there is no text."""
    glyphs = [_GLYPHS.get(char) for char in _letters(text)]
    if not glyphs or None in glyphs:
        return None
    return sum(_glyph_width(glyph, face) for glyph in glyphs if glyph) + face.gap * (len(glyphs) - 1)


def _dots_across(row: str, face: Face) -> str:
    widths = face.across if len(row) == 3 else (face.across[0],) * len(row)
    return "".join(dot * width for dot, width in zip(row, widths, strict=True))


@lru_cache(maxsize=512)
def block_rows(text: str, face: Face) -> tuple[str, ...] | None:
    """The text as rows of block characters, all equally wide; None where it cannot be drawn so."""
    if block_width(text, face) is None:
        return None
    gap = "." * face.gap
    dots = [
        gap.join(_dots_across(_GLYPHS[char][row], face) for char in _letters(text)) for row in range(_ROWS)
    ]
    halves = [dots[index // face.halves] for index in range(_ROWS * face.halves)]
    if len(halves) % 2:
        halves.append("." * len(halves[0]))
    return tuple(
        "".join(_HALVES[(up == "#", down == "#")] for up, down in zip(upper, lower, strict=True))
        for upper, lower in zip(halves[::2], halves[1::2], strict=True)
    )


def largest_face(text: str, width: int, rows: int, faces: tuple[Face, ...] = CLOCK_FACES) -> Face | None:
    """The first of the faces, largest first, in which the text fits; None where none does."""
    for face in faces:
        needed = block_width(text, face)
        if needed is not None and needed <= width and face.rows <= rows:
            return face
    return None


def faces_up_to(rows: int) -> tuple[Face, ...]:
    """Every face for a clock that has a whole room of so many rows to itself, largest first."""
    big = [even_face(size) for size in range(max(3, rows), 2, -1)]
    return (*(face for face in big if face.rows <= rows), *(face for face in CLOCK_FACES if face.halves <= 2))
