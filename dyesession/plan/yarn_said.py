"""What a pattern needs beside the yarn at hand, in lines: needed, at hand, enough or short, and the doses for it.

Knows no terminal and no screen; computes nothing.
"""

import textwrap
from typing import TYPE_CHECKING

from dyesession.units import show_figure, show_mass

if TYPE_CHECKING:
    from dyesession.plan.model import Plan
    from dyesession.plan.yarn_need import YarnNeed


def yarn_lines(need: "YarnNeed", plan: "Plan | None", width: int) -> list[str]:
    """Every line of the answer; `plan` is for as much yarn as is to be dyed."""
    metres = ""
    if need.needed_m is not None:
        metres = f", about {show_figure(need.needed_m.aim, estimate=True)} m"
    lines = [
        f"needed:  {_figure(need.needed_g.aim)} ± {_figure(need.needed_g.plus_minus)}{metres}",
        f"at hand: {show_mass(need.at_hand_g)}",
        _verdict(need),
        *_wrapped(
            f"Dye {_figure(need.dye_g)} in one lot, the upper end of what is needed: two dyeings seldom match"
            " (common practice, no source).",
            width,
        ),
    ]
    if need.at_hand_g < need.dye_g:
        more = f"{_figure(need.dye_g - need.at_hand_g)} more of the same yarn, before you dye, would make it safe."
        lines += _wrapped(more, width)
    for sentence in need.because:
        lines += _wrapped(sentence, width)
    return lines + (_doses(need, plan) if plan is not None else [])


def _doses(need: "YarnNeed", plan: "Plan") -> list[str]:
    weighed = [f"  {one.ingredient}: {show_mass(one.mass_g.aim)}" for one in plan.doses if one.mass_g.aim > 0]
    return ["", f"{plan.recipe}, on {_figure(need.dye_g)}", *weighed]


def _verdict(need: "YarnNeed") -> str:
    off = f"{_figure(abs(need.over_g.aim))} ± {_figure(need.over_g.plus_minus)}"
    if need.verdict == "enough":
        return f"enough:  {off} to spare"
    if need.verdict == "short":
        return f"short:   by {off}"
    more = "to spare" if need.over_g.aim >= 0 else "short"
    return f"touch and go: {off} {more}; have more at hand before you dye"


def _figure(grams: float) -> str:
    return show_mass(round(grams))


def _wrapped(text: str, width: int) -> list[str]:
    return textwrap.wrap(text, width, initial_indent="  ", subsequent_indent="  ")
