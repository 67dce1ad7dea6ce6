"""Usual causes of troubles with the fibre: streaks, felting, stickiness, bleeding. Each with its source.

Pure. Limits stand at the top with where they come from.
"""

from collections.abc import Mapping

from dyesession.daybook.traces import Dosed, Trace, Traces
from dyesession.daybook.usual import NOT_SAID, Seen, Symptom, Usual, against, shown
from dyesession.dyeing.fibres import CELLULOSE
from dyesession.plan.fit import LEAST_RATIO
from dyesession.units import show_duration, show_figure, show_mass, show_percent, show_temperature

PRACTICE = "common practice, no source"
MAIRET = "Mairet, A Book on Vegetable Dyes, 1916, ch. III"
MAIRET_38 = "Mairet, Vegetable Dyes, 1938, ch. I, of the scour"
BEECH = "Beech, The Dyeing of Woollen Fabrics, 1902, pp. 80-81"
SAHA = "derived from Saha, thesis on aluminium mordanting of wool, 2019"
DOSE_AND_RUB = "Industria Textila 65(1), 2014, on dye plant amounts and fastness of wool"

# Warm to near the boil in 45 to 60 min, which from tap-cold is at most this: Mairet 1916, ch. III.
FASTEST_C_PER_MIN = (90.0 - 15.0) / 45.0
LUKEWARM_C = 45.0  # hand-hot; above it fibre takes colour unevenly as it goes in: common practice, no source
SCOUR_MOST_C = 60.0  # never above 140 F: Mairet 1938, ch. I
SHOCK_C = 20.0  # a step of temperature that felts wool: common practice, no source
ROLLING_C = 98.0  # the boil itself moves the wool: common practice, no source
LEAST_MORDANT_MIN = 45.0  # an hour near the boil is usual: Mairet 1916, ch. III; less by a quarter is short
MOST_ALUM_PERCENT = 15.0  # the upper end of what dyers use: Wipplinger, note on aluminium mordants, 2003
LEAST_ALUM_PERCENT = 5.0  # wool takes about so much: derived from Saha 2019
HARD_MG_L = 120.0  # "hard" from here: USGS classes as quoted
FEW_RINSES = 2
DEEP_PERCENT = 100.0  # fastness to rubbing fell from 25 to 200 % of plant: Industria Textila 2014

DYED = ("dye", "modify")
WARM = ("mordant", "dye", "modify")


def _steep(found: Traces) -> Seen | None:
    steps = [one for one in found.of(*WARM) if one.rise is not None]
    if not found.of(*WARM):
        return None
    if not steps:
        return NOT_SAID
    worst = max(steps, key=lambda one: one.rise.c_per_min if one.rise else 0.0)
    assert worst.rise is not None
    said = (
        f"In {worst.name} the bath rose {show_figure(worst.rise.c_per_min)} °C a minute, from"
        f" {show_temperature(worst.rise.from_c)} to {show_temperature(worst.rise.to_c)}."
    )
    return shown(said) if worst.rise.c_per_min > FASTEST_C_PER_MIN else against(said)


def _entered_hot(found: Traces) -> Seen | None:
    steps = [one for one in found.of("dye") if one.entered_c is not None]
    if not found.of("dye"):
        return None
    if not steps:
        return NOT_SAID
    hot = max(steps, key=lambda one: one.entered_c or 0.0)
    said = f"The fibre went into {hot.name} at {show_temperature(hot.entered_c or 0.0)}."
    return shown(said) if (hot.entered_c or 0.0) > LUKEWARM_C else against(said)


def _entered_dry(found: Traces) -> Seen | None:
    steps = found.of(*WARM)
    if not steps:
        return None
    dry = [one.name for one in steps if one.entered_dry]
    if dry:
        return shown(f"Fibre went dry into {' and '.join(dry)}.")
    return against("All fibre went in wet.")


def _crowded(found: Traces) -> Seen | None:
    return _by_ratio([one for one in found.of(*WARM) if one.ratio_l_per_kg is not None], found.of(*WARM))


def _by_ratio(known: list[Trace], steps: tuple[Trace, ...]) -> Seen | None:
    if not steps:
        return None
    if not known:
        return NOT_SAID
    least = min(known, key=lambda one: one.ratio_l_per_kg or 0.0)
    said = f"{least.name} was 1:{int(least.ratio_l_per_kg or 0.0)}."
    return shown(said) if (least.ratio_l_per_kg or 0.0) < LEAST_RATIO else against(said)


