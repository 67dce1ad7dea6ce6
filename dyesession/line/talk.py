"""The day as a talk: what is so and what comes next is said, a line is heard, and it is done, told or
refused.

Knows how a line is answered and nothing of files or estimates. A question is never passed by an empty line.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime

from dyesession.account import first_asked, kept_as_note
from dyesession.account.model import Account
from dyesession.care import DISCLAIMER_SHORT, NO_NUMBER
from dyesession.errors import UserError
from dyesession.kitchen.alarm import not_started, start_command
from dyesession.kitchen.model import Kitchen
from dyesession.line import amounts, asked, lines, steps, table
from dyesession.line.answers import Answer, Deed, Guess, Order, Tell
from dyesession.line.ears import Ears
from dyesession.line.home import Home
from dyesession.line.phrase import Phrase, Scene
from dyesession.line.readings import figure
from dyesession.line.ringing import Bell
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.asking import Ask, ask_before, care_now, caring, first_aid_before
from dyesession.session.engine import decide
from dyesession.session.session import Session
from dyesession.session.state import State
from dyesession.session.suggest import Suggestion, Wait, rings, suggest
from dyesession.session.words import command_words, heat_off_words, next_words, when_text
from dyesession.units import quoted

PROMPT = "> "
INTERRUPTED = 130  # the exit code of a program ended from the keyboard: 128 + SIGINT, as shells count it
PATIENCE_S = 1.0  # a save that takes longer is said to be under way; our own choice, no source
_YES = re.compile(r"(?:y+|yes|ok|okay|j+|ja|oui|si)", re.IGNORECASE)
_NOT_NOW = ("-", "not now", "later")


@dataclass(frozen=True)
class Means:
    """What a talk needs of the world: where lines go, how time passes, and what the kitchen's bell does."""

    write: Callable[[str], None]
    sleep: Callable[[float], None]
    kitchen: Kitchen
    live: bool
    bell: bool


