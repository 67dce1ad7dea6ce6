import pytest

from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import (
    EXHAUSTION,
    POTENCY,
    STANDARD_LIQUOR_RATIO,
    UPTAKE_RATE,
    Prior,
    evaporation_prior,
    exhaustion_prior,
    fibre_retention_prior,
    kept_share_prior,
    partition_prior,
    points,
    potency_prior,
    spent_retention_prior,
)

EVERY_PRIOR = [
    *EXHAUSTION.values(),
    *POTENCY.values(),
    UPTAKE_RATE,
    potency_prior(),
    kept_share_prior(),
    partition_prior("wool"),
    partition_prior("silk", "madder"),
    *(fibre_retention_prior("wool", how) for how in ("lifted", "squeezed", "spun")),
    *(fibre_retention_prior("linen", how) for how in ("lifted", "squeezed", "spun")),
    *(spent_retention_prior(how) for how in ("drained", "pressed", "not drained")),
    *(evaporation_prior(c, lid) for c in (50, 95) for lid in ("off", "ajar", "on")),
]


@pytest.mark.parametrize("prior", EVERY_PRIOR, ids=lambda prior: prior.name)
def test_every_guess_is_a_band_that_can_be_drawn_and_says_where_it_comes_from(prior: Prior) -> None:
    assert prior.low < prior.centre < prior.high
    drawn = points(prior, 21)
    assert len(drawn) == 21
    assert drawn[10] == pytest.approx(prior.centre)
    assert drawn[0] < prior.low < drawn[2] and drawn[18] < prior.high < drawn[20]
    assert any(word in prior.source for word in ("judgement", "no source", "read", "derived", "analogy"))


@pytest.mark.parametrize(
    ("fibre", "dyestuff", "band"),
    [
        ("wool", "", (0.65, 0.25, 0.95)),
        ("wool", "weld", (0.65, 0.25, 0.95)),
        ("wool", "Madder", (0.85, 0.60, 0.95)),
        ("wool", "madder root", (0.85, 0.60, 0.95)),
        ("cotton", "madder root", (0.35, 0.10, 0.70)),
    ],
)
def test_exhaustion_is_looked_up_by_dyestuff_and_fibre(
    fibre: str, dyestuff: str, band: tuple[float, float, float]
) -> None:
    prior = exhaustion_prior(fibre, dyestuff)
    assert (prior.centre, prior.low, prior.high) == band


@pytest.mark.parametrize("dyestuff", ["", "madder root"])
def test_silk_is_guessed_a_little_below_wool(dyestuff: str) -> None:
    less = exhaustion_prior("wool", dyestuff).centre - exhaustion_prior("silk", dyestuff).centre
    assert 0.05 <= less <= 0.10


@pytest.mark.parametrize("fibre", ["wool", "silk", "cotton"])
def test_the_partition_guess_is_the_share_guess_at_thirty_to_one(fibre: str) -> None:
    share, partition = exhaustion_prior(fibre), partition_prior(fibre)
    for s, k in ((share.centre, partition.centre), (share.low, partition.low), (share.high, partition.high)):
        assert exhausted_share(k, STANDARD_LIQUOR_RATIO) == pytest.approx(s)


def test_a_kept_share_of_a_third_lets_a_fourth_boil_still_bring_something() -> None:
    prior = kept_share_prior("cochineal")
    assert (prior.centre, prior.low, prior.high, prior.scale) == (0.35, 0.15, 0.60, "logit")


def test_the_steam_guess_widens_with_heat_and_shrinks_under_a_lid() -> None:
    cool, hot = evaporation_prior(60), evaporation_prior(90)
    assert hot.high / hot.low > cool.high / cool.low
    assert evaporation_prior(60, "on").centre < evaporation_prior(60, "ajar").centre < cool.centre == 1


def test_onion_colours_differ_fourfold_and_an_unknown_lot_by_a_half() -> None:
    onion = potency_prior("onion skins")
    assert onion.high / onion.low == pytest.approx(4)
    assert potency_prior("brambles") == potency_prior()
    assert potency_prior().high / potency_prior().low < onion.high / onion.low
