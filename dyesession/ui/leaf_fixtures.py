"""Frozen moments of the Day book, the Bath shelf and the leaves that hang on them. Every number is invented.

They stay as the places' snapshots, and every drawing function is tried on them.
"""

from dataclasses import replace

from dyesession.ui.bench_view import Swatch
from dyesession.ui.book_view import BookDay, BookView, LeftAside
from dyesession.ui.frame_view import Entry, Frame, NextAct
from dyesession.ui.leaf_view import DayLanes, Doable, Heat, LaneBar, LeafView, Section, Shades, Told
from dyesession.ui.place_keys import (
    BATH,
    COMPARE,
    DAY,
    DAY_BOOK,
    JARS,
    OWN_NUMBERS,
    REPEAT,
    SHELF,
    WRONG,
    place_key_words,
)
from dyesession.ui.stove_view import Curve, CurvePoint

_BOOK_KEYS = place_key_words(("space", "enter", "/", "tab", "q", "r", "?"))
_SHELF_KEYS = place_key_words(("space", "enter", "tab", "q", "r", "?"))
_LEAF_KEYS = place_key_words(("space", "enter", "q", "r", "?"))
_TYPING_KEYS = place_key_words(("enter", "escape"))
_BRICK = Swatch("#8b3a2b", "large skein, dry")
_CUFF = Swatch("#94473a", "small skein, dry")
_WELD = Swatch("#d8b832", "wool, dry")

_DAYS = (
    BookDay("day:brick", "2026-03-14", "Madder brick red on wool", "240 g wool, 2 lots", "", 2, (_BRICK, _CUFF),
            ("“even, a little brown”", "with madder root", "aftercare due: second wash, window test",
             "kept: madder bath 3")),
    BookDay("day:weld", "2026-02-27", "Weld yellow on wool", "140 g wool", "", 0, (_WELD,), ("“clear”", "with weld")),
    BookDay("day:stopped", "2026-02-20", "A day without a recipe", "60 g silk", "ended early"),
    BookDay("day:trial", "2026-02-14", "Onion skins in one pot", "100 g wool", "rehearsal"),
)  # fmt: skip
BOOK = BookView(
    Frame(DAY_BOOK, "4 days", "11:42", NextAct("look back on Madder brick red on wool", "2026-03-14", "look back"), _BOOK_KEYS),
    "day:brick", _DAYS, (
        LeftAside("aside:0", "2026-01-03-madder (copy from the laptop).toml",
                  "2026-01-03-madder (copy from the laptop).toml is a copy, older or the same, of 2026-01-03-madder-k7q2.toml"),
        LeftAside("aside:1", "shopping.toml", "shopping.toml: there is no head of a log in it; expected a session log"),
    ), 4, own="what your days have taught, beside the usual guesses",
)  # fmt: skip
BOOK_FINDING = replace(
    BOOK, days=_DAYS[:1], aside=(), own="", find="near #8b3a2b within 6",
    frame=replace(BOOK.frame, keys=_TYPING_KEYS, entry=Entry("days", "near #8b3a2b within 6", "= 1 of 4"),
                  note='for example "dyestuff madder", "fibre silk", "since 2026-03", "near #8b3a2b within 6", "kept"'),
)  # fmt: skip
BOOK_EMPTY = BookView(
    Frame(DAY_BOOK, "0 days", "09:00",
          NextAct("go to the Bench and work a recipe out", "the first day stands here then", "Bench"), _BOOK_KEYS),
    greeting=("Nothing stands in your day book yet.",
              "A day comes in by itself as soon as it is begun at the Bench; nothing has to be saved or filed."),
)  # fmt: skip

