"""What is refused by every name it goes by, and what is off until chosen."""

import pytest

from dyesession.care import heat_refusal, needs_choice, refusal
from dyesession.substances import load

CHROME = [
    "potassium dichromate", "Potassium Bichromate", "chrome", "bichromate of potash", "bichromate (chrome)",
    "bichrome", "dichromate", "chrome mordant", "sodium dichromate", "chromium(VI)", "potash bichromate",
    "POTASSIUM DICHROMATE CRYSTALS", "red chromate of potash", "chrome alum",
]  # fmt: skip
TIN = [
    "tin", "stannous chloride", "tin(II) chloride", "tin chloride dihydrate", "tin crystals", "tin liquor",
    "tin spirit", "tin spirits", "muriate of tin", "perchloride of tin", "solution of tin", "tin salts",
    "tin (scarlet)", "Stannous Chloride (tin)", "scarlet spirits", "oxymuriate of tin",
]  # fmt: skip
OXALIC = ["oxalic acid", "oxalic", "oxalic dihydrate", "wood bleach", "salts of sorrel", "salts of lemon"]
RHUBARB = ["rhubarb leaf", "rhubarb leaves", "rhubarb", "Rhubarb-leaf mordant", "rhubarb leaf liquor"]
OTHERS = ["bleach", "household bleach", "sodium hypochlorite", "sugar of lead"]


@pytest.mark.parametrize("name", CHROME + TIN + OXALIC + RHUBARB + OTHERS)
def test_it_is_refused_by_every_name_with_a_reason_and_a_safer_way(name):
    no = refusal(name)
    assert no.reason and no.safer and no.source
    assert no.text == f"{no.what} is refused: {no.reason}. Instead: {no.safer}."


@pytest.mark.parametrize("key", [s.key for s in load().values() if s.refused])
def test_no_synonym_in_the_data_slips_through(key):
    for name in (key, *load()[key].names):
        assert refusal(name) is not None, name
        assert refusal(f"{name.upper()} (pure)") is not None, name


@pytest.mark.parametrize(
    "name",
    [
        "chrome yellow wool", "tin mine grey", "alum", "rhubarb root", "citric acid", "copper sulphate",
        "oxeye daisy", "tartaric acid", "cream of tartar", "fairy dust", "",
    ],
)  # fmt: skip
def test_colour_names_and_honest_substances_are_not_refused(name):
    assert refusal(name) is None


def test_the_safer_way_is_never_itself_refused_nor_off():
    for substance in load().values():
        if substance.refused:
            assert not any(
                other.refused and name == substance.safer for other in load().values() for name in other.names
            )
            assert refusal(substance.safer) is None
            assert needs_choice(substance.safer) is None


@pytest.mark.parametrize(
    "name", ["copper", "blue vitriol", "bluestone", "verdigris", "lye", "caustic soda", "oil of vitriol"]
)
def test_copper_and_lye_are_off_until_chosen_and_say_why(name):
    choice = needs_choice(name)
    assert choice.text.endswith(".")
    assert "off until you choose it" in choice.text
    assert choice.source
    assert refusal(name) is None


@pytest.mark.parametrize("name", ["alum", "iron", "soda ash", "bichromate", "fairy dust"])
def test_what_is_plain_refused_or_unknown_is_no_matter_of_choice(name):
    assert needs_choice(name) is None


@pytest.mark.parametrize("burner", ["camp stove", "charcoal"])
def test_a_fuel_stove_is_refused_indoors_only(burner):
    assert "carbon monoxide" in heat_refusal(burner, indoors=True).text
    assert heat_refusal(burner, indoors=False) is None


@pytest.mark.parametrize("burner", ["", "electric", "gas ring", "induction"])
def test_a_kitchen_stove_is_never_refused(burner):
    assert heat_refusal(burner, indoors=True) is None
