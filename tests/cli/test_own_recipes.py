"""Which recipes are the dyer's own: not those that came with the program, even where they lie in the same folder."""

from pathlib import Path

from dyesession.cli.dyers_folder import DyersFolder
from dyesession.cli.workroom import Workroom, shipped_recipes
from dyesession.storage import DISK


def test_a_recipe_that_came_with_the_program_is_nobodys_own_until_a_word_of_it_is_changed(tmp_path: Path) -> None:
    shipped = shipped_recipes() / "weld-yellow-on-wool.toml"
    copied = tmp_path / "recipes" / shipped.name
    copied.parent.mkdir()
    copied.write_bytes(shipped.read_bytes())
    own = tmp_path / "recipes" / "my-weld.toml"
    own.write_bytes(shipped.read_bytes())
    room = DyersFolder(Workroom(tmp_path), DISK)
    assert (room.is_own(shipped), room.is_own(copied), room.is_own(own)) == (False, False, True)
    copied.write_bytes(shipped.read_bytes() + b"# paler\n")
    assert room.is_own(copied)
