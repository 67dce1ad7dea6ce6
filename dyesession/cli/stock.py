"""`dyesession stock`: what is left in the jars, what the next colours cost, what to buy. Calls; computes nothing."""

import argparse
import json
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from dyesession.cli.workroom import Workroom
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.model import Plan
    from dyesession.plan.stock import JarNow

Commands = argparse._SubParsersAction  # argparse gives this type no public name

EXAMPLE = 'dyesession stock madder-brick-red-on-wool --fibre "240 g wool" weld-yellow-on-wool --fibre "100 g wool"'


class StockAsked(UserError):
    """A stock command that cannot be told apart."""


@dataclass
class _Wanted:
    """One plan as it was asked for."""

    recipe: str
    fibre: list[str] = field(default_factory=list)


class _NextPlan(argparse.Action):
    """Each recipe begins a plan; each --fibre behind it is a lot of that plan."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: "str | Sequence[object] | None",
        option: str | None = None,
    ) -> None:
        plans = list(getattr(namespace, "plans", None) or ())
        if option is not None:
            if not plans:
                parser.error(f"--fibre stands behind its recipe, for example: {EXAMPLE}")
            lot, *recipes = values if isinstance(values, list) else [str(values)]
            plans[-1].fibre.append(str(lot))
        else:
            recipes = list(values) if isinstance(values, list) else []
        namespace.plans = [*plans, *(_Wanted(str(one)) for one in recipes)]


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `stock`."""
    made = commands.add_parser(
        "stock",
        help="show what is left in the jars, what the next colours cost and what to buy for them",
        description="Show what is left in the kitchen's jars: what was written down, less what your days have used"
        " since. With recipes, each with its fibre: what they take one after the other, what each costs for 100 g of"
        " fibre, and what to buy for all of them. Rehearsals and demo days are left out.",
        usage="dyesession stock [-h] [--workroom FOLDER] [--kitchen FILE] [--json] [RECIPE --fibre TEXT ...]...",
        epilog=f"examples:\n  dyesession stock\n  {EXAMPLE}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=stock)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("--kitchen", metavar="FILE", help="a kitchen.toml (else the workroom's own)")
    made.add_argument("--json", action="store_true", help="print one JSON document")
    made.add_argument("recipe", metavar="RECIPE", nargs="*", action=_NextPlan, help="a recipe's name, or its path")
    made.add_argument(
        "--fibre", metavar="TEXT", nargs="+", action=_NextPlan,
        help="a lot of fibre of the recipe before it; then the next recipe",
    )  # fmt: skip


def stock(options: argparse.Namespace) -> int:
    """Print the stock, and what the plans take of it."""
    from dyesession.cli.workroom import find_workroom
    from dyesession.daybook.stock import ahead
    from dyesession.daybook.stock import stocked as with_jars
    from dyesession.plan.stock_text import stock_as_json, stock_lines

    workroom = find_workroom(getattr(options, "workroom", None))
    kitchen = workroom.kitchen(options.kitchen)
    jars = jars_of(workroom, kitchen)
    there = with_jars(kitchen, jars)
    found = ahead(jars, [_plan(workroom, there, one) for one in getattr(options, "plans", None) or ()])
    told = (found.jars, found.plans, found.stock, found.costs)
    if options.json:
        print(json.dumps(stock_as_json(*told), ensure_ascii=False, indent=2))
    else:
        print("\n".join(stock_lines(*told)))
    return 0


def stocked(workroom: "Workroom", kitchen: "Kitchen") -> "Kitchen":
    """The kitchen with its jars as they stand now."""
    from dyesession.daybook.stock import stocked as with_jars

    return with_jars(kitchen, jars_of(workroom, kitchen))


def jars_of(workroom: "Workroom", kitchen: "Kitchen") -> "tuple[JarNow, ...]":
    """The kitchen's jars less what the dyer's own days have used since each was weighed."""
    from dyesession.cli.daybook import book_of
    from dyesession.daybook import stock

    return stock.jars_of(kitchen, book_of(workroom).days if stock.wants_days(kitchen) else ())


def _plan(workroom: "Workroom", kitchen: "Kitchen", wanted: _Wanted) -> "Plan":
    from dyesession.daybook.stock import plan_ahead
    from dyesession.recipe import find_recipe, load_recipe

    recipe = load_recipe(find_recipe(wanted.recipe, workroom.recipe_folders))
    if not wanted.fibre:
        raise StockAsked(f"{wanted.recipe} has no fibre behind it; expected, for example: {EXAMPLE}")
    return plan_ahead(recipe, wanted.fibre, kitchen)
