"""One invented day as it was typed: madder brick red on two skeins, over two days, one line an act.

An empty line does what comes next. A row of dots stands for an empty line, so that it can be seen here.
"""

SCOUR_AND_EXTRACT = """
begin scour
fill A 7.2 l
weigh wash 14.4 g
add wash to A
enter large skein into A
.
light A
begin extract
note the water was hard today
.
weigh madder 4 1/4 oz
add madder to C
heat C
wait
seen
60
.
wait
seen
t C 71
wait
seen
turn off A
wait
seen
40
.
.
"""
MORDANT_BESIDE_THE_EXTRACT = """
weigh alum 29 g
begin mordant
weigh tartar 14 g
fill B 7.2 l
.
.
lift large skein 620 g
enter large skein into B
.
.
light B
where
wait
.
.
.
y
yes
.
70
1.8 l
.
"""
REFRESH = """
begin extract again
fresh water C 2.4 l
light C
wait
seen
reached B 84 C
wait
seen
reached C
wait
seen
turn off B
wait
seen
.
.
not now
strain C 1.9 l
strength D 100 % against first strain
enough because strong enough
wait
"""
DYE_UNTIL_CALLED_AWAY = """
seen
.
begin dye
.
.
.
.
.
light D
wait
seen
81
.
wait 15 min
dip
wait 10 min
quit
"""
DYE_ON = """
where
lift snippet 1
colour snippet 1 brick red, wet
dip snippet 2 in D
wait
seen
d
on shade: as dark as the sample
"""
RINSE_KEEP_CLOSE = """
begin rinse
.
.
68
.
.
.
.
keep D as madder exhaust 6 l
correct last 6.5 l because the jug was wet
.
.
.
.
.
.
.
.
close
a warm brick red, level
"""


def typed(text: str) -> list[str]:
    """The lines of one part of the day."""
    return ["" if line == "." else line for line in text.strip().splitlines()]
