"""What fully mixed rinses leave, how many it takes, and when it is the fibre letting go.

Knows nothing of fibre. Carry-over and fresh water are per gram of fibre (or any one basis). The dilution
law is mass balance (derived). Strongly held dye does not wash out however long (an early
colloid-chemistry text, p. 425, read; attribution from memory); no published rinse-off shares for natural
dyes on wool were found.
"""

import math

from dyesession.dyeing.limits import above_zero, between_shares, zero_or_more

# A rinse this many times stronger than dilution predicts is colour coming off the fibre; judgement
LETTING_GO_FACTOR = 2.0
ROUNDING = 1e-9


def share_left(carry_over: float, fresh: float, rinse_count: int, partition: float = 0.0) -> float:
    """Share left after some equal rinses: ((K + p)/(K + p + w))^n.

    `partition` K, in the same unit as the waters, is that of loosely held dye; 0 for what is only
    dissolved. The release of dye is never the full reverse of dyeing, so with K it is a shape, not a
    promise.
    """
    zero_or_more("carry-over", carry_over, "2 mL/g")
    above_zero("fresh water", fresh, "20 mL/g")
    zero_or_more("number of rinses", rinse_count, "3")
    held = carry_over + zero_or_more("partition of loose dye", partition, "20 mL/g")
    return float((held / (held + fresh)) ** rinse_count)


def rinses_needed(wanted_share: float, carry_over: float, fresh: float) -> int:
    """Fewest equal rinses that leave no more than a share of what is dissolved.

    Stop on clear water all the same.
    """
    between_shares("share to leave", wanted_share, "0.01")
    above_zero("carry-over", carry_over, "2 mL/g")
    return math.ceil(math.log(wanted_share) / math.log(share_left(carry_over, fresh, 1)) - ROUNDING)


def share_left_splitting(carry_over: float, total_fresh: float, rinse_count: int) -> float:
    """Share left when one amount of water is split into equal rinses: many small beat one large."""
    above_zero("number of rinses", rinse_count, "3")
    return share_left(carry_over, total_fresh / rinse_count, rinse_count)


def best_share_left(carry_over: float, total_fresh: float) -> float:
    """Share that endless small rinses of one amount of water would leave, exp(-w/p)."""
    zero_or_more("fresh water", total_fresh, "30 mL/g")
    return math.exp(-total_fresh / above_zero("carry-over", carry_over, "2 mL/g"))


def fibre_is_letting_go(seen_share: float, carry_over: float, fresh: float, rinse_number: int) -> bool:
    """Whether a rinse holds so much colour that the fibre must be giving it off.

    `seen_share` is that rinse's strength over that of the liquor left in the fibre before the first
    rinse.
    """
    zero_or_more("strength of the rinse", seen_share, "0.05")
    return seen_share > LETTING_GO_FACTOR * share_left(carry_over, fresh, rinse_number)
