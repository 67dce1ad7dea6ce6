"""The fibre as it lies on the table: read from what is typed, and checked before anything is reckoned on it.

Knows no recipe. A dose is a share of the washed, air-dry weight; a damp weight is the largest single error a
dyer can make, so it is refused as a base. Raw wool often loses a fifth in washing: Mairet, A Book on
Vegetable Dyes, 1916, ch. I.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from dyesession.dyeing.fibres import CELLULOSE, SILK, WOOL
from dyesession.plan.model import FibreLot
from dyesession.plan.trouble import PlanError
from dyesession.units import quoted, read_fibre, show_mass

KINDS = (*WOOL, *SILK, *CELLULOSE)
BREED_WORDS = {
    "merino": "wool",
    "lambswool": "wool",
    "shetland": "wool",
    "mulberry": "silk",
    "tussah": "silk",
}
FORMS = {
    "fleece": "fleece", "locks": "fleece",
    "combed": "combed", "top": "combed", "tops": "combed", "roving": "combed", "rovings": "combed",
    "sliver": "combed",
    "yarn": "yarn", "yarns": "yarn", "skein": "yarn", "skeins": "yarn", "hank": "yarn", "hanks": "yarn",
    "handspun": "yarn", "thread": "yarn",
    "cloth": "cloth", "fabric": "cloth", "scarf": "cloth", "shirt": "cloth", "felt": "cloth",
}  # fmt: skip
DAMP_WORDS = frozenset(("damp", "wet", "moist"))
DRY_WORDS = frozenset(("dry", "air-dry", "airdry", "dried"))
RAW_WORDS = frozenset(("raw", "unwashed", "greasy", "grease"))
SMALL_WORDS = frozenset(
    ("of", "in", "the", "and", "when", "last", "as", "it", "comes", "weight", "air", "washed", "scoured")
)
RAW_FORM = "raw"
WASHING_LOSS = "a fifth"  # Mairet 1916, ch. I

_PARTS = re.compile(r"\s*(?:;|,\s+|\band\b)\s*(?=\d)")


@dataclass(frozen=True)
class _Part:
    """One weight of a text and what its words say."""

    mass_g: float
    words: tuple[str, ...]

    def says(self, words: frozenset[str]) -> bool:
        return not words.isdisjoint(self.words)


def lot_from_text(text: str, default_kind: str) -> FibreLot:
    """Read one lot: `240 g wool`, `165 g large skein`, `212 g damp, 148 g dry wool`.

    The lot is named by its own words, else by its kind. Raises the errors of `units.read_fibre`, and
    `PlanError` for a range, for three weights, or for two of which none is damp.
    """
    parts = [_part(piece) for piece in _PARTS.split(text.strip())]
    damp = [part for part in parts if part.says(DAMP_WORDS)]
    dry = [part for part in parts if part not in damp]
    if len(damp) > 1 or len(dry) > 1:
        raise PlanError(
            f"{quoted(text)} holds several weights; expected one lot, or its damp and its dry weight, for"
            " example"
            " “212 g damp, 148 g dry wool”."
        )
    words = tuple(word for part in parts for word in part.words)
    return _lot(text, words, damp[0].mass_g if damp else None, dry[0] if dry else None, default_kind)


def lots_from_text(texts: Sequence[str], default_kind: str) -> tuple[FibreLot, ...]:
    """Read the lots of a day, one text each; lots that would share a name are numbered."""
    lots = [lot_from_text(text, default_kind) for text in texts]
    names = [lot.name for lot in lots]
    if len(set(names)) == len(names):
        return tuple(lots)
    return tuple(
        replace(lot, name=f"lot {i}") if names.count(lot.name) > 1 else lot
        for i, lot in enumerate(lots, start=1)
    )


def _part(text: str) -> _Part:
    read = read_fibre(text)
    if read.mass.is_range:
        raise PlanError(
            f"{quoted(text)} is a range; expected the one weight of this fibre, for example “240 g wool”."
        )
    if read.mass.low <= 0:
        raise PlanError(
            f"{quoted(text)} is no weight of fibre; expected more than nothing, for example “240 g wool”."
        )
    return _Part(float(read.mass.low), tuple(read.words.split()))


def _lot(
    text: str, words: Sequence[str], damp_g: float | None, dry: _Part | None, default_kind: str
) -> FibreLot:
    kind = next((known for word in words if (known := _kind(word))), default_kind)
    form = next((FORMS[word.casefold()] for word in words if word.casefold() in FORMS), "")
    raw = any(word.casefold() in RAW_WORDS for word in words)
    air_dry: bool | None = None
    if dry is None:
        air_dry = False
    elif damp_g is not None or dry.says(DRY_WORDS):
        air_dry = True
    name = " ".join(word for word in words if not _is_plain(word)).strip(" ,;:")
    return FibreLot(
        name=name or kind,
        kind=kind,
        mass_g=dry.mass_g if dry is not None else damp_g or 0.0,
        form=RAW_FORM if raw else form,
        air_dry=air_dry,
        damp_mass_g=damp_g,
        words=text.strip(),
    )


def _kind(word: str) -> str:
    spoken = word.casefold().strip(",;:")
    if spoken in KINDS:
        return spoken
    return BREED_WORDS.get(spoken, "")


def _is_plain(word: str) -> bool:
    """Say whether a word tells kind or state, and so is no name."""
    spoken = word.casefold().strip(",;:")
    return bool(_kind(word)) or spoken in DAMP_WORDS | DRY_WORDS | RAW_WORDS | SMALL_WORDS


def checked_mass_g(lots: Sequence[FibreLot]) -> float:
    """Return the grams of all lots together, every one of them fit to reckon on.

    Raises `PlanError` for no lots, two of one name, no weight, and for a damp lot whose dry weight is not
    known.
    """
    if not lots:
        raise PlanError("There is no fibre to dye; expected at least one lot, for example 240 g wool.")
    names = [lot.name for lot in lots]
    for lot in lots:
        if names.count(lot.name) > 1:
            raise PlanError(
                f"Two lots are called {quoted(lot.name)}; expected a name for each, for example lot 1."
            )
        _check(lot)
    return sum(lot.mass_g for lot in lots)


def _check(lot: FibreLot) -> None:
    if not 0 < lot.mass_g < float("inf"):
        raise PlanError(
            f"The lot {quoted(lot.name)} weighs {lot.mass_g:g} g; expected more than nothing, say 240 g."
        )
    damp_g = lot.damp_mass_g
    if lot.air_dry is False:
        raise PlanError(
            f"{show_mass(damp_g or lot.mass_g)} is not the washed, air-dry weight of the {lot.name}, so"
            " no dose can be"
            " reckoned on it: let it lie in the room for a day, weigh it again, and give both, for example"
            " “212 g damp, 148 g dry wool”."
        )
    if damp_g is not None and damp_g < lot.mass_g:
        raise PlanError(
            f"The {lot.name} weighs {show_mass(damp_g)} damp and {show_mass(lot.mass_g)} dry; the damp"
            " weight must be"
            " the larger, for example “212 g damp, 148 g dry wool”."
        )


def lot_warnings(lots: Sequence[FibreLot], meant_for: Sequence[str]) -> list[str]:
    """Say what speaks against a lot: another kind of fibre than the recipe's, or not washed."""
    said: list[str] = []
    known = [kind.casefold() for kind in meant_for]
    for lot in lots:
        if lot.kind.casefold() not in known:
            said.append(
                f"The recipe is meant for {' or '.join(meant_for)}; the {lot.name} is {lot.kind}: try a"
                " snippet."
            )
        if lot.form == RAW_FORM:
            said.append(
                f"The {lot.name} is not washed: raw wool often loses {WASHING_LOSS} of its weight in"
                " washing, and every"
                " dose would be that much too high; wash it, let it dry a day and weigh it again."
            )
    return said


def lot_questions(lots: Sequence[FibreLot]) -> list[str]:
    """Ask about the lots nobody has called washed and air-dry yet."""
    return [
        f"Is the {lot.name}, {show_mass(lot.mass_g)}, washed and air-dry?"
        for lot in lots
        if lot.air_dry is None
    ]
