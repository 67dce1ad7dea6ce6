"""What days teach: the dyer's own numbers out of readings in the log, each with its days, handed on to what follows."""

import math
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from daybook.logged import logged
from daybook.written import written
from days import Day, weighed_wet

from dyesession.account import Band90, reckon
from dyesession.account.logged import priors_for_log, starting_of
from dyesession.account.unknowns import Starting, unknowns
from dyesession.account.worlds import band
from dyesession.daybook import learned_index
from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.learned_index import learnt_of
from dyesession.daybook.learned_text import changed_lines, learned_as_json, learned_lines
from dyesession.daybook.learning import learnt
from dyesession.daybook.own_numbers import own_kitchen, start_of
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import KEPT_SHARE
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.plan.model import Plan
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
    """7.2 L on 240 g is 1:30; a fifth left of the bath: four fifths taken, or more at rest had it been slow."""
    found = learnt(four[:1]).number("exhaustion", "madder root", "wool")
    assert found is not None and found.days == ("2026-03-14-a-day",)
    taken = 30.0 * 0.8 / 0.2
    assert taken < found.own.centre < 170.0  # between what an endless hold would say and the guess
    assert found.own.low < taken, "it may have been quick"
    assert found.own.low > found.guess.low and found.own.high < found.guess.high


def test_more_days_narrow_every_number_and_each_names_its_days(four: list[LoggedDay]) -> None:
    one, all_four = learnt(four[:1]), learnt(four)
    abouts = [(each.about.what, each.about.of) for each in all_four.numbers]
    assert ("kept share", "madder root") in abouts and ("liquor held", "wool") in abouts
    for number in all_four.numbers:
        before = one.number(number.about.what, number.about.of, number.about.on)
        assert before is not None and number.days == tuple(day.name for day in four)
        if number.about.what in ("uptake rate", "stiffening"):
            continue  # days that went alike tell these no better
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
        "partition of madder on wool", "rate of madder", "kept share of madder", "stiffening of madder",
        "liquor held by wool",
    }  # fmt: skip
    assert own.starting.beside["partition of madder on wool"].of == "rate of madder"
    assert own.tables[0]["from"] == [day.name for day in four]
    again = starting_of({"prior": [dict(one) for one in own.tables]})
    for name, prior in own.starting.priors.items():
        assert again.priors[name].centre == pytest.approx(prior.centre, rel=1e-5)
    for name, hanging in own.starting.beside.items():
        for (place, one), (was, other) in zip(again.beside[name].at, hanging.at, strict=True):
            assert (place, one.low, one.high) == pytest.approx((was, other.low, other.high), rel=1e-5)
    run = Day()
    run.home()
    guessed, known = (
        reckon(run.plan, run.entries, run.opened, start) for start in (Starting(), own.starting)
    )
    bands = [one.fibre("large skein").taken[0].grams for one in (guessed, known)]  # type: ignore[union-attr]
    assert (bands[1].high - bands[1].low) < bands[0].high - bands[0].low
    guess, learned = (share_taken(run.plan, start) for start in (Starting(), own.starting))
    assert learned.high - learned.low < 0.5 * (guess.high - guess.low)


def share_taken(plan: Plan, starting: Starting) -> Band90:
    """The share of its bath that a slow rise and an hour at heat put on the wool at 1:30."""
    known = unknowns(plan, starting)
    worlds = zip(known["partition of madder on wool"], known["rate of madder"], strict=True)
    return band(tuple(exhausted_share(taken, 30.0) * -math.expm1(-rate * 80.0) for taken, rate in worlds))


def test_a_broken_number_in_a_log_is_left_out_never_guessed() -> None:
    sound = priors_for_log(Starting({"kept share of madder": KEPT_SHARE}), {})
    broken = [{**sound[0], "name": "a", "low": 0.9}, {**sound[0], "scale": "ell"}, {"name": "b"}, 7]
    assert set(starting_of({"prior": [*sound, *broken]}).priors) == {"kept share of madder"}
    assert starting_of({"prior": "many"}).priors == {} and starting_of({}).priors == {}


@pytest.mark.parametrize("at", [[], ["0.1 0.5"], ["a b c d"], ["0.2 0.5 0.4 0.6", "0.1 0.5 0.4 0.6"], ["0.1 0.5 0.6 0.4"], 3])
def test_a_broken_table_of_what_a_number_hangs_on_leaves_the_number_by_itself(at: object) -> None:
    [sound] = priors_for_log(Starting({"kept share of madder": KEPT_SHARE}), {})
    table = {**sound, "beside": "stiffening of madder", "beside_scale": "log", "at": at}
    found = starting_of({"prior": [table]})
    assert set(found.priors) == {"kept share of madder"} and found.beside == {}
    mended = starting_of({"prior": [{**table, "at": ["0.8 0.3 0.2 0.4", "2 0.5 0.4 0.6"]}]})
    assert [place for place, _ in mended.beside["kept share of madder"].at] == [0.8, 2.0]


def test_pots_and_stove_are_handed_to_the_plan_and_jars_keep_what_the_dyer_wrote(four: list[LoggedDay]) -> None:
    kitchen = Kitchen(jars=(Jar("old jar", "madder root", strength=1.2), Jar("new jar", "weld")))
    found = own_kitchen(kitchen, learnt(four))
    assert found.jars == kitchen.jars and found.own.cooling == 1.0 and found.own.net_power_w is None


def test_what_one_day_taught_is_told_after_it(four: list[LoggedDay]) -> None:
    told = "\n".join(changed_lines(learnt(four[:3]), learnt(four), 90))
    assert "madder root on wool, taken at 1:30" in told and "4 days" in told
    assert changed_lines(learnt(four), learnt(four), 90) == []
    as_json = learned_as_json(learnt(four))
    assert {one["what"] for one in as_json["numbers"]} == {
        "exhaustion", "uptake rate", "kept share", "stiffening", "liquor held",
    }  # fmt: skip


def test_the_index_gives_the_same_numbers_and_one_meddled_with_costs_only_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run = weighed_wet()
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

