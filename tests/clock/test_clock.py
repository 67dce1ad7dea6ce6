"""The three-number rule: what a countdown can rely on when clocks are set, put to sleep or restarted."""

import os
import random
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

import dyesession.clock as clock_room
from dyesession.clock import Elapsed, Instant, SteppingClock, SystemClock, clock_jump_s, elapsed_s, fixed

START = datetime(2026, 3, 14, 9, 2, 11, tzinfo=timezone(timedelta(hours=1)))
HISTORIES = 3000
ALLOWED_ERROR_S = 1.0


def test_a_time_without_an_offset_is_no_instant() -> None:
    with pytest.raises(ValueError, match="offset"):
        Instant(datetime(2026, 3, 14, 9, 2), "b", 0.0)
    with pytest.raises(ValueError, match="offset"):
        fixed(datetime(2026, 3, 14, 9, 2))


def test_a_logged_time_is_cut_to_milliseconds_and_whole_minutes_of_offset() -> None:
    odd = datetime(1850, 1, 1, 12, 0, 0, 123987, tzinfo=timezone(timedelta(seconds=3208)))
    assert fixed(odd).microsecond == 123000
    assert fixed(odd).utcoffset() == timedelta(minutes=53)
    assert abs(fixed(odd) - odd) < timedelta(milliseconds=1)


def test_a_hold_over_the_autumn_change_of_clocks_lasts_its_true_length() -> None:
    berlin = ZoneInfo("Europe/Berlin")
    before = datetime(2026, 10, 25, 1, 30, tzinfo=berlin)
    after = (before.astimezone(UTC) + timedelta(hours=2)).astimezone(berlin)
    assert after - before == timedelta(hours=1)  # named zones: wall arithmetic, an hour out
    assert fixed(after) - fixed(before) == timedelta(hours=2)


def test_in_one_run_of_the_machine_the_clock_that_counts_sleep_decides() -> None:
    clock = SteppingClock(START)
    lit = clock.now()
    clock.advance(1200)
    clock.set_wall(START - timedelta(hours=25))
    assert elapsed_s(lit, clock.now()) == Elapsed(1200.0, "boot clock")
    assert clock_jump_s(lit, clock.now()) == pytest.approx(-25 * 3600 - 1200)


def test_across_a_restart_the_wall_clock_decides_and_says_so() -> None:
    clock = SteppingClock(START)
    lit = clock.now()
    clock.advance(600)
    clock.reboot(off_s=60)
    assert elapsed_s(lit, clock.now()) == Elapsed(660.0, "wall clock")
    assert clock_jump_s(lit, clock.now()) == 0.0


def test_a_wall_clock_set_back_while_the_machine_was_off_never_makes_a_negative_time() -> None:
    clock = SteppingClock(START)
    lit = clock.now()
    clock.reboot()
    clock.set_wall(START - timedelta(hours=3))
    assert elapsed_s(lit, clock.now()) == Elapsed(0.0, "wall clock")
    assert clock_jump_s(lit, clock.now()) == -3 * 3600


def test_a_run_whose_count_went_backwards_is_not_trusted() -> None:
    earlier = Instant(START, "aaaaaaaa", 500.0)
    later = Instant(START + timedelta(minutes=5), "aaaaaaaa", 3.0)
    assert elapsed_s(earlier, later) == Elapsed(300.0, "wall clock")


def test_another_time_zone_is_not_a_clock_jump() -> None:
    clock = SteppingClock(START)
    lit = clock.now()
    clock.advance(60)
    clock.set_zone(-8)
    assert clock_jump_s(lit, clock.now()) == 0.0
    assert clock.now().at.utcoffset() == timedelta(hours=-8)


def test_time_on_a_stepping_clock_does_not_run_backwards() -> None:
    with pytest.raises(ValueError, match="forwards"):
        SteppingClock(START).advance(-1)


# --- the real clocks


def test_the_real_clock_counts_on_and_names_this_run_of_the_machine() -> None:
    first, second = SystemClock().now(), SystemClock().now()
    assert first.boot == second.boot and len(first.boot) == 8
    assert 0 <= elapsed_s(first, second).seconds < 60
    assert first.at.microsecond % 1000 == 0 and isinstance(first.at.tzinfo, timezone)


@pytest.fixture
def local_zone() -> Iterator[None]:
    before = os.environ.get("TZ")
    os.environ["TZ"] = "AAA-1BBB,M3.5.0,M10.5.0/3"
    time.tzset()
    yield
    if before is None:
        del os.environ["TZ"]
    else:
        os.environ["TZ"] = before
    time.tzset()


@pytest.mark.usefixtures("local_zone")
def test_the_real_clock_gives_a_fixed_offset_even_where_summer_time_is_kept() -> None:
    assert SystemClock().now().at.utcoffset() in (timedelta(hours=1), timedelta(hours=2))


