"""Texts typed at the Stove that are no facts of the day: a folder to save to, fibre that a bath is asked about, a
dried snippet.

Decides and reckons nothing: a folder goes to the day, a question to the account.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from dyesession.account.asked_snippet import COLOURS_EXAMPLE, SNIPPET_EXAMPLE, snippet_asked
from dyesession.account.say import line, main_bath
from dyesession.account.told import BATH_EXAMPLE, old_bath_asked
from dyesession.errors import UserError
from dyesession.session import words
from dyesession.ui.saving_places import places_to_save

if TYPE_CHECKING:
    from collections.abc import Callable

    from dyesession.account import Account
    from dyesession.account.say import Said
    from dyesession.ui.stove_day import StoveDay

Aside = Literal["", "save elsewhere", "old bath", "snippet"]
NOTHING_TO_DO = "Nothing to do until"
"""How a note begins that is true only as long as nothing is to be done."""


class Asides:
    """What such a text is about, and what becomes of it."""

    def __init__(self, day: StoveDay) -> None:
        self._day = day
        self._bath = ""

    def save_elsewhere(self) -> None:
        """Offered at any time, wanted when a disk fails: the whole day goes to a folder and goes on there."""
        self._day.clear_typing()
        self._day.set_mode(
            aside="save elsewhere",
            places=places_to_save(),
            wants="folder",
            note="The whole day is written there, and goes on there.",
            where="",
        )

    def ask_old_bath(self, vessel: str) -> None:
        """What a bath would still do for other fibre; the main bath where none is in hand."""
        if pot := self._bath_in_hand(vessel):
            note = f"What would it still do? For example {BATH_EXAMPLE}"
            self._day.set_mode(aside="old bath", wants=f"fibre for {pot}", note=note, where="")

    def ask_snippet(self, vessel: str) -> None:
        """How far along the fibre in a bath is, by a dried snippet; the main bath where none is in hand."""
        if pot := self._bath_in_hand(vessel):
            note = f"How deep, dry, of the depth you want? For example {SNIPPET_EXAMPLE}, or {COLOURS_EXAMPLE}"
            self._day.set_mode(aside="snippet", wants=f"snippet of {pot}", note=note, where="")

    def _bath_in_hand(self, vessel: str) -> str:
        """What the bath is called that is asked about; "" where none has colour, which is said."""
        snapshot = self._day.session.snapshot
        main = main_bath(snapshot.account, snapshot.plan)
        self._bath = vessel or (main.vessel if main is not None else "")
        self._day.clear_typing()
        if not self._bath:
            self._day.say("There is no colour in any bath yet.")
            return ""
        return words.letter(snapshot.state, self._bath) or self._bath

    def entered(self, text: str) -> bool:
        """Whether a finished text was one of these; then it is dealt with."""
        aside: Aside = self._day.mode.aside
        if aside == "save elsewhere":
            self._day.rescue(text.strip())
        elif aside in ("old bath", "snippet"):
            self._answer(old_bath_asked if aside == "old bath" else snippet_asked, text)
        return bool(aside)

    def _answer(self, asked: Callable[[Account, str, str], tuple[Said, ...]], text: str) -> None:
        account = self._day.session.snapshot.account
        try:
            said = asked(account, self._bath, text)
        except UserError as trouble:
            self._day.say(str(trouble))
            return
        self._day.clear_typing()
        self._day.say(" ".join(line(one) for one in said))
