"""Usual causes of troubles with the colour: too pale, too dull, wrong hue. Each with its source.

Pure. Limits stand at the top with where they come from.
"""

from collections.abc import Callable, Mapping

from dyesession.daybook.causes_fibre import HARD_MG_L, MAIRET, PRACTICE, SAHA, hottest, little_alum
from dyesession.daybook.traces import Dosed, Traces
from dyesession.daybook.usual import NOT_SAID, Seen, Symptom, Usual, against, shown
from dyesession.units import show_duration, show_figure, show_percent, show_temperature

BOOK = "Mairet, A Book on Vegetable Dyes, 1916"
MAIRET_REDS = f"{BOOK}, ch. VII"
MAIRET_YELLOWS = f"{BOOK}, on weld and fustic"
MAIRET_COCHINEAL = f"{BOOK}, on cochineal"
MAIRET_WATER = f"{BOOK}, on water"
NERNST = "mass balance of a bath (derived): twice the water leaves more of the colour in it"
REUSE = "Benli et al., Journal of Cleaner Production 450, 2024; Shams-Nateri, the same, 19, 2011"
SOFT_WATER = "a seller's trial; a dyer's side by side found little gain"

SHORT_SHARE = 0.75  # of its planned hold; below that it is called short: our own choice, no source
COOL_BY_C = 8.0  # this far below what was planned is called cool: our own choice, no source
WIDE_RATIO = 45.0  # above the 25 to 40 of the old books for a dye bath (computed from Mairet 1916)
LESS_SHARE = 0.9  # of the planned dose; a kitchen weighing is nearer than that: common practice, no source
MADDER_MOST_C = 85.0  # brighter held at 80 °C; long boiling dulls: Mairet 1916, ch. VII
WELD_MOST_C = 90.0  # not over 90 °C: Mairet 1916
FUSTIC_MOST_MIN = 40.0  # 30 to 40 min, longer browns it: Mairet 1916
MANY_USES = 2  # hue moves chiefly after the second use: Benli et al. 2024


def _less_dye(found: Traces) -> Seen | None:
    dyes = [one for one in found.dosed("dyestuff") if one.planned_percent]
    if not dyes:
        return None if not found.dosed("dyestuff") else NOT_SAID
    least = min(dyes, key=lambda one: one.percent / (one.planned_percent or 1.0))
    said = (
        f"{show_percent(least.percent)} of {least.ingredient} went in, of"
        f" {show_percent(least.planned_percent or 0.0)} planned."
    )
    return shown(said) if least.percent < LESS_SHARE * (least.planned_percent or 0.0) else against(said)


def _few_pulls(found: Traces) -> Seen | None:
    pulled = [one for one in found.dosed("dyestuff") if one.pulls]
    if not pulled:
        return None
    least = min(pulled, key=lambda one: one.pulls)
    said = f"The {least.ingredient} was extracted {_times(least.pulls)}."
    return shown(said) if least.pulls == 1 else against(said)


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def _short_hold(found: Traces) -> Seen | None:
    known = [one for one in found.of("dye") if one.held_min is not None and one.planned_held_min]
    if not found.of("dye"):
        return None
    if not known:
        return NOT_SAID
    least = min(known, key=lambda one: (one.held_min or 0.0) / (one.planned_held_min or 1.0))
    held, planned = least.held_min or 0.0, least.planned_held_min or 0.0
    said = f"{least.name} was held {show_duration(round(held))} of {show_duration(round(planned))} planned."
    return shown(said) if held < SHORT_SHARE * planned else against(said)


def _cool(found: Traces) -> Seen | None:
    known = [
        one
        for one in found.of("dye")
        if one.hottest_c is not None and one.planned_c is not None and one.hottest_how == "read"
    ]
    if not found.of("dye"):
        return None
    if not known:
        return NOT_SAID
    coolest = min(known, key=lambda one: (one.hottest_c or 0.0) - (one.planned_c or 0.0))
    hot, planned = coolest.hottest_c or 0.0, coolest.planned_c or 0.0
    said = f"{coolest.name} came to {show_temperature(hot)}, with {show_temperature(planned)} planned."
    return shown(said) if hot < planned - COOL_BY_C else against(said)


