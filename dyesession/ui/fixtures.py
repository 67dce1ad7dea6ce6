"""Frozen moments of one invented day: madder brick red on 240 g of grey-faced handspun, for mittens.

They are drawn before any feature is wired, and stay as the screens' snapshots. Every number is invented.
"""

from dataclasses import replace

from dyesession.ui.keys import key_words
from dyesession.ui.stove_view import (
    Account,
    Ask,
    Bar,
    Bars,
    Choice,
    Clock,
    Curve,
    CurvePoint,
    Entry,
    Happened,
    Lane,
    Lanes,
    NextAct,
    OfferRow,
    Pot,
    PotHolds,
    Ringing,
    Said,
    Saving,
    Sentence,
    Shade,
    Stage,
    StoveView,
    Strength,
    WhereYouAre,
)

_MADDER_LIQUOR = "#6e2a1b"
_PALE_LIQUOR = "#d9b79c"
_DYE_LIQUOR = "#7d2f1d"
_USUAL_KEYS = key_words(("space", "t", "v", "s", "p", "e", "x", "d", "c", "w", "h", "n", "a", "q", ".", "?"))


def _stages(*said: str) -> tuple[Stage, ...]:
    """Stages from words, each with its state behind a slash; waiting where there is none."""
    stages = []
    for text in said:
        word, _, state = text.partition("/")
        stages.append(Stage(word, state or "waiting"))  # type: ignore[arg-type]
    return tuple(stages)


_TWO_LANES = Lanes(
    (
        Lane("fibre", _stages("scour/done", "wet out/done", "mordant/running")),
        Lane("liquor", _stages("soak/done", "extract/done", "strain/done", "extract again/running")),
    ),
    _stages("dye", "rinse", "keep the bath"),
)
_MORDANT_POT = Pot(
    "A",
    "mordant pot",
    fill=0.65,
    clock=Clock("24", "min"),
    state="running",
    on_heat=True,
    first="85 °C until 12:06",
    second="read 84 °C, 3 min ago; 3.9 L; alum 29 g",
    loudness=2,
)
_EXTRACT_POT = Pot(
    "B",
    "extract pot",
    fill=0.5,
    liquor=_MADDER_LIQUOR,
    clock=Clock("8:12"),
    state="running",
    on_heat=True,
    first="70 °C until 11:50",
    second="no reading yet; 2.4 L; madder 120 g, second time",
    loudness=1,
)
_DYE_POT = Pot(
    "C",
    "dye pot",
    fill=0.25,
    liquor=_DYE_LIQUOR,
    first="1.8 L of 7.2 L",
    second="first strain in it",
    loudness=3,
)
_RINSE_POT = Pot(
    "D",
    "wetting bowl",
    fill=0.6,
    clock=Clock("overnight"),
    state="running",
    first="cold, until morning",
    second="75 g small skein; drop of washing liquid",
    loudness=4,
)
_HELD = Sentence(
    (Said("The dye pot holds the colour of "), Said("71 ± 13 g", "strong"), Said(" of your 120 g madder")),
    "modelled",
)
_MORE = Sentence(
    (
        Said("That is 30 ± 5 % WOF of the 50 % planned. Extracting again: ", "quiet"),
        Said("15 ± 7 g", "plain"),
        Said(" more.", "quiet"),
    ),
)
_ACCOUNT = Account(
    Strength("71 ± 13", "g", "of 120 g madder", "modelled"),
    (_HELD, _MORE),
    "strength today ▁▁▁▇▇▇▇▇▇▇▇▇████  now 32 to 47 g/L, at most about 39 g/L",
)
_RAMP = (CurvePoint(0, 20), CurvePoint(60, 85), CurvePoint(120, 85))
_READ = tuple(
    CurvePoint(m, t) for m, t in ((0, 19), (14, 33), (27, 52), (41, 66), (55, 80), (66, 86), (92, 84))
)
_CURVE = Curve("A  mordant pot, temperature", _RAMP, _READ, 96.0, "10:06", "12:06")
_BARS = Bars(
    "dye pot: colour drawn, g of your madder",
    (
        Bar("first strain", 58, 71, 84, "58 to 84"),
        Bar("extract again", 8, 15, 22, "8 to 22", brought=False),
        Bar("once more", 2, 5, 9, "2 to 9", brought=False),
    ),
    _DYE_LIQUOR,
    "modelled; one strength reading would halve this",
)
_SHADE = Shade("#8e3b26", "wanted", "#9c4a33", "snippet, wet", "a little paler and yellower; dry it to judge")

TWO_POTS = StoveView(
    title="Madder brick",
    fibre="240 g grey-faced handspun",
    wall_clock="11:42",
    lanes=_TWO_LANES,
    pots=(_MORDANT_POT, _EXTRACT_POT),
    account=_ACCOUNT,
    care=("B is at 70 °C: one second burns. Ladle it, pour away from you.",),
    next_act=NextAct("strain B into the dye pot", "in 8 minutes", "strain B"),
    keys=_USUAL_KEYS,
    curve=_CURVE,
    bars=_BARS,
    shade=_SHADE,
)

