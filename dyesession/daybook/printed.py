"""A review as plain lines for a terminal or a sheet of paper: the steps first, then doses, baths, what was
said.

Knows no screens. Lines are wrapped to the width asked for, where their words allow.
"""

import textwrap
from collections.abc import Callable, Iterable
from datetime import datetime

from dyesession.daybook.model import (
    Asked,
    BathLine,
    BathReview,
    CorrectionReview,
    DoseReview,
    KeptReview,
    Rang,
    Review,
    StepReview,
    Stretch,
)
from dyesession.daybook.pictures import heat_lines, lanes_lines
from dyesession.session.words import day_text
from dyesession.units import show_duration, show_mass, show_range, show_temperature, show_volume
from dyesession.units.show import Figure

LEAST_WIDTH = 40
ESTIMATES_SHOWN = 6
WORTH_A_WORD_G = 0.5  # less of a thing in a bath is left out of the printed lines; our own choice, no source
_BEFORE = {
    "strained": "straining", "pooled": "pouring", "lifted": "lifting out of", "kept": "putting by what is in",
    "discarded": "emptying", "added": "adding to",
}  # fmt: skip


def review_lines(review: Review, width: int) -> list[str]:
    """The whole review, line by line, wrapped to `width` columns (40 or more)."""
    wrap = _wrapper(max(width, LEAST_WIDTH))
    lines = wrap("", _head(review))
    lines += _section("The shade", review.shades, wrap)
    lines += _section("What went otherwise than planned", review.otherwise, wrap)
    drawn = lanes_lines(review.steps, max(width, LEAST_WIDTH))
    lines += ["", *wrap("", ["The day, in hours from its opening: dots as planned, hashes as it was"]), *drawn] if drawn else []
    lines += _section("Heat, wanted and read", heat_lines(review.curves), wrap)
    lines += _section("Steps, planned and actual", (_step(review, one) for one in review.steps), wrap)
    lines += _section("Doses, planned and weighed", (dose_words(one) for one in review.doses), wrap)
    lines += _section("Cost, by the prices in your kitchen then", [review.cost] if review.cost else (), wrap)
    for bath in review.baths:
        lines += _section(bath_heading(bath), bath_words(review, bath), wrap)
    lines += _section("Your own numbers that the estimates started from", review.starts_from, wrap)
    lines += _section("Readings", (f"{_at(review, one.at)} {one.text}" for one in review.readings), wrap)
    lines += _section("Asked", (_asked(review, one) for one in review.asks), wrap)
    lines += _section("Alarms", (_alarm(review, one) for one in review.alarms), wrap)
    lines += _section("Corrections", (_correction(one) for one in review.corrections), wrap)
    lines += _section("Does not fit", (f"entry {one.n}: {one.text}" for one in review.flags), wrap)
    lines += _section("Reminders shown", _reminders(review), wrap)
    lines += _section("Notes", (f"{_at(review, one.at)} {one.text}" for one in review.notes), wrap)
    lines += _section("Aftercare", (f"{_at(review, one.at)} {one.text}" for one in review.aftercare), wrap)
    lines += _section("Kept baths", (_kept(one) for one in review.kept_baths), wrap)
    lines += _section("The file", review.file_notes, wrap)
    return lines


def _wrapper(width: int) -> Callable[[str, Iterable[str]], list[str]]:
    def wrap(indent: str, texts: Iterable[str]) -> list[str]:
        return [
            line
            for text in texts
            for line in textwrap.wrap(text, width, initial_indent=indent, subsequent_indent=f"{indent}  ")
        ]

    return wrap


def _section(
    heading: str, texts: Iterable[str], wrap: Callable[[str, Iterable[str]], list[str]]
) -> list[str]:
    said = wrap("  ", texts)
    return ["", *wrap("", [heading]), *said] if said else []


def _at(review: Review, moment: datetime) -> str:
    """A time of day, and the day where it is not the one the day was opened on."""
    text = day_text(moment, review.opened)
    return text.replace(" tomorrow", " next day")


def _head(review: Review) -> list[str]:
    kind = "a rehearsal of " if review.rehearsal else ""
    lines = [f"{review.session}: {kind}{review.recipe}"]
    closed = f", closed {_at(review, review.closed)}" if review.closed else f", {review.status}"
    lines.append(f"opened {review.opened:%Y-%m-%d %H:%M}{closed}; {review.program or 'program not named'}")
    return [*lines, f"verdict: {review.verdict}"] if review.verdict else lines


def _step(review: Review, step: StepReview) -> str:
    where = f" ({step.vessel})" if step.vessel else ""
    actual = _actual(review, step.actual) if step.actual.start is not None else "not begun"
    planned = f"; planned {_planned(step.planned)}" if step.planned and _planned(step.planned) else ""
    why = f", {step.why}" if step.why else ""
    early = f", begun early: {step.early}" if step.early else ""
    return f"{step.name}{where}: {step.status}{why}{early}. {actual}{planned}"


def _actual(review: Review, stretch: Stretch) -> str:
    pieces = [_at(review, stretch.start)] if stretch.start else []
    if stretch.end is not None:
        pieces = [f"{pieces[0]} to {_at(review, stretch.end)}"]
    return ", ".join([*pieces, *_heat(stretch)])


