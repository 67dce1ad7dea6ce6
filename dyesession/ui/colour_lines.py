"""Readings, shades and answers as the lines that Colour shows. Pure; computes no colour of its own."""

from dyesession.colour.cielab import Lab
from dyesession.colour.depth import Predicted
from dyesession.colour.difference import shown_range
from dyesession.colour.mend import GOOD_ENOUGH, MODIFY, MUCH_BETTER, WASH, Advice
from dyesession.colour.readings import Reading
from dyesession.colour.screen import screen_of
from dyesession.colour.targets import CLEARLY_OTHER
from dyesession.colour.viewing import D65_2, Viewing
from dyesession.colour.written import lab_text
from dyesession.daybook.dyed_lots import DyedLot
from dyesession.daybook.hit import Hit, Overdye, cost_words, grams_of
from dyesession.daybook.shade_card import Near, Shade
from dyesession.errors import UserError
from dyesession.ui.colour_view import DoLine, ShadeLine
from dyesession.units import show_mass

_TENTHS_BELOW = 3.0
_RATIO_WORDS = {0.25: "a quarter", 0.5: "half as deep", 2.0: "twice as deep", 4.0: "four times"}


def figure(value: float) -> str:
    """A ± or a difference: never a second decimal."""
    return f"{value:.0f}" if value >= _TENTHS_BELOW else f"{value:.1f}"


def reading_line(key: str, name: str, reading: Reading, says: str = "") -> ShadeLine:
    """A reading with its figures: Lab, ±, its light where that is not D65/2, wet."""
    hexed, exact = hex_of(reading.lab, reading.viewing)
    light = "" if reading.viewing == D65_2 else f" {reading.viewing}"
    wet = " wet" if reading.wet else ""
    figures = f"{lab_text(reading.lab)}{light} ± {figure(reading.plus_minus)}{wet}"
    return ShadeLine(key, name, hexed, figures, says or reading.conditions or by_words(reading), exact)


def by_words(reading: Reading) -> str:
    """What read it, in a dyer's words."""
    return {"eye": "by eye", "typed": "typed"}.get(reading.by, reading.by)


def hex_of(lab: Lab, viewing: Viewing = D65_2) -> tuple[str, bool]:
    """A Lab's hex, and whether a screen can show it; "" where it cannot be seen again for a screen's light."""
    try:
        screen = screen_of(lab, viewing)
    except UserError:
        return "", False
    return screen.hex, screen.exact


def series_line(one: Predicted, viewing: Viewing) -> ShadeLine:
    """A shade of the depth series."""
    hexed, exact = hex_of(one.lab, viewing)
    name = _RATIO_WORDS.get(one.ratio, f"{one.ratio:.2g} times")
    return ShadeLine(f"depth:{one.ratio:g}", name, hexed, f"{lab_text(one.lab)} ± {figure(one.plus_minus)}", "", exact)


def numbers_of(found: Hit) -> str:
    """The verdict in figures: "3 to 6 in CIEDE2000: the same family"."""
    verdict = found.found.verdict
    return f"{shown_range(verdict.low, verdict.high)} in CIEDE2000: {verdict.word}"


def mend_line(index: int, step: Advice) -> DoLine:
    """One thing to do, with what it costs."""
    if step.act == MODIFY and step.costs:
        cost = step.costs[0]
        amount = cost_words(cost).removeprefix(f"{cost.substance} ")
        return DoLine(f"mend:{index}", f"try {cost.substance}", f"on a snippet first; the lot would want {amount}")
    costs = "; ".join(cost_words(one) for one in step.costs)
    says = {GOOD_ENOUGH: step.says, WASH: "suspect the rinse first; costs water only"}.get(step.act, step.says)
    return DoLine(f"mend:{index}", step.act, costs or says)


def mend_page(advice: tuple[Advice, ...]) -> str:
    """All advice in full, the least first."""
    told = []
    for step in advice:
        first = step.says if step.act.casefold() in step.says.casefold() else f"{step.act}: {step.says}"
        told.append("\n".join((first, *(f"    {cost_words(one)}" for one in step.costs))))
    return "\n\n".join(told)


