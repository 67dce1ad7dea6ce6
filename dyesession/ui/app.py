"""The Textual app: opens on the Bench or straight on the Stove, and leads from place to place. Computes and stores
nothing.

The only clock in here asks once a second what time it is, and repaints what changed. What a place needs is loaded
when it is first opened.
"""

from __future__ import annotations

import signal
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, ClassVar, TypeVar

from textual import on
from textual.app import App
from textual.message import Message
from textual.screen import Screen

from dyesession.errors import UserError
from dyesession.ui import messages as m
from dyesession.ui.bell import Bell
from dyesession.ui.frame_view import Entry, Frame, KeyWord, NextAct, Ringing
from dyesession.ui.place_messages import PlaceAct
from dyesession.ui.pressing import BOUNCE_S
from dyesession.ui.terminal import set_title
from dyesession.ui.theme import register_themes

if TYPE_CHECKING:
    from pathlib import Path

    from textual.theme import Theme

    from dyesession.account import Account
    from dyesession.clock import Instant
    from dyesession.kitchen.model import Alarm, Kitchen
    from dyesession.plan.explained import Worked
    from dyesession.plan.model import FibreLot, Plan
    from dyesession.recipe.model import Recipe
    from dyesession.session.session import Session
    from dyesession.session.suggest import Suggestion
    from dyesession.ui.at_bench import AtBench
    from dyesession.ui.at_jars import NextPlan
    from dyesession.ui.places import Place
    from dyesession.ui.stove_day import DayChanged, StoveDay
    from dyesession.ui.workroom import Workroom

TICK_S = 1.0
Brought = TypeVar("Brought")
ON_TRIAL = Ringing("-", "this is the alarm, on trial", "So it calls until it is seen.", short="trial")


class BroughtBack(Message):
    """Something done beside the screen has ended: carry on with what it brought."""

    def __init__(self, go_on: Callable[[], None]) -> None:
        self.go_on = go_on
        super().__init__()


