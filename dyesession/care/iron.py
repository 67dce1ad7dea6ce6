"""Iron swallowed: milligrams per kilogram of body, and grams of the crystals that make them.

Bands: McGuigan 1996 (gut symptoms from 20 mg/kg, whole-body poisoning from 60); dogs 20-60 mild to
moderate, veteriankey.com/iron. Share of iron in the crystals: from molar masses, in `substances`.
"""

from dataclasses import dataclass

from dyesession.substances import find

_MG_PER_G = 1000.0

ILL_MG_PER_KG = 20.0
"""Symptoms of the gut from here: McGuigan 1996; the same figure for dogs, veteriankey.com/iron."""

POISONED_MG_PER_KG = 60.0
"""Poisoning of the whole body from here: McGuigan 1996; "serious" for dogs, veteriankey.com/iron."""

BODIES = (("child or dog", 10.0), ("child or dog", 20.0), ("grown person", 70.0))
"""Body masses in kg that a table of them is usually shown for: own choice."""

SOURCE = "McGuigan 1996; for dogs veteriankey.com/iron; iron share from molar masses"


@dataclass(frozen=True, slots=True)
class DoseLimit:
    """Doses of a mordant in per cent of the weight of fibre, and who says so."""

    planned_low: float
    planned_high: float
    warned_above: float
    source: str


DOSE_LIMITS = {
    "ferrous sulphate": DoseLimit(
        planned_low=1.0,
        planned_high=2.0,
        warned_above=4.0,
        source="trade sheet 2 to 4 %; Mairet 1916, iron hardens wool if overdone; 1 to 2 % is our own choice",
    ),
}


def iron_share() -> float:
    """Grams of iron in a gram of ferrous sulphate heptahydrate."""
    substance = find("ferrous sulphate")
    assert substance is not None and substance.iron_share is not None
    return substance.iron_share.value


def iron_mg_per_kg(heptahydrate_g: float, body_kg: float) -> float:
    """Milligrams of iron per kilogram of body in this many grams of the crystals. `body_kg` above 0."""
    return heptahydrate_g * iron_share() * _MG_PER_G / _checked(body_kg)


def heptahydrate_grams_for(mg_per_kg: float, body_kg: float) -> float:
    """Grams of the crystals that bring this many milligrams of iron per kilogram. `body_kg` above 0."""
    return mg_per_kg * _checked(body_kg) / (iron_share() * _MG_PER_G)


def iron_table(smallest: tuple[str, float] | None = None) -> tuple[tuple[str, float, float], ...]:
    """(who, grams of the crystals that make ill, grams that poison) for a few body masses, lightest first.

    `smallest` is ("child" or "pet", kg) of the household, set among the others.
    """
    bodies = [(f"{kg:g} kg {who}", kg) for who, kg in (*BODIES, *((smallest,) if smallest else ()))]
    return tuple(
        (who, heptahydrate_grams_for(ILL_MG_PER_KG, kg), heptahydrate_grams_for(POISONED_MG_PER_KG, kg))
        for who, kg in sorted(dict(bodies).items(), key=lambda body: body[1])
    )


def _checked(body_kg: float) -> float:
    if not body_kg > 0:
        raise ValueError(f"a body mass of {body_kg} kg: expected more than 0, for example 12")
    return body_kg
