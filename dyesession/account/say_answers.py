"""Answers in words: once more or not, what the bath would still do, how far along, what a reading did, mordant.

Knows nothing of how anything was reckoned. As in `say`: one rounded range, and a guess is called one.
"""

from collections.abc import Mapping

from dyesession.account.along import Along
from dyesession.account.model import Account, Band90, How, ReadingEffect, StrainEstimate
from dyesession.account.mordant_bath import MordantBath
from dyesession.account.once_more import Advice, OnceMore
from dyesession.account.say import Said, plain, rounded_band
from dyesession.account.would_take import WouldDo, WouldTake
from dyesession.session.brought import ingredient_of

NUMBERS = ("no", "first", "second", "third", "fourth", "fifth", "sixth")
FULL_PERCENT = 99.5
STEP_MIN = 5.0  # minutes are said to the nearest five; our own choice, no source
WET = (
    "Wet fibre looks darker than it dries: dry a snippet and hold it, dry, beside the dry colour you want",
    "wet is never compared with dry",
)


_ADVICE: Mapping[Advice, str] = {
    "go on": "Yes",
    "either": "As you like",
    "stop": "Hardly",
    "read first": "Match a strain first",
}


def once_more_words(found: OnceMore) -> tuple[Said, ...]:
    """Whether to extract once more, what that would bring, what each strain brought, and what to doubt."""
    how: How = "guess" if found.is_guess else "matched"
    said = [Said(_advice(found), how, "depth"), Said(_brought(found), how, "depth")]
    said += [Said(one, "", "depth") for one in _doubts(found)]
    return tuple(said)


def _advice(found: OnceMore) -> str:
    word = _ADVICE[found.advice]
    share = _about(found.brings_percent, "%")
    slow = "at least; a stubborn part remains" if found.at_least else "more if a slow part remains"
    cost = [] if found.minutes is None else [f"{_to_five(found.minutes)} minutes of heat"]
    cost += [] if found.water_l is None else [f"{plain(found.water_l)} L more to hold"]
    costs = f"; {' and '.join(cost)}" if cost else ""
    return f"{word}: one more refresh would bring {share} more of what you have drawn ({_ends(found.brings_percent)}; {slow}){costs}"


def again_in_short(found: OnceMore) -> Said:
    """The same in a line that stands beside a pot while the dyestuff is still in the sieve."""
    cost = "" if found.minutes is None else f" for {_to_five(found.minutes)} min heat"
    how: How = "guess" if found.is_guess else "matched"
    return Said(f"Again? {_ADVICE[found.advice]}: {_ends(found.brings_percent)} % more{cost}", how, "depth")


def _about(band: Band90, unit: str) -> str:
    return f"about {band.mean:.0f} {unit}" if band.mean >= 1.0 else f"less than 1 {unit}"


def _ends(band: Band90) -> str:
    return f"{max(0.0, band.low):.0f} to {band.high:.0f}"


def _to_five(minutes: float) -> str:
    return f"{max(STEP_MIN, round(minutes / STEP_MIN) * STEP_MIN):.0f}"


def _brought(found: OnceMore) -> str:
    each = ", ".join(_strain(one) for one in found.strains)
    return f"{each[0].upper()}{each[1:]}; {rounded_band(found.left, 'g')} of {found.lot} is still in it"


def _strain(one: StrainEstimate) -> str:
    name = NUMBERS[one.number] if one.number < len(NUMBERS) else f"{one.number}th"
    return f"the {name} strain brought {rounded_band(one.brought, 'g')} in {rounded_band(one.volume_l, 'L')}"


def _doubts(found: OnceMore) -> list[str]:
    says = []
    if found.is_guess:
        which = "the second" if len(found.strains) > 1 else "the next"
        says.append(f"No strain was read: match {which} against the first, and this narrows")
    if found.not_weaker:
        name = NUMBERS[min(found.not_weaker, len(NUMBERS) - 1)]
        says.append(
            f"The {name} strain reads no weaker than the one before it: what is left cannot be told from that; read both again"
        )
    if found.unlike:
        says.append(
            "A strain was read on a scale of its own: match it against another strain, or it says little"
        )
    return says


def would_take_words(found: WouldTake) -> tuple[Said, ...]:
    """What this old bath would still do for so much fibre."""
    how: How = "guess" if found.percent_wof.is_guess else "modelled"
    depth = ""
    if found.over_first is not None:
        depth = f", {_depth(found.over_first)} of the {found.first}"
    text = (
        f"{_mass(found.mass_g)} g of {found.kind}, mordanted as the first was, would take up"
        f" {rounded_band(found.grams, 'g')} of {ingredient_of(found.lot)} from the {found.bath},"
        f" {rounded_band(found.percent_wof, '%')} of its weight{depth}"
    )
    return (Said(text, how, "fibre"), *_used(found.uses, found.bath))


