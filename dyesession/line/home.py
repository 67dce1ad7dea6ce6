"""Who lives where this day is dyed, and whom to ring: said to the dyer in lines, never written down."""

from dataclasses import dataclass, field

from dyesession.care import Household


@dataclass(frozen=True)
class Home:
    """The household and the poison centre's number, "" where it is not known."""

    household: Household = field(default_factory=Household)
    poison_centre: str = ""
