"""A kept bath of another day poured in at the prompt: said back with its gravest caution before it counts."""

from pathlib import Path
from typing import Any

import pytest
from days import Day

from dyesession.errors import UserError
from dyesession.line.answers import Deed, Guess
from dyesession.line.phrase import Phrase, Scene
from dyesession.line.pots import draw
from dyesession.session import events as e
from dyesession.session.from_shelf import FromShelf, ShelfBath
from dyesession.session.session import Snapshot

BATH = ShelfBath("madder bath 4", "2026-03-01-first-k7q2", 5.0, ("madder root", "potassium alum"))
BLEACH = ShelfBath("old bleach", "2026-03-02-other-aaaa", 1.0, ("chlorine bleach",))


def typed(text: str, day: Day) -> Any:
    shot: Any = Snapshot(
        day.plan, "today", day.plan.recipe, str(Path()), day.state, day.entries, None, shelf=FromShelf((BATH, BLEACH))
    )
    return draw(Phrase(text, Scene(shot, day.suggest(), day.now_s)))


def test_a_bath_of_the_shelf_counts_only_after_what_to_mind_was_said() -> None:
    answer = typed("madder bath 4 into D 2 l", Day())
    assert isinstance(answer, Guess)
    assert answer.event == e.Drawn("dye pot", BATH.label, BATH.session, 2.0, BATH.substances)
    assert "2 L of madder bath 4 into the dye pot" in answer.shown and "lid off away from your face" in answer.shown


def test_a_bath_kept_today_goes_in_as_it_is_typed() -> None:
    day = Day()
    day.do(e.Filled("dye pot", 4.0))
    day.do(e.Kept("dye pot", "put by"))
    answer = typed("put by into B", day)
    assert isinstance(answer, Deed) and answer.event == e.Drawn("mordant pot", "put by")


def test_more_than_there_is_and_what_must_never_meet_are_refused() -> None:
    with pytest.raises(UserError, match="holds 5 L, so 6 L cannot be drawn"):
        typed("madder bath 4 into D 6 l", Day())
    day = Day()
    day.do(e.Filled("dye pot", 3.0))
    day.do(e.Added("tartar", "dye pot", 14.4))
    with pytest.raises(UserError, match="must not be poured together"):
        typed("old bleach into D", day)
