"""The house rules that a machine can keep: floors, strict types, tidy code, the top level."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "dyesession", "recipes", "tests", "logs"}


def run(*command: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, *command], cwd=ROOT, capture_output=True, text=True, timeout=300, check=False
    )


@pytest.mark.parametrize(
    "command",
    [
        ("-m", "mypy"),
        ("-m", "ruff", "check", "dyesession", "tests"),
        ("-c", "from importlinter.cli import lint_imports_command as run; run()"),
    ],
    ids=["strict types", "tidy code", "imports go down only"],
)
def test_the_house_keeps_its_rules(command: tuple[str, ...]) -> None:
    done = run(*command)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_top_level_is_as_the_design_card_names_it() -> None:
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT, capture_output=True, text=True, check=True,
    ).stdout.split()  # fmt: skip
    found = {name.split("/")[0] for name in listed}
    assert {one for one in found if not one.startswith(".")} == TOP_LEVEL


def test_looking_at_a_recipe_loads_no_screen_and_no_heavy_library() -> None:
    heavy = ("textual", "rich", "pint", "numpy", "tomli_w", "coloraide")
    code = (
        "import sys, io, contextlib\n"
        "from dyesession.cli import main\n"
        "with contextlib.redirect_stdout(io.StringIO()):\n"
        "    main(['work-out', 'madder-brick-red-on-wool', '--fibre', '240 g wool', '--json'])\n"
        f"print([one for one in {heavy!r} if one in sys.modules])"
    )
    assert run("-c", code).stdout.strip() == "[]"


def test_no_line_of_the_package_names_a_folder_of_one_machine() -> None:
    forbidden = re.compile(r"(?<![\w.:>])/(?!dev/|proc/|home/|media/|somewhere/)[a-z]+/[\w./-]*\w")
    files = [*ROOT.glob("dyesession/**/*.py"), *ROOT.glob("dyesession/**/*.toml"), *ROOT.glob("*.md")]
    found = [f"{one}: {line}" for one in files for line in one.read_text("utf-8").splitlines()
             if forbidden.search(line)]  # fmt: skip
    assert not found
