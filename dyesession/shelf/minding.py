"""What to bear in mind before a kept bath is drawn into a pot: care's rules, then what comes along with the bath.

Pure. The pot's own situation is the session's to tell; a day that is not begun yet has none, and is taken as empty.
"""

from datetime import timedelta

from dyesession.account.say import rounded_band
from dyesession.care import WORST, Household, Reminder, Situation, reminders
from dyesession.errors import UserError
from dyesession.shelf.model import KeptBath
from dyesession.substances import find

PRACTICE = "common practice, no source"
METALS = ("iron", "copper")
_COMES_ALONG = {
    "iron": "has iron in it: all that goes into {pot} saddens, for good. Mark pot, spoon and thermometer for iron.",
    "copper": "has copper in it: all that goes into {pot} greens. Mark the pot; no drain, no pond for what is left.",
}


class MustNotMix(UserError):
    """What must never be poured together."""


def drawing(
    bath: KeptBath, pot: str, there: Situation | None = None, household: Household | None = None
) -> tuple[Reminder, ...]:
    """All there is to mind, the worst first. Raises `MustNotMix` with what would happen.

    `there` is the pot's own situation with the bath poured in; None for the empty pot of a day not begun.
    """
    minded = reminders(there or _empty_pot(bath, pot, household))
    worst = next((one for one in minded if one.severity >= WORST), None)
    if worst is not None:
        raise MustNotMix(f"That must not be poured together. {worst.text}")
    inside = there.contents if there is not None else ()
    along = comes_along(bath, pot, tuple(name for name, _ in inside))
    return tuple(sorted((*minded, *along), key=lambda one: -one.severity))


def comes_along(bath: KeptBath, pot: str, there: tuple[str, ...] = ()) -> tuple[Reminder, ...]:
    """Iron and copper that the pot has not got yet, and mordant from the time before: it counts in the next dose."""
    metals = [one for one in METALS if has(bath, one) and not any(_is(name, one) for name in there)]
    told = [
        Reminder(f"{one} comes along", f"{bath.label} {_COMES_ALONG[one].format(pot=pot)}", 2, "shade", PRACTICE)
        for one in metals
    ]
    since = bath.began_on or bath.kept_at.date()
    old = [
        f"{rounded_band(one.grams, 'g')} {one.ingredient}"
        for one in bath.mordant
        if one.grams is not None and one.grams.mean > 0 and not any(_is(one.substance, metal) for metal in METALS)
    ]
    if old:
        text = f"{bath.label} brings {' and '.join(old)} of {since}: count it in before more is added."
        told.append(Reminder("old mordant comes along", text, 1, "shade", PRACTICE))
    return tuple(told)


def has(bath: KeptBath, trait: str) -> bool:
    """Whether anything in a bath has a trait: "iron", "copper"."""
    return any(_is(one.substance, trait) for one in bath.inside)


def _is(substance: str, trait: str) -> bool:
    found = find(substance)
    return found is not None and found.has(trait)


def _empty_pot(bath: KeptBath, pot: str, household: Household | None) -> Situation:
    today = (bath.began_on or bath.kept_at.date()) + timedelta(days=bath.age_days)
    return Situation(
        step="draw",
        actions=("opens", "pours"),
        vessel=pot,
        letter=pot,
        pouring=bath.contents,
        pouring_from=bath.label,
        volume_l=bath.left_l,
        look_again_in_days=float((bath.look_again - today).days),
        household=household or Household(),
    )
