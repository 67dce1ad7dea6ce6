"""The terminal's rough edges, each in one function, so that the framework's private parts stand in one place."""

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
