"""Every row of the published hazard tables that were read is to be reached by the name it stands under there.

Names as on ILO/WHO International Chemical Safety Cards, GisChem sheets and supplier sheets, with the words a
dyer would type beside them; CAS numbers of the same. What must not meet: National Fire Protection Association
note of 2020-04-13, US EPA household waste text, ILO/WHO cards 0408, 1135, 1717, GisChem lye sheets, an SDS of
2015 for potassium dichromate; the rest general chemistry or common practice. Codes: CLP, Reg. 1272/2008.
"""

import pytest

from dyesession.care import KEEP_APART
from dyesession.substances import find, wording

# (key, names on the sheets, names a dyer types, numbers)
ROWS = [
    ("potassium alum", "potassium aluminium sulfate dodecahydrate", "alum", "7784-24-9|10043-67-1"),
    ("aluminium acetate", "basic aluminium diacetate", "alum acetate|aluminum acetate", "142-03-0|139-12-8"),
    ("aluminium sulphate", "aluminium sulfate", "sulphate of alumina", "10043-01-3|7784-31-8"),
    ("ferrous sulphate", "ferrous sulfate heptahydrate", "iron|copperas", "7782-63-0|7720-78-7"),
    ("copper sulphate", "copper(II) sulfate pentahydrate", "blue vitriol|bluestone", "7758-99-8|7758-98-7"),
    ("tin chloride", "tin(II) chloride dihydrate", "tin|stannous chloride", "10025-69-1|7772-99-8"),
    ("potassium dichromate", "potassium dichromate (chrome)", "chrome|bichromate of potash", "7778-50-9"),
    ("cream of tartar", "potassium hydrogen tartrate", "tartar|cream of tartar", "868-14-4"),
    ("citric acid", "citric acid monohydrate", "citric acid", "77-92-9|5949-29-1"),
    ("strong acetic acid", "acetic acid / vinegar", "vinegar essence|60 % acetic acid", "64-19-7"),
    ("vinegar", "vinegar", "white vinegar|5 % vinegar|kitchen vinegar", ""),
    ("oxalic acid", "oxalic acid dihydrate", "oxalic|wood bleach", "6153-56-6|144-62-7"),
    ("rhubarb leaf", "rhubarb leaf and root", "rhubarb leaves|rhubarb", ""),
    ("rhubarb root", "rhubarb root", "rhubarb roots|rhubarb root powder", ""),
    ("tannin", "tannic acid", "tannin|tannic acid powder", "1401-55-4"),
    ("gall nut", "gallnut", "oak galls|gall nuts|nut galls", ""),
    ("soda ash", "anhydrous sodium carbonate", "soda ash", "497-19-8"),
    ("washing soda", "sodium carbonate decahydrate", "washing soda|soda crystals", "6132-02-1"),
    ("lye", "sodium hydroxide", "lye|caustic soda", "1310-73-2"),
    ("chalk", "calcium carbonate", "chalk|whiting", "471-34-1|1317-65-3"),
    ("slaked lime", "calcium hydroxide", "slaked lime|lime|pickling lime", "1305-62-0"),
    ("ammonia", "ammonia solution", "household ammonia|stale urine", "1336-21-6|7664-41-7"),
    ("sodium dithionite", "sodium dithionite (hydrosulfite)", "hydros|colour run remover", "7775-14-6"),
    ("thiourea dioxide", "thiourea dioxide", "thiox", "1758-73-2|4189-44-0"),
    ("neutral textile wash", "neutral non-ionic textile wash", "wool wash", "68439-50-9|68131-39-5"),
    ("hydrogen peroxide", "hydrogen peroxide", "peroxide|3 % peroxide", "7722-84-1"),
    ("cochineal", "cochineal", "cochineal insects|ground cochineal", "1390-65-4|1260-17-9"),
    ("cochineal extract", "carmine powder", "carmine", ""),
    ("madder root", "madder root", "madder|ground madder|madder powder", "72-48-0"),
    ("logwood chips", "logwood chips", "logwood", "517-28-2"),
    ("logwood extract", "logwood extract", "extract of logwood", ""),
    ("walnut hull", "walnut hull (green or black)", "walnut hulls|walnut husks", "481-39-0"),
    ("weld", "weld", "dried weld|dyer's rocket", "491-70-3"),
    ("indigo powder", "indigo powder", "indigo|natural indigo", "482-89-3"),
    ("pre-reduced indigo", "pre-reduced indigo grains", "prereduced indigo|indigo crystals", ""),
    ("sugar vat", "sugar indigo vat", "fruit vat|fructose vat|bran vat|fructose", "57-48-7"),
    ("chlorine bleach", "sodium hypochlorite", "bleach|household bleach", "7681-52-9"),
]

TYPED = [
    (key, name) for key, sheets, typed, _ in ROWS for name in (*sheets.split("|"), *typed.split("|")) if name
]
NUMBERS = [(key, number) for key, _, _, numbers in ROWS for number in numbers.split("|") if number]

MEANINGS = (
    *("EUH031", "EUH071", "H226", "H251", "H271", "H272", "H290", "H301", "H302", "H310", "H312", "H314"),
    *("H315", "H317", "H318", "H319", "H330", "H332", "H334", "H335", "H340", "H350", "H360", "H360FD"),
    *("H361", "H372", "H373", "H400", "H401", "H402", "H410", "H412"),
)
SIGNS = ("GHS02", "GHS03", "GHS05", "GHS06", "GHS07", "GHS08", "GHS09")

APART = [  # (one, other, whether never)
    ("ammonia", "bleach", True),
    ("alum", "bleach", True),
    ("vinegar", "peroxide", True),
    ("alcohol", "bleach", True),
    ("acid", "dithionite", True),
    ("acid", "thiourea dioxide", True),
    ("damp", "dithionite powder", True),
    ("acid", "chalk", False),
    ("lye", "aluminium", True),
    ("lime", "aluminium", True),
    ("lye", "ammonium salts", True),
    ("water", "lye, poured on it", True),
    ("strong acid", "lye", True),
    ("iron or copper", "peroxide", True),
    ("copper", "zinc", False),
    ("iron", "tannin", False),
    ("alum", "bare aluminium", False),
    ("soda", "wool", False),
    ("chrome", "plant stuff", True),
]


@pytest.mark.parametrize(("key", "typed"), TYPED)
def test_every_row_is_reached_by_its_own_name_and_by_a_dyers(key, typed):
    assert find(typed).key == key


@pytest.mark.parametrize(("key", "number"), NUMBERS)
def test_every_row_is_reached_by_its_cas_number(key, number):
    assert find(number).key == key


@pytest.mark.parametrize("code", MEANINGS)
def test_every_code_has_plain_words_of_its_own(code):
    assert len(wording().code[code]) > len(code)
    assert list(wording().code.values()).count(wording().code[code]) == 1


@pytest.mark.parametrize("code", SIGNS)
def test_every_sign_has_a_word(code):
    assert wording().pictogram[code]


@pytest.mark.parametrize(("one", "other", "never"), APART)
def test_every_published_pair_is_on_the_list_as_strictly_as_published(one, other, never):
    pairs = [pair for pair in KEEP_APART if one in pair.one and other in pair.other]
    assert [pair.never for pair in pairs] == [never]
