"""Which of the kitchen's pots becomes which vessel of the recipe.

Knows nothing of doses. A pot serves two vessels only when all that happens in one is over before the other
begins. Iron has a pot of its own: Mairet, A Book on Vegetable Dyes, 1916, ch. III. Iron, copper and bare
aluminium shift shades: common practice, no source.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dyesession.kitchen.model import Pot
from dyesession.plan.model import PlannedStep

FILL_SHARE = 2 / 3  # of the brim volume, so that fibre can be moved: common practice, no source
SHADE_SHIFTING = ("iron", "copper", "brass", "aluminium", "aluminum")


@dataclass(frozen=True)
class Wanted:
    """A vessel the recipe wants: the most water it holds, whether it is heated, whether iron goes into it."""

    vessel: str
    water_l: float
    heated: bool
    iron: bool


@dataclass(frozen=True)
class Assigned:
    """A kitchen pot for every vessel that could have one; None for the rest."""

    pots: Mapping[str, Pot | None]
    warnings: tuple[str, ...]


def fill_l(pot: Pot) -> float:
    """Most liquor a pot should hold, litres."""
    return pot.volume_l * FILL_SHARE


def shifts_shades(pot: Pot) -> bool:
    """Say whether the pot's bare metal would change the colour."""
    words = pot.material.casefold().replace("-", " ").split()
    coated = "enamelled" in words or "enameled" in words or "enamel" in words or "stainless" in words
    return not coated and any(metal in words for metal in SHADE_SHIFTING)


def assign(wants: Sequence[Wanted], steps: Sequence[PlannedStep], pots: Sequence[Pot]) -> Assigned:
    """Give each vessel the smallest free pot that holds its bath, or the largest free one when none does.

    With no pots in the kitchen nothing is assigned and nothing is warned about.
    """
    taken: dict[str, Pot | None] = {one.vessel: None for one in wants}
    apart = _apart(steps)
    for want in sorted(wants, key=lambda one: (not one.heated, not _by_name(one, pots), -one.water_l)):
        free = [pot for pot in pots if _is_free(pot, want, wants, taken, apart)]
        taken[want.vessel] = min(free, key=lambda pot: _preference(pot, want), default=None)
    return Assigned(taken, _warnings(wants, taken, pots))


def _by_name(want: Wanted, pots: Sequence[Pot]) -> bool:
    return any(pot.name.casefold() == want.vessel.casefold() for pot in pots)


def _preference(pot: Pot, want: Wanted) -> tuple[bool, bool, bool, float]:
    """Order pots from best to worst: of that very name, of harmless metal, big enough, then small."""
    holds = fill_l(pot) >= want.water_l
    named = pot.name.casefold() == want.vessel.casefold()
    return (
        not named,
        shifts_shades(pot) and not want.iron,
        not holds,
        pot.volume_l if holds else -pot.volume_l,
    )


def _is_free(
    pot: Pot,
    want: Wanted,
    wants: Sequence[Wanted],
    taken: Mapping[str, Pot | None],
    apart: Mapping[frozenset[str], bool],
) -> bool:
    for other in wants:
        if taken[other.vessel] is not pot or other.vessel == want.vessel:
            continue
        if want.iron or other.iron or not apart.get(frozenset((want.vessel, other.vessel)), False):
            return False
    return "iron" not in pot.name.casefold() or want.iron or shifts_shades(pot)


def earlier(steps: Sequence[PlannedStep]) -> dict[str, frozenset[str]]:
    """Return for each step the names of all that must be over before it begins; steps in order."""
    known: dict[str, frozenset[str]] = {}
    for step in steps:
        known[step.name] = frozenset(step.after).union(*(known[name] for name in step.after))
    return known


def _apart(steps: Sequence[PlannedStep]) -> dict[frozenset[str], bool]:
    """Say for each pair of vessels whether one is done with before the other is wanted."""
    before = earlier(steps)
    users: dict[str, list[str]] = {}
    for step in steps:
        for vessel in (step.vessel, step.into):
            if vessel is not None:
                users.setdefault(vessel, []).append(step.name)
    return {
        frozenset((one, other)): _all_before(users[one], users[other], before)
        or _all_before(users[other], users[one], before)
        for one in users
        for other in users
        if one < other
    }


def _all_before(first: Sequence[str], then: Sequence[str], before: Mapping[str, frozenset[str]]) -> bool:
    return all(a in before[b] for a in first for b in then)


def _warnings(
    wants: Sequence[Wanted], taken: Mapping[str, Pot | None], pots: Sequence[Pot]
) -> tuple[str, ...]:
    if not pots:
        return ()
    said = [_missing(want, pots) for want in wants if want.heated and taken[want.vessel] is None]
    for want in wants:
        pot = taken[want.vessel]
        if pot is not None and shifts_shades(pot) and not want.iron:
            said.append(
                f"Your {pot.name} is bare {pot.material}, which shifts shades: a stainless or enamelled pot"
                f" serves better as the {want.vessel}."
            )
    return tuple(said)


def _missing(want: Wanted, pots: Sequence[Pot]) -> str:
    if want.iron:
        return (
            f"No pot is left over for the {want.vessel}: iron wants a pot of its own,"
            f" of at least {want.water_l / FILL_SHARE:.1f} L, that nothing else is dyed in."
        )
    listed = "one pot, which is" if len(pots) == 1 else f"{len(pots)} pots, all"
    return (
        f"Your kitchen lists {listed} in use when the {want.vessel} is wanted:"
        f" find one more of at least {want.water_l / FILL_SHARE:.1f} L, or let a bath wait in a bucket."
    )
