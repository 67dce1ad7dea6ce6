"""The Textual app: hands keys to the day and the day's snapshots to the Stove. Computes and stores nothing.

The only clock in here asks the day what time it is, once a second, and repaints what changed.
"""

import signal
from collections.abc import Mapping
from dataclasses import replace
from typing import Any, ClassVar

from textual import on
from textual.app import App
from textual.message import Message

from dyesession.account import Account
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.session import GAP_S, Session, Snapshot
from dyesession.session.suggest import Suggestion, rings, suggest
from dyesession.ui import messages as m
from dyesession.ui.acts import Acts
from dyesession.ui.bell import Bell
from dyesession.ui.from_session import Mode, stove_view
from dyesession.ui.screens.page import PageScreen
from dyesession.ui.screens.stove import BOUNCE_S, StoveScreen
from dyesession.ui.terminal import guard_mouse_bytes, set_title
from dyesession.ui.theme import register_themes

TICK_S = 1.0


class DayChanged(Message):
    """The day has a new snapshot; older ones waiting in the queue may be left out."""

    def can_replace(self, message: Message) -> bool:
        """A newer snapshot makes an older one needless."""
        return isinstance(message, DayChanged)


class StoveApp(App[int]):
    """One open day on the Stove."""

    ENABLE_COMMAND_PALETTE = False
    TITLE = "dyesession"
    BINDINGS: ClassVar = []

    def __init__(
        self, session: Session[Account], *, bell: Bell | None = None, bounce_s: float = BOUNCE_S
    ) -> None:
        super().__init__()
        register_themes(self)
        self._session = session
        self._bell = bell or Bell()
        self._bounce_s = bounce_s
        self.mode = Mode()
        self._acts = Acts(self)
        self._stove: StoveScreen | None = None

    @property
    def session(self) -> Session[Account]:
        """The day."""
        return self._session

    def suggestion(self) -> Suggestion:
        """What comes next, now."""
        return suggest(self._session.snapshot.state, self._session.now_s(), self._session.household)

    def on_mount(self) -> None:
        """Show the Stove, listen to the day, look at the clock once a second."""
        self.mode = replace(self.mode, where=self._return_heading())
        self._stove = StoveScreen(self._view(), self._bounce_s)
        self.push_screen(self._stove)
        self._session.listen(lambda snapshot: self._changed())
        self.set_interval(TICK_S, self.look)
        self._leave_well_on_signals()

    def _changed(self) -> None:
        if self.is_running:
            self.post_message(DayChanged())

    def _leave_well_on_signals(self) -> None:
        import asyncio

        loop = asyncio.get_running_loop()
        for name in ("SIGHUP", "SIGTERM"):
            number = getattr(signal, name, None)
            if number is not None and self._driver is not None and not self.is_headless:
                loop.add_signal_handler(number, self.exit, 0)

    def _return_heading(self) -> str:
        """The "where you are" page is earned by a gap since the last fact of the dyer's."""
        snapshot = self._session.snapshot
        gaps = [one for one in snapshot.entries if one.event.kind not in e.PROGRAM_KINDS]
        if not gaps or snapshot.state.status == "complete":
            return ""
        away_s = snapshot.state.seconds(self._session.now()) - _second_of(snapshot, gaps[-1].n)
        returned = any(isinstance(one.event, e.ResumedAfterGap) for one in snapshot.entries[-2:])
        return "Where you are" if returned or away_s > GAP_S or len(gaps) > 1 else ""

    def _view(self) -> Any:
        snapshot = self._session.snapshot
        return stove_view(
            snapshot, self._session.now_s(), self.suggestion(), self.mode, self._session.household
        )

    def look(self) -> None:
        """One look at the clock: repaint what changed, ring what is due."""
        ringing = rings(self._session.snapshot.state, self._session.now_s())
        self._session.tick()
        if self._bell.wants_to_ring(ringing, self._session.now()):
            self.bell()
        if self._stove is not None:
            self._stove.show(self._view())
            set_title(self, self._title(bool(ringing)))

    def _title(self, ringing: bool) -> str:
        return "dyesession RINGING" if ringing else "dyesession"

    def on_day_changed(self, message: DayChanged) -> None:
        """The day has moved on."""
        self.refresh_stove()

    def _fatal_error(self) -> None:
        """Leave without printing a traceback: the fault goes to whoever ran the app, who writes it to a file."""
        self._close_messages_no_wait()

    @property
    def fault(self) -> Exception | None:
        """What ended the app, when it was not the dyer."""
        return self._exception

    def refresh_stove(self) -> None:
        """Show the day as it stands now."""
        if self._stove is not None:
            self._stove.show(self._view())

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self.mode = replace(self.mode, note=note)
        self.refresh_stove()

    def set_mode(self, **changes: Any) -> None:
        """Change what the screen is in the middle of."""
        self.mode = replace(self.mode, **changes)
        self.refresh_stove()

    def show_page(self, heading: str, text: str, acts: Mapping[str, type[m.Act]] | None = None) -> None:
        """Lay a page of lines over the pots; a held key lays only one."""
        if not isinstance(self.screen, PageScreen):
            self.push_screen(PageScreen(heading, text, acts))

    def clear_typing(self) -> None:
        """Nothing is being typed any more."""
        if self._stove is not None:
            self._stove.clear_entry()
        self.mode = replace(self.mode, typed="", wants="", echo="")
        self._acts.meaning = None

    def do(self, command: e.Event, said: str = "") -> None:
        """Send a command; a refusal comes back as one line and nothing is lost."""
        self.mode = replace(self.mode, note=said, where="")
        future = self._session.do(command)
        future.add_done_callback(lambda done: self._told(done.exception()))

    def _told(self, trouble: BaseException | None) -> None:
        if trouble is None:
            return
        if isinstance(trouble, UserError):
            self.call_from_thread(self.say, str(trouble))
        else:
            self.call_from_thread(self._fail, trouble)

    def _fail(self, trouble: BaseException) -> None:
        raise trouble

    @on(m.Act)
    def carry_out(self, act: m.Act) -> None:
        """Every act of the Stove goes to the table of acts."""
        act.stop()
        self._acts.carry_out(act)


def _second_of(snapshot: Snapshot[Account], n: int) -> float:
    last = snapshot.state.instant
    at = next(one.instant.at for one in snapshot.entries if one.n == n)
    return snapshot.state.now_s - ((last.at - at).total_seconds() if last else 0.0)


def run_stove(session: Session[Account]) -> int:
    """Run the Stove until it is left; the exit code is 0 when it was left well. A fault of ours is raised."""
    guard_mouse_bytes()
    app = StoveApp(session)
    app.run()
    state = session.snapshot.state
    if state.status != "complete":
        print(f"The clocks go on. To take the day up again: dyesession resume {session.snapshot.name}")
    if app.fault is not None:
        raise app.fault
    return app.return_code or 0

