"""What is done with pots and liquor, as it is typed: fill, add, light, strain, pour, top up, keep, throw
away.

Knows names and amounts; whether the day allows it is the engine's to say.
"""

from dyesession.line import amounts
from dyesession.line.answers import Answer, Deed, Guess, Verb
from dyesession.line.phrase import Phrase, in_sieve, no_more
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.from_shelf import beyond, completed
from dyesession.session.state import State, StepState
from dyesession.session.typed_plan import first_minded
from dyesession.units import quoted, show_volume, sign_of


def _volume(phrase: Phrase) -> tuple[float | None, str, str]:
    """The volume left in the phrase: litres, what to say back, and how it is known; (None, "", planned) for
    none.
    """
    if not phrase.rest:
        return None, "", "planned"
    typed = amounts.volume(phrase.rest)
    return typed.value, typed.echo, "read"


def fill(phrase: Phrase) -> Answer:
    """`fill B 7.2 l`."""
    vessel = phrase.pot_or_new("fill B 7.2 l")
    litres, echo, how = _volume(phrase)
    if litres is None:
        litres = _planned_water(phrase.state, vessel)
    if litres is None:
        raise LineError("say how much water, for example “fill B 7.2 l”")
    return Deed(e.Filled(vessel, litres, how), echo)


def _planned_water(state: State, vessel: str) -> float | None:
    step = state.running_in(vessel)
    return step.plan.water_l if step else None


def add(phrase: Phrase) -> Answer:
    """`add alum 29 g to B`; without an amount, what was weighed or planned."""
    vessel = phrase.pot()
    ingredient = phrase.ingredient()
    if ingredient is None:
        named = phrase.rest.rstrip("0123456789., gkozlb")
        raise LineError(
            f"{quoted(named)} is nothing this recipe uses; expected for example “add alum 29 g to B”"
        )
    vessel = vessel or _pot_wanting(phrase.state, ingredient)
    if vessel is None:
        raise LineError(f"say which pot, for example “add {ingredient} 29 g to B”")
    if phrase.rest:
        typed = amounts.mass(phrase.rest)
        return Deed(e.Added(ingredient, vessel, typed.value, "weighed"), typed.echo)
    return Deed(_as_weighed_or_planned(phrase.state, ingredient, vessel))


def _pot_wanting(state: State, ingredient: str) -> str | None:
    for step in state.steps:
        waiting = step.next_addition
        if step.status in ("running", "paused") and waiting is not None and waiting.ingredient == ingredient:
            return step.plan.vessel
    return None


def _as_weighed_or_planned(state: State, ingredient: str, vessel: str) -> e.Added:
    weighed = dict(state.weighed).get(ingredient)
    step = state.running_in(vessel)
    waiting = step.next_addition if step else None
    planned = waiting if waiting is not None and waiting.ingredient == ingredient else None
    portion = planned.portion if planned else ""
    if weighed is not None:
        return e.Added(ingredient, vessel, weighed, "weighed", portion)
    if planned is None:
        raise LineError(f"say how much, for example “add {ingredient} 29 g to B”")
    return e.Added(ingredient, vessel, planned.mass_g, "planned", portion)


def soak(phrase: Phrase) -> Answer:
    """`soak madder in C 1 l`."""
    vessel, ingredient = phrase.need_pot("soak madder in C 1 l"), phrase.ingredient()
    if ingredient is None:
        raise LineError("say what is put to soak, for example “soak madder in C 1 l”")
    litres, echo, _ = _volume(phrase)
    return Deed(e.Soaked(ingredient, vessel, litres), echo)


def dissolve(phrase: Phrase) -> Answer:
    """`dissolve alum 0.5 l`."""
    ingredient = phrase.ingredient()
    if ingredient is None:
        raise LineError("say what is dissolved, for example “dissolve alum 0.5 l”")
    litres, echo, _ = _volume(phrase)
    return Deed(e.Dissolved(ingredient, litres), echo)


def light(phrase: Phrase) -> Answer:
    """`light B`, and `light B off`."""
    on = _without(phrase, "off", "out")
    vessel = phrase.pot_or_guess("light B")
    _without(phrase, "on")
    no_more(phrase, "light B")
    return Deed(e.Lit(vessel, on=not on))


