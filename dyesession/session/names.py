"""How a pot is called, and when a session second is on the wall: small words that all the others need.
Pure.
"""

from datetime import datetime, timedelta

from dyesession.session.state import State

TENTH_S_US = 100_000


def letter(state: State, vessel: str) -> str:
    """A vessel's letter, or its name where it has none yet."""
    found = state.vessel(vessel)
    return found.letter if found else vessel


def pot(state: State, vessel: str) -> str:
    """A vessel by letter and name: "B, the extract pot"; by its name alone while it has no letter yet."""
    found = letter(state, vessel)
    return f"the {vessel}" if found == vessel else f"{found}, the {vessel}"


def wall_time(state: State, second: float) -> datetime | None:
    """The wall time of a session second, reckoned from the last entry; None before the first.

    To the tenth of a second: clocks drift by thousandths, and 07:00 must not be 06:59 at every other look.
    """
    if state.instant is None:
        return None
    wall = state.instant.at + timedelta(seconds=second - state.now_s)
    return wall + timedelta(microseconds=TENTH_S_US // 2 - (wall.microsecond + TENTH_S_US // 2) % TENTH_S_US)


def clock_text(state: State, second: float) -> str:
    """Hours and minutes of a session second."""
    wall = wall_time(state, second)
    return f"{wall:%H:%M}" if wall else ""


def day_text(moment: datetime, now: datetime) -> str:
    """A wall time as it is said on another day: "07:00", "07:00 tomorrow", "18:20 yesterday", "07:00 on 16
    March".
    """
    days = (moment.date() - now.date()).days
    said = {0: "", 1: " tomorrow", -1: " yesterday"}
    return f"{moment:%H:%M}{said.get(days, f' on {moment.day} {MONTHS[moment.month - 1]}')}"


MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def when_text(state: State, second: float, now_s: float) -> str:
    """Hours and minutes of a session second, and the day where it is not today."""
    wall, now = wall_time(state, second), wall_time(state, now_s)
    return day_text(wall, now) if wall is not None and now is not None else ""
