"""Readings taken into what Colour keeps, and out of it again. Pure: a state in, a state out."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from dyesession.colour.photo import LIGHTS
from dyesession.colour.photo_frame import CARD, PARTS, TARGET
from dyesession.colour.readings import check_dry
from dyesession.colour.targets import target_of
from dyesession.ui.colour_state import CARDS

if TYPE_CHECKING:
    from dyesession.colour.readings import Reading
    from dyesession.daybook.shade_card import Shade
    from dyesession.ui.colour_state import ColourState


def with_target(state: ColourState, readings: tuple[Reading, ...]) -> ColourState:
    """More readings of what is wanted. Raises what does not go together."""
    target = (*state.target, *readings)
    return replace(state, target=target, aim=target_of(target))


def with_sample(state: ColourState, readings: tuple[Reading, ...], shade: Shade | None) -> ColourState:
    """The skein's reading, the middle of several; its undyed fibre where a log has it. Raises for a wet one."""
    middle = target_of(readings).middle if len(readings) > 1 else readings[0]
    check_dry(middle)
    undyed = shade.undyed if shade is not None and shade.undyed is not None else state.undyed
    return replace(state, sample=middle, shade=shade, undyed=undyed)


def with_undyed(state: ColourState, readings: tuple[Reading, ...]) -> ColourState:
    """The fibre before it met a dye."""
    return replace(state, undyed=target_of(readings).middle)


def without(state: ColourState, marked: str) -> ColourState | None:
    """The marked reading taken away; None where the mark stands on none."""
    kind, _, rest = marked.partition(":")
    if kind == "target" and rest.isdigit():
        left = tuple(one for at, one in enumerate(state.target) if at != int(rest))
        return replace(state, target=left, aim=target_of(left) if left else None)
    if kind == "sample":
        return replace(state, sample=None, shade=None)
    if kind == "undyed":
        return replace(state, undyed=None)
    return None


def next_card(state: ColourState) -> ColourState:
    """The next card that may lie in a photo, and round again."""
    cards = tuple(CARDS)
    return replace(state, card=cards[(cards.index(state.card) + 1) % len(cards)])


def next_light(state: ColourState) -> ColourState:
    """The next light a photo may be taken in, and round again."""
    lights = tuple(LIGHTS)
    return replace(state, light=lights[(lights.index(state.light) + 1) % len(lights)])


def parts_to_point_at(state: ColourState) -> tuple[str, ...]:
    """What is to be pointed at in a photo: no card where none lies in it, no target where one is known."""
    return tuple(
        one for one in PARTS if not ((one == CARD and not state.card) or (one == TARGET and state.target))
    )