_ACTS = (
    Doable("repeat", "Repeat this colour", "a recipe of what was done, for other fibre"),
    Doable("compare", "Compare with another day", "what was other, what matters most first"),
    Doable("wrong", "What went wrong?", "streaks, felting, bleeding, too pale: causes and mends"),
    Doable("care", "Note some aftercare", "a dry shade, a second wash, a rub, the window"),
    Doable("tags", "Print the skeins' tags", "a page to print and cut out, and a text"),
    Doable("page", "Print the whole day", "one page: lanes, heat, doses, baths, swatches"),
)
_HEAT = Curve(
    "extract pot",
    (CurvePoint(10, 15), CurvePoint(55, 70), CurvePoint(115, 70)),
    (CurvePoint(40, 52), CurvePoint(60, 68), CurvePoint(90, 71), CurvePoint(115, 70)),
    None, "09:10", "10:55",
)  # fmt: skip
DAY_OPEN = LeafView(
    Frame(DAY, "Madder brick red on wool, 2026-03-14", "11:42", NextAct("note the second wash", "", "note"), _LEAF_KEYS),
    "due:second wash",
    (
        Section("how it came out", (
            Shades((_BRICK, _CUFF), "shades"), Told("“even, a little brown”", strong=True),
            Told("Madder brick red on wool, 240 g wool, 2 lots", head="2026-03-14"),
            Told("madder root over potassium alum and cream of tartar", head="with"),
        )),
        Section("still wanted", (
            Doable("due:second wash", "! second wash", "since 2026-03-21: wash it once more, apart, and note what runs"),
            Doable("due:window test", "! window test", "since 2026-03-15: hang a strand half covered in a sunny window"),
        )),
        Section("with this day", _ACTS),
        Section("otherwise than planned", (
            Told("madder as it went in, 112 g, not 120 g as planned"), Told("dye was begun 40 min later than planned"),
        )),
        Section("the day: a line as planned, a bar as it was", (DayLanes((
            LaneBar("scour", "fibre", (0, 150), (0, 166), "09:00 to 11:46"),
            LaneBar("extract", "liquor", (10, 120), (11, 123), "09:11 to 11:03"),
            LaneBar("strain", "liquor", (120, 125), (127, 129), "11:07 to 11:09"),
            LaneBar("mordant", "fibre", (150, 1100), (167, 1321), "11:47 to 07:01"),
            LaneBar("dye", "fibre", (1100, 1225), (1322, 1453), "07:02 to 09:13"),
            LaneBar("rinse", "fibre", (1225, 1235), None, "skipped"),
        ), "lanes"),)),
        Section("heat: dotted as wanted, a line as read", (Heat(_HEAT, "heat:extract pot"),)),
        Section("doses", (Told("alum: planned 28.8 g, put in 29 g, weighed"), Told("madder: planned 120 g, put in 112 g (-7 %), weighed"))),
    ),
    (Told("second wash", strong=True), Told("since 2026-03-21: wash it once more, apart, and note what runs"),
     Told("as it was read; on a screen it is a hint"), Shades((_BRICK, _CUFF))),
)  # fmt: skip
DAY_CARING = replace(
    DAY_OPEN,
    frame=replace(
        DAY_OPEN.frame, keys=_TYPING_KEYS, note="for example large skein: brick, a little pale, #8b3a2b",
        entry=Entry("second wash", "large skein: runs a little", "= large skein, runs a little"),
    ),
)  # fmt: skip
REPEATING = LeafView(
    Frame(REPEAT, "Madder brick red on wool, 2026-03-14", "11:43", NextAct("work it out now", "4 doses", "work out"), _LEAF_KEYS),
    "work-out",
    (
        Section("for what?", (Doable("fibre", "fibre: 90 g silk", "enter: type it anew"),
                              Doable("depth", "depth: 0.5, half of it", "enter: type another"))),
        Section("with it", (Doable("work-out", "Work it out now", "water, pots, times, cautions; then begin"),
                            Doable("write", "Write this recipe down", "a recipe of your own, to be found at the Bench"))),
        Section("what to expect", (Told("Expect 0.38 to 0.95 of that day's depth, nine times in ten: a snippet says where in"
                                        " it."),)),
        Section("to weigh", (Told("10.8 g ± 0.2 g", head="alum"), Told("17 g ± 1 g", head="madder"))),
        Section("other this time", (Told("90 g silk, not 240 g wool: about 0.7 times the depth.", head="fibre"),
                                    Told("madder as it went in, 112 g, not 120 g as planned.", head="done"))),
    ),
)  # fmt: skip
COMPARING = LeafView(
    Frame(COMPARE, "Madder brick red on wool, 2026-03-14, and Madder brick red on wool, 2026-01-31", "11:44",
          NextAct("choose another day", "", "another"), _LEAF_KEYS),
    "",
    (
        Section("how they came out", (
            Told("#8b3a2b, then #8f4030, 5 ± 3 apart", head="large skein"),
            Shades((Swatch("#8b3a2b", "the one"), Swatch("#8f4030", "the other")), "pair"),
            Told("“even, a little brown”", head="the one"), Told("no verdict", head="the other"))),
        Section("what was other, what matters most for the colour first", (
            Told("47 %  |  60 %", head="madder root", strong=True), Told("about 1.3 times the depth", head=" ", mark="(own weight, no source)"),
            Told("40 min  |  65 min", head="dyed for", strong=True), Told("about 1.1 times the depth", head=" "))),
        Section("the same", (Told("fibre wool"), Told("potassium alum 12 %"))),
    ),
    (Shades((Swatch("#8b3a2b", "the one"), Swatch("#8f4030", "the other"))),),
)  # fmt: skip
WENT_WRONG = LeafView(
    Frame(WRONG, "Madder brick red on wool, 2026-03-14", "11:45", NextAct("look for the causes: streaks", "", "causes"), _LEAF_KEYS),
    "trouble:streaks",
    (Section("what is it?", tuple(
        Doable(f"trouble:{one}", one, says) for one, says in (
            ("streaks", "the log shows 1 of its usual causes"), ("felting", "the log shows none of its usual causes"),
            ("stickiness", "the log shows none of its usual causes"), ("bleeding", "the log shows none of its usual causes"),
            ("too pale", "the log shows 2 of its usual causes"), ("too dull", "the log shows none of its usual causes"),
            ("wrong hue", "the log shows none of its usual causes"))
    )),),
    (Told("The bath rose too fast for the colour to go on evenly.", head="cause", strong=True, mark="(common practice, no source)"),
     Told("In dye the bath rose 2.6 °C a minute, from 20 °C to 85 °C.", head="the log"),
     Told("Level it in a fresh lukewarm bath, slowly up.", head="mend", mark="(common practice, no source)")),
)  # fmt: skip

