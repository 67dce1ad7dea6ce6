"""`dyesession safety`: what is known of one substance, or all the cautions. Prints; computes nothing.

The poison centre's number comes from the workroom's kitchen; a kitchen that cannot be read never stands
between a person and a first-aid line.
"""

import argparse
import json
import textwrap
from collections.abc import Iterable, Iterator

from dyesession import care
from dyesession.care.scene import tidy
from dyesession.cli.workroom import find_workroom
from dyesession.errors import UserError
from dyesession.kitchen.model import Kitchen
from dyesession.substances import Substance, find, nearest, strength_percent

WIDTH = 80
_HEADS = 14  # columns for the word a line begins with


class UnknownSubstance(UserError):
    """A name nobody here knows a substance by."""


def safety(options: argparse.Namespace) -> int:
    """Print one substance's page, or the disclaimer, what never to mix and the substances there are."""
    kitchen, trouble = _kitchen(options)
    name = " ".join(options.substance)
    substance = _substance(name) if name else None
    if options.json:
        document = _one_as_json(substance, kitchen) if substance else _all_as_json()
        print(json.dumps(document, ensure_ascii=False, indent=2))
    else:
        print("\n".join(_one(substance, name, kitchen, trouble) if substance else _all()))
    return 0


def _kitchen(options: argparse.Namespace) -> tuple[Kitchen, str]:
    try:
        return find_workroom(getattr(options, "workroom", None)).kitchen(None), ""
    except UserError as trouble:
        return Kitchen(), f"Your kitchen file could not be read, so your own number is not shown: {trouble}"


def _substance(name: str) -> Substance:
    found = find(name)
    if found is not None:
        return found
    near = nearest(name)
    hint = f"did you mean {' or '.join(near)}?" if near else 'the list is printed by "dyesession safety"'
    unknown = f'Nothing is known here of "{tidy(name)}", so none of its hazards either'
    raise UnknownSubstance(f"{unknown}: read its safety data sheet; {hint}")


def _one(substance: Substance, name: str, kitchen: Kitchen, trouble: str) -> Iterator[str]:
    yield _title(substance.key)
    if stated := _at_stated_strength(substance, name):
        yield from _row("as named", stated)
    for head, text in care.sheet_of(substance, kitchen.poison_centre, kitchen.household):
        yield from _row(head, text)
    yield ""
    yield from _paragraph(care.DISCLAIMER_SHORT)
    if trouble:
        yield from _paragraph(trouble)


def _at_stated_strength(substance: Substance, name: str) -> str:
    percent = strength_percent(name)
    band = substance.band(percent) if percent is not None else None
    if band is None:
        return ""
    codes = ", ".join(band.codes) or "no code"
    return f"at {percent:g} %: {band.signal_word or 'no signal word'}, {codes} ({band.source})"


def _all() -> Iterator[str]:
    yield from _paragraph(care.DISCLAIMER_LONG)
    yield from ("", "Keep apart", "")
    for head, text in care.keep_apart_rows():
        yield from _row(head, text)
    yield from ("", "Substances, by what may be done with them at home", "")
    for verdict, keys in care.by_verdict():
        yield from _row(verdict, ", ".join(keys))


def _one_as_json(substance: Substance, kitchen: Kitchen) -> dict[str, object]:
    return {**care.sheet_as_json(substance, kitchen.poison_centre), "disclaimer": care.DISCLAIMER_SHORT}


def _all_as_json() -> dict[str, object]:
    return {
        "disclaimer": care.DISCLAIMER_LONG,
        "keep_apart": care.keep_apart_as_json(),
        "substances": {verdict: list(keys) for verdict, keys in care.by_verdict()},
    }


def _row(head: str, text: str) -> Iterable[str]:
    """A word, and its text in a column beside it; a word too long for its column has a line of its own."""
    beside = " " * (_HEADS + 2)
    lines = textwrap.wrap(
        text, WIDTH, initial_indent=beside, subsequent_indent=beside, break_on_hyphens=False
    )
    if len(head) > _HEADS:
        return (f"  {head}", *lines)
    return (f"  {head:{_HEADS}}{lines[0].lstrip()}", *lines[1:])


def _paragraph(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, break_on_hyphens=False)


def _title(key: str) -> str:
    return key[0].upper() + key[1:]
