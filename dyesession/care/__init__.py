"""One home for safety: reminders, questions, refusals, labels, first aid. Knows no recipe, session or screen.

Figures stand beside their sources in `scalds`, `iron`, `foam`, `apart`, `keeping`, and in `substances`.
"""

from dyesession.care.apart import KEEP_APART, NEVER_MIX, Apart
from dyesession.care.asks import (
    ASKS_PER_DAY,
    ASKS_PER_DAY_SOURCE,
    READABLE_C,
    WORST_RANK,
    AskNeed,
    ask_before,
)
from dyesession.care.first_aid import first_aid_after, first_aid_for
from dyesession.care.foam import foam_litres
from dyesession.care.iron import (
    DOSE_LIMITS,
    ILL_MG_PER_KG,
    POISONED_MG_PER_KG,
    DoseLimit,
    heptahydrate_grams_for,
    iron_mg_per_kg,
    iron_table,
)
from dyesession.care.keeping import Keeping, keeping
from dyesession.care.label_print import label_lines, label_svg
from dyesession.care.labels import Label, Stored, label_as_json, label_of
from dyesession.care.refusals import Choice, Refusal, heat_refusal, needs_choice, refusal
from dyesession.care.reminder import GRAVE, WORST, Reminder
from dyesession.care.reminders import TRIGGERS, reminders, reminders_over
from dyesession.care.scalds import scald_seconds
from dyesession.care.sheet import by_verdict, keep_apart_as_json, keep_apart_rows, sheet_as_json, sheet_of
from dyesession.care.situation import ACTIONS, BURNERS, Content, Household, OtherVessel, Situation
from dyesession.care.wording import (
    DISCLAIMER_LONG,
    DISCLAIMER_SHORT,
    FIRST_AID_KEYS,
    NO_NUMBER,
    first_aid_line,
)

__all__ = [
    "ACTIONS",
    "ASKS_PER_DAY",
    "ASKS_PER_DAY_SOURCE",
    "BURNERS",
    "DISCLAIMER_LONG",
    "DISCLAIMER_SHORT",
    "DOSE_LIMITS",
    "FIRST_AID_KEYS",
    "GRAVE",
    "ILL_MG_PER_KG",
    "KEEP_APART",
    "NEVER_MIX",
    "NO_NUMBER",
    "POISONED_MG_PER_KG",
    "READABLE_C",
    "TRIGGERS",
    "WORST",
    "WORST_RANK",
    "Apart",
    "AskNeed",
    "Choice",
    "Content",
    "DoseLimit",
    "Household",
    "Keeping",
    "Label",
    "OtherVessel",
    "Refusal",
    "Reminder",
    "Situation",
    "Stored",
    "ask_before",
    "by_verdict",
    "first_aid_after",
    "first_aid_for",
    "first_aid_line",
    "foam_litres",
    "heat_refusal",
    "heptahydrate_grams_for",
    "iron_mg_per_kg",
    "iron_table",
    "keep_apart_as_json",
    "keep_apart_rows",
    "keeping",
    "label_as_json",
    "label_lines",
    "label_of",
    "label_svg",
    "needs_choice",
    "refusal",
    "reminders",
    "reminders_over",
    "scald_seconds",
    "sheet_as_json",
    "sheet_of",
]
