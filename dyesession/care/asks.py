"""The few hazards that ask for a reading or a pot's letter before the act. Everything else only reminds.

Which hazards, and how many a day, are our own choice: no study of dyers was found.
"""

from collections.abc import Callable
from dataclasses import dataclass

from dyesession.care.foam import foam_rise
from dyesession.care.mixing import about_to_meet
from dyesession.care.scalds import ONE_SECOND_FROM_C
from dyesession.care.scene import Scene, amounts, litres, scene_of, tidy, with_trait
from dyesession.care.situation import Situation

ASKS_PER_DAY = 4
ASKS_PER_DAY_SOURCE = "own choice, no source: asked more often, people answer without looking"

WORST_RANK = 1
"""The rank of a hazard that is asked about however many questions the day has had."""

READABLE_C = (0.0, 105.0)
"""Temperatures a kitchen thermometer can read in a bath, °C: own choice, from ice to just over the boil."""

_HANDLING = {"strains": "strain", "pours": "pour", "moves": "move", "lifts": "lift from"}


@dataclass(frozen=True, slots=True)
class AskNeed:
    """A question to be answered before the act.

    `kind` is "temperature" (answer: °C within `expects`, a (low, high) pair) or "pot" (answer: one of
    the letters in `expects`). `rank` 1 is the worst hazard.
    """

    kind: str
    question: str
    why: str
    expects: tuple[float, float] | tuple[str, ...]
    rank: int
    hazard: str


def ask_before(situation: Situation) -> AskNeed | None:
    """The worst hazard of this step that needs an answer first, or None."""
    scene = scene_of(situation)
    return next((need for ask in _ASKS if (need := ask(scene)) is not None), None)


def _never_mix(scene: Scene) -> AskNeed | None:
    """Two things that this step would bring together, and that must not meet."""
    met = about_to_meet(scene)
    if met is None:
        return None
    return AskNeed(
        kind="pot",
        question=f"This must not be: {met.hazard}. Which pot is it really for?{_at(scene)}",
        why=met.text,
        expects=(scene.at.into if scene.target else scene.pot,),
        rank=WORST_RANK,
        hazard=met.hazard,
    )


def _hot_liquor(scene: Scene) -> AskNeed | None:
    """A bath last known or planned at 60 °C or more, about to be strained, poured, moved or lifted from."""
    verb = next((verb for act, verb in _HANDLING.items() if scene.does(act)), None)
    temperature_c = scene.at.temperature_c
    if verb is None or temperature_c is None or temperature_c < ONE_SECOND_FROM_C:
        return None
    volume = "" if scene.at.volume_l is None else f", {litres(scene.at.volume_l)}"
    known = f"{tidy(scene.at.temperature_how)} {scene.heat}"
    return AskNeed(
        kind="temperature",
        question=f"How hot is {scene.pot}{volume}, before you {verb} it? ({known})",
        why=f"At {scene.heat} one second burns.",
        expects=READABLE_C,
        rank=2,
        hazard="scald",
    )


def _foam(scene: Scene) -> AskNeed | None:
    """A carbonate and an acid whose gas could go over the rim."""
    rise = foam_rise(scene)
    if rise is None or not rise.over_rim:
        return None
    gas = "more gas than anyone knows" if rise.gas_l is None else f"up to {litres(rise.gas_l)} of gas"
    room = "the room above it is not known" if rise.free_l is None else f"only {litres(rise.free_l)} is free"
    return AskNeed(
        kind="pot",
        question=f"{amounts(scene.adding or rise.carbonates)}, in portions: into which pot?{_at(scene)}",
        why=f"{rise.acid.word.capitalize()} makes {gas} from it, and {room}.",
        expects=(rise.letter,),
        rank=3,
        hazard="foam over the rim",
    )


def _own_iron_pot(scene: Scene) -> AskNeed | None:
    """Iron about to go into a pot: the right one?"""
    iron = with_trait(scene.coming, "iron")
    if not iron or not scene.does("adds", "pours"):
        return None
    return AskNeed(
        kind="pot",
        question=f"{amounts(iron)}: into which pot?{_at(scene)}",
        why="Iron spoils every pot it was not meant for.",
        expects=(scene.pot,),
        rank=4,
        hazard="iron astray",
    )


def _at(scene: Scene) -> str:
    return f" (bath {scene.heat})" if scene.heat else ""


_ASKS: tuple[Callable[[Scene], AskNeed | None], ...] = (_never_mix, _hot_liquor, _foam, _own_iron_pot)
