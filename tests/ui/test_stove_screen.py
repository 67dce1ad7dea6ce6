"""The Stove on a screen: each key posts its message and no other; what is unchanged is not repainted."""

import re
from dataclasses import replace

import pytest
from ui.on_screen import KeepingApp, on_screen, screens

from dyesession.ui import messages
from dyesession.ui.contact_sheet import shown
from dyesession.ui.fixtures import (
    ALARM,
    ASK_NUMBER,
    ASK_POT,
    AWAY,
    FIXTURES,
    FOUR_POTS,
    NOTHING_OPEN,
    TWO_POTS,
    TYPED,
    WHERE,
)
from dyesession.ui.keys import KEYS
from dyesession.ui.screens.stove import StoveScreen
from dyesession.ui.stove_view import Ask, Clock, Entry
from dyesession.ui.theme import THEME_NAMES, THEMES
from dyesession.ui.widgets.drawn import Drawn

PRESSED_AS = {".": "full_stop", "?": "question_mark", "-": "minus", "!": "exclamation_mark"}
ASKED = Ask("How hot is A?", wants="°C in A")


def kinds(app):
    return [type(act) for act in app.acts]


async def settled(pilot):
    await pilot.pause()
    await pilot.pause()


# keys


@on_screen
async def test_each_key_posts_its_act_and_no_other():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        for key in KEYS:
            app.acts.clear()
            await pilot.press(PRESSED_AS.get(key.key, key.key))
            await settled(pilot)
            assert kinds(app) == [key.act], key


@on_screen
async def test_keys_with_no_act_post_nothing():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("y", "m", "r", "enter", "backspace", "tab", "f5", "left", "A", "T", "ctrl+t")
        await settled(pilot)
        assert app.acts == []


@pytest.mark.parametrize(
    "view", [AWAY, WHERE, ALARM, NOTHING_OPEN], ids=["away", "where", "alarm", "nothing"]
)
def test_keys_are_live_on_every_page(view):
    @on_screen
    async def press():
        app = KeepingApp(view)
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.press("space", "t", "a")
            await settled(pilot)
            assert kinds(app) == [messages.Next, messages.ReadTemperature, messages.GoAway]

    press()


@on_screen
async def test_a_bounce_counts_once_and_a_second_press_counts_again():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("space", "space", "p", "space")
        await settled(pilot)
        assert kinds(app) == [messages.Next, messages.PauseOrGoOn, messages.Next]


@on_screen
async def test_the_bounce_can_be_switched_off():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        app.push_screen(StoveScreen(TWO_POTS, bounce_s=0.0))
        await settled(pilot)
        await pilot.press("space", "space")
        await settled(pilot)
        assert kinds(app) == [messages.Next, messages.Next]


# typing


@on_screen
async def test_digits_begin_a_number_and_letters_then_belong_to_it():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("2", "full_stop", "5", "space", "o", "z")
        await settled(pilot)
        assert [act.text for act in app.acts] == ["2", "2.", "2.5", "2.5 ", "2.5 o", "2.5 oz"]
        await pilot.press("backspace", "enter")
        await settled(pilot)
        assert type(app.acts[-1]) is messages.Entered and app.acts[-1].text == "2.5 o"
        assert app.screen.typed == "2.5 o"  # it stays until it counted
        app.screen.clear_entry()
        app.acts.clear()
        await pilot.press("o")
        await settled(pilot)
        assert kinds(app) == [messages.OnShade]


@on_screen
async def test_escape_clears_what_is_typed_and_then_puts_away():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("7", "escape")
        await settled(pilot)
        assert [act.text for act in app.acts] == ["7", ""]
        await pilot.press("escape")
        await settled(pilot)
        assert kinds(app)[-1] is messages.PutAway


@on_screen
async def test_where_a_text_is_asked_for_every_letter_is_part_of_it():
    app = KeepingApp(replace(TWO_POTS, entry=Entry("note", "")))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("q", "u", "i", "t", "left_square_bracket")
        await settled(pilot)
        assert app.acts[-1].text == "quit["


