"""Demo logs: an invented dyer's invented season, made by the program itself on a stepping clock.

Run `python -m dyesession.cli.demo --into logs`. Every log is marked `demo = true` and named demo-...; such days
stand on the shelf only where nothing but demo days lies. Same logs every time: names, times and readings are
fixed. Nobody is meant by it.
"""

import argparse
import sys
import tempfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from dyesession.cli.demo_day import DemoDay, StrengthReader, by_recipe, misreads, without_recipe
from dyesession.cli.workroom import shipped_recipes
from dyesession.daybook.repeating import repeat
from dyesession.kitchen import load_kitchen
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.plan.model import FibreLot
from dyesession.recipe import load_recipe, recipe_from_document
from dyesession.recipe.model import Recipe
from dyesession.session import events as e
from dyesession.session.brought import for_log
from dyesession.session.opening import read_day
from dyesession.shelf import bringing, shelf_of
from dyesession.storage import DISK, Storage

MADDER = "demo-2025-04-12-madder-brick-red"
SECOND = "demo-2025-04-14-paler-from-the-madder-bath"
THIRD = "demo-2025-04-15-last-of-the-madder"
REPEAT = "demo-2025-06-21-madder-brick-red-again"
WELD = "demo-2025-05-10-weld-yellow"
ONION = "demo-2025-05-24-onion-skins"
WALNUT = "demo-2025-06-07-walnut-brown"
OVERDYE = "demo-2025-07-05-green-from-weld"
COCHINEAL = "demo-2025-08-02-cochineal-crimson"
MORDANT = "demo-2025-09-06-mordanted-for-later"


GREEN: dict[str, object] = {
    "format": 1,
    "name": "Green from weld by a thin logwood",
    "source": "our own invention, for the demo",
    "fibre": ["wool"],
    "ingredient": [{"name": "logwood", "substance": "logwood", "role": "dyestuff", "dose": "4 %"}],
    "step": [
        {"name": "wet", "stage": "wet", "lane": "fibre", "vessel": "rinse bowl", "enter": ["fibre"],
         "heat": [{"hold": "30 min"}]},
        {"name": "extract", "stage": "extract", "lane": "liquor", "vessel": "extract pot", "add": ["logwood"],
         "water": "1.2 l", "into": "dye pot", "heat": [{"to": "85 degC", "over": "30 min"}, {"hold": "45 min"}]},
        {"name": "dye", "stage": "dye", "lane": "fibre", "after": ["wet", "extract"], "vessel": "dye pot",
         "enter": ["fibre"], "heat": [{"to": "80 degC", "over": "40 min"}, {"hold": "30 min"}]},
        {"name": "rinse", "stage": "rinse", "lane": "fibre", "after": ["dye"], "vessel": "rinse bowl",
         "enter": ["fibre"]},
    ],
}  # fmt: skip


@dataclass(frozen=True)
class Season:
    """Where the season is made, in which kitchen."""

    storage: Storage
    folder: Path
    into: Path
    kitchen: Kitchen

    def by(self, recipe: str, lots: tuple[FibreLot, ...], start: str) -> DemoDay:
        """A day by a shipped recipe."""
        return self.of(load_recipe(shipped_recipes() / f"{recipe}.toml"), lots, start)

    def of(self, recipe: Recipe, lots: tuple[FibreLot, ...], start: str) -> DemoDay:
        """A day by any recipe."""
        return by_recipe(self.storage, self.folder, recipe, lots, self.kitchen, datetime.fromisoformat(start))

    def free(self, name: str, lots: tuple[FibreLot, ...], start: str) -> DemoDay:
        """A day without a recipe."""
        return without_recipe(
            self.storage, self.folder, name, lots, self.kitchen, datetime.fromisoformat(start)
        )


def skein(name: str, mass_g: float, kind: str = "wool", mordanted: str = "") -> FibreLot:
    """A washed, air-dry lot."""
    return FibreLot(name, kind, mass_g, form="yarn", air_dry=True, mordanted=mordanted)


def demo_kitchen() -> Kitchen:
    """The example kitchen with a few jars in it."""
    from dyesession import kitchen

    example = load_kitchen(Path(kitchen.__file__).with_name("example.toml"))
    jars = (
        Jar("madder, spring packet", "madder root", price_per_100_g=5.40, mass_left_g=380.0),
        Jar("weld bundle", "weld", price_per_100_g=3.80, mass_left_g=450.0),
        Jar("alum tin", "potassium alum", price_per_100_g=1.20, mass_left_g=900.0),
        Jar("cochineal jar", "cochineal", price_per_100_g=24.00, mass_left_g=40.0),
    )
    return replace(example, jars=jars)


