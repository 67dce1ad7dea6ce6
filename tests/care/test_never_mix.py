"""What must not meet: in one pot, across every pot of the day, and out of a bath kept from another day."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import NEVER_MIX, OtherVessel, Situation, reminders
from dyesession.care.mixing import METAL_HARMS
from dyesession.substances import load

# One substance for each trait that a pair looks for, and what the pair makes.
BEARERS = {
    "ammonia": "ammonia",
    "acid": "potassium alum",
    "alcohol": "alcohol",
    "acetic": "vinegar",
    "iron": "ferrous sulphate",
    "bleach": "chlorine bleach",
    "peroxide": "hydrogen peroxide",
    "reducing": "sodium dithionite",
    "lye": "lye",
    "lime": "slaked lime",
    "alkali": "soda ash",
    "ammonium salt": "ammonium alum",
    "strong acid": "sulphuric acid",
    "oxidiser": "potassium dichromate",
    "plant slurry": "madder root",
    "copper": "copper sulphate",
    "flour": "wheat bran",
    "tannin": "gall nut",
}
MEETINGS = [
    (pair, BEARERS[one], BEARERS[other]) for pair in NEVER_MIX for one, other in product(*pair.traits)
]


def _said(situation, makes):
    return [r for r in reminders(situation) if r.trigger == "never mix" and makes in r.text]


@pytest.mark.parametrize(("pair", "one", "other"), MEETINGS)
@pytest.mark.parametrize("turned", [False, True])
def test_a_pair_is_called_in_one_pot_out_of_another_and_out_of_a_kept_bath(pair, one, other, turned):
    first, second = (other, one) if turned else (one, other)
    standing = ((second, 20.0),)
    added = Situation(letter="B", adding=((first, 20.0),), contents=standing)
    poured = Situation(
        letter="A",
        actions=("pours",),
        into="B",
        contents=((first, 20.0),),
        other_vessels=(OtherVessel("B", standing),),
    )
    kept = Situation(
        letter="B",
        actions=("pours",),
        contents=standing,
        pouring=((first, None),),
        pouring_from="a bath of last week",
    )
    for situation in (added, poured, kept):
        assert [r.severity for r in _said(situation, pair.makes)] == [4], situation
        assert " B" in _said(situation, pair.makes)[0].text


@pytest.mark.parametrize(("pair", "one", "other"), MEETINGS)
def test_two_pots_of_one_day_are_spoken_of_as_strictly_as_the_pair_asks(pair, one, other):
    apart = Situation(
        letter="A", contents=((one, 20.0),), other_vessels=(OtherVessel("C", ((other, 20.0),)),)
    )
    said = _said(apart, pair.makes)
    assert [r.severity for r in said] == [4 if pair.whole_room else 3]
    assert "A" in said[0].text and "C" in said[0].text


@pytest.mark.parametrize(("pair", "one", "other"), MEETINGS)
def test_each_half_alone_is_left_in_peace(pair, one, other):
    for half in (one, other):
        assert _said(Situation(letter="B", adding=((half, 20.0),)), pair.makes) == []


def test_a_kept_alum_bath_poured_into_a_vat_is_called_before_it_is_poured():
    situation = Situation(
        letter="C",
        actions=("opens", "pours"),
        contents=(("indigo", 20.0), ("sodium dithionite", 10.0)),
        pouring=(("potassium alum", 29.0), ("cream of tartar", 14.0)),
        pouring_from="alum bath 2",
        look_again_in_days=3.0,
    )
    (line,) = _said(situation, "sulphur dioxide")
    assert line.text == "Never 29 g alum with 10 g dithionite in C: sulphur dioxide. Air the vat first."


def test_a_kept_soda_bath_poured_on_alum_foams_by_what_is_left_above_the_liquor():
    situation = Situation(
        letter="B",
        actions=("pours",),
        contents=(("alum", 29.0),),
        volume_l=6.0,
        capacity_l=8.0,
        pouring=(("soda ash", 20.0),),
        pouring_from="soda bath",
    )
    (line,) = [r for r in reminders(situation) if r.trigger == "foam"]
    assert line.text == "20 g soda ash on alum in B: up to 4.5 L gas, 2.0 L free. Small portions."
    assert line.severity == 3


def test_foam_in_the_pot_poured_into_counts_the_liquor_poured():
    def poured(free_l):
        return Situation(
            letter="A",
            actions=("pours",),
            into="C",
            volume_l=2.0,
            contents=(("chalk", 10.0),),
            other_vessels=(OtherVessel("C", (("alum", 29.0),), free_l=free_l),),
        )

    (roomy,) = [r for r in reminders(poured(6.0)) if r.trigger == "foam"]
    (tight,) = [r for r in reminders(poured(4.0)) if r.trigger == "foam"]
    assert "up to 2.4 L gas, 4.0 L free" in roomy.text
    assert "up to 2.4 L gas, 2.0 L free" in tight.text
    assert (roomy.severity, tight.severity) == (2, 3)


def test_ammonia_and_its_own_salt_are_no_alkali_and_ammonium_salt():
    both = Situation(letter="B", adding=(("ammonia", 20.0),), contents=(("ammonium alum", 20.0),))
    assert _said(both, "ammonia gas") == []


@given(st.lists(st.sampled_from(sorted(load())), min_size=1, max_size=3, unique=True))
def test_what_must_not_meet_in_two_pots_must_not_meet_in_one(keys):
    """Nothing is called milder for standing nearer."""
    here = tuple((key, 10.0) for key in keys[:1])
    there = tuple((key, 10.0) for key in keys[1:])
    apart = reminders(Situation(letter="A", contents=here, other_vessels=(OtherVessel("C", there),)))
    together = reminders(Situation(letter="A", contents=here + there))
    worst = {r.hazard: r.severity for r in together if r.trigger == "never mix"}
    for line in apart:
        if line.trigger == "never mix":
            assert worst[line.hazard] >= line.severity


# What a substance's own page must name, for each pair its traits put it in.
PARTNER_WORDS = {
    "bleach": ("bleach",),
    "reducing": ("dithionite", "oxidisers"),
    "peroxide": ("peroxide", "oxidisers"),
    "acid": ("acid",),
    "acetic": ("acetic", "acid"),
    "ammonia": ("ammonia",),
    "alcohol": ("alcohol",),
    "iron": ("iron",),
    "copper": ("copper",),
    "ammonium salt": ("ammonium",),
    "lye": ("lye", "alkali"),
    "lime": ("lime", "alkali"),
    "alkali": ("lye", "alkali"),
    "strong acid": ("acid",),
    "plant slurry": ("plant",),
    "flour": ("bran",),
    "tannin": ("tannin",),
    "carbonate": ("chalk", "soda"),
}


def _partners(substance):
    """Traits that this substance must not meet, by the list and by the foam."""
    for pair in NEVER_MIX:
        one, other = pair.traits
        if substance.has(*one) and not substance.has(*pair.but_not):
            yield from other
        if substance.has(*other):
            yield from one
    if substance.has("acid"):
        yield "carbonate"
    if substance.has("carbonate"):
        yield "acid"


@pytest.mark.parametrize("key", sorted(load()))
def test_a_substances_page_names_everything_the_reminders_keep_from_it(key):
    substance = load()[key]
    told = "; ".join(substance.must_not_meet)
    for trait in set(_partners(substance)) - {"oxidiser"}:  # chrome is refused, and says so on its own page
        if trait == "reducing" and substance.has("bleach", "peroxide"):
            assert "dithionite" in told
            continue
        if trait in ("plant slurry", "flour", "tannin") and not substance.has("oxidiser"):
            continue
        words = PARTNER_WORDS[trait]
        assert any(word in told for word in words), (trait, told)


def test_every_bare_metal_harm_is_told_of_a_pot_and_of_no_covered_one():
    for harm in METAL_HARMS:
        bearer = next(s.key for s in load().values() if s.has(*harm.traits) and not s.refused)
        for metal in harm.metals:
            bare = reminders(Situation(material=metal, contents=((bearer, 5.0),)))
            covered = reminders(Situation(material=f"enamelled {metal}", contents=((bearer, 5.0),)))
            assert [r.trigger for r in bare].count("metal pot") == 1, (bearer, metal)
            assert "metal pot" not in {r.trigger for r in covered}
