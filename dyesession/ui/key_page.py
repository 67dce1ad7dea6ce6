"""Every key of every screen in one table for the README: `python -m dyesession.ui.key_page` renews it in place.

Made from the tables the screens themselves read; nothing is written here a second time.
"""

from pathlib import Path

from dyesession.ui.keys import BY_KEY, KEYS
from dyesession.ui.place_keys import EVERYWHERE, PLACE_KEYS

README = "README.md"
BEGIN, END = "<!-- keys: made by python -m dyesession.ui.key_page -->", "<!-- end of keys -->"


def key_page() -> str:
    """The table: a key, what it does at the Stove, what it does in the other places, in which of those."""
    rows = ["| key | at the Stove | before and after it | where |", "|---|---|---|---|"]
    places = {key.key: key for key in PLACE_KEYS}
    for name in dict.fromkeys((*(key.key for key in KEYS), *places)):
        here, there = BY_KEY.get(name), places.get(name)
        where = "" if there is None else "everywhere" if there.places == EVERYWHERE else ", ".join(there.places)
        cells = (f"`{name}`", here.explained if here else "", there.explained if there else "", where)
        rows.append(f"| {' | '.join(cells)} |")
    return "\n".join(rows)


def renewed(readme: str) -> str:
    """The README with the table as it is now. Raises ValueError where its marks are missing."""
    before, _, rest = readme.partition(BEGIN)
    _, end, after = rest.partition(END)
    if not end:
        raise ValueError(f"{README} has no table of keys: expected {BEGIN} and {END}")
    return f"{before}{BEGIN}\n{key_page()}\n{END}{after}"


if __name__ == "__main__":
    path = Path(README)
    path.write_text(renewed(path.read_text("utf-8")), "utf-8")
