"""Every act at the prompt, typed as a dyer would, and the fact that it leaves in the log."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from line.lined import LinedDay, Shelf, typed_after

from dyesession.session import events as e

MOMENTS = {
    "nothing done": None,
    "scour fills": "NEXT weigh and add 14.4 g wash to A",
    "A is hot": "NEXT turn off the heat under A",
    "mordant waits": "NEXT begin: mordant",
    "extract holds": "NEXT strain C into the dye pot, at",
    "strained": "NEXT begin: extract again",
    "sieve full": "NEXT put the dyestuff back in C",
    "dyeing": "NEXT on shade",
    "all done": "NEXT close the day",
}


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shelf]:
    yield Shelf(tmp_path_factory.mktemp("acts"), [one for one in MOMENTS.values() if one])


def at(shelf: Shelf, moment: str) -> LinedDay:
    return shelf.take(list(MOMENTS).index(moment))


def facts_after(day: LinedDay, lines: list[str]) -> list[Any]:
    before = day.session.snapshot.state.n
    day.type(lines)
    entries = day.session.snapshot.entries
    return [one.event for one in entries if one.n > before and one.event.kind not in e.PROGRAM_KINDS]


ACTS: list[tuple[str, str, object]] = [
    ("nothing done", "begin extract", "begun extract"),
    ("nothing done", "begin dye because the liquor is ready", "begun dye early"),
    ("nothing done", "weigh alum 1 oz", e.Weighed("alum", 28.349523125, 0.1)),
    ("nothing done", "w large skein 166 g", e.Read(lot="large skein", mass_g=166.0, how="weighed")),
    ("nothing done", "fill D 5 l", e.Filled("dye pot", 5.0, "read")),
    ("nothing done", "fill new bucket 3 l", e.Filled("bucket", 3.0, "read")),
    ("nothing done", "soak madder in C 1 l", e.Soaked("madder", "extract pot", 1.0)),
    ("nothing done", "dissolve alum 0.5 l", e.Dissolved("alum", 0.5)),
    ("nothing done", "skip scour: washed yesterday", e.Skipped("scour", "washed yesterday")),
    ("nothing done", "k scour because it is clean", e.Skipped("scour", "it is clean")),
    ("nothing done", "n two days of rain", e.Noted("two days of rain")),
    ("scour fills", "add wash 15 g to A", e.Added("wash", "wash pot", 15.0, "weighed")),
    ("scour fills", "add wash", e.Added("wash", "wash pot", 14.4)),
    ("scour fills", "light A", e.Lit("wash pot")),
    ("scour fills", "volume A 7 l", e.Read("wash pot", volume_l=7.0)),
    ("scour fills", "ph A 7.5", e.Read("wash pot", ph=7.5)),
    ("scour fills", "h wash pot 7,5", e.Read("wash pot", ph=7.5)),
    ("scour fills", "top up A to 7.5 l", e.ToppedUp("wash pot", to_l=7.5, how="read")),
    ("scour fills", "u A by 500 ml", e.ToppedUp("wash pot", volume_l=0.5, how="read")),
    ("scour fills", "enter small skein into A", e.Entered("small skein", "wash pot")),
    ("scour fills", "empty A", e.Discarded("wash pot")),
    ("scour fills", "pour A into B 2 l", e.Pooled("wash pot", "mordant pot", 2.0, "read")),
    ("scour fills", "stop: called away", e.Stopped("called away")),
    ("scour fills", "abort the pot boiled over", e.Aborted("the pot boiled over")),
    ("A is hot", "turn off A", e.Lit("wash pot", on=False)),
    ("A is hot", "t A 140 F", e.Read("wash pot", temperature_c=60.0)),
    ("mordant waits", "l large skein", e.Lifted("large skein", "wash pot")),
    ("A is hot", "e scour 10", e.Extended("scour", 10.0)),
    ("A is hot", "pause scour: telephone", e.Paused("scour", "telephone")),
    ("extract holds", "extend 5 min", "extended"),
    ("mordant waits", "lift small skein 300 g", e.Lifted("small skein", "wash pot", 300.0)),
    ("strained", "enough", e.Skipped("extract again", "enough colour")),
    ("strained", "f because it is still red", e.Replanned("refresh", "strain", "it is still red")),
    ("strained", "strength D 100 %", "read"),
    ("strained", "colour D deep brick", e.Read("dye pot", colour="deep brick")),
    ("sieve full", "fresh water C 2 l", e.Refreshed("extract pot", 2.0, "read")),
    ("sieve full", "refresh", e.Refreshed("extract pot", 2.4)),
    ("dyeing", "d", e.Dipped("snippet 1", "dye pot")),
    ("dyeing", "dip snippet 3 in D", e.Dipped("snippet 3", "dye pot")),
    ("dyeing", "c small skein brick red, wet", e.Read(lot="small skein", colour="brick red", wet=True)),
    ("dyeing", "o: as dark as the sample", e.OnShade("dye", "as dark as the sample")),
    ("dyeing", "finish dye", e.Finished("dye")),
    ("all done", "close: a warm brick", "closed"),
]


@pytest.mark.parametrize(("moment", "line", "fact"), ACTS, ids=[line for _, line, _ in ACTS])
def test_a_typed_act_leaves_its_fact(shelf: Shelf, moment: str, line: str, fact: object) -> None:
    found = facts_after(at(shelf, moment), [line])
    assert len(found) == 1
    if isinstance(fact, str):
        assert fact.split()[0] in (found[0].kind, getattr(found[0], "how", ""))
    else:
        assert found[0] == fact


def test_a_step_before_its_time_keeps_the_reason(shelf: Shelf) -> None:
    (begun,) = facts_after(at(shelf, "nothing done"), ["begin dye because the liquor is ready"])
    assert begun.step == "dye" and begun.early == "the liquor is ready"


REFUSED = [
    ("nothing done", "begin dye", "comes after"),
    ("nothing done", "begin pudding", "not understood"),
    ("nothing done", "skip", "say why"),
    ("nothing done", "skip scour", "say why"),
    ("nothing done", "temperature 82", "which pot"),
    ("nothing done", "82", "in which pot"),
    ("nothing done", "29 g", "of what"),
    ("nothing done", "weigh 29 g", "what was weighed"),
    ("nothing done", "weigh alum", "missing"),
    ("nothing done", "weigh alum 3 to 4 oz", "range"),
    ("nothing done", "volume A 1 pint", "for example"),
    ("nothing done", "add salt 5 g to A", "nothing this recipe uses"),
    ("nothing done", "strain C into C", "cannot"),
    ("nothing done", "strain C into D", "nothing in the extract pot"),
    ("nothing done", "strain", "say which pot"),
    ("nothing done", "lift large skein", "in no pot"),
    ("nothing done", "enter giant skein into A", "which lot"),
    ("nothing done", "extend 10", "no step is running"),
    ("nothing done", "pause", "no step is running"),
    ("nothing done", "go on", "no step is paused"),
    ("nothing done", "refresh", "nothing has been strained"),
    ("nothing done", "keep D as exhaust", "nothing in the dye pot"),
    ("nothing done", "draw last week into D", "which kept bath"),
    ("nothing done", "stop", "say why"),
    ("nothing done", "clear", "Nothing needs clearing"),
    ("nothing done", "close", "not done"),
    ("nothing done", "correct 99 strike because so", "no entry"),
    ("nothing done", "aftercare", "what was looked at"),
    ("nothing done", "yes", "answers nothing"),
    ("nothing done", "not now", "nothing was asked"),
    ("nothing done", "temprature B 82", "did you mean “temperature”"),
    ("nothing done", "wait", "nothing is timed"),
    ("nothing done", "begin scour and dance", "not understood"),
    ("A is hot", "60 C", "may mean"),
    ("scour fills", "t A 250", "degrees"),
    ("scour fills", "lift", "nothing to lift"),
]


@pytest.mark.parametrize(("moment", "line", "why"), REFUSED, ids=[line for _, line, _ in REFUSED])
def test_what_cannot_be_is_said_in_one_sentence_and_changes_nothing(
    shelf: Shelf, moment: str, line: str, why: str
) -> None:
    day = at(shelf, moment)
    before = day.session.snapshot.state
    out = typed_after(day.type([line]), line)
    said = [one for one in out if one.startswith("Not done: ")]
    assert len(said) == 1 and why in said[0]
    assert (
        day.session.snapshot.state.n == before.n
        or day.session.snapshot.entries[-1].event.kind in e.PROGRAM_KINDS
    )


def test_waiting_stops_at_what_rings_and_goes_no_further_until_it_is_answered(shelf: Shelf) -> None:
    day = at(shelf, "extract holds")
    out = day.type(["wait", "wait"])
    assert any(line.startswith("RINGS ") for line in out)
    assert out[-3].startswith("Not done: something rings already")


def test_a_figure_alone_counts_only_when_an_empty_line_follows(shelf: Shelf) -> None:
    day = at(shelf, "extract holds")
    assert facts_after(day, ["71", "where"]) == []
    assert facts_after(day, ["71 C", "72", ""]) == [e.Read("extract pot", temperature_c=72.0)]


def test_a_figure_is_what_the_next_act_wants(shelf: Shelf) -> None:
    assert facts_after(at(shelf, "scour fills"), ["15", ""]) == [e.Weighed("wash", 15.0, 0.1)]
    assert facts_after(at(shelf, "sieve full"), ["2.2", ""]) == [e.Refreshed("extract pot", 2.2, "read")]
    assert facts_after(at(shelf, "nothing done"), ["begin scour", "7", ""])[1:] == [
        e.Filled("wash pot", 7.0, "read")
    ]


def test_an_act_of_a_while_ago_counts_from_then(shelf: Shelf) -> None:
    day = at(shelf, "scour fills")
    day.type(["temperature A 20, 10 min ago"])
    entry = next(one for one in day.session.snapshot.entries if isinstance(one.event, e.Read))
    assert entry.happened is not None
    assert entry.instant.at - entry.happened == timedelta(minutes=10)


def test_p_pauses_and_goes_on_as_on_the_screen_and_pause_said_twice_pauses_once(shelf: Shelf) -> None:
    day = at(shelf, "A is hot")
    out = day.type(["pause scour", "pause scour"])
    assert out[-3].startswith("Not done: ")
    assert [one.kind for one in facts_after(day, ["p scour", "p scour"])] == ["resumed", "paused"]


def test_breaking_off_needs_clearing_before_the_day_goes_on(shelf: Shelf) -> None:
    day = at(shelf, "A is hot")
    out = day.type(["abort: boiled over", "light A", "begin mordant", "clear"])
    assert typed_after(out, "begin mordant")[0].startswith("Not done: This day was broken off")
    assert day.session.snapshot.state.status == "open"


def test_a_correction_names_the_entry_and_says_what_stood_there(shelf: Shelf) -> None:
    day = at(shelf, "scour fills")
    n = next(one.n for one in day.session.snapshot.entries if isinstance(one.event, e.Filled))
    out = day.type([f"correct {n} volume 6.8 l because misread the jug"])
    assert f"Entry {n}: volume_l was 7.2, becomes 6.8." in out
    vessel = day.session.snapshot.state.vessel("wash pot")
    assert vessel is not None and vessel.bath is not None and vessel.bath.volume_l == 6.8


def test_a_struck_entry_is_gone_from_the_day_and_not_from_the_log(shelf: Shelf) -> None:
    day = at(shelf, "nothing done")
    day.type(["note wrong book", "correct last strike because it was another day"])
    assert day.session.snapshot.state.notes == ("struck: it was another day",)
    assert day.session.snapshot.entries[0].event == e.Noted("wrong book")


def test_closing_asks_for_a_verdict_which_may_be_left_out(shelf: Shelf) -> None:
    day = at(shelf, "all done")
    out = day.type(["close", "not now", "close", ""])
    assert sum(line.startswith("ASK How did it come out?") for line in out) == 2
    assert out[-1] == f"The day is closed. Its log is {day.path}"
    assert day.session.snapshot.state.status == "complete"


def test_a_closed_day_still_takes_aftercare(shelf: Shelf) -> None:
    day = at(shelf, "all done")
    day.type(["close: good"])
    out = day.type(["aftercare rub test, large skein: clean", "light A", "quit"])
    assert day.session.snapshot.entries[-1].event == e.Cared("rub test", "large skein", "clean")
    assert any("this day is closed" in line.lower() for line in typed_after(out, "light A"))
    assert "The clocks go on" not in out[-1]


@pytest.mark.parametrize(
    ("moment", "line", "wanted"),
    [
        ("strained", "where", "D, the dye pot: liquor of madder"),
        ("strained", "where", "madder: in the sieve."),
        ("strained", "steps", "dye: waits for mordant and strain 3"),
        ("strained", "account D", "The dye pot holds the colour of "),
        ("strained", "b", "strained in from the extract pot: +"),
        ("strained", "entries all", "1: "),
        ("strained", "why", "strain done, so extract again can begin."),
        ("extract holds", "care", "CARE 120 g madder"),
        ("extract holds", "why", "under way"),
        ("nothing done", "?", "An empty line does what NEXT says, once it is done."),
        ("nothing done", "account", "There is no bath to account for yet."),
        ("nothing done", "seen", "Nothing rings."),
        ("nothing done", "entries", "None yet."),
    ],
)
def test_looking_prints_and_changes_nothing(shelf: Shelf, moment: str, line: str, wanted: str) -> None:
    day = at(shelf, moment)
    before = day.session.snapshot.state.n
    out = typed_after(day.type([line]), line)
    assert any(wanted in one for one in out), out
    assert day.session.snapshot.state.n == before


def test_saying_why_before_a_dangerous_act_gives_the_reason_of_the_question(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.spaces_until("ASK How hot is C")
    assert typed_after(day.type(["why"]), "why")[0] == "At 70 °C one second burns."
