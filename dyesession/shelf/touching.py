"""What to bear in mind before two kept baths are poured together, or one is thrown away. Rules: `care`."""

from dyesession.care import Content, Household, Reminder, Situation, reminders
from dyesession.shelf.model import KeptBath


def pooling(into: KeptBath, poured: KeptBath, household: Household | None = None) -> tuple[Reminder, ...]:
    """What care says of pouring one kept bath into another: never-mix, iron, drift; the worst first."""
    return reminders(
        Situation(
            step="pool",
            actions=("opens", "pours"),
            vessel=into.label,
            letter=into.label,
            contents=into.contents,
            pouring=poured.contents,
            pouring_from=poured.label,
            volume_l=_litres(into),
            household=household or Household(),
        )
    )


def opening(
    bath: KeptBath, household: Household | None = None, adding: tuple[Content, ...] = ()
) -> tuple[Reminder, ...]:
    """What care says of opening a kept bath, and of stirring something into it; the worst first."""
    return reminders(
        Situation(
            step="shelf",
            actions=("opens", "weighs powder", "adds") if adding else ("opens",),
            vessel=bath.label,
            letter=bath.label,
            contents=bath.contents,
            adding=adding,
            pouring=() if adding else bath.contents,
            pouring_from=bath.label,
            volume_l=_litres(bath),
            household=household or Household(),
        )
    )


def discarding(bath: KeptBath, household: Household | None = None) -> tuple[Reminder, ...]:
    """What care says of throwing a kept bath away; the worst first."""
    return reminders(
        Situation(
            step="discard",
            actions=("discards",),
            vessel=bath.label,
            letter=bath.label,
            contents=bath.contents,
            volume_l=_litres(bath),
            household=household or Household(),
        )
    )


def _litres(bath: KeptBath) -> float | None:
    return bath.volume_l.mean if bath.volume_l is not None else None
