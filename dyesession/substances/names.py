"""Finding a substance by what a dyer types: case, plural, hyphen, spelling and form words set aside.

A name must be met whole: `chrome` is a substance, `chrome yellow wool` is not. No figures here.
"""

import re
import unicodedata
from collections.abc import Iterator, Mapping
from functools import cache, lru_cache

from dyesession.substances.loader import load
from dyesession.substances.model import VERDICTS, Form, Substance

Words = tuple[str, ...]

_LINKS = frozenset({"of", "the", "and", "a", "in", "or"})

# Words that say how the stuff was bought or cut, not what it is; set aside only if the whole name is unknown.
_FORM_WORDS = frozenset(
    (
        *("powder", "powdered", "ground", "whole", "chopped", "cut", "chip", "shaving", "flake"),
        *("crystal", "crystalline", "granule", "granular", "granulated", "fine", "finely", "raw"),
        *("dried", "dry", "fresh", "solution", "stock", "strong", "weak", "mordant"),
        *("pure", "natural", "organic", "food", "grade", "anhydrous", "hydrated"),
        *("monohydrate", "dihydrate", "pentahydrate", "heptahydrate", "decahydrate"),
        *("dodecahydrate", "tetradecahydrate", "octadecahydrate"),
    )
)

_SPELLINGS = {"aluminum": "aluminium", "leaves": "leaf", "leafs": "leaf", "potassic": "potassium"}
_KEEP_FINAL_S = ("ss", "us", "is")
_OXIDATION_STATE = re.compile(r"\((i{1,3}|iv|vi)\)")
_PARTS = re.compile(r"[()\[\]/;,]|\bor\b")
_FEWEST_LETTERS = 4  # shorter words in common are chance
_CAS = re.compile(r"\b\d{2,7}-\d\d-\d\b")
_PERCENT = re.compile(r"(?<![\d.,])(\d{1,3}(?:[.,]\d+)?)\s*(?:%|per\s?cent)")
_STRENGTH = re.compile(r"(?:\d[\d.,]*\s*(?:-|–|to)\s*)?\d[\d.,]*\s*(?:%|per\s?cent)")
_ALL = 100.0


def find(text: str) -> Substance | None:
    """The substance this text names, or None.

    A text that names several ("copperas (ferrous sulphate)", "copper or chrome") gives the strictest; so
    does a CAS number that two of them share.
    """
    whole = _lookup(text) or _by_number(text)
    if whole is not None:
        return whole
    parts = [found for part in _PARTS.split(_folded(text)) if (found := _lookup(part)) is not None]
    return max(parts, key=_strictness, default=None)


def form_named(text: str) -> Form | None:
    """The form on the packet this text names ("dried alum", "ferrous sulphate monohydrate"), or None."""
    wanted = _words(text)
    forms = (form for substance in load().values() for form in substance.forms)
    return next((form for form in forms if wanted and _words(form.name) == wanted), None)


def strength_percent(text: str) -> float | None:
    """The strength a dyer gave with a name ("3 % peroxide", "vinegar 5-8 %"), or None.

    Per cent by mass, 0 to 100; of a range the stronger end.
    """
    stated = [float(number.replace(",", ".")) for number in _PERCENT.findall(text)]
    return max((percent for percent in stated if percent <= _ALL), default=None)


def nearest(text: str, most: int = 3) -> tuple[str, ...]:
    """Keys of the substances most like this text, best first; empty when nothing comes near."""
    from difflib import get_close_matches

    wanted = _words(text)
    names = {" ".join(words): key for words, key in _index().items()}
    close = get_close_matches(" ".join(wanted), names, n=most, cutoff=0.75)
    sharing = (key for words, key in _index().items() if _share_a_word(words, wanted))
    return tuple(dict.fromkeys([*(names[name] for name in close), *sharing]))[:most]


def _lookup(text: str) -> Substance | None:
    words = _words(text)
    bare = tuple(word for word in words if word not in _FORM_WORDS)
    key = _index().get(words) or _index().get(bare)
    return load()[key] if key else None


def _by_number(text: str) -> Substance | None:
    number = text.strip()
    if not _CAS.fullmatch(number):
        return None
    bearing = (one for one in load().values() if number in _CAS.findall(f"{one.cas} {one.cas_note}"))
    return max(bearing, key=_strictness, default=None)


@cache
def _index() -> Mapping[Words, str]:
    index: dict[Words, str] = {}
    for substance in load().values():
        for name in (substance.key, *substance.names):
            index.setdefault(_words(name), substance.key)
    return index


@lru_cache(maxsize=2048)  # the same few names are looked up at every act
def _words(text: str) -> Words:
    """The words of a name, in spelling order, so that "tartar, cream of" is "cream of tartar"."""
    return tuple(sorted(word for word in _spelt(text) if word not in _LINKS))


def _spelt(text: str) -> Iterator[str]:
    for word in re.findall(r"[^\W_]+", _STRENGTH.sub(" ", _folded(text))):
        if not word.isdigit():
            yield _singular(_SPELLINGS.get(word, word).replace("sulph", "sulf"))


def _folded(text: str) -> str:
    apart = unicodedata.normalize("NFKD", text).casefold()
    letters = "".join(c for c in apart if not unicodedata.combining(c) and c not in "'’‘")
    return _OXIDATION_STATE.sub(r" \1 ", letters)


def _singular(word: str) -> str:
    return word[:-1] if word.endswith("s") and not word.endswith(_KEEP_FINAL_S) else word


def _strictness(substance: Substance) -> int:
    return VERDICTS.index(substance.home_use)


def _share_a_word(one: Words, other: Words) -> bool:
    return any(len(word) >= _FEWEST_LETTERS for word in set(one) & set(other) - _FORM_WORDS)
