import textwrap
import tomllib
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

import dyesession.kitchen.loading as loading
from dyesession.kitchen import (
    Alarm,
    Burner,
    Household,
    Jar,
    Jug,
    Kitchen,
    KitchenError,
    Pot,
    Scale,
    TapWater,
    check_kitchen,
    kitchen_for_log,
    kitchen_from_log,
    load_kitchen,
    write_kitchen,
)
from dyesession.kitchen.amounts import figure, read_hardness_mg_l, read_power_w, read_pressure_kpa
from dyesession.tomlfile import TomlFileError, write_document

EXAMPLE = textwrap.dedent(loading.__doc__.split(":\n\n", 1)[1])


def written(tmp_path, text):
    file = tmp_path / "kitchen.toml"
    file.write_text(text, encoding="utf-8")
    return file


def test_the_kitchen_of_the_documentation_is_read_as_it_says(tmp_path):
    kitchen = load_kitchen(written(tmp_path, EXAMPLE))
    assert kitchen.scales == (Scale("letter scale", 1.0, 5000.0),)
    assert kitchen.jugs == (Jug("2 L jug", 2.0, 0.05),)
    assert kitchen.pots == (Pot("big pot", 12.0, 28.0, True, "stainless"),)
    assert kitchen.burners == (Burner("burner 1", 1800.0, "electric"),)
    assert kitchen.elevation_m == 400.0
    assert kitchen.water.ph == 7.6
    assert kitchen.water.hardness_mg_l == pytest.approx(12 * 17.848, rel=1e-4)
    assert kitchen.jars == (Jar("madder, autumn", "madder root", "", None, 4.5, 350.0, "2026-03-14"),)
    assert kitchen.household == Household(child_kg=12.0, children=True, pets=True)
    assert kitchen.alarm == Alarm(True, 20.0, "22:00", "07:00")


def test_an_empty_kitchen_is_a_kitchen(tmp_path):
    file = written(tmp_path, "format = 1\n")
    assert load_kitchen(file) == Kitchen(path=str(file))
    assert check_kitchen(file) == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("format = 2\n", "newer"),
        ("", "format = 1"),
        ("format = 1\nelevaton = '400 m'\n", '"elevation"'),
        ("format = 1\nelevation = '9000 m'\n", "-500 to 5000 m"),
        ("format = 1\nelevation = '400'\n", "400"),
        ("format = 1\nstation_pressure = '95 bananas'\n", "950 hPa"),
        ("format = 1\nunits = 'furlongs'\n", '"imperial"'),
        ("format = 1\nthermometer = 'yes'\n", "true or false"),
        ("format = 1\n[[scale]]\nname = 'old'\n", "no resolution"),
        ("format = 1\n[[scale]]\nresolution = '1 l'\n", "1 l"),
        ("format = 1\n[[scale]]\nresolution = '0 g'\n", "more than nothing"),
        ("format = 1\n[[scale]]\nresolution = '5 g'\ncapacity = '1 g'\n", "more than the resolution"),
        ("format = 1\n[[pot]]\nvolum = '9 l'\n", '"volume"'),
        (
            "format = 1\n[[pot]]\nname = 'a'\nvolume = '9 l'\n[[pot]]\nname = 'A'\nvolume = '3 l'\n",
            "two pots",
        ),
        ("format = 1\n[[burner]]\npower = '1800'\n", "1800 W"),
        ("format = 1\n[[burner]]\nkind = 'coal'\n", '"electric"'),
        ("format = 1\n[water]\nph = 20\n", "4 to 11"),
        ("format = 1\n[[jar]]\nname = 'x'\n", "no substance"),
        ("format = 1\n[household]\nlightest_child = '12'\n", "no unit"),
        ("format = 1\n[alarm]\nquiet = { from = '25:00', to = '07:00' }\n", "time of day"),
        ("format = 1\n[alarm]\nrepeat = 'overnight'\n", "20 s"),
    ],
)
def test_a_fault_in_a_kitchen_is_one_sentence(tmp_path, text, words):
    found = check_kitchen(written(tmp_path, text))
    assert words in " | ".join(found)
    assert all("kitchen.toml" in sentence and "\n" not in sentence for sentence in found)
    with pytest.raises((KitchenError, TomlFileError)) as caught:
        load_kitchen(tmp_path / "kitchen.toml")
    assert str(caught.value) == found[0]


def test_all_faults_of_a_kitchen_are_found(tmp_path):
    text = "format = 1\nelevation = 'high'\n[[scale]]\nresolution = 'fine'\n[[pot]]\nvolume = 'big'\n"
    assert len(check_kitchen(written(tmp_path, text))) == 3


def test_household_number_and_command_never_enter_a_log():
    kitchen = Kitchen(
        scales=(Scale("s", 1.0),),
        household=Household(child_kg=11.5, insect_allergy=True),
        poison_centre="0123 456789",
        alarm=Alarm(command=("ring", "loudly")),
        path="somewhere/kitchen.toml",
    )
    text = write_document(kitchen_for_log(kitchen))
    for private in ("11.5", "child", "allergy", "0123", "ring", "somewhere"):
        assert private not in text
    assert kitchen_from_log(tomllib.loads(text)) == Kitchen(scales=(Scale("s", 1.0),))


