"""From a day's snapshot to what the Stove shows. Pure: the snapshot and a session second in, a view out.

Chooses and words; reckons nothing. Sentences come from `session.words` and `account.say`.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from dyesession.account import Account, Band90, sentences
from dyesession.account.say import main_bath, rounded_band
from dyesession.account.told import again, dark_enough
from dyesession.care import DISCLAIMER_SHORT, NO_NUMBER, Household
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.amiss import amiss_words
from dyesession.session.asking import Ask, caring, first_aid_before
from dyesession.session.craft import craft_line
from dyesession.session.from_shelf import next_in
from dyesession.session.offered import offered, still_to_weigh, touch_words
from dyesession.session.session import Snapshot
from dyesession.session.state import SIEVE, State, StepState
from dyesession.session.suggest import Ring, Suggestion, Wait, rings
from dyesession.session.typed import Meaning
from dyesession.storage import shown
from dyesession.ui import stove_view as v
from dyesession.ui.asides import NOTHING_TO_DO, Aside
from dyesession.ui.day_pictures import bars, curve
from dyesession.ui.from_pots import pots_shown
from dyesession.ui.keys import key_words
from dyesession.units import show_duration, show_mass

MOST_CARE = 3
LAST_ENTRIES = 3
MET_STAGES = ("dye", "modify", "rinse", "dry")
STATES: dict[str, v.StageState] = {
    "waiting": "waiting",
    "running": "running",
    "paused": "paused",
    "complete": "done",
    "skipped": "skipped",
    "stopped": "skipped",
}
CareShown = tuple[tuple[str, ...], int]  # the lines, and how many of them must be whole


@dataclass(frozen=True)
class Mode:
    """What the screen is in the middle of: a number being typed, a page over the pots, a line to say."""

    typed: str = ""
    wants: str = ""
    echo: str = ""
    where: str = ""
    away: bool = False
    note: str = ""
    meaning: Meaning | None = None
    mark: str = ""
    places: tuple[str, ...] = ()
    aside: Aside = ""


def stove_view(
    snapshot: Snapshot[Account],
    now_s: float,
    suggestion: Suggestion,
    mode: Mode,
    household: Household,
    poison_centre: str = "",
    today: str = "",
    care_shown: CareShown | None = None,
) -> v.StoveView:
    """Everything the Stove shows at a session second; `today` is the main bath's strength as drawn by the account.

    `care_shown` is what `care_to_show` gives for the same facts and suggestion, where it is known already.
    """
    state = snapshot.state
    ringing = rings(state, now_s)
    care, whole = care_shown or care_to_show(snapshot, suggestion, household, poison_centre)
    return v.StoveView(
        title=snapshot.recipe,
        fibre=_fibre(snapshot),
        wall_clock=words.clock_text(state, now_s),
        lanes=_lanes(state),
        pots=pots_shown(snapshot, now_s),
        account=_account(snapshot, today),
        care=care,
        care_whole=whole,
        next_act=_next(state, suggestion, now_s),
        keys=_keys(state, suggestion, mode, snapshot.saving not in ("saved", "saving")),
        saving=_saving(snapshot),
        ringing=ringing_view(state, ringing),
        ask=_ask(state, suggestion, mode, first_aid_before(state, suggestion, household, poison_centre))
        if isinstance(suggestion, Ask)
        else None,
        entry=v.Entry(mode.wants, mode.typed, mode.echo) if is_typing(suggestion, mode) else None,
        **_for_the_hand(state, suggestion),
        **_on_offer(snapshot, suggestion, mode),
        where=_where(snapshot, ringing, mode.where) if mode.where else None,
        away=mode.away,
        note=_still_so(mode.note, suggestion) or next_in(state, snapshot.shelf),
        curve=curve(snapshot, now_s),
        bars=bars(snapshot.account),
    )


def _still_so(note: str, suggestion: Suggestion) -> str:
    """A note, but not that there is nothing to do once there is."""
    return "" if note.startswith(NOTHING_TO_DO) and not isinstance(suggestion, Wait) else note


def is_typing(suggestion: Suggestion, mode: Mode) -> bool:
    """Whether the entry line is open: a bare number typed while a question stands is the question's."""
    return bool(mode.wants) and (mode.meaning is not None or bool(mode.aside) or not isinstance(suggestion, Ask))


