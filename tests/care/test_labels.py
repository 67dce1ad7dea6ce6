"""Labels of kept baths and jars: what stands on them, and how they are set."""

from dataclasses import replace
from datetime import date
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import Stored, label_as_json, label_lines, label_of, label_svg
from dyesession.care.label_print import NARROWEST, _cells
from dyesession.care.labels import HEADING
from dyesession.substances import load

MADE = date(2026, 3, 14)
MADDER_BATH = Stored(
    what="madder bath 3",
    made=MADE,
    contents=(("madder", 120.0), ("alum", 3.0)),
    history="240 g grey-faced handspun over 12 % alum and 6 % tartar",
    left="the colour of 31 ± 9 g of 120 g madder, modelled",
    volume_l=6.4,
    ph=6.8,
    ph_on=MADE,
    number="2026-03-14-madder-brick-k7q2, bath 3",
    sheet_at="the blue folder",
    owner="A. Dyer",
    phone="0999",
    poison_centre="0123 456",
)
TEXT = st.text(max_size=60)
STORED = st.builds(
    Stored,
    what=TEXT,
    made=st.just(MADE),
    contents=st.lists(
        st.tuples(st.sampled_from(sorted(load())) | TEXT, st.none() | st.floats(0.05, 900.0)), max_size=4
    ).map(tuple),
    history=TEXT,
    left=TEXT,
    ph=st.none() | st.floats(1.0, 13.0),
    number=TEXT,
    owner=TEXT,
    phone=TEXT,
    poison_centre=TEXT,
    form=st.sampled_from(["bath", "stock", "dry"]),
)


def _rows(stored):
    return dict(label_of(stored).rows())


def test_a_kept_bath_carries_every_field():
    assert list(_rows(MADDER_BATH)) == [
        "this is", "went through", "worst in it", "hazards", "left in it", "pH", "made", "look again",
        "keep from", "lid", "sheet", "whose", "swallowed", "log",
    ]  # fmt: skip
    assert label_of(MADDER_BATH).heading == HEADING == "NOT FOOD: DYE"


def test_it_says_what_is_in_it_how_it_was_used_and_what_is_left():
    rows = _rows(MADDER_BATH)
    assert rows["this is"] == "madder bath 3, 6.4 L: 120 g madder, 3 g alum"
    assert rows["went through"].startswith("240 g grey-faced handspun")
    assert rows["left in it"] == "the colour of 31 ± 9 g of 120 g madder, modelled"
    assert rows["pH"] == "6.8, measured 2026-03-14"
    assert rows["log"] == "2026-03-14-madder-brick-k7q2, bath 3"


def test_the_date_to_look_again_carries_the_mark_of_whoever_set_it():
    assert _rows(MADDER_BATH)["look again"] == "by 2026-03-16 (common practice, no source)"
    iron = replace(MADDER_BATH, contents=(("iron", 2.4),))
    assert _rows(iron)["look again"].startswith("by 2026-03-16 (own choice, no source")
    own = replace(MADDER_BATH, look_again=date(2026, 3, 15))
    assert _rows(own)["look again"] == "by 2026-03-15 (your own date)"
    cold = replace(MADDER_BATH, contents=(("madder", 120.0),), place="cold")
    assert _rows(cold)["look again"].startswith("by 2026-03-21")


@pytest.mark.parametrize(
    ("contents", "worst", "signal", "signs"),
    [
        ((("madder", 120.0), ("alum", 3.0)), "3 g alum (potassium alum)", "Warning", ["GHS07"]),
        (
            (("alum", 3.0), ("copper sulphate", 2.0)),
            "2 g copper sulphate",
            "Danger",
            ["GHS05", "GHS07", "GHS09"],
        ),
        ((("madder", 120.0),), "120 g madder (madder root)", "", []),
        ((("alum", 3.0), ("fairy dust", 1.0)), "fairy dust, whose hazards are not known here", "Warning", []),
        ((), "nothing noted: treat it as unknown", "", []),
    ],
)
def test_the_worst_thing_in_it_is_named_with_its_signal_word_and_signs(contents, worst, signal, signs):
    label = label_of(Stored(what="a bath", made=MADE, contents=contents))
    assert label.worst == worst
    assert label.signal_word == signal
    assert [code for code, _ in label.pictograms] == signs


