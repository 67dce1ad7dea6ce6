"""For every trigger: what raises it, what its line must say, and what is near and must not raise it."""

from dyesession.care import Household, Situation

TODDLER = Household(child_kg=12.0)

CASES: dict[str, tuple[Situation, str, Situation]] = {
    "fuel stove indoors": (
        Situation(letter="B", burner="camp stove", indoors=True),
        "Camp stove under B",
        Situation(letter="B", burner="camp stove", indoors=False),
    ),
    "never mix": (
        Situation(letter="B", adding=(("vinegar", 50.0),), contents=(("bleach", 20.0),)),
        "Never 50 g vinegar with 20 g bleach in B: chlorine gas.",
        Situation(letter="B", adding=(("vinegar", 50.0),), contents=(("soap", 20.0),)),
    ),
    "refused": (
        Situation(letter="B", adding=(("bichromate of potash", 3.0),)),
        "3 g chrome in B: refused.",
        Situation(letter="B", adding=(("alum", 3.0),)),
    ),
    "unknown substance": (
        Situation(letter="B", adding=(("fairy dust", 12.0),)),
        "Unknown: 12 g fairy dust in B.",
        Situation(letter="B", adding=(("madder", 12.0),)),
    ),
    "insect dye": (
        Situation(letter="B", actions=("grinds",), adding=(("cochineal", 12.0),)),
        "12 g cochineal for B",
        Situation(letter="B", actions=("adds",), adding=(("cochineal", 12.0),)),
    ),
    "hot liquor": (
        Situation(letter="B", actions=("strains",), temperature_c=70.0, volume_l=2.0),
        "B, 2.0 L, is at 70 °C: one second burns.",
        Situation(letter="B", actions=("strains",), temperature_c=44.0, volume_l=2.0),
    ),
    "foam": (
        Situation(
            letter="B", adding=(("chalk", 20.0),), contents=(("alum", 29.0),), volume_l=8.0, capacity_l=10.0
        ),
        "20 g chalk on alum in B: up to 4.8 L gas, 2.0 L free.",
        Situation(
            letter="B", adding=(("chalk", 20.0),), contents=(("madder", 29.0),), volume_l=8.0, capacity_l=10.0
        ),
    ),
    "lye into water": (
        Situation(letter="B", adding=(("caustic soda", 5.0),), temperature_c=60.0),
        "5 g lye for B, now 60 °C",
        Situation(letter="B", adding=(("soda ash", 5.0),), temperature_c=60.0),
    ),
    "damp powder": (
        Situation(letter="B", adding=(("dithionite", 10.0),)),
        "10 g dithionite for B",
        Situation(letter="B", adding=(("fructose", 10.0),)),
    ),
    "iron at home": (
        Situation(letter="B", adding=(("iron", 2.4),), household=TODDLER),
        "2.4 g iron for B: lock the rest up; 1.2 g swallowed can make a 12 kg child ill.",
        Situation(letter="B", adding=(("iron", 2.4),)),
    ),
    "off unless chosen": (
        Situation(letter="B", adding=(("bluestone", 4.0),)),
        "4 g copper sulphate for B: off unless you chose it.",
        Situation(letter="B", adding=(("iron", 4.0),)),
    ),
    "metal pot": (
        Situation(letter="B", material="aluminium", contents=(("lye", 5.0),)),
        "5 g lye in bare aluminium B: makes hydrogen",
        Situation(letter="B", material="enamelled iron", contents=(("alum", 29.0),)),
    ),
    "near a flame": (
        Situation(letter="B", burner="gas ring", contents=(("methylated spirit", 50.0),)),
        "50 g alcohol in B",
        Situation(letter="B", contents=(("methylated spirit", 50.0),)),
    ),
    "ammonia fumes": (
        Situation(letter="B", contents=(("ammonia", 50.0),), temperature_c=40.0),
        "50 g ammonia in B at 40 °C",
        Situation(letter="B", contents=(("soda ash", 50.0),), temperature_c=40.0),
    ),
    "open air": (
        Situation(letter="B", adding=(("thiox", 10.0),), indoors=True),
        "10 g thiourea dioxide for B",
        Situation(letter="B", adding=(("thiox", 10.0),), indoors=False),
    ),
    "heavy pot": (
        Situation(letter="B", actions=("pours",), volume_l=10.0, capacity_l=12.0),
        "about 12 kg",
        Situation(letter="B", actions=("lifts",), volume_l=10.0, capacity_l=12.0),
    ),
    "boil-over": (
        Situation(letter="B", stage="extract", adding=(("madder", 120.0),), temperature_c=95.0),
        "120 g madder at 95 °C in B can boil over",
        Situation(letter="B", stage="extract", adding=(("madder", 120.0),), temperature_c=70.0),
    ),
    "powder at the boil": (
        Situation(letter="B", actions=("adds",), adding=(("tartar", 14.0),), temperature_c=97.0),
        "Off the heat before 14 g tartar goes in B: it flashes up at 97 °C.",
        Situation(letter="B", actions=("adds",), adding=(("tartar", 14.0),), temperature_c=85.0),
    ),
    "full pot": (
        Situation(letter="B", actions=("heats",), volume_l=7.5, capacity_l=10.0),
        "B holds 7.5 L of 10.0 L: on the heat, 6.7 L is enough.",
        Situation(letter="B", actions=("heats",), volume_l=6.7, capacity_l=10.0),
    ),
    "goggles": (
        Situation(letter="B", actions=("adds",), adding=(("slaked lime", 8.0),)),
        "Goggles on for 8 g slaked lime in B",
        Situation(letter="B", actions=("adds",), adding=(("chalk", 8.0),)),
    ),
    "madder dust": (
        Situation(letter="B", actions=("weighs powder",), adding=(("madder", 120.0),)),
        "120 g madder for B: mask on until it is wet",
        Situation(letter="B", actions=("strains",), contents=(("madder", 120.0),)),
    ),
    "dust": (
        Situation(letter="B", actions=("weighs powder",), adding=(("alum", 29.0),)),
        "29 g alum for B: mask on",
        Situation(letter="B", actions=("weighs powder",), adding=(("washing soda", 29.0),)),
    ),
    "iron dose": (
        Situation(letter="B", wof_percent=(("copperas", 5.5),)),
        "5.5 % iron in B is over the limit of 4 %",
        Situation(letter="B", wof_percent=(("copperas", 4.0), ("alum", 12.0))),
    ),
    "hot alkali on wool": (
        Situation(letter="B", contents=(("soda ash", 10.0),), temperature_c=80.0, fibres=("lambswool",)),
        "10 g soda ash in B at 80 °C harms the lambswool",
        Situation(letter="B", contents=(("soda ash", 10.0),), temperature_c=80.0, fibres=("linen",)),
    ),
    "vent the lid": (
        Situation(letter="B", contents=(("bran", 50.0),), lid_on=True),
        "B is lidded and 50 g bran in it gives off gas",
        Situation(letter="B", contents=(("bran", 50.0),), lid_on=False),
    ),
    "walnut stain": (
        Situation(letter="B", actions=("lifts",), contents=(("walnut hulls", 240.0),)),
        "240 g walnut in B stains skin",
        Situation(letter="B", actions=("heats",), contents=(("walnut hulls", 240.0),)),
    ),
    "hot vinegar": (
        Situation(letter="B", adding=(("vinegar", 120.0),), temperature_c=80.0),
        "120 g vinegar in B at 80 °C",
        Situation(letter="B", adding=(("vinegar", 120.0),), temperature_c=30.0),
    ),
    "iron and tannin": (
        Situation(letter="B", adding=(("iron", 2.4),), contents=(("gall nut", 12.0),)),
        "2.4 g iron with 12 g gall nut in B is ink",
        Situation(letter="B", adding=(("iron", 2.4),), contents=(("weld", 12.0),)),
    ),
    "pot shifts the shade": (
        Situation(letter="B", material="cast iron", contents=(("weld", 120.0),)),
        "120 g weld in bare iron B: the pot itself saddens the shade.",
        Situation(letter="B", material="stainless steel", contents=(("weld", 120.0),)),
    ),
    "cool-down": (
        Situation(letter="B", actions=("lifts",), temperature_c=90.0, cooling_min=(126.0, 216.0)),
        "Bare hands in B only when cool: 2 to 3.5 h from 90 °C down to 40 °C",
        Situation(letter="B", actions=("heats",), temperature_c=90.0, cooling_min=(126.0, 216.0)),
    ),
    "not food": (
        Situation(letter="B", actions=("adds",), adding=(("alum", 29.0),)),
        "29 g alum for B: from now on pots, spoons, sieve, scales are never for food.",
        Situation(letter="B", actions=("adds",), adding=(("neutral textile wash", 14.0),)),
    ),
    "too strong": (
        Situation(letter="B", actions=("adds",), adding=(("12 % peroxide", 50.0),)),
        "50 g peroxide at 12 % for B burns skin and eyes",
        Situation(letter="B", actions=("adds",), adding=(("3 % peroxide", 50.0),)),
    ),
    "lock it up": (
        Situation(letter="B", adding=(("slaked lime", 8.0),), household=TODDLER),
        "8 g slaked lime for B: the rest back under lock at once, with a child about.",
        Situation(letter="B", adding=(("chalk", 8.0),), household=TODDLER),
    ),
    "grinding": (
        Situation(letter="B", actions=("grinds",), adding=(("madder", 120.0),)),
        "Grind 120 g madder for B outdoors or under a wet cloth",
        Situation(letter="B", actions=("weighs powder",), adding=(("madder", 120.0),)),
    ),
    "chopping": (
        Situation(letter="B", actions=("weighs powder",), adding=(("weld", 180.0),)),
        "180 g weld for B dusts when it is chopped",
        Situation(letter="B", actions=("weighs powder",), adding=(("fresh weld", 180.0),)),
    ),
    "iron pot": (
        Situation(letter="B", actions=("adds",), adding=(("iron", 2.4),)),
        "2.4 g iron for B: its pot, spoon and gloves serve iron alone, never food.",
        Situation(letter="B", actions=("adds",), adding=(("iron", 2.4),), contents=(("iron", 2.4),)),
    ),
    "superheated jar": (
        Situation(letter="B", actions=("heats",), burner="microwave"),
        "B in the microwave can boil up when touched",
        Situation(letter="B", actions=("heats",), burner="electric"),
    ),
    "put by": (
        Situation(letter="B", actions=("keeps",), contents=(("madder", None),)),
        "B put by: labelled, lid loose, never a drink bottle; look again in 2 days.",
        Situation(letter="B", actions=("pours",), contents=(("madder", None),)),
    ),
    "looks like juice": (
        Situation(letter="B", actions=("keeps",), contents=(("cochineal", None),), household=TODDLER),
        "B put by looks like juice to a child",
        Situation(letter="B", actions=("keeps",), contents=(("cochineal", None),)),
    ),
    "sealed and warm": (
        Situation(letter="B", actions=("keeps",), contents=(("weld", None),), lid_on=True),
        "B's weld, boiled and sealed: keep it cold, never taste it.",
        Situation(letter="B", actions=("keeps",), contents=(("alum", 29.0),), lid_on=True),
    ),
    "past its date": (
        Situation(
            letter="B",
            actions=("opens",),
            pouring=(("weld", None),),
            pouring_from="weld bath 2",
            look_again_in_days=-4.0,
        ),
        "weld bath 2: 4 days past its date. Look outdoors",
        Situation(
            letter="B",
            actions=("opens",),
            pouring=(("weld", None),),
            pouring_from="weld bath 2",
            look_again_in_days=0.0,
        ),
    ),
    "opened again": (
        Situation(
            letter="B",
            actions=("opens",),
            pouring=(("weld", None),),
            pouring_from="weld bath 2",
            look_again_in_days=1.0,
        ),
        "weld bath 2: lid off away from your face; fuzz or a rotten-egg smell",
        Situation(letter="B", actions=("opens",), pouring=(("soda ash", 20.0),), pouring_from="soda stock"),
    ),
    "drifted": (
        Situation(letter="B", actions=("pours",), pouring=(("weld", None),), pouring_from="weld bath 2"),
        "weld bath 2 into B: it has drifted.",
        Situation(letter="B", actions=("opens",), pouring=(("weld", None),), pouring_from="weld bath 2"),
    ),
    "foul vat": (
        Situation(letter="B", actions=("enters",), contents=(("bran vat", 50.0),)),
        "B's sugar vat: should it smell of rotten eggs",
        Situation(letter="B", actions=("enters",), contents=(("alum", 29.0),)),
    ),
    "thrown away": (
        Situation(letter="B", actions=("discards",), contents=(("alum", 29.0), ("iron", 2.4))),
        "B's iron: use it up; no septic tank, pond or storm drain.",
        Situation(letter="B", actions=("pours",), contents=(("alum", 29.0), ("iron", 2.4))),
    ),
}
