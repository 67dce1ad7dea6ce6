"""Under which light and for which observer a colour was read, and the few that spectra can be rebuilt for.

Knows no colours. Illuminants and the 2 and 10 degree observers: CIE 15 (names from memory).
"""

from dataclasses import dataclass

from dyesession.colour.trouble import ColourError

ILLUMINANTS = ("A", "C", "D50", "D55", "D65", "D75", "E", "F2", "F7", "F11")
OBSERVERS_DEG = (2, 10)


@dataclass(frozen=True)
class Viewing:
    """An illuminant by its CIE name and an observer in degrees, 2 or 10."""

    illuminant: str
    observer_deg: int

    def __post_init__(self) -> None:
        if self.illuminant not in ILLUMINANTS:
            raise ColourError(
                f"The illuminant {self.illuminant!r} is not one of {', '.join(ILLUMINANTS)}, for example D65."
            )
        if self.observer_deg not in OBSERVERS_DEG:
            raise ColourError(
                f"The observer is {self.observer_deg} degrees, but it must be 2 or 10, for example D65/10."
            )

    def __str__(self) -> str:
        return f"{self.illuminant}/{self.observer_deg}°"


D65_2 = Viewing("D65", 2)
D65_10 = Viewing("D65", 10)
A_2 = Viewing("A", 2)
A_10 = Viewing("A", 10)
