"""Who drew from which kept bath, over many days: what is left of it, and who drew more than there was.

Pure. Draws are taken in the order of their times; a label alone means the bath kept last under it that still
stands.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from dyesession.shelf.model import Draw, Told
from dyesession.shelf.tracing import Drew, PutBy, Traced
from dyesession.units import show_volume

SLACK_L, SLACK_SHARE = 0.1, 0.05  # a jug's mark and an eye; our own choice, no source


@dataclass
class Standing:
    """A bath that was put by, and what the days after took from it. `left_l` is None where nobody knows."""

    keeper: Traced
    put_by: PutBy
    left_l: float | None
    whole_l: float | None
    draws: list[Draw]
    gone: bool = False

    @property
    def left_share(self) -> float:
        """Which part of what was put by still stands, 0 to 1; 1 where the litres are not known."""
        if self.gone:
            return 0.0
        return 1.0 if not self.whole_l or self.left_l is None else self.left_l / self.whole_l


def standing_baths(days: Sequence[Traced]) -> tuple[list[Standing], list[Told]]:
    """Every bath that stood at its own day's end, after all draws; and what two days disagree about."""
    found = [_as_kept(day, one) for day in days for one in day.put_by if one.bath is not None]
    told: list[Told] = []
    for drew in sorted((one for day in days for one in day.drew), key=lambda one: (one.at, one.session)):
        bath = _meant(found, drew)
        if bath is None:
            told.append(_unknown(drew))
        elif (trouble := _take(bath, drew)) is not None:
            told.append(trouble)
    return found, told


def source_of(baths: Iterable[Standing], drew: Drew) -> Standing | None:
    """The bath a draw was from."""
    return next((one for one in baths if any(_same(draw, drew) for draw in one.draws)), None)


def _same(draw: Draw, drew: Drew) -> bool:
    return (draw.session, draw.at, draw.volume_l) == (drew.session, drew.at, drew.volume_l)


def _as_kept(day: Traced, put_by: PutBy) -> Standing:
    litres = put_by.bath.bath.volume_l if put_by.bath is not None else None
    return Standing(day, put_by, litres, litres, [])


def _meant(baths: Sequence[Standing], drew: Drew) -> Standing | None:
    same = [one for one in baths if one.put_by.label == drew.label and one.put_by.at <= drew.at]
    if drew.keeper:
        return next((one for one in same if one.keeper.day.name == drew.keeper), None)
    by_time = sorted(same, key=lambda one: one.put_by.at, reverse=True)
    return next((one for one in by_time if not one.gone), next(iter(by_time), None))


def _take(bath: Standing, drew: Drew) -> Told | None:
    """Take a draw off; a sentence for everybody who drew where there was not so much left."""
    there_l, was_gone = bath.left_l, bath.gone
    bath.draws.append(Draw(drew.session, drew.at, drew.volume_l, drew.n))
    wanted_l = drew.volume_l
    if wanted_l is None or (there_l is not None and wanted_l >= there_l):
        bath.gone, bath.left_l = True, 0.0
    elif there_l is not None:
        bath.left_l = there_l - wanted_l
    slack_l = max(SLACK_L, SLACK_SHARE * (bath.whole_l or 0.0))
    if was_gone or (wanted_l is not None and there_l is not None and wanted_l > there_l + slack_l):
        return Told(bath.put_by.label, _everybody(bath), _overdrawn(bath))
    return None


def _everybody(bath: Standing) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*(one.session for one in bath.draws), bath.keeper.day.name)))


def _overdrawn(bath: Standing) -> str:
    drawn = " and ".join(f"{_litres(one)} by {one.session}" for one in bath.draws)
    there = f"{show_volume(bath.whole_l)} stood there" if bath.whole_l else "it stood there once"
    return (
        f"“{bath.put_by.label}” of {bath.keeper.day.name} was drawn from more than it held: {drawn}, but"
        f" {there}. One of the entries is wrong: put it right with a correction"
    )


def _litres(draw: Draw) -> str:
    return "all" if draw.volume_l is None else show_volume(draw.volume_l)


def _unknown(drew: Drew) -> Told:
    of = f" of {drew.keeper}" if drew.keeper else ""
    return Told(
        drew.label,
        (drew.session,),
        f"{drew.session} drew from “{drew.label}”{of}, which no log here put by: its log may not be copied"
        " here yet",
    )
