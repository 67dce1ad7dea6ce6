"""Labels for kept baths, stocks and jars, as plain data; `label_print` sets them on paper.

The fields are those that CLP article 17 (Reg. 1272/2008) and 29 CFR 1910.1200(f) ask of a seller, as far as
a home jar can have them: neither binds a home. One simplification of our own: the signal word is that of the
undiluted stuff, though a thin bath may be classed lower.
"""

from dataclasses import dataclass, field
from datetime import date, timedelta

from dyesession.care.keeping import is_organic, keeping
from dyesession.care.scene import Item, litres, tidy
from dyesession.care.situation import Content, Household
from dyesession.care.wording import centre_words
from dyesession.substances import VERDICTS, find, wording

HEADING = "NOT FOOD: DYE"
SIGNAL_NOTE = "as if undiluted (own choice)"
MOST_PICTOGRAMS = 3
MOST_HAZARDS = 3
_LONGEST_FIELD = 160  # characters of a dyer's own words that a label has room for
_SIGNALS = ("", "Warning", "Danger")
_PICTOGRAM_ORDER = ("GHS06", "GHS05", "GHS08", "GHS02", "GHS03", "GHS07", "GHS09")  # own choice: worst first
_GRAVE = frozenset(
    ("EUH031", "H301", "H310", "H314", "H318", "H330", "H334", "H340", "H350", "H360", "H360FD", "H372")
)
_EVERYBODYS = ("children", "pets", "drink bottles")