_BATH = (
    Told("madder bath 3", "bath:brick", strong=True, mark="2026-03-14, in the cellar; look again by 2026-03-18"),
    Told("2.9 ± 0.3 L: the colour of 30 ± 12 g of 120 g madder, 0.8 ± 0.2 g of 28.8 g alum, modelled", "bath:brick"),
    Told("It would still do about 60 g of alumed wool at half the depth of the large skein (0.3 to 0.8).", "bath:brick"),
)
_ABOUT_BATH = (
    Told("Used once, 165 g wool went through it: its hue may drift."),
    Told("pH 6.4, read 2026-03-14."),
    Told("Look again by 2026-03-18 (common practice, no source); put by 3 days ago."),
    Told("madder bath 3: open it outdoors or by a window; foul or fuzzy, throw it out.", strong=True),
    Shades((Swatch("#8b3a2b", "the first lot, dry"),)),
)
ON_SHELF = LeafView(
    Frame(SHELF, "2 baths, 1 lot waiting", "11:46", NextAct("look at madder bath 3", "", "open"), _SHELF_KEYS),
    "bath:brick",
    (
        Section("does not add up", (Told("“madder bath 3” of 2026-03-14-madder was drawn from more than it held: 2 L by the one "
                                         "and 2 L by the other, but 2.9 L stood there.", strong=True),)),
        Section("kept baths", _BATH),
        Section("mordant baths and others", (
            Told("alum bath 2", "bath:alum", strong=True, mark="2026-03-01; look again by 2026-05-30"),
            Told("4 ± 0.2 L: 10.6 ± 2 g of 17.4 g alum, modelled", "bath:alum"))),
        Section("mordanted, waiting for a bath", (
            Told("the autumn skein, 110 g wool, mordanted with alum 12 %, waits since 2026-02-06 (39 days ago)", "lot:0"),)),
    ),
    _ABOUT_BATH,
)  # fmt: skip
SHELF_EMPTY = LeafView(
    Frame(SHELF, "0 baths, 0 lots waiting", "09:00",
          NextAct("go to the Bench and begin a day", "what it keeps stands here then", "Bench"), _SHELF_KEYS),
    "say:0:0",
    (Section("", (Told("Nothing stands on your shelf, and no mordanted fibre waits."),
                  Told("Put a bath by at the end of a day, under a label: it comes here by itself, with what is left in it."))),),
)  # fmt: skip
KEPT = LeafView(
    Frame(BATH, "madder bath 3, kept 2026-03-14", "11:47", NextAct("draw from it", "", "draw"), _LEAF_KEYS),
    "draw",
    (
        Section("with this bath", (
            Doable("draw", "Draw from it", "into the open day, a new day by a recipe, or one without"),
            Doable("pool", "Pour it into another bath", "never-mix and iron are looked at first"),
            Doable("top-up", "Top it up", "water, what recharges it, or both"),
            Doable("seen", "Say what it is now", "its litres, its pH, where it stands, its label"),
            Doable("correct", "Put an entry right", "where a log says too much or too little of it"),
            Doable("label", "Write its label", "a drawing to print, and a text"),
            Doable("discard", "Throw it away safely", "told first what may go where"))),
        Section("madder bath 3", _ABOUT_BATH),
    ),
)  # fmt: skip
KEPT_MINDING = replace(
    KEPT, cursor="do", frame=replace(KEPT.frame, next_act=NextAct("it is done: write it down", "", "done")),
    sections=(
        Section("first bear in mind", (
            Told("Down a drain with plenty of water where your drain goes to a treatment works; never into a stream.", strong=True),)),
        Section("Bath shelf: madder bath 3 thrown away", (
            Doable("do", "It is done: write it down", "“madder bath 3” stands on the shelf no longer."),
            Doable("back", "Not now", "back to the bath; nothing is written"))),
    ),
)  # fmt: skip
KEPT_DRAWING = replace(
    KEPT, cursor="pour", frame=replace(KEPT.frame, next_act=NextAct("pour it into the dye pot", "", "pour")),
    sections=(
        Section("first bear in mind", (
            Told("madder bath 3: lid off away from your face; fuzz or a rotten-egg smell, outdoors with it and out.", strong=True),
            Told("madder bath 3 has iron in it: all that goes into D saddens, for good. Mark pot, spoon and thermometer for "
                 "iron.", strong=True),
            Told("madder bath 3 brings 0.8 ± 0.2 g alum of 2026-03-14: count it in before more is added.", strong=True),
            Told("madder bath 3 into D: it has drifted. Read its pH, try a snippet first.", strong=True))),
        Section("2 L of madder bath 3", (
            Doable("pour", "Pour it into the dye pot", "into the day that is open; written into its log"),
            Doable("back", "Not now", "back to the bath; nothing is written"))),
    ),
)  # fmt: skip
IN_THE_JARS = LeafView(
    Frame(JARS, "3 jars", "11:48", NextAct("write it on paper", "", "on paper"), _LEAF_KEYS),
    "plan:0",
    (
        Section("the next plans", (
            Told("Madder brick red on wool, 240 g: 6.30, 2.63 for 100 g of fibre; without wash, which no price was written for.",
                 "plan:0"),
            Told("Weld yellow on wool, 100 g: 3.10, 3.10 for 100 g of fibre.", "plan:1"),
            Doable("add", "Another colour", "its recipe and its fibre: what it takes, what it costs"),
            Doable("fewer", "Leave out Weld yellow on wool", "the last of them"))),
        Section("to buy for them", (
            Told("To buy: 10 g madder root, 0.45. In no jar of yours: 14.4 g neutral textile wash.", strong=True),
            Doable("paper", "Write it on paper", "jars, plans, costs, what to buy"))),
        Section("in the jars", (
            Told("230 g left (350 g on 2026-03-01, 120 g used since on one day).", "jar:0", "madder, autumn",
                 mark="These plans take 230 g, then 0 g."),
            Told("71 g left (100 g on 2026-03-01, 29 g used since on one day).", "jar:1", "alum",
                 mark="These plans take 40.8 g, then 30.2 g."),
            Told("how much is in it is not written down.", "jar:2", "walnut hulls"))),
    ),
    (Told("Madder brick red on wool", strong=True), Told("alum takes 28.8 g of the 71 g in the jar, 0.58."),
     Told("madder takes 120 g of the 230 g in the jar, 5.40."), Told("wash takes 14.4 g; no jar of it in your kitchen.")),
)  # fmt: skip