class Talk:
    """One talk over one open day, from the first line to quitting or closing."""

    def __init__(self, session: Session[Account], ears: Ears, means: Means) -> None:
        self._session, self._ears, self._means = session, ears, means
        self._bell = Bell(means.kitchen.alarm, means.live)
        self._home = Home(session.household, session.poison_centre)
        self._told = session.snapshot.state.n
        self._cautioned: set[str] = set()
        self._said_running = self._said_account = self._said_hot = ""
        self._news, self._over, self._verdict_wanted = True, False, False
        self._guess: Guess | None = None
        self._held: Ask | None = None
        self._doubted: tuple[str, float] | None = None
        self._questioned: e.Event | None = None
        self._said_heat: tuple[str, ...] = ()

    def run(self) -> int:
        """Talk until the dyer quits or the day is closed; the exit code."""
        try:
            self._greet()
            while not self._over:
                self._look()
                self._say_what_is_so()
                self._heard(self._ears.hear(PROMPT))
        except EOFError:
            self._leave()
        except KeyboardInterrupt:
            self._leave()
            return INTERRUPTED
        return 0

    def _heard(self, heard: str | None) -> None:
        if heard is not None:
            self._news = True
            self._hear(asked.clean(heard))

    def _say(self, text: str, *, ring: bool = False) -> None:
        self._means.write(("\a" if ring and self._means.bell else "") + lines.plain(text))

    def _greet(self) -> None:
        day = self._session.snapshot
        self._say(DISCLAIMER_SHORT)
        if not self._home.poison_centre and not day.entries:
            self._say(NO_NUMBER)
        self._say(lines.head_line(day))
        self._look()
        if day.entries:
            for line in lines.where_lines(day, self._session.now_s()):
                self._say(line)
        for line in lines.shelf_lines(day):
            self._say(line)
        self._say("An empty line does what NEXT says; “help” lists every word.")

    def _suggestion(self) -> Suggestion:
        return suggest(self._session.snapshot.state, self._session.now_s(), self._session.household)

    def _scene(self) -> Scene:
        return Scene(self._session.snapshot, self._suggestion(), self._session.now_s(), self._home)

    def _present(self) -> State:
        return replace(self._session.snapshot.state, now_s=self._session.now_s())

    def _look(self) -> None:
        """Let the program look at the clocks, and say what rings."""
        self._session.tick().result()
        self._say_entries()
        state, now = self._session.snapshot.state, self._session.now()
        for ring in self._bell.struck(rings(state, state.seconds(now)), state.seconds(now)):
            aloud = not self._bell.quiet(now.at)
            self._say(lines.ring_line(state, ring), ring=aloud)
            self._news = True
            command = self._means.kitchen.alarm.command
            if aloud and self._means.live and command and not start_command(command):
                self._say(not_started(command))

    def _say_entries(self) -> None:
        day = self._session.snapshot
        for entry in day.entries[self._told :]:
            if isinstance(entry.event, e.Begun):
                self._cautioned.update(care_now(day.state, None, entry.event.step, self._home.household))
        for line in lines.new_lines(day, self._told, self._home):
            self._say(line)
            self._news = True
        self._told = day.state.n

    def _say_what_is_so(self) -> None:
        """What runs and how strong the bath is, where that is new; and always what comes next."""
        if not self._news:
            return
        self._news = False
        day, now_s = self._session.snapshot, self._session.now_s()
        if (running := lines.running_line(day.state, now_s)) and running != self._said_running:
            self._say(running)
        if (account := lines.account_line(day)) and account != self._said_account:
            self._say(account)
        self._said_running, self._said_account = running, account
        heats = lines.heat_lines(day, now_s)
        for line in heats:
            if line not in self._said_heat:
                self._say(line)
        self._said_heat = heats
        if (hot := lines.hot_bath_line(day, now_s)) and hot != self._said_hot:
            self._say(hot)
        self._said_hot = hot
        if trouble := lines.saving_line(day):
            self._say(trouble, ring=True)
        if self._verdict_wanted:
            self._say(lines.verdict_line())
        elif self._guess is None:
            self._say_next(self._held or self._suggestion(), now_s)

    def _say_next(self, suggestion: Suggestion, now_s: float) -> None:
        """What comes next, what to bear in mind with it where that was not said yet, and a question's first aid."""
        state, home = self._present(), self._home
        event = suggestion.then if isinstance(suggestion, Ask) else suggestion
        if not isinstance(event, Wait):
            self._caution(event, first_aid=not isinstance(suggestion, Ask))
        self._say(lines.next_line(self._session.snapshot.state, suggestion, now_s))
        if isinstance(suggestion, Ask):
            first_aid = first_aid_before(state, suggestion, home.household, home.poison_centre)
            self._say(f"FIRST AID {first_aid}")

    def _caution(self, command: e.Event, first_aid: bool = True) -> None:
        """The reminders of an act, each said once in a sitting; a step's own are said when it begins."""
        cared = caring(self._present(), command, "", self._home.household, self._home.poison_centre)
        cared = cared if first_aid else replace(cared, first_aid="")
        if not self._cautioned.issuperset(cared.texts):
            for line in lines.cared_lines(cared):
                self._say(line)
        self._cautioned.update(cared.texts)

    def _hear(self, text: str) -> None:
        """Answer one line; what the dyer can put right is said in one sentence, and nothing is lost."""
        try:
            self._answer(text)
        except UserError as sentence:
            self._say(f"Not done: {asked.ended(str(sentence))}")
        self._say_entries()

    def _answer(self, text: str) -> None:
        if self._verdict_wanted:
            return self._take_verdict(text)
        if self._guess is not None:
            guess, self._guess = self._guess, None
            if not text:
                return self._attempt(guess.event)
            self._say(f"Left out: {guess.shown}.")
        ask = self._held or self._ask()
        if ask is not None and self._answers(ask, text):
            return None
        return self._act(text)

    def _ask(self) -> Ask | None:
        suggestion = self._suggestion()
        return suggestion if isinstance(suggestion, Ask) else None

    def _act(self, text: str) -> None:
        if not text:
            self._next()
        elif _YES.fullmatch(text):
            raise LineError(f"{quoted(text)} answers nothing here: an empty line does what NEXT says")
        elif text.casefold() in _NOT_NOW:
            raise LineError("nothing was asked, so there is nothing to put off")
        else:
            self._drop_held()
            self._perform(text)

    def _drop_held(self) -> None:
        """An act that waits for an answer is left out when the dyer goes on to something else."""
        if self._held is not None:
            self._say(f"Left out: {command_words(self._session.snapshot.state, self._held.then)}.")
            self._held = None

    def _next(self) -> None:
        """Do what is suggested; with nothing to do, say until when."""
        suggestion = self._suggestion()
        if isinstance(suggestion, Wait):
            what, when = next_words(self._session.snapshot.state, suggestion, self._session.now_s())
            self._say(f"Nothing to do until then: {what}, {when}." if when else f"Nothing is timed: {what}.")
        elif isinstance(suggestion, e.Closed):
            self._close("")
        elif not isinstance(suggestion, Ask):
            self._record(suggestion)

    def _answers(self, ask: Ask, text: str) -> bool:
        """Whether a line is about the question; then it is dealt with. Blank lines and y never answer it."""
        if not text or _YES.fullmatch(text):
            wants = "the pot's letter" if ask.kind == "pot" else "a figure, for example 72"
            self._say(f"That answers nothing: type {wants}, or “not now”.")
            return True
        if text.casefold() in _NOT_NOW:
            self._record(ask.not_now())
            self._go_on(ask)
            return True
        confirmed = asked.answer(ask, text, self._scene())
        if confirmed is None:
            return False
        if confirmed.temperature_c is not None:
            self._say(asked.said_back(ask, confirmed, self._session.snapshot.state))
        if doubt := self._doubts(ask, confirmed):
            self._say(doubt)
            return True
        self._record(confirmed)
        self._go_on(ask)
        return True

    def _doubts(self, ask: Ask, given: e.Confirmed) -> str:
        """Why an answer is not taken yet: it is hard to believe, and was given only once."""
        if given.temperature_c is None:
            return ""
        answer = (ask.key, given.temperature_c)
        again, self._doubted = self._doubted == answer, answer
        return "" if again else ask.doubt(given.temperature_c)

    def _go_on(self, ask: Ask) -> None:
        """A question that stood before a typed act: the act follows its answer."""
        if self._held is None or self._held.key != ask.key:
            return
        self._held = None
        if ask.key in self._session.snapshot.state.answered:
            self._attempt(ask.then)

    def _perform(self, text: str) -> None:
        if asked.FIGURE.match(text):
            text, ago = amounts.split_ago(text)
            return self._take(figure(Phrase(text, self._scene())), self._happened(ago))
        found = table.find(text)
        if found is None:
            word = text.split()[0]
            near = table.nearest(word)
            hint = f"did you mean “{near}”?" if near else "“help” lists every word."
            raise LineError(f"{quoted(word)} is no word this program knows; {hint}")
        verb, rest = found
        rest, ago = amounts.split_ago(rest) if verb.timed else (rest, None)
        return self._take(verb.carry_out(Phrase(rest, self._scene(), why=verb.why)), self._happened(ago))

    def _happened(self, ago: amounts.Ago) -> datetime | None:
        return None if ago is None else self._session.now().at - ago

    def _take(self, answer: Answer, happened: datetime | None) -> None:
        if isinstance(answer, Tell):
            for line in answer.lines:
                self._say(line)
        elif isinstance(answer, Guess):
            self._guess = answer
            self._say(f"{answer.shown}: an empty line keeps it, anything else leaves it out.")
        elif isinstance(answer, Order):
            self._obey(answer)
        else:
            self._carry_out(answer, happened)

    def _carry_out(self, deed: Deed, happened: datetime | None) -> None:
        if deed.echo:
            self._say(deed.echo)
        self._attempt(deed.event, happened)

    def _attempt(self, command: e.Event, happened: datetime | None = None) -> None:
        """Do a typed act, unless a question stands before it; a reading that was asked for answers the
        question.
        """
        ask = self._ask()
        if ask is not None and asked.is_the_reading(command, ask):
            return self._record(ask.answered(temperature_c=command.temperature_c))  # type: ignore[union-attr]
        state, household = self._present(), self._session.household
        if question := first_asked(self._session.snapshot.account, state, command):
            return self._question(command, question)
        decide(state, command, self._session.now(), household)
        stands_before = ask_before(state, command, household)
        if stands_before is not None:
            self._held = stands_before
            return None
        self._caution(command)
        return self._record(self._with_scale(command), happened)

    def _question(self, command: e.Event, question: str) -> None:
        """A figure that can hardly be is asked about; typed again it is kept as a note."""
        if self._questioned != command:
            self._questioned = command
            return self._say(f"{asked.ended(question)} Type it again to keep it as a note.")
        self._questioned = None
        for fact in kept_as_note(command, question):
            self._record(fact)
        return self._say("Kept as a note; nothing is reckoned with it.")

    def _with_scale(self, command: e.Event) -> e.Event:
        """A weighing is taken to be on the finest scale of the kitchen that carries it."""
        if not isinstance(command, e.Weighed):
            return command
        fit = [
            one for one in self._means.kitchen.scales if (one.capacity_g or command.mass_g) >= command.mass_g
        ]
        return replace(command, resolution_g=min((one.resolution_g for one in fit), default=None))

    def _record(self, command: e.Event, happened: datetime | None = None) -> None:
        """Hand a fact to the day and wait until it is applied; a slow disk is said to be slow."""
        off = heat_off_words(self._session.snapshot.state, command)
        done = self._session.do(command, happened)
        try:
            done.result(timeout=PATIENCE_S)
        except TimeoutError:
            if done.done():
                raise
            self._say("Saving …")
            done.result()
        if off:
            self._say(off)

    def _take_verdict(self, text: str) -> None:
        self._verdict_wanted = False
        if text.casefold() in (*_NOT_NOW, "quit", "q"):
            self._say("The day stays open.")
            return self._leave() if text.casefold() in ("quit", "q") else None
        return self._close(text, asked=True)

    def _close(self, verdict: str, *, asked: bool = False) -> None:
        command = e.Closed(verdict)
        decide(self._present(), command, self._session.now(), self._session.household)
        if not verdict and not asked:
            self._verdict_wanted = True
            return
        self._record(command)
        self._say_entries()
        self._say(f"The day is closed. Its log is {self._session.snapshot.path}")
        self._over = True

    def _obey(self, order: Order) -> None:
        if order.what == "quit":
            self._leave()
        elif order.what == "close":
            self._close(order.text)
        elif order.what == "wait":
            self._wait(float(order.text) * 60 if order.text else None)
        elif order.what == "save":
            self._session.try_again().result()
        else:
            self._session.rescue(order.text).result()
            self._say(f"The day goes on in {self._session.snapshot.path}")

    def _leave(self) -> None:
        """Quitting asks nothing: one line says that the clocks go on, and how to come back."""
        self._over = True
        day = self._session.snapshot
        clocks = "The day is closed." if day.state.status == "complete" else "The clocks go on."
        self._say(f"{clocks} To take the day up again: dyesession resume {day.path}")

    def _wait(self, limit_s: float | None) -> None:
        """Wait until something is due (or `limit_s` at most). At a keyboard nothing needs waiting for."""
        state, now_s = self._present(), self._session.now_s()
        if rings(state, now_s):
            raise LineError("something rings already: answer it first, for example with “seen”")
        until_s = steps.next_due_s(state, self._suggestion(), now_s)
        if limit_s is not None:
            until_s = min(until_s if until_s is not None else now_s + limit_s, now_s + limit_s)
        if until_s is None:
            raise LineError(
                "nothing is timed, so there is nothing to wait for; “wait 20 min” waits that long"
            )
        self._say(f"Waiting until {when_text(self._session.snapshot.state, until_s, now_s)}.")
        if not self._means.live:
            self._means.sleep(max(0.0, until_s - now_s))