def _one_portion(found: Traces) -> Seen | None:
    dyes = [one for one in found.dosed("dyestuff") if one.pulls == 0]
    if not dyes:
        return None
    whole = [one for one in dyes if one.portions == 1]
    if whole:
        return shown(f"All the {whole[0].ingredient}, {show_mass(whole[0].grams)}, went in at once.")
    return against(f"The {dyes[0].ingredient} went in in {dyes[0].portions} portions.")


def _short_mordant(found: Traces) -> Seen | None:
    steps = [one for one in found.of("mordant") if one.held_min is not None]
    if not found.of("mordant"):
        return None
    if not steps:
        return NOT_SAID
    held = min(one.held_min or 0.0 for one in steps)
    said = f"The mordant was held {show_duration(round(held))}."
    return shown(said) if held < LEAST_MORDANT_MIN else against(said)


def _early(found: Traces) -> Seen | None:
    dyed = found.of("dye")
    if not dyed:
        return None
    early = [one for one in dyed if one.ended_early]
    if early:
        return shown(
            f"{early[0].name} was ended after {show_duration(round(early[0].held_min or 0.0))} at its heat."
        )
    return against("No dyeing was ended before its least time.")


def _felts(found: Traces) -> bool:
    return any(kind not in CELLULOSE and kind != "silk" for kind in found.fibre_kinds)


def _shock(found: Traces) -> Seen | None:
    if not _felts(found):
        return None
    hot = [one for one in found.of(*WARM, "scour") if one.lifted_c is not None]
    if not hot:
        return NOT_SAID
    last = max(hot, key=lambda one: one.lifted_c or 0.0)
    said = f"The fibre was lifted from {last.name} at {show_temperature(last.lifted_c or 0.0)}"
    if found.rinse_c is None:
        if (last.lifted_c or 0.0) < LUKEWARM_C:
            return against(f"{said}, no hotter than the hand.")
        return Seen("not said", f"{said}; how warm the next water was, nobody read.")
    said = f"{said} and the rinse read {show_temperature(found.rinse_c)}."
    return shown(said) if (last.lifted_c or 0.0) - found.rinse_c > SHOCK_C else against(said)


def _boiled(found: Traces) -> Seen | None:
    if not _felts(found):
        return None
    return _hotter(found.of(*WARM), ROLLING_C, "The hottest bath came to")


def _hot_scour(found: Traces) -> Seen | None:
    if not _felts(found) or not found.of("scour"):
        return None
    return _hotter(found.of("scour"), SCOUR_MOST_C + 1.0, "The scour came to")


def _hotter(steps: tuple[Trace, ...], limit_c: float, else_said: str) -> Seen | None:
    if not steps:
        return None
    return hottest(steps, limit_c, else_said)


def hottest(steps: tuple[Trace, ...], limit_c: float, else_said: str = "") -> Seen:
    """Whether a bath came to a limit; only a reading speaks against it, a plan does not."""
    known = [one for one in steps if one.hottest_c is not None]
    if not known:
        return NOT_SAID
    most = max(known, key=lambda one: one.hottest_c or 0.0)
    degrees = show_temperature(most.hottest_c or 0.0)
    if (most.hottest_c or 0.0) >= limit_c:
        return shown(f"{most.name} came to {degrees}, {most.hottest_how}.")
    if most.hottest_how != "read":
        return Seen("not said", f"{degrees} was planned for {most.name}; what it came to, nobody read.")
    return against(f"{else_said or most.name + ' came to'} {degrees}, read.")


def _alums(found: Traces) -> float | None:
    alums = [one.percent for one in found.with_trait("aluminium salt")]
    return sum(alums) if alums else None


def _much_alum(found: Traces) -> Seen | None:
    percent = _alums(found)
    if percent is None:
        return None
    said = f"{show_percent(percent)} of alum went in."
    return shown(said) if percent > MOST_ALUM_PERCENT else against(said)


def little_alum(found: Traces) -> Seen | None:
    """Whether there was too little alum, or none where the dyestuff needs one; None where none was wanted."""
    percent = _alums(found)
    if percent is None:
        wanting = [one for one in found.dosed("dyestuff") if not _holds_by_itself(one)]
        if found.mordanted or found.dosed("mordant", "modifier") or not wanting:
            return None
        return shown(f"No mordant went in today, and {wanting[0].ingredient} wants one.")
    said = f"{show_percent(percent)} of alum went in."
    return shown(said) if percent < LEAST_ALUM_PERCENT else against(said)


# Tannin dyes, walnut, indigo and the lichens need no mordant: common practice, no source.
WITHOUT_MORDANT = ("walnut", "indigo", "crottle", "cudbear")


