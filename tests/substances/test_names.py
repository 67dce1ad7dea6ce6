"""Finding a substance by whatever a dyer types."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.substances import find, form_named, load, nearest, strength_percent

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


@pytest.mark.parametrize(
    ("typed", "key", "percent"),
    [
        ("3 % peroxide", "hydrogen peroxide", 3.0),
        ("hydrogen peroxide, 12%", "hydrogen peroxide", 12.0),
        ("vinegar 5-8 %", "vinegar", 8.0),
        ("5 to 10 % lye", "lye", 10.0),
        ("9,5 per cent ammonia", "ammonia", 9.5),
        ("alum", "potassium alum", None),
        ("200 % weld", "weld", None),
    ],
)
def test_a_strength_in_the_name_is_read_and_hides_no_substance(typed, key, percent):
    assert find(typed).key == key
    assert strength_percent(typed) == percent


@given(st.text(max_size=60))
def test_a_strength_is_a_share_or_nothing(text):
    percent = strength_percent(text)
    assert percent is None or 0.0 <= percent <= 100.0


def test_a_cas_number_finds_its_substance_and_a_shared_one_the_strictest():
    assert find("7782-63-0").key == "ferrous sulphate"
    assert find(" 10043-67-1 ").key == "potassium alum"
    assert find("64-19-7").key == "strong acetic acid"
    assert find("1-23-4") is None
    assert find("99999-99-9") is None


@pytest.mark.parametrize("name", ["acetic acid", "vinegar", "lye", "ammonia", "peroxide", "textile wash"])
def test_what_is_sold_by_strength_has_its_bands_up_to_the_pure_stuff(name):
    bands = find(name).bands
    assert max(band.below for band in bands) > 100.0


def test_the_form_on_a_packet_leads_to_what_it_is_a_form_of_or_to_a_substance_of_its_own():
    bare = {"octadecahydrate", "tetradecahydrate"}  # words that need the salt beside them
    for substance in load().values():
        for form in substance.forms:
            assert form.name in bare or find(form.name) is not None, form.name
            assert find(form.of) is not None
