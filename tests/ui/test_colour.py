"""Did I hit the colour? By keys alone, by touch alone, with a skein of the logs and with a photo."""

import pytest
from coloured_days import coloured_day
from PIL import Image
from ui.at_places import in_a_room

from dyesession.ui.bench_rows import BENCH_DRAWING
from dyesession.ui.colour_rows import COLOUR_DRAWING
from dyesession.ui.rows import keys_of
from dyesession.ui.screens.page import PageScreen
from dyesession.ui.theme import DARK

UNDYED, MADDER = "lab(86 0 11) D65/2 ± 1.5 dry, colorimeter", "lab(42 45 30) D65/2 ± 1.5 dry, colorimeter"
HALF = "lab(50 42 28) D65/2 ± 1.5 dry, colorimeter"
DAY, LATER = "2026-03-14-madder-k7q2", "2026-04-02-madder-m3xz"


@pytest.fixture(autouse=True)
def a_cache_of_its_own(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def two_days(folder):
    coloured_day(folder / "logs", MADDER, 50.0, DAY, UNDYED)
    coloured_day(folder / "logs", HALF, 25.0, LATER)


def a_photo(folder, card=(118, 118, 118)):
    """Left a grey card of 18 %, in the middle madder, right something a little lighter."""
    picture = Image.new("RGB", (300, 100), card)
    picture.paste((173, 61, 52), (100, 0, 200, 100))
    picture.paste((190, 80, 70), (200, 0, 300, 100))
    picture.save(folder / "skein.png")


async def colour(room):
    room.app.open_place("Colour")
    await room.settle()


async def choose(room, key):
    """Go to a line with the arrows, and choose it."""
    keys = keys_of(COLOUR_DRAWING.rows(room.view, 80, DARK))
    assert key in keys, (key, keys)
    await room.pilot.press("home", *["down"] * keys.index(key))
    await room.press("enter")


async def typed(room, text):
    """Type a text; all but its last letter at once, for the letters one by one are tried in the first test."""
    room.app.screen.begin_entry(text[:-1])
    await room.type(text[-1])
    await room.press("enter")


def listed(room, session):
    return next(one.key for one in room.view.listed if session in one.key)


@in_a_room()
async def test_tab_leads_to_colour_and_on_to_the_bench_again(room):
    for _ in range(6):
        await room.press("tab")
        if room.place == "Colour":
            break
    assert room.place == "Colour"
    await room.press("tab")
    assert room.place == "Bench"


@in_a_room()
async def test_two_typed_colours_are_told_apart_depth_first(room):
    await colour(room)
    assert room.place == "Colour" and "NEXT" in room.text()
    await room.press("c")
    await room.type("lab(42 45 30)")
    assert "= lab(42 45 30) ± 0.5 #ad3d34" in room.flat()
    await room.press("enter", "c")
    await typed(room, "lab(46 44 29)")
    assert room.view.words == "About 30 % weaker." and "3 to 4 in CIEDE2000" in room.view.numbers
    assert [one.name for one in room.view.series] == ["a quarter", "half as deep", "as it is", "twice as deep", "four times"]
    assert any("natural wool" in one for one in room.view.notes)


@in_a_room()
async def test_several_readings_make_one_target_and_a_skein_may_be_inside_it(room):
    await colour(room)
    for text in ("lab(42 46 31)", "lab(44 44 29)", "lab(41 45 33)"):
        await choose(room, "target+")
        await typed(room, text)
    assert "3 readings within" in room.view.aim.says
    await choose(room, "sample+")
    await typed(room, "lab(42 45 30)")
    assert room.view.words == "Inside it."


@in_a_room()
async def test_a_wet_or_unlike_reading_is_refused_and_the_text_stays(room):
    await colour(room)
    await room.press("c")
    await room.type("lab(42 45 30)")
    await room.press("enter", "c")
    await typed(room, "lab(46 44 29) wet")
    assert "wet fibre shows another colour" in room.flat() and room.view.frame.entry.typed.endswith("wet")
    await room.press("escape", "c")
    await typed(room, "lab(46 44 29) D65/10")
    assert "read both the same way" in room.view.numbers and not room.view.words
    assert "anew" in room.view.frame.next_act.act
    await room.press("delete")
    assert not room.view.sample


def test_a_logged_skein_brings_its_dose_and_what_mending_costs(tmp_path):
    two_days(tmp_path)
    (tmp_path / "kitchen.toml").write_text(
        'format = 1\n\n[[jar]]\nname = "madder"\nsubstance = "madder root"\nprice_per_100_g = 4.0\n', "utf-8"
    )

    @in_a_room()
    async def mend(room):
        await colour(room)
        await room.press("c")
        await typed(room, "lab(42 45 30)")
        assert [one.figures for one in room.view.near] == ["lab(42 45 30) ± 1.5", "lab(50 42 28) ± 1.5"]
        await choose(room, "logs:sample")
        assert room.view.listing
        await choose(room, listed(room, LATER))
        assert "weaker" in room.view.words
        dip = next(one for one in room.view.mend if one.does == "a further dip")
        assert "madder root about" in dip.says and "costs" in dip.says
        assert room.view.mend[0].does == "wash again" and room.view.mend[-1].does == "an overdye"
        assert "learned from two of your doses" in room.view.series_says
        await room.press("space")
        assert isinstance(room.app.screen, PageScreen) and "Suspect the rinse first" in room.text()
        await room.press("x")
        await choose(room, "overdye")
        assert room.view.listed[0].name == "a further dip" and "expect a miss of" in room.view.listed[0].says
        await room.press("enter")
        assert "few grams first" in room.flat()
        await room.press("x", "q")
        assert not room.view.listing and room.place == "Colour"
        await room.press("q")
        assert room.place == "Bench"

    mend(tmp_path)


def test_a_rub_test_is_noted_on_the_closed_day(tmp_path):
    two_days(tmp_path)

    @in_a_room()
    async def rub(room):
        await colour(room)
        await choose(room, "logs:sample")
        await choose(room, listed(room, DAY))
        await choose(room, "test:rub test")
        assert "white cloth, before" in room.flat()
        await typed(room, "lab(95 0 2)")
        await typed(room, "lab(80 14 10)")
        assert "noted on" in room.text() and "about grade" in room.flat() and "wash it once more" in room.flat().casefold()
        await room.press("x")
        text = (tmp_path / "logs" / f"{DAY}.toml").read_text("utf-8")
        assert 'what = "rub test"' in text and "staining: about grade" in text

    rub(tmp_path)


def test_a_photo_of_a_dry_skein_is_noted_on_its_day_and_then_its_dose_is_known(tmp_path):
    two_days(tmp_path)
    a_photo(tmp_path)

    @in_a_room()
    async def note(room):
        await colour(room)
        await choose(room, "photo")
        await typed(room, "skein.png card 10,10,80,80 target 110,10,80,80 skein 210,10,80,80")
        assert room.view.words and room.view.mend[0].key == "note:mend"
        await room.press("space")
        assert "which skein has this colour" in room.view.listing
        assert {one.name for one in room.view.listed} == {
            "Madder brick red on wool: large skein", "Madder brick red on wool: small skein",
        }  # fmt: skip
        await choose(room, f"lot:{LATER}|small skein")
        assert "Noted on" in room.flat() and not room.view.listing
        text = (tmp_path / "logs" / f"{LATER}.toml").read_text("utf-8")
        assert "photo with card" in text and "light daylight" in text
        assert "small skein" in room.view.sample[0].says
        assert any("madder root about" in one.says for one in room.view.mend) and room.view.tests[0].key == "test:rub test"

    note(tmp_path)


def test_the_bench_leads_to_a_skein_that_is_dry_by_now_and_its_shade_is_noted(tmp_path):
    coloured_day(tmp_path / "logs", "", 50.0, DAY)

    @in_a_room()
    async def judge(room):
        room.clock.advance(4 * 86400)
        room.app._places[0].look_round()
        await room.settle()
        want = next(one.key for one in room.view.wants if "dry by now" in one.what)
        keys = keys_of(BENCH_DRAWING.rows(room.view, 80, DARK))
        await room.pilot.press("home", *["down"] * keys.index(want))
        await room.press("enter")
        assert room.place == "Colour" and "noted on its day" in room.flat()
        await room.press("space")
        await typed(room, "lab(42 45 30) ± 1.5 dry, colorimeter")
        assert [one.name.rpartition(": ")[2] for one in room.view.listed] == ["large skein", "small skein"]
        await room.press("enter")
        assert "Noted on" in room.flat() and "large skein" in room.view.sample[0].says
        assert "lab(42 45 30) D65/2 ± 1.5 dry, colorimeter" in (tmp_path / "logs" / f"{DAY}.toml").read_text("utf-8")
        await room.press("q")
        assert room.place == "Bench" and not any("dry by now" in one.what for one in room.view.wants)
        assert room.view.done[0].swatches[0].colour == "#ad3d34", "a Lab in the log is a swatch on the Bench too"

    judge(tmp_path)


def test_the_shade_card_is_looked_over_and_written_as_a_page(tmp_path):
    two_days(tmp_path)

    @in_a_room()
    async def card(room):
        await colour(room)
        await choose(room, "shades")
        assert len(room.view.listed) == 2 and "madder root 50 %" in room.flat()
        await choose(room, room.view.listed[0].key)
        assert isinstance(room.app.screen, PageScreen) and "log 2026" in room.text()
        await room.press("x", "home", "enter")
        assert "Written to" in room.flat()
        assert "#ad3d34" in (tmp_path / "papers" / "shade-card.html").read_text("utf-8")

    card(tmp_path)


def test_card_target_and_skein_are_pointed_at_by_touch_in_one_photo(tmp_path):
    a_photo(tmp_path)

    @in_a_room(size=(120, 34))
    async def photo(room):
        await colour(room)
        await choose(room, "photo")
        await typed(room, "skein.png")
        assert room.place == "Photo" and "point at the middle of the grey" in room.flat()
        across, _ = room.app.screen._cells()
        for share in (1 / 6, 1 / 2, 5 / 6):
            await room.pilot.click(offset=(1 + int(share * across), 10))
            await room.settle()
        assert room.place == "Colour"
        assert room.view.target[0].hex.startswith("#a") and "weaker" in room.view.words
        assert "photo, card of 18 %, light daylight" in room.view.sample[0].says
        high, low = 0, 0
        low, high = (int(one) for one in room.view.numbers.split(" in ")[0].split(" to "))
        assert high - low <= 6  # two colours in one frame: not the ± 6.4 of two photos

    photo(tmp_path)


def test_the_photo_is_pointed_at_with_the_arrows_and_a_wrong_card_is_said(tmp_path):
    a_photo(tmp_path, card=(200, 40, 40))

    @in_a_room()
    async def photo(room):
        await colour(room)
        await choose(room, "photo")
        await room.type("skein.png")
        await room.press("enter", "home", "right", "right", "right", "enter", "-", "end", "left", "left", "left", "enter")
        assert room.place == "Photo" and "not grey" in room.flat()
        assert "middle of the grey" in room.flat(), "it is asked for anew"
        await room.press("-", "-", "enter")
        assert room.place == "Colour" and "without a card" in room.view.sample[0].says

    photo(tmp_path)


def test_areas_may_be_typed_as_numbers(tmp_path):
    a_photo(tmp_path)

    @in_a_room()
    async def photo(room):
        await colour(room)
        await choose(room, "photo")
        await typed(room, "skein.png card 10,10,80,80 target 110,10,80,80 skein 210,10,80,80")
        assert room.place == "Colour" and room.view.target and room.view.sample and room.view.words
        await choose(room, "photo")
        await typed(room, "skein.png card 10,10,80,80 skein 250,10,80,80")
        assert "is not in the frame" in room.flat()
        await choose(room, "photo")
        await typed(room, "nothing.png")
        assert "no photo" in room.flat() and room.place == "Colour"

    photo(tmp_path)


def test_a_colour_is_typed_and_taken_by_touch_alone(tmp_path):
    two_days(tmp_path)

    @in_a_room(size=(120, 40))
    async def touch(room):
        await colour(room)
        for words in ("take it from your logs", "large skein, madder root 50 %"):
            await room.touch(words)  # a touch marks a line, a touch on the marked line chooses it
            await room.touch(words)
        assert room.view.target[0].figures == "lab(42 45 30) ± 1.5"
        await room.touch("take it from your logs")
        if not room.view.listing:
            await room.touch("take it from your logs")
        await room.touch("large skein, madder root 25 %")
        if room.view.listing:
            await room.touch("large skein, madder root 25 %")
        assert "weaker" in room.view.words
        await room.touch("NEXT")
        assert isinstance(room.app.screen, PageScreen)

    touch(tmp_path)


def test_a_colorimeters_file_in_the_folder_is_a_target(tmp_path):
    (tmp_path / "readings.csv").write_text("L*,a*,b*,illuminant,observer\n42,45,30,D65,2\n44,44,29,D65,2\n", "utf-8")

    @in_a_room()
    async def csv(room):
        await colour(room)
        await room.press("c")
        await typed(room, "readings.csv")
        assert len(room.view.target) == 2 and "2 readings within" in room.view.aim.says
        await room.press("c")
        await typed(room, "43.0,44.5,29.5,D65,2")
        assert room.view.words == "Inside it." and "colorimeter" in room.view.sample[0].says

    csv(tmp_path)


@pytest.mark.parametrize("size", [(40, 10), (60, 18), (80, 24), (200, 60), (3, 2)])
def test_every_size_shows_the_next_act_or_at_least_does_not_fall_over(tmp_path, size):
    two_days(tmp_path)
    a_photo(tmp_path)

    @in_a_room(size=size)
    async def look(room):
        await colour(room)
        assert size[0] < 40 or "NEXT" in room.text()
        await room.press("down", "up", "end", "home", "c")
        await typed(room, "#a63e36")
        await choose(room, "photo")
        await room.type("skein.png")
        await room.press("enter", "left", "down", "q")
        assert room.place == "Colour" and room.app.is_running

    look(tmp_path)


@in_a_room()
async def test_the_help_page_explains_colour_and_names_its_keys(room):
    await colour(room)
    await room.press("?")
    assert isinstance(room.app.screen, PageScreen) and "measured dry" in room.text()