def test_a_log_that_names_a_household_is_not_taken_for_a_kitchen():
    with pytest.raises(KitchenError):
        kitchen_from_log({"household": {"child_kg": 3.0}})


@pytest.mark.parametrize("table", [{"scales": [{"name": "s"}]}, {"pts": []}, {"pots": 3}, {"water": 3}])
def test_a_table_that_is_no_kitchen_is_one_sentence(table):
    with pytest.raises(KitchenError, match="cannot be read"):
        kitchen_from_log(table)


words = st.text("abcdefgh ij", min_size=1, max_size=8).map(str.strip).filter(bool)
sizes = st.floats(0.01, 5000).map(lambda x: round(x, 3))


@st.composite
def kitchens(draw):
    def some(kind):
        return tuple(draw(st.lists(kind, max_size=3)))

    def maybe(kind):
        return st.none() | kind

    pots = some(st.builds(Pot, words, sizes, maybe(sizes), maybe(st.booleans()), words | st.just("")))
    return Kitchen(
        scales=some(
            st.builds(Scale, words, st.sampled_from([0.01, 0.1, 1.0, 5.0]), st.just(6000.0), maybe(sizes))
        ),
        jugs=some(st.builds(Jug, words, sizes, maybe(sizes))),
        pots=tuple({pot.name: pot for pot in pots}.values()),
        burners=some(
            st.builds(Burner, words, maybe(sizes), st.sampled_from(["", "gas", "induction"]), st.booleans())
        ),
        thermometer=draw(maybe(st.booleans())),
        elevation_m=draw(maybe(st.floats(0, 4000).map(lambda x: round(x, 1)))),
        water=TapWater(draw(maybe(sizes)), draw(maybe(sizes)), draw(maybe(st.floats(5, 9)))),
        household=Household(
            children=draw(st.booleans()), pets=draw(st.booleans()), insect_allergy=draw(st.booleans())
        ),
        poison_centre=draw(words | st.just("")),
        alarm=Alarm(draw(st.booleans()), draw(st.floats(1, 600).map(lambda x: round(x, 1)))),
    )


@given(kitchens())
def test_a_kitchen_written_out_is_read_back(tmp_path_factory, kitchen):
    file = written(tmp_path_factory.mktemp("k"), write_kitchen(kitchen))
    assert load_kitchen(file) == replace(kitchen, path=str(file))


@given(kitchens())
def test_a_kitchen_comes_back_from_a_log_but_for_what_stays_at_home(kitchen):
    again = kitchen_from_log(tomllib.loads(write_document(kitchen_for_log(kitchen))))
    for part in ("scales", "jugs", "pots", "burners", "thermometer", "elevation_m", "water", "jars", "units"):
        assert getattr(again, part) == getattr(kitchen, part)
    assert again.household == Household()
    assert again.poison_centre == ""


@given(st.floats(1e-6, 1e9))
def test_a_figure_is_written_without_an_exponent_and_reads_back(value):
    text = figure(value)
    assert "e" not in text
    assert float(text) == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (read_power_w, "1.8 kW", 1800.0),
        (read_power_w, "1800W", 1800.0),
        (read_pressure_kpa, "950 hPa", 95.0),
        (read_pressure_kpa, "760 mmHg", 101.325),  # the standard atmosphere is 760 mmHg by definition
        (read_pressure_kpa, "29,92 inHg", 101.32),
        (read_hardness_mg_l, "1 °dH", 17.848),  # 10 mg CaO per litre
        (read_hardness_mg_l, "10 fH", 100.0),  # 10 mg CaCO3 per litre, each
        (read_hardness_mg_l, "120 ppm", 120.0),
    ],
)
def test_power_pressure_and_hardness_are_read_in_the_units_on_the_plate(read, text, value):
    assert read(text) == pytest.approx(value, rel=1e-4)


@pytest.mark.parametrize("text", ["", "many", "3", "3 sheep", "-4 W"])
def test_an_amount_without_its_unit_is_refused(text):
    with pytest.raises(KitchenError, match="1800 W"):
        read_power_w(text)


def test_a_ring_typed_in_keeps_its_graver_kind_and_a_microwave_is_known():
    from dyesession.kitchen.answers import answered

    def ring(text):
        return answered(Kitchen(), "ring", text).burners[0]

    assert ring("gas camp stove outdoors") == Burner("ring 1", None, "camp stove", indoors=False)
    assert ring("800 W microwave") == Burner("ring 1", 800.0, "microwave")
    assert ring("2 kW gas") == Burner("ring 1", 2000.0, "gas")


def test_a_kitchen_without_a_thermometer_says_so():
    from dyesession.kitchen.answers import answered, known, taken_away

    none = answered(Kitchen(), "thermometer", "None")
    assert none.thermometer is False and ("thermometer", "none") in known(none)
    assert answered(none, "thermometer", "yes").thermometer is True
    assert taken_away(none, "thermometer") == Kitchen()
    with pytest.raises(KitchenError, match="yes or none"):
        answered(Kitchen(), "thermometer", "perhaps")


def test_a_log_that_still_holds_what_days_had_taught_keeps_its_kitchen():
    kitchen = Kitchen(scales=(Scale("letter scale", 0.1),))
    assert kitchen_from_log({**kitchen_for_log(kitchen), "own": {"cooling": 1.2}}) == kitchen
