"""What each act of the Stove means now: one table from act to deed. Decides nothing that the engine decides.

An act becomes a command to the day, a question in the entry line, or one line saying why it cannot be.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from dyesession.account import kept_as_note
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session import words
from dyesession.session.asking import Ask
from dyesession.session.engine import decide
from dyesession.session.offered import offered
from dyesession.session.state import State, Vessel
from dyesession.session.suggest import Wait
from dyesession.session.typed import Hand, Meaning, example, meaning_of_number, understand
from dyesession.session.typed_stage import EXAMPLE as STAGE_EXAMPLE
from dyesession.session.typed_strength import HOW_TO_TAKE
from dyesession.session.understood import Understood
from dyesession.ui import messages as m
from dyesession.ui.asides import NOTHING_TO_DO, Asides
from dyesession.ui.explained_places import STOVE_HELP
from dyesession.ui.in_hand import asked_for, in_hand, step_of_interest, weighed_now
from dyesession.ui.keys import KEYS, key_table
from dyesession.units import HeatWord, read_temperature, show_temperature

if TYPE_CHECKING:
    from dyesession.session.from_shelf import FromShelf
    from dyesession.ui.stove_day import StoveDay


class Acts:
    """The table, and what a half-typed text is about."""

    def __init__(self, day: StoveDay) -> None:
        self._day, self._asides = day, Asides(day)
        self._pot = ""
        self._hand = Hand()
        self._doubted: tuple[str, float] | None = None
        self._questioned: e.Event | None = None
        self._begun_for = ""  # the question a bare number was begun for, "" for none

    @property
    def _state(self) -> State:
        return self._day.session.snapshot.state

    @property
    def _shelf(self) -> FromShelf:
        return self._day.session.snapshot.shelf

    @property
    def meaning(self) -> Meaning | None:
        """What is being typed; None for a bare number, or for nothing."""
        return self._day.mode.meaning

    def carry_out(self, act: m.Act) -> None:
        """Do what an act means now."""
        deed: Callable[[Any], None] | None = self._table().get(type(act))
        if deed is not None:
            deed(act)

    def _table(self) -> dict[type[m.Act], Callable[[Any], None]]:
        return {
            m.Next: self._next,
            m.ReadTemperature: lambda act: self._want("temperature"),
            m.ReadVolume: lambda act: self._want("volume"),
            m.Weigh: lambda act: self._want(weighed_now(self._state, self._day.suggestion())),
            m.ReadStrength: lambda act: self._want("strength"),
            m.ReadColour: lambda act: self._want("colour"),
            m.ReadAcidity: lambda act: self._want("pH"),
            m.WriteNote: lambda act: self._want("note"),
            m.GiveLonger: lambda act: self._want("longer"),
            m.TopUp: lambda act: self._want("top up"),
            m.Correct: lambda act: self._want("correct"),
            m.SkipStep: lambda act: self._want("skip"),
            m.ChangePlan: lambda act: self._want("plan"),
            m.SaveElsewhere: lambda act: self._asides.save_elsewhere(),
            m.AskOldBath: lambda act: self._asides.ask_old_bath(self._pot),
            m.AskSnippet: lambda act: self._asides.ask_snippet(self._pot),
            m.StopEarly: lambda act: self._want("stop"),
            m.BreakOff: lambda act: self._want("break off"),
            m.DipSnippet: self._dip,
            m.OnShade: self._on_shade,
            m.PauseOrGoOn: self._pause,
            m.Strain: self._strain,
            m.FreshWater: self._fresh_water,
            m.LiftFibre: self._lift,
            m.OpenAccount: self._account,
            m.ShowWhere: lambda act: self._day.set_mode(where="Where you are", note=""),
            m.GoAway: lambda act: self._day.set_mode(away=not self._day.mode.away),
            m.ShowMore: self._more,
            m.ShowHelp: lambda act: self._day.show_page("The Stove", STOVE_HELP),
            m.QuitStove: lambda act: self._day.leave(),
            m.NotNow: self._not_now,
            m.PutAway: self._put_away,
            m.Typed: self._typed,
            m.Entered: self._entered,
            m.Chosen: self._chosen,
            m.RowMarked: lambda act: self._day.set_mode(mark=act.types),
            m.RowChosen: self._row_chosen,
            m.PotTouched: self._touched,
        }

    def _next(self, act: m.Next) -> None:
        suggestion = self._day.suggestion()
        if isinstance(suggestion, Wait) and _names_first_stage(self._state):
            self._want("plan")
        elif isinstance(suggestion, Wait):
            self._day.set_mode(where="", note=self._waiting(suggestion))
        elif isinstance(suggestion, Ask):
            self._day.say("A number or the pot's letter is wanted here; - puts it off.")
        elif isinstance(suggestion, e.Closed) and self.meaning is None:
            self._day.do(suggestion, "The day is closed.")
        else:
            self._day.do(suggestion)

    def _waiting(self, wait: Wait) -> str:
        if wait.until_s is None:
            return "The day is done." if not wait.step else f"{wait.step} waits for a reason to begin, or to be left out."
        return f"{NOTHING_TO_DO} {words.clock_text(self._state, wait.until_s)}."

    def _want(self, meaning: Meaning) -> None:
        """Ask for a text in the entry line."""
        self._day.clear_typing()
        self._hand = self._in_hand(meaning)
        about = asked_for(self._state, meaning, self._hand)
        shown = STAGE_EXAMPLE if meaning == "plan" and self._state.free else example(meaning)
        note = " ".join(HOW_TO_TAKE) if meaning == "strength" else f"for example {shown}"
        self._day.set_mode(meaning=meaning, wants=about, note=note, where="")

    def _row_chosen(self, act: m.RowChosen) -> None:
        self._day.begin_typing(act.types)
        self._typed(m.Typed(act.types))

    def _in_hand(self, meaning: Meaning) -> Hand:
        return in_hand(self._state, self._day.suggestion(), meaning, self._pot)

    def _dip(self, act: m.DipSnippet) -> None:
        state = self._state
        inside = next((one for one in state.lots if one.snippet and state.vessel(one.place)), None)
        if inside is not None:
            self._day.do(e.Lifted(inside.name, inside.place), f"{inside.name} is out: dry it before you judge.")
            return
        vessel = self._pot or self._dye_pot()
        if not vessel:
            self._day.say("No bath stands ready to dip a snippet in: fill or strain one first.")
            return
        number = sum(one.snippet for one in state.lots) + 1
        self._day.do(e.Dipped(f"snippet {number}", vessel), f"snippet {number} is in.")

    def _dye_pot(self) -> str:
        state = self._state
        dyeing = [one.plan.vessel for one in state.steps if one.status == "running" and one.plan.stage == "dye"]
        with_colour = [one.name for one in state.vessels if one.bath and one.bath.liquor_of]
        return next((one for one in [*dyeing, *reversed(with_colour)] if one), "")

    def _on_shade(self, act: m.OnShade) -> None:
        dye = next((one for one in self._state.steps if one.status == "running" and one.plan.judge), None)
        if dye is None:
            self._day.say("No dye step is under way that the eye could end.")
            return
        since = dye.held_since_s if dye.held_since_s is not None else dye.begun_s or 0.0
        early = dye.plan.judge is not None and self._day.session.now_s() - since < dye.plan.judge.least_min * 60
        if early:
            self._want("on shade")
            self._hand = Hand(dye.plan.vessel or "", dye.name)
            self._day.say(f"{dye.name} has not had its least time: say why it is on shade all the same.")
        else:
            self._day.do(e.OnShade(dye.name))

    def _pause(self, act: m.PauseOrGoOn) -> None:
        state = self._state
        if self._pot:
            step = state.running_in(self._pot)
        else:
            paused = next((one for one in state.steps if one.status == "paused"), None)
            step = paused or step_of_interest(state, self._day.suggestion(), "longer")
        if step is None or step.status not in ("running", "paused"):
            self._day.say("No clock is running that could be paused.")
        elif step.status == "paused":
            self._day.do(e.Resumed(step.name), f"{step.name} goes on.")
        else:
            self._day.do(e.Paused(step.name), f"{step.name} is paused; p lets it go on.")

    def _strain(self, act: m.Strain) -> None:
        """Strain now: the strain step if it is there, else end the extraction that runs, early."""
        state = self._state
        for step in state.steps:
            if step.plan.stage == "strain" and step.status == "running":
                self._day.do(e.Strained(step.plan.vessel or "", step.plan.into or ""))
                return
            if step.plan.stage == "strain" and state.ready(step):
                self._day.do(e.Begun(step.name))
                return
        extract = next((one for one in state.steps if one.plan.stage == "extract" and one.status == "running"), None)
        if extract is None:
            self._day.say("There is no extraction to strain.")
        else:
            self._day.do(e.Finished(extract.name), f"{extract.name} is ended; x again begins the straining.")

    def _fresh_water(self, act: m.FreshWater) -> None:
        """Extract again: the extraction the plan still has, else one more than planned."""
        state = self._state
        planned = [one for one in state.steps if one.plan.stage == "extract" and state.ready(one)]
        if planned:
            self._day.do(e.Begun(planned[0].name))
            return
        done = [one for one in state.steps if one.plan.stage == "strain" and one.status == "complete"]
        waits = any(one.plan.stage == "extract" and one.status in ("waiting", "running") for one in state.steps)
        if not done or waits:
            self._day.say("Fresh water comes after a strain: strain first.")
        else:
            self._day.do(e.Replanned("refresh", done[-1].name, "the dyestuff still gives colour"))

    def _lift(self, act: m.LiftFibre) -> None:
        state, vessel = self._state, self._pot
        pots = [vessel] if vessel else [one.name for one in state.vessels]
        inside = [one for name in pots for one in state.lots_in(name) if not one.snippet]
        if inside:
            self._day.do(e.Lifted(inside[0].name, inside[0].place), f"{inside[0].name} is out.")
            return
        step = next((one for one in state.steps if one.status == "running" and one.plan.enter and one.plan.vessel), None)
        out = next((one for one in state.lots if not one.snippet and one.place.startswith("out")), None)
        if step is None or out is None:
            self._day.say("No fibre is in a pot, and no step wants any.")
        else:
            self._day.do(e.Entered(out.name, step.plan.vessel or ""), f"{out.name} is in again.")

    def _account(self, act: m.OpenAccount) -> None:
        from dyesession.ui.bath_page import OTHER_FIBRE_KEY, SNIPPET_KEY, bath_page

        snapshot = self._day.session.snapshot
        page = bath_page(snapshot.account, snapshot.plan, snapshot.state, self._pot)
        self._day.show_page("Bath account", page, {OTHER_FIBRE_KEY: m.AskOldBath, SNIPPET_KEY: m.AskSnippet})

    def _more(self, act: m.ShowMore) -> None:
        """The rare and grave acts stand behind two keys, so that no wet finger finds them alone."""
        grave = "1  end the day early, in good order\n2  break off for safety\n\n"
        others = {key.key: key.act for key in KEYS if key.act not in (m.ShowMore, m.ShowHelp, m.PutAway)}
        self._day.show_page("More", grave + key_table(), {**others, "1": m.StopEarly, "2": m.BreakOff})

    def _not_now(self, act: m.NotNow) -> None:
        suggestion = self._day.suggestion()
        if isinstance(suggestion, Ask):
            self._day.clear_typing()
            self._day.do(suggestion.not_now(), "Not now; it is noted.")

    def _put_away(self, act: m.PutAway) -> None:
        self._day.clear_typing()
        self._day.put_down()
        self._pot = ""
        self._day.set_mode(where="", note="")

    def _touched(self, act: m.PotTouched) -> None:
        vessel = self._by_letter(act.letter)
        if vessel is not None:
            self._pot = vessel.name
            self._day.say(f"{words.pot(self._state, vessel.name)}, is in hand; escape puts it down.")

    def _by_letter(self, letter: str) -> Vessel | None:
        return next((one for one in self._state.vessels if one.letter == letter.upper()), None)

    def _chosen(self, act: m.Chosen) -> None:
        suggestion = self._day.suggestion()
        if not isinstance(suggestion, Ask):
            return
        if act.key.upper() != suggestion.expected:
            vessel = self._by_letter(act.key)
            named = words.pot(self._state, vessel.name) if vessel else act.key
            self._day.say(f"That is {named}; this is meant for {words.pot(self._state, suggestion.vessel)}.")
            return
        self._day.do(suggestion.answered(letter=suggestion.expected))

    def _typed(self, act: m.Typed) -> None:
        mode = self._day.mode
        asked = self.meaning is not None or bool(mode.aside)
        if not act.text:
            self._day.set_mode(typed="", echo="", mark="", wants=mode.wants if asked else "")
            return
        if not mode.typed:
            self._begun_for = self._question()
        changes = {"typed": act.text, "echo": self._echo(act.text), "mark": ""}
        if not asked and not isinstance(self._day.suggestion(), Ask):
            changes["wants"] = "a number"
        if self.meaning in ("plan", "stage"):
            changes["note"] = self._foretold(act.text)
        self._day.set_mode(**changes)

    def _question(self) -> str:
        suggestion = self._day.suggestion()
        return suggestion.key if isinstance(suggestion, Ask) else ""

    def _foretold(self, text: str) -> str:
        """What a change of the plan would mean for what is left to do, before it counts; else what is missing."""
        if offered(self.meaning, text, self._state):
            return ""
        try:
            understood = understand("plan", text, self._state, self._hand, self._shelf)
            return f"= {self._change_words(understood)}"
        except UserError as trouble:
            return str(trouble)

    def _change_words(self, understood: Understood) -> str:
        """The change worked out by the engine, in words. Raises its refusal."""
        session = self._day.session
        decided = decide(self._state, understood.event, session.now(), session.household)
        if not isinstance(decided, e.Replanned) or decided.change == "step":
            return understood.echo
        return "; ".join((words.plan_words(decided), *words.change_words(decided))) + "."

    def _echo(self, text: str) -> str:
        """What a text was understood as; a folder says itself, and a change of the plan wants a line of its own."""
        if self._day.mode.aside or self.meaning in ("plan", "stage"):
            return ""
        try:
            if isinstance(self._day.suggestion(), Ask) and self.meaning is None:
                return f"= {show_temperature(_degrees_c(text))}"
            meaning = self.meaning or meaning_of_number(text)
            hand = self._hand if self.meaning else self._in_hand(meaning)
            return f"= {understand(meaning, text, self._state, hand, self._shelf).echo}"
        except UserError:
            return ""

    def _entered(self, act: m.Entered) -> None:
        """The text counts now; where it cannot, the sentence says why and the text stays."""
        suggestion = self._day.suggestion()
        if self._asides.entered(act.text):
            return
        if self.meaning is None and self._begun_for != self._question():
            self._day.clear_typing()
            self._day.say("Something came in between while that was typed, and it would mean another thing now: type it again.")
            return
        try:
            if isinstance(suggestion, Ask) and self.meaning is None:
                temperature_c = _degrees_c(act.text)
                if doubt := self._doubts(suggestion, temperature_c):
                    self._day.say(doubt)
                    return
                event: e.Event = suggestion.answered(temperature_c=temperature_c)
                said = ""
            else:
                meaning = self.meaning or meaning_of_number(act.text)
                hand = self._hand if self.meaning else self._in_hand(meaning)
                understood = understand(meaning, act.text, self._state, hand, self._shelf)
                event, said = understood.event, understood.echo
                if isinstance(event, e.Replanned):
                    said = self._change_words(understood)
        except UserError as trouble:
            self._day.say(str(trouble))
            return
        question = self._day.doubts(event)
        if question and self._questioned != event:
            self._questioned = event
            self._day.say(f"{question.rstrip('.')}{'' if question.endswith('?') else '.'} Enter once more keeps it as a note; escape takes it back.")
            return
        self._questioned = None
        self._day.clear_typing()
        for fact in kept_as_note(event, question) if question else (event,):
            self._day.do(fact, "Kept as a note; nothing is reckoned with it." if question else said)

    def _doubts(self, ask: Ask, temperature_c: float) -> str:
        """Why an answer is not taken yet: it is hard to believe, and was given only once."""
        again, self._doubted = self._doubted == (ask.key, temperature_c), (ask.key, temperature_c)
        return "" if again else ask.doubt(temperature_c)


def _names_first_stage(state: State) -> bool:
    """A day that no recipe leads, on which nothing is planned yet: only the dyer knows."""
    return state.free and not state.steps


def _degrees_c(text: str) -> float:
    read = read_temperature(text)
    return float((read.low_c + read.high_c) / 2) if isinstance(read, HeatWord) else float(read.aim)
