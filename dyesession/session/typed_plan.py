"""A change of the plan as it is typed: a lot joins, a weight or a dose is put right, the recipe is left.

Pure; knows no screen. "lot small skein 75 g joins because I found it", "alum 15 % because the water is hard".
"""

import re
from collections.abc import Callable, Sequence

from dyesession.care import WORST, Household, reminders
from dyesession.plan.lots import lot_from_text
from dyesession.plan.trouble import PlanError
from dyesession.session import events as e
from dyesession.session.from_shelf import NOTHING_STANDS, FromShelf, beyond, completed
from dyesession.session.replan import today
from dyesession.session.situation import situation_of
from dyesession.session.state import Lot, State
from dyesession.session.typed_stage import STAGE, read_stage
from dyesession.session.understood import NotUnderstood, Understood, pot_named
from dyesession.session.words import plan_words
from dyesession.units import read_mass, read_percent, read_volume, show_volume

BECAUSE = re.compile(
    r"^(?P<what>.*?)(?:\s*:\s*|\s+because\s+(?:of\s+)?)(?P<why>.+)$", re.IGNORECASE | re.DOTALL
)
JOINS = re.compile(
    r"^(?:lot\s+)?(?P<lot>.+?)\s+joins(?:\s+in)?(?:[,;]?\s+(?P<mordanted>.*mordant.*))?$", re.IGNORECASE
)
WEIGHS = re.compile(r"^(?:lot\s+)?(?P<lot>.+?)\s+weighs?\s+(?P<mass>.+)$", re.IGNORECASE)
LEAVE = re.compile(
    r"^(?:leave\s+(?:the\s+)?recipe|(?:the\s+)?recipe\s+(?:is\s+)?left|by\s+eye)$", re.IGNORECASE
)
ONCE_MORE = re.compile(
    r"^(?:once|one\s+(?:refresh|extraction))\s+more$|^extract\s+once\s+more$", re.IGNORECASE
)
ONCE_LESS = re.compile(r"^(?:once|one\s+(?:refresh|extraction))\s+(?:less|fewer)$", re.IGNORECASE)
POUR = re.compile(
    r"^(?:pour|draw)\s+(?:the\s+)?(?:kept\s+)?(?P<label>.+?)\s+into\s+(?P<pot>[^,]+?)"
    r"(?:,\s*(?P<volume>.+)|\s+(?P<much>[\d½¼¾][\d.,/½¼¾ ]*[A-Za-z]+))?$",
    re.IGNORECASE,
)
_MUCH_FIRST = re.compile(r"^(?P<much>[\d½¼¾][\d.,/½¼¾ ]*[A-Za-z]+)\s+(?:of\s+)?(?:the\s+)?(?P<label>.+)$")
_MUCH_LAST = re.compile(r"^(?P<label>.+?),?\s+(?P<much>[\d½¼¾][\d.,/½¼¾]*\s*[A-Za-z]+)$")
DOSE = re.compile(
    r"^(?P<name>.+?)\s+(?P<amount>[\d½¼¾].*?)(?:\s+(?P<way>more|less|in\s+all))?$", re.IGNORECASE
)
DOSE_FIRST = re.compile(
    r"^(?P<amount>[\d½¼¾][^a-z]*(?:%|g|oz|lb|kg))\s+(?P<way>more\s+|less\s+)?(?P<name>.+)$", re.IGNORECASE
)

EXAMPLE = "small skein 75 g joins because I found it; or alum 15 % because the water is hard"


def read_change(text: str, state: State, shelf: FromShelf = NOTHING_STANDS) -> Understood:
    """The change of the plan a text means, or a kept bath poured in: today's, or another day's on the shelf.

    Raises `NotUnderstood`, a `UnitError` or a `PlanError`: one sentence.
    """
    text = re.sub(r"\s+because$", "", text.strip(), flags=re.IGNORECASE)
    found = BECAUSE.match(text)
    what, why = (found["what"].strip(), found["why"].strip()) if found else (text, "")
    if STAGE.match(what):
        return read_stage(what, state, why)
    if match := POUR.match(what):
        return _pour(match, state, why, shelf)
    for pattern, reader in _READERS:
        if match := pattern.match(what):
            if not why:
                raise NotUnderstood(f'Say why as well, for example "{what} because I found it".')
            return reader(match, state, why)
    raise NotUnderstood(f'"{what}" is no change of the plan that is known here; for example {EXAMPLE}.')


def _said(event: e.Replanned) -> Understood:
    return Understood(event, f"{plan_words(event)}: {event.why}")


def _joins(found: re.Match[str], state: State, why: str) -> Understood:
    kind = next((one.kind for one in state.lots if not one.snippet), "wool")
    lot = lot_from_text(_weight_first(found["lot"]), kind)
    if lot.air_dry is False:
        raise PlanError(
            f"The {lot.name} is damp: a dose is reckoned on the washed, air-dry weight; give that as well,"
            ' for example "112 g damp, 75 g dry small skein joins because I found it".'
        )
    name = lot.name if lot.name != lot.kind else ""
    if not name:
        raise NotUnderstood(
            'Give the lot that joins a name, for example "75 g small skein joins because I found it".'
        )
    mordanted = (found["mordanted"] or "").strip().rstrip(".")
    return _said(
        e.Replanned("lot joins", why=why, lot=name, fibre=lot.kind, mass_g=lot.mass_g, mordanted=mordanted)
    )


def _weight_first(text: str) -> str:
    """ "small skein 75 g" as "75 g small skein"."""
    found = re.match(r"^(?P<name>[^\d½¼¾]+?)\s+(?P<mass>[\d½¼¾].*)$", text)
    return f"{found['mass']} {found['name']}" if found else text


