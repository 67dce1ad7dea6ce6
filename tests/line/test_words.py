"""Words and letters of the prompt: each does one thing, and a letter means what it does on the screen."""

import pytest

from dyesession.line import table
from dyesession.line.answers import Tell
from dyesession.line.terminal import encodable, writer
from dyesession.ui import messages
from dyesession.ui.keys import BY_KEY

SAME_ACT = {
    messages.ChangePlan: "change",
    messages.ReadTemperature: "temperature",
    messages.ReadVolume: "volume",
    messages.ReadStrength: "strength",
    messages.PauseOrGoOn: "pause or go on",
    messages.GiveLonger: "extend",
    messages.Strain: "strain",
    messages.OnShade: "on shade",
    messages.DipSnippet: "dip or lift",
    messages.ReadColour: "colour",
    messages.Weigh: "weigh",
    messages.ReadAcidity: "ph",
    messages.FreshWater: "refresh",
    messages.TopUp: "top up",
    messages.LiftFibre: "lift",
    messages.SkipStep: "skip",
    messages.WriteNote: "note",
    messages.Correct: "correct",
    messages.OpenAccount: "account",
    messages.ShowWhere: "where",
    messages.ShowMore: "help",
    messages.ShowHelp: "help",
    messages.QuitStove: "quit",
}


def test_a_letter_does_at_the_prompt_what_its_key_does_on_the_screen() -> None:
    for letter, verb in table.BY_LETTER.items():
        assert SAME_ACT[BY_KEY[letter].act] == verb.words[0]


def test_every_act_of_the_screen_has_its_letter_at_the_prompt() -> None:
    only_drawn = {messages.Next, messages.GoAway, messages.NotNow, messages.PutAway}
    for key in BY_KEY.values():
        if key.act not in only_drawn and key.act in SAME_ACT:
            assert key.key in table.BY_LETTER


def test_no_word_and_no_letter_does_two_things() -> None:
    words = [word for verb in table.VERBS for word in verb.words]
    letters = [verb.letter for verb in table.VERBS if verb.letter]
    assert len(words) == len(set(words)) and len(letters) == len(set(letters))
    assert all(word == word.casefold() for word in words)


def test_y_answers_nothing() -> None:
    assert table.find("y") is None and table.find("yes") is None


@pytest.mark.parametrize("verb", table.VERBS, ids=lambda verb: verb.words[0])
def test_the_example_of_each_act_begins_with_it(verb: table.Verb) -> None:
    found = table.find(verb.example)
    assert found is not None and found[0] is verb


def test_help_names_every_act_in_one_line_each() -> None:
    answer = table.HELP[0].carry_out(None)  # type: ignore[arg-type]
    assert isinstance(answer, Tell)
    for verb in table.VERBS:
        assert sum(line.startswith((f"{verb.words[0]} (", f"{verb.words[0]}:")) for line in answer.lines) == 1


@pytest.mark.parametrize(
    ("text", "word", "rest"),
    [
        ("top up D to 7 l", "top up", "D to 7 l"),
        ("T b 82", "temperature", "b 82"),
        ("skip: strong enough", "skip", ": strong enough"),
        ("stop called away", "stop", "called away"),
        ("stop refreshing", "enough", ""),
        ("n  two  spaces", "note", "two  spaces"),
    ],
)
def test_the_longest_word_that_fits_is_meant(text: str, word: str, rest: str) -> None:
    found = table.find(text)
    assert found is not None and (found[0].words[0], found[1]) == (word, rest)


def test_a_slip_of_the_finger_gets_the_nearest_word() -> None:
    assert table.nearest("temprature") == "temperature"
    assert table.nearest("qqqqqq") is None


def test_an_old_terminal_gets_plainer_marks() -> None:
    assert encodable("71 ± 13 g at 85 °C, “why”", "ascii") == '71 +- 13 g at 85 deg C, "why"'
    assert encodable("71 ± 13 g", "utf-8") == "71 ± 13 g"
    assert encodable("日", "ascii") == "?"


def test_a_printed_line_is_one_line() -> None:
    import io

    out = io.StringIO()
    writer(out)("NEXT strain C into the dye pot.")
    assert out.getvalue() == "NEXT strain C into the dye pot.\n"
