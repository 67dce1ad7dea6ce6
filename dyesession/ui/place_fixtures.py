"""Frozen moments of the places before the Stove, of the same invented dyer. Every number is invented.

They stay as the places' snapshots, and every drawing function is tried on them.
"""

from dataclasses import replace

from dyesession.ui.bench_view import BenchView, DayLine, PotLine, RecipeLine, Swatch, WantLine
from dyesession.ui.frame_view import Entry, Frame, KeyWord, NextAct, Ringing
from dyesession.ui.kitchen_view import Asked, KitchenView, Known
from dyesession.ui.place_keys import place_key_words
from dyesession.ui.working_view import (
    Answer,
    BathLine,
    ChoiceLine,
    DayBars,
    DoseLine,
    LotLine,
    Reason,
    SaidLine,
    StepBar,
    WhyView,
    WorkingView,
)

_BENCH_KEYS = place_key_words(("space", "enter", "tab", "q", "/", "m", "r", "?"))
_WORKING_KEYS = place_key_words(("space", "enter", "q", "m", "delete", "r", "?"))
_KITCHEN_KEYS = place_key_words(("space", "enter", "-", "q", "r", "delete", "?"))
_TYPING_KEYS: tuple[KeyWord, ...] = place_key_words(("enter", "escape"))

_RECIPES = (
    RecipeLine(
        "recipe:mittens", "Mitten brick", "wool", "Our own madder, a little browner than most.", "own notes, third try",
        "madder root over potassium alum", own=True,
    ),
    RecipeLine(
        "recipe:torn", "Torn page", own=True, fault="torn-page.toml, line 9: the string is not closed; expected a \"."
    ),
    RecipeLine(
        "recipe:cochineal", "Cochineal crimson on wool", "wool or silk", "A cool crimson from whole insects.",
        "house recipe", "cochineal over potassium alum",
    ),
    RecipeLine(
        "recipe:madder", "Madder brick red on wool", "wool",
        "A warm mid red from ground madder root over alum and tartar; on grey fleece it turns to brick.",
        "house recipe", "madder root over potassium alum",
        fibre_steps=("scour", "mordant"), liquor_steps=("extract",), together_steps=("dye", "rinse", "dry"),
    ),
    RecipeLine("recipe:onion", "Onion skins in one pot", "wool", "Warm yellow, all in one pot.", "house recipe"),
    RecipeLine("recipe:walnut", "Walnut brown without mordant", "wool", "", "house recipe", "walnut hulls"),
    RecipeLine("recipe:weld", "Weld yellow on wool", "wool", "A clear lemon yellow.", "house recipe", "weld over alum"),
)  # fmt: skip
_OPEN_DAY = DayLine(
    "day:open", "Madder brick red on wool", "240 g wool, 2 lots", "begun 09:02",
    pots=(
        PotLine("A", "mordant pot", "mordant, keep at 85 °C until 12:06", fill=0.6, clock=("24", "min"), on_heat=True),
        PotLine("B", "extract pot", "extract again, keep at 70 °C, due since 11:39", True, 0.5, "#6e2a1b", ("3", "min over"), True),
    ),
)  # fmt: skip
_DONE = (
    DayLine(
        "day:weld", "Weld yellow on wool", "140 g wool", "2026-02-27", "done “clear”",
        swatches=(Swatch("#d8b832", "wool, read 01.03."), Swatch("#b59a3c", "small skein, read 01.03.")),
    ),
    DayLine("day:onion", "Onion skins in one pot", "100 g wool", "2026-02-14", "done"),
    DayLine(
        "day:brick", "Madder brick red on wool", "90 g wool", "2026-01-31", "done",
        swatches=(Swatch("#8f4030", "sample skein, dry, 02.02."),),
    ),
)  # fmt: skip
_WANTS = (
    WantLine("day:weld", "Weld yellow on wool: dry by now", "judge its shade in daylight, rub it on a white cloth"),
    WantLine("kept:madder", "The madder bath 1, kept 3 days: look at it", "plant dyebath: common practice, no source"),
    WantLine("taught", "Your own numbers: 2 learned and 1 surer", "by Weld yellow on wool, 2026-02-27"),
)  # fmt: skip