def _weighs(found: re.Match[str], state: State, why: str) -> Understood:
    lot = _lot(found["lot"], state)
    mass_g = float(read_mass(found["mass"]).aim)
    return _said(e.Replanned("lot weight", why=why, lot=lot.name, mass_g=mass_g))


def _lot(text: str, state: State) -> Lot:
    lots = [one for one in state.lots if not one.snippet]
    for lot in lots:
        if lot.name.casefold() == " ".join(text.casefold().split()).removeprefix("the "):
            return lot
    names = ", ".join(one.name for one in lots)
    raise NotUnderstood(
        f'No lot is called "{text}"; the lots are {names}. For example {lots[0].name} weighs 82 g.'
    )


def _leave(found: re.Match[str], state: State, why: str) -> Understood:
    return _said(e.Replanned("recipe left", why=why))


def _once_more(found: re.Match[str], state: State, why: str) -> Understood:
    strained = [one for one in state.steps if one.plan.stage == "strain" and one.status == "complete"]
    if not strained:
        raise NotUnderstood("Nothing has been strained yet; extracting once more is planned after a strain.")
    return _said(e.Replanned("refresh", strained[-1].name, why))


def _once_less(found: re.Match[str], state: State, why: str) -> Understood:
    later = [
        one
        for one in state.steps
        if one.plan.stage == "extract" and one.plan.again and one.status == "waiting"
    ]
    if not later:
        raise NotUnderstood(
            "No further extraction is waiting that could be left out; skip a step by its name."
        )
    return Understood(e.Skipped(later[-1].name, why), f"{later[-1].name} left out: {why}")


def _pour(found: re.Match[str], state: State, why: str, shelf: FromShelf) -> Understood:
    """A kept bath by its label; more than another day left of it is refused here already."""
    labels = (*(one.label for one in state.kept), *(one.label for one in shelf.baths))
    label, before = _label_and_litres(found["label"], labels)
    if not label:
        kept = ", ".join(dict.fromkeys(labels)) or "none"
        raise NotUnderstood(
            f'No bath is kept as "{found["label"]}", today or on the shelf; kept are {kept};'
            f" expected, for example, pour {labels[0] if labels else 'madder bath'} into the dye pot, 3 l."
        )
    pot = pot_named(found["pot"], state)
    volume = found["volume"] or found["much"] or before
    litres = float(read_volume(volume).aim) if volume else None
    drawn = completed(shelf, state, e.Drawn(pot, label, volume_l=litres))
    if trouble := beyond(shelf, drawn):
        raise NotUnderstood(f"{trouble}.")
    worst = first_minded(state, drawn)
    minded = f". {worst}" if worst else ""
    much = f"{show_volume(litres)} of " if litres is not None else ""
    of = f" of {drawn.session}" if isinstance(drawn, e.Drawn) and drawn.session else ""
    return Understood(drawn, f"{much}the {label}{of} into the {pot}{f': {why}' if why else ''}{minded}")


def _label_and_litres(text: str, labels: Sequence[str]) -> tuple[str, str]:
    """The label that is meant, "" for none, and litres said before or behind it: “3 l of madder bath 4”."""
    tries = [(text, "")]
    tries += [(one["label"], one["much"]) for one in (_MUCH_FIRST.match(text), _MUCH_LAST.match(text)) if one]
    for said, much in tries:
        label = next((one for one in labels if one.casefold() == said.strip().casefold()), "")
        if label:
            return label, much
    return "", ""


def first_minded(state: State, drawn: e.Event) -> str:
    """The gravest thing to bear in mind before it is poured. Raises `NotUnderstood` for what must never meet."""
    situation = situation_of(state, drawn, Household())
    worst = next(iter(reminders(situation)), None) if situation is not None else None
    if worst is not None and worst.severity >= WORST:
        raise NotUnderstood(f"That must not be poured together. {worst.text}")
    return worst.text if worst is not None else ""


def _dose(found: re.Match[str], state: State, why: str) -> Understood:
    name = " ".join(found["name"].split())
    ingredient = next((one for one, _ in state.substances if one.casefold() == name.casefold()), "")
    if not ingredient:
        known = ", ".join(one for one, _ in state.substances) or "nothing yet"
        raise NotUnderstood(
            f'Nothing called "{name}" is used today; there is {known}. A stage brings in something new, for '
            "example modify in the iron pot with iron 2 %."
        )
    grams, percent = _grams(found["amount"].strip(), state)
    way = (found["way"] or "").strip().casefold()
    if way in ("more", "less"):
        grams, percent = _planned_g(state, ingredient) + (grams if way == "more" else -grams), None
    if grams < 0:
        raise NotUnderstood(
            f"That is more {ingredient} less than there is; for example {ingredient} 20 g in all."
        )
    return _said(e.Replanned("dose", why=why, value=percent, ingredient=ingredient, mass_g=round(grams, 3)))


def _grams(amount: str, state: State) -> tuple[float, float | None]:
    """Grams in all, and the per cent of fibre where it was said so."""
    if "%" in amount or "per cent" in amount.casefold():
        percent = float(read_percent(amount).aim)
        return percent / 100.0 * today(state).fibre_g, percent
    return float(read_mass(amount).aim), None


def _planned_g(state: State, ingredient: str) -> float:
    day = today(state)
    return day.in_g(ingredient) + sum(one.still_g(ingredient) for one in day.steps)


_READERS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str], State, str], Understood]], ...] = (
    (LEAVE, _leave),
    (ONCE_MORE, _once_more),
    (ONCE_LESS, _once_less),
    (JOINS, _joins),
    (WEIGHS, _weighs),
    (DOSE, _dose),
    (DOSE_FIRST, _dose),
)
