"""Fastness tried at home: a rub, a wash, a sunny window, each two readings and the grade they give. Pure.

A rub is read on the white cloth (how much it was stained), a wash and a window on the fibre (how much it changed).
What to do by the grade is our own choice; that loose dye is washed out again is common practice, no source.
"""

from dataclasses import dataclass

from dyesession.colour.ciede2000 import de00
from dyesession.colour.grey_scales import Grade, change_of_colour, staining
from dyesession.colour.readings import Reading, plus_minus_between
from dyesession.colour.typed import read_colour
from dyesession.colour.written import written
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.fold import Entry, effective


class NoSuchTest(UserError):
    """A test of fastness that is not known, or that is short of a reading."""


@dataclass(frozen=True)
class FastnessTest:
    """One test: its name in a log, what is read twice, how it is done, and the word for what is graded."""

    what: str
    of: str
    do: str
    graded: str

    @property
    def stains(self) -> bool:
        """Whether a white cloth is read, and not the fibre."""
        return self.graded == "staining"


TESTS = (
    FastnessTest(
        "rub test", "the white cloth",
        "Read a white cotton cloth, rub the dry skein with it ten times, let it lie, read the rubbed spot; once more "
        "with the cloth damp.", "staining",
    ),
    FastnessTest(
        "wash test", "the fibre",
        "Read a strand, wash it by itself in warm water with a neutral wash, let it dry in the shade, read it again.",
        "change",
    ),
    FastnessTest(
        "window test", "the strand's sunny half",
        "Cover half of a strand, read the other half, hang it in a sunny window for four weeks, read that half again.",
        "change",
    ),
)  # fmt: skip
COMES_OFF = (
    "Colour on a white cloth or on your hands is dye that was never fixed. Wash it once more, warm, with a neutral wash, "
    "until the water stays clear; let it dry, and rub it on a white cloth again. Until then keep it from anything white."
)
NOTHING_TO_TELL = "none that these readings can tell"
# Grades down to which a skein is fit for use, and to which one more wash is worth while: our own choice.
_FIT_FROM, _WASH_FROM = 4.0, 3.0


@dataclass(frozen=True)
class Tried:
    """What a test gave: the grade in words, what to do, and the entry that belongs in the log."""

    grade: Grade
    words: str
    advice: str
    entry: e.Cared


def test_named(what: str) -> FastnessTest:
    """The test meant by "rub", "wash test", "window". Raises `NoSuchTest`."""
    word = what.strip().casefold().removesuffix(" test")
    found = next((one for one in TESTS if one.what.removesuffix(" test") == word), None)
    if found is None:
        raise NoSuchTest(
            f"“{what}” is no test of fastness known here; expected rub test, wash test or window test, for example "
            '"rub test".'
        )
    return found


def tried(test: FastnessTest, before: Reading, after: Reading, lot: str = "") -> Tried:
    """Grade a test. Raises `Unlike` for wet readings or those of unlike lights."""
    grade = staining(before, after) if test.stains else change_of_colour(before, after)
    apart, plus_minus = de00(before.lab, after.lab), plus_minus_between(before, after)
    words = grade.words if apart > plus_minus else NOTHING_TO_TELL
    words = f"{test.graded}: {words}"
    entry = e.Cared(test.what, lot, before=written(before), after=written(after), grade=words)
    return Tried(grade, words, _advice(test, grade, apart <= plus_minus), entry)


def _advice(test: FastnessTest, grade: Grade, nothing: bool) -> str:
    if nothing or grade.grade >= _FIT_FROM:
        return "Fit for use."
    if test.what == "window test":
        return "It fades: keep it for what is worn indoors or seldom; more light will take more of it."
    if test.stains:
        return COMES_OFF if grade.grade < _WASH_FROM else "A little comes off: wash it once more, and rub it again."
    return "It changes in the wash: wash it apart and cool, and read it again after the next wash."


def before_of(entries: tuple[Entry, ...], test: FastnessTest, lot: str) -> Reading | None:
    """The first reading of a test that was begun earlier, such as a strand hung in the window."""
    told = [
        one.event
        for one in effective(entries)
        if isinstance(one.event, e.Cared) and one.event.what == test.what and one.event.lot == lot
    ]
    last = told[-1] if told else None
    return read_colour(last.before) if last is not None and last.before and not last.after else None


def begun(test: FastnessTest, before: Reading, lot: str = "") -> e.Cared:
    """The entry of a test whose second reading comes later."""
    return e.Cared(test.what, lot, result=f"begun; {test.of} read before", before=written(before))