def shade_line(shade: Shade, apart: float | None = None) -> ShadeLine:
    """A colour of the logs: its recipe, figures, day, dose; and how far it lies away."""
    away = f"{figure(apart)} away, " if apart is not None else ""
    lot = f", {shade.lot}" if shade.lot else ""
    demo = ", a demo day" if shade.demo else ""
    says = f"{away}{shade.day}{lot}{demo}, {shade.doses}"
    wet = " wet" if shade.reading.wet else ""
    figures = f"{lab_text(shade.reading.lab)} ± {figure(shade.reading.plus_minus)}{wet}"
    return ShadeLine(f"shade:{shade.key}", shade.recipe, shade.hex, figures, says, shade.exact)


def lot_line(lot: DyedLot) -> ShadeLine:
    """A lot of a finished day, to be told apart by a dyer."""
    dyes = f", {' and '.join(lot.dyestuffs)}" if lot.dyestuffs else ""
    says = f"{lot.day}, {show_mass(lot.fibre_g)} {lot.fibre}{dyes}"
    return ShadeLine(f"lot:{lot.key}", f"{lot.recipe}: {lot.lot}", "", "", says)


def shade_page(shade: Shade) -> str:
    """Everything known of a colour of the logs."""
    line = shade_line(shade)
    others = ", ".join(f"{one.dyestuff} {one.percent:.3g} %" for one in shade.others)
    return "\n".join(
        (
            f"{line.hex}   {line.figures}, {by_words(shade.reading)}",
            f"{shade.recipe}, {shade.day}{', a demo day' if shade.demo else ''}",
            f"{shade.lot + ', ' if shade.lot else ''}{show_mass(shade.fibre_g)} {shade.fibre}",
            f"{shade.doses}{'; beside it ' + others if others else ''}",
            f"log {shade.session}",
        )
    )


def near_line(near: Near) -> ShadeLine:
    """A past colour and how far it lies from the one wanted."""
    return shade_line(near.shade, near.de00)


def overdye_line(index: int, one: Overdye, viewing: Viewing) -> ShadeLine:
    """What a dye over the skein would give, and the miss to expect; never the solver's own."""
    plan = one.plan
    hexed, exact = hex_of(plan.lab, viewing)
    if not plan.amount:
        return ShadeLine(f"over:{index}", one.second.name, hexed, "", plan.says, exact)
    left = "" if plan.reachable else plan.says.rpartition(": ")[2].rstrip(".")
    if left and plan.expected > CLEARLY_OTHER:
        says = f"no nearer than {figure(plan.expected)} (now {figure(plan.now)}): {left}"
        return ShadeLine(f"over:{index}", one.second.name, hexed, "", says, exact)
    if plan.expected > MUCH_BETTER * plan.now:
        return ShadeLine(f"over:{index}", one.second.name, hexed, "", f"hardly nearer, however much (now {figure(plan.now)})", exact)
    amount = f"about {grams_of(one.grams[0])} g" if one.grams is not None else f"{plan.amount:.2g} of its sample"
    says = f"{amount}, expect a miss of {figure(plan.expected)} (now {figure(plan.now)})"
    return ShadeLine(f"over:{index}", one.second.name, hexed, "", f"{says}; {left}" if left else says, exact)


def overdye_page(one: Overdye) -> str:
    """One overdye in full."""
    plan = one.plan
    lines = [plan.says, f"As it is, the skein misses by {figure(plan.now)} (CIEDE2000)."]
    if plan.amount:
        amounts = f"{plan.amount:.2g} ({plan.amount_low:.2g} to {plan.amount_high:.2g}) times the depth of its own sample"
        lines.append(f"Add {amounts}.")
        if one.grams is not None:
            middle, low, high = one.grams
            lines.append(f"That is about {grams_of(middle)} g ({grams_of(low)} to {grams_of(high)} g) of the dyestuff for this lot.")
        lines.append(f"Then about {lab_text(plan.lab)}, modelled; expect a miss of {figure(plan.expected)}.")
    return "\n".join((*lines, *plan.notes))
