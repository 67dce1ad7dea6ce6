"""A kept bath as its label asks for it. Pure; the label itself is made by `care.labels`.

Traces that wet fibre carried along stand under what is left in it; the worst in it is of what was put in.
"""

from dataclasses import replace

from dyesession.account.say import rounded_band
from dyesession.care import Household, Stored
from dyesession.shelf.model import KeptBath
from dyesession.shelf.standing import place_of


def stored_of(bath: KeptBath, poison_centre: str = "", household: Household | None = None) -> Stored:
    """What `care.label_of` needs to know of a bath that was put by."""
    left = "; ".join(
        f"{rounded_band(one.grams, 'g')} {one.ingredient}" for one in bath.worth_telling if one.grams is not None
    )
    return Stored(
        what=bath.label,
        made=bath.began_on or bath.kept_at.date(),
        place=place_of(bath.place),
        contents=replace(bath, inside=tuple(one for one in bath.inside if not one.carried)).contents,
        history=" and ".join(bath.went_through),
        left=left,
        volume_l=bath.volume_l.mean if bath.volume_l is not None else None,
        ph=bath.ph,
        ph_on=bath.ph_on,
        number=f"{bath.session}, {bath.label}",
        poison_centre=poison_centre,
        household=household or Household(),
    )
