"""Finding a substance by whatever a dyer types."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.substances import find, form_named, load, nearest

NAMES = sorted({name for s in load().values() for name in (s.key, *s.names)})


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("alum", "potassium alum"),
        ("Alum (crimson)", "potassium alum"),
        ("ALUM POWDER", "potassium alum"),
        ("aluminum sulfate", "aluminium sulphate"),
        ("Aluminium Sulphate", "aluminium sulphate"),
        ("copperas", "ferrous sulphate"),
        ("copperas (ferrous sulphate)", "ferrous sulphate"),
        ("iron(II) sulfate heptahydrate", "ferrous sulphate"),
        ("green vitriol", "ferrous sulphate"),
        ("blue-vitriol", "copper sulphate"),
        ("tartar, cream of", "cream of tartar"),
        ("Madder roots, ground", "madder root"),
        ("fresh madder root", "madder root"),
        ("cochineal insects", "cochineal"),
        ("weld", "weld"),
        ("fresh weld", "fresh weld"),
        ("extract of logwood", "logwood extract"),
        ("logwood", "logwood chips"),
        ("walnut hulls", "walnut hull"),
        ("onion skins", "onion skins"),
        ("gum catechu", "cutch"),
        ("old fustic", "fustic"),
        ("nut galls", "gall nut"),
        ("sumach", "sumac"),
        ("myrobalans", "myrobalan"),
        ("rhubarb leaves", "rhubarb leaf"),
        ("rhubarb root", "rhubarb root"),
        ("5 % vinegar", "vinegar"),
        ("hydrogen peroxide 3 %", "hydrogen peroxide"),
        ("Glauber’s salt", "glauber's salt"),
        ("bran", "wheat bran"),
        ("soda crystals", "washing soda"),
        ("carbonate of soda crystals", "washing soda"),
        ("caustic soda", "lye"),
        ("divi-divi", "divi-divi"),
    ],
)
def test_a_dyers_name_finds_its_substance(typed, key):
    assert find(typed).key == key


@pytest.mark.parametrize(
    "typed",
    ["", "   ", "()", "42", "fairy dust", "soda", "vitriol", "chrome yellow wool", "lime flowers", "wool"],
)
def test_what_names_nothing_or_could_name_several_is_not_guessed(typed):
    assert find(typed) is None


def test_chrome_alum_is_never_taken_for_alum():
    assert find("chrome alum").key == "chrome alum"
    assert find("chrome alum").refused


def test_a_text_that_offers_several_gives_the_strictest():
    assert find("copper sulphate or ferrous sulphate or chrome").key == "potassium dichromate"
    assert find("alum / copper").key == "copper sulphate"


def test_a_bare_name_that_may_be_rhubarb_leaf_is_taken_as_the_leaf():
    assert find("rhubarb").refused
    assert not find("rhubarb root").refused


@pytest.mark.parametrize("name", NAMES)
def test_no_name_leads_to_another_substance(name):
    found = find(name)
    assert name in (found.key, *found.names)


@given(st.sampled_from(NAMES), st.sampled_from([str.upper, str.title, lambda t: t.replace(" ", "-")]))
def test_case_and_hyphens_change_nothing(name, dress):
    assert find(dress(name)) is find(name)


@given(st.sampled_from(NAMES))
def test_american_and_british_spelling_are_one(name):
    american = name.replace("sulph", "sulf").replace("aluminium", "aluminum")
    assert find(american) is find(name)


@given(st.text(max_size=60))
def test_any_text_at_all_is_answered_without_a_stumble(text):
    assert find(text) is None or find(text).key in load()
    assert set(nearest(text)) <= set(load())


def test_a_form_on_the_packet_is_found_with_what_it_is_worth():
    assert form_named("dried alum").grams == 1.8373
    assert form_named("Ferrous Sulfate Monohydrate").of == "ferrous sulphate"
    assert form_named("alum") is None
    assert form_named("") is None


def test_a_slip_of_the_pen_is_offered_its_nearest():
    assert nearest("maddr root")[0] == "madder root"
    assert nearest("potasium alum")[0] == "potassium alum"
    assert {"soda ash", "washing soda"} <= set(nearest("soda"))
    assert nearest("fairy dust") == ()
