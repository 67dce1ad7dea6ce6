"""What days teach: the dyer's own numbers out of readings in the log, each with its days, handed on to what follows."""

import math
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from daybook.logged import logged
from daybook.written import written
from days import Day

from dyesession.account import reckon
from dyesession.account.logged import priors_for_log, starting_of
from dyesession.account.unknowns import Starting
from dyesession.daybook import learned_index
from dyesession.daybook.learned_index import learnt_of
from dyesession.daybook.learned_text import changed_lines, learned_as_json, learned_lines
from dyesession.daybook.learning import Learnt, learnt
from dyesession.daybook.own_numbers import own_kitchen, start_of
from dyesession.dyeing.priors import KEPT_SHARE, UPTAKE_RATE
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.opening import read_day as read_day_file
from dyesession.storage import DISK


def read_day(
    name: str, after: float = 0.2, second: float = 0.4, wet_g: float = 480.0, header: dict[str, object] | None = None
) -> LoggedDay:
    """The madder day with a strain, the used bath and a skein's wet weight read."""
    run = Day()
    read, weighed, told = 0, False, False
    while run.state.status != "complete":
        act = run.suggest()
        if isinstance(act, e.Strained):
            read += 1
            if read == 2:
                run.do(e.Read("extract pot", strength=second, against="first strain", how="matched"))
        if isinstance(act, e.Lifted) and act.vessel == "dye pot" and not told:
            told = True
            run.do(e.Read("dye pot", strength=after, against="before", how="matched"))
        if isinstance(act, e.Lifted) and act.lot == "large skein" and not weighed:
            weighed = True
            run.do(e.Lifted(act.lot, act.vessel, wet_g))
        else:
            run.space()
    return replace(logged(run, header), name=name)


@pytest.fixture(scope="module")
def four() -> list[LoggedDay]:
    told = [(0.2, 0.4, 480.0), (0.22, 0.36, 470.0), (0.19, 0.42, 500.0), (0.21, 0.38, 475.0)]
    days = [read_day(f"2026-03-{14 + i}-a-day", *one) for i, one in enumerate(told)]
    return [
        replace(day, opened=replace(day.opened, at=day.opened.at + timedelta(days=i))) for i, day in enumerate(days)
    ]


def test_a_day_with_nothing_read_teaches_nothing() -> None:
    run = Day()
    run.home()
    found = learnt([logged(run)])
    assert found.numbers == () and "No day has taught a number yet" in " ".join(learned_lines(found, 80))


def test_a_used_bath_tells_what_the_fibre_takes(four: list[LoggedDay]) -> None:
    """7.2 L on 240 g is 1:30; a fifth left of the bath, and an hour at heat that is 95 % of the way."""
    found = learnt(four[:1]).number("exhaustion", "madder root", "wool")
    assert found is not None and found.days == ("2026-03-14-a-day",)
    taken = 0.8 / -math.expm1(-UPTAKE_RATE.centre * 60.0)
    shown = 30.0 * taken / (1.0 - taken)
    assert min(shown, 170.0) <= found.own.centre <= max(shown, 170.0)  # between the reading and the guess
    assert found.own.low > found.guess.low and found.own.high < found.guess.high


def test_more_days_narrow_every_number_and_each_names_its_days(four: list[LoggedDay]) -> None:
    one, all_four = learnt(four[:1]), learnt(four)
    abouts = [(each.about.what, each.about.of) for each in all_four.numbers]
    assert ("kept share", "madder root") in abouts and ("liquor held", "wool") in abouts
    for number in all_four.numbers:
        before = one.number(number.about.what, number.about.of, number.about.on)
        assert before is not None and number.days == tuple(day.name for day in four)
        assert number.own.high / number.own.low < before.own.high / before.own.low
        assert number.next_day.high / number.next_day.low < number.guess.high / number.guess.low


def test_the_order_of_the_days_does_not_matter_and_rehearsals_teach_nothing(four: list[LoggedDay]) -> None:
    assert learnt(four) == learnt(reversed(four))
    assert learnt([replace(day, rehearsal=True) for day in four]) == Learnt()