# What is kept away from the jar: those that bear one of the traits, from the thing named. Reasons: `apart`.
_AVOIDS = (
    (("acid", "ammonia", "alcohol", "peroxide", "reducing"), "bleach"),
    (("reducing", "carbonate", "lye", "lime", "bleach"), "acid"),
    (("acid", "bleach", "peroxide"), "dithionite"),
    (("acid",), "chalk and soda"),
    (("acetic", "iron", "copper", "ammonia", "reducing", "bleach"), "peroxide"),
    (("peroxide",), "vinegar"),
    (("peroxide", "tannin"), "iron"),
    (("lye", "lime", "alkali"), "ammonium salts"),
    (("flammable",), "flames"),
)
_AVOIDS_DRY = ((("damp fire",), "damp"), (("damp fire",), "flames"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Stored:
    """A bath put by, a stock or a jar, as its label needs to know it; only `what` and `made` must be given.

    `history` is what has been through it, `left` what the account reckons is left of its dose, in words with
    their ±. `look_again` is the dyer's own date; without one the date follows from `keeping`. `form` and
    `place` are the words of `keeping`. `number` is the bath's number as the log has it.
    """

    what: str
    made: date
    contents: tuple[Content, ...] = ()
    history: str = ""
    left: str = ""
    volume_l: float | None = None
    ph: float | None = None
    ph_on: date | None = None
    look_again: date | None = None
    place: str = "room"
    form: str = "bath"
    number: str = ""
    sheet_at: str = ""
    owner: str = ""
    phone: str = ""
    poison_centre: str = ""
    household: Household = field(default_factory=Household)


@dataclass(frozen=True, slots=True)
class Label:
    """A label's fields, ready to be printed; "" where nothing is known of an optional one.

    `pictograms` are (code, word) pairs: never a colour alone.
    """

    heading: str
    what: str
    history: str
    worst: str
    signal_word: str
    pictograms: tuple[tuple[str, str], ...]
    hazards: tuple[str, ...]
    left: str
    ph: str
    made: date
    look_again: date
    look_again_source: str
    keep_from: tuple[str, ...]
    lid: str
    sheet: str
    owner: str
    ring: str
    number: str

    def rows(self) -> tuple[tuple[str, str], ...]:
        """The label as (field, text) in the order it is read; fields nobody filled are left out."""
        signs = ", ".join(f"{code} {word}" for code, word in self.pictograms)
        signal = f"{self.signal_word.upper()}, {SIGNAL_NOTE}" if self.signal_word else "no signal word known"
        rows = (
            ("this is", self.what),
            ("went through", self.history),
            ("worst in it", "; ".join(part for part in (self.worst, signal, signs) if part)),
            ("hazards", "; ".join(self.hazards)),
            ("left in it", self.left),
            ("pH", self.ph),
            ("made", self.made.isoformat()),
            ("look again", f"by {self.look_again.isoformat()} ({self.look_again_source})"),
            ("keep from", ", ".join(self.keep_from)),
            ("lid", self.lid),
            ("sheet", self.sheet),
            ("whose", self.owner),
            ("swallowed", f"ring {self.ring}"),
            ("log", self.number),
        )
        return tuple(row for row in rows if row[1])


def label_of(stored: Stored) -> Label:
    """The label of what is stored. Raises ValueError for a place or a form that `keeping` does not know."""
    items = tuple(Item(name, find(name), mass_g, "") for name, mass_g in stored.contents)
    worst = max(items, key=_badness, default=None)
    keeps = keeping(stored.contents, stored.place, stored.form)
    signals = (item.substance.signal_word for item in items if item.substance)
    return Label(
        heading=HEADING,
        what=_what(stored),
        history=_own(stored.history),
        worst=_worst_words(worst),
        signal_word=max(signals, key=_SIGNALS.index, default=""),
        pictograms=_pictograms(worst),
        hazards=_hazards(worst),
        left=_own(stored.left),
        ph=_ph(stored),
        made=stored.made,
        look_again=stored.look_again or stored.made + timedelta(days=keeps.days),
        look_again_source="your own date" if stored.look_again else keeps.source,
        keep_from=_keep_from(items, stored.form),
        lid=_lid(items, stored.form),
        sheet=_own(stored.sheet_at) or "not noted: ask the seller for it",
        owner=_own(", ".join(part for part in (stored.owner, stored.phone) if part)),
        ring=centre_words(stored.poison_centre),
        number=_own(stored.number),
    )


def label_as_json(label: Label) -> dict[str, object]:
    """The label as a table of plain values."""
    return {
        "heading": label.heading,
        **dict(label.rows()),
        "signal_word": label.signal_word,
        "pictograms": [{"code": code, "word": word} for code, word in label.pictograms],
        "made": label.made.isoformat(),
        "look_again": label.look_again.isoformat(),
        "look_again_source": label.look_again_source,
    }


def _badness(item: Item) -> tuple[bool, int, int, int]:
    """What nobody knows is the worst; then signal word, verdict, number of codes."""
    known = item.substance
    if known is None:
        return (True, 0, 0, 0)
    return (False, _SIGNALS.index(known.signal_word), VERDICTS.index(known.home_use), len(known.codes))


def _worst_words(item: Item | None) -> str:
    if item is None:
        return "nothing noted: treat it as unknown"
    if item.substance is None:
        return f"{item.word}, whose hazards are not known here"
    return item.amount if item.word == item.substance.key else f"{item.amount} ({item.substance.key})"


def _pictograms(item: Item | None) -> tuple[tuple[str, str], ...]:
    if item is None or item.substance is None:
        return ()
    codes = sorted(item.substance.pictograms, key=_PICTOGRAM_ORDER.index)[:MOST_PICTOGRAMS]
    return tuple((code, wording().pictogram[code]) for code in codes)


def _hazards(item: Item | None) -> tuple[str, ...]:
    """The first few codes in plain words, gravest class of a sheet first as its codes are numbered."""
    if item is None or item.substance is None:
        return ()
    graver = sorted(item.substance.codes, key=lambda code: (code not in _GRAVE, code))
    return tuple(f"{code} {wording().code[code]}" for code in graver[:MOST_HAZARDS])


def _keep_from(items: tuple[Item, ...], form: str) -> tuple[str, ...]:
    listed = _AVOIDS + (_AVOIDS_DRY if form == "dry" else ())
    avoided = (word for traits, word in listed if any(item.has(*traits) for item in items))
    return (*_EVERYBODYS, *avoided)


def _lid(items: tuple[Item, ...], form: str) -> str:
    if form == "dry":
        return "shut tight, and dry"
    metal = ", not of bare metal" if any(item.has("acid", "alkali", "copper") for item in items) else ""
    works = not items or any(is_organic(item.substance) or item.has("reducing") for item in items)
    return f"{'loose' if works or form == 'bath' else 'closed'}{metal}"


def _what(stored: Stored) -> str:
    volume = "" if stored.volume_l is None else f", {litres(stored.volume_l)}"
    inside = ", ".join(Item(name, find(name), mass_g, "").amount for name, mass_g in stored.contents)
    return f"{_own(stored.what)}{volume}" + (f": {inside}" if inside else "")


def _ph(stored: Stored) -> str:
    if stored.ph is None:
        return "not measured"
    when = f", measured {stored.ph_on.isoformat()}" if stored.ph_on else ""
    return f"{stored.ph:.1f}{when}"


def _own(text: str) -> str:
    return tidy(text, _LONGEST_FIELD)