def turn_off(phrase: Phrase) -> Answer:
    """`turn off B`."""
    _without(phrase, "heat")
    vessel = phrase.pot_or_guess("turn off B")
    no_more(phrase, "turn off B")
    return Deed(e.Lit(vessel, on=False))


def _without(phrase: Phrase, *words: str) -> bool:
    """Take a small word out of the phrase; whether it was there."""
    kept = [one for one in phrase.text.split() if one.casefold() not in words]
    there = len(kept) < len(phrase.text.split())
    phrase.text = " ".join(kept)
    return there


def reached(phrase: Phrase) -> Answer:
    """`reached C 70`."""
    vessel = phrase.pot_or_guess("reached C 70")
    if not phrase.rest:
        return Deed(e.Reached(vessel))
    typed = amounts.temperature(phrase.rest)
    return Deed(e.Reached(vessel, typed.value, "read"), typed.echo)


def strain(phrase: Phrase) -> Answer:
    """`strain C into D 1.8 l`."""
    example = "strain C into D 1.8 l"
    vessel, into = _from_into(phrase, example)
    litres, echo, how = _volume(phrase)
    return Deed(e.Strained(vessel, into, litres, how), echo)


def pool(phrase: Phrase) -> Answer:
    """`pour C into D 1.8 l`: all of it without an amount."""
    vessel, into = _from_into(phrase, "pour C into D 1.8 l")
    litres, echo, how = _volume(phrase)
    return Deed(e.Pooled(vessel, into, litres, how), echo)


def _from_into(phrase: Phrase, example: str) -> tuple[str, str]:
    vessel = phrase.need_pot(example)
    planned = next((one.plan.into for one in phrase.state.steps if _strains(one, vessel)), None)
    if planned and " into " not in f" {phrase.text} ":
        return vessel, phrase.pot() or planned
    return vessel, phrase.pot_or_new(example)


def _strains(step: StepState, vessel: str) -> bool:
    return step.plan.stage == "strain" and step.plan.vessel == vessel


def top_up(phrase: Phrase) -> Answer:
    """`top up D to 7 l` fills to a level; `top up D by 0.5 l` adds so much."""
    level = " to " in f" {phrase.text} ".casefold()
    vessel = phrase.pot_or_guess("top up D to 7 l")
    if not phrase.rest:
        planned = _planned_water(phrase.state, vessel)
        if planned is None:
            raise LineError("say up to which level, or by how much, for example “top up D to 7 l”")
        return Deed(e.ToppedUp(vessel, to_l=planned))
    litres, echo, how = _volume(phrase)
    event = (
        e.ToppedUp(vessel, to_l=litres, how=how) if level else e.ToppedUp(vessel, volume_l=litres, how=how)
    )
    return Deed(event, echo)


def fresh_water(phrase: Phrase) -> Answer:
    """`fresh water C 2.4 l`: the strained dyestuff back in with fresh water."""
    vessel = phrase.pot() or _refreshing(phrase.state)
    if vessel is None:
        raise LineError("say into which pot, for example “fresh water C 2.4 l”")
    litres, echo, how = _volume(phrase)
    litres = litres if litres is not None else _planned_water(phrase.state, vessel)
    if litres is None:
        raise LineError("say how much fresh water, for example “fresh water C 2.4 l”")
    return Deed(e.Refreshed(vessel, litres, how), echo)


def _refreshing(state: State) -> str | None:
    """The pot of an extraction that is under way and waits for its fresh water."""
    waiting = [one.plan.vessel for one in state.steps if _wants_fresh_water(one)]
    return waiting[0] if waiting and in_sieve(state) else None


def _wants_fresh_water(step: StepState) -> bool:
    return (
        step.status == "running" and step.plan.again > 0 and step.plan.stage == "extract" and not step.filled
    )


