"""A colour as it stands in a log, a hex or a Lab with its light and ±, as a screen can show it. Knows no logs."""

import re

from dyesession.errors import UserError

_HEX, _SHORT_HEX = re.compile(r"#[0-9a-fA-F]{6}"), re.compile(r"#[0-9a-fA-F]{3}")


def screen_hex(text: str) -> str:
    """`#rrggbb` of a colour in a log; "" for one told in words, or one that no screen's light can show."""
    told = text.strip().lower()
    if _HEX.fullmatch(told):
        return told
    if _SHORT_HEX.fullmatch(told):
        return "#" + "".join(2 * one for one in told[1:])
    if "(" not in text:
        return ""  # told in words; spares loading what reads the rest
    from dyesession.colour.screen import screen_of
    from dyesession.colour.typed import read_colour

    try:
        found = read_colour(text)
        return screen_of(found.lab, found.viewing).hex
    except UserError:
        return ""