def _wide(found: Traces) -> Seen | None:
    known = [one for one in found.of("dye") if one.ratio_l_per_kg is not None]
    if not found.of("dye"):
        return None
    if not known:
        return NOT_SAID
    most = max(known, key=lambda one: one.ratio_l_per_kg or 0.0)
    said = f"{most.name} was 1:{int(most.ratio_l_per_kg or 0.0)}."
    return shown(said) if (most.ratio_l_per_kg or 0.0) > WIDE_RATIO else against(said)


def _used_bath(found: Traces) -> Seen | None:
    if not found.of("dye"):
        return None
    used = [one for one in found.of("dye") if one.uses_before]
    if used or found.drained:
        where = (
            f"{used[0].name} was done in a bath that had dyed before."
            if used
            else "A kept bath was poured in."
        )
        return shown(where)
    return against("The dye bath was fresh.")


def _too_hot_for(words: tuple[str, ...], most_c: float) -> Callable[[Traces], Seen | None]:
    """Whether a dyestuff of some name was dyed hotter than it bears."""

    def look(found: Traces) -> Seen | None:
        if not _dyes_named(found, words):
            return None
        return hottest(found.of("dye"), most_c)

    return look


def _dyes_named(found: Traces, words: tuple[str, ...]) -> tuple[Dosed, ...]:
    return tuple(one for one in found.named(*words) if one.role in ("dyestuff", ""))


def _long_fustic(found: Traces) -> Seen | None:
    if not _dyes_named(found, ("fustic",)):
        return None
    held = [one.held_min for one in found.of("dye") if one.held_min is not None]
    if not held:
        return NOT_SAID
    said = f"It was held {show_duration(round(max(held)))}."
    return shown(said) if max(held) > FUSTIC_MOST_MIN else against(said)


def _iron(found: Traces) -> Seen | None:
    iron = found.with_trait("iron")
    if iron:
        return shown(f"{show_percent(iron[0].percent)} of {iron[0].ingredient} went in.")
    return against("No iron is in the log.") if found.of("dye") else None


def _metal(found: Traces) -> Seen | None:
    steps = found.of("mordant", "dye", "modify")
    if not steps:
        return None
    bare = [one for one in steps if one.metal]
    if bare:
        return shown(f"{bare[0].name} stood in bare {bare[0].metal}, the {bare[0].vessel}.")
    if all(one.material for one in steps):
        return against(f"The pots were {' and '.join(dict.fromkeys(one.material for one in steps))}.")
    return NOT_SAID


def _hard(found: Traces) -> Seen | None:
    if found.hardness_mg_l is None:
        return NOT_SAID
    said = f"The tap water has {show_figure(found.hardness_mg_l)} mg/L hardness."
    return shown(said) if found.hardness_mg_l > HARD_MG_L else against(said)


def _soft_for_madder(found: Traces) -> Seen | None:
    if not _dyes_named(found, ("madder", "bedstraw")):
        return None
    if found.named("chalk", "lime"):
        return against("Chalk or lime went in.")
    if found.hardness_mg_l is None:
        return NOT_SAID
    said = f"No chalk went in, and the water has {show_figure(found.hardness_mg_l)} mg/L hardness."
    return shown(said) if found.hardness_mg_l <= HARD_MG_L / 2 else against(said)


def _cochineal_shift(found: Traces) -> Seen | None:
    if not _dyes_named(found, ("cochineal", "kermes", "lac")):
        return None
    alums = found.with_trait("aluminium salt")
    acid = tuple(one for one in found.with_trait("acid") if one not in alums)
    alkali = found.with_trait("alkali", "carbonate", "ammonia")
    if acid or alkali:
        went = " and ".join(one.ingredient for one in (*acid, *alkali))
        return shown(f"{went[0].upper()}{went[1:]} went in today.")
    return NOT_SAID


def _old_bath(found: Traces) -> Seen | None:
    if not found.of("dye"):
        return None
    most = max(one.uses_before for one in found.of("dye"))
    if most >= MANY_USES or found.drained:
        return shown("It was dyed in a bath that had been used before.")
    return against("The dye bath was fresh.")