def _planned(stretch: Stretch) -> str:
    pieces = []
    if stretch.start_min is not None and stretch.end_min is not None:
        pieces.append(show_duration(round(stretch.end_min - stretch.start_min)))
    return ", ".join([*pieces, *_heat(stretch)])


def _heat(stretch: Stretch) -> list[str]:
    pieces = []
    if stretch.held_min is not None:
        pieces.append(f"held {show_duration(round(stretch.held_min))}")
    if stretch.temperature_c is not None:
        how = f", {stretch.temperature_how}" if stretch.temperature_how == "read" else ""
        pieces.append(f"{show_temperature(stretch.temperature_c)}{how}")
    return pieces


def dose_words(dose: DoseReview) -> str:
    """A dose in one line: planned, put in, how far off."""
    planned = f"planned {show_mass(dose.planned_g.aim)}" if dose.planned_g else "not planned"
    if dose.added_g is None:
        return f"{dose.ingredient}: {planned}, not put in"
    off = dose.off_percent
    apart = f" ({off:+.0f} %)" if off is not None and abs(off) >= 0.5 else ""
    return f"{dose.ingredient}: {planned}, put in {show_mass(dose.added_g)}{apart}, {dose.how}"


def bath_heading(bath: BathReview) -> str:
    """What stands above the lines of a bath."""
    named = f"Kept bath “{bath.vessel}”" if bath.kept else f"Bath in the {bath.vessel}"
    return f"{named}, shown then and reckoned now"


def bath_words(review: Review, bath: BathReview) -> list[str]:
    """The last few times this bath changed to the eye, each beside what is reckoned for it now."""
    now = _by_entry(bath.reckoned_now)
    told = [(after, _estimate(lines), lines[0].at) for after, lines in _by_entry(bath.shown_then).items()]
    changed = [one for index, one in enumerate(told) if index == 0 or one[1] != told[index - 1][1]]
    return [
        f"{_at(review, at)} after entry {after}: {text}; now {_same_or(text, _estimate(now.get(after, [])))}"
        for after, text, at in changed[-ESTIMATES_SHOWN:]
    ]


def _same_or(then: str, now: str) -> str:
    return "the same" if now == then else now


def _by_entry(lines: Iterable[BathLine]) -> dict[int, list[BathLine]]:
    found: dict[int, list[BathLine]] = {}
    for one in lines:
        found.setdefault(one.after, []).append(one)
    return found


def _estimate(lines: list[BathLine]) -> str:
    """A bath in a few words: what there is most of, then the rest that is worth a word, and the litres."""
    if not lines:
        return "nothing"
    litres = lines[0].volume_l
    worth = [one for one in lines if one.mass_g is not None and one.mass_g >= WORTH_A_WORD_G]
    held = ", ".join(_grams(one) for one in sorted(worth, key=lambda one: -(one.mass_g or 0.0)))
    return f"{held or 'water'} in {show_volume(litres, estimate=True)}" if litres else held or "empty"


def _grams(line: BathLine) -> str:
    low, high = show_mass(line.low_g or 0.0, estimate=True), show_mass(line.high_g or 0.0, estimate=True)
    band = "" if low == high else f" ({show_range(line.low_g or 0.0, line.high_g or 0.0, _mass)})"
    return f"{show_mass(line.mass_g or 0.0, estimate=True)} {line.lot}{band}"


def _mass(grams: Figure) -> str:
    return show_mass(grams, estimate=True)


def _asked(review: Review, asked: Asked) -> str:
    step, _, act = asked.question.rpartition(": ")
    kind, _, vessel = act.partition(" ")
    before = f"before {_BEFORE.get(kind, kind)} the {vessel}" if vessel else asked.question
    degrees = " °C" if asked.temperature_c is not None else ""
    return f"{_at(review, asked.at)} {step}, {before}: {asked.answer}{degrees}"


def _alarm(review: Review, alarm: Rang) -> str:
    seen = f"seen {_at(review, alarm.acknowledged)}" if alarm.acknowledged else "never acknowledged"
    where = f"the {alarm.vessel}" if alarm.vessel else alarm.step
    return f"{_at(review, alarm.at)} {where}, {alarm.step}, {show_duration(alarm.over_s // 60)} over; {seen}"


def _correction(one: CorrectionReview) -> str:
    counts = "" if one.counts else " (a later one counts)"
    if one.now is None:
        return f"entry {one.entry} ({one.entry_kind}) struck: {one.why}{counts}"
    changes = ", ".join(f"{key} was {one.was.get(key)}, is {value}" for key, value in one.now.items())
    return f"entry {one.entry} ({one.entry_kind}): {changes}; {one.why}{counts}"


def _reminders(review: Review) -> list[str]:
    """Each sentence once, with the steps it was shown with."""
    steps: dict[str, list[str]] = {}
    for one in review.reminders:
        steps.setdefault(one.text, []).append(one.step)
    return [f"{', '.join(dict.fromkeys(found))}: {text}" for text, found in steps.items()]


def _kept(kept: KeptReview) -> str:
    litres = f", {show_volume(kept.volume_l)}" if kept.volume_l else ""
    of = f", liquor of {' and '.join(kept.liquor_of)}" if kept.liquor_of else ""
    return f"{kept.label}{litres}{of}"
