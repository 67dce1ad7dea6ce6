"""Every sort of figure that can hardly be, typed on a day with its log: each is asked about in words; put right it counts as
any other, insisted on it is a note in the log that moves nothing.
"""

from dataclasses import dataclass
from pathlib import Path

import pytest
from line.lined import LinedDay

from dyesession.account.model import Account
from dyesession.session import events as e
from dyesession.session.opening import read_day
from dyesession.storage import DISK

EXTRACTED = ("fill C 2 l", "add madder 60 g to C", "strain C into D 1.5 l", "fresh water C 1.5 l")
WETTED = ("fill B 4 l", "enter large skein into B")


@dataclass(frozen=True)
class Doubted:
    """What was done before, the figure that can hardly be, one that can, and the act without its figure."""

    before: tuple[str, ...]
    wrong: str
    right: str
    asks: str
    act: str = ""


HARDLY = {
    "a strain stronger than the one before": Doubted(
        EXTRACTED,
        "strength C 130 % against first strain",
        "strength C 30 % against first strain",
        "weaker than the one before",
    ),
    "more strained out than poured in": Doubted(
        ("fill C 2 l", "add madder 60 g to C"),
        "strain C into D 5 l",
        "strain C into D 1.5 l",
        "holds no more than",
        "strain C into D",
    ),
    "wet fibre lighter than dry": Doubted(
        WETTED, "lift large skein 60 g", "lift large skein 480 g", "g dry: was the scale", "lift large skein"
    ),
    "a level above the brim": Doubted(("fill C 2 l",), "volume C 50 l", "volume C 1.9 l", "brim"),
    "liquors compared hot with cold": Doubted(
        (*EXTRACTED, "temperature C 80"),
        "strength C 30 % against first strain",
        "strength C 30 % against first strain, cooled",
        "as warm when you compared them",
    ),
    "a weight below nought": Doubted(("fill C 2 l",), "weigh madder -60 g", "weigh madder 60 g", "less than nothing"),
    "a volume below nought": Doubted(("fill C 2 l",), "volume C -1.9 l", "volume C 1.9 l", "was it 1.9 L"),
    "a strength below nought": Doubted(
        EXTRACTED, "strength C -30 % against first strain", "strength C 30 % against first strain", "less than nothing"
    ),
    "a pot colder than ice": Doubted(("fill C 2 l",), "temperature C -82", "temperature C 82", "was it 82 °C"),
}  # fmt: skip


def typed(folder: Path, lines: tuple[str, ...]) -> tuple[list[str], tuple[e.Event, ...], Account]:
    """What was printed, what the log holds, and the account at the end."""
    day = LinedDay(folder)
    printed = day.type(lines)
    account = day.session.snapshot.account
    day.session.close()
    events = (one.event for one in read_day(DISK, day.path).entries)
    return printed, tuple(one for one in events if not isinstance(one, e.Accounted)), account


def figures(account: Account) -> tuple[object, ...]:
    return account.baths, account.dyestuffs, account.fibres, account.water, account.strengths


@pytest.mark.parametrize("one", HARDLY.values(), ids=HARDLY.keys())
def test_a_figure_that_can_hardly_be_is_asked_about_and_put_right(one: Doubted, tmp_path: Path) -> None:
    printed, logged, _ = typed(tmp_path, (*one.before, one.wrong, one.right))
    plain_printed, plain, _ = typed(tmp_path, (*one.before, "where", one.right))
    asked = [line for line in printed if one.asks in line]
    assert len(asked) == 1 and "Type it again to keep it as a note" in asked[0]
    assert not [line for line in plain_printed if one.asks in line]
    assert logged == plain


@pytest.mark.parametrize("one", HARDLY.values(), ids=HARDLY.keys())
def test_insisted_on_it_is_a_note_that_moves_nothing(one: Doubted, tmp_path: Path) -> None:
    printed, logged, account = typed(tmp_path, (*one.before, one.wrong, one.wrong))
    _, plain, without = typed(tmp_path, (*one.before, one.wrong, one.act or "where"))
    notes = [event for event in logged if isinstance(event, e.Noted)]
    assert len(notes) == 1 and one.asks in notes[0].doubted
    assert tuple(event for event in logged if not isinstance(event, e.Noted)) == plain
    assert figures(account) == figures(without)
    assert "Kept as a note; nothing is reckoned with it." in printed


def test_a_correction_to_less_than_nothing_changes_no_entry(tmp_path: Path) -> None:
    printed, logged, account = typed(tmp_path, ("fill C 2 l", "correct last volume -1.8 l because misread"))
    _, plain, without = typed(tmp_path, ("fill C 2 l", "where"))
    assert any("“-1.8 l” is below nought" in line for line in printed)
    assert logged == plain and figures(account) == figures(without)
