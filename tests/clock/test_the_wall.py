"""The real clock's wall time, with the library's frozen time in the one room that reads it."""

from datetime import UTC, datetime, timedelta

from freezegun import freeze_time

from dyesession.clock import SystemClock, elapsed_s

NOON = datetime(2026, 3, 14, 12, 0, 0, 123456, tzinfo=UTC)


def test_the_wall_time_is_the_machines_and_cut_to_milliseconds() -> None:
    with freeze_time(NOON):
        assert SystemClock().now().at == NOON.replace(microsecond=123000)


def test_a_wall_clock_set_by_hand_moves_no_countdown() -> None:
    clock = SystemClock()
    with freeze_time(NOON):
        before = clock.now()
    with freeze_time(NOON + timedelta(hours=5)):
        after = clock.now()
    assert after.at - before.at == timedelta(hours=5)
    elapsed = elapsed_s(before, after)
    assert elapsed.by == "boot clock" and elapsed.seconds < 60