THREE_POTS = replace(TWO_POTS, pots=(_MORDANT_POT, _EXTRACT_POT, _DYE_POT))

FOUR_POTS = replace(
    TWO_POTS,
    pots=(_MORDANT_POT, replace(_EXTRACT_POT, liquor=_PALE_LIQUOR), _DYE_POT, _RINSE_POT),
    care=(
        "B is at 70 °C: one second burns. Ladle it, pour away from you.",
        "Madder dust settles before you open the mill.",
    ),
)

NOTHING_OPEN = StoveView(
    title="Stove",
    wall_clock="8:57",
    account=Account(None, (Sentence((Said("No session is open.", "strong"), Said(" No clock runs."))),)),
    next_act=NextAct("choose a recipe on the bench", "", "choose"),
    keys=key_words(("space", "q", "?")),
)

ONE_POT = StoveView(
    title="Madder brick, one pot",
    fibre="240 g grey-faced handspun",
    wall_clock="10:18",
    lanes=Lanes(
        (Lane("pot", _stages("scour/done", "mordant/skipped", "extract/paused")),),
        _stages("dye", "rinse", "keep"),
    ),
    pots=(
        Pot(
            "A",
            "dye pot",
            fill=0.6,
            liquor=_DYE_LIQUOR,
            clock=Clock("41", "min"),
            state="paused",
            on_heat=False,
            first="65 °C, paused at 10:14",
            second="read 52 °C, 9 min ago; 5.1 L",
        ),
    ),
    account=Account(
        Strength("55 ± 25", "g", "of 120 g madder", "guess"),
        (
            Sentence(
                (Said("The pot holds the colour of "), Said("30 to 80 g", "strong"), Said(" of your madder")),
                "a guess",
            ),
        ),
    ),
    care=("The fibre is wool: no stirring, no sudden cold.",),
    next_act=NextAct("go on with the extraction", "when you are back", "go on"),
    keys=_USUAL_KEYS,
)

PROMPT = replace(
    TWO_POTS,
    wall_clock="11:50",
    pots=(
        replace(_MORDANT_POT, clock=Clock("16", "min"), second="read 85 °C, 2 min ago; 3.9 L; alum 29 g"),
        replace(_EXTRACT_POT, clock=Clock("DUE", "now"), state="due", first="70 °C, was until 11:50"),
    ),
    next_act=NextAct("strain B into the dye pot", "now", "strain B"),
)

ALARM = replace(
    PROMPT,
    wall_clock="11:53",
    pots=(
        replace(_MORDANT_POT, clock=Clock("13", "min"), second="read 85 °C, 5 min ago; 3.9 L; alum 29 g"),
        replace(
            _EXTRACT_POT,
            clock=Clock("3", "min over"),
            state="overdue",
            first="70 °C, was until 11:50",
            loudness=0,
        ),
    ),
    ringing=Ringing(
        "B",
        "the extract pot is 3 minutes over its hold at 70 °C",
        "Strain it, or give it longer (e).",
        short="B over",
    ),
)

ASK_NUMBER = replace(
    TWO_POTS,
    wall_clock="12:06",
    ask=Ask(
        "How hot is A, before the fibre is lifted out of it?",
        "Wool that goes from 85 °C into cold water felts, and lifting it hot scalds.",
        short="How hot is A?",
        wants="°C in A",
        typed="84",
        echo="= 84 °C",
    ),
)

ASK_POT = replace(
    TWO_POTS,
    wall_clock="12:31",
    pots=(_MORDANT_POT, _EXTRACT_POT, _DYE_POT),
    ask=Ask(
        "Which pot does the fibre go into?",
        "The dye pot is still hot: the fibre goes in slowly, and no hand goes with it.",
        short="Which pot?",
        choices=(Choice("b", "extract pot"), Choice("c", "dye pot")),
    ),
)

WHERE = replace(
    ALARM,
    wall_clock="11:53",
    where=WhereYouAre(
        "The screen was closed at 11:31; the clocks went on. This is where you are.",
        rings=("B, the extract pot: its hold at 70 °C ended 3 minutes ago",),
        pots=(
            PotHolds("A", "mordant pot", ("3.9 L water", "alum 29 g", "240 g handspun", "85 °C until 12:06")),
            PotHolds(
                "B", "extract pot", ("2.4 L water", "madder 120 g in a bag, second time", "70 °C, 3 min over")
            ),
            PotHolds("C", "dye pot", ("1.8 L", "first strain", "cold")),
        ),
        last=(
            Happened("11:20", "strained B into C, 1.8 L read"),
            Happened("11:24", "filled B with 2.4 L fresh water"),
            Happened("11:39", "read 84 °C in A"),
        ),
    ),
)

AWAY = replace(THREE_POTS, away=True, keys=key_words(("space", "a", "?")))