class DyeApp(App[int]):
    """A dyer's app. With a `session` it opens straight on the Stove, without one on the Bench of the `workroom`."""

    ENABLE_COMMAND_PALETTE = False
    TITLE = "dyesession"
    BINDINGS: ClassVar = []

    def __init__(
        self,
        session: Session[Account] | None = None,
        *,
        workroom: Workroom | None = None,
        alarm: Alarm | None = None,
        bounce_s: float = BOUNCE_S,
    ) -> None:
        super().__init__()
        register_themes(self)
        self._first_session, self._workroom = session, workroom
        self._bounce_s = bounce_s
        self._alarm = alarm
        self._bell: Bell | None = None
        self._trial: Bell | None = None
        self._bench: AtBench | None = None
        self._places: list[Place] = []
        self.day: StoveDay | None = None
        self.next_plans: tuple[NextPlan, ...] = ()
        self.draw_for_the_day: Callable[[Session[Account]], str] | None = None

    def get_theme(self, theme_name: str) -> Theme | None:
        """The theme of that name; the framework asks for every line it paints, and copies all its themes each time."""
        return self._registered_themes.get(theme_name) or super().get_theme(theme_name)

    @property
    def session(self) -> Session[Account]:
        """The day that is open; there must be one."""
        return self._open_day().session

    def suggestion(self) -> Suggestion:
        """What comes next at the Stove, now."""
        return self._open_day().suggestion()

    @property
    def workroom(self) -> Workroom:
        """The folder the app was opened on; there must be one."""
        assert self._workroom is not None, "an app opened straight on the Stove has no workroom"
        return self._workroom

    def _open_day(self) -> StoveDay:
        assert self.day is not None, "no day is open"
        return self.day

    def get_default_screen(self) -> Screen[Any]:
        """The Stove where the app was opened with a day, else the Bench."""
        if self._first_session is not None:
            return self._stove_of(self._first_session).screen
        from dyesession.ui.at_bench import AtBench

        self._bench = AtBench(self, self._bounce_s)
        self._places.append(self._bench)
        return self._bench.screen

    def on_mount(self) -> None:
        """Look round the workroom, and look at the clock once a second."""
        if self._bench is not None:
            self.call_after_refresh(self._bench.look_round)
        self.set_interval(TICK_S, self.look)
        self._leave_well_on_signals()

    def _leave_well_on_signals(self) -> None:
        import asyncio

        loop = asyncio.get_running_loop()
        for name in ("SIGHUP", "SIGTERM"):
            number = getattr(signal, name, None)
            if number is not None and self._driver is not None and not self.is_headless:
                loop.add_signal_handler(number, self.exit, 0)

    # The places, and the ways between them.

    def go_to(self, place: Place) -> None:
        """Open a place over the present one; the key that opened it, held down, does nothing more there."""
        self._begin_after(place, self._last_pressed())
        self._lay_over(place)

    def next_place(self, name: str) -> None:
        """On from a place of the round to the next."""
        from dyesession.ui.round import place_after

        self.open_place(place_after(name))

    def open_place(self, name: str) -> None:
        """Go to a place of the round, straight from the Bench: q leads back there."""
        from dyesession.ui.round import place_named

        found = place_named(name)
        place = found.opened(self, self._bounce_s) if found is not None else None
        held = self._last_pressed()
        while len(self._places) > 1:
            self._places.pop()
            self.pop_screen()
        self._begin_after(place or self._places[0], held)
        if place is not None:
            self._lay_over(place)
        else:
            self._come_back()

    def _come_back(self) -> None:
        """Show the place that was come back to; the Bench looks round again for what is new."""
        self._places[-1].refresh()
        if self._bench is not None and self._places[-1] is self._bench:
            self._bench.look_round()

    def _last_pressed(self) -> tuple[str, float]:
        from dyesession.ui.screens.place import PlaceScreen

        return self.screen.last_pressed if isinstance(self.screen, PlaceScreen) else ("", -1.0)

    def _begin_after(self, place: Place, held: tuple[str, float]) -> None:
        from dyesession.ui.screens.place import PlaceScreen

        if isinstance(place.screen, PlaceScreen):
            place.screen.begin_after(*held)

    def _lay_over(self, place: Place) -> None:
        self._places.append(place)
        self.push_screen(place.screen)

    def leave(self) -> None:
        """Back to where the dyer came from; from the Bench, out."""
        if len(self._places) <= 1:
            self.exit(0)
            return
        self._places.pop()
        self.pop_screen()
        self._come_back()

    def work_out(self, recipe: Path) -> None:
        """Go and work out a recipe."""
        from dyesession.ui.at_working import AtWorkingOut

        self.go_to(AtWorkingOut(self, recipe, self._bounce_s))

    def work_out_recipe(self, recipe: Recipe, lots: tuple[FibreLot, ...]) -> None:
        """Go and work out a recipe that lies in no file, for these lots of fibre."""
        from dyesession.ui.at_working import AtWorkingOut

        self.go_to(AtWorkingOut(self, recipe, self._bounce_s, lots))

    def look_back(self, session: str, changed: Callable[[], None]) -> None:
        """Lay a day of the day book open; `changed` is told when something was written into its log."""
        from dyesession.ui.at_day import open_day

        self.go_to(open_day(self, session, self._bounce_s, changed))

    def open_kitchen(self, worked: Worked | None, kept: Callable[[Kitchen], None]) -> None:
        """Go to My kitchen, for a plan or for itself; `kept` hears of every change."""
        from dyesession.ui.at_kitchen import AtKitchen

        def changed(kitchen: Kitchen) -> None:
            self.set_alarm(kitchen.alarm)
            if self.day is not None:
                self.day.session.poison_centre = kitchen.poison_centre
            kept(kitchen)

        self.go_to(AtKitchen(self, worked, changed, self._bounce_s))

    def open_own_numbers(self) -> None:
        """Go to what the days have taught."""
        from dyesession.ui.at_own import open_own_numbers

        self.go_to(open_own_numbers(self, self._bounce_s))

    def logs_changed(self) -> None:
        """Something was noted on a day beside the Stove: the Bench looks round anew."""
        if self._bench is not None:
            self._bench.look_round()

    def judge_dry(self, log: Path) -> None:
        """Go to Colour with a day whose skeins are dry by now: what is read there is noted on it."""
        from dyesession.ui.at_colour import AtColour

        self.go_to(AtColour(self, self._bounce_s, day=log.stem))

    def begin_day(self, recipe: Recipe, plan: Plan, kitchen: Kitchen) -> None:
        """Begin a day, and go to the Stove with it."""
        self.set_alarm(kitchen.alarm)
        self.in_background(lambda: self.workroom.begin(recipe, plan, kitchen), self.begun)

    def begin_improvised(self, lots: tuple[FibreLot, ...]) -> None:
        """Begin a day without a recipe, and go to the Stove with it."""

        def begin() -> Session[Account]:
            self.set_alarm(self.workroom.kitchen().alarm)
            return self.workroom.begin_freely(lots)

        self.in_background(begin, self.begun)

    def begun(self, session: Session[Account]) -> None:
        """A day was begun: what was drawn for it is written in, and the Stove is gone to."""
        draw, self.draw_for_the_day = self.draw_for_the_day, None
        try:
            said = draw(session) if draw is not None else ""
        except UserError as trouble:
            said = str(trouble)  # the day is begun all the same; the Stove says why nothing is drawn
        while len(self._places) > 1:
            self._places.pop()
            self.pop_screen()
        self.open_stove(session)
        if said:
            self.say(said)

    def take_up(self, log: Path) -> None:
        """Take up an open day, and go to the Stove with it."""
        self.in_background(lambda: self.workroom.resume(log), self.open_stove)

    def open_stove(self, session: Session[Account]) -> None:
        """Go to the Stove with a day that is open."""
        if self.day is not None:
            self.day.close()
        self._stove_of(session)
        self.go_to_stove()

    def _stove_of(self, session: Session[Account]) -> StoveDay:
        from dyesession.ui.stove_day import StoveDay

        self.day = StoveDay(self, session, self._bounce_s)
        return self.day

    def go_to_stove(self) -> None:
        """Go to the Stove, where a day is open; a key held down on the way there does nothing more."""
        screen = self._open_day().screen
        screen.begin_after("space", Message().time)
        self.push_screen(screen)

    def leave_stove(self) -> None:
        """From the Stove back to the Bench, or out where the app was opened on the Stove."""
        if self._bench is None:
            self.exit(0)
            return
        self.pop_screen()
        if self.day is not None and self.day.is_over:
            self.day.close()
            self.day = None
        self._bench.look_round()

    def close_day(self) -> None:
        """Let go of the day that is open, if any; its clocks go on."""
        if self.day is not None:
            self.day.close()

    # The clock and the alarm.

    def now(self) -> Instant:
        """The present, by the day's clock or the workroom's."""
        return self.day.session.now() if self.day is not None else self.workroom.now()

    def look(self) -> None:
        """One look at the clock: repaint what changed, ring what is due."""
        if not self.screen_stack:  # on the way out the last screen goes before the clock does
            return
        if self.day is not None:
            self.day.look()
        if self._places:
            self._places[-1].refresh()
        ringing = self.ringing()
        self._ring(ringing)
        self._tell_page(ringing)
        set_title(self, "dyesession RINGING" if ringing is not None else "dyesession")

    def ringing(self) -> Ringing | None:
        """What rings now, in the day that is open or on trial."""
        rings = self.day.ringing() if self.day is not None else None
        return rings or (ON_TRIAL if self._trial is not None else None)

    def _ring(self, ringing: Ringing | None) -> None:
        bell = self._trial if ringing is ON_TRIAL else self._usual_bell() if self.day is not None else None
        if bell is not None and bell.wants_to_ring(ringing is not None, self.now()):
            self.bell()
            from dyesession.kitchen.alarm import not_started, start_command

            if bell.command and not start_command(bell.command):
                self.say(not_started(bell.command))

    def _usual_bell(self) -> Bell:
        if self._bell is None:
            self._bell = Bell(self._alarm)
        return self._bell

    def _tell_page(self, ringing: Ringing | None) -> None:
        from dyesession.ui.screens.page import PageScreen

        if isinstance(self.screen, PageScreen):
            self.screen.show_ringing(ringing)

    def set_alarm(self, alarm: Alarm) -> None:
        """How the kitchen wants to be called from now on."""
        if alarm != self._alarm:
            self._alarm, self._bell = alarm, None

    def try_alarm(self) -> None:
        """Let the alarm ring on trial, or be still again."""
        self._trial = None if self._trial is not None else Bell(self._alarm, on_trial=True)
        self.look()

    def seen(self) -> None:
        """What rings has been seen: the day's alarm before the trial."""
        if self.day is not None and self.day.ringing() is not None:
            self.day.seen()
        else:
            self._trial = None
        self.look()

    # What the places share.

    def frame(
        self,
        title: str,
        beside: str,
        next_act: NextAct,
        keys: tuple[KeyWord, ...],
        entry: Entry | None,
        note: str,
    ) -> Frame:
        """The frame of a place, with the time of day and what rings."""
        return Frame(title, beside, f"{self.now().at:%H:%M}", next_act, keys, entry, self.ringing(), note)

    def show_page(self, heading: str, text: str, back: str) -> None:
        """Lay a page of lines over a place; a held key lays only one."""
        from dyesession.ui.screens.page import PageScreen

        if not isinstance(self.screen, PageScreen):
            self.push_screen(PageScreen(heading, text, back=back))

    def say(self, note: str) -> None:
        """One line to the dyer in the present place, until the next act."""
        if self._places and self.screen is self._places[-1].screen:
            self._places[-1].say(note)
        elif self.day is not None:
            self.day.say(note)

    def in_background(self, work: Callable[[], Brought], then: Callable[[Brought], None]) -> None:
        """Do something slow beside the screen, then go on with what it brought; a refusal is one line."""

        def run() -> None:
            try:
                brought = work()
            except UserError as trouble:
                sentence = str(trouble)
                self.post_message(BroughtBack(lambda: self.say(sentence)))
            else:
                self.post_message(BroughtBack(lambda: then(brought)))

        self.run_worker(run, thread=True)

    def on_brought_back(self, message: BroughtBack) -> None:
        """Go on with what was brought."""
        message.go_on()

    @on(PlaceAct)
    def hear(self, act: PlaceAct) -> None:
        """Every act of a place goes to whoever looks after it."""
        act.stop()
        place = next((one for one in reversed(self._places) if one.screen.name == act.place), None)
        if place is not None:
            place.carry_out(act)

    @on(m.Act)
    def carry_out(self, act: m.Act) -> None:
        """Every act of the Stove goes to its day."""
        act.stop()
        if self.day is not None:
            self.day.carry_out(act)

    def on_day_changed(self, message: DayChanged) -> None:
        """The day has moved on."""
        if self.day is not None:
            self.day.refresh()

    def _fatal_error(self) -> None:
        """Leave without printing a traceback: the fault goes to whoever ran the app, who writes it to a file."""
        self._close_messages_no_wait()

    @property
    def fault(self) -> Exception | None:
        """What ended the app, when it was not the dyer."""
        return self._exception
