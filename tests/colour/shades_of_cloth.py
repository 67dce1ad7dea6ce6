"""What the tests of this room share: colours that cloth can show, readings, and what a message must be."""

import re

from hypothesis import settings
from hypothesis import strategies as st

from dyesession.colour.cielab import Lab, lab_of_lch
from dyesession.colour.readings import Reading
from dyesession.colour.targets import Target, target_of

# Rebuilding a curve takes milliseconds, and a library's first use far more: no test here is on the clock.
unhurried = settings(deadline=None)

UNDYED = Lab(86.0, 0.0, 11.0)
MADDER = Lab(42.0, 45.0, 30.0)
WELD = Lab(75.0, -5.0, 70.0)
INDIGO = Lab(38.0, -4.0, -28.0)

# Any colour of a screen is one that some reflectance could show; these stay well within.
cloth = st.builds(lab_of_lch, st.floats(25, 80), st.floats(0, 35), st.floats(0, 359.9))
any_lab = st.builds(Lab, st.floats(0, 100), st.floats(-100, 100), st.floats(-100, 100))


def read(lab: Lab, plus_minus: float = 0.5) -> Reading:
    return Reading(lab, plus_minus)


def aim(*labs: Lab, plus_minus: float = 0.5) -> Target:
    return target_of([read(lab, plus_minus) for lab in labs])


def is_one_sentence(message: str) -> bool:
    """One sentence, which says what was expected and gives an example."""
    whole = message.endswith(".") and not re.search(r"[.!?] [A-Z]", message)
    return whole and "example" in message and "\n" not in message
