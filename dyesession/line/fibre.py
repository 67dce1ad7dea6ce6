"""What is done with fibre and snippets, as it is typed: enter, lift, dip, on shade.

Knows names and amounts; whether the day allows it is the engine's to say.
"""

from dyesession.line import amounts
from dyesession.line.answers import Answer, Deed, Verb
from dyesession.line.phrase import Phrase, no_more, pot_in_question, pot_of_lot
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.state import Lot, State


def enter(phrase: Phrase) -> Answer:
    """`enter large skein into B`."""
    lot = phrase.lot()
    if lot is None:
        raise LineError(f"say which lot ({_lots(phrase.state)}), for example “enter large skein into B”")
    vessel = phrase.pot_or_guess("enter large skein into B")
    no_more(phrase, "enter large skein into B")
    return Deed(e.Dipped(lot.name, vessel) if lot.snippet else e.Entered(lot.name, vessel))


def lift(phrase: Phrase) -> Answer:
    """`lift large skein 620 g`, `lift snippet 1`."""
    lot = phrase.lot()
    vessel = phrase.pot()
    lot = lot or _only_lot(phrase, vessel)
    inside = pot_of_lot(phrase.state, lot)
    if inside is None:
        raise LineError(f"{lot.name} is in no pot ({lot.place}), so there is nothing to lift")
    if not phrase.rest:
        return Deed(e.Lifted(lot.name, vessel or inside.name))
    typed = amounts.mass(phrase.rest)
    return Deed(e.Lifted(lot.name, vessel or inside.name, typed.value), typed.echo)


def _only_lot(phrase: Phrase, vessel: str | None) -> Lot:
    state = phrase.state
    if vessel is not None:
        inside = state.lots_in(vessel)
    else:
        inside = tuple(one for one in state.lots if pot_of_lot(state, one))
        if isinstance(phrase.scene.suggestion, e.Lifted):
            inside = tuple(one for one in inside if one.name == phrase.scene.suggestion.lot)
    if len(inside) == 1:
        return inside[0]
    which = ", ".join(one.name for one in inside)
    if not which:
        raise LineError("no fibre is in that pot: there is nothing to lift")
    raise LineError(f"say which ({which}), for example “lift {inside[0].name}”")


def _lots(state: State) -> str:
    return ", ".join(one.name for one in state.lots)


def dip(phrase: Phrase) -> Answer:
    """`dip`, `dip snippet 2 in D`."""
    named, vessel = phrase.snippet(), phrase.pot()
    no_more(phrase, "dip snippet 1 in D")
    inside = _snippets_inside(phrase.state)
    if named is None and inside:
        first = inside[0].name
        raise LineError(
            f"{first} is in the bath still: “lift {first}” first, or name another, “dip snippet 2”"
        )
    return Deed(e.Dipped(named or _next_snippet(phrase.state), vessel or _dye_pot(phrase)))


def dip_or_lift(phrase: Phrase) -> Answer:
    """`d`: as the key on the screen, dip a snippet, or lift the one that is in."""
    inside = _snippets_inside(phrase.state)
    if inside and not phrase.rest:
        return Deed(e.Lifted(inside[0].name, inside[0].place))
    return dip(phrase)


def _snippets_inside(state: State) -> list[Lot]:
    return [one for one in state.lots if one.snippet and pot_of_lot(state, one)]


def _dye_pot(phrase: Phrase) -> str:
    dyeing = [
        one.plan.vessel
        for one in phrase.state.steps
        if one.status in ("running", "paused") and one.plan.stage in ("dye", "modify") and one.plan.vessel
    ]
    if len(dyeing) == 1:
        return dyeing[0]
    guess = pot_in_question(phrase.scene)
    if guess is None:
        raise LineError("say in which pot, for example “dip snippet 1 in D”")
    return guess


def _next_snippet(state: State) -> str:
    number = 1 + sum(1 for one in state.lots if one.snippet)
    return f"snippet {number}"


def on_shade(phrase: Phrase) -> Answer:
    """`on shade`, `on shade dye: dark enough`."""
    judged = [
        one
        for one in phrase.state.steps
        if one.status in ("running", "paused") and one.plan.judge is not None
    ]
    named = phrase.step()
    if named is None and len(judged) != 1:
        named = phrase.step_or_guess(("running", "paused"), "on shade")
    no_more(phrase, "on shade: dark enough")
    return Deed(e.OnShade((named or judged[0]).name, phrase.why))


VERBS = (
    Verb(("enter", "in"), "", "enter large skein into B", "fibre put into a pot", enter),
    Verb(
        ("lift", "out"), "l", "lift large skein 620 g", "fibre or a snippet lifted, weighed wet or not", lift
    ),
    Verb(("dip",), "", "dip snippet 1 in D", "a snippet dipped", dip),
    Verb(("dip or lift",), "d", "d", "a snippet dipped, or lifted again", dip_or_lift),
    Verb(("on shade", "shade"), "o", "on shade: dark enough", "your eye ends the dyeing", on_shade, why=True),
)
