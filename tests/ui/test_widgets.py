"""Each part of the Stove by itself: what it says, and that a state has more than its colour."""

from dataclasses import replace

import pytest

from dyesession.ui.block_text import BIG, SMALL, block_rows
from dyesession.ui.fixtures import ALARM, ASK_NUMBER, ASK_POT, RINSE, TWO_POTS, UNSAVED, WHERE
from dyesession.ui.ink import width_of
from dyesession.ui.keys import key_words
from dyesession.ui.stove_view import (
    POT_MARKS,
    STAGE_MARKS,
    Account,
    Bar,
    Bars,
    Clock,
    Curve,
    CurvePoint,
    Entry,
    Lane,
    Lanes,
    NextAct,
    Pot,
    Ringing,
    Said,
    Saving,
    Sentence,
    Shade,
    Stage,
    Strength,
)
from dyesession.ui.theme import DARK, LIGHT, palette_for
from dyesession.ui.widgets.account import draw_account
from dyesession.ui.widgets.ask import answer_at, draw_ask
from dyesession.ui.widgets.bars import draw_bars
from dyesession.ui.widgets.care import draw_care
from dyesession.ui.widgets.craft import draw_how, how_rows
from dyesession.ui.widgets.curve import draw_curve
from dyesession.ui.widgets.headline import draw_headline, headline_part
from dyesession.ui.widgets.key_line import KeysPart, draw_keys, key_at, keys_part, placed_keys
from dyesession.ui.widgets.lanes import draw_lanes
from dyesession.ui.widgets.large_clocks import away_part, draw_away, draw_loudest, loudest_part
from dyesession.ui.widgets.next_act import draw_next
from dyesession.ui.widgets.notice import draw_notice, notice_part
from dyesession.ui.widgets.pot import PotPart, draw_pot, is_colour
from dyesession.ui.widgets.pot_lines import draw_pot_lines
from dyesession.ui.widgets.ringing import RingingPart, draw_ringing
from dyesession.ui.widgets.shade import draw_shade
from dyesession.ui.widgets.where import draw_where

RUNNING = Pot("B", "extract pot", 0.5, clock=Clock("8:12"), state="running", first="70 °C until 11:50")


def text(lines):
    return "\n".join("".join(part for part, _ in line).rstrip() for line in lines).replace("\u00a0", " ")


def grounds(line):
    return {ink.ground for part, ink in line if part}


def pot(width=40, rows=11, palette=DARK, face=BIG, **changes):
    return draw_pot(PotPart(replace(RUNNING, **changes), 3, face), width, rows, palette)


# the pot


@pytest.mark.parametrize("state", POT_MARKS)
@pytest.mark.parametrize("width", [20, 40])
def test_every_state_of_a_pot_has_a_mark_and_a_word(state, width):
    assert f"{POT_MARKS[state]} {state}" in text(pot(width=width, state=state))


def test_the_clock_stands_in_the_pot_in_large_digits():
    drawn = text(pot()).replace("▁", " ")
    for row in block_rows("8:12", BIG):
        assert row.rstrip() in drawn


@pytest.mark.parametrize(("fill", "rows"), [(0.0, 0), (0.01, 1), (0.5, 4), (2 / 3, 5), (1.0, 7)])
def test_liquor_stands_as_high_as_the_pot_is_full(fill, rows):
    lines = pot(fill=fill, clock=None, liquor="#6e2a1b")
    assert sum("#6e2a1b" in grounds(line) for line in lines) == rows


def test_a_pot_filled_to_its_mark_stands_level_with_the_ticks_and_above_it_when_overfilled():
    def rows(fill):
        drawn = text(pot(fill=fill, clock=None)).split("\n")[:8]
        water = next(index for index, row in enumerate(drawn) if "▁▁▁" in row)
        ticks = next(index for index, row in enumerate(drawn) if row.startswith("▁"))
        return water, ticks

    water, ticks = rows(2 / 3)
    assert water == ticks
    water, ticks = rows(0.70)
    assert water < ticks
    water, ticks = rows(0.55)
    assert water > ticks


