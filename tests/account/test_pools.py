"""Liquor in all worlds does what `dyeing.bath` does to one bath, world by world."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.account.pools import EMPTY, Pool, mixed, parted
from dyesession.account.worlds import WORLDS
from dyesession.dyeing import bath

few = st.integers(0, 5)


def spread(centre: float, step: float) -> tuple[float, ...]:
    return tuple(centre + step * (i % 17) for i in range(WORLDS))


def in_world(pool: Pool, i: int) -> bath.Liquor:
    return bath.Liquor(pool.volume_l[i], {name: grams[i] for name, grams in pool.held_g.items()})


@st.composite
def pools(draw: st.DrawFn) -> Pool:
    names = draw(st.lists(st.sampled_from(["madder", "weld", "alum"]), unique=True))
    amounts = st.builds(spread, st.floats(0.1, 40.0), st.floats(0.0, 0.5))
    return Pool(draw(amounts), {name: draw(amounts) for name in names})


def same(pool: Pool, expected: list[bath.Liquor]) -> None:
    for i, one in enumerate(expected):
        assert pool.volume_l[i] == pytest.approx(one.volume_l, abs=1e-12)
        for name, grams in one.held_g.items():
            assert pool.grams(name)[i] == pytest.approx(grams, abs=1e-12)


@given(pools(), pools())
def test_mixing_is_that_of_one_bath(one: Pool, other: Pool) -> None:
    expected = [bath.mix(in_world(one, i), in_world(other, i)) for i in range(WORLDS)]
    same(mixed(one, other), expected)


@given(pools(), st.floats(0.0, 1.0))
def test_pouring_is_that_of_one_bath(pool: Pool, share: float) -> None:
    volume_l = tuple(share * v for v in pool.volume_l)
    left, out = parted(pool, volume_l)
    expected = [bath.pour(in_world(pool, i), volume_l[i]) for i in range(WORLDS)]
    same(left, [one.left for one in expected])
    same(out, [one.out for one in expected])


def test_no_more_is_poured_than_there_is() -> None:
    left, out = parted(Pool(spread(1.0, 0.1), {"madder": spread(10.0, 0.0)}), spread(5.0, 0.0))
    assert left.volume_l == spread(0.0, 0.0)
    assert out.grams("madder") == spread(10.0, 0.0)


def test_nothing_mixed_in_changes_nothing() -> None:
    pool = Pool(spread(1.0, 0.1))
    assert mixed(pool, EMPTY) is pool
    assert mixed(EMPTY, pool) is pool
