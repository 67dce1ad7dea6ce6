"""From a file to a recipe: read, check, find by name.

Knows no kitchen and no sessions. Substances the program refuses may stand in a recipe, because an old one may
be read; planning refuses them.
"""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from dyesession.errors import UserError
from dyesession.recipe.checks import Parts, check, nearest
from dyesession.recipe.model import Ingredient, Recipe, Step
from dyesession.recipe.reading import RECIPE_KEYS, read_ingredient, read_step
from dyesession.recipe.trouble import Faults, RecipeError
from dyesession.storage import DISK, Storage
from dyesession.tomlfile import Document, Table, read_toml

FORMAT = 1
USUAL_LIQUOR_RATIO = 30.0  # litres to the kilogram: common practice, no source
MOST_PARTS = 60  # ingredients, or steps, in one day: common practice, no source
LEAST_RATIO, MOST_RATIO = 1.0, 500.0


def load_recipe(path: Path, storage: Storage = DISK) -> Recipe:
    """Read a recipe. Raises `RecipeError` with the first fault, or the file's own error."""
    return _sound(read_toml(Path(path), storage), str(path))


def recipe_from_document(values: Mapping[str, Any], where: str) -> Recipe:
    """Read a recipe from tables already parsed, such as the copy in a log; `where` names them in messages."""
    return _sound(Document(where, values), "")


def check_recipe(path: Path, storage: Storage = DISK) -> list[str]:
    """List every fault of a recipe file, one sentence each; empty when it is sound."""
    try:
        document = read_toml(Path(path), storage)
    except UserError as error:
        return [str(error)]
    faults = Faults()
    _read(document.top, faults)
    return faults.sentences


def find_recipe(name_or_path: str, folders: Iterable[Path], storage: Storage = DISK) -> Path:
    """Find a recipe by path, by its file's name, by its own name, or by a beginning only one of them has.

    The first folder wins. Raises `RecipeError` naming the nearest recipes there are.
    """
    given = Path(name_or_path)
    if given.is_file():
        return given
    wanted = _slug(given.name.removesuffix(".toml"))
    files = [file for folder in folders for file in _recipes_in(folder)]
    for slugs in (
        {file: _slug(file.stem) for file in files},
        names := {file: _slug(_name_of(file, storage) or file.stem) for file in files},
    ):
        exact = [file for file, slug in slugs.items() if wanted and slug == wanted]
        if exact:
            return exact[0]
    begun = [file for file, slug in names.items() if wanted and slug.startswith(wanted)]
    if len({names[file] for file in begun}) == 1:
        return begun[0]
    raise RecipeError(
        f'There is no recipe called "{name_or_path}"; expected a file or {_near(wanted, names.values())},'
        " for example dyesession work-out recipes/madder-brick-red-on-wool.toml."
    )


def _near(wanted: str, slugs: Iterable[str]) -> str:
    """Name the recipes that share the words asked for, else the nearest, else all of them."""
    known = list(dict.fromkeys(slugs))
    sharing = [slug for slug in known if wanted and set(wanted.split("-")) <= set(slug.split("-"))]
    if sharing:
        return "perhaps " + " or ".join(f'"{slug}"' for slug in sharing)
    return nearest(wanted, known)


def _recipes_in(folder: Path) -> list[Path]:
    try:
        return sorted(file for file in folder.glob("*.toml") if file.is_file())
    except OSError:
        return []


def _name_of(file: Path, storage: Storage) -> str:
    """Read the name a recipe gives itself, or nothing when the file cannot be read."""
    try:
        name = read_toml(file, storage).values.get("name")
    except UserError:
        return ""
    return name if isinstance(name, str) else ""


def _slug(name: str) -> str:
    return "-".join("".join(c if c.isalnum() else " " for c in name.casefold()).split())


def _sound(document: Document, path: str) -> Recipe:
    faults = Faults()
    recipe = _read(document.top, faults)
    if faults.sentences:
        raise RecipeError(faults.sentences[0])
    return Recipe(
        name=recipe.name,
        summary=recipe.summary,
        source=recipe.source,
        fibre=recipe.fibre,
        liquor_ratio=recipe.liquor_ratio,
        ingredients=recipe.ingredients,
        steps=recipe.steps,
        document=dict(document.values),
        path=path,
    )


def _read(top: Table, faults: Faults) -> Recipe:
    """Read all there is to read, noting faults; the result is only sound when there are none."""
    if not faults.take(lambda: _check_format(top), False):
        return Recipe("", "", "", (), USUAL_LIQUOR_RATIO, (), ())
    faults.keys(top, RECIPE_KEYS)
    parts = _parts(top, faults)
    fibre = faults.take(lambda: top.texts("fibre", example='fibre = ["wool"]'), ("wool",))
    if not fibre:
        faults.at(
            top,
            "fibre",
            'the recipe names no fibre it is meant for; expected, for example, fibre = ["wool"]',
        )
    check(parts, faults)
    return Recipe(
        name=faults.take(lambda: top.text("name", example='name = "Madder brick red on wool"'), ""),
        summary=faults.take(lambda: top.text("summary", default=""), ""),
        source=faults.take(lambda: top.text("source", default=""), ""),
        fibre=fibre,
        liquor_ratio=faults.take(lambda: _liquor_ratio(top), USUAL_LIQUOR_RATIO),
        ingredients=tuple(one for one, _ in parts.ingredients),
        steps=tuple(one for one, _ in parts.steps),
    )


def _liquor_ratio(top: Table) -> float:
    return top.number(
        "liquor_ratio", LEAST_RATIO, MOST_RATIO, example="liquor_ratio = 30", default=USUAL_LIQUOR_RATIO
    )


def _check_format(top: Table) -> bool:
    number = top.values.get("format")
    if isinstance(number, int) and not isinstance(number, bool) and number > FORMAT:
        raise top.problem(
            "format",
            f"format {number} is newer than this program reads; expected format = {FORMAT}, or a newer"
            " dyesession",
        )
    return top.whole("format", FORMAT, FORMAT, example=f"format = {FORMAT}") == FORMAT


def _parts(top: Table, faults: Faults) -> Parts:
    ingredients: list[tuple[Ingredient, Table]] = []
    for table in faults.take(lambda: top.tables("ingredient"), ()):
        one = read_ingredient(table, faults)
        if one is not None:
            ingredients.append((one, table))
    steps: list[tuple[Step, Table]] = []
    for table in faults.take(lambda: top.tables("step"), ()):
        step = read_step(table, faults)
        if step is not None:
            steps.append((step, table))
    for key, found in (("ingredient", ingredients), ("step", steps)):
        if len(found) > MOST_PARTS:
            wrong = f"the recipe has {len(found)} {key}s; expected no more than {MOST_PARTS} in one day"
            faults.at(top, key, f"{wrong}, for example a second recipe for the rest")
    if "step" not in top.values or not top.values["step"]:
        faults.at(
            top,
            None,
            'the recipe has no step; expected at least one [[step]], for example with stage = "dye"',
        )
    return Parts(ingredients, steps)
