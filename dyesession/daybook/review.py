"""Looking back on a day: one review made of its log, planned beside actual. Pure; knows no files and no
screens.
"""

from collections.abc import Sequence

from dyesession.account.logged import starting_of
from dyesession.daybook import papers
from dyesession.daybook.baths import bath_reviews
from dyesession.daybook.called_out import kitchen_then
from dyesession.daybook.curves import curves
from dyesession.daybook.day_line import ColourLine, DayLine, day_line
from dyesession.daybook.doses import dose_reviews
from dyesession.daybook.model import KeptReview, Review
from dyesession.daybook.otherwise import otherwise
from dyesession.daybook.printed import review_lines
from dyesession.daybook.report import review_as_json
from dyesession.daybook.steps import step_reviews
from dyesession.daybook.walk import walk
from dyesession.dyeing.priors import Prior
from dyesession.kitchen.model import Jar
from dyesession.plan.stock import cost_of_used
from dyesession.plan.stock_text import cost_words
from dyesession.session import events as e
from dyesession.session.fold import opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State

__all__ = ["review", "review_as_json", "review_lines"]


def review(day: LoggedDay) -> Review:
    """The day as its log tells it: corrections carried out, and shown as what they are."""
    paces = tuple(walk(day))
    last = paces[-1].after if paces else opening_state(day.plan)
    events = [one.entry.event for one in paces]
    steps, alarms = step_reviews(day, paces, last), papers.alarms(paces)
    flags, line = papers.flags(day.entries, last), day_line(day, "")
    return Review(
        session=day.name,
        recipe=day.recipe,
        status=last.status,
        opened=day.opened.at,
        closed=next((one.at for one in paces if isinstance(one.entry.event, e.Closed)), None),
        rehearsal=day.rehearsal,
        program=day.program,
        verdict=last.verdict,
        steps=steps,
        doses=dose_reviews(day.plan, events, last.doses),
        baths=bath_reviews(day),
        reminders=papers.reminders(paces),
        asks=papers.asks(paces),
        alarms=alarms,
        corrections=papers.corrections(day.entries, last),
        flags=flags,
        notes=papers.notes(paces),
        aftercare=papers.aftercare(paces),
        kept_baths=_kept(last),
        readings=papers.readings(paces),
        file_notes=tuple(day.notes),
        otherwise=otherwise(day, paces, last, steps, alarms, flags),
        curves=curves(paces, last),
        shades=_shades(line),
        starts_from=tuple(_number(one) for one in starting_of(day.header).priors.values()),
        cost=_cost(line, kitchen_then(day).jars),
    )


def _cost(line: DayLine, jars: Sequence[Jar]) -> str:
    used_g = {one.substance: one.mass_g for one in line.used}
    cost = cost_of_used(used_g, sum(one.mass_g for one in line.fibre), jars)
    return cost_words(cost) if cost.price is not None and cost.per_100_g is not None else ""


def _shades(line: DayLine) -> tuple[str, ...]:
    return (*(_shade(one, ", before dyeing") for one in line.undyed), *(_shade(one) for one in line.colours))


def _shade(one: ColourLine, when: str = "") -> str:
    state = f"{when}{'' if one.wet is None else ', wet' if one.wet else ', dry'}"
    return f"{one.lot or 'the fibre'}{state}: {one.colour}"


def _number(one: Prior) -> str:
    return f"{one.name}: {one.centre:.3g} ({one.low:.3g} to {one.high:.3g}), {one.source}"


def _kept(last: State) -> tuple[KeptReview, ...]:
    return tuple(KeptReview(one.label, one.bath.volume_l, one.bath.liquor_of) for one in last.kept)
