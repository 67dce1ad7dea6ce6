"""The page of a substance and the list of what to keep apart."""

import pytest

from dyesession.care import (
    Household,
    by_verdict,
    keep_apart_as_json,
    keep_apart_rows,
    sheet_as_json,
    sheet_of,
)
from dyesession.substances import VERDICTS, find, load, wording

ALWAYS = (
    "used as",
    "at home",
    "caution",
    "hazards",
    "air",
    "first aid",
    "storing",
    "throwing away",
    "source",
)


@pytest.mark.parametrize("key", load())
def test_every_page_has_what_a_person_needs_and_ends_with_its_source(key):
    rows = sheet_of(load()[key], "0123 456")
    heads = [head for head, _ in rows]
    assert set(ALWAYS) <= set(heads)
    assert heads[-1] == "source"
    assert all(text.strip() for _, text in rows)
    assert "0123 456" in dict(rows)["first aid"]


@pytest.mark.parametrize("key", [one.key for one in load().values() if one.codes])
def test_every_code_and_sign_is_said_in_plain_words(key):
    hazards = dict(sheet_of(load()[key]))["hazards"]
    for code in load()[key].codes:
        assert f"{code} {wording().code[code]}" in hazards
    for sign in load()[key].pictograms:
        assert f"{sign} {wording().pictogram[sign]}" in hazards


def test_where_sheets_differ_the_stricter_is_shown_and_the_other_named():
    alum = dict(sheet_of(find("alum")))
    assert "H302" in alum["hazards"] and alum["hazards"].startswith("Warning")
    assert "unclassified" in alum["other sheets"]
    assert "docslib.org/doc/7582151" in alum["source"] and "docslib.org/doc/7471555" in alum["source"]


def test_the_bands_of_a_solution_stand_from_mild_to_strong():
    bands = [text for head, text in sheet_of(find("acetic acid")) if head == "at strength"]
    assert [band.split(":")[0] for band in bands] == [
        "0 to under 10 %",
        "10 to under 25 %",
        "25 to under 90 %",
        "from 90 %",
    ]
    assert "no code" in bands[0] and "Danger, H226, H314" in bands[-1]


def test_the_iron_page_has_the_grams_for_the_smallest_of_the_house():
    told = dict(sheet_of(find("iron"), household=Household(child_kg=12.0)))["swallowed"]
    assert "12 kg child: ill from 1.2 g, poisoned from 3.6 g" in told
    assert "70 kg grown person: ill from 7 g, poisoned from 21 g" in told
    assert "12 kg" not in dict(sheet_of(find("iron")))["swallowed"]
    assert "swallowed" not in dict(sheet_of(find("alum")))


def test_a_refused_substance_says_so_with_the_safer_way_and_an_off_one_why():
    assert "is refused" in dict(sheet_of(find("chrome")))["at home"]
    assert "Instead:" in dict(sheet_of(find("chrome")))["at home"]
    assert "off until you choose it" in dict(sheet_of(find("lye")))["at home"]


def test_a_form_on_the_packet_is_told_with_how_far_the_books_differ():
    logwood = dict(sheet_of(find("logwood")))["on the packet"]
    assert "1 g logwood extract does the work of 5 g (4.2 to 6) logwood chips" in logwood


@pytest.mark.parametrize("key", load())
def test_the_plain_values_hold_what_the_page_says(key):
    document = sheet_as_json(load()[key], "0123 456")
    assert document["key"] == key
    assert set(document["hazards"]) == set(load()[key].codes)
    assert document["must_not_meet"] == list(load()[key].must_not_meet)
    assert len(document["bands"]) == len(load()[key].bands)
    assert "0123 456" in document["first_aid"]
    for figure in ("limit", "gas", "solubility", "iron_share"):
        assert document[figure] is None or document[figure]["source"]
    assert bool(document["refusal"]) == load()[key].refused
    assert bool(document["choice"]) == load()[key].needs_choice


def test_the_list_has_the_nevers_first_and_a_source_for_each():
    heads = [head for head, _ in keep_apart_rows()]
    assert heads == sorted(heads, key=["never", "with care"].index)
    assert all(pair["source"] for pair in keep_apart_as_json())
    assert len(keep_apart_as_json()) == len(heads) >= 19


def test_every_substance_stands_under_one_verdict_strictest_first():
    listed = by_verdict()
    assert [verdict for verdict, _ in listed] == list(reversed(VERDICTS))
    assert sorted(key for _, keys in listed for key in keys) == sorted(load())
