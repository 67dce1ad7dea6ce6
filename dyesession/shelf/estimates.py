"""What is in a standing bath, with its bands: from the account of the day that kept it.

What a bath of another day brought along stands in that day's own account where the pouring told it. Where it
did not, it is carried on here: what stood in it then, less what the fibre of this day took, by the starting
guess for that dyestuff and fibre. A guess.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime

from dyesession.account import Account, Band90, reckon
from dyesession.account.logged import starting_of
from dyesession.account.model import BathEstimate
from dyesession.dyeing.exhaustion import share_left_after
from dyesession.dyeing.priors import partition_prior
from dyesession.session.brought import ingredient_of
from dyesession.session.opening import LoggedDay
from dyesession.shelf.drawing import Standing, source_of
from dyesession.shelf.model import Inside
from dyesession.shelf.tracing import Drew, Traced

G_PER_KG = 1000.0
LEAST_G = 0.05  # less of a thing in a bath is not worth a word; our own choice, no source
UNKNOWN_L = 5.0  # litres where nobody read them: an ordinary pot half full; our own choice, no source
MOST_FOREBEARS = 8  # how far back a bath's past is followed; our own choice, no source

Reckon = Callable[[LoggedDay], Account]


def account_of_day(day: LoggedDay) -> Account:
    """Today's account of a day's facts, from the numbers the day was begun with."""
    return reckon(day.plan, day.entries, day.opened, starting_of(day.header))


class Estimates:
    """Accounts of days, each reckoned once and only when asked for."""

    def __init__(self, standing: Sequence[Standing], reckoned: Reckon = account_of_day) -> None:
        self._standing, self._reckoned = standing, reckoned
        self._accounts: dict[str, Account] = {}

    def account(self, day: LoggedDay) -> Account:
        """The account of that day."""
        if day.name not in self._accounts:
            self._accounts[day.name] = self._reckoned(day)
        return self._accounts[day.name]

    def bath(self, one: Standing) -> BathEstimate | None:
        """What the account of its own day says of it."""
        baths = self.account(one.keeper.day).baths
        return next((bath for bath in baths if bath.kept and bath.vessel == one.put_by.label), None)

    def volume(self, one: Standing) -> Band90 | None:
        """Litres that stand now."""
        bath = self.bath(one)
        if bath is None:
            return None
        drawn_l = 0.0 if one.whole_l is None or one.left_l is None else one.whole_l - one.left_l
        band = self._widened(one, bath.volume_l)
        return Band90(*(max(0.0, value - drawn_l) for value in (band.mean, band.low, band.high)))

    def _widened(self, one: Standing, band: Band90, back: int = 0) -> Band90:
        """Nobody measured what was poured in anew: it is as uncertain as the bath it came from was."""
        if one.put_by.trace.litres_read or back >= MOST_FOREBEARS:
            return band
        below, above = band.mean - band.low, band.high - band.mean
        for drew in one.put_by.trace.drew:
            source = source_of(self._standing, drew)
            if source is None or source is one or (there := self.bath(source)) is None:
                continue
            came, share = self._widened(source, there.volume_l, back + 1), _share_drawn(source, drew)
            below += share * (came.mean - came.low)
            above += share * (came.high - came.mean)
        return Band90(band.mean, max(0.0, band.mean - below), band.mean + above)

    def inside(self, one: Standing) -> tuple[Inside, ...]:
        """Everything in it now, the colours first."""
        return tuple(_scaled(each, one.left_share) for each in self._as_kept(one, 0))

    def uses(self, one: Standing) -> int:
        """Dyeings done in it, those of the baths it was drawn from too."""
        return self._uses(one, 0)

    def _uses(self, one: Standing, back: int) -> int:
        own = sum(_dyed(one.keeper, dip.step) for dip in one.put_by.trace.dips)
        return own + max((self._uses(bath, back + 1) for bath in self._forebears(one, back)), default=0)

    def began(self, one: Standing, back: int = 0) -> datetime:
        """When what is in it was first put by; a bath that was heated again begins anew."""
        trace, at = one.put_by.trace, one.put_by.at
        if trace.heated or trace.dips:
            return at
        return min((self.began(bath, back + 1) for bath in self._forebears(one, back)), default=at)

    def ph(self, one: Standing, back: int = 0) -> tuple[float, datetime] | None:
        """Its last pH and when it was read, carried on where it was only poured from jar to jar."""
        trace = one.put_by.trace
        if trace.ph is not None and trace.ph_at is not None:
            return trace.ph, trace.ph_at
        forebears = self._forebears(one, back)
        if trace.changed or trace.dips or len(forebears) != 1:
            return None
        return self.ph(forebears[0], back + 1)

    def how(self, one: Standing, back: int = 0) -> str:
        """Where its figures come from, in one word."""
        forebears = self._forebears(one, back)
        if all(drew.brought for drew in one.put_by.trace.drew):
            estimate = self.bath(one)
            return estimate.how if estimate is not None else "guess"
        if one.put_by.trace.dips or len(forebears) != len(one.put_by.trace.drew):
            return "guess"
        words = {self.how(bath, back + 1) for bath in forebears}
        return words.pop() if len(words) == 1 else "guess"

    def origins(self, one: Standing, back: int = 0) -> list[Standing]:
        """The baths fibre was first dyed or mordanted in: itself, else those it was drawn from."""
        if one.put_by.trace.lots:
            return [one]
        return [origin for bath in self._forebears(one, back) for origin in self.origins(bath, back + 1)]

    def origins_before(self, one: Standing) -> list[Standing]:
        """The baths fibre was first in, among those this one was drawn from."""
        return [origin for bath in self._forebears(one, 0) for origin in self.origins(bath, 1)]

    def doses_g(self, one: Standing) -> dict[str, float]:
        """Grams of each ingredient that the day of this bath put in."""
        found: dict[str, float] = {}
        for each in one.keeper.last.put_in:
            found[each.ingredient] = found.get(each.ingredient, 0.0) + each.mass_g
        return found

    def _forebears(self, one: Standing, back: int) -> list[Standing]:
        if back >= MOST_FOREBEARS:
            return []
        found = (source_of(self._standing, drew) for drew in one.put_by.trace.drew)
        return [bath for bath in found if bath is not None and bath is not one]

    def _as_kept(self, one: Standing, back: int) -> tuple[Inside, ...]:
        """What was in it as it was put by, before anything was drawn."""
        bath = self.bath(one)
        found: dict[tuple[str, str], Inside] = {}
        for each in _own(one, bath):
            key = (each.ingredient, each.substance)
            found[key] = _together(found[key], each, False) if key in found else each
        poured: set[tuple[str, str]] = set()
        for drew in one.put_by.trace.drew if back < MOST_FOREBEARS else ():
            source = source_of(self._standing, drew)
            if source is None or source is one:
                continue
            for each in self._as_kept(source, back + 1):
                key = (each.ingredient, each.substance)
                if drew.brought:
                    found |= {key: _of_first(found[key], each, key in poured)} if key in found else {}
                else:
                    came = self._after_dips(_scaled(each, _share_drawn(source, drew)), one)
                    found[key] = _together(found[key], came, key in poured) if key in found else came
                poured.add(key)
        return tuple(sorted(found.values(), key=lambda each: each.role != "dyestuff"))

    def _after_dips(self, each: Inside, one: Standing) -> Inside:
        """What the fibre of this day left of a colour that was brought in."""
        if each.role != "dyestuff" or each.grams is None:
            return each
        lots = {lot.name: lot for lot in one.keeper.last.lots}
        dips = [dip for dip in one.put_by.trace.dips if _dyed(one.keeper, dip.step)]
        masses_kg = [sum(lots[name].mass_g for name in dip.lots if name in lots) / G_PER_KG for dip in dips]
        ratios = [(one.whole_l or UNKNOWN_L) / mass for mass in masses_kg if mass > 0]
        if not ratios:
            return each
        kind = next(lots[name].kind for dip in dips for name in dip.lots if name in lots)
        prior = partition_prior(kind, each.substance)
        mean, low, high = (share_left_after(k, ratios) for k in (prior.centre, prior.high, prior.low))
        band = each.grams
        return _with(each, Band90(band.mean * mean, band.low * low, band.high * high))


def _dyed(keeper: Traced, step: str) -> bool:
    found = keeper.last.step(step)
    return found is not None and found.plan.stage in ("dye", "modify")


def _own(one: Standing, bath: BathEstimate | None) -> list[Inside]:
    if bath is None:
        return []
    keeper, fact = one.keeper, one.put_by.bath
    put_in = {each.ingredient for each in fact.bath.contents} if fact is not None else set()
    put_in |= set(fact.bath.liquor_of) if fact is not None else set()
    roles = {each.ingredient: each.role for each in keeper.last.doses}
    came = {each.lot: each for drew in one.put_by.trace.drew for each in drew.brought}
    named = dict(keeper.last.substances)
    all_g: dict[str, float] = {}
    for each in keeper.last.put_in:
        all_g[each.ingredient] = all_g.get(each.ingredient, 0.0) + each.mass_g
    return [
        Inside(
            ingredient_of(amount.lot),
            came[amount.lot].substance if amount.lot in came else named.get(amount.lot, amount.lot),
            "dyestuff" if dye else roles.get(amount.lot) or (came[amount.lot].role if amount.lot in came else "assist"),
            amount.grams,
            all_g.get(amount.lot, 0.0 if amount.lot in came else None),
            amount.lot not in put_in and amount.lot not in came,
        )
        for dye, amounts in ((True, bath.dye), (False, bath.contents))
        for amount in amounts
        if amount.grams.high >= LEAST_G
    ]


def _of_first(here: Inside, there: Inside, both_poured: bool) -> Inside:
    """What is here, with the first weighing it goes back to where the account knows the grams already."""
    if both_poured or there.of_g is None:
        return replace(here, of_g=None)
    return replace(here, of_g=(here.of_g or 0.0) + there.of_g)


def _share_drawn(source: Standing, drew: Drew) -> float:
    if drew.volume_l is None or not source.whole_l:
        return 1.0
    return min(1.0, drew.volume_l / source.whole_l)


def _scaled(each: Inside, by: float) -> Inside:
    if each.grams is None or by == 1.0:
        return each
    return _with(each, Band90(each.grams.mean * by, each.grams.low * by, each.grams.high * by))


def _together(one: Inside, other: Inside, both_poured: bool) -> Inside:
    """Two lots of one thing in a bath: means and ends added, which is never too narrow.

    Two baths poured together may go back to one weighing: then "of so much" would count it twice.
    """
    if one.grams is None or other.grams is None:
        return one if one.grams is not None else other
    band = Band90(
        one.grams.mean + other.grams.mean, one.grams.low + other.grams.low, one.grams.high + other.grams.high
    )
    unknown = both_poured or one.of_g is None or other.of_g is None
    all_g = None if unknown else (one.of_g or 0.0) + (other.of_g or 0.0)
    return Inside(one.ingredient, one.substance, one.role, band, all_g, one.carried and other.carried)


def _with(each: Inside, band: Band90) -> Inside:
    return replace(each, grams=band)
