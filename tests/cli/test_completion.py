"""A shell's completion, tried in the shell itself: commands, options, and the names in the workroom."""

import os
import pty
import select
import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest

from dyesession.cli import main
from dyesession.cli.completion import SHELLS

ROOT = Path(__file__).resolve().parents[2]
LOG = "2026-03-14-madder-brick-red-on-wool-k7q2"
PATIENCE_S = 30.0


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the program under its own name, each shell's script, and a workroom with a recipe and a log."""
    folder = tmp_path_factory.mktemp("shells")
    program = folder / "bin" / "dyesession"
    program.parent.mkdir()
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m dyesession "$@"\n', "utf-8")
    program.chmod(0o755)
    for name in ("recipes/my mitten brick.toml", f"logs/{LOG}.toml"):
        file = folder / "room" / name
        file.parent.mkdir(parents=True)
        file.write_text("format = 1\n", "utf-8")
    for shell in SHELLS:
        done = subprocess.run(
            [program, "completion", shell], capture_output=True, text=True, timeout=60, check=True, env=_env(folder)
        )
        (folder / shell).write_text(done.stdout, "utf-8")
    return folder


def _env(folder: Path) -> dict[str, str]:
    path = f"{folder / 'bin'}:{os.environ['PATH']}"
    return {**os.environ, "PATH": path, "PYTHONPATH": str(ROOT), "DYESESSION_WORKROOM": str(folder / "nowhere")}


def _run(place: Path, *command: str) -> str:
    done = subprocess.run(
        command, capture_output=True, text=True, timeout=60, check=False, env=_env(place), cwd=place
    )
    assert done.returncode == 0 and done.stderr == "", done.stderr
    return done.stdout


def in_bash(place: Path, *words: str) -> list[str]:
    """What bash offers for the last of these words."""
    code = (
        f'source {place / "bash"}; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _shtab_dyesession; '
        'printf "%s\\n" "${COMPREPLY[@]}"'
    )
    return _run(place, "bash", "--norc", "-c", code, "bash", *words).splitlines()


def test_bash_offers_the_commands(place: Path) -> None:
    assert in_bash(place, "dyesession", "re") == ["resume", "rehearse", "review", "repeat"]


def test_bash_offers_the_options_of_the_command_that_stands_there(place: Path) -> None:
    offered = in_bash(place, "dyesession", "work-out", "weld-yellow-on-wool", "--")
    assert {"--fibre", "--kitchen", "--write"} <= set(offered) and "--into" not in offered


def test_bash_offers_the_recipes_that_come_with_the_program(place: Path) -> None:
    assert in_bash(place, "dyesession", "begin", "onion") == ["onion-skins-in-one-pot"]


def test_bash_offers_ones_own_recipes_and_logs_from_the_workroom_named_in_the_line(place: Path) -> None:
    room = str(place / "room")
    assert in_bash(place, "dyesession", "begin", "--workroom", room, "my") == ["my mitten brick"]
    assert in_bash(place, "dyesession", "review", "--workroom", room, "2026") == [LOG]
    assert in_bash(place, "dyesession", "review", "2026") == [""]


def test_bash_offers_files_where_a_file_is_wanted(place: Path) -> None:
    assert in_bash(place, "dyesession", "check", "room/rec") == ["room/recipes"]
    assert in_bash(place, "dyesession", "begin", "room/recipes/my") == ["room/recipes/my mitten brick.toml"]


def test_bash_completes_the_line_of_somebody_who_presses_tab(place: Path) -> None:
    ours, shells = pty.openpty()
    bash = subprocess.Popen(
        ["bash", "--norc", "--noprofile", "-i"], stdin=shells, stdout=shells, stderr=shells, env=_env(place),
        start_new_session=True,
    )  # fmt: skip
    os.close(shells)
    try:
        os.write(ours, f"source {place / 'bash'}\necho rea''dy\n".encode())
        _read_until(ours, "ready")
        os.write(ours, b"dyesession begin onion\t")
        _read_until(ours, "onion-skins-in-one-pot ")
    finally:
        bash.kill()
        bash.wait()
        os.close(ours)


def _read_until(terminal: int, wanted: str) -> None:
    told, until_s = "", time.monotonic() + PATIENCE_S
    while wanted not in told:
        assert time.monotonic() < until_s, told
        if select.select([terminal], [], [], 0.2)[0]:
            told += os.read(terminal, 4096).decode("utf-8", "replace")


@pytest.mark.skipif(shutil.which("fish") is None, reason="fish is not installed here")
def test_fish_offers_the_same(place: Path) -> None:
    def offered(line: str) -> list[str]:
        told = _run(place, "fish", "--no-config", "-c", f'source {place / "fish"}; complete -C "{line}"')
        return [one.partition("\t")[0] for one in told.splitlines()]

    assert offered("dyesession re") == ["rehearse", "repeat", "resume", "review"]
    assert offered("dyesession begin onion") == ["onion-skins-in-one-pot"]
    assert offered(f"dyesession review --workroom {place / 'room'} 2026") == [LOG]


@pytest.mark.skipif(shutil.which("zsh") is None, reason="zsh is not installed here")
def test_zsh_takes_its_script(place: Path) -> None:
    _run(place, "zsh", "-n", str(place / "zsh"))


def test_completion_without_a_shell_asks_which(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion"]) == 2
    assert "bash, zsh, fish" in capsys.readouterr().err


def test_the_substances_that_have_a_sheet_can_be_named(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", "--names", "substances"]) == 0
    for name in capsys.readouterr().out.split("\n"):
        assert name == "" or main(["safety", name]) == 0
