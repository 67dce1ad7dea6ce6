"""One open day at the Stove: its screen, what that is in the middle of, and its acts. Computes and stores nothing.

Loaded when a day is opened, not before: the Bench must be up without it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from textual.message import Message

from dyesession.account import Account, first_asked
from dyesession.account.told import strength_today
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.asking import Ask, ask_before
from dyesession.session.fit import misfit
from dyesession.session.session import GAP_S, Session, Snapshot
from dyesession.session.state import State
from dyesession.session.suggest import Ring, Suggestion, rings, suggest
from dyesession.ui import messages as m
from dyesession.ui.acts import Acts
from dyesession.ui.from_session import CareShown, Mode, care_to_show, ringing_view, stove_view
from dyesession.ui.screens.page import PageScreen
from dyesession.ui.screens.stove import StoveScreen

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp
    from dyesession.ui.frame_view import Ringing
    from dyesession.ui.stove_view import StoveView


class DayChanged(Message):
    """The day has a new snapshot; older ones waiting in the queue may be left out."""

    def can_replace(self, message: Message) -> bool:
        """A newer snapshot makes an older one needless."""
        return isinstance(message, DayChanged)


class StoveDay:
    """The day that is open in the app, and the Stove it is shown on."""

    def __init__(self, app: DyeApp, session: Session[Account], bounce_s: float) -> None:
        self._app, self.session = app, session
        told = session.snapshot.shelf.told
        self.mode = Mode(where=_return_heading(session), note=told[0] if told else "")
        self._held: Ask | None = None
        self._pictured: tuple[Account | None, str] = (None, "")
        self._minded: tuple[State, object, CareShown] | None = None
        self._acts = Acts(self)
        self.screen = StoveScreen(self._view(), bounce_s)
        session.listen(lambda snapshot: self._changed())

    @property
    def is_over(self) -> bool:
        """Whether the day has been closed."""
        return self.session.snapshot.state.status == "complete"

    def suggestion(self) -> Suggestion:
        """What comes next, now: before anything but what rings, the question that an act waits for."""
        if (held := self._still_held()) is not None:
            return held
        return suggest(self.session.snapshot.state, self.session.now_s(), self.session.household)

    def _still_held(self) -> Ask | None:
        """The question that an act of the dyer's own waits for, while it still stands."""
        if self._held is None or self.rings():
            return None
        stands = ask_before(self._present(), self._held.then, self.session.household)
        if stands is None or stands.key != self._held.key:
            self._held = None
        return self._held

    def _present(self) -> State:
        return replace(self.session.snapshot.state, now_s=self.session.now_s())

    def put_down(self) -> None:
        """The act that waits for an answer is left out."""
        self._held = None

    def rings(self) -> tuple[Ring, ...]:
        """What rings now, loudest first."""
        return rings(self.session.snapshot.state, self.session.now_s())

    def ringing(self) -> Ringing | None:
        """What rings now, as every place shows it."""
        return ringing_view(self.session.snapshot.state, self.rings())

    def seen(self) -> None:
        """Acknowledge the loudest thing that rings, wherever the dyer is."""
        if ringing := self.rings():
            self.do(e.Acknowledged(ringing[0].countdown))

    def look(self) -> None:
        """One look at the clock: let the day notice what is due, and repaint what changed."""
        if self.session.is_due():
            self.session.tick()
        self.refresh()

    def refresh(self) -> None:
        """Show the day as it stands now."""
        self.screen.show(self._view())

    def close(self) -> None:
        """Let what is under way end, then let go of the log. The clocks go on."""
        self.session.close()

    def leave(self) -> None:
        """Close the screen; the clocks go on."""
        self._app.leave_stove()

    def carry_out(self, act: m.Act) -> None:
        """Every act of the Stove goes to the table of acts."""
        self._acts.carry_out(act)

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self.set_mode(note=note)

    def set_mode(self, **changes: Any) -> None:
        """Change what the screen is in the middle of."""
        self.mode = replace(self.mode, **changes)
        self.refresh()

    def show_page(self, heading: str, text: str, acts: Mapping[str, type[m.Act]] | None = None) -> None:
        """Lay a page of lines over the pots; a held key lays only one."""
        if not isinstance(self._app.screen, PageScreen):
            self._app.push_screen(PageScreen(heading, text, acts))

    def begin_typing(self, text: str) -> None:
        """Let this text stand in the entry line, to be gone on with."""
        self.screen.begin_entry(text)

    def clear_typing(self) -> None:
        """Nothing is being typed any more."""
        self.screen.clear_entry()
        self.mode = replace(self.mode, typed="", wants="", echo="", meaning=None, mark="", places=(), aside="")

    def do(self, command: e.Event, said: str = "") -> None:
        """Send a command; a refusal comes back as one line and nothing is lost.

        Whatever key it came from, the question that stands before it is asked first; the act follows the answer.
        """
        if (ask := self._asked_first(command)) is not None:
            self._held = ask
            self.set_mode(note="", where="")
            return
        held, self._held = self._held, None
        self._send(command, said)
        if held is not None and isinstance(command, e.Confirmed | e.PutOff) and command.ask == held.key:
            self._send(held.then, said)

    def doubts(self, event: e.Event) -> str:
        """What to ask about a figure that can hardly be; "" for one that can."""
        state = self._present()
        return first_asked(self.session.snapshot.account, state, event) or ""

    def _asked_first(self, command: e.Event) -> Ask | None:
        state = self._present()
        if misfit(state, command) is not None:
            return None  # the day refuses it, in a sentence
        return ask_before(state, command, self.session.household)

    def _send(self, command: e.Event, said: str) -> None:
        said = " ".join(one for one in (said, words.heat_off_words(self.session.snapshot.state, command)) if one)
        self.mode = replace(self.mode, note=said, where="")
        future = self.session.do(command)
        future.add_done_callback(lambda done: self._told(done.exception()))

    def rescue(self, folder: str) -> None:
        """Write the whole day to another folder and go on there; where that fails, one line says so."""
        self.mode = replace(self.mode, note="", where="")
        self.session.rescue(folder).add_done_callback(lambda done: self._rescued(done.exception()))

    def _rescued(self, trouble: BaseException | None) -> None:
        if trouble is not None:
            self._told(trouble)
        else:
            self._app.call_from_thread(self._goes_on)

    def _goes_on(self) -> None:
        self.clear_typing()
        self.say(f"The day goes on in {self.session.snapshot.path}")

    def _changed(self) -> None:
        if self._app.is_running:
            self._app.post_message(DayChanged())

    def _told(self, trouble: BaseException | None) -> None:
        if trouble is None:
            return
        if isinstance(trouble, UserError):
            self._app.call_from_thread(self.say, str(trouble))
        else:
            self._app.call_from_thread(_fail, trouble)

    def _view(self) -> StoveView:
        suggestion = self.suggestion()
        return stove_view(
            self.session.snapshot,
            self.session.now_s(),
            suggestion,
            self.mode,
            self.session.household,
            self.session.poison_centre,
            self._today(),
            self._care(suggestion),
        )

    def _care(self, suggestion: Suggestion) -> CareShown:
        """What to bear in mind: thought over for new facts or another act, not for each look at the clock."""
        session, snapshot = self.session, self.session.snapshot
        told = (suggestion, session.household, session.poison_centre)
        if self._minded is None or self._minded[0] is not snapshot.state or self._minded[1] != told:
            shown = care_to_show(snapshot, suggestion, session.household, session.poison_centre)
            self._minded = snapshot.state, told, shown
        return self._minded[2]

    def _today(self) -> str:
        """The main bath's strength over the day: drawn anew for a new account, not for each look at the clock."""
        snapshot = self.session.snapshot
        if self._pictured[0] is not snapshot.account:
            self._pictured = snapshot.account, strength_today(snapshot.account, snapshot.plan)
        return self._pictured[1]


def _fail(trouble: BaseException) -> None:
    raise trouble


def _return_heading(session: Session[Account]) -> str:
    """The "where you are" page is earned by a gap since the last fact of the dyer's."""
    snapshot = session.snapshot
    own = [one for one in snapshot.entries if one.event.kind not in e.PROGRAM_KINDS]
    if not own or snapshot.state.status == "complete":
        return ""
    away_s = snapshot.state.seconds(session.now()) - _second_of(snapshot, own[-1].n)
    returned = any(isinstance(one.event, e.ResumedAfterGap) for one in snapshot.entries[-2:])
    return "Where you are" if returned or away_s > GAP_S or len(own) > 1 else ""


def _second_of(snapshot: Snapshot[Account], n: int) -> float:
    last = snapshot.state.instant
    at = next(one.instant.at for one in snapshot.entries if one.n == n)
    return snapshot.state.now_s - ((last.at - at).total_seconds() if last else 0.0)
