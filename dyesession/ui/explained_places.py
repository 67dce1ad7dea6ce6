"""What the `?` page of each place says: the place in the trade's words, then its keys. Knows no state."""

from dyesession.ui.keys import key_table
from dyesession.ui.place_keys import (
    BATH,
    BENCH,
    COLOUR,
    COMPARE,
    DAY,
    DAY_BOOK,
    JARS,
    KITCHEN,
    OWN_NUMBERS,
    REPEAT,
    SHELF,
    WORKING_OUT,
    WRONG,
    place_key_table,
)

_BENCH = """\
Where a day begins and ends.

under way    a day that was begun and not closed. Its clocks have gone on, whoever looked or not; take it up, and
             the first page says what is where.
wants you    what should be looked at: a bath put by, a skein that is dry and has not been judged, a file that
             cannot be read, what your last day has taught.
recipes      yours first, then those that come with the program. Choosing one asks what your fibre weighs; nothing
             is written down before you begin.
dyed before  the last days, with the colours that were read of them. A colour on a screen is a hint: the figure
             beside it is what was measured.
"""
_WORKING_OUT = """\
What to weigh, in what water, in which pot, how long, and what to mind.

WOF          weight of fibre: washed, and a day in the room. Damp or unwashed weight is the largest mistake there
             is, so it is asked for.
1:30         the liquor ratio: thirty litres of bath for each kilogram of fibre.
± on a dose  what your own scale may miss by. A dose it cannot weigh is weighed larger, dissolved, and measured
             out; the line says how.
to … and     a range without ± is the recipe's own: both ends are in use.
the day      dark bars are your own hands' and the pot's; a star marks the steps that decide when you are done.
             A stretch in which nothing begins or ends is drawn short, with a tear in it.
pattern      whether your yarn is enough: by length, by weight, by ounces of a named thickness, or by a knitted
             swatch, weighed and scaled up to the pieces; and the doses for as much as is to be dyed.
rehearse     the whole day on a stepping clock, done as planned. Nothing of it is kept.
on paper     the weighing list as a page and a text, in the folder papers of your workroom.
own numbers  those of your days that this day starts from: with their ±, and the days they come from.
enter        on any figure: where it comes from, and what its ± is made of.
"""
_KITCHEN = """\
Only what the plan at hand needs to know. Every question can be left open: the plan then says what it took instead,
or is less sure.

scale        the smallest step it shows: 1 g, 0.1 g.
pot          what it holds to the brim, and what it is made of: iron, copper and bare aluminium shift shades.
ring         its rated power and kind: 1800 W electric.
thermometer  none: heat goes by the eye, and a rehearsed day reads no degrees.
height       above the sea: it decides where water boils.
who lives    children, pets, an allergy to insects: it decides which reminders you see. It stays in your kitchen
             file and never enters a log.
"""
_COLOUR = """\
Did I hit the colour? Everything is measured dry; wet fibre is another colour.

the colour you want  one reading or several: several make a target with a spread, and a skein can be inside it.
the skein            typed, from your logs, or from a photo. How it was read says how sure it is: a hex picked by eye
                     ± 7.5, a photo with a grey card in daylight ± 4.5, a colorimeter ± 1.5.
did it hit           depth first, then a word for what is left; nothing that the readings cannot tell. The range is
                     in CIEDE2000: about 1 is just seen side by side.
what would mend it   the least first, with grams and money; on a snippet before the skein. Good enough is an answer.
more or less         the same dye at other depths, modelled: less sure the farther away, and for dark shades.
an overdye           a further dip or a second dye over the skein, from your own samples. Dye over dye only darkens.
does it stay         a rub on a white cloth, a wash, a sunny window: two readings, and a grade of the grey scale.
a swatch             stands in mid grey with its figure beside it. On a screen it is a hint; * is the nearest it can.
"""
_DAY_BOOK = """\
Every day there is a log of, the newest first; what cannot be read stands at the end with its reason.

demo         an invented day that came with the program. Demo days go once there is a log of your own.
/            finds. Words alone look everywhere; or say what is meant, several parted by commas:
             dyestuff madder, fibre silk, since 2026-03, until 2026-09, verdict even, notes mittens,
             near #8b3a2b within 6, kept, due
!            aftercare is due: the day's own page says which, and notes it down.
your own numbers   what the days have taught, beside the usual guesses, and what reading would teach more.
a day        chosen, it is laid open: how it came out, what went otherwise than planned, its steps and its heat;
             and the lines that repeat it, put it beside another day, ask what went wrong, print its tags.
"""
_DAY = """\
A day laid open: how it came out, what is still wanted, what can be done with it, how it went.

!            aftercare that is due. Chosen, it is typed in your own words and goes into this day's log, closed or not;
             the log only ever grows. Where there are several lots, begin with the lot: small skein: even, #8b3a2b
─ and ▄      a step as it was planned, and as it was. ┊ a stretch in which nothing happens, drawn short.
shown then and reckoned now   what you were told of a bath on the day, and what today's reckoning makes of it.
"""
_REPEAT = """\
A recipe of what was done on that day, not of what had been planned: doses as weighed, heat as it was.

depth        1 as it was, 0.5 for half of it. Depth follows the dose only roughly; the line says how roughly.
other this time   what differs from that day, and what it does to the colour where that can be told.
"""
_COMPARE = """\
Two days side by side: how they came out, then what was other, what matters most for the colour first.
"""
_WRONG = """\
The usual causes of a trouble, each with its source: those the log shows first, then those it says nothing of, then
those it speaks against. A cause is never proved by a log. Behind each stands the mend.
"""
_SHELF = """\
Every bath that was put by and still stands, the next to look at first, and every mordanted lot that waits. Nothing is
kept here by hand: it is folded from the logs, so that what one day draws, the next one knows.

the colour of 30 ± 12 g   what is left in it, of your own lot of dyestuff; nine times in ten it lies in that range.
would still do   so much fibre, at so much of the first lot's depth; without a promise of the hue.
hue may drift    it has been used: what went in first is not what is left.
does not add up  two days drew more than there was. Open the bath, and put the wrong entry right.
"""
_BATH = """\
One kept bath. Whatever is done to it is written into a log: a draw into the day's own, a correction into the log that it
puts right, all else into a new one. What to bear in mind is shown first, and nothing is written before you say so.

draw         asks how much, then into what: into the open day at once, or as the dyeing of a recipe begins. What comes
             along is told first: iron, copper, mordant from before. More than there is, is refused.
pool         what must never be mixed is refused; iron is told, for it saddens all that is poured together.
"""
_JARS = """\
What is left in the jars of your kitchen: what was written down, less what your own days have put in since.

used since       a day counts from the date the jar was weighed, that day with it; rehearsals and demo days take nothing.
the next plans   up to three colours, each with its fibre. Each finds the jars as the one before leaves them.
for 100 g        what the colour costs for 100 g of fibre, by the prices in your kitchen file; what has no price is named.
to buy           what runs short over all of them. It can be written on paper; the plans themselves are not kept.
"""
_OWN_NUMBERS = """\
What your own days have taught. Each number takes the place of a usual guess, from the next day on: at the Stove, at
Working out, in a repeat.

84 % (80 to 88 %)   the number and its ±, nine times in ten; behind it in brackets, where a further day will lie.
usual guess         what is taken as long as no day has taught better.
days                the sessions the number comes from; enter names them all. One far from the others hardly counts.
not learned yet     what is still guessed for what you dyed, and the reading at the Stove that would teach it. No
                    reading is asked for: one left out only leaves the band wider.
"""
_STOVE = """\
Pots as they stand: filled to their waterline, in the liquor's own colour once it was read, the clock in it.

lanes        the fibre's way and the liquor's, to where they meet. ○ waits  ▷ may begin  ● under way  ‖ paused
             ✓ done  × left out
the account  how much of your dyestuff's colour is in the bath. 71 ± 13 g, modelled: nine days in ten it lies in
             that range. Your readings narrow it.
NEXT         the one right thing now; space does it. What rings is seen first.
ASK          a question a hazard hangs on; space and enter do not answer it. - puts it off, and that is noted.
"""
_TEXTS = {
    BENCH: _BENCH, WORKING_OUT: _WORKING_OUT, KITCHEN: _KITCHEN, COLOUR: _COLOUR, DAY_BOOK: _DAY_BOOK, DAY: _DAY,
    REPEAT: _REPEAT, COMPARE: _COMPARE, WRONG: _WRONG, SHELF: _SHELF, BATH: _BATH, JARS: _JARS,
    OWN_NUMBERS: _OWN_NUMBERS,
}  # fmt: skip
EXPLAINED = tuple(_TEXTS)  # every place that has its page here; the photo's stands with the photo
STOVE_HELP = f"{_STOVE}\nkeys\n\n{key_table()}"


def help_of(place: str) -> str:
    """The page of a place by its name. Raises KeyError for one that has none."""
    return f"{_TEXTS[place]}\nkeys\n\n{place_key_table(place)}"
