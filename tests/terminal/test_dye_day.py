"""A dye day in a real terminal, on the real screens and the real clock: killed in a hold, taken up on the second."""

import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from terminal.terminals import PATIENCE_S, BarePty, Terminal, Tmux, open_terminal, wait_for

from dyesession.session import events as e
from dyesession.session.log import check_log
from dyesession.session.opening import read_day
from dyesession.storage import DISK

ROOT = Path(__file__).resolve().parents[2]
BOUNCE_S, ASK_REST_S = 0.2, 0.7
KITCHEN = ROOT / "dyesession" / "kitchen" / "example.toml"


@pytest.fixture
def stove(tmp_path: Path) -> Iterator["Stove"]:
    """The program in the best terminal there is; it is taken down however the test ends."""
    made = Stove(tmp_path)
    yield made
    made.end()


class Stove:
    """The program in a terminal, in a workroom of its own."""

    def __init__(self, workroom: Path, kind: Callable[..., Terminal] = open_terminal) -> None:
        self.workroom, self._kind = workroom, kind
        self.terminal: Terminal | None = None

    def at(self, kind: Callable[..., Terminal]) -> "Stove":
        """The same program, from now on in a terminal of this kind."""
        self._kind = kind
        return self

    def start(self, *words: str, columns: int = 80, rows: int = 24) -> Terminal:
        self.end()
        # A size in the environment would outrank the terminal's own.
        command = ["env", "-u", "COLUMNS", "-u", "LINES"]
        command += [sys.executable, "-m", "dyesession", *words, "--workroom", str(self.workroom)]
        environment = {"COLORTERM": "truecolor", "LANG": "C.UTF-8", "PYTHONPATH": str(ROOT)}
        self.terminal = self._kind(command, environment, columns, rows)
        return self.terminal

    def begin(self, **size: int) -> Terminal:
        words = ["begin", "madder-brick-red-on-wool", "--kitchen", str(KITCHEN), "--washed"]
        return self.start(*words, "--fibre", "165 g large skein", "--fibre", "75 g small skein", **size)

    def end(self) -> None:
        if self.terminal is not None:
            self.terminal.end()

    @property
    def log(self) -> Path:
        return next((self.workroom / "logs").glob("*.toml"))

    def kinds(self) -> list[str]:
        day = read_day(DISK, self.log)
        return [one.event.kind for one in day.entries if one.event.kind not in e.PROGRAM_KINDS]


def step(terminal: Terminal, key: str, shows: str) -> str:
    """Press keys and wait until the screen shows what they should bring; slower than a wet contact bounces."""
    press(terminal, key)
    return wait_for(terminal, shows)


def press(terminal: Terminal, key: str) -> None:
    """Press keys after a wet contact has stopped bouncing."""
    time.sleep(BOUNCE_S)
    terminal.press(key)


def shorten(terminal: Terminal, pot: str) -> None:
    """Give a pot's clock so much less that it is due."""
    step(terminal, "e", "longer, min")
    terminal.press(f"{pot} -300\r")
    wait_for(terminal, "RINGING")


def test_a_day_from_the_first_weighing_to_the_closed_log(stove: Stove) -> None:
    terminal = stove.begin()
    wait_for(terminal, "begin: scour in A")
    step(terminal, " ", "fill A")
    step(terminal, " ", "weigh and add 14.4 g wash")
    step(terminal, "w", "weight of wash")
    step(terminal, "14 g", "= 14 g wash weighed")
    step(terminal, "\r", "add 14 g wash to A")
    step(terminal, " ", "enter large skein")
    step(terminal, " ", "enter small skein")
    step(terminal, " ", "light the ring under A")
    step(terminal, " ", "begin: extract in C")
    for shows in ("fill C", "weigh and add 120 g madder", "light the ring under C", "see whether A is at 60"):
        step(terminal, " ", shows)
    step(terminal, "t", "temperature of")
    step(terminal, "A 60\r", "turn off the heat under A")
    day = read_day(DISK, stove.log)
    assert [one.event.kind for one in day.entries][:3] == ["begun", "account", "filled"] or "weighed" in stove.kinds()

    # kill -9 in the middle of the hold, and land on the same second
    before = re.search(r"(\d\d:\d\d)", _line(terminal, "until"))
    terminal.kill()
    time.sleep(0.3)
    terminal = stove.start("resume")
    wait_for(terminal, "Where you are")
    shown = step(terminal, "\x1b", "60 °C until")
    after = re.search(r"(\d\d:\d\d)", _line(terminal, "until"))
    assert before and after and before[1] == after[1], shown

    shorten(terminal, "A")
    step(terminal, " ", "turn off the heat under A")
    step(terminal, " ", "see whether")
    step(terminal, "t", "temperature of")
    step(terminal, "A 40\r", "scour is done")
    step(terminal, " ", "begin: mordant in B")
    step(terminal, " ", "fill B")
    for shows in ("weigh and add 28.8 g alum", "tartar", "lift large skein out of A", "enter large skein into B"):
        step(terminal, " ", shows)
    for shows in ("lift small skein", "enter small skein", "light the ring under B"):
        step(terminal, " ", shows)
    press(terminal, " ")

    # both lanes are under way: the extract pot comes to its heat, is strained, refreshed, strained, pooled
    shorten(terminal, "C")
    step(terminal, " ", "C is at 70 °C")
    press(terminal, " ")
    shorten(terminal, "C")
    press(terminal, " ")
    step(terminal, " ", "begin: strain in C")
    step(terminal, " ", "ASK")
    step(terminal, "  \ry", "ASK")
    time.sleep(ASK_REST_S)  # nobody reads a question faster
    step(terminal, "69\r", "strain C into the dye pot")
    step(terminal, " ", "begin: extract again")
    assert "strained" in stove.kinds()
    step(terminal, " ", "put the dyestuff back in C")
    step(terminal, " ", "light the ring under C")
    press(terminal, " ")
    step(terminal, "t", "temperature of")
    step(terminal, "C 70\r", "empty A|see whether|70 °C until")
    shorten(terminal, "C")
    press(terminal, " ")
    step(terminal, " ", "begin: strain again")
    step(terminal, " ", "strain C into the dye pot")
    step(terminal, " ", "begin: extract 3")
    step(terminal, "k", "leave out extract 3")
    step(terminal, "strong enough\r", "empty A|see whether")

    # the mordant's hold, then the fibre into the dye pot
    step(terminal, "t", "temperature of")
    terminal.press("B 85\r")
    _spaces_until(terminal, stove, "begin: dye")
    _spaces_until(terminal, stove, "light the ring under D")
    press(terminal, " ")
    step(terminal, "t", "temperature of")
    step(terminal, "D 80\r", "80 °C until")
    step(terminal, "d", "snippet 1 is in")
    step(terminal, "d", "snippet 1 is out")
    step(terminal, "o", "say why it is on shade")
    step(terminal, "dark enough\r", "begin: rinse")
    _spaces_until(terminal, stove, "close the day")
    step(terminal, " ", "The day is done|closed")
    assert check_log(stove.log) == []
    kinds = stove.kinds()
    for kind in ("weighed", "strained", "refreshed", "dipped", "lifted", "on-shade", "kept", "closed"):
        assert kind in kinds, kind