def _holds_by_itself(dyed: Dosed) -> bool:
    key = dyed.known.key if dyed.known is not None else dyed.substance.casefold()
    return any(word in key for word in WITHOUT_MORDANT) or (
        dyed.known is not None and dyed.known.has("tannin")
    )


def _lime_soap(found: Traces) -> Seen | None:
    if not found.named("soap"):
        return None
    if found.hardness_mg_l is None:
        return Seen("not said", "Soap was used; how hard the water is, the kitchen does not say.")
    said = f"Soap was used in water of {show_figure(found.hardness_mg_l)} mg/L hardness."
    return shown(said) if found.hardness_mg_l > HARD_MG_L else against(said)


def _grease(found: Traces) -> Seen | None:
    if not _felts(found):
        return None
    if found.of("scour"):
        return against("It was scoured today.")
    return shown("Raw fibre was dyed without a scour.") if found.raw else NOT_SAID


def _few_rinses(found: Traces) -> Seen | None:
    if not found.of(*DYED):
        return None
    if not found.rinsed:
        return shown("No rinse is in the log.")
    if found.rinses < FEW_RINSES:
        return Seen("not said", "The log has one rinse; how often the water was changed, it does not say.")
    return against(f"The log has {found.rinses} rinses of fresh water.")


def _deep(found: Traces) -> Seen | None:
    dyes = found.dosed("dyestuff")
    if not dyes:
        return None
    total = sum(one.percent for one in dyes)
    said = f"{show_percent(total)} of dyestuff went in."
    return shown(said) if total > DEEP_PERCENT else against(said)


LEVEL = (
    "into a fresh lukewarm bath, slowly up, an hour there, turned all the while; what stays is dyed deeper"
)

CAUSES: Mapping[Symptom, tuple[Usual, ...]] = {
    "streaks": (
        Usual("The bath rose too fast for the colour to go on evenly", BEECH, _steep,
              f"Level it: {LEVEL}.", PRACTICE),
        Usual("The fibre went into a hot bath, which strikes where it touches first", BEECH, _entered_hot,
              f"Level it: {LEVEL}. Next time begin lukewarm.", BEECH),
        Usual("It went in dry, or not wetted through", PRACTICE, _entered_dry,
              "Wet it out for hours, then dye it deeper in one slow bath.", PRACTICE),
        Usual("The pot was too full for the fibre to move", PRACTICE, _crowded,
              "Dye it again in more water, two lots rather than one.", PRACTICE),
        Usual("All the dyestuff went in at once", BEECH, _one_portion,
              "Next time in two or three portions, the fibre lifted out for each.", BEECH),
        Usual("The mordant was short, so it took unevenly", MAIRET, _short_mordant,
              "Mordant it again for an hour and dye it once more.", MAIRET),
        Usual("The dyeing was ended before it was level", PRACTICE, _early,
              "Back into the warm bath for the rest of its hour.", PRACTICE),
    ),
    "felting": (
        Usual("It went from a hot bath into colder water", MAIRET_38, _shock,
              "Felting does not come undone: use it as it is, and next time let it cool in the bath.", BEECH),
        Usual("The boil moved it about", PRACTICE, _boiled,
              "Felting does not come undone: next time a few degrees below, and never stirred.", PRACTICE),
        Usual("The scour was too hot", MAIRET_38, _hot_scour,
              "Felting does not come undone: next time no hotter than 60 °C.", MAIRET_38),
    ),
    "stickiness": (
        Usual("More alum than wool can hold, which makes it sticky", MAIRET, _much_alum,
              "Wash it in warm water with a neutral wash, twice, and rinse.", PRACTICE),
        Usual("Soap made a scum with hard water", PRACTICE, _lime_soap,
              "Wash it with a neutral wash, the last rinse with a little vinegar.", PRACTICE),
        Usual("Grease was left in it", PRACTICE, _grease,
              "Scour it now, warm, with a neutral wash.", PRACTICE),
    ),
    "bleeding": (
        Usual("It was rinsed too little: many small rinses do more than one large", "arithmetic of mixing",
              _few_rinses, "Rinse on, each time in fresh water of the same warmth, until it stays clear.",
              "arithmetic of mixing"),
        Usual("There is too little mordant to hold the colour", SAHA, little_alum,
              "Mordant it now, cool and long, and wash it again; some colour will go.", PRACTICE),
        Usual("It was dyed very deep: what is not held rubs off", DOSE_AND_RUB, _deep,
              "Wash it a second time with a neutral wash; wear it before it meets white.", PRACTICE),
        Usual("The dyeing was ended early", PRACTICE, _early,
              "Next time the whole hold; now wash it until the water stays clear.", PRACTICE),
    ),
}  # fmt: skip
