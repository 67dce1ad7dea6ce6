import pytest

from dyesession.colour.cielab import Lab
from dyesession.colour.depth import Exponent
from dyesession.colour.difference import Difference, difference
from dyesession.colour.mend import (
    DIP,
    GOOD_ENOUGH,
    MODIFY,
    NEXT_TIME,
    OVERDYE,
    WASH,
    Advice,
    Dose,
    Lot,
    good_enough,
    mend,
)
from dyesession.colour.overdye import plan_overdye
from dyesession.colour.shades import depth_line, overdye_line
from dyesession.colour.trouble import OutOfRange
from dyesession.colour.viewing import D65_2
from tests.colour.shades_of_cloth import INDIGO, MADDER, UNDYED, aim, is_one_sentence, read

LOT = Lot(240.0, Dose("madder", 50.0), Dose("indigo", 4.0), {"madder": 4.0, "indigo": 30.0})


def told(sample: Lab, target: Lab = MADDER) -> Difference:
    return difference(read(sample), aim(target), read(UNDYED))


def acts(advice: tuple[Advice, ...]) -> list[str]:
    return [one.act for one in advice]


def weaker(ratio: float) -> Lab:
    return depth_line(UNDYED, MADDER, D65_2)(ratio)


def test_good_enough_is_an_answer_and_the_only_one() -> None:
    for sample in (MADDER, Lab(43.0, 45.0, 30.0)):
        found = mend(told(sample), LOT)
        assert acts(found) == [GOOD_ENOUGH] and not found[0].costs
        assert good_enough(told(sample))


def test_the_rinse_is_suspected_before_anything_is_bought() -> None:
    target = overdye_line(UNDYED, weaker(0.6), INDIGO, D65_2)(0.3)
    found = told(weaker(0.6), target)
    plan = plan_overdye(read(UNDYED), read(weaker(0.6)), read(INDIGO), aim(target))
    order = acts(mend(found, LOT, plan))
    assert order[0] == WASH and order[-1] == OVERDYE
    known = [WASH, MODIFY, DIP, OVERDYE]
    assert [known.index(one) for one in order] == sorted(known.index(one) for one in order)


def test_a_further_dip_costs_what_the_missing_depth_costs() -> None:
    dip = next(one for one in mend(told(weaker(0.5)), LOT) if one.act == DIP)
    (cost,) = dip.costs
    assert cost.substance == "madder"
    assert cost.mass_g == pytest.approx(120.0, rel=0.01)  # as much again as the 50 % of 240 g it had
    assert cost.low_g < cost.mass_g < cost.high_g
    assert cost.money == pytest.approx(4.8, rel=0.01)  # at 4 for 100 g


def test_where_depth_lags_behind_dose_a_dip_costs_more() -> None:
    lagging = Lot(240.0, Dose("madder", 50.0), exponent=Exponent(0.7, 0.1, True))
    dip = next(one for one in mend(told(weaker(0.5)), lagging) if one.act == DIP)
    assert dip.costs[0].mass_g == pytest.approx(120.0 * (2 ** (1 / 0.7) - 1), rel=0.01)
    assert dip.costs[0].money is None  # nobody has said what madder costs


def test_a_skein_too_deep_is_kept_and_the_next_one_dosed_lower() -> None:
    found = mend(told(weaker(2.0)), LOT)
    assert DIP not in acts(found) and acts(found)[-1] == NEXT_TIME
    assert found[-1].costs[0].mass_g == pytest.approx(60.0, rel=0.01)


def test_a_hue_gone_astray_is_tried_with_acid_and_alkali_on_a_snippet() -> None:
    found = mend(told(Lab(42.0, 48.0, 20.0)), LOT)
    tried = {cost.substance for one in found if one.act == MODIFY for cost in one.costs}
    assert {"citric acid", "soda ash"} <= tried
    assert all("snippet" in one.says for one in found if one.act == MODIFY)


def test_iron_is_offered_only_where_the_target_is_sadder_and_with_its_warning() -> None:
    brighter, duller = told(Lab(42.0, 55.0, 37.0)), told(Lab(42.0, 36.0, 24.0))

    def iron(found: Difference) -> list[Advice]:
        return [one for one in mend(found, LOT) if one.costs and one.costs[0].substance == "ferrous sulphate"]

    (advice,) = iron(brighter)
    assert (advice.costs[0].low_g, advice.costs[0].high_g) == (2.4, 4.8)  # 1 to 2 % of 240 g
    assert "children" in advice.says
    assert not iron(duller)


def test_an_overdye_is_costed_from_its_own_sample() -> None:
    target = overdye_line(UNDYED, MADDER, INDIGO, D65_2)(0.5)
    plan = plan_overdye(read(UNDYED), read(MADDER), read(INDIGO), aim(target))
    advice = mend(told(MADDER, target), LOT, plan)[-1]
    assert advice.act == OVERDYE and "few grams first" in advice.says
    assert advice.costs[0].mass_g == pytest.approx(4.8, rel=0.01)  # half of 4 % of 240 g
    assert advice.costs[0].money == pytest.approx(1.44, rel=0.01)


def test_an_overdye_out_of_reach_is_said_to_be_and_costs_nothing() -> None:
    target = Lab(70.0, 20.0, 20.0)
    plan = plan_overdye(read(UNDYED), read(MADDER), read(INDIGO), aim(target))
    advice = next(one for one in mend(told(MADDER, target), LOT, plan) if one.act == OVERDYE)
    assert "Unreachable" in advice.says and not advice.costs


def test_an_overdye_that_gains_little_is_not_sold() -> None:
    skein = Lab(60.0, 30.0, 20.0)
    over = overdye_line(UNDYED, skein, INDIGO, D65_2)(0.05)
    target = over._replace(lightness=over.lightness + 7.0)
    found = difference(read(skein, 4.0), aim(target, plus_minus=4.0), read(UNDYED))
    plan = plan_overdye(read(UNDYED), read(skein, 4.0), read(INDIGO, 4.0), aim(target, plus_minus=4.0))
    assert plan.reachable and plan.expected < found.verdict.de00
    advice = mend(found, LOT, plan)[-1]
    assert advice.act == OVERDYE and "not expected" in advice.says and not advice.costs


@pytest.mark.parametrize("lot", [Lot(0.0, Dose("madder", 50.0)), Lot(240.0, Dose("madder", 0.0))])
def test_a_lot_without_fibre_or_dose_is_refused(lot: Lot) -> None:
    with pytest.raises(OutOfRange) as refused:
        mend(told(weaker(0.5)), lot)
    assert is_one_sentence(str(refused.value))
