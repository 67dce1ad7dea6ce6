"""Water, every lot's colour and every ingredient balance over any history, in every world and so in the
means.
"""

from dataclasses import replace

from account.by_hand import Pages
from days import madder_plan
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.account.estimate import unbalanced
from dyesession.account.ledger import Ledger, reckon
from dyesession.account.testimony import accounted
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session.brought import Brought, for_log
from dyesession.session.fit import misfit
from dyesession.session.fold import Entry
from dyesession.session.state import State

ALLOWED = 1e-9
LEAST_READ_L = 0.1
NOTHING_OF_A_VOLUME = 0.04  # within the error of a jug: a skewed band's mean may move by so much
VESSELS = ("extract pot", "dye pot", "mordant pot")
LOTS = ("large skein", "small skein")
LABELS = ("shelf 1", "shelf 2")


def two_dye_plan() -> Plan:
    """The madder day with weld extract beside it, which dissolves whole."""
    plan = madder_plan()
    weld = replace(plan.dose("madder"), ingredient="weld", substance="weld extract")
    return replace(plan, doses=(*plan.doses, weld))


PLAN = two_dye_plan()

vessel = st.sampled_from(VESSELS)
lot = st.sampled_from(LOTS)
label = st.sampled_from(LABELS)
litres = st.floats(0.05, 6.0).map(lambda value: round(value, 3))
how = st.sampled_from(["planned", "read", "weighed", "typed"])
maybe_litres = st.none() | litres
wet_g = st.none() | st.floats(150.0, 900.0)

ingredient = st.sampled_from(["madder", "weld", "alum", "tartar", "salt"])
step = st.sampled_from(["mordant", "extract", "dye", "dry"])
temperature_c = st.none() | st.floats(15.0, 99.0)
new_volume = litres.map(lambda value: ({"key": "volume_l", "value": value},))
early_entry = st.integers(1, 7)

came_along = st.sampled_from(
    [
        for_log([Brought("madder", "madder root", "dyestuff", 20.0, 8.0, 35.0)]),
        for_log([Brought("alum", "potassium alum", "mordant", 9.0, 0.0, 12.0)]),
    ]
)
facts: st.SearchStrategy[e.Event] = st.one_of(
    st.builds(e.Filled, vessel, litres, how),
    st.builds(e.Added, ingredient, vessel, st.floats(0.1, 90.0)),
    st.builds(e.Dissolved, st.just("madder")),
    st.builds(e.Strained, vessel, vessel, maybe_litres, how),
    st.builds(e.Refreshed, vessel, litres, how),
    st.builds(e.Pooled, vessel, vessel, maybe_litres, how),
    st.builds(e.ToppedUp, vessel, to_l=litres, how=how),
    st.builds(e.ToppedUp, vessel, volume_l=litres, how=how),
    st.builds(e.Entered, lot, vessel),
    st.builds(e.Lifted, lot, vessel, wet_g),
    st.builds(e.Dipped, st.just("snippet 1"), vessel),
    st.builds(e.Lifted, st.just("snippet 1"), vessel),
    st.builds(e.Read, vessel=vessel, volume_l=maybe_litres, temperature_c=temperature_c),
    st.builds(e.Read, lot=lot, mass_g=st.floats(150.0, 900.0)),
    st.builds(e.Lit, vessel, st.booleans()),
    st.builds(e.Reached, vessel, st.floats(40.0, 100.0)),
    st.builds(e.Begun, step, early=st.just("because")),
    st.builds(e.Finished, step),
    st.builds(e.Kept, vessel, label, maybe_litres),
    st.builds(e.Drawn, vessel, label, volume_l=maybe_litres),
    st.builds(e.Drawn, vessel, st.just("old red"), st.just("a day before"), litres, brought=came_along, brought_l=litres),
    st.builds(e.Discarded, vessel),
    st.builds(e.Discarded, label=label),
    st.builds(e.Corrected, early_entry, st.just("misread"), strike=st.just(True)),
    st.builds(e.Corrected, early_entry, st.just("misread"), changes=new_volume),
)

# A day that has begun like a day, so that what follows it finds something in the pots.
OPENING: tuple[tuple[e.Event, float], ...] = (
    (e.Filled("extract pot", 2.4), 0.0),
    (e.Added("madder", "extract pot", 120.0), 1.0),
    (e.Begun("extract"), 0.0),
    (e.Lit("extract pot"), 0.0),
    (e.Filled("mordant pot", 7.2), 5.0),
    (e.Added("alum", "mordant pot", 28.8), 1.0),
    (e.Entered("large skein", "mordant pot"), 1.0),
)


def ordinary(state: State) -> list[e.Event]:
    """What a dyer would do next with what is in the pots."""
    full = [one.name for one in state.vessels if one.bath is not None]
    acts: list[e.Event] = [e.Lifted(one.name, one.place) for one in state.lots if state.vessel(one.place)]
    acts += [e.Entered(one.name, pot) for one in state.lots if not state.vessel(one.place) for pot in full]
    acts += [e.Strained(one.place, "dye pot") for one in state.dyestuffs if one.place in full]
    acts += [e.Refreshed("extract pot", 2.4), e.Filled("dye pot", 5.0)]
    for pot in full:
        acts += [e.Discarded(pot), e.Kept(pot, "shelf 1"), e.Added("tartar", pot, 5.0)]
        acts += [e.Lit(pot), e.Reached(pot, 85.0)]
    return [one for one in acts if not misfit(state, one)]


