"""From a plan to what Working out shows. Pure: chooses and words; every sum is made by the plan's own rooms."""

from datetime import datetime, timedelta

from dyesession.dyeing.scales import COVERAGE
from dyesession.kitchen.answers import known
from dyesession.kitchen.model import Kitchen
from dyesession.plan.explained import Because, Explained, Worked
from dyesession.plan.explained_day import explain_bath, explain_boil, explain_row
from dyesession.plan.explained_doses import explain_dose, explain_price
from dyesession.plan.model import FibreLot, Plan, PlannedBath, PlannedDose, PlannedReminder, TimetableRow
from dyesession.plan.sheet import to_mind
from dyesession.plan.shopping import Shopping, ToBuy, in_words, price_text
from dyesession.plan.timetable import BEGIN_MIN, END_MIN, end_min
from dyesession.plan.words import litres, plus_minus
from dyesession.recipe.model import Recipe
from dyesession.session.words import day_text
from dyesession.ui import working_view as w
from dyesession.units import show_duration, show_mass, show_percent, show_range

_WEIGHT = (
    "Every share is of the fibre washed and a day in the room. Water on it, or grease in it, would be dosed too: raw wool "
    "often loses a fifth in washing."
)
_WEIGHT_SOURCE = (
    "Mairet, A Book on Vegetable Dyes, 1916, ch. I, for the fifth; the day: common practice, no source"
)
_DEPTH = "The low end, the middle or the high end of what the recipe gives of its dyestuff; the mordant stays as it is."
GRAVE = 3  # from this severity on a reminder is set in strong letters
LOT_FREE = "lot:"
YES, NO = "washed, and a day in the room", "damp, or not washed yet"


def lot_line(lot: FibreLot, asks_mordant: bool) -> w.LotLine:
    """A lot, and the question it leaves open."""
    key = f"{LOT_FREE}{lot.name}"
    asks, answers = "", []
    if lot.air_dry is None:
        asks = f"Is the {lot.name}, {show_mass(lot.mass_g)}, washed and air-dry?"
        answers = [w.Answer(f"dry:{lot.name}", f"yes: {YES}"), w.Answer(f"damp:{lot.name}", f"no: {NO}")]
    elif asks_mordant:
        ready = f"mordanted already: {lot.mordanted}" if lot.mordanted else "mordanted already? not yet"
        answers = [w.Answer(f"mordanted:{lot.name}", ready)]
    return w.LotLine(key, lot.name, _lot_words(lot), asks, tuple(answers))


def _lot_words(lot: FibreLot) -> str:
    pieces = [f"{show_mass(lot.mass_g)} {lot.kind}"]
    pieces += [lot.form] if lot.form and lot.form != lot.kind else []
    pieces += [f"from {show_mass(lot.damp_mass_g)} damp"] if lot.damp_mass_g is not None else []
    pieces += ["washed and air-dry"] if lot.air_dry else []
    return ", ".join(pieces)


def kitchen_words(kitchen: Kitchen) -> str:
    """What a kitchen has, counted."""
    counted = [
        _count(len(kitchen.scales), "scale"), _count(len(kitchen.pots), "pot"), _count(len(kitchen.burners), "ring"),
        _count(len(kitchen.jars), "jar"),
    ]  # fmt: skip
    return ", ".join(one for one in counted if one) or "nothing known of it yet"


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'s' if number != 1 else ''}" if number else ""


def dose_line(dose: PlannedDose) -> w.DoseLine:
    """A dose as it is to be weighed; how, where a scale alone does not do it."""
    share = ""
    if dose.percent_wof is not None:
        band = dose.percent_wof
        share = f"{show_percent(band.aim)} WOF"
        share += f", {show_range(band.low, band.high, show_percent)}" if band.low != band.high else ""
    plain = dose.weigh.how in ("scale", "not weighed", "no scale")
    half = (
        plus_minus(COVERAGE * dose.weigh.sd_g)
        if dose.weigh.sd_g
        else "± ?"
        if dose.weigh.how == "no scale"
        else ""
    )
    return w.DoseLine(
        f"dose:{dose.ingredient}", dose.ingredient, show_mass(dose.mass_g.aim), half.removesuffix(" g"), share,
        "" if plain else dose.weigh.say,
    )  # fmt: skip


def bath_line(bath: PlannedBath) -> w.BathLine:
    """A bath and the pot it goes into."""
    where = bath.vessel if not bath.pot or bath.pot == bath.vessel else f"{bath.vessel}: {bath.pot}"
    return w.BathLine(
        f"bath:{bath.step}", bath.step, litres(bath.water_l), f"1:{bath.ratio_l_per_kg:.0f}", where,
        bath.fits is False, bath.say,
    )  # fmt: skip