def _judged_wet(found: Traces) -> Seen | None:
    return against("The dry shade was looked at.") if found.judged_dry else NOT_SAID


AGAIN = "Dye it once more on top in a fresh bath, paler than you think: colour adds up."

CAUSES: Mapping[Symptom, tuple[Usual, ...]] = {
    "too pale": (
        Usual("Too little mordant: wool takes about 5 % of alum, and less holds less colour", SAHA,
              little_alum, "Mordant it again and dye it once more.", PRACTICE),
        Usual("Less dyestuff went in than the recipe wants", PRACTICE, _less_dye, AGAIN, PRACTICE),
        Usual("One extraction leaves a good share of the colour in the dyestuff",
              "judgement: 15 to 60 % is kept", _few_pulls,
              "Extract it again, as long as it runs coloured, and dye it in that.", PRACTICE),
        Usual("It was held too short at its heat", PRACTICE, _short_hold,
              "Back into the bath for the rest of the hour.", PRACTICE),
        Usual("The bath never came to its heat", PRACTICE, _cool,
              "Back into the bath, up to its heat, and hold it there.", PRACTICE),
        Usual("So much water that the colour stayed in it", NERNST, _wide,
              "Dye it again in the same bath steamed down, or with fresh dyestuff in less water.", PRACTICE),
        Usual("The bath was an exhaust bath: the first fibre had most of it", REUSE, _used_bath, AGAIN,
              PRACTICE),
    ),
    "too dull": (
        Usual("Madder brings its browns out when it is boiled", MAIRET_REDS,
              _too_hot_for(("madder", "bedstraw"), MADDER_MOST_C),
              "It cannot be boiled out; a thin bath of fresh madder at 80 °C on top warms it.", PRACTICE),
        Usual("Weld dulls above 90 °C", MAIRET_YELLOWS, _too_hot_for(("weld",), WELD_MOST_C),
              "A thin bath of fresh weld on top, below 90 °C.", PRACTICE),
        Usual("Fustic browns when it is dyed long", MAIRET_YELLOWS, _long_fustic,
              "It cannot be undone; next time half an hour.", MAIRET_YELLOWS),
        Usual("Iron saddens, and a trace of it is enough", MAIRET, _iron,
              "It cannot be washed out; a brighter colour on top, in a pot that has met no iron.", PRACTICE),
        Usual("The pot's bare metal got into the bath", PRACTICE, _metal,
              "Next time in stainless steel or whole enamel.", PRACTICE),
        Usual("Hard water is hard on most colours on wool", MAIRET_WATER, _hard,
              "Boil the water 20 to 30 min first, or take rain water.", MAIRET_WATER),
    ),
    "wrong hue": (
        Usual("The pot's bare metal, or iron astray, shifted it", PRACTICE, _metal,
              "Next time in stainless steel or whole enamel, iron in a pot of its own.", MAIRET),
        Usual("Iron went in: it turns most colours grey or purple", MAIRET, _iron,
              "It cannot be washed out; dye over it with what suits a darker ground.", PRACTICE),
        Usual("Acid turns insect reds to scarlet, alkali to blue", MAIRET_COCHINEAL, _cochineal_shift,
              "A last rinse the other way, a little at a time and looked at: vinegar, or a pinch of soda.",
              PRACTICE),
        Usual("Madder in soft water goes orange for want of lime", MAIRET_REDS, _soft_for_madder,
              "1 to 2 % of chalk in the next bath, tried on a snippet first.",
              f"{MAIRET_REDS}; {SOFT_WATER}"),
        Usual("Madder brings its browns out when it is boiled", MAIRET_REDS,
              _too_hot_for(("madder", "bedstraw"), MADDER_MOST_C),
              "It cannot be boiled out; a thin bath of fresh madder at 80 °C on top warms it.", PRACTICE),
        Usual("A bath used before is another mixture than a fresh one", REUSE, _old_bath,
              "For this hue take a fresh bath; keep the old one for what may differ.", PRACTICE),
        Usual("It was judged wet: wet fibre is darker and stronger", PRACTICE, _judged_wet,
              "Let it dry in the shade and look again before anything else.", PRACTICE),
    ),
}  # fmt: skip
