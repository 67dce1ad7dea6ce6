"""From what was typed to a plan: recipe, lots, kitchen, and the one question that cannot be left open."""

import argparse
import sys
from dataclasses import dataclass, replace

from dyesession.cli.learn import learnt_for
from dyesession.cli.stock import stocked
from dyesession.cli.workroom import Workroom, find_workroom
from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.own_numbers import own_kitchen
from dyesession.kitchen.model import Kitchen
from dyesession.plan import PlanError, lots_from_text, work_out
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe import find_recipe, load_recipe
from dyesession.recipe.model import Recipe


@dataclass(frozen=True)
class Planned:
    """What a planning command was about, its plan, and what days taught of its dyestuffs."""

    workroom: Workroom
    recipe: Recipe
    lots: tuple[FibreLot, ...]
    kitchen: Kitchen
    plan: Plan
    learned: Learnt


def planned(options: argparse.Namespace, *, ask: bool) -> Planned:
    """Work out the plan; with `ask`, a person at a terminal is asked whether the fibre is washed and air-dry."""
    workroom = find_workroom(getattr(options, "workroom", None))
    recipe = load_recipe(find_recipe(options.recipe, workroom.recipe_folders))
    kitchen = stocked(workroom, workroom.kitchen(options.kitchen))
    lots = lots_asked(options, recipe.fibre[0] if recipe.fibre else "wool", ask=ask)
    learned = learnt_for(workroom, [one.substance for one in recipe.ingredients if one.role == "dyestuff"])
    return Planned(
        workroom, recipe, lots, kitchen, work_out(recipe, lots, own_kitchen(kitchen, learned)), learned
    )


def lots_asked(options: argparse.Namespace, usual: str, *, ask: bool) -> tuple[FibreLot, ...]:
    """The lots typed, of the `usual` fibre where none is named; asked about as in `planned`."""
    lots = lots_from_text(options.fibre, usual)
    if options.washed:
        lots = tuple(replace(one, air_dry=True) if one.air_dry is None else one for one in lots)
    if ask and any(one.air_dry is None for one in lots) and sys.stdin.isatty() and sys.stdout.isatty():
        lots = tuple(_asked(one) for one in lots)
    return lots


def _asked(lot: FibreLot) -> FibreLot:
    if lot.air_dry is not None:
        return lot
    while True:
        answer = input(f"{lot.name}, {lot.mass_g:g} g: is it washed and air-dry? (yes, no) ").strip().lower()
        if answer in ("y", "yes"):
            return replace(lot, air_dry=True)
        if answer in ("n", "no"):
            raise PlanError(
                f"{lot.name} is not washed and air-dry, so {lot.mass_g:g} g is no base for a dose: wash it, weigh "
                'it after a day in the room, or give both weights, for example "212 g damp, 148 g dry wool".'
            )
        print('Answer yes or no, for example "yes".')
