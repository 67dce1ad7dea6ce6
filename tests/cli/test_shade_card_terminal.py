"""What the shade card shows by what the terminal says of itself."""

import sys

import pytest

from dyesession.cli.shade_card import depth_of_terminal


@pytest.mark.parametrize(
    ("said", "depth"),
    [
        ({"COLORTERM": "truecolor", "TERM": "xterm-256color"}, "full"),
        ({"TERM": "xterm-256color"}, "256"),
        ({"TERM": "xterm"}, "16"),
        ({"COLORTERM": "truecolor", "TERM": "xterm", "NO_COLOR": "1"}, "none"),
        ({"COLORTERM": "truecolor", "TERM": "dumb"}, "none"),
    ],
)
def test_a_terminal_is_taken_at_its_word(said: dict[str, str], depth: str, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("COLORTERM", "TERM", "NO_COLOR"):
        monkeypatch.delenv(name, raising=False)
    for name, value in said.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True, raising=False)
    assert depth_of_terminal() == depth


def test_a_file_or_a_pipe_gets_no_colour_codes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLORTERM", "truecolor")
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: False, raising=False)
    assert depth_of_terminal() == "none"
