"""Liquor in all worlds at once: what `dyeing.bath` does to one bath, done to every world's, conserving each.

Knows nothing of vessels or bands. The tests hold it against `dyeing.bath` world by world.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from dyesession.account.worlds import ZEROS, Vector, minus, plus, scaled


@dataclass(frozen=True)
class Pool:
    """A volume of liquor in litres and the grams of each thing in it, in every world."""

    volume_l: Vector = ZEROS
    held_g: Mapping[str, Vector] = field(default_factory=dict)

    def grams(self, name: str) -> Vector:
        """Grams of one thing, nothing when it holds none."""
        return self.held_g.get(name, ZEROS)

    def with_grams(self, name: str, grams: Vector) -> "Pool":
        """A copy with another amount of one thing."""
        return Pool(self.volume_l, {**self.held_g, name: grams})

    def with_volume(self, volume_l: Vector) -> "Pool":
        """A copy of another volume, all that is dissolved in it still there."""
        return Pool(volume_l, self.held_g)


EMPTY = Pool()


def mixed(one: Pool, other: Pool) -> Pool:
    """Two liquors together."""
    if other is EMPTY:
        return one
    if one is EMPTY:
        return other
    held = dict(one.held_g)
    for name, grams in other.held_g.items():
        held[name] = plus(held.get(name, ZEROS), grams)
    return Pool(plus(one.volume_l, other.volume_l), held)


def parted(pool: Pool, volume_l: Vector) -> tuple[Pool, Pool]:
    """What is left and what is out after pouring a volume of each world's liquor, at most all of it."""
    out_l = tuple(map(min, volume_l, pool.volume_l))
    shares = tuple([v / most if most > 0.0 else 0.0 for v, most in zip(out_l, pool.volume_l, strict=True)])
    out = {name: scaled(grams, shares) for name, grams in pool.held_g.items()}
    left = {name: minus(grams, out[name]) for name, grams in pool.held_g.items()}
    return Pool(minus(pool.volume_l, out_l), left), Pool(out_l, out)