def _depth(over: Band90) -> str:
    return f"{rounded_band(_times(over, 100.0), '%')} of the depth"


def _times(band: Band90, by: float) -> Band90:
    return Band90(band.mean * by, band.low * by, band.high * by)


def would_do_words(found: WouldDo) -> tuple[Said, ...]:
    """How much fibre the bath would still do at a depth."""
    how: How = "guess" if found.fibre_g.is_guess else "modelled"
    depth = f"{plain(found.percent_wof)} % of its weight in {ingredient_of(found.lot)}"
    if found.fibre_g.high <= 0.0:
        text = f"The {found.bath} would bring no {found.kind} to {depth} any more"
    else:
        text = f"The {found.bath} would bring {rounded_band(found.fibre_g, 'g')} of {found.kind} to {depth}"
    return (Said(text, how, "fibre"), *_used(found.uses, found.bath))


def _used(uses: int, bath: str) -> tuple[Said, ...]:
    times = "once" if uses == 1 else f"{uses} times"
    return (Said(f"The {bath} has been used {times}: its hue may drift", "", "drift"),) if uses else ()


def _mass(grams: float) -> str:
    return f"{grams:.0f}" if grams >= 100.0 else plain(grams)


def along_words(found: Along | None, wet: bool = True) -> tuple[Said, ...]:
    """Is it dark enough? `wet`: whether what the dyer looks at is wet, which is never held against dry."""
    if found is None:
        return (Said(_sentence(*WET), "", "fibre"),) if wet else ()
    how: How = "guess"
    said = [Said(_far(found), how, "fibre")]
    if found.of_wanted is not None and found.at_rest_of_wanted is not None:
        said.append(Said(_wanted(found), how, "fibre"))
    elif wet:
        said.append(Said(_sentence(*WET), "", "fibre"))
    return tuple(said)


def _percent(band: Band90) -> str:
    return f"{band.mean:.0f} % ({_ends(band)})"


def _sentence(*parts: str) -> str:
    return "; ".join(parts)


def _far(found: Along) -> str:
    since = f"After {found.minutes:.0f} min the" if found.minutes >= 1.0 else "The"
    far = f"{since} {found.lot} has {_percent(found.now)} of the {found.dye} it would take in the end"
    if found.at_end is None or found.more_min is None:
        return far
    return f"{far}; {found.more_min:.0f} min more bring it to {_percent(found.at_end)}"


def _wanted(found: Along) -> str:
    assert found.of_wanted is not None
    assert found.at_rest_of_wanted is not None
    dry = f"By the dried snippet the {found.lot} stands at {rounded_band(found.of_wanted, '%')} of the depth you want"
    later = found.at_end_of_wanted or found.at_rest_of_wanted
    when = "left to the end of its hold" if found.at_end_of_wanted is not None else "left as long as it takes"
    return f"{dry}; {when} it would come to {rounded_band(later, '%')}"


def effect_words(effect: ReadingEffect) -> Said:
    """What one reading did: before it, after it."""
    before, after = rounded_band(effect.before, effect.unit), rounded_band(effect.after, effect.unit)
    what = effect.what[0].upper() + effect.what[1:]
    text = f"{what}: before your reading {before}, after it {after}"
    return Said(text, effect.how, "bath")


def last_effects(account: Account) -> tuple[Said, ...]:
    """What the newest reading did, to everything it moved."""
    if not account.effects:
        return ()
    n = account.effects[-1].n
    return tuple(effect_words(one) for one in account.effects if one.n == n)


def mordant_words(found: MordantBath) -> tuple[Said, ...]:
    """What the fibre took of the alum, what stays, and what to add for the next lot."""
    put_in = f"the {plain(found.put_in_g)} g of {found.mordant}"
    took = " and ".join(f"the {one.lot} took {rounded_band(one.grams, 'g')}" for one in found.taken)
    stays = f"{rounded_band(found.left, 'g')} stays in the {found.bath}"
    text = f"{took[0].upper()}{took[1:]} of {put_in}; {stays}" if took else f"Of {put_in} {stays}"
    how: How = "guess" if found.left.is_guess else "modelled"
    said = [Said(text, how, "bath")]
    if found.add is not None:
        said.append(Said(_recharge(found, found.add), how, "bath"))
        said.append(Said("A used mordant bath turns acid and dirty; how far is not reckoned", "", "drift"))
    return tuple(said)


def _recharge(found: MordantBath, add: Band90) -> str:
    wants = f"{_mass(found.next_g)} g more fibre wants {plain(round(found.wanted_g, 1))} g"
    if add.high <= 0.0:
        return f"{wants}: the bath still offers it all"
    saved = ""
    if found.saved_percent is not None and found.saved_percent.mean >= 1.0:
        saved = f", {rounded_band(found.saved_percent, '%')} less than fresh baths for all of it"
    return f"{wants}: add {rounded_band(add, 'g')}{saved}"