def _madder(season: Season) -> DemoDay:
    lots = (skein("large skein", 165.0), skein("small skein", 75.0))
    day = season.by("madder-brick-red-on-wool", lots, "2025-04-12T09:00:00+02:00")
    day.do(e.Read(lot="large skein", colour="#d9d2c3", wet=False, how="matched"))
    day.hooks.append(StrengthReader(keeps=0.41, takes=0.78))
    day.verdict = "warm brick red, even; a shade deeper than hoped"
    day.step_over("dye")
    day.do(e.Noted("for the mittens: the grey face of the fleece takes the edge off the red"))
    day.to_the_end()
    day.days_later(
        2.0,
        e.Cared("dry shade", "large skein", "brick red", "#8f3f2c"),
        e.Cared("dry shade", "small skein", "the same", "#8d3e2c"),
        e.Cared("rub test", "large skein", "a breath of pink on the white cloth"),
    )
    day.days_later(6.0, e.Cared("second wash", "", "runs clear"), e.Cared("window test", "", "hung, half covered"))
    day.throw_away(but="madder")
    return day


def _second(season: Season) -> DemoDay:
    lots = (skein("third skein", 60.0, mordanted="alum 12 %, with the madder day's skeins"),)
    day = season.free("Paler from the madder bath", lots, "2025-04-14T10:00:00+02:00")
    day.do(_poured(season, _label(season, MADDER), MADDER))
    day.say("dye in the big pot, to 75 over 50, hold 45")
    day.step_over("dye")
    day.do(e.Read("big pot", ph=6.6))
    day.do(e.Kept("big pot", "madder bath, used twice", 6.4, place="in the cellar"))
    day.say("rinse in the bucket 2 l")
    day.verdict = "soft coral"
    day.to_the_end()
    day.days_later(1.5, e.Cared("dry shade", "third skein", "coral", "#b8715a"))
    return day


def _third(season: Season) -> DemoDay:
    lots = (skein("silk hank", 40.0, "silk", "alum, cold, two days"),)
    day = season.free("Last of the madder", lots, "2025-04-15T14:00:00+02:00")
    day.do(_poured(season, "madder bath, used twice", SECOND, 4.0))
    day.say("dye in the big pot, to 65 over 40, hold 40")
    day.step_over("dye")
    day.do(e.Discarded("big pot"))
    day.say("rinse in the bucket 2 l")
    day.verdict = "blush; the bath has not much left in it"
    day.to_the_end()
    day.do(e.Corrected(1, "the jug was filled to 3.5 l", changes=({"key": "volume_l", "value": 3.5},)))
    return day


def _weld(season: Season) -> DemoDay:
    day = season.by("weld-yellow-on-wool", (skein("skein", 140.0),), "2025-05-10T09:30:00+02:00")
    day.hooks.append(misreads("alum", 61.8))
    day.until(lambda one: any(isinstance(two.event, e.Added) and two.event.mass_g == 61.8
                              for two in one.session.snapshot.entries))  # fmt: skip
    day.do(e.Noted("the tin stood on the scale with it"))
    wrong = next(one.n for one in day.session.snapshot.entries
                 if isinstance(one.event, e.Added) and one.event.mass_g == 61.8)  # fmt: skip
    day.do(e.Corrected(wrong, "the spoon was on the scale", changes=({"key": "mass_g", "value": 16.8},)))
    day.hooks.append(StrengthReader(keeps=0.28, takes=0.71))
    day.verdict = "clear lemon yellow"
    day.to_the_end()
    day.days_later(1.0, e.Cared("dry shade", "skein", "lemon yellow", "#d8c13f"), e.Cared("rub test", "", "clean"))
    day.throw_away()
    return day


def _onion(season: Season) -> DemoDay:
    day = season.by("onion-skins-in-one-pot", (skein("skein", 100.0),), "2025-05-24T13:00:00+02:00")
    day.until(lambda one: any(isinstance(two.event, e.Lit) for two in one.session.snapshot.entries))
    day.clock.advance(35 * 60)
    day.do(e.Noted("a storm: the power is off"))
    day.power_cut(3.5)
    day.do(e.Noted("the pot had gone lukewarm; lit again"))
    day.verdict = "old gold, a little uneven after the storm"
    day.to_the_end()
    day.days_later(1.0, e.Cared("dry shade", "skein", "old gold", "#b98b35"))
    day.throw_away()
    return day


def _walnut(season: Season) -> DemoDay:
    day = season.by("walnut-brown-without-mordant", (skein("fleece yarn", 120.0),), "2025-06-07T08:30:00+02:00")
    day.verdict = "deep brown"
    day.to_the_end()
    day.days_later(3.0, e.Cared("dry shade", "fleece yarn", "walnut brown", "#5a3d28"))
    day.throw_away()
    return day


