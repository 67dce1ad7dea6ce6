"""What published cards and notes say must not meet, put in one pot, and each must be warned of.

National Fire Protection Association note on mixing chemicals, 2020-04-13; US EPA household waste text;
ILO/WHO International Chemical Safety Cards 0408, 1135, 1717; supplier SDS of sodium dithionite, Jan 2016;
GisChem sheets on sodium hydroxide; SDS 2015 of potassium dichromate. The rest: general chemistry or common
practice, no source.
"""

import pytest

from dyesession.care import OtherVessel, Situation, reminders

NEVER = [
    ("ammonia", "chlorine bleach", "chloramine"),  # NFPA, EPA
    ("vinegar", "chlorine bleach", "chlorine"),  # NFPA, EPA
    ("citric acid", "chlorine bleach", "chlorine"),  # same chemistry
    ("alum", "chlorine bleach", "chlorine"),  # same chemistry
    ("cream of tartar", "chlorine bleach", "chlorine"),  # same chemistry
    ("vinegar", "hydrogen peroxide", "peracetic"),  # NFPA
    ("alcohol", "chlorine bleach", "chloroform"),  # NFPA, EPA
    ("citric acid", "sodium dithionite", "sulphur dioxide"),  # supplier SDS, R31
    ("vinegar", "thiourea dioxide", "sulphur dioxide"),  # from memory, unverified
    ("lye", "ammonium alum", "ammonia"),  # GisChem
    ("slaked lime", "ammonium carbonate", "ammonia"),  # GisChem, for lye
    ("sulphuric acid", "lye", "heat"),  # GisChem
    ("hydrogen peroxide", "ferrous sulphate", "gas"),  # general chemistry; from memory, unverified
    ("hydrogen peroxide", "copper sulphate", "gas"),  # general chemistry; from memory, unverified
    ("potassium dichromate", "madder root", "fire"),  # SDS 2015
    ("potassium dichromate", "wheat bran", "fire"),  # SDS 2015
]


@pytest.mark.parametrize(("one", "other", "makes"), NEVER)
@pytest.mark.parametrize("turned", [False, True])
def test_a_pair_that_must_not_meet_is_called_whichever_goes_in_first(one, other, makes, turned):
    first, second = (other, one) if turned else (one, other)
    said = reminders(Situation(letter="B", adding=((first, 20.0),), contents=((second, 20.0),)))
    (line,) = [r for r in said if r.trigger == "never mix"]
    assert makes in line.text
    assert line.severity == 4


@pytest.mark.parametrize(
    ("stuff", "metal"),
    [
        ("lye", "aluminium"),
        ("lye", "zinc"),
        ("lye", "tin"),
        ("slaked lime", "aluminium"),
    ],  # GisChem; card 0408
)
def test_lye_and_lime_in_soft_metal_make_hydrogen(stuff, metal):
    said = reminders(Situation(letter="B", material=metal, contents=((stuff, 5.0),)))
    assert any(r.trigger == "metal pot" and "hydrogen" in r.text and r.severity == 4 for r in said)


@pytest.mark.parametrize("carbonate", ["chalk", "soda ash", "washing soda", "baking soda"])
@pytest.mark.parametrize("acid", ["alum", "vinegar", "citric acid", "cream of tartar"])
def test_acid_or_alum_on_a_carbonate_foams(carbonate, acid):
    said = reminders(Situation(letter="B", adding=((acid, 5.0),), contents=((carbonate, 5.0),)))
    assert any(r.trigger == "foam" for r in said)


def test_water_or_damp_on_dithionite_is_spoken_of():  # ILO/WHO card 1717
    said = reminders(Situation(letter="B", adding=(("sodium dithionite", 10.0),)))
    assert any("catch fire" in r.text for r in said)


def test_honest_neighbours_are_left_in_peace():
    others = (OtherVessel("C", (("madder root", 120.0),)), OtherVessel("D", (("soda ash", 10.0),)))
    said = reminders(
        Situation(letter="B", contents=(("alum", 29.0), ("cream of tartar", 14.0)), other_vessels=others)
    )
    assert said == ()
