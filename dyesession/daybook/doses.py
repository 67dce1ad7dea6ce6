"""The doses of a day, planned beside what was weighed and what went in. Pure."""

from collections.abc import Iterable, Sequence

from dyesession.daybook.model import DoseReview
from dyesession.plan.model import Plan, PlannedDose
from dyesession.session import events as e


def dose_reviews(
    plan: Plan, events: Sequence[e.Event], known: Sequence[PlannedDose] = ()
) -> tuple[DoseReview, ...]:
    """Every planned dose, then whatever else went in; events are taken as the corrections leave them.

    `known` is what the day knew at its end: what came in at the stove is called by its substance and role.
    """
    planned = {one.ingredient: one for one in plan.doses}
    came_in = {one.ingredient: one for one in known}
    named = dict.fromkeys((*planned, *_handled(events)))
    return tuple(_one(planned.get(name), came_in.get(name), name, events) for name in named)


def _handled(events: Iterable[e.Event]) -> list[str]:
    return [one.ingredient for one in events if isinstance(one, e.Weighed | e.Added)]


def _one(
    dose: PlannedDose | None, came_in: PlannedDose | None, name: str, events: Sequence[e.Event]
) -> DoseReview:
    known = dose or came_in
    weighed = [one.mass_g for one in events if isinstance(one, e.Weighed) and one.ingredient == name]
    added = [one for one in events if isinstance(one, e.Added) and one.ingredient == name]
    hows = dict.fromkeys(one.how for one in added) or dict.fromkeys(["weighed"] if weighed else [])
    return DoseReview(
        ingredient=name,
        substance=known.substance if known else "",
        role=known.role if known else "",
        planned_g=dose.mass_g if dose else None,
        weigh_say=dose.weigh.say if dose else "",
        weighed_g=_weighed_g(weighed, added),
        added_g=sum(one.mass_g for one in added) if added else None,
        how=" and ".join(hows),
    )


def _weighed_g(weighed: list[float], added: list[e.Added]) -> float | None:
    """Grams that stood on the scales: put in as weighed, else weighed and not yet put in."""
    on_scales = [one.mass_g for one in added if one.how == "weighed"]
    if on_scales:
        return sum(on_scales)
    return weighed[-1] if weighed else None