def _line(terminal: Terminal, word: str) -> str:
    return next(line for line in terminal.screen().splitlines() if word in line)


def _spaces_until(terminal: Terminal, stove: Stove, shows: str, most: int = 60) -> None:
    """Space, and shortening whatever clock is waited for, until the screen shows something."""
    for _ in range(most):
        shown = terminal.screen()
        if re.search(shows, shown):
            return
        if "ASK" in shown:
            time.sleep(ASK_REST_S)
            terminal.press("69\r")
        elif waiting := re.search(r"NEXT.*? (?:see whether|turn off the heat under|look at the shade in|finish)", shown):
            if "RINGING" in shown or not re.search(r"\bin (\d|less)", shown):
                press(terminal, " ")
            else:
                terminal.press("e")
                wait_for(terminal, "longer, min")
                terminal.press("-2000\r")
            assert waiting
        else:
            press(terminal, " ")
        time.sleep(2 * BOUNCE_S)
    raise AssertionError(f"no {shows!r}:\n{terminal.screen()}")


@pytest.mark.skipif(shutil.which("tmux") is None, reason="no tmux here, and nothing that could outlive the tests")
def test_a_window_does_not_outlive_tests_that_are_killed(tmp_path: Path) -> None:
    here = Path(__file__).resolve().parents[1]
    code = "from terminal.terminals import Tmux; print(Tmux(['sleep', '300'], {})._socket, flush=True); input()"
    with subprocess.Popen(
        [sys.executable, "-c", code], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
        env={**os.environ, "PYTHONPATH": str(here)},
    ) as tests:  # fmt: skip
        assert tests.stdout is not None
        socket = tests.stdout.readline().strip()
        assert _stands(socket)
        tests.kill()
    ends = time.monotonic() + PATIENCE_S
    while _stands(socket):
        assert time.monotonic() < ends, "the window outlived its tests"
        time.sleep(BOUNCE_S)


def _stands(socket: str) -> bool:
    return subprocess.run(["tmux", "-L", socket, "has-session"], capture_output=True, check=False).returncode == 0


TERMINALS: list[type[Terminal]] = [BarePty, *([Tmux] if shutil.which("tmux") else [])]


@pytest.mark.parametrize("kind", TERMINALS)
def test_a_hung_up_terminal_ends_the_program_and_leaves_the_log_whole(
    stove: Stove, kind: type[Terminal]
) -> None:
    terminal = stove.at(kind).begin()
    wait_for(terminal, "begin: scour")
    step(terminal, " ", "fill A")
    terminal.hang_up()
    again = stove.start("resume")
    wait_for(again, "fill A")
    stove.end()
    assert check_log(stove.log) == []


def test_small_windows_and_odd_terminals_start_and_say_what_is_next(stove: Stove) -> None:
    terminal = stove.begin(columns=60, rows=18)
    wait_for(terminal, "begin: scour in A")
    terminal.resize(40, 10)
    wait_for(terminal, "(?i)scour")
    terminal.resize(80, 24)
    step(terminal, "q", r"The clocks go on|\$|Pane is dead")


def test_old_style_mouse_bytes_do_not_end_the_program(stove: Stove) -> None:
    """A terminal taken up again sends mouse reports with bytes above 0x7F (Textualize/textual issue 6668)."""
    terminal = stove.at(BarePty).begin()
    assert isinstance(terminal, BarePty)
    wait_for(terminal, "begin: scour")
    terminal.send(b"\x1b[M \xc8\xc8")
    step(terminal, " ", "fill A")
