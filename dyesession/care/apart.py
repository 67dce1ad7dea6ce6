"""What must be kept apart: the list a dyer may read, and the traits `mixing` watches for. Data only.

Each pair carries its source. Chemical equations are not worked out: a pair is on the list or it is not.
"""

from dataclasses import dataclass

from dyesession.care.reminder import MEMORY, PRACTICE

MIXING_NOTE = "National Fire Protection Association note, 2020-04-13; US EPA household waste text"
DITHIONITE_SHEET = "supplier SDS Jan 2016 under Reg. 1272/2008 (R31), fdokument.com/document/64223"
DITHIONITE_CARD = "ILO/WHO International Chemical Safety Card 1717 (Apr 2008), inchem.org"
LYE_SHEETS = "GisChem sodium hydroxide sheets, gischem.de dokument 577, 4413, 4421"
LIME_CARD = "ILO/WHO International Chemical Safety Card 0408, inchem.org"
SODA_CARD = "ILO/WHO International Chemical Safety Card 1135 (Apr 2024), chemicalsafety.ilo.org"
CHROME_SHEET = "SDS 2015 under Reg. 1272/2008, scribd.com/document/577366829"
CHEMISTRY = f"general chemistry; {MEMORY}"

Traits = tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Apart:
    """Two things to keep apart, what they make, and what to do.

    `never`: not at all; otherwise with care. Where `traits` are given, any bath that bears one of the first
    and one of the second is called out; the other pairs have a reminder of their own. `but_not` are traits
    that take a substance out of the first. `whole_room`: not even in two vessels of one room.
    """

    one: str
    other: str
    makes: str
    do: str
    source: str
    never: bool = True
    traits: tuple[Traits, Traits] | None = None
    but_not: Traits = ()
    whole_room: bool = False


KEEP_APART = (
    Apart(
        one="ammonia or stale urine",
        other="bleach",
        makes="chloramine gas",
        do="no bleach in a dye room",
        source=MIXING_NOTE,
        traits=(("ammonia",), ("bleach",)),
        whole_room=True,
    ),
    Apart(
        one="vinegar, citric acid, alum, tartar, any acid",
        other="bleach",
        makes="chlorine gas",
        do="no bleach in a dye room",
        source=f"{MIXING_NOTE}; alum is sour, so the same holds",
        traits=(("acid",), ("bleach",)),
        whole_room=True,
    ),
    Apart(
        one="alcohol",
        other="bleach",
        makes="chloroform",
        do="no bleach in a dye room",
        source=MIXING_NOTE,
        traits=(("alcohol",), ("bleach",)),
        whole_room=True,
    ),
    Apart(
        one="any acid, alum among them",
        other="dithionite, thiourea dioxide, or a vat of either",
        makes="sulphur dioxide",
        do="air the vat first",
        source=f"{DITHIONITE_SHEET}; for thiourea dioxide {MEMORY}",
        traits=(("acid",), ("reducing",)),
    ),
    Apart(
        one="vinegar or acetic acid",
        other="peroxide",
        makes="peracetic acid",
        do="rinse between",
        source=MIXING_NOTE,
        traits=(("acetic",), ("peroxide",)),
    ),
    Apart(
        one="iron or copper salts",
        other="peroxide",
        makes="heat and a burst of gas",
        do="no metal in it, and a vented cap",
        source=CHEMISTRY,
        traits=(("iron", "copper"), ("peroxide",)),
    ),
    Apart(
        one="ammonia",
        other="peroxide",
        makes="heat and fumes",
        do="rinse between",
        source=f"kept apart on the sheets of both; what it makes is {MEMORY}",
        traits=(("ammonia",), ("peroxide",)),
    ),
    Apart(
        one="bleach",
        other="peroxide",
        makes="a rush of oxygen",
        do="no bleach in a dye room",
        source=CHEMISTRY,
        traits=(("bleach",), ("peroxide",)),
    ),
    Apart(
        one="dithionite or thiourea dioxide",
        other="bleach, peroxide or chrome",
        makes="fierce heat",
        do="air the vat first",
        source=f"{DITHIONITE_CARD}; for thiourea dioxide {MEMORY}",
        traits=(("reducing",), ("bleach", "peroxide", "oxidiser")),
    ),
    Apart(
        one="lye, lime or soda",
        other="ammonium salts",
        makes="ammonia gas",
        do="use another alum, or no alkali",
        source=f"{LYE_SHEETS}; for soda its card, {SODA_CARD}",
        traits=(("lye", "lime", "alkali"), ("ammonium salt",)),
        but_not=("ammonia",),
    ),
    Apart(
        one="strong acid",
        other="lye or lime",
        makes="violent heat",
        do="never one on the other undiluted",
        source=LYE_SHEETS,
        traits=(("strong acid",), ("lye", "lime")),
    ),
    Apart(
        one="chrome",
        other="plant stuff, bran, tannin, sugar",
        makes="fire",
        do="chrome is refused",
        source=CHROME_SHEET,
        traits=(("oxidiser",), ("plant slurry", "flour", "tannin")),
    ),
    Apart(
        one="drops of water, or damp",
        other="dithionite powder",
        makes="heat, then fire",
        do="a dry scoop; powder into water",
        source=DITHIONITE_CARD,
    ),
    Apart(
        one="water",
        other="lye, poured on it",
        makes="boiling and spatter",
        do="lye into cold water, bit by bit",
        source=LYE_SHEETS,
    ),
    Apart(
        one="lye",
        other="pots of aluminium, zinc or tin",
        makes="hydrogen, and the pot dissolves",
        do="stainless or enamel",
        source=LYE_SHEETS,
    ),
    Apart(
        one="slaked lime",
        other="pots of aluminium",
        makes="hydrogen",
        do="stainless, enamel or plastic",
        source=LIME_CARD,
    ),
    Apart(
        one="any acid or alum",
        other="chalk, soda, potash, baking soda",
        makes="foam: hot dye over the rim",
        do="small portions, the pot half full",
        source=SODA_CARD,
        never=False,
    ),
    Apart(
        one="copper sulphate",
        other="pots of iron, zinc or aluminium",
        makes="copper on the pot, a spoilt bath",
        do="stainless or enamel",
        source=CHEMISTRY,
        never=False,
    ),
    Apart(
        one="alum or an acid",
        other="pots of bare aluminium or iron",
        makes="an eaten pot and another shade",
        do="stainless or enamel",
        source=PRACTICE,
        never=False,
    ),
    Apart(
        one="iron",
        other="tannin",
        makes="ink: it stains whatever it meets",
        do="a pot and a spoon for iron alone",
        source=PRACTICE,
        never=False,
    ),
    Apart(
        one="soda or lye, hot",
        other="wool and silk",
        makes="harsh or dissolved fibre",
        do="cooler, or less",
        source=PRACTICE,
        never=False,
    ),
)
"""Worst first, as it is printed. The foaming: ILO/WHO card 1135; litres of gas stand in `foam`."""

NEVER_MIX = tuple(pair for pair in KEEP_APART if pair.traits is not None)
"""The pairs that every bath, and every two vessels of the room, are searched for."""