BENCH_NEW = BenchView(
    Frame("Bench", "~/dyeing", "09:00", NextAct("work out Madder brick red on wool", "", "work out"), _BENCH_KEYS),
    "recipe:madder",
    greeting=(
        "Welcome to your bench. Nothing has been dyed here yet.",
        "Choose a recipe and say what your fibre weighs: doses, water, pots and times are worked out from that. "
        "Nothing is written down before you begin.",
    ),
    recipes=_RECIPES[2:],
)  # fmt: skip
BENCH = BenchView(
    Frame(
        "Bench", "~/dyeing", "11:42", NextAct("take up Madder brick red on wool where it stands", "", "take up"),
        _BENCH_KEYS,
    ),
    "day:open", under_way=(_OPEN_DAY,), wants=_WANTS, recipes=_RECIPES, done=_DONE,
)  # fmt: skip
BENCH_RINGING = replace(
    BENCH,
    frame=replace(
        BENCH.frame,
        ringing=Ringing("B", "the hold at 70 °C is over", "Go and strain it, or give it longer.", "3 min over"),
        next_act=NextAct("go to the stove: Madder brick red on wool", "", "stove"),
    ),
)  # fmt: skip
BENCH_FINDING = replace(
    BENCH,
    frame=replace(BENCH.frame, entry=Entry("recipe with", "yell"), next_act=NextAct("work out Onion skins in one pot")),
    cursor="recipe:onion", find="yell", under_way=(), wants=(), done=(), recipes=(_RECIPES[4], _RECIPES[6]),
)  # fmt: skip
BENCH_LOOKING = BenchView(
    Frame("Bench", "~/dyeing", "09:00", NextAct("one moment: looking through the logs"), _BENCH_KEYS),
    "recipe:cochineal", recipes=tuple(replace(one, fibre="", summary="") for one in _RECIPES[2:]), looking=True,
)  # fmt: skip

