"""One home for safety: reminders, questions, refusals, first aid. Must not know recipes, sessions or screens.

Figures stand beside their sources in `scalds`, `iron`, `foam`, `mixing`, and in `dyesession.substances`.
"""

from dyesession.care.asks import ASKS_PER_DAY, ASKS_PER_DAY_SOURCE, READABLE_C, AskNeed, ask_before
from dyesession.care.foam import foam_litres
from dyesession.care.iron import (
    DOSE_LIMITS,
    ILL_MG_PER_KG,
    POISONED_MG_PER_KG,
    DoseLimit,
    heptahydrate_grams_for,
    iron_mg_per_kg,
)
from dyesession.care.refusals import Choice, Refusal, heat_refusal, needs_choice, refusal
from dyesession.care.reminder import Reminder
from dyesession.care.reminders import TRIGGERS, reminders
from dyesession.care.scalds import scald_seconds
from dyesession.care.situation import ACTIONS, BURNERS, Content, Household, OtherVessel, Situation
from dyesession.care.wording import DISCLAIMER_LONG, DISCLAIMER_SHORT, FIRST_AID_KEYS, first_aid_line

__all__ = [
    "ACTIONS",
    "ASKS_PER_DAY",
    "ASKS_PER_DAY_SOURCE",
    "BURNERS",
    "DISCLAIMER_LONG",
    "DISCLAIMER_SHORT",
    "DOSE_LIMITS",
    "FIRST_AID_KEYS",
    "ILL_MG_PER_KG",
    "POISONED_MG_PER_KG",
    "READABLE_C",
    "TRIGGERS",
    "AskNeed",
    "Choice",
    "Content",
    "DoseLimit",
    "Household",
    "OtherVessel",
    "Refusal",
    "Reminder",
    "Situation",
    "ask_before",
    "first_aid_line",
    "foam_litres",
    "heat_refusal",
    "heptahydrate_grams_for",
    "iron_mg_per_kg",
    "needs_choice",
    "refusal",
    "reminders",
    "scald_seconds",
]