@on_screen
async def test_letters_typed_at_once_behind_a_key_that_asks_for_a_text_belong_to_the_text():
    class Asking(KeepingApp):
        def on_write_note(self, act):
            self.screen.show(replace(TWO_POTS, entry=Entry("note", "")))

    app = Asking(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        for key in "nlost":
            app.screen.post_message(_key(key))
        await settled(pilot)
        assert kinds(app)[0] is messages.WriteNote
        assert [act.text for act in app.acts[1:]] == ["l", "lo", "los", "lost"]


def _key(character):
    from textual.events import Key

    return Key(character, character)


# an Ask


@on_screen
async def test_space_enter_and_y_do_not_answer_an_ask():
    for view in (replace(TWO_POTS, ask=ASKED), ASK_POT):
        app = KeepingApp(view)
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.press("space", "enter", "y", "space", "space")
            await settled(pilot)
            assert app.acts == []


@on_screen
async def test_a_number_or_a_letter_or_not_now_answers_an_ask():
    app = KeepingApp(replace(TWO_POTS, ask=ASKED))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("8", "4", "enter")
        app.screen.clear_entry()
        await pilot.press("minus")
        await settled(pilot)
        assert kinds(app) == [messages.Typed, messages.Typed, messages.Entered, messages.NotNow]
    app = KeepingApp(ASK_POT)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "d", "t", "a", "minus")
        await settled(pilot)
        assert kinds(app) == [messages.Chosen, messages.NotNow]
        assert app.acts[0].key == "c"


@on_screen
async def test_what_rings_is_acknowledged_before_an_ask_is_answered():
    app = KeepingApp(replace(ASK_NUMBER, ringing=ALARM.ringing))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("space")
        await settled(pilot)
        assert kinds(app) == [messages.Next]


# touch


def find(app, words):
    """The cell where words stand on the screen."""
    for y, line in enumerate(shown(app).split("\n")):
        if words in line:
            return line.index(words), y
    raise AssertionError(f"{words!r} is not on the screen")


@pytest.mark.parametrize(
    ("view", "words", "act", "detail"),
    [
        (TWO_POTS, "mordant pot", messages.PotTouched, "A"),
        (TWO_POTS, "70 °C until 11:50", messages.PotTouched, "B"),
        (TWO_POTS, "strain B into the dye pot", messages.Next, None),
        (TWO_POTS, "temperature", messages.ReadTemperature, None),
        (TWO_POTS, "? help", messages.ShowHelp, None),
        (ALARM, "RINGING", messages.Next, None),
        (ASK_POT, "dye pot   ", messages.Chosen, "c"),
        (ASK_POT, "not now", messages.NotNow, None),
        (FOUR_POTS, "wetting", messages.PotTouched, "D"),
    ],
)
def test_what_is_touched_is_done(view, words, act, detail):
    @on_screen
    async def touch():
        app = KeepingApp(view)
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.click(offset=find(app, words))
            await settled(pilot)
            assert kinds(app) == [act]
            assert detail is None or detail in (
                getattr(app.acts[0], "letter", ""),
                getattr(app.acts[0], "key", ""),
            )

    touch()


@on_screen
async def test_a_touch_on_empty_ground_or_on_a_question_does_nothing():
    app = KeepingApp(ASK_POT)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        for words in ("Which pot does", "The dye pot is still hot", "71 ± 13", "saved"):
            await pilot.click(offset=find(app, words))
        await settled(pilot)
        assert app.acts == []


@on_screen
async def test_touching_a_pot_that_is_a_line_means_that_pot():
    app = KeepingApp(FOUR_POTS)
    async with app.run_test(size=(60, 24)) as pilot:
        await pilot.pause()
        await pilot.click(offset=find(app, "wetting bowl"))
        await settled(pilot)
        assert [act.letter for act in app.acts] == ["D"]


# repainting


