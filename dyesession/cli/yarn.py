"""`dyesession yarn`: is the yarn at hand enough for a pattern, and what that makes of the doses.

Calls `plan`; computes nothing itself.
"""

import argparse
import json
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.model import Plan
    from dyesession.plan.yarn_need import YarnNeed

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 80
USUAL_STEP_G = 1.0  # a kitchen scale's display step where the kitchen lists none; common practice, no source


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `yarn`."""
    made = commands.add_parser(
        "yarn",
        help="say whether the yarn at hand is enough for a pattern, and what that makes of the doses",
        description="Say whether the yarn at hand is enough for a pattern, and what that makes of the doses.",
        epilog='examples:\n  dyesession yarn --pattern "400 m" --have "320 g, 210 m/100 g"\n'
        '  dyesession yarn --pattern "5 oz of double knitting" --have "180 g aran"'
        " --recipe weld-yellow-on-wool\n"
        '  dyesession yarn --pieces "2 of 50 x 60 cm" --swatch "15 x 15 cm, 9 g" --have "320 g"',
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=yarn)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your kitchen.toml"
    )
    made.add_argument(
        "--pattern",
        metavar="TEXT",
        help='what the pattern asks for: "400 m", "450 yd", "250 g", "5 oz of double knitting"',
    )
    made.add_argument(
        "--pieces",
        metavar="TEXT",
        help='the pieces instead, with a swatch: "2 of 50 x 60 cm, 2 of 40 x 45 cm"',
    )
    made.add_argument(
        "--have",
        metavar="TEXT",
        required=True,
        help='the yarn at hand, washed and air-dry: "320 g, 210 m/100 g", "12 oz worsted 2/8", "320 g aran"',
    )
    made.add_argument("--swatch", metavar="TEXT", help='a knitted swatch of it, weighed: "15 x 15 cm, 9 g"')
    made.add_argument("--recipe", metavar="RECIPE", help="say what that makes of this recipe's doses")
    made.add_argument("--kitchen", metavar="FILE", help="a kitchen.toml (else the workroom's own)")
    made.add_argument("--json", action="store_true", help="print one JSON document")


def yarn(options: argparse.Namespace) -> int:
    """Print whether the yarn is enough, and the doses for it."""
    from dyesession.cli.workroom import find_workroom
    from dyesession.plan import FibreLot, work_out
    from dyesession.recipe import find_recipe, load_recipe

    workroom = find_workroom(getattr(options, "workroom", None))
    kitchen = workroom.kitchen(options.kitchen)
    need = _need(options, kitchen)
    plan = None
    if options.recipe:
        recipe = load_recipe(find_recipe(options.recipe, workroom.recipe_folders))
        kind = recipe.fibre[0] if recipe.fibre else "wool"
        plan = work_out(recipe, [FibreLot("yarn", kind, need.dye_g, form="yarn", air_dry=True)], kitchen)
    if options.json:
        print(json.dumps(_as_json(need, plan), ensure_ascii=False, indent=2))
    else:
        from dyesession.plan.yarn_said import yarn_lines

        print("\n".join(yarn_lines(need, plan, WIDTH)))
    return 0


def _need(options: argparse.Namespace, kitchen: "Kitchen") -> "YarnNeed":
    from dyesession.plan import PlanError
    from dyesession.plan.yarn_need import yarn_need
    from dyesession.plan.yarn_text import (
        pattern_from_text,
        pieces_from_text,
        swatch_from_text,
        yarn_from_text,
    )

    if bool(options.pattern) == bool(options.pieces):
        raise PlanError(
            "Say what the pattern asks for, or give its pieces, one of the two; for example"
            ' --pattern "400 m", or --pieces "2 of 50 x 60 cm" with --swatch "15 x 15 cm, 9 g".'
        )
    step_g = min((one.resolution_g for one in kitchen.scales), default=USUAL_STEP_G)
    swatch = swatch_from_text(options.swatch, step_g) if options.swatch else None
    pattern = pattern_from_text(options.pattern) if options.pattern else pieces_from_text(options.pieces)
    return yarn_need(pattern, yarn_from_text(options.have, swatch))


def _as_json(need: "YarnNeed", plan: "Plan | None") -> dict[str, Any]:
    found = asdict(need)
    if plan is not None:
        found["recipe"] = plan.recipe
        found["doses"] = [
            {"ingredient": one.ingredient, "substance": one.substance, "mass_g": asdict(one.mass_g)}
            for one in plan.doses
        ]
    return found
