"""What the screen tests share: an app that keeps every act, a picture without an app, and text snapshots."""

import asyncio
import functools
import os
from pathlib import Path

from textual import on

from dyesession.ui.contact_sheet import FixtureApp, shown
from dyesession.ui.ink import strip_of
from dyesession.ui.messages import Act
from dyesession.ui.rows import draw_list
from dyesession.ui.stove_rooms import arrange
from dyesession.ui.stove_view import wants_pad
from dyesession.ui.theme import DARK
from dyesession.ui.widgets.account import draw_account
from dyesession.ui.widgets.ask import draw_ask
from dyesession.ui.widgets.bars import draw_bars
from dyesession.ui.widgets.care import draw_care
from dyesession.ui.widgets.craft import draw_craft, draw_how
from dyesession.ui.widgets.curve import draw_curve
from dyesession.ui.widgets.headline import draw_headline, headline_part
from dyesession.ui.widgets.key_line import draw_keys, keys_part
from dyesession.ui.widgets.lanes import draw_lanes
from dyesession.ui.widgets.large_clocks import away_part, draw_away, draw_loudest, loudest_part
from dyesession.ui.widgets.next_act import draw_next
from dyesession.ui.widgets.notice import draw_notice, notice_part
from dyesession.ui.widgets.offers import offers_part
from dyesession.ui.widgets.pad import draw_pad
from dyesession.ui.widgets.pot import PotPart, draw_pot
from dyesession.ui.widgets.pot_lines import draw_pot_lines
from dyesession.ui.widgets.ringing import draw_ringing, ringing_part
from dyesession.ui.widgets.shade import draw_shade
from dyesession.ui.widgets.where import draw_where

SNAPSHOTS = Path(__file__).parents[1] / "screens"


def on_screen(test):
    """Run an asynchronous test: no plug-in is needed for that."""

    @functools.wraps(test)
    def run(*given, **named):
        asyncio.run(test(*given, **named))

    return run


class KeepingApp(FixtureApp):
    """Shows a view and keeps every act it hears of."""

    def __init__(self, view, **options):
        super().__init__(view, **options)
        self.acts = []

    @on(Act)
    def keep(self, act: Act) -> None:
        self.acts.append(act)


def compare(name: str, text: str) -> None:
    """Hold a screen against its snapshot; with UPDATE_SCREENS=1, write the snapshot instead."""
    path = SNAPSHOTS / f"{name}.txt"
    if os.environ.get("UPDATE_SCREENS") == "1":
        path.write_text(text, encoding="utf-8")
    assert path.exists(), f"no snapshot {path.name}: look at the screen, then run with UPDATE_SCREENS=1"
    assert text == path.read_text(encoding="utf-8"), f"{path.name} differs; UPDATE_SCREENS=1 rewrites it"


@functools.cache
def screens(size, depth=None, dark=True):
    """Every fixture's screen at a size, shown one after the other on one and the same Stove."""
    from dyesession.ui.fixtures import FIXTURES

    async def show_all():
        app = FixtureApp(next(iter(FIXTURES.values())), dark, depth)
        texts = {}
        async with app.run_test(size=size) as pilot:
            for name, view in FIXTURES.items():
                app.screen.show(view)
                await pilot.pause()
                texts[name] = shown(app)
        return texts

    return asyncio.run(show_all())


def drawn(view, width, height, palette=DARK):
    """The strips of every part of a view at a size, by part, without an app."""
    arrangement = arrange(view, width, height)
    parts = {
        "headline": (draw_headline, headline_part(view)),
        "lanes": (draw_lanes, view.lanes),
        "account": (draw_account, view.account),
        "care": (draw_care, view.care),
        "how": (draw_how, view.how),
        "craft": (draw_craft, view.craft),
        "offers": (draw_list, offers_part(view)),
        "pad": (draw_pad, view.pad if wants_pad(view) else None),
        "notice": (draw_notice, notice_part(view)),
        "curve": (draw_curve, view.curve),
        "bars": (draw_bars, view.bars),
        "shade": (draw_shade, view.shade),
        "where": (draw_where, view.where),
        "away": (draw_away, away_part(view)),
        "loudest": (draw_loudest, loudest_part(view)),
        "ringing": (draw_ringing, ringing_part(view)),
        "ask": (draw_ask, view.ask),
        "next": (draw_next, view.next_act),
        "keys": (draw_keys, keys_part(view)),
        "lines": (draw_pot_lines, arrangement.lines),
    }
    pictures = {}
    for name, box in arrangement.boxes.items():
        draw, part = parts[name]
        lines = draw(part, box.width, box.height, palette)
        pictures[name] = _strips(lines, box, palette)
    for place in arrangement.pots:
        part = PotPart(place.pot, place.text_rows, place.face)
        lines = draw_pot(part, place.box.width, place.box.height, palette)
        pictures[f"pot {place.pot.letter}"] = _strips(lines, place.box, palette)
    return pictures


def _strips(lines, box, palette):
    assert len(lines) <= box.height
    return [strip_of(line, box.width, palette) for line in lines]


def text_of(pictures):
    """All that stands on the drawn parts."""
    return "\n".join(strip.text for strips in pictures.values() for strip in strips)