_CHOICES = (
    ChoiceLine("recipe", "recipe", "Madder brick red on wool", "enter: choose another"),
    ChoiceLine("depth", "depth", "usual", "paler, usual, deeper: enter changes it"),
    ChoiceLine("kitchen", "kitchen", "2 scales, 4 pots, 2 rings, 1 jar", "m: say more of it"),
    ChoiceLine("pattern", "pattern", "What does the pattern need?", "is the yarn enough"),
)
_LOTS = (
    LotLine("lot:large skein", "large skein", "165 g wool, washed and air-dry", "",
            (Answer("mordanted:large skein", "mordanted already? not yet"),)),
    LotLine("lot:small skein", "small skein", "75 g wool, from 106 g damp, washed and air-dry", "",
            (Answer("mordanted:small skein", "mordanted already: alum 12 %, in March"),)),
    LotLine("lot+", "+", "another lot"),
)  # fmt: skip
_WHY_WEIGHT = WhyView(
    "washed, air-dry weight (WOF)",
    (
        Reason(
            "Every share is of the fibre washed and a day in the room.",
            "Mairet 1916, ch. I, for what grease weighs",
        ),
    ),
)
WORKING_NEW = WorkingView(
    Frame(
        "Working out", "Madder brick red on wool", "09:10", NextAct("type what your fibre weighs", "", "weight"),
        _TYPING_KEYS, Entry("fibre", "240 g w", "= 240 g wool"), None, "for example 240 g wool, or 165 g large skein",
    ),
    "lot+", lots=(LotLine("lot+", "+", "what your fibre weighs, washed and air-dry"),), choices=_CHOICES,
    why=_WHY_WEIGHT,
)  # fmt: skip
WORKING_ASKS = WorkingView(
    Frame(
        "Working out", "Madder brick red on wool", "09:11",
        NextAct("say whether the wool is washed and air-dry", "enter on the line that is true", "dry?"), _WORKING_KEYS,
    ),
    "dry:wool",
    lots=(
        LotLine("lot:wool", "wool", "240 g wool", "Is the wool, 240 g, washed and air-dry?", (
            Answer("dry:wool", "yes: washed, and a day in the room"), Answer("damp:wool", "no: damp, or not washed yet"),
        )),
        LotLine("lot+", "+", "another lot"),
    ),
    choices=_CHOICES, doses=(DoseLine("dose:alum", "alum", "28.8 g", "± 1.3", "12 % WOF, 8 to 15 %"),), why=_WHY_WEIGHT,
)  # fmt: skip
_DOSES = (
    DoseLine("dose:wash", "wash", "14.4 g", "± 1.3", "6 % WOF"),
    DoseLine("dose:alum", "alum", "28.8 g", "± 1.3", "12 % WOF, 8 to 15 %"),
    DoseLine("dose:tartar", "tartar", "14.4 g", "± 1.3", "6 % WOF, 5 to 7 %"),
    DoseLine("dose:madder", "madder", "120 g", "± 1.3", "50 % WOF"),
    DoseLine("dose:iron", "iron", "2.4 g", "± 0.32", "2 % WOF, 1 to 2 %",
             "your 1 g scale could miss that by 1.3 g. Dissolve 10 g to 1 L and add 120 mL with the fibre lifted, ten "
             "minutes, look; up to 120 mL more (± 13 %)"),
)  # fmt: skip
_BATHS = (
    BathLine("bath:scour", "scour", "7.2 L", "1:30", "wash pot: big pot"),
    BathLine("bath:mordant", "mordant", "7.2 L", "1:30", "mordant pot: big pot"),
    BathLine("bath:extract", "extract", "2.4 L", "1:10", "extract pot: middle pot"),
    BathLine("bath:dye", "dye", "3.3 L", "1:14", "dye pot: small pot", short=True,
             says="1:30 wants 7.2 L; two thirds of your small pot is 3.3 L, in which fibre cannot float"),
)  # fmt: skip
_DAY = DayBars(
    "20 h 4 min, of which 2 h 25 min want your hands; begun now, done by 05:14 tomorrow.",
    (
        StepBar("step:scour", "scour", "fibre", 0, 189, True, 10, 76, "09:10 to 12:19"),
        StepBar("step:mordant", "mordant", "fibre", 189, 1034, True, 204, 309, "12:19 to 02:24"),
        StepBar("step:dye", "dye", "fibre", 1034, 1169, True, 1044, 1164, "02:24 to 04:39"),
        StepBar("step:rinse", "rinse", "fibre", 1169, 1194, True, None, None, "04:39 to 05:04"),
        StepBar("step:extract", "extract", "liquor", 10, 120, False, 20, 120, "09:20 to 11:10"),
        StepBar("step:strain", "strain", "liquor", 120, 130, False, None, None, "11:10 to 11:20"),
    ),
)
WORKING = WorkingView(
    Frame(
        "Working out", "Madder brick red on wool", "09:10",
        NextAct("begin this day: Madder brick red on wool", "opens the Stove and its log", "begin"), _WORKING_KEYS,
    ),
    "dose:alum", lots=_LOTS, choices=_CHOICES, doses=_DOSES, baths=_BATHS, day=_DAY,
    mind=(
        SaidLine("mind:0", "120 g of madder is wanted and your jars hold 80 g."),
        SaidLine("boil", "Water boils here at about 100 ± 1 °C."),
    ),
    care=(
        SaidLine("care:1", "C, 1.9 L, is at 70 °C: one second burns. Strain with a ladle, away from you.", "strain", True),
        SaidLine("care:2", "29 g alum for B: mask on, damp cloth under, shut the jar first.", "mordant"),
    ),
    jars=(
        SaidLine("jar:madder", "takes 120 g, 80 g in the jar: buy 40 g, 1.80", "madder"),
        SaidLine("price", "The day uses up 5.40; to buy: 1.80. (wash and alum: no price known)"),
    ),
    ahead=SaidLine("rehearse", "Rehearse the day: how it would go, on a stepping clock."),
    own=SaidLine("own", "This day rests on 2 of your own numbers, from 1 day: 2026-03-14-madder-brick-red-on-wool-k7q2."),
    paper=SaidLine("paper", "Write the weighing list, to be printed: a page and a text."),
    why=WhyView(
        "alum: 28.8 g ± 1.3 g, planned",
        (
            Reason("The recipe gives alum as “12 %”.", "the recipe (house recipe); behind it in the file: “Saha 2019”"),
            Reason("12 % of 240 g of fibre, washed and air-dry (WOF), is 28.8 g.", "arithmetic"),
            Reason("Your kitchen scale shows steps of 1 g; a tared weighing rounds twice: ± 0.82 g.", "NIST TN 1297"),
            Reason("Weighed again it scatters by 1.0 g either way, taken as half a step.", "judgement"),
            Reason("One lot of alum may be 5 % stronger or weaker than the next.", "common practice, no source"),
        ),
    ),
)  # fmt: skip
WORKING_OWN = replace(WORKING, cursor="own", why=WhyView(
    "your own numbers, where this day rests on them",
    (Reason("madder root on wool, taken at 1:30: 84 % (80 to 88 %) [76 to 90 %], for 85 % (60 to 95 %) as is usually "
            "guessed.", "your own days, from 2 days: 2026-01-31-madder-brick-red-on-wool-p4xq, "
            "2026-03-14-madder-brick-red-on-wool-k7q2"),
     Reason("liquor in wet wool, times its bone-dry weight: 3.90 (3.77 to 4.03) [3.51 to 4.32], for 2.72 (1.50 to 5.00) "
            "as is usually guessed.", "your own days, from 1 day: 2026-03-14-madder-brick-red-on-wool-k7q2")),
))  # fmt: skip
WORKING_REFUSED = replace(
    WORKING_ASKS, doses=(), cursor="lot:wool",
    lots=(LotLine("lot:wool", "wool", "212 g wool"), LotLine("lot+", "+", "another lot")),
    trouble="212 g is not the washed, air-dry weight of the wool, so no dose can be reckoned on it: let it lie in the "
    "room for a day, weigh it again, and give both, for example “212 g damp, 148 g dry wool”.",
    frame=replace(WORKING_ASKS.frame, next_act=NextAct("the wool is damp: type both its weights", "", "weight")),
)  # fmt: skip
WORKING_DAY = replace(WORKING, cursor="step:mordant", why=WhyView(
    "mordant: 14 h 5 min, planned",
    (Reason("15 min of your hands to begin, 5 min to end it.", "common practice, no source"),
     Reason("Left overnight, counted as 12 h.", "Mairet 1916, ch. III; the hours: common practice, no source")),
))  # fmt: skip