UNSAVED = replace(
    TWO_POTS,
    saving=Saving(
        "NOT SAVED",
        "Entry 41 is not saved, because the disk is full: make room, or choose another folder: "
        "logs/2026-03-14-madder-brick-k7q2.toml",
    ),
)

STRAINED = replace(
    THREE_POTS,
    wall_clock="11:20",
    lanes=Lanes(
        (
            Lane("fibre", _stages("scour/done", "wet out/done", "mordant/running")),
            Lane("liquor", _stages("soak/done", "extract/done", "strain/done", "extract again/ready")),
        ),
        _stages("dye", "rinse", "keep the bath"),
    ),
    pots=(
        replace(_MORDANT_POT, clock=Clock("46", "min"), second="read 80 °C, 11 min ago; 3.9 L; alum 29 g"),
        replace(
            _EXTRACT_POT,
            fill=0.0,
            clock=None,
            state="waiting",
            on_heat=False,
            first="spent madder in the bag",
            second="0.2 L held back",
        ),
        replace(_DYE_POT, first="1.8 L poured at 11:20", second="of 7.2 L wanted"),
    ),
    note="strained: 1.8 L from B into C",
    how="The strained dyestuff goes back into the pot with fresh water.",
    care=("Hot liquor in C: a lid on it, and the handle inwards.",),
    next_act=NextAct("fill B with 2.4 L fresh water, extract again", "whenever you like", "fill B"),
)

RINSE = StoveView(
    title="Madder brick",
    fibre="240 g grey-faced handspun",
    wall_clock="15:47",
    lanes=Lanes(
        (
            Lane("fibre", _stages("scour/done", "wet out/done", "mordant/done")),
            Lane("liquor", _stages("soak/done", "extract/done", "strain/done", "extract again/skipped")),
        ),
        _stages("dye/done", "rinse/running", "keep the bath/ready"),
    ),
    pots=(
        Pot(
            "C",
            "dye pot",
            fill=0.62,
            liquor="#a8644b",
            first="cooling, 38 °C",
            second="lid on; keeps a week, cold",
        ),
        Pot(
            "D",
            "rinse bowl",
            fill=0.6,
            clock=Clock("4:30"),
            state="running",
            first="hand-hot, second water",
            second="as warm as the fibre",
            loudness=1,
        ),
    ),
    account=Account(
        Strength("22 ± 8", "g", "left in the dye pot", "modelled"),
        (
            Sentence(
                (Said("The bath still holds the colour of "), Said("22 ± 8 g", "strong"), Said(" madder")),
                "modelled",
            ),
            Sentence((Said("The fibre took up 48 ± 11 g: 20 % WOF.", "quiet"),)),
        ),
    ),
    care=("A pot that has held a dyebath never goes back to food.",),
    next_act=NextAct("lift the skeins, third water", "in 4 minutes", "lift"),
    keys=_USUAL_KEYS,
)

TYPED = replace(TWO_POTS, entry=Entry("weight of alum", "2.5 oz", "= 70.9 g"))

CHANGING = replace(
    TWO_POTS,
    entry=Entry("change, because", ""),
    offers=(
        OfferRow("grey skein weighs ", "grey skein weighs …, not 165 g"),
        OfferRow("another skein ", "another lot joins: its washed, air-dry weight is …"),
        OfferRow("alum ", "alum … in all, not 28.8 g"),
        OfferRow("once less because it is strong enough", "extract once less"),
        OfferRow("leave the recipe because my eye leads from here", "leave the recipe, and go on by eye"),
    ),
    mark="alum ",
    beside=("still to weigh", "  alum 28.8 g, with mordant"),
    note="for example small skein 75 g joins because I found it; or alum 15 % because the water is hard",
)
CHANGED = replace(
    TWO_POTS,
    entry=Entry("change, because", "alum 15 % because the water is hard"),
    pad=("%", "g", "more", "less", "because the water is hard", "because my eye says so"),
    note="= alum 36 g in all, 15 % of the fibre; alum still to go in with mordant: 36 g, not 28.8 g.",
)

LONG_WAIT = replace(
    TWO_POTS,
    wall_clock="21:30",
    pots=(
        replace(_DYE_POT, fill=0.66, clock=Clock("overnight"), state="running", first="cools until morning"),
    ),
    next_act=NextAct("lift the fibre, in the morning", "rings nobody before 7:00", "sleep"),
    care=(),
    curve=None,
)

FIXTURES: dict[str, StoveView] = {
    "nothing-open": NOTHING_OPEN,
    "one-pot": ONE_POT,
    "two-pots": TWO_POTS,
    "three-pots": THREE_POTS,
    "four-pots": FOUR_POTS,
    "prompt": PROMPT,
    "alarm": ALARM,
    "ask-number": ASK_NUMBER,
    "ask-pot": ASK_POT,
    "where-you-are": WHERE,
    "away": AWAY,
    "unsaved": UNSAVED,
    "strained": STRAINED,
    "rinse": RINSE,
    "typed": TYPED,
    "changing": CHANGING,
    "changed": CHANGED,
    "overnight": LONG_WAIT,
}