def test_a_liquor_has_no_colour_until_one_was_read():
    assert "bare" in set().union(*map(grounds, pot()))
    assert "bare" not in set().union(*map(grounds, pot(liquor="#6e2a1b")))


@pytest.mark.parametrize("liquor", ["madder", "#12", "#gggggg", "", "red; rm", "#6e2a1b\x1b"])
def test_a_colour_that_is_none_is_not_drawn(liquor):
    assert not is_colour(liquor)
    assert "bare" in set().union(*map(grounds, pot(liquor=liquor)))


@pytest.mark.parametrize("depth", ["16", "none"])
def test_no_liquor_colour_is_guessed_where_the_terminal_has_none(depth):
    lines = pot(liquor="#6e2a1b", palette=palette_for(True, depth))
    assert "#6e2a1b" not in set().union(*map(grounds, lines))


def test_digits_that_cross_the_waterline_of_a_pale_liquor_stand_on_a_plate():
    pale = pot(liquor="#d9b79c", fill=0.5)
    inks = {ink.front for line in pale[:8] for part, ink in line if set(part) & set("█") and ink.bold}
    assert inks == {"strong"}
    full = pot(liquor="#d9b79c", fill=1.0)
    inks = {ink.front for line in full[:8] for part, ink in line if set(part) & set("█") and ink.bold}
    assert inks == {DARK.dark}


def test_what_is_overdue_stands_on_amber_and_what_is_merely_due_does_not():
    overdue = pot(state="overdue", clock=Clock("3", "min over"))
    assert "alarm" in set().union(*map(grounds, overdue[:8])) and "min over" in text(overdue)
    due = pot(state="due", clock=Clock("DUE", "now"))
    assert "alarm" not in set().union(*map(grounds, due)) and "strong" in set().union(*map(grounds, due[:8]))


def test_a_pot_on_the_heat_has_flames_and_a_word():
    hot, cold = pot(on_heat=True), pot(on_heat=False)
    assert "ember" in grounds(hot[7]) and "ember" not in grounds(cold[7])
    assert "on heat" in text(hot) and "on heat" not in text(cold)


def test_a_word_for_a_clock_is_drawn_large_where_it_fits_and_plain_where_not():
    assert block_rows("overnight", SMALL)[0].rstrip() in text(pot(width=44, clock=Clock("overnight")))
    assert "overnight" in text(pot(width=20, clock=Clock("overnight"), face=SMALL))


@pytest.mark.parametrize("width", [20, 30, 60])
def test_a_pot_says_its_letter_its_name_and_until_when(width):
    drawn = text(pot(width=width))
    assert "extract pot" in drawn and "70 °C until 11:50" in drawn
    assert "B " in drawn or block_rows("B", SMALL)[0] in drawn


def test_a_pot_without_a_picture_is_a_line_with_its_clock():
    lines = draw_pot_lines((RUNNING, replace(RUNNING, letter="C", state="overdue")), 80, 2, DARK)
    assert "B extract pot" in text(lines[:1]) and "8:12" in text(lines[:1])
    assert "▲ overdue" in text(lines[1:])
    together = text(draw_pot_lines((RUNNING, replace(RUNNING, letter="C")), 80, 1, DARK))
    assert "B ●" in together and "C ●" in together


# the lanes


def test_every_state_of_a_step_has_its_mark():
    stages = tuple(Stage(f"step{index}", state) for index, state in enumerate(STAGE_MARKS))
    drawn = text(draw_lanes(Lanes((Lane("fibre", stages),)), 200, 1, DARK))
    for index, mark in enumerate(STAGE_MARKS.values()):
        assert f"step{index} {mark}" in drawn
    assert "paused" in drawn and "ready" in drawn and "skipped" in drawn


