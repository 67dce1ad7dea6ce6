"""The program's own entry: what the dyer was shown after an entry, as flat rows for the log.

Knows nothing of files. Rows are flat so that any TOML reader shows them in one line each.
"""

from collections.abc import Mapping
from math import floor, log10

from dyesession.account.model import Account, Band90, BathEstimate, DyestuffEstimate, FibreEstimate
from dyesession.session.events import Accounted

Row = Mapping[str, str | float | bool]  # flat: what an inline table holds
FIGURES = 3  # enough to recognise what was shown, and none that pretends to more
LEAST_G = 0.05  # less colour than this in a bath is not worth a row; our own choice, no source


def accounted(account: Account, after: int) -> Accounted:
    """The entry that says what this account showed after entry `after`."""
    return Accounted(
        after=after,
        baths=tuple(row for bath in account.baths for row in _bath_rows(bath)),
        dyestuffs=tuple(_dyestuff_row(one) for one in account.dyestuffs),
        fibres=tuple(row for fibre in account.fibres for row in _fibre_rows(fibre)),
    )


def rounded(value: float, figures: int = FIGURES) -> float:
    """A number to so many figures, as it is logged; 0 stays 0."""
    if value == 0.0:
        return 0.0
    return round(value, figures - 1 - floor(log10(abs(value)))) + 0.0


def _band(grams: Band90) -> dict[str, float]:
    return {
        "mass_g": rounded(grams.mean),
        "low_g": rounded(grams.low),
        "high_g": rounded(grams.high),
    }


def _bath_rows(bath: BathEstimate) -> list[Row]:
    where: dict[str, str | float | bool] = {"vessel": bath.vessel, "volume_l": rounded(bath.volume_l.mean)}
    if bath.kept:
        where["kept"] = True
    amounts = [one for one in (*bath.dye, *bath.contents) if one.grams.mean >= LEAST_G]
    return [{**where, "lot": one.lot, **_band(one.grams)} for one in amounts] or [where]


def _dyestuff_row(one: DyestuffEstimate) -> Row:
    row: dict[str, str | float | bool] = {
        "lot": one.lot,
        "total_g": round(one.total_g, 3),
        "pulls": one.pulls,
    }
    row |= {"left_g": rounded(one.left_in_dyestuff.mean)}
    row |= {"low_g": rounded(one.left_in_dyestuff.low), "high_g": rounded(one.left_in_dyestuff.high)}
    return row | {"next_g": rounded(one.next_pull.mean)}


def _fibre_rows(fibre: FibreEstimate) -> list[Row]:
    return [
        {
            "fibre": fibre.lot,
            "lot": one.lot,
            **_band(one.grams),
            "percent_wof": rounded(one.percent_wof.mean),
        }
        for one in fibre.taken
    ]