def count_paints(monkeypatch):
    """The widgets that paint a line from now on or ask to be painted, by name."""
    painted = []
    for name in ("painted", "refresh"):
        real = getattr(Drawn, name)

        def counting(widget, *args, real=real, **how):
            painted.append(str(widget.id))
            return real(widget, *args, **how)

        monkeypatch.setattr(Drawn, name, counting)
    return painted


def test_an_equal_view_repaints_nothing_and_a_clock_only_its_pot(monkeypatch):
    @on_screen
    async def show():
        painted = count_paints(monkeypatch)
        app = KeepingApp(TWO_POTS)
        async with app.run_test(size=(80, 24)) as pilot:
            await settled(pilot)
            assert painted
            painted.clear()
            app.screen.show(replace(TWO_POTS))
            await settled(pilot)
            assert painted == []
            pots = (replace(TWO_POTS.pots[0], clock=Clock("23", "min")), TWO_POTS.pots[1])
            app.screen.show(replace(TWO_POTS, pots=pots))
            await settled(pilot)
            assert set(painted) == {"pot-0"}
            assert app.screen.view.pots == pots

    show()


@pytest.mark.parametrize("name", ["four-pots", "alarm", "ask-pot"])
def test_a_fixture_looks_the_same_fresh_as_after_all_the_others(name):
    after_the_others = screens((80, 24))[name]

    @on_screen
    async def look():
        app = KeepingApp(FIXTURES[name])
        async with app.run_test(size=(80, 24)) as pilot:
            await settled(pilot)
            assert shown(app) == after_the_others

    look()


def test_nothing_is_repainted_while_nothing_happens(monkeypatch):
    @on_screen
    async def wait():
        painted = count_paints(monkeypatch)
        app = KeepingApp(ALARM)
        async with app.run_test(size=(80, 24)) as pilot:
            await settled(pilot)
            assert painted
            painted.clear()
            await pilot.pause(0.3)
            assert painted == []

    wait()


# windows and colours


@on_screen
async def test_a_window_may_be_made_any_size_at_any_time():
    app = KeepingApp(FOUR_POTS)
    async with app.run_test(size=(200, 60)) as pilot:
        for width, height in ((80, 24), (40, 10), (10, 3), (1, 1), (60, 18), (200, 60)):
            await pilot.resize_terminal(width, height)
            await settled(pilot)
            lines = shown(app).rstrip("\n").split("\n")
            assert len(lines) <= height
        assert "wanted, and the snippet" in shown(app)


@pytest.mark.parametrize("name", FIXTURES)
def test_forty_by_ten_is_no_trouble_for_any_fixture(name):
    @on_screen
    async def look():
        app = KeepingApp(FIXTURES[name])
        async with app.run_test(size=(40, 10)) as pilot:
            await settled(pilot)
            assert shown(app).strip()

    look()


@on_screen
async def test_the_theme_can_change_while_the_stove_is_shown():
    app = KeepingApp(TWO_POTS)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        dark, words = _grounds(app), re.findall(r"[\w±]+", shown(app))
        app.theme = THEME_NAMES[False]
        await settled(pilot)
        assert re.findall(r"[\w±]+", shown(app)) == words
        assert THEMES[0].background in dark and THEMES[1].background not in dark
        assert THEMES[1].background in _grounds(app) and THEMES[0].background not in _grounds(app)


def _grounds(app):
    from dyesession.ui.contact_sheet import strips_of

    return {
        segment.style.bgcolor.get_truecolor().hex
        for strip in strips_of(app)
        for segment in strip
        if segment.style and segment.style.bgcolor
    }


def test_with_no_color_everything_on_the_screen_is_grey(monkeypatch):
    monkeypatch.setenv("NO_COLOR", "1")

    @on_screen
    async def look():
        for view in (ALARM, TYPED):
            app = KeepingApp(view)
            async with app.run_test(size=(80, 24)) as pilot:
                await settled(pilot)
                assert app.no_color
                assert all(len({ground[1:3], ground[3:5], ground[5:7]}) == 1 for ground in _grounds(app))
                assert "mordant pot" in shown(app)

    look()
