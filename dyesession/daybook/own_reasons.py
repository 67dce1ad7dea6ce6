"""Where a plan rests on the dyer's own numbers, said as reasons behind its figures. Pure; the words are `learned_text`'s.

Times rest on them through the kitchen (`kitchen.model.Own`); what is said here is of doses and of the day as a whole.
"""

from collections.abc import Sequence
from textwrap import wrap

from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.learned_text import days_words, told_number
from dyesession.daybook.own_numbers import used_for
from dyesession.daybook.seen import key_of
from dyesession.plan.explained import Because, Explained
from dyesession.plan.model import Plan, PlannedDose

_AT_STOVE = ("exhaustion", "uptake rate", "kept share", "stiffening")
_IN_REPEATS = ("strength", "depth exponent")


def used_line(plan: Plan, learned: Learnt) -> str:
    """In one line: how many of the dyer's own numbers this day rests on; "" where on none."""
    used = used_for(plan, learned)
    if not used:
        return ""
    count = "one of your own numbers" if len(used) == 1 else f"{len(used)} of your own numbers"
    return f"This day rests on {count}, {days_words(days_of(used))}."


def used_lines(plan: Plan, learned: Learnt, width: int) -> list[str]:
    """The same as printed lines, each number under it; nothing where the day rests on none."""
    line = used_line(plan, learned)
    if not line:
        return []
    found = ["", *wrap(line, width, break_on_hyphens=False)]
    for one in used_for(plan, learned):
        found += wrap(_number_says(one), width, initial_indent="  ", subsequent_indent="    ", break_on_hyphens=False)
    return [*found, '  (all of them, each with its days: "dyesession learn")']


def days_of(numbers: Sequence[Number]) -> tuple[str, ...]:
    """Every day that these numbers come from, each once, by name."""
    return tuple(sorted({day for one in numbers for day in one.days}))


def used_explained(plan: Plan, learned: Learnt) -> Explained:
    """Every number of the dyer's own that a day of this plan rests on."""
    return Explained("your own numbers, where this day rests on them", tuple(_because(one) for one in used_for(plan, learned)))


def of_dose(plan: Plan, learned: Learnt, ingredient: str) -> tuple[Because, ...]:
    """What days have taught of the dyestuff of a dose: the dose stays the recipe's, the bath's account starts there."""
    dose: PlannedDose = plan.dose(ingredient)
    if dose.role != "dyestuff":
        return ()
    mine = [one for one in used_for(plan, learned) if one.about.of == key_of(dose.substance) and one.about.what in _AT_STOVE]
    jars = [one for one in learned.numbers if one.about.of == key_of(dose.substance) and one.about.what in _IN_REPEATS]
    stove = [_because(one, "The bath's account starts from your own number: ") for one in mine]
    return (*stove, *(_because(one, "A repeat is dosed by your own number, a recipe is not: ") for one in jars))


def _because(one: Number, lead: str = "") -> Because:
    return Because(f"{lead}{_number_says(one)}", f"your own days, {told_number(one).days}")


def _number_says(one: Number) -> str:
    told = told_number(one)
    return f"{told.title}: {told.yours}, for {told.guess} as is usually guessed."