def test_two_lanes_meet_in_one_column():
    top, bottom = text(draw_lanes(TWO_POTS.lanes, 160, 2, DARK)).split("\n")
    assert top.index("┐") == bottom.index("┴")
    assert bottom.index("dye") > bottom.index("┴")


def test_a_recipe_with_one_pot_has_one_lane():
    one = Lanes((Lane("pot", (Stage("extract", "running"),)),), (Stage("dye"),))
    assert text(draw_lanes(one, 80, 1, DARK)) == " pot   extract ● ────── dye ○"


@pytest.mark.parametrize("width", range(10, 200, 7))
def test_lanes_never_run_over_and_keep_what_is_under_way(width):
    lines = draw_lanes(TWO_POTS.lanes, width, 2, DARK)
    assert all(width_of(line) <= width for line in lines)
    if width >= 60:
        assert "mordant ●" in text(lines) and "extract again ●" in text(lines)


# account, care, the next act, alarms


def test_the_strength_is_large_from_three_rows_on():
    assert block_rows("71 ± 13", SMALL)[0].rstrip() in text(draw_account(TWO_POTS.account, 80, 3, DARK))
    assert text(draw_account(TWO_POTS.account, 80, 1, DARK)).startswith(" The dye pot holds")


def test_where_the_second_sentence_would_be_lost_the_first_gives_way_to_what_the_figure_says() -> None:
    first = Sentence((Said("The dye pot holds the colour of 50 to 116 g of your 120 g madder."),), "a guess")
    again = Sentence((Said("Again? Match a strain first: 2 to 24 % more for 100 min heat."),), "a guess")
    figure = Strength("50 to 116", "g", "of 120 g madder", "guess")
    tight = " ".join(text(draw_account(Account(figure, (first, again)), 80, 3, DARK)).split())
    assert "of 120 g madder, a guess. Again?" in tight and "heat, a guess." in tight and "holds" not in tight
    roomy = text(draw_account(Account(figure, (first, again)), 200, 5, DARK))
    assert "The dye pot holds the colour of" in roomy and "Again? Match" in roomy
    alone = " ".join(text(draw_account(Account(figure, (first,)), 80, 3, DARK)).split())
    assert "The dye pot holds the" in alone


def test_an_estimate_says_where_it_comes_from():
    sentence = Sentence((Said("A holds "), Said("71 ± 13 g.", "strong")), "modelled")
    assert text(draw_account(Account(None, (sentence,)), 80, 1, DARK)) == " A holds 71 ± 13 g, modelled."
    alone = Account(Strength("55 ± 25", "g", "of 120 g madder", "guess"))
    assert "guess" in text(draw_account(alone, 80, 3, DARK))


def test_reminders_start_with_care_and_none_is_left_out_while_there_are_rows():
    drawn = text(draw_care(("Hot: one second burns.", "No lid on it."), 60, 2, DARK)).split("\n")
    assert "CARE" in drawn[0] and "one second burns" in drawn[0] and "No lid" in drawn[1]


def test_the_next_act_is_large_and_in_full():
    part = NextAct("strain B into the dye pot", "in 8 minutes", "strain B")
    drawn = text(draw_next(part, 80, 3, DARK))
    assert block_rows("strain B", SMALL)[0].rstrip() in drawn
    assert "strain B into the dye pot" in drawn and "in 8 minutes" in drawn
    assert "strain B into the dye pot" in text(draw_next(part, 80, 1, DARK))


def test_an_alarm_says_pot_what_and_what_to_do():
    drawn = " ".join(text(draw_ringing(RingingPart(ALARM.ringing, "11:53"), 200, 3, DARK)).split())
    for words in ("RINGING", "B: the extract pot is 3 minutes over", "Strain it", "11:53", "space: seen"):
        assert words in drawn


def test_an_alarm_without_short_words_shows_the_pots_letter_large():
    drawn = text(
        draw_ringing(RingingPart(Ringing("B", "too hot", "Take it off.", "3 min over"), ""), 80, 3, DARK)
    )
    assert block_rows("B over", SMALL)[0].rstrip() in drawn