def test_an_odd_day_is_named_and_hardly_counts(four: list[LoggedDay]) -> None:
    odd = replace(read_day("2026-04-01-odd", 0.2, 0.4, 1500.0), opened=four[0].opened)
    plain, swung = (learnt(days).number("liquor held", "wool") for days in (four, [*four, odd]))
    assert plain is not None and swung is not None
    assert swung.odd == ("2026-04-01-odd",)
    assert swung.own.centre == pytest.approx(plain.own.centre, rel=0.03)
    assert "hardly counted, being odd: 2026-04-01-odd" in " ".join(learned_lines(learnt([*four, odd]), 400))


def test_the_account_starts_from_the_dyer_s_own_numbers_and_its_log_keeps_them(four: list[LoggedDay]) -> None:
    own = start_of(four[0].plan, learnt(four))
    assert set(own.starting.priors) == {
        "partition of madder on wool", "kept share of madder", "liquor held by wool",
    }  # fmt: skip
    assert own.tables[0]["from"] == [day.name for day in four]
    again = starting_of({"prior": [dict(one) for one in own.tables]})
    for name, prior in own.starting.priors.items():
        assert again.priors[name].centre == pytest.approx(prior.centre, rel=1e-5)
    run = Day()
    run.home()
    guessed, known = (
        reckon(run.plan, run.entries, run.opened, start) for start in (Starting(), own.starting)
    )
    bands = [one.fibre("large skein").taken[0].grams for one in (guessed, known)]  # type: ignore[union-attr]
    assert (bands[1].high - bands[1].low) < 0.7 * (bands[0].high - bands[0].low)


def test_a_broken_number_in_a_log_is_left_out_never_guessed() -> None:
    sound = priors_for_log({"kept share of madder": KEPT_SHARE}, {})
    broken = [{**sound[0], "name": "a", "low": 0.9}, {**sound[0], "scale": "ell"}, {"name": "b"}, 7]
    assert set(starting_of({"prior": [*sound, *broken]}).priors) == {"kept share of madder"}
    assert starting_of({"prior": "many"}).priors == {} and starting_of({}).priors == {}


def test_pots_and_stove_are_handed_to_the_plan_and_jars_keep_what_the_dyer_wrote(four: list[LoggedDay]) -> None:
    kitchen = Kitchen(jars=(Jar("old jar", "madder root", strength=1.2), Jar("new jar", "weld")))
    found = own_kitchen(kitchen, learnt(four))
    assert found.jars == kitchen.jars and found.own.cooling == 1.0 and found.own.net_power_w is None


def test_what_one_day_taught_is_told_after_it(four: list[LoggedDay]) -> None:
    told = "\n".join(changed_lines(learnt(four[:3]), learnt(four), 90))
    assert "madder root on wool, taken at 1:30" in told and "4 days" in told
    assert changed_lines(learnt(four), learnt(four), 90) == []
    as_json = learned_as_json(learnt(four))
    assert {one["what"] for one in as_json["numbers"]} == {"exhaustion", "kept share", "liquor held"}


def test_the_index_gives_the_same_numbers_and_one_meddled_with_costs_only_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run = Day()
    while run.state.status != "complete":
        act = run.suggest()
        if isinstance(act, e.Lifted) and act.lot == "large skein" and act.vessel == "wash pot":
            run.do(e.Lifted(act.lot, act.vessel, 480.0))
        else:
            run.space()
    paths = [written(run, tmp_path, f"2026-03-1{i}-a-day-k7q2") for i in (4, 5)]
    index = tmp_path / "cache" / "own.json"
    cold = learnt_of(DISK, paths, index)
    assert cold.numbers and cold == learnt_of(DISK, paths) == learnt(read_day_file(DISK, one) for one in paths)
    with monkeypatch.context() as no_reading:
        no_reading.setattr(learned_index, "told_by", lambda day: pytest.fail("read out of the log again"))
        assert learnt_of(DISK, paths, index) == cold
    index.write_text(index.read_text("utf-8").replace('"value"', '"worth"'), "utf-8")
    assert learnt_of(DISK, paths, index) == cold
    (tmp_path / "torn.toml").write_bytes(b"not a log")
    assert learnt_of(DISK, [*paths, tmp_path / "torn.toml", tmp_path / "gone.toml"], index) == cold

