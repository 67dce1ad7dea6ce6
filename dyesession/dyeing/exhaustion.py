"""How much of a bath's colour the fibre takes, in one dyeing or several in a row.

Knows nothing of which dye or fibre it is. K = fibre over bath at rest and the affinity R T ln K:
Broadbent, Basic Principles of Textile Coloration, ch. 11, p. 203, eq. 9 (page read; author and year from
memory). E = K/(K + L) and what follows from it is derived by mass balance. It holds for pale to medium
depth, one colouring matter, at rest; the best model reported for cochineal on wool at pH 6 (Mirnezhad et
al. 2017, abstract read).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.dyeing.limits import OutOfRange, a_share, above_zero, between_shares, zero_or_more

GAS_CONSTANT = 8.314  # J/mol/K; Broadbent, as above
ML_PER_L = 1000.0
J_PER_KJ = 1000.0


def exhausted_share(partition_l_per_kg: float, liquor_ratio: float) -> float:
    """Share of the bath's colour on the fibre at rest, E = K/(K + L).

    Liquor ratio in litres per kilogram.
    """
    zero_or_more("partition", partition_l_per_kg, "120 L/kg")
    above_zero("liquor ratio", liquor_ratio, "30 L/kg")
    return partition_l_per_kg / (partition_l_per_kg + liquor_ratio)


def partition_from_share(exhausted: float, liquor_ratio: float) -> float:
    """Partition in L/kg from the share taken, the inverse of `exhausted_share`; share from 0 to below 1."""
    a_share("share taken", exhausted, "0.65")
    above_zero("liquor ratio", liquor_ratio, "30 L/kg")
    if exhausted == 1.0:
        raise OutOfRange(
            "A share taken of 1 leaves no partition to reckon; expected below 1, for example 0.95."
        )
    return liquor_ratio * exhausted / (1.0 - exhausted)


@dataclass(frozen=True)
class Partition:
    """An apparent partition read from the dyer's own bath, and its relative error (one standard deviation).

    It belongs to that fibre, mordant, time, temperature and pH, and to no other.
    """

    l_per_kg: float
    relative_error: float


def share_left_in_bath(before: float, after: float, volume_before_l: float, volume_after_l: float) -> float:
    """Share of the colour still in the bath, from its strength before and after on one linear scale.

    The volumes are those at each reading; evaporation between them is so allowed for, carried-out liquor
    is not. Raises `OutOfRange` when there is more colour after than before.
    """
    above_zero("strength before", before, "1.0")
    zero_or_more("strength after", after, "0.2")
    above_zero("volume before", volume_before_l, "4 L")
    above_zero("volume after", volume_after_l, "3.8 L")
    share = after * volume_after_l / (before * volume_before_l)
    if share > 1.0:
        raise OutOfRange(
            f"The bath holds {share:g} times the colour it held before dyeing;"
            " expected a share of 1 or less, for example 0.2."
        )
    return share


def partition_from_share_left(share_left: float, liquor_ratio: float, error: float) -> Partition:
    """Partition from the share b left in the bath: K = L(1 - b)/b, dK/K = db/(b(1 - b)) (derived)."""
    between_shares("share left in the bath", share_left, "0.2")
    zero_or_more("error of the share left", error, "0.05")
    partition = partition_from_share(1.0 - share_left, liquor_ratio)
    return Partition(partition, error / (share_left * (1.0 - share_left)))


def affinity_kj_mol(partition_l_per_kg: float, temperature_k: float) -> float:
    """Standard affinity R T ln K in kJ/mol, at a temperature in kelvin."""
    above_zero("partition", partition_l_per_kg, "873 L/kg")
    above_zero("temperature", temperature_k, "373 K")
    return GAS_CONSTANT * temperature_k * math.log(partition_l_per_kg) / J_PER_KJ


def partition_factor(enthalpy_kj_mol: float, from_k: float, to_k: float) -> float:
    """Factor on the partition from one temperature to another in kelvin (van 't Hoff, from memory).

    The enthalpy has no default on purpose: for cochineal on wool both signs are published (Mirnezhad et
    al. 2017 falling, Oftadeh et al. 2011 rising with +18.03 kJ/mol; abstracts read).
    """
    above_zero("first temperature", from_k, "333 K")
    above_zero("second temperature", to_k, "353 K")
    return math.exp(-enthalpy_kj_mol * J_PER_KJ / GAS_CONSTANT * (1.0 / to_k - 1.0 / from_k))


def share_left_after(partition_l_per_kg: float, liquor_ratios: Sequence[float]) -> float:
    """Share of the colour left after a dyeing at each liquor ratio, nothing carried out: prod L/(K + L)."""
    return math.prod(1.0 - exhausted_share(partition_l_per_kg, ratio) for ratio in liquor_ratios)


@dataclass(frozen=True)
class Dip:
    """What one dyeing did: the share taken at its liquor ratio, and where the colour and the liquor went.

    `carried_out_g` leaves in the wet fibre's liquor: loss in the rinse, not dyeing.
    """

    liquor_ratio: float
    exhausted: float
    on_fibre_g: float
    carried_out_g: float
    left_g: float
    left_volume_l: float


def dip(
    colour_g: float, volume_l: float, fibre_g: float, partition_l_per_kg: float, held_ml_per_g: float
) -> Dip:
    """Dye dry fibre to rest in a bath and lift it wet, holding `held_ml_per_g` of liquor.

    A fibre that could hold more than the bath leaves with all of it. Raises `OutOfRange` on anything
    negative.
    """
    zero_or_more("colour in the bath", colour_g, "10 g")
    above_zero("fibre", fibre_g, "100 g")
    zero_or_more("liquor held by the fibre", held_ml_per_g, "2 mL/g")
    liquor_ratio = above_zero("bath volume", volume_l, "3 L") * ML_PER_L / fibre_g
    exhausted = exhausted_share(partition_l_per_kg, liquor_ratio)
    on_fibre_g = colour_g * exhausted
    unbound_g = colour_g - on_fibre_g
    share_out = min(1.0, held_ml_per_g / liquor_ratio)
    carried_g = unbound_g * share_out
    return Dip(
        liquor_ratio, exhausted, on_fibre_g, carried_g, unbound_g - carried_g, volume_l * (1.0 - share_out)
    )


def successive_dips(
    colour_g: float,
    volume_l: float,
    fibres_g: Sequence[float],
    partition_l_per_kg: float,
    held_ml_per_g: float,
    topping_up_l: float = 0.0,
) -> tuple[Dip, ...]:
    """Dip one fibre after another in one bath, adding `topping_up_l` of water before each but the first.

    A used bath is a different mixture from a fresh one (Shams-Nateri 2011 for madder, abstract read), so a
    later dip's colour deserves a wider band than its amount.
    """
    zero_or_more("water for topping up", topping_up_l, "0.2 L")
    dips: list[Dip] = []
    for fibre_g in fibres_g:
        dips.append(dip(colour_g, volume_l, fibre_g, partition_l_per_kg, held_ml_per_g))
        colour_g, volume_l = dips[-1].left_g, dips[-1].left_volume_l + topping_up_l
    return tuple(dips)
