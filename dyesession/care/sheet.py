"""One page about one substance, and the list of what to keep apart: text for whoever prints it.

Everything said stands in `substances` and `apart`, with its source; where sheets differ, the stricter is
shown and the other is named beside it.
"""

from collections.abc import Iterator
from typing import Any

from dyesession.care.apart import KEEP_APART
from dyesession.care.iron import SOURCE as IRON_SOURCE
from dyesession.care.iron import iron_table
from dyesession.care.refusals import choice_of, refusal_of
from dyesession.care.scene import grams
from dyesession.care.situation import Household
from dyesession.care.wording import first_aid_line
from dyesession.substances import VERDICTS, Band, Figure, Form, Substance, load, wording

Row = tuple[str, str]


def sheet_of(
    substance: Substance, poison_centre: str = "", household: Household | None = None
) -> tuple[Row, ...]:
    """(what, text) rows about a substance, in the order they are needed; nothing known, no row.

    `poison_centre` is the dyer's own number; with a `household` the iron table holds its smallest.
    """
    rows = (
        ("also called", ", ".join(substance.names)),
        ("CAS number", _cas(substance)),
        ("used as", f"{', '.join(substance.roles)}; sold as {substance.form}"),
        ("at home", _at_home(substance)),
        ("caution", substance.caution),
        *_iron_rows(substance, household),
        ("hazards", _hazards(substance)),
        ("other sheets", substance.other_view),
        *(("at strength", _band(band)) for band in sorted(substance.bands, key=lambda band: band.at_least)),
        ("wear", "; ".join(wording().protection[one] for one in substance.protection)),
        ("air", wording().air[substance.air]),
        ("keep from", "; ".join(substance.must_not_meet)),
        ("first aid", first_aid_line(substance.first_aid, poison_centre)),
        ("storing", substance.storage),
        ("throwing away", wording().disposal[substance.disposal]),
        ("work limit", _limit(substance.limit)),
        *(("on the packet", _form(form)) for form in substance.forms),
        ("foam", _figure(substance.gas, "of carbon dioxide at 20 °C, with acid or alum")),
        ("dissolves", _figure(substance.solubility, "")),
        ("source", substance.source),
    )
    return tuple(row for row in rows if row[1])


def sheet_as_json(substance: Substance, poison_centre: str = "") -> dict[str, Any]:
    """Everything known of a substance as plain values."""
    refused, chosen = refusal_of(substance), choice_of(substance)
    return {
        "key": substance.key,
        "names": list(substance.names),
        "cas": substance.cas,
        "cas_note": substance.cas_note,
        "kind": substance.kind,
        "roles": list(substance.roles),
        "form": substance.form,
        "home_use": substance.home_use,
        "home_use_reason": substance.home_use_reason,
        "refusal": refused.text if refused else "",
        "choice": chosen.text if chosen else "",
        "safer": substance.safer,
        "caution": substance.caution,
        "signal_word": substance.signal_word,
        "hazards": {code: wording().code[code] for code in substance.codes},
        "pictograms": {code: wording().pictogram[code] for code in substance.pictograms},
        "other_view": substance.other_view,
        "bands": [_band_as_json(band) for band in substance.bands],
        "protection": [wording().protection[one] for one in substance.protection],
        "air": wording().air[substance.air],
        "must_not_meet": list(substance.must_not_meet),
        "first_aid": first_aid_line(substance.first_aid, poison_centre),
        "storage": substance.storage,
        "disposal": wording().disposal[substance.disposal],
        "limit": _figure_as_json(substance.limit),
        "forms": [_form_as_json(form) for form in substance.forms],
        "gas": _figure_as_json(substance.gas),
        "solubility": _figure_as_json(substance.solubility),
        "iron_share": _figure_as_json(substance.iron_share),
        "source": substance.source,
    }


def keep_apart_rows() -> tuple[Row, ...]:
    """("never" or "with care", what with what: what it makes; what to do), the worst first."""
    return tuple(
        (
            "never" if pair.never else "with care",
            f"{pair.one} + {pair.other}: {pair.makes}. {_sentence(pair.do)}",
        )
        for pair in KEEP_APART
    )


