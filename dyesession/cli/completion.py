"""`dyesession completion`: a shell's own completion script, made from the parser; names are listed as they are asked for.

The dialects of the three shells are shtab's business. What stands for a recipe or a log is told by its metavar.
"""

import argparse
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

from dyesession.cli.workroom import find_workroom

Commands = argparse._SubParsersAction  # argparse gives this type no public name

SHELLS = ("bash", "zsh", "fish")
RECIPES, LOGS, SUBSTANCES = "recipes", "logs", "substances"
NAMES = (RECIPES, LOGS, SUBSTANCES)
# What is completed where a word of this kind stands; nothing for the dyer's own words, such as TEXT or COLOUR.
NAMED_BY_METAVAR = {"RECIPE": RECIPES, "LOG": LOGS, "SUBSTANCE": SUBSTANCES}
PATH_BY_METAVAR = {"FILE": "file", "FOLDER": "directory"}

# Each asks the program that is being completed, in the workroom that stands in the line already.
_BASH = """\
_dyesession_names() {
  local index workroom=() IFS=$'\\n'
  for ((index = 1; index < COMP_CWORD - 1; index++)); do
    [[ ${COMP_WORDS[index]} == --workroom ]] && workroom=(--workroom "${COMP_WORDS[index + 1]}")
  done
  compgen -W "$("${COMP_WORDS[0]}" completion --names "$1" "${workroom[@]}" 2>/dev/null)" -- "$2"
  [[ $2 == */* ]] && compgen -f -- "$2"
}
"""
_BASH_ONE = '_dyesession_{names}() {{ _dyesession_names {names} "$1"; }}\n'
_ZSH = """\
_dyesession_names() {
  local -a workroom found
  local at=${words[(I)--workroom]}
  (( at > 0 && at + 1 < CURRENT )) && workroom=(--workroom "${words[at + 1]}")
  found=("${(@f)$("${_dyesession_program:-dyesession}" completion --names "$1" $workroom 2>/dev/null)}")
  [[ $PREFIX == */* ]] && _files || compadd -- $found
}
"""
_ZSH_ONE = "_dyesession_{names}() {{ _dyesession_names {names} }}\n"
_FISH = """\
function _dyesession_names
  set -l line (commandline -opc)
  set -l workroom
  set -l at (contains -i -- --workroom $line)
  and test (count $line) -gt $at
  and set workroom --workroom $line[(math $at + 1)]
  $line[1] completion --names $argv[1] $workroom 2>/dev/null
  string match -q -- '*/*' (commandline -ct)
  and __fish_complete_path (commandline -ct)
end
"""


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `completion`."""
    made = commands.add_parser(
        "completion",
        help="print the completion script of a shell",
        description="Print the completion script of a shell: commands, options, and the names in the workroom.",
        epilog="examples:\n"
        "  eval \"$(dyesession completion bash)\"                       # in ~/.bashrc\n"
        "  dyesession completion zsh > ~/.zfunc/_dyesession            # a folder of your fpath\n"
        "  dyesession completion fish > ~/.config/fish/completions/dyesession.fish",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=completion)
    made.add_argument("shell", choices=SHELLS, nargs="?", help="bash, zsh or fish")
    made.add_argument("--names", choices=NAMES, help="print the names that the scripts ask for instead")
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder whose names are listed"
    )


def completion(options: argparse.Namespace) -> int:
    """Print the script of a shell, or the names that such a script asks for."""
    if options.names:
        print("\n".join(names_of(options.names, getattr(options, "workroom", None))))
    elif options.shell:
        from dyesession.cli.parser import whole_parser

        print(script_for(options.shell, whole_parser()), end="")
    else:
        print(f"Which shell? Expected {', '.join(SHELLS)}; for example: dyesession completion bash", file=sys.stderr)
        return 2
    return 0


def names_of(what: str, workroom: str | None) -> Iterator[str]:
    """The recipes, logs or substances that can be named, each as it is typed."""
    if what == SUBSTANCES:
        from dyesession.substances import load

        return (one.names[0] for one in load().values())
    room = find_workroom(workroom)
    return (path.stem for path in (room.recipes() if what == RECIPES else room.all_logs()))


def script_for(shell: str, parser: argparse.ArgumentParser) -> str:
    """The completion script of one of `SHELLS`."""
    import shtab

    _mark(parser, shell)
    script = shtab.complete(parser, shell, preamble=_asking(shell))
    return script if script.endswith("\n") else f"{script}\n"


def _asking(shell: str) -> str:
    """The functions that ask the program for names, in a shell's own words."""
    if shell == "fish":
        return _FISH
    if shell == "bash":
        return _BASH + "".join(_BASH_ONE.format(names=one) for one in NAMES)
    program = shutil.which("dyesession") or str(Path(sys.argv[0]).absolute())
    return f"_dyesession_program='{program}'\n" + _ZSH + "".join(_ZSH_ONE.format(names=one) for one in NAMES)


def _mark(parser: argparse.ArgumentParser, shell: str) -> None:
    """Say of every word that stands for something how it is completed; shtab reads it off the parser."""
    import shtab

    paths = {"file": shtab.FILE, "directory": shtab.DIRECTORY}
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for inner in action.choices.values():
                _mark(inner, shell)
        elif action.metavar in NAMED_BY_METAVAR:
            names = NAMED_BY_METAVAR[str(action.metavar)]
            asked = f"_dyesession_{names}"
            vars(action)["complete"] = {"bash": asked, "zsh": asked, "fish": f"(_dyesession_names {names})"}
        elif action.metavar in PATH_BY_METAVAR:
            vars(action)["complete"] = paths[PATH_BY_METAVAR[str(action.metavar)]]