_ASKED = (
    Asked("ask|scale", "Is there a finer scale? Its smallest step",
          "2.4 g of iron is too little for the scales listed; a finer one would weigh it outright.", "0.1 g",
          (("choice|scale|0.1 g", "0.1 g"), ("choice|scale|0.01 g", "0.01 g"))),
    Asked("ask|household", "Do children or pets live here, or anyone allergic to insects?",
          "This plan has 2 reminders for such a house. It stays in your kitchen file and enters no log.",
          "child 12 kg, cat 4 kg", (("choice|household|children", "children"), ("choice|household|pets", "pets"))),
    Asked("ask|jar:madder root", "How much madder is in the jar, and what did 100 g cost?",
          "Then the list says what to buy and what the day costs.", "350 g, 4.50"),
)  # fmt: skip
_KNOWN = (
    Known("known|scale:0", "scale", "1 g kitchen scale up to 5000 g"),
    Known("known|pot:0", "pot", "12 L big pot stainless"),
    Known("known|ring:0", "ring", "1800 W electric"),
    Known("known|height", "height", "120 m above the sea"),
)
_MORE = (Known("more|pot", "+ pot", "12 l stainless"), Known("more|jar", "+ jar", "madder root: 350 g, 4.50"))
KITCHEN = KitchenView(
    Frame(
        "My kitchen", "dyeing", "09:12",
        NextAct("say it, or leave it open with -: Is there a finer scale? Its smallest step", "", "scale"),
        _KITCHEN_KEYS,
    ),
    "ask|scale", "For Madder brick red on wool. Every question may stay open: the plan then says what it took instead.",
    _ASKED, _KNOWN, _MORE, "bell, again every 15 s until it is seen, still from 22:00 to 07:00",
    "/home/a/dyeing/kitchen.toml",
)  # fmt: skip
KITCHEN_TYPING = replace(
    KITCHEN,
    frame=replace(
        KITCHEN.frame, keys=_TYPING_KEYS, entry=Entry("who lives", "child 12 kg", "= child 12 kg"),
        note="for example child 12 kg, cat 4 kg",
    ),
    cursor="ask|household",
)  # fmt: skip
KITCHEN_TRIAL = replace(
    KITCHEN,
    frame=replace(
        KITCHEN.frame,
        ringing=Ringing("-", "this is the alarm, on trial", "So it calls until it is seen.", short="trial"),
        next_act=NextAct("back to where you came from", "", "back"),
    ),
    about="For Madder brick red on wool nothing more is wanted.", asked=(), cursor="alarm",
)  # fmt: skip

PLACE_FIXTURES: dict[str, BenchView | WorkingView | KitchenView] = {
    "bench-new": BENCH_NEW,
    "bench": BENCH,
    "bench-ringing": BENCH_RINGING,
    "bench-finding": BENCH_FINDING,
    "bench-looking": BENCH_LOOKING,
    "working-new": WORKING_NEW,
    "working-asks": WORKING_ASKS,
    "working": WORKING,
    "working-day": WORKING_DAY,
    "working-own": WORKING_OWN,
    "working-refused": WORKING_REFUSED,
    "kitchen": KITCHEN,
    "kitchen-typing": KITCHEN_TYPING,
    "kitchen-trial": KITCHEN_TRIAL,
}