@st.composite
def histories(draw: st.DrawFn) -> Pages:
    """A day of facts, half of them what a dyer would do next and half anything, with minutes and hours
    between.
    """
    day = Pages(PLAN)
    for event, minutes in OPENING:
        day.write(event, minutes)
    ledger = day.ledger()
    for _ in range(draw(st.integers(6, 22))):
        acts = ordinary(ledger.state)
        event = draw(st.sampled_from(acts) if acts and draw(st.booleans()) else facts)
        day.write(event, draw(st.sampled_from([0.0, 1.0, 25.0, 200.0])))
        ledger = ledger.after(day.entries[-1])
    return day


@settings(max_examples=60, deadline=None)
@given(histories())
def test_every_world_balances_after_every_entry(day: Pages) -> None:
    ledger = Ledger.start(PLAN, day.opened)
    for entry in day.entries:
        ledger = ledger.after(entry)
        off = {name: max(map(abs, values)) for name, values in unbalanced(ledger.held).items()}
        assert max(off.values()) < ALLOWED, (entry.event, off)


@settings(max_examples=60, deadline=None)
@given(histories())
def test_the_means_shown_balance_and_nothing_is_less_than_nothing(
    day: Pages,
) -> None:
    account = day.account()
    for balance in (*account.balances, account.water):
        assert abs(balance.unaccounted) < ALLOWED, balance
    for bath in account.baths:
        assert bath.volume_l.low > -ALLOWED
        assert all(one.grams.low > -ALLOWED for one in (*bath.dye, *bath.contents))
    for dyestuff in account.dyestuffs:
        assert dyestuff.left_in_dyestuff.low > -ALLOWED


@settings(max_examples=30, deadline=None)
@given(histories())
def test_entry_by_entry_is_the_same_as_all_at_once(day: Pages) -> None:
    ledger = Ledger.start(PLAN, day.opened)
    for entry in day.entries:
        ledger = ledger.after(entry)
    assert ledger.account() == reckon(PLAN, day.entries, day.opened)


@settings(max_examples=30, deadline=None)
@given(histories())
def test_what_the_program_showed_changes_nothing(day: Pages) -> None:
    plain = reckon(PLAN, day.entries, day.opened)
    told: list[Entry] = []
    for entry in day.entries:
        testimony = accounted(plain, entry.n)
        told += [entry, Entry(1000 + entry.n, entry.instant, testimony)]
    assert reckon(PLAN, tuple(told), day.opened) == plain


@settings(max_examples=30, deadline=None)
@given(histories(), vessel, st.floats(0.9, 1.1))
def test_a_likely_volume_reading_draws_the_mean_to_it_and_never_widens_the_band(
    day: Pages, pot: str, off: float
) -> None:
    was = day.account().bath(pot)
    if was is None or was.kept or was.volume_l.mean < LEAST_READ_L:
        return
    reading_l = off * was.volume_l.mean
    now = day.write(e.Read(vessel=pot, volume_l=reading_l)).account().bath(pot)
    assert now is not None
    # The tails are heavy: a band may widen by a little where a reading is a surprise.
    assert now.volume_l.half_width <= max(was.volume_l.half_width, 0.06 * reading_l)
    assert abs(now.volume_l.mean - reading_l) <= abs(was.volume_l.mean - reading_l) + NOTHING_OF_A_VOLUME * reading_l


@settings(max_examples=30, deadline=None)
@given(histories(), vessel, st.floats(0.2, 12.0))
def test_a_volume_far_from_what_was_reckoned_is_believed(day: Pages, pot: str, reading_l: float) -> None:
    was = day.account().bath(pot)
    now = day.write(e.Read(vessel=pot, volume_l=reading_l)).account().bath(pot)
    if was is None or now is None or was.kept or was.volume_l.low <= reading_l <= was.volume_l.high:
        return
    assert abs(now.volume_l.mean - reading_l) < 0.1 * reading_l + 0.5 * was.volume_l.half_width
    assert abs(now.volume_l.mean - reading_l) < abs(was.volume_l.mean - reading_l)
    assert now.volume_l.half_width < 0.15 * reading_l + 0.5 * was.volume_l.half_width


@settings(max_examples=30, deadline=None)
@given(histories())
def test_the_lines_of_a_bath_add_up_to_what_it_holds(day: Pages) -> None:
    account = day.account()
    for bath in account.baths:
        if bath.kept:
            continue
        lines = [one for one in account.lines if one.vessel == bath.vessel]
        slack = 0.0005 * (len(lines) + len(account.lines))  # what is too small for a line of its own
        assert abs(sum(one.volume_change_l.mean for one in lines) - bath.volume_l.mean) <= slack
        for amount in bath.dye:
            moved = [c.grams.mean for one in lines for c in one.changes if c.lot == amount.lot]
            assert abs(sum(moved) - amount.grams.mean) <= slack