def test_without_the_systems_boot_id_a_guess_holds_for_one_run(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock_room, "BOOT_ID_FILE", clock_room.Path("/nowhere/boot_id"))
    monkeypatch.setattr(clock_room.time, "time", lambda: 1_000_000_000.0)
    monkeypatch.setattr(clock_room, "_up_s", lambda: 1_000.0)
    first = SystemClock().now().boot
    monkeypatch.setattr(clock_room.time, "time", lambda: 1_000_005_001.0)
    monkeypatch.setattr(clock_room, "_up_s", lambda: 6_000.0)
    assert SystemClock().now().boot == first
    monkeypatch.setattr(clock_room, "_up_s", lambda: 10.0)
    assert SystemClock().now().boot != first


def test_without_a_clock_that_counts_sleep_the_plain_one_is_used(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delattr(clock_room.time, "CLOCK_BOOTTIME", raising=False)
    monkeypatch.setattr(clock_room.time, "monotonic", lambda: 77.25)
    assert SystemClock().now().up_s == 77.25


# --- random days, and what simpler rules would have made of them


@dataclass
class Day:
    """A random day: the clock as the program sees it beside the true time, which it never sees."""

    random: random.Random
    clock: SteppingClock = field(default_factory=lambda: SteppingClock(START))
    true_s: float = 0.0
    awake_s: float = 0.0
    restarts: int = 0
    set_while_off_s: float = 0.0

    def step(self, may_restart: bool) -> None:
        moves = [self.cook, self.cook, self.sleep, self.jump, self.change_offset]
        self.random.choice([*moves, self.restart] if may_restart else moves)()

    def _pass(self, seconds: float, awake: bool) -> None:
        self.clock.advance(seconds)
        self.true_s += seconds
        self.awake_s += seconds if awake else 0.0

    def cook(self) -> None:
        self._pass(self.random.uniform(0, 5400), awake=True)

    def sleep(self) -> None:
        self._pass(self.random.uniform(1, 36000), awake=False)

    def jump(self) -> None:
        self.clock.set_wall(self.clock.now().at + timedelta(seconds=self.random.uniform(-90000, 90000)))

    def change_offset(self) -> None:
        self.clock.set_zone(self.random.choice([-8, -3.5, 0, 1, 2, 5.75, 13]))

    def restart(self) -> None:
        off_s = self.random.uniform(20, 7200)
        self.clock.reboot(off_s)
        self.true_s += off_s
        self.restarts += 1


Rule = Callable[[Instant, Instant, float, float], float]


def wrong_days(rule: Rule, days: int, may_restart: bool = False) -> int:
    """In how many random days a rule is wrong by more than a second about the time since the pot was lit."""
    wrong = 0
    for number in range(days):
        day = Day(random.Random(number))
        for _ in range(day.random.randint(0, 4)):
            day.step(may_restart)
        lit, lit_true_s, lit_awake_s = day.clock.now(), day.true_s, day.awake_s
        for _ in range(day.random.randint(1, 8)):
            day.step(may_restart)
        judged_s = rule(lit, day.clock.now(), lit_awake_s, day.awake_s)
        wrong += abs(judged_s - (day.true_s - lit_true_s)) > ALLOWED_ERROR_S
    return wrong


def three_numbers(lit: Instant, now: Instant, *_: float) -> float:
    return elapsed_s(lit, now).seconds


def test_three_thousand_random_days_are_timed_to_the_second() -> None:
    assert wrong_days(three_numbers, HISTORIES) == 0


def test_sabotage_a_countdown_by_the_wall_clock_alone_is_caught() -> None:
    assert wrong_days(lambda lit, now, *_: (now.at - lit.at).total_seconds(), HISTORIES) > HISTORIES // 3


def test_sabotage_a_countdown_by_a_clock_that_stops_in_sleep_is_caught() -> None:
    assert wrong_days(lambda lit, now, lit_awake, awake: awake - lit_awake, HISTORIES) > HISTORIES // 3


def test_sabotage_a_rule_blind_to_restarts_is_caught() -> None:
    assert wrong_days(lambda lit, now, *_: now.up_s - lit.up_s, 300, may_restart=True) > 50


@given(
    ran_s=st.floats(0, 86400),
    off_s=st.floats(0, 86400),
    set_s=st.floats(-90000, 90000),
    again_s=st.floats(0, 86400),
)
def test_over_a_restart_the_error_is_the_change_made_while_off(
    ran_s: float, off_s: float, set_s: float, again_s: float
) -> None:
    clock = SteppingClock(START)
    lit = clock.now()
    clock.advance(ran_s)
    clock.reboot(off_s)
    clock.set_wall(clock.now().at + timedelta(seconds=set_s))
    clock.advance(again_s)
    told = elapsed_s(lit, clock.now())
    assert told.by == "wall clock"
    assert told.seconds == pytest.approx(max(0.0, ran_s + off_s + set_s + again_s), abs=0.01)