_TAKEN = (
    Told("madder root on wool, taken at 1:30", "number:0", strong=True),
    Told("84 % (80 to 88 %) [76 to 90 %]", "number:0", "yours"),
    Told("85 % (60 to 95 %)", "number:0", "usual guess"),
    Told("from 2 days: 2026-01-31-madder-brick-red-on-wool-p4xq, 2026-03-14-madder-brick-red-on-wool-k7q2", "number:0",
         "days"),
    Told("liquor in wet wool, times its bone-dry weight", "number:1", strong=True),
    Told("3.90 (3.77 to 4.03) [3.51 to 4.32]", "number:1", "yours"),
    Told("2.72 (1.50 to 5.00)", "number:1", "usual guess"),
    Told("from 1 day: 2026-03-14-madder-brick-red-on-wool-k7q2", "number:1", "days"),
)
_LACKING = (
    Told("how much of a dyestuff the fibre takes: weld on wool", "lacking:0", strong=True),
    Told("after 20 minutes or more at heat, hold the dye bath beside a jar of it from before the fibre went in, and give"
         " its strength: 1:4 of before", "lacking:0", "reading"),
    Told("what heat your stove puts into a bath", "lacking:1", strong=True),
    Told("read the thermometer before a pot is lit and as it reaches its heat, 20 °C on or more; the bath's litres must be"
         " known", "lacking:1", "reading"),
)
OWN = LeafView(
    Frame(OWN_NUMBERS, "2 learned from 2 days, beside the usual guesses", "11:52",
          NextAct("read which days it comes from", "", "its days"), _LEAF_KEYS),
    "number:0",
    (
        Section("", (Told("Your own numbers, which take the place of the usual guesses: in brackets, where nine of ten"
                          " further days will lie."),)),
        Section("learned", _TAKEN),
        Section("not learned yet, and what would teach it", _LACKING),
    ),
    (Told("madder root on wool, taken at 1:30", strong=True), Told("2026-01-31-madder-brick-red-on-wool-p4xq"),
     Told("2026-03-14-madder-brick-red-on-wool-k7q2")),
)  # fmt: skip
OWN_NONE = LeafView(
    Frame(OWN_NUMBERS, "none learned yet: what reading would teach one", "11:52",
          NextAct("back to where you came from", "", "back"), _LEAF_KEYS),
    "lacking:0",
    (
        Section("", (Told("No day has taught a number yet: the usual guesses are used."),)),
        Section("what would teach one", _LACKING),
    ),
)  # fmt: skip

LEAF_FIXTURES: dict[str, BookView | LeafView] = {
    "book": BOOK,
    "book-finding": BOOK_FINDING,
    "book-empty": BOOK_EMPTY,
    "day": DAY_OPEN,
    "day-caring": DAY_CARING,
    "repeating": REPEATING,
    "comparing": COMPARING,
    "went-wrong": WENT_WRONG,
    "shelf": ON_SHELF,
    "shelf-empty": SHELF_EMPTY,
    "kept-bath": KEPT,
    "kept-bath-minding": KEPT_MINDING,
    "kept-bath-drawing": KEPT_DRAWING,
    "jars": IN_THE_JARS,
    "own-numbers": OWN,
    "own-numbers-none": OWN_NONE,
}
