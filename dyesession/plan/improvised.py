"""The plan of a day without a recipe: lots and pots, and no step yet. Stages come in as the dyer names them.

Knows no files, screens or events.
"""

from collections.abc import Sequence

from dyesession.kitchen.model import Kitchen
from dyesession.plan import warnings as warn
from dyesession.plan.boil import boil_in
from dyesession.plan.cautions import heated_on, stove_refused
from dyesession.plan.lots import checked_mass_g, lot_questions
from dyesession.plan.model import FibreLot, Plan, PlannedVessel
from dyesession.plan.trouble import Refused
from dyesession.plan.words import letter_of

NAME = "An improvised day"


def improvised(lots: Sequence[FibreLot], kitchen: Kitchen, name: str = NAME) -> Plan:
    """A day on these lots with the kitchen's pots at hand.

    Raises `PlanError` where there is no sound weight, `Refused` for a stove that is never planned.
    """
    if refused := stove_refused(kitchen):
        raise Refused(refused)
    burner, indoors = heated_on(kitchen)
    fibre_g = checked_mass_g(lots)
    boil = boil_in(kitchen)
    return Plan(
        recipe=name,
        lots=tuple(lots),
        fibre_mass_g=fibre_g,
        boiling_c=boil.boiling_c,
        boiling_margin_c=boil.margin_c,
        by_eye=kitchen.thermometer is False,
        cooling=kitchen.own.cooling,
        doses=(),
        baths=(),
        vessels=tuple(
            PlannedVessel(pot.name, letter_of(i), pot.name, pot.volume_l, pot.material, pot.lid)
            for i, pot in enumerate(kitchen.pots)
        ),
        steps=(),
        timetable=(),
        warnings=tuple(warn.no_scales(kitchen.scales)),
        questions=tuple(lot_questions(lots)),
        burner=burner,
        indoors=indoors,
    )