def test_no_label_has_more_than_three_signs_and_each_is_a_code_with_its_word():
    chrome = label_of(Stored(what="an old jar", made=MADE, contents=(("chrome", 5.0),), form="dry"))
    assert chrome.pictograms == (("GHS06", "skull"), ("GHS05", "corrosion"), ("GHS08", "health hazard"))


@pytest.mark.parametrize(
    ("contents", "away"),
    [
        ((("alum", 3.0),), {"bleach", "dithionite", "chalk and soda"}),
        ((("ammonia", 50.0),), {"bleach", "peroxide", "ammonium salts"}),
        ((("dithionite", 5.0),), {"acid", "bleach", "peroxide"}),
        ((("soda ash", 5.0),), {"acid", "ammonium salts"}),
        ((("3 % peroxide", 5.0),), {"bleach", "vinegar", "iron", "dithionite"}),
        ((("iron", 5.0),), {"peroxide"}),
        ((("madder", 5.0),), set()),
    ],
)
def test_it_is_kept_from_children_and_bottles_and_from_what_it_must_not_meet(contents, away):
    kept_from = label_of(Stored(what="a bath", made=MADE, contents=contents)).keep_from
    assert kept_from[:3] == ("children", "pets", "drink bottles")
    assert set(kept_from[3:]) == away


@pytest.mark.parametrize(
    ("name", "form", "lid"),
    [
        ("weld", "bath", "loose"),
        ("alum", "bath", "loose, not of bare metal"),
        ("alum", "stock", "closed, not of bare metal"),
        ("tannic acid", "stock", "loose"),
        ("alum", "dry", "shut tight, and dry"),
    ],
)
def test_what_works_has_a_loose_lid_and_what_eats_metal_no_metal_one(name, form, lid):
    assert label_of(Stored(what="it", made=MADE, contents=((name, 1.0),), form=form)).lid == lid


def test_owner_and_number_are_left_out_where_nobody_gave_them():
    bare = label_of(Stored(what="weld bath", made=MADE, contents=(("weld", 90.0),)))
    rows = dict(bare.rows())
    assert not {"whose", "log", "left in it", "went through"} & set(rows)
    assert rows["swallowed"] == "ring your poison centre or the emergency number"
    assert _rows(MADDER_BATH)["swallowed"] == "ring your poison centre (0123 456)"


@given(STORED, st.integers(NARROWEST, 90))
def test_every_line_of_a_label_is_as_wide_as_the_label(stored, width):
    lines = label_lines(label_of(stored), width)
    assert {_cells(line) for line in lines} == {width}
    assert all(line.isprintable() for line in lines)
    assert HEADING in lines[1]


@given(STORED)
def test_the_drawing_is_well_formed_holds_every_word_and_nothing_from_elsewhere(stored):
    label = label_of(stored)
    drawn = label_svg(label)
    root = ElementTree.fromstring(drawn)
    words = "".join("".join(root.itertext()).split())
    for name, text in label.rows():
        assert "".join(name.split()) in words
        assert "".join(text.split())[:20] in words
    assert {one.tag.rpartition("}")[2] for one in root.iter()} <= {"svg", "title", "rect", "text"}
    assert drawn.count("http") == 1 or "http" in str(stored)
    assert "href" not in drawn or "href" in str(stored)


def test_a_narrower_label_than_it_can_be_is_refused():
    with pytest.raises(ValueError, match="a label 20 wide"):
        label_lines(label_of(MADDER_BATH), 20)


def test_the_label_is_plain_data_too():
    document = label_as_json(label_of(MADDER_BATH))
    assert document["heading"] == HEADING
    assert document["made"] == "2026-03-14"
    assert document["look_again"] == "2026-03-16"
    assert document["pictograms"] == [{"code": "GHS07", "word": "exclamation mark"}]
    assert document["signal_word"] == "Warning"
