import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.bath import (
    Liquor,
    add,
    carry_out,
    evaporate,
    mix,
    pour,
    strength_g_l,
    take_up,
    top_up,
    top_up_to,
)
from dyesession.dyeing.limits import OutOfRange

TIGHT = 1e-12
volumes = st.floats(0.05, 30)
amounts = st.dictionaries(st.sampled_from(["madder", "weld", "alum"]), st.floats(0, 500), max_size=3)
liquors = st.builds(Liquor, volumes, amounts)
shares = st.floats(0, 1)


def held(*liquors: Liquor) -> dict[str, float]:
    names = {name for liquor in liquors for name in liquor.held_g}
    return {name: math.fsum(liquor.held_g.get(name, 0) for liquor in liquors) for name in names}


def same(a: dict[str, float], b: dict[str, float]) -> bool:
    return a.keys() == b.keys() and all(a[n] == pytest.approx(b[n], rel=TIGHT, abs=TIGHT) for n in a)


@given(liquors, shares)
def test_pouring_parts_volume_and_contents_without_loss(liquor: Liquor, share: float) -> None:
    parted = pour(liquor, share * liquor.volume_l)
    assert parted.left.volume_l + parted.out.volume_l == pytest.approx(liquor.volume_l, rel=TIGHT)
    assert same(held(parted.left, parted.out), held(liquor))


@given(liquors, st.floats(0.01, 0.99))
def test_pouring_does_not_change_the_strength(liquor: Liquor, share: float) -> None:
    parted = pour(liquor, share * liquor.volume_l)
    for name in liquor.held_g:
        assert strength_g_l(parted.left, name) == pytest.approx(
            strength_g_l(liquor, name), rel=1e-9, abs=1e-12
        )
        assert strength_g_l(parted.out, name) == pytest.approx(
            strength_g_l(liquor, name), rel=1e-9, abs=1e-12
        )


@given(st.lists(liquors, min_size=1, max_size=5))
def test_mixing_adds_up(pots: list[Liquor]) -> None:
    mixed = mix(*pots)
    assert mixed.volume_l == pytest.approx(math.fsum(pot.volume_l for pot in pots), rel=TIGHT)
    assert same(held(mixed), held(*pots))


@given(liquors, shares)
def test_pouring_off_and_back_restores_the_bath(liquor: Liquor, share: float) -> None:
    parted = pour(liquor, share * liquor.volume_l)
    back = mix(parted.left, parted.out)
    assert back.volume_l == pytest.approx(liquor.volume_l, rel=TIGHT)
    assert same(held(back), held(liquor))


@given(liquors, st.floats(0, 0.99))
def test_steam_takes_water_only_and_topping_up_undoes_it(liquor: Liquor, share: float) -> None:
    boiled = evaporate(liquor, share * liquor.volume_l)
    assert held(boiled) == held(liquor)
    assert top_up_to(boiled, liquor.volume_l) == liquor
    assert top_up(boiled, share * liquor.volume_l).volume_l == pytest.approx(liquor.volume_l, rel=TIGHT)


@given(liquors, st.floats(0, 2000), st.floats(0, 6))
def test_lifted_fibre_carries_liquor_at_the_baths_strength(
    liquor: Liquor, fibre: float, ratio: float
) -> None:
    parted = carry_out(liquor, fibre, ratio)
    assert parted.out.volume_l == pytest.approx(min(fibre * ratio / 1000, liquor.volume_l), rel=TIGHT)
    assert same(held(parted.left, parted.out), held(liquor))


@given(liquors, shares)
def test_what_the_fibre_takes_leaves_the_bath(liquor: Liquor, share: float) -> None:
    left, taken = take_up(liquor, {"madder": share})
    assert left.volume_l == liquor.volume_l
    assert same(held(left, Liquor(0, taken)), held(liquor))
    assert taken.get("weld", 0) == 0


Move = Callable[[Liquor], tuple[Liquor, Liquor]]
moves = st.lists(
    st.one_of(
        st.tuples(st.just("pour"), shares),
        st.tuples(st.just("evaporate"), st.floats(0, 0.9)),
        st.tuples(st.just("top up"), shares),
        st.tuples(st.just("carry out"), shares),
        st.tuples(st.just("take up"), shares),
        st.tuples(st.just("add"), shares),
    ),
    max_size=25,
)


@given(liquors, moves)
def test_any_history_of_a_bath_balances(start: Liquor, history: list[tuple[str, float]]) -> None:
    bath, put_in, water_in = start, 0.0, 0.0
    gone: list[Liquor] = []
    for move, share in history:
        volume = share * bath.volume_l
        if move == "pour":
            parted = pour(bath, volume)
            bath, gone = parted.left, [*gone, parted.out]
        elif move == "evaporate" and bath.volume_l > 0:
            bath, gone = evaporate(bath, volume), [*gone, Liquor(volume, {})]
        elif move == "top up":
            bath, water_in = top_up(bath, share), water_in + share
        elif move == "carry out":
            parted = carry_out(bath, 300 * share, 4)
            bath, gone = parted.left, [*gone, parted.out]
        elif move == "take up":
            bath, taken = take_up(bath, {"madder": share, "weld": share / 2})
            gone = [*gone, Liquor(0, taken)]
        elif move == "add":
            bath, put_in = add(bath, "madder", 50 * share), put_in + 50 * share
    total = held(bath, *gone)
    for name in {*start.held_g, *total}:
        expected = start.held_g.get(name, 0) + (put_in if name == "madder" else 0)
        assert total.get(name, 0) == pytest.approx(expected, rel=TIGHT, abs=TIGHT)
        assert bath.held_g.get(name, 0) >= 0
    water = bath.volume_l + math.fsum(part.volume_l for part in gone)
    assert water == pytest.approx(start.volume_l + water_in, rel=TIGHT)


def test_topping_up_halves_the_strength_but_not_the_colour() -> None:
    bath = Liquor(2, {"madder": 30})
    full = top_up(bath, 2)
    assert strength_g_l(full, "madder") == pytest.approx(strength_g_l(bath, "madder") / 2)
    assert full.held_g == bath.held_g


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        (lambda bath: pour(bath, 2.5), "cannot be poured from 2 L"),
        (lambda bath: pour(bath, -1), "0 or more"),
        (lambda bath: evaporate(bath, 2), "some liquor must be left"),
        (lambda bath: top_up_to(bath, 1.5), "above the mark"),
        (lambda bath: take_up(bath, {"madder": 1.2}), "between 0 and 1"),
        (lambda bath: add(bath, "alum", -3), "mass of alum"),
        (lambda _: strength_g_l(Liquor(0, {}), "madder"), "volume is 0"),
    ],
)
def test_what_cannot_happen_to_a_bath_is_refused_in_words(
    wrong: Callable[[Liquor], object], words: str
) -> None:
    with pytest.raises(OutOfRange, match=words):
        wrong(Liquor(2, {"madder": 10}))