def _on_offer(snapshot: Snapshot[Account], suggestion: Suggestion, mode: Mode) -> dict[str, Any]:
    """The rows to choose from while a text is typed, which has the mark, what stands below, and words for touch."""
    if not is_typing(suggestion, mode):
        return {}
    state = snapshot.state
    rows = offered(mode.meaning, mode.typed, state, snapshot.entries, snapshot.shelf)
    offers = tuple(v.OfferRow(one.types, one.says) for one in rows)
    if mode.places and not mode.typed:
        offers = tuple(v.OfferRow(one, one) for one in mode.places)
    found = {one.types for one in offers}
    left = still_to_weigh(state) if mode.meaning in ("plan", "stage") and not mode.typed else ()
    return {
        "offers": offers,
        "mark": mode.mark if mode.mark in found else offers[0].types if offers else "",
        "beside": ("still to weigh", *(f"  {one}" for one in left)) if left and offers else (),
        "pad": touch_words(mode.meaning, mode.typed, state),
    }


def _for_the_hand(state: State, suggestion: Suggestion) -> dict[str, Any]:
    """What the recipe says of the step of the next act; where it says nothing, a line of craft for the stage."""
    step = state.step(_step_of(state, suggestion))
    if step is None or isinstance(suggestion, Ask):
        return {}
    return {"how": step.plan.say} if step.plan.say else {"craft": craft_line(step.plan.stage)}


def _fibre(snapshot: Snapshot[Account]) -> str:
    lots = [one for one in snapshot.state.lots if not one.snippet]
    total = show_mass(sum(one.mass_g for one in lots))
    kinds = " and ".join(dict.fromkeys(one.kind for one in lots))
    if len(lots) == 1:
        return f"{total} {lots[0].name}"
    return f"{total} {kinds}, {len(lots)} lots"


def _lanes(state: State) -> v.Lanes:
    together = _together(state)
    apart = [one for one in state.steps if one not in together]
    rows = []
    for lane in ("fibre", "liquor"):
        stages = tuple(_stage(state, one) for one in apart if one.plan.lane == lane)
        if stages:
            rows.append(v.Lane(lane, stages))
    return v.Lanes(tuple(rows), tuple(_stage(state, one) for one in together))


def _together(state: State) -> list[StepState]:
    """Steps where the lanes have met: those that come, near or far, after steps of both lanes."""
    lanes: dict[str, set[str]] = {}
    met = []
    for step in state.steps:
        behind = set().union(*(lanes.get(name, set()) for name in step.plan.after)) if step.plan.after else set()
        lanes[step.name] = behind | {step.plan.lane}
        if len(behind) > 1:
            met.append(step)
    return met


def _stage(state: State, step: StepState) -> v.Stage:
    ready = state.status == "open" and state.ready(step)
    return v.Stage(step.name, "ready" if ready else STATES[step.status])


def _account(snapshot: Snapshot[Account], today: str) -> v.Account:
    account = snapshot.account
    said, bath = [*sentences(account, snapshot.plan)], main_bath(account, snapshot.plan)
    if bath is not None and (in_it := dark_enough(account, bath.vessel)):
        said[1:1] = in_it
    elif advised := [one for lot in _in_the_sieve(snapshot.state) for one in again(account, lot)]:
        said = [said[0], *advised, *(one for one in said[1:] if one.about != "again")]
    return v.Account(_strength(snapshot), tuple(_sentence(one.text, one.how) for one in said), today)


def _in_the_sieve(state: State) -> list[str]:
    """Dyestuff that was strained off and could go back: now is the moment to know what that would bring."""
    return [one.name for one in state.dyestuffs if one.place == SIEVE and one.pulls]


def _sentence(text: str, how: str) -> v.Sentence:
    return v.Sentence((v.Said(f"{text}."),), "a guess" if how == "guess" else how)


def _strength(snapshot: Snapshot[Account]) -> v.Strength | None:
    bath = main_bath(snapshot.account, snapshot.plan)
    if bath is None:
        return None
    dye = max(bath.dye, key=lambda one: one.grams.mean)
    dyestuff = snapshot.account.dyestuff(dye.lot)
    total = f"of {show_mass(dyestuff.total_g)} {dye.lot}" if dyestuff else dye.lot
    return v.Strength(_number(dye.grams), "g", total, bath.how)


def _number(grams: Band90) -> str:
    return rounded_band(grams, "").strip()


def care_to_show(
    snapshot: Snapshot[Account], suggestion: Suggestion, household: Household, poison_centre: str
) -> CareShown:
    """What to bear in mind with the next act, or while its step is waited for; and how many of the lines must be
    whole: a grave one and its first aid. A question has its own first aid.
    """
    state = snapshot.state
    event = suggestion.then if isinstance(suggestion, Ask) else suggestion
    command = None if isinstance(event, Wait) else event
    cared = caring(state, command, _step_of(state, suggestion), household, poison_centre)
    first_aid = cared.first_aid_short if not isinstance(suggestion, Ask) else ""
    start, said = _at_the_start(snapshot, poison_centre), cared.texts[:MOST_CARE]
    if not first_aid:
        return (*start, *said), len(start[:1])
    return (said[0], first_aid, *start, *said[1:]), 2