def _again(season: Season) -> DemoDay:
    first = read_day(season.storage, season.into / f"{MADDER}.toml")
    lots = (skein("cuff skein", 90.0),)
    found = repeat(first, lots, season.kitchen)
    day = season.of(recipe_from_document(found.document, REPEAT), lots, "2025-06-21T09:00:00+02:00")
    day.hooks.append(StrengthReader(keeps=0.43, takes=0.80))
    day.verdict = "beside the mittens by daylight: hardly to be told apart"
    day.to_the_end()
    day.days_later(1.0, e.Cared("dry shade", "cuff skein", "brick red", "#8c3e2d"))
    day.throw_away()
    return day


def _overdye(season: Season) -> DemoDay:
    lots = (skein("weld skein", 70.0, mordanted=f"alum 12 %, dyed yellow on {WELD}"),)
    day = season.of(recipe_from_document(GREEN, "green from weld"), lots, "2025-07-05T10:00:00+02:00")
    day.do(e.Read(lot="weld skein", colour="#d8c13f", wet=False, how="matched"))
    day.step_over("dye")
    day.do(e.Noted("overdyed: yellow first, then a thin logwood"))
    day.verdict = "a mossy green, darker where the knots were"
    day.to_the_end()
    day.days_later(1.0, e.Cared("dry shade", "weld skein", "moss green", "#5f6a3a"))
    day.throw_away()
    return day


def _cochineal(season: Season) -> DemoDay:
    day = season.by("cochineal-crimson-on-wool", (skein("skein", 80.0),), "2025-08-02T09:00:00+02:00")
    day.hooks.append(StrengthReader(keeps=0.30, takes=0.88))
    day.verdict = "crimson, cooler than the madder"
    day.to_the_end()
    day.days_later(1.0, e.Cared("dry shade", "skein", "crimson", "#8e1f3e"))
    return day


def _mordant(season: Season) -> DemoDay:
    lots = (skein("autumn skein", 110.0), skein("odd ends", 35.0))
    day = season.free("Mordanted for later", lots, "2025-09-06T15:00:00+02:00")
    day.say("mordant in the big pot with alum 12 % and tartar 6 %, 4.4 l, to 85 over 45, hold 60")
    day.step_over("mordant")
    day.do(e.Read("big pot", ph=3.9))
    day.do(e.Kept("big pot", "alum bath of September", 4.1, place="on the back porch"))
    day.verdict = "to be dyed when the madder is dug"
    day.to_the_end()
    return day


def _label(season: Season, name: str) -> str:
    """The label under which a day's dye bath was put by."""
    day = read_day(season.storage, season.into / f"{name}.toml")
    kept = [one.event for one in day.entries if isinstance(one.event, e.Kept)]
    return next(one.label for one in kept if "dye" in one.vessel)


def _poured(season: Season, label: str, keeper: str, litres: float | None = None) -> e.Drawn:
    """A bath of the season poured into the big pot, with what the shelf says it brings along."""
    days = [read_day(season.storage, season.into / f"{name}.toml") for name in dict.fromkeys((MADDER, keeper))]
    last = max(one.opened.at.date() for one in days)
    bath = next(one for one in shelf_of(days, last).baths if (one.label, one.session) == (label, keeper))
    comes_along = for_log(bringing(bath, litres))
    return e.Drawn("big pot", label, keeper, litres, ("madder",), brought=comes_along, brought_l=litres or bath.left_l)


DAYS: dict[str, Callable[[Season], DemoDay]] = {
    MADDER: _madder, SECOND: _second, THIRD: _third, WELD: _weld, ONION: _onion, WALNUT: _walnut,
    REPEAT: _again, OVERDYE: _overdye, COCHINEAL: _cochineal, MORDANT: _mordant,
}  # fmt: skip


def make_season(into: Path, storage: Storage = DISK, names: Sequence[str] = ()) -> list[Path]:
    """Make every demo log in a folder, or those named. Raises NameTaken where one is there already."""
    made = []
    with tempfile.TemporaryDirectory(prefix="dyesession-") as folder:
        season = Season(storage, Path(folder), into, demo_kitchen())
        for name, dyed in DAYS.items():
            if names and name not in names:
                continue
            made.append(dyed(season).marked(name, into))
    return made


def main(arguments: list[str] | None = None) -> int:
    """Make the demo logs."""
    from dyesession.errors import UserError

    parser = argparse.ArgumentParser(prog="python -m dyesession.cli.demo", description="Make the demo logs.")
    parser.add_argument("--into", metavar="FOLDER", default="logs", help="where the logs go")
    options = parser.parse_args(arguments)
    try:
        for path in make_season(Path(options.into)):
            print(path)
    except UserError as trouble:
        print(f"{trouble}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
