"""Iron swallowed, as the medical texts count it.

McGuigan 1996: symptoms of the gut from 20 mg/kg, poisoning of the whole body from 60. Dogs: 20 to 60 mild to
moderate, veteriankey.com/iron. Share of iron in ferrous sulphate heptahydrate 20.09 %, from the molar masses
of an independent package (molmass); veterinary and medical texts say 20 %.
"""

import pytest
from molmass import Formula

from dyesession.care import (
    DOSE_LIMITS,
    ILL_MG_PER_KG,
    POISONED_MG_PER_KG,
    Household,
    Situation,
    heptahydrate_grams_for,
    iron_mg_per_kg,
    iron_table,
    reminders,
)
from dyesession.substances import find


def test_the_share_of_iron_follows_from_the_molar_masses():
    share = Formula("Fe").mass / Formula("FeSO4(H2O)7").mass
    assert find("copperas").iron_share.value == pytest.approx(share, abs=1e-4)


@pytest.mark.parametrize(
    ("body_kg", "ill_g", "poisoned_g"),
    [(10.0, 1.0, 3.0), (20.0, 2.0, 6.0), (70.0, 7.0, 20.9)],
)
def test_the_table_of_grams_against_body_mass(body_kg, ill_g, poisoned_g):
    assert heptahydrate_grams_for(ILL_MG_PER_KG, body_kg) == pytest.approx(ill_g, abs=0.05)
    assert heptahydrate_grams_for(POISONED_MG_PER_KG, body_kg) == pytest.approx(poisoned_g, abs=0.05)


def test_the_table_a_person_reads_is_the_same_with_the_smallest_of_the_house_in_its_place():
    rows = [(who, round(ill, 1), round(bad, 1)) for who, ill, bad in iron_table(("pet", 6.0))]
    assert rows[0] == ("6 kg pet", 0.6, 1.8)
    assert [row[1:] for row in rows[1:]] == [(1.0, 3.0), (2.0, 6.0), (7.0, 20.9)]


def test_one_point_two_grams_is_twenty_milligrams_a_kilogram_for_a_child_of_twelve():
    assert iron_mg_per_kg(1.2, 12.0) == pytest.approx(20.0, abs=0.15)
    assert heptahydrate_grams_for(20.0, 12.0) == pytest.approx(1.2, abs=0.01)


def test_saddening_120_grams_at_two_per_cent_is_said_with_the_childs_dose():
    two_per_cent = DOSE_LIMITS["ferrous sulphate"].planned_high
    mass_g = 120.0 * two_per_cent / 100.0
    situation = Situation(
        letter="D",
        actions=("weighs powder",),
        adding=(("iron", mass_g),),
        wof_percent=(("iron", two_per_cent),),
        household=Household(child_kg=12.0),
    )
    said = {r.trigger: r.text for r in reminders(situation)}
    assert said["iron at home"] == (
        "2.4 g iron for D: lock the rest up; 1.2 g swallowed can make a 12 kg child ill."
    )
    assert "iron dose" not in said