def day_bars(plan: Plan, now: datetime) -> w.DayBars:
    """The day drawn as if it were begun now."""
    whole = end_min(plan.timetable)
    hands = sum(BEGIN_MIN[one.stage] + END_MIN.get(one.stage, 0.0) for one in plan.steps)
    over = day_text(now + timedelta(minutes=whole), now)
    says = (
        f"{show_duration(whole)}, of which {show_duration(hands)} want your hands; begun now, done by {over}."
    )
    return w.DayBars(says, tuple(_bar(one, now) for one in plan.timetable))


def _bar(row: TimetableRow, now: datetime) -> w.StepBar:
    start, end = (now + timedelta(minutes=moment) for moment in (row.start_min, row.end_min))
    return w.StepBar(
        f"step:{row.step}", row.step, row.lane, row.start_min, row.end_min, row.critical, row.lit_min, row.off_min,
        f"{start:%H:%M} to {end:%H:%M}",
    )  # fmt: skip


def mind_lines(plan: Plan) -> tuple[w.SaidLine, ...]:
    """What to mind, and where water boils."""
    boil = f"Water boils here at about {plan.boiling_c:.0f} ± {plan.boiling_margin_c:.0f} °C."
    warnings = [w.SaidLine(f"mind:{index}", one) for index, one in enumerate(to_mind(plan))]
    return (*warnings, w.SaidLine("boil", boil))


def care_lines(plan: Plan, poison_centre: str) -> tuple[w.SaidLine, ...]:
    """The reminders of the day, the gravest first, each once; the poison centre's number before them."""
    once = {one.text: one for one in reversed(plan.reminders)}
    ranked = sorted(once.values(), key=lambda one: -one.severity)
    lines = [w.SaidLine(f"care:{one.text}", one.text, one.step, one.severity >= GRAVE) for one in ranked]
    number = [w.SaidLine("poison", f"Poison centre: {poison_centre}", grave=True)] if poison_centre else []
    return (*number, *lines)


def jar_lines(shopping: Shopping) -> tuple[w.SaidLine, ...]:
    """What the day takes out of the jars, what to buy, and for how much."""
    lines = [w.SaidLine(f"jar:{one.ingredient}", in_words(one), one.ingredient) for one in shopping.items]
    if shopping.day_price is not None:
        without = f" ({' and '.join(shopping.unpriced)}: no price known)" if shopping.unpriced else ""
        buy = f"; to buy: {price_text(shopping.buy_price)}" if shopping.buy_price else ""
        lines.append(w.SaidLine("price", f"The day uses up {price_text(shopping.day_price)}{buy}.{without}"))
    return tuple(lines)


def why_chosen(recipe: Recipe, kitchen: Kitchen, key: str) -> Explained | None:
    """What stands behind a line about what the dyer has: the fibre, the recipe, the depth, the kitchen."""
    kind = key.partition(":")[0]
    if kind in ("lot", "lot+", "dry", "damp", "mordanted"):
        return Explained("washed, air-dry weight (WOF)", (Because(_WEIGHT, _WEIGHT_SOURCE),))
    if kind == "recipe":
        source = recipe.source or "the recipe names no source"
        return Explained(recipe.name, (Because(recipe.summary or "No summary is written in it.", source),))
    if kind == "depth":
        return Explained("paler, usual, deeper", (Because(_DEPTH, "the recipe's own range"),))
    if kind == "kitchen":
        says = (
            ", ".join(one for _, one in known(kitchen)) or "Nothing yet: the plan says what it took instead."
        )
        return Explained("your kitchen", (Because(says, kitchen.path or "no kitchen file yet"),))
    return None


def why(worked: Worked, shopping: Shopping, key: str) -> Explained | None:
    """Where the figure of a line comes from, or None for a line without one."""
    kind, _, which = key.partition(":")
    if kind == "dose":
        return explain_dose(worked, which)
    if kind == "bath":
        return explain_bath(worked, which)
    if kind == "step":
        return explain_row(worked, next(one for one in worked.plan.timetable if one.step == which))
    if kind == "boil":
        return explain_boil(worked)
    if kind == "jar":
        return explain_price(_item(shopping, which))
    if kind == "care":
        return _reminder(next(one for one in worked.plan.reminders if one.text == which))
    return None


def _item(shopping: Shopping, ingredient: str) -> ToBuy:
    return next(one for one in shopping.items if one.ingredient == ingredient)


def _reminder(reminder: PlannedReminder) -> Explained:
    return Explained(f"at {reminder.step}", (Because(reminder.text, reminder.source),))


def why_view(explained: Explained | None) -> w.WhyView | None:
    """The same as a view."""
    if explained is None:
        return None
    return w.WhyView(explained.figure, tuple(w.Reason(one.says, one.source) for one in explained.because))