def keep(phrase: Phrase) -> Answer:
    """`keep D as madder exhaust 6 l`: the bath goes into a labelled jar."""
    before, _, label = phrase.text.partition(" as ")
    phrase.text = before
    vessel = phrase.pot_or_guess("keep D as madder exhaust")
    litres, echo, _ = _volume(phrase)
    if litres is None:
        label, litres, echo = _label_and_volume(label)
    bath = next((one.bath for one in phrase.state.vessels if one.name == vessel), None)
    named = label.strip() or f"{' and '.join(bath.liquor_of) if bath and bath.liquor_of else vessel} bath"
    return Deed(e.Kept(vessel, named, litres), echo)


def _label_and_volume(label: str) -> tuple[str, float | None, str]:
    """A volume at the end of a label is the volume kept."""
    words = label.split()
    for index in range(max(1, len(words) - 2), len(words)):
        tail = " ".join(words[index:])
        _, figure = sign_of(tail)
        if figure[0].isdigit() and not amounts.is_bare(figure):
            typed = amounts.volume(tail)
            return " ".join(words[:index]).rstrip(",;"), typed.value, typed.echo
    return label, None, ""


def discard(phrase: Phrase) -> Answer:
    """`empty D`, or `throw away madder exhaust` for a kept bath."""
    label = phrase.rest
    kept = next((one.label for one in phrase.state.kept if one.label.casefold() == label.casefold()), None)
    if kept is not None:
        return Deed(e.Discarded(label=kept))
    vessel = phrase.need_pot("empty D")
    no_more(phrase, "empty D")
    return Deed(e.Discarded(vessel))


def draw(phrase: Phrase) -> Answer:
    """`draw madder exhaust into D 2 l`: from a bath kept today, or one of another day on the shelf."""
    shelf = phrase.scene.day.shelf
    labels = [*(one.label for one in phrase.state.kept), *(one.label for one in shelf.baths)]
    label = next((one for one in labels if phrase.text.casefold().startswith(one.casefold())), None)
    if label is None:
        kept = ", ".join(f"“{one}”" for one in labels) or "none yet"
        raise LineError(f"say which kept bath ({kept}), for example “draw madder exhaust into D 2 l”")
    phrase.text = phrase.text[len(label) :]
    vessel = phrase.pot_or_new("draw madder exhaust into D 2 l")
    litres, echo, _ = _volume(phrase)
    bath = next((one.bath for one in phrase.state.kept if one.label == label), None)
    drawn = completed(
        shelf, phrase.state, e.Drawn(vessel, label, "", litres, bath.liquor_of if bath is not None else ())
    )
    if trouble := beyond(shelf, drawn):
        raise LineError(trouble)
    minded = first_minded(phrase.state, drawn)
    if bath is not None:
        return Deed(drawn, echo)
    much = f"{show_volume(litres)} of " if litres is not None else ""
    return Guess(drawn, f"{much}{label} into the {vessel}. {minded}".rstrip(". "))


VERBS = (
    Verb(("fill",), "", "fill B 7.2 l", "a pot filled with water", fill),
    Verb(("add", "added"), "", "add alum 29 g to B", "an ingredient put in a pot", add),
    Verb(("soak",), "", "soak madder in C 1 l", "dyestuff put to soak", soak),
    Verb(("dissolve",), "", "dissolve alum 0.5 l", "a powder dissolved", dissolve),
    Verb(("light", "heat"), "", "light B", "the heat under a pot turned on", light),
    Verb(("turn off", "heat off"), "", "turn off B", "the heat under a pot turned off", turn_off),
    Verb(("reached",), "", "reached C 70", "a pot is at its heat: its hold starts", reached),
    Verb(("strain",), "x", "strain C into D 1.8 l", "a pot strained into another", strain),
    Verb(("pour", "pool"), "", "pour C into D 1.8 l", "a bath poured into another", pool),
    Verb(("top up",), "u", "top up D to 7 l", "water added, up to a level (to) or so much (by)", top_up),
    Verb(
        ("fresh water",), "", "fresh water C 2.4 l", "strained dyestuff back in with fresh water", fresh_water
    ),
    Verb(("keep",), "", "keep D as madder exhaust", "a bath kept in a labelled jar", keep),
    Verb(("empty", "discard", "throw away"), "", "empty D", "a bath thrown away, in a pot or kept", discard),
    Verb(("draw",), "", "draw madder exhaust into D 2 l", "a bath kept today poured in", draw),
)
