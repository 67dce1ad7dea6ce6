"""The shipped data: every figure has a source, every word is from the agreed vocabulary."""

import re
import tomllib
from collections.abc import Iterator
from importlib.resources import files
from itertools import pairwise
from typing import Any

import pytest

from dyesession.substances import FIRST_AID, TRAITS, VERDICTS, data_files, load, wording

EVERY_FILE = (*data_files(), "wording.toml")
EVERY_SUBSTANCE = tuple(load().values())


def _text(name: str) -> str:
    return files("dyesession.substances").joinpath(name).read_text(encoding="utf-8")


def _tables(node: Any) -> Iterator[dict[str, Any]]:
    """Every table in the document, however deep."""
    if isinstance(node, dict):
        yield node
    children = node.values() if isinstance(node, dict) else node if isinstance(node, list) else ()
    for child in children:
        yield from _tables(child)


def _holds_a_figure(table: dict[str, Any]) -> bool:
    return any(isinstance(v, int | float) and not isinstance(v, bool) for v in table.values())


def _without_source(document: dict[str, Any]) -> list[dict[str, Any]]:
    return [t for t in _tables(document) if _holds_a_figure(t) and not str(t.get("source", "")).strip()]


@pytest.mark.parametrize("name", EVERY_FILE)
def test_every_figure_in_the_data_has_its_source_beside_it(name):
    assert _without_source(tomllib.loads(_text(name))) == []


def test_the_search_for_figures_without_a_source_finds_one_that_is_hidden():
    planted = {"substance": [{"key": "x", "source": "a book", "limit": {"value": 2.0, "unit": "g"}}]}
    assert _without_source(planted) == [{"value": 2.0, "unit": "g"}]


def test_there_are_figures_in_the_data_at_all():
    counted = [t for name in EVERY_FILE for t in _tables(tomllib.loads(_text(name))) if _holds_a_figure(t)]
    assert len(counted) > 60


def test_every_substance_says_where_its_hazards_come_from():
    assert [s.key for s in EVERY_SUBSTANCE if not s.source.strip()] == []


def test_verdict_traits_first_aid_and_air_are_words_the_program_knows():
    for substance in EVERY_SUBSTANCE:
        assert substance.home_use in VERDICTS, substance.key
        assert substance.traits <= set(TRAITS), substance.key
        assert substance.first_aid in FIRST_AID, substance.key
        assert substance.air in wording().air, substance.key
        assert substance.disposal in wording().disposal, substance.key
        assert set(substance.protection) <= set(wording().protection), substance.key


def test_every_trait_is_borne_by_something():
    assert set(TRAITS) == set().union(*(s.traits for s in EVERY_SUBSTANCE))


def test_every_hazard_code_and_pictogram_has_a_plain_meaning():
    codes = {code for s in EVERY_SUBSTANCE for code in s.codes}
    codes |= {code for s in EVERY_SUBSTANCE for band in s.bands for code in band.codes}
    assert codes <= set(wording().code)
    assert {p for s in EVERY_SUBSTANCE for p in s.pictograms} <= set(wording().pictogram)


def test_a_substance_with_codes_has_a_signal_word_and_pictograms():
    for substance in EVERY_SUBSTANCE:
        assert bool(substance.codes) == (substance.signal_word in ("Danger", "Warning")), substance.key
        assert bool(substance.codes) == bool(substance.pictograms), substance.key


def test_grave_codes_never_go_with_a_mere_warning():
    grave = {"H310", "H314", "H318", "H330", "H334", "H340", "H350", "H360", "H360FD"}
    for substance in EVERY_SUBSTANCE:
        if grave.intersection(substance.codes):
            assert substance.signal_word == "Danger", substance.key


def test_no_two_substances_share_a_key_and_no_key_is_lost_on_the_way():
    keys = [t["key"] for name in data_files() for t in tomllib.loads(_text(name))["substance"]]
    assert sorted(keys) == sorted(load())
    assert len(set(keys)) == len(keys)


