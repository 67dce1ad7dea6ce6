"""How the kitchen's alarm behaves on any face of the program: its quiet hours, and the dyer's own command.

Knows nothing of what rings or why. The time of day is handed in.
"""

import contextlib
import subprocess
from datetime import time

from dyesession.kitchen.model import Alarm

_STARTED: list["subprocess.Popen[bytes]"] = []  # kept only so that those that have ended are let go of


def in_quiet_hours(alarm: Alarm, now: time) -> bool:
    """Whether a time of day lies in the kitchen's quiet hours, which may span midnight."""
    if not alarm.quiet_from or not alarm.quiet_to:
        return False
    start, end = time.fromisoformat(alarm.quiet_from), time.fromisoformat(alarm.quiet_to)
    return start <= now < end if start <= end else now >= start or now < end


def start_command(command: tuple[str, ...]) -> bool:
    """Start the dyer's own alarm program beside us, no shell between; says whether it could be started."""
    with contextlib.suppress(OSError, ValueError):
        _STARTED[:] = [one for one in _STARTED if one.poll() is None]
        quiet = subprocess.DEVNULL
        _STARTED.append(
            subprocess.Popen(list(command), stdin=quiet, stdout=quiet, stderr=quiet, start_new_session=True)
        )
        return True
    return False


def not_started(command: tuple[str, ...]) -> str:
    """What to say where the command could not be started."""
    return f"The alarm's own command, {command[0]}, could not be started."