# what is typed, asked, saved


def test_an_ask_in_any_room_shows_how_to_answer():
    for rows in (3, 4, 5, 8, 11):
        drawn = text(draw_ask(ASK_POT.ask, 80, rows, DARK))
        assert "Which pot does the fibre go into?" in drawn
        assert "extract pot" in drawn and "dye pot" in drawn and "not now" in drawn
        assert ("╔" in drawn) == (rows >= 5)


def test_an_answer_is_found_where_it_is_drawn():
    lines = draw_ask(ASK_POT.ask, 80, 8, DARK)
    row = text(lines).split("\n")[6]
    assert answer_at(ASK_POT.ask, row.index("extract pot"), 6, 80, 8) == "b"
    assert answer_at(ASK_POT.ask, row.index("dye pot"), 6, 80, 8) == "c"
    assert answer_at(ASK_POT.ask, row.index("not now"), 6, 80, 8) == "-"
    assert answer_at(ASK_POT.ask, 40, 6, 80, 8) is None
    assert answer_at(ASK_POT.ask, row.index("dye pot"), 3, 80, 8) is None


def test_a_typed_number_is_shown_with_what_it_was_understood_as():
    drawn = text(draw_keys(KeysPart((), Entry("weight of alum", "2.5 oz", "= 70.9 g")), 80, 1, DARK))
    assert "weight of alum" in drawn and "2.5 oz▏" in drawn and "= 70.9 g" in drawn and "enter" in drawn


def test_of_a_long_note_the_end_is_seen():
    drawn = text(draw_keys(KeysPart((), Entry("note", "a" * 200 + " the end")), 60, 1, DARK))
    assert "the end▏" in drawn


def test_a_key_is_found_where_it_is_drawn():
    part = KeysPart(key_words(("space", "t", ".", "?")))
    row = text(draw_keys(part, 80, 1, DARK))
    assert key_at(part, row.index("temperature"), 0, 80, 1) == "t"
    assert key_at(part, row.index("help"), 0, 80, 1) == "?"
    assert key_at(part, 79, 0, 80, 1) is None
    assert [key.key for _, _, key in placed_keys(part.keys, 20, 1)] == [".", "?"]


def test_while_letters_answer_no_other_letter_is_offered():
    assert {key.key for key in keys_part(ASK_POT).keys} == {"q", ".", "?"}
    assert "space" not in {key.key for key in keys_part(ASK_NUMBER).keys}
    assert "t" in {key.key for key in keys_part(ASK_NUMBER).keys}


@pytest.mark.parametrize(
    ("state", "shown"), [("saved", "✓ saved"), ("saving", "… saving"), ("NOT SAVED", "▲ NOT SAVED")]
)
def test_the_top_line_says_whether_all_is_on_the_disk(state, shown):
    view = replace(TWO_POTS, saving=Saving(state, "because"))
    assert shown in text(draw_headline(headline_part(view), 80, 1, DARK))


def test_what_is_not_saved_names_the_file():
    drawn = text(draw_notice(notice_part(UNSAVED), 90, 3, DARK))
    assert "logs/2026-03-14-madder-brick-k7q2.toml" in drawn and "the disk is full" in drawn
    assert "NOT SAVED" in text(draw_notice(notice_part(replace(ALARM, saving=UNSAVED.saving)), 90, 1, DARK))


# pages and panels


def test_where_you_are_starts_with_what_rings_and_ends_with_the_newest_entry():
    drawn = text(draw_where(WHERE.where, 80, 20, DARK))
    assert drawn.index("RINGS") < drawn.index("mordant pot") < drawn.index("done last")
    short = text(draw_where(WHERE.where, 80, 9, DARK))
    assert "read 84 °C in A" in short and "strained B into C" not in short