def test_texts_are_calm_short_and_each_substance_has_its_own_caution_or_its_kinds():
    for substance in EVERY_SUBSTANCE:
        assert "!" not in substance.caution + substance.home_use_reason + substance.storage
        assert 10 <= len(substance.caution) <= 100, substance.key
        assert substance.caution.endswith(".")


def test_every_refused_substance_names_a_safer_way_and_is_not_merely_off():
    refused = [s for s in EVERY_SUBSTANCE if s.refused]
    assert {"potassium dichromate", "tin chloride", "oxalic acid", "rhubarb leaf"} <= {s.key for s in refused}
    assert all(s.safer and not s.needs_choice for s in refused)


def test_what_is_not_recommended_stays_off_until_chosen():
    for substance in EVERY_SUBSTANCE:
        assert substance.needs_choice == (substance.home_use == "not recommended"), substance.key


def test_mordant_lots_vary_by_five_per_cent_and_dyestuff_lots_by_twenty():
    assert load()["potassium alum"].lots_vary.value == 5.0
    assert load()["ferrous sulphate"].lots_vary.value == 5.0
    assert load()["madder root"].lots_vary.value == 20.0
    assert load()["cochineal"].lots_vary.value == 20.0


def test_alum_dissolves_139_grams_a_litre_and_tartar_hardly_at_all():
    alum, tartar = load()["potassium alum"].solubility, load()["cream of tartar"].solubility
    assert (alum.value, alum.at_c) == (139.0, 20.0)
    assert (tartar.value, tartar.high) == (5.0, 6.0)
    assert "from memory" in tartar.source


def test_only_carbonates_give_off_gas_and_only_iron_has_a_share_of_iron():
    assert {s.key for s in EVERY_SUBSTANCE if s.gas} == {s.key for s in EVERY_SUBSTANCE if s.has("carbonate")}
    assert [s.key for s in EVERY_SUBSTANCE if s.iron_share] == ["ferrous sulphate"]


def test_strength_bands_never_overlap_and_grow_no_milder_with_strength():
    order = ("", "Warning", "Danger")
    banded = [s for s in EVERY_SUBSTANCE if s.bands]
    assert len(banded) >= 4
    for substance in banded:
        rising = sorted(substance.bands, key=lambda band: band.at_least)
        for weak, strong in pairwise(rising):
            assert weak.below == strong.at_least, substance.key
            assert order.index(weak.signal_word) <= order.index(strong.signal_word), substance.key


def test_household_strengths_fall_in_the_mild_band():
    assert load()["hydrogen peroxide"].band(3).codes == ()
    assert load()["lye"].band(5).codes == ("H290", "H314")
    assert load()["lye"].band(0.1) is None


def test_what_must_not_meet_is_said_short_with_what_would_come_of_it():
    for substance in EVERY_SUBSTANCE:
        for phrase in substance.must_not_meet:
            assert 3 <= len(phrase) <= 90, substance.key
            assert not phrase.endswith("."), substance.key
            assert phrase.count("(") == phrase.count(")") <= 1, substance.key
    assert sum(bool(substance.must_not_meet) for substance in EVERY_SUBSTANCE) > 50


def test_a_cas_number_or_a_name_for_it_is_never_inherited_from_what_it_is_like():
    assert load()["ammonium alum"].cas_note == ""
    assert load()["lac"].cas_note == load()["fustic"].cas_note == ""


def test_a_cas_number_closes_with_its_check_digit():
    for substance in EVERY_SUBSTANCE:
        for number in re.findall(r"\b\d{2,7}-\d\d-\d\b", f"{substance.cas} {substance.cas_note}"):
            digits = [int(digit) for digit in number.replace("-", "")]
            weighed = sum(i * digit for i, digit in enumerate(reversed(digits[:-1]), start=1))
            assert weighed % 10 == digits[-1], (substance.key, number)


def test_the_range_of_a_form_holds_its_own_figure():
    for substance in EVERY_SUBSTANCE:
        for form in substance.forms:
            if form.low_grams is not None:
                assert form.low_grams <= form.grams <= form.high_grams, form.name
