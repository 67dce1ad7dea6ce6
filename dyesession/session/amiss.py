"""What is amiss with a day's log, for somebody who takes the day up again. Pure; knows no file and no screen."""

from collections.abc import Sequence

from dyesession.session import events as e
from dyesession.session.entry import Entry


def amiss_words(entries: Sequence[Entry]) -> tuple[str, ...]:
    """One sentence for a torn end that was just set aside, one for the entries that were damaged or changed; () for none."""
    return tuple(one for one in (_torn(entries), _troubled(entries)) if one)


def _torn(entries: Sequence[Entry]) -> str:
    """A torn end of an earlier return is not told again once the dyer has gone on."""
    for entry in reversed(entries):
        if isinstance(entry.event, e.Recovered):
            where = f" in {entry.event.aside}" if entry.event.aside else ""
            return (
                f"The end of the log was torn; {entry.event.bytes_aside} bytes were set aside{where}:"
                " look whether your last act is still there, and do it again if it is not."
            )
        if entry.event.kind not in e.PROGRAM_KINDS:
            return ""
    return ""


def _troubled(entries: Sequence[Entry]) -> str:
    found = [one for one in entries if one.trouble]
    if not found:
        return ""
    more = len(found) - 1
    others = f" (and {more} more)" if more else ""
    return f"Entry {found[0].n} of the log{others}: {found[0].trouble}; “dyesession check” names every one."
