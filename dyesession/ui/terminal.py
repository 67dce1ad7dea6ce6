"""The terminal's rough edges, each in one function, so that the framework's private parts stand in one place."""

import contextlib
import subprocess
from typing import Any

from textual.app import App


def guard_mouse_bytes() -> None:
    """Old-style mouse reports hold bytes above 0x7F, and the framework's input thread dies of them.

    Known upstream as Textualize/textual issue 6668, open in 8.2.8; a test sends such bytes, so a release that
    mends it makes this needless. Only where the Linux driver is there.
    """
    try:
        from textual.drivers import linux_driver
    except ImportError:
        return
    names = vars(linux_driver)
    real = names["getincrementaldecoder"]
    if getattr(real, "forgiving", False):
        return

    def forgiving(encoding: str) -> Any:
        return lambda errors="replace": real(encoding)(errors="replace")

    forgiving.forgiving = True  # type: ignore[attr-defined]
    names["getincrementaldecoder"] = forgiving


def set_title(app: App[Any], title: str) -> None:
    """Put a word in the terminal window's title (OSC 2), once per change; nothing where there is no terminal."""
    driver = app._driver
    if driver is None or app.is_headless or getattr(app, "_title_shown", None) == title:
        return
    app._title_shown = title  # type: ignore[attr-defined]
    plain = "".join(one for one in title if one.isprintable())
    driver.write(f"\x1b]2;{plain}\x07")
    driver.flush()


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


_STARTED: list["subprocess.Popen[bytes]"] = []  # kept only so that those that have ended are let go of