def test_from_across_the_room_the_loudest_clock_is_the_largest():
    drawn = text(draw_away(away_part(TWO_POTS), 80, 20, DARK))
    assert drawn.index("extract pot") < drawn.index("mordant pot")
    assert drawn.split("\n")[1].startswith("   ████████████")


def test_a_tiny_window_has_the_loudest_clock_only():
    drawn = text(draw_loudest(loudest_part(ALARM), 40, 8, DARK))
    assert "extract pot" in drawn and "min over" in drawn and "mordant" not in drawn
    assert "no clock runs" in text(draw_loudest((), 40, 8, DARK))


def test_a_curve_has_its_readings_its_ramp_and_now():
    drawn = text(draw_curve(TWO_POTS.curve, 80, 12, DARK))
    assert drawn.count("●") >= 7 and "▲ now" in drawn and "90 °C" in drawn and "12:06" in drawn
    assert any("⠀" < char <= "⣿" for char in drawn)


@pytest.mark.parametrize("points", [(), (CurvePoint(0, 20),), (CurvePoint(5, 20), CurvePoint(5, 20))])
def test_a_curve_of_little_or_nothing_is_no_trouble(points):
    for height in range(1, 12):
        assert len(draw_curve(Curve("A", read=points), 60, height, DARK)) <= height


def test_bars_reach_as_far_as_their_figures_and_end_with_them():
    lines = draw_bars(TWO_POTS.bars, 70, 10, DARK)
    drawn = text(lines).split("\n")
    assert "58 to 84" in drawn[2] and "first strain" in drawn[2]
    assert sum(len(part) for part, ink in lines[2] if ink.ground == "#7d2f1d") > 20
    assert drawn[2].index("├") < drawn[2].index("┤")
    assert "░" in drawn[4] and "░" not in drawn[2]
    assert len(draw_bars(Bars("nothing", (Bar("x", 0, 0, 0, "0"),)), 70, 10, LIGHT)) == 10


def test_two_shades_touch_in_a_grey_field_and_have_their_numbers():
    shade = Shade("#8e3b26", "wanted", "#9c4a33", "snippet")
    lines = draw_shade(shade, 40, 12, DARK)
    row = [ink.ground for part, ink in lines[4] if part]
    assert row[row.index("#8e3b26") + 1] == "#9c4a33" and "grey_field" in row
    assert "#8e3b26" in text(lines) and "#9c4a33" in text(lines)
    some = draw_shade(shade, 60, 12, palette_for(True, "256"))
    assert "approximate, 256 colours" in text(some) and "approximate" not in text(lines)
    poor = draw_shade(shade, 40, 12, palette_for(True, "none"))
    assert "numbers only" in text(poor) and "#8e3b26" not in set().union(*map(grounds, poor))


def test_the_rinse_is_shown_with_both_lanes_behind_it():
    drawn = text(draw_lanes(RINSE.lanes, 80, 2, DARK))
    assert "rinse ●" in drawn and "keep the bath ▷" in drawn


def test_what_the_recipe_says_is_read_from_the_front_in_as_many_rows_as_there_are():
    say = "Only if it should be darker: skip this step otherwise. Lift the wool before the second half goes in."
    assert how_rows(say, 80) == 2 and how_rows("", 60) == 0 and how_rows(say * 9, 60) == 3
    whole, first = text(draw_how(say, 80, 2, DARK)), text(draw_how(say, 80, 1, DARK))
    assert " HOW    Only if it should be darker: skip this step otherwise. Lift the" in whole and "half goes in." in whole
    assert first.rstrip().endswith("…") and "\n" not in first.strip("\n")


def test_what_is_amiss_with_the_log_stands_on_the_page_after_an_absence():
    torn = replace(WHERE.where, amiss=("The end of the log was torn; 64 bytes were set aside in day.torn-1.",))
    shown = text(draw_where(torn, 60, 18, DARK))
    assert "The end of the log was torn; 64 bytes" in shown and shown.index("torn") < shown.index("in the pots")
