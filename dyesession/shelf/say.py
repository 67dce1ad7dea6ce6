"""A kept bath in sentences, and what it would still do in one. Pure; knows no screens."""

from collections.abc import Iterator, Sequence

from dyesession.account.say import rounded_band
from dyesession.shelf.model import Inside, KeptBath, Recharge, Shelf, Waiting, WouldDo
from dyesession.units import show_mass

LEAST_SHOWN_DEPTH = 0.05


def bath_sentences(bath: KeptBath) -> tuple[str, ...]:
    """Everything there is to say of a bath, the most telling first, each without its full stop."""
    return tuple(_sentences(bath))


def _sentences(bath: KeptBath) -> Iterator[str]:
    yield _holds(bath)
    if bath.would_do is not None:
        yield would_do_words(bath.would_do)
    if bath.recharge:
        yield recharges_words(bath.recharge)
    yield _used(bath)
    if bath.ph is not None:
        yield f"its pH was {bath.ph:.1f}, read {bath.ph_on}"
    else:
        yield "its pH as it stands was not read"
    if bath.place:
        yield f"it stands {bath.place}"
    when = "that day is over" if bath.past else f"put by {_ago(bath.age_days)}"
    yield f"look again by {bath.look_again} ({bath.look_again_source}); {when}"
    if bath.drawn_from:
        yield f"it began as {' and '.join(bath.drawn_from)}"
    yield from bath.troubles


def _holds(bath: KeptBath) -> str:
    litres = rounded_band(bath.volume_l, "L") if bath.volume_l is not None else "nobody read how much"
    held = ", ".join(_inside(one) for one in bath.worth_telling) or "nothing an account knows of"
    guess = ", a guess" if bath.how == "guess" else f", {bath.how}"
    return f"{litres}: {held}{guess if bath.inside else ''}"


def _inside(one: Inside) -> str:
    if one.grams is None:
        return one.ingredient
    amount = rounded_band(one.grams, "g")
    of = f" of {show_mass(one.of_g)}" if one.of_g else ""
    if one.role == "dyestuff":
        return f"the colour of {amount}{of} {one.ingredient}"
    return f"{amount}{of} {one.ingredient}"


def _used(bath: KeptBath) -> str:
    if not bath.went_through:
        return "nothing has been through it yet"
    times = "once" if bath.uses == 1 else "twice" if bath.uses == 2 else f"{bath.uses} times"
    drift = ": its hue may drift" if bath.hue_may_drift else ""
    dyed = f"used {times}, " if bath.uses else ""
    return f"{dyed}{_listed(bath.went_through)} went through it{drift}"


def would_do_words(one: WouldDo) -> str:
    """ "about 60 g of alumed wool at half the depth of the first lot (0.3 to 0.8)"."""
    band = f"({one.low:.1f} to {one.high:.1f})"
    if one.depth < LEAST_SHOWN_DEPTH:
        return f"it would hardly tint another {show_mass(one.fibre_g)} of {one.fibre} {band}"
    depth = "half" if abs(one.depth - 0.5) < LEAST_SHOWN_DEPTH else f"{one.depth:.1f} of"
    text = f"it would still do about {show_mass(one.fibre_g)} of {one.fibre} at {depth} the depth of {one.first}"
    if abs(one.depth - 1.0) < LEAST_SHOWN_DEPTH:
        text = f"it would still do about {show_mass(one.fibre_g)} of {one.fibre} at {one.first}"
    came = f"; the first came out {one.colour}" if one.colour else ""
    then = f", this would be near {one.then} ± {one.then_plus_minus:.0f}" if one.then_plus_minus else ""
    return f"{text} {band}{came}{then}"


def recharges_words(these: Sequence[Recharge]) -> str:
    """ "for another 240 g of fibre add 9.7 ± 3.8 g alum, to come to 28.8 g again"."""
    added = " and ".join(
        f"{rounded_band(one.add, 'g')} {one.ingredient}, to come to {show_mass(one.wanted_g)} again," for one in these
    )
    fibre = show_mass(these[0].fibre_g)
    return f"for another {fibre} of fibre add {added.rstrip(',')}; its pH and sourness drift, so this is no promise"


def _listed(words: Sequence[str]) -> str:
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else "".join(words)


def waiting_words(one: Waiting) -> str:
    """One mordanted lot: "the small skein, 75 g wool, mordanted with ..., waits since ..."."""
    return (
        f"the {one.lot}, {show_mass(one.mass_g)} {one.kind}, mordanted with {one.how or 'what was not said'},"
        f" waits since {one.since} ({_ago(one.age_days)})"
    )


def demo_words(shelf: Shelf) -> str:
    """What is said of a shelf that came with the program."""
    return f"Demo baths, kept by nobody, as they stood on {shelf.stood_on}; they go when you keep a day of your own"


def _ago(days: int) -> str:
    return "today" if days == 0 else "yesterday" if days == 1 else f"{days} days ago"
