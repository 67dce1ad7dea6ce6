"""What the program says about itself, and the first-aid lines. They defer: nothing here treats anybody.

Common core of every first-aid line as on the safety sheets and cards named in `substances`. No list of
telephone numbers is shipped: an old number is worse than none.
"""

DISCLAIMER_SHORT = (
    "General care for dyeing small lots at home. Labels, safety data sheets, local rules and licensed "
    "practitioners outrank it. After an accident, ring your poison centre or the emergency number "
    "first."
)

DISCLAIMER_LONG = (
    "These are the cautions a careful home dyer would give a neighbour, with the sums done. Nobody "
    "here has seen your kitchen, your water, the jar in your hand or your doctor's notes, and nobody "
    "here is licensed to advise on safety at work, medicine, law or waste. So the label and the "
    "safety data sheet of your own product, your local codes (chemicals, ventilation, gas, waste "
    "water) and a licensed practitioner all outrank this program: where they disagree with it, do as "
    "they say. The exposure limits printed beside some substances were set for workplaces; staying "
    "under one does not make a home use safe. Left out altogether: vapours from boiling plants, "
    "pregnancy, lead and arsenic in impure salts or soils."
)

NO_NUMBER = (
    "Your poison centre's number is not known here: My kitchen keeps it (poison_centre in kitchen.toml)."
)

_NOBODY = "your poison centre or the emergency number"

_FIRST_AID = {
    "rinse": (
        "In an eye: hold it under the tap for several minutes, contact lenses out. On skin: wash. In "
        "the mouth: rinse, bring nothing up on purpose, and ring {centre}. The safety data sheet says "
        "more."
    ),
    "eye": (
        "In an eye: straight under running water, a quarter of an hour or longer, contact lenses out, "
        "and to a doctor now. On skin: wash. In the mouth: rinse, bring nothing up on purpose, and "
        "ring {centre}. Take the safety data sheet with you."
    ),
    "burn": (
        "Get what is wetted off and the skin or eye under running water, a quarter of an hour or "
        "longer, while somebody rings the emergency number. Swallowed: rinse the mouth, never bring "
        "it up on purpose, and ring {centre}. Take the safety data sheet with you."
    ),
    "scald": (
        "Straight under cool running water, and stay there. Rings and wet clothing off, nothing "
        "greasy on. A doctor for blisters, for anything large, for a face, a hand or a child."
    ),
    "iron": (
        "A child or a pet may have swallowed some, however little: ring {centre}, or the vet, this "
        "minute. Signs come late, so do not wait for them, and bring nothing up on purpose. Eyes and "
        "skin: rinse. Have the packet and the safety data sheet by the telephone."
    ),
    "poison": (
        "By mouth, lungs or skin: ring {centre} at once. Meanwhile, water over skin and eyes, and "
        "plenty of it. Take the safety data sheet with you."
    ),
    "gas": (
        "Out of the room first, into fresh air. Breath still short: the emergency number. Eyes that "
        "sting: under running water a quarter of an hour or longer, then a doctor. By mouth: rinse, "
        "and ring {centre}. The safety data sheet comes before this line."
    ),
    "allergy": (
        "A tight chest, a rash, a swelling face: leave the dust, get into fresh air, ring the "
        "emergency number. Dust in an eye: rinse. By mouth: ring {centre}. The supplier's safety data "
        "sheet, where there is one, comes first."
    ),
}

FIRST_AID_KEYS = tuple(_FIRST_AID)

FIRST_AID_SOURCE = (
    "precautionary texts of the sheets and cards named with each substance; the scald line: "
    "common practice, no source"
)


def first_aid_line(key: str, poison_centre: str | None = None) -> str:
    """One first-aid line, with the dyer's own poison-centre number in it where it was given.

    `key` is one of FIRST_AID_KEYS; raises KeyError for any other.
    """
    return _FIRST_AID[key].replace("{centre}", centre_words(poison_centre))


def centre_words(poison_centre: str | None = None) -> str:
    """Whom to ring: the poison centre, with the dyer's own number where it was given."""
    number = number_words(poison_centre)
    return f"your poison centre ({number})" if number else _NOBODY


def number_words(poison_centre: str | None) -> str:
    """The dyer's own number on one printable line, "" where none was given."""
    return " ".join("".join(c if c.isprintable() else " " for c in poison_centre or "").split())