def _at_the_start(snapshot: Snapshot[Account], poison_centre: str) -> tuple[str, ...]:
    """Before the first act: what this program is not, and where the poison centre's number goes if it has none."""
    if any(one.event.kind not in e.PROGRAM_KINDS for one in snapshot.entries):
        return ()
    return (DISCLAIMER_SHORT,) if poison_centre else (DISCLAIMER_SHORT, NO_NUMBER)


def _step_of(state: State, suggestion: Suggestion) -> str:
    if isinstance(suggestion, Wait):
        return suggestion.step
    event = suggestion.then if isinstance(suggestion, Ask) else suggestion
    step = getattr(event, "step", "")
    if isinstance(step, str) and step:
        return step
    running = state.running_in(getattr(event, "vessel", ""))
    return running.name if running else ""


def _next(state: State, suggestion: Suggestion, now_s: float) -> v.NextAct:
    act = words.suggestion_words(state, suggestion)
    when = "now"
    if isinstance(suggestion, Wait):
        when = _in(suggestion.until_s, now_s)
    return v.NextAct(act, when, words.short_words(state, suggestion))


def _in(until_s: float | None, now_s: float) -> str:
    if until_s is None:
        return ""
    minutes = max(0.0, (until_s - now_s) / 60)
    return "in less than a minute" if minutes < 1 else f"in {show_duration(round(minutes))}"


def _keys(state: State, suggestion: Suggestion, mode: Mode, unsaved: bool) -> tuple[v.KeyWord, ...]:
    if is_typing(suggestion, mode):
        return (v.KeyWord("enter", "counts"), *key_words(("escape",)))
    if isinstance(suggestion, Ask):
        return (v.KeyWord("enter", "counts"), *key_words(("-", "i", ".", "?")))
    if state.status == "complete":
        return key_words(("q", "b", "i", ".", "?"))
    names = ["space", "t", "v", "w", "p", "e", "x", "d", "o", "c", "s", "j", "n", "a", "q", ".", "?"]
    if unsaved:
        names.insert(0, ">")
    if state.free:
        names.remove("j")
        names.insert(1, "j")
    return key_words(names)


def _saving(snapshot: Snapshot[Account]) -> v.Saving:
    if snapshot.saving in ("saved", "saving"):
        return v.Saving("saved" if snapshot.saving == "saved" else "saving")
    where = shown(Path(snapshot.path))  # last, for a long path must not hide why and what to do
    return v.Saving("NOT SAVED", f"{snapshot.trouble.replace(f' in {where}', '').rstrip('.')}: {where}")


def ringing_view(state: State, ringing: tuple[Ring, ...]) -> v.Ringing | None:
    """What rings, as every place shows it: the loudest, and how many more."""
    if not ringing:
        return None
    loudest = ringing[0]
    what, act = words.ring_parts(state, loudest)
    over = words.over_words(loudest)
    more = f"and {len(ringing) - 1} more" if len(ringing) > 1 else ""
    letter = words.letter(state, loudest.vessel) if loudest.vessel else ""
    named = f"the {loudest.vessel}" if loudest.vessel else loudest.step
    what = f"{named}: {what}{',' if over else ''}"
    return v.Ringing(letter, what, act, over, "", more)


def _ask(state: State, ask: Ask, mode: Mode, first_aid: str) -> v.Ask:
    """Every pot's letter is offered, not the right one alone: the answer is a look, not a key."""
    wants = f"°C in {ask.expected}" if ask.kind == "temperature" else ""
    letters = tuple(v.Choice(one.letter.lower(), one.name) for one in state.vessels)
    choices = () if ask.kind == "temperature" else letters
    typed, echo = (mode.typed, mode.echo) if not is_typing(ask, mode) else ("", "")
    short = words.short_words(state, ask) if ask.kind == "temperature" else "which pot"
    return v.Ask(ask.question, f"{ask.why} {first_aid}".strip(), short=short, choices=choices, wants=wants, typed=typed, echo=echo)


def _where(snapshot: Snapshot[Account], ringing: tuple[Ring, ...], heading: str) -> v.WhereYouAre:
    state = snapshot.state
    pots = tuple(
        v.PotHolds(one.letter, one.name, words.vessel_words(state, one))
        for one in state.vessels
        if one.bath or state.lots_in(one.name)
    )
    done = [one for one in snapshot.entries if one.event.kind not in e.PROGRAM_KINDS][-LAST_ENTRIES:]
    last = tuple(
        v.Happened(f"{(one.happened or one.instant.at):%H:%M}", words.happened_words(state, one.event))
        for one in done
    )
    rings = tuple(words.ring_words(state, one)[0] for one in ringing)
    return v.WhereYouAre(heading, rings, amiss_words(snapshot.entries), pots, last)
