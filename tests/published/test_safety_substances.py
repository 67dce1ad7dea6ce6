"""Hazard classes as published, one row for each substance, found by the name a dyer would type.

Sources: ILO/WHO International Chemical Safety Cards 0215, 0408, 0704, 0707, 1135, 1191, 1416, 1717; GisChem
sheets of the German employers' institutions; supplier safety data sheets. Which sheet gives which code stands
with each substance. Where sheets differ, the stricter is expected. "own" marks a precaution of our own.
"""

import pytest

from dyesession.substances import VERDICTS, find

# (name typed, key, CAS or "", codes that must be shown, signal word, mildest verdict allowed)
ROWS = [
    ("alum", "potassium alum", "7784-24-9", "H302 H315 H319 H335", "Warning", "yes"),
    ("aluminum acetate", "aluminium acetate", "142-03-0", "H360", "Danger", "with care"),
    ("aluminum sulfate", "aluminium sulphate", "10043-01-3", "H290 H318 H335 H401", "Danger", "with care"),
    ("copperas", "ferrous sulphate", "7782-63-0", "H302 H315 H319", "Warning", "with care"),
    ("blue vitriol", "copper sulphate", "7758-99-8", "H302 H318 H400 H410", "Danger", "not recommended"),
    (
        "stannous chloride", "tin chloride", "10025-69-1",
        "H290 H302 H332 H314 H317 H335 H373 H412", "Danger", "refused",
    ),
    (
        "bichromate of potash", "potassium dichromate", "7778-50-9",
        "H272 H301 H310 H314 H317 H330 H334 H340 H350 H360FD H372 H410", "Danger", "refused",
    ),
    ("cream of tartar", "cream of tartar", "868-14-4", "", "", "yes"),
    ("citric acid", "citric acid", "77-92-9", "H319 H335", "Warning", "yes"),
    ("vinegar", "vinegar", "64-19-7", "", "", "yes"),
    ("acetic acid", "strong acetic acid", "64-19-7", "H226 H290 H314", "Danger", "not recommended"),
    ("oxalic acid", "oxalic acid", "6153-56-6", "H302 H312 H318", "Danger", "refused"),
    ("rhubarb leaves", "rhubarb leaf", "", "", "", "refused"),
    ("rhubarb root", "rhubarb root", "", "", "", "with care"),
    ("tannic acid", "tannin", "1401-55-4", "H315 H319 H335", "Warning", "yes"),
    ("gallnut", "gall nut", "", "H315 H319 H335", "Warning", "yes"),
    ("soda ash", "soda ash", "497-19-8", "H319", "Warning", "yes"),
    ("washing soda", "washing soda", "6132-02-1", "H319", "Warning", "yes"),
    ("caustic soda", "lye", "1310-73-2", "H290 H314", "Danger", "not recommended"),
    ("whiting", "chalk", "471-34-1", "", "", "yes"),
    ("slaked lime", "slaked lime", "1305-62-0", "H315 H318 H335", "Danger", "with care"),
    ("ammonia", "ammonia", "1336-21-6", "H290 H302 H314 H335 H400", "Danger", "experienced, outdoors"),
    (
        "hydrosulphite", "sodium dithionite", "7775-14-6",
        "H251 H302 H319 EUH031", "Danger", "experienced, outdoors",
    ),
    (
        "thiourea dioxide", "thiourea dioxide", "1758-73-2",
        "H251 H302 H315 H318", "Danger", "experienced, outdoors",
    ),
    ("textile wash", "neutral textile wash", "68439-50-9", "H302 H318", "Danger", "yes"),
    ("peroxide", "hydrogen peroxide", "7722-84-1", "H271 H272 H302 H318 H319", "Danger", "with care"),
    ("cochineal", "cochineal", "", "H334", "Danger", "with care"),  # own
    ("madder", "madder root", "", "", "", "yes"),
    ("logwood", "logwood chips", "", "", "", "yes"),
    ("walnut hulls", "walnut hull", "", "", "", "yes"),
    ("weld", "weld", "", "", "", "yes"),
    ("indigo", "indigo powder", "482-89-3", "", "", "yes"),
    ("pre-reduced indigo", "pre-reduced indigo", "", "H318", "Danger", "with care"),  # own
    ("fructose vat", "sugar vat", "", "H315 H318", "Danger", "with care"),  # the lime's
    ("household bleach", "chlorine bleach", "7681-52-9", "EUH031", "Danger", "refused"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "key", "cas", "codes", "signal", "mildest"), ROWS)
def test_the_published_class_of_a_substance_is_shown_and_never_softened(
    typed, key, cas, codes, signal, mildest
):
    found = find(typed)
    shown = set(found.codes) | {code for band in found.bands for code in band.codes}
    assert found.key == key
    assert found.cas == cas
    assert set(codes.split()) <= shown
    assert found.signal_word == signal
    assert VERDICTS.index(found.home_use) >= VERDICTS.index(mildest)


@pytest.mark.parametrize(
    ("name", "percent", "codes"),
    [
        ("lye", 10.0, "H290 H314"),  # gischem.de dokument 577
        ("lye", 1.0, "H315 H319"),  # gischem.de dokument 4413
        ("acetic acid", 60.0, "H290 H314"),  # gischem.de dokument 2348
        ("acetic acid", 15.0, "H315 H319"),  # from memory, unverified
        ("acetic acid", 5.0, ""),  # from memory, unverified
        ("ammonia", 25.0, "H290 H302 H314 H335 H400"),  # ILO/WHO card 0215
        ("ammonia", 7.0, "H290 H314 H335"),  # gischem.de dokument 4435
        ("peroxide", 12.0, "H272 H318"),  # gischem.de dokument 6380
        ("peroxide", 30.0, "H272 H302 H318"),  # gischem.de dokument 6380
        ("peroxide", 70.0, "H271 H302 H314 H332 H335"),  # gischem.de dokument 750
        ("peroxide", 3.0, ""),  # from memory, unverified
    ],
)
def test_a_solution_is_classed_by_its_strength(name, percent, codes):
    assert set(find(name).band(percent).codes) == set(codes.split())


def test_the_disagreements_that_were_read_are_kept_beside_the_stricter_class():
    for name in ("alum", "aluminium sulphate", "dithionite", "tannin", "chrome", "ammonia", "iron", "tin"):
        assert find(name).other_view, name