def keep_apart_as_json() -> list[dict[str, Any]]:
    """The list of what to keep apart as plain values, with the source of each pair."""
    return [
        {
            "one": pair.one,
            "other": pair.other,
            "makes": pair.makes,
            "do": pair.do,
            "never": pair.never,
            "whole_room": pair.whole_room,
            "source": pair.source,
        }
        for pair in KEEP_APART
    ]


def by_verdict() -> tuple[tuple[str, tuple[str, ...]], ...]:
    """(verdict, keys of the substances it stands for), the strictest first."""
    found = {verdict: [one.key for one in load().values() if one.home_use == verdict] for verdict in VERDICTS}
    return tuple((verdict, tuple(sorted(keys))) for verdict, keys in reversed(found.items()) if keys)


def _at_home(substance: Substance) -> str:
    refused, chosen = refusal_of(substance), choice_of(substance)
    if refused:
        return refused.text
    return chosen.text if chosen else f"{substance.home_use}: {substance.home_use_reason}."


def _cas(substance: Substance) -> str:
    noted = f"({substance.cas_note})" if substance.cas_note else ""
    return f"{substance.cas} {noted}".strip()


def _hazards(substance: Substance) -> str:
    if not substance.codes:
        return "no code known"
    meanings = "; ".join(f"{code} {wording().code[code]}" for code in substance.codes)
    signs = ", ".join(f"{code} {wording().pictogram[code]}" for code in substance.pictograms)
    return f"{substance.signal_word}. {meanings}. Signs: {signs}"


def _band(band: Band) -> str:
    codes = ", ".join(band.codes) or "no code"
    span = f"from {band.at_least:g} %" if band.below > 100 else f"{band.at_least:g} to under {band.below:g} %"
    signal = f"{band.signal_word}, " if band.signal_word else ""
    return f"{span}: {signal}{codes} ({band.source})"


def _iron_rows(substance: Substance, household: Household | None) -> Iterator[Row]:
    if substance.iron_share is None:
        return
    smallest = household.smallest() if household else None
    table = iron_table(smallest)
    told = (f"{who}: ill from {grams(ill)}, poisoned from {grams(bad)}" for who, ill, bad in table)
    yield "swallowed", f"{'; '.join(told)} ({IRON_SOURCE})"


def _limit(figure: Figure | None) -> str:
    return f"{_figure(figure, figure.of)}; no proof that a home use is safe" if figure else ""


def _figure(figure: Figure | None, of: str) -> str:
    if figure is None:
        return ""
    value = f"{figure.value:g}" if figure.high is None else f"{figure.value:g} to {figure.high:g}"
    at = "" if figure.at_c is None or "°C" in of else f"at {figure.at_c:g} °C"
    return " ".join(part for part in (value, figure.unit, of, at, f"({figure.source})") if part)


def _form(form: Form) -> str:
    span = "" if form.low_grams is None else f" ({form.low_grams:g} to {form.high_grams:g})"
    return f"1 g {form.name} does the work of {form.grams:g} g{span} {form.of}: {form.basis} ({form.source})"


def _band_as_json(band: Band) -> dict[str, Any]:
    return {
        "at_least_percent": band.at_least,
        "below_percent": band.below,
        "codes": list(band.codes),
        "signal_word": band.signal_word,
        "source": band.source,
    }


def _figure_as_json(figure: Figure | None) -> dict[str, Any] | None:
    if figure is None:
        return None
    names = ("value", "high", "unit", "of", "at_c", "source")
    values = {name: getattr(figure, name) for name in names}
    return {name: value for name, value in values.items() if value not in (None, "")}


def _form_as_json(form: Form) -> dict[str, Any]:
    names = ("name", "grams", "low_grams", "high_grams", "of", "basis", "source")
    values = {name: getattr(form, name) for name in names}
    return {name: value for name, value in values.items() if value is not None}


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."
