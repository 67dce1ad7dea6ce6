"""Sums that the old dye books do, or that follow from two of them, done again exactly.

The books: Franklin Beech, The Dyeing of Woollen Fabrics, 1902 (Beech); Ethel M. Mairet, A Book on Vegetable
Dyes, 1916 (Mairet 1916) and Vegetable Dyes, 1938 (Mairet 1938), who quotes Hellot and Bancroft; Gillette,
The Whitehouse Cookbook, 1887, section on dyeing; a household receipt text, page 73 (receipt text). Figures
marked computed were worked out from the printed ones. The recipes use chromium, tin and strong acids: they
are here as arithmetic, never as advice.
"""

from fractions import Fraction

import pytest

from dyesession.units import (
    Ambiguous,
    Flat,
    NeedsWeight,
    PerBath,
    Quantity,
    ShareOf,
    ShareOfFibre,
    as_share_of_fibre,
    mass_of_share,
    percent_of_fibre,
    read_dose,
    read_duration,
    read_length,
    read_mass,
    read_temperature,
    read_water,
    repeated,
    show_avoirdupois,
    show_temperature,
    split,
    through,
    total,
    within,
)


def percent(ingredient: str, fibre: str) -> Fraction:
    """Work out an ingredient as a percentage of the fibre, both as printed and neither a range."""
    share = percent_of_fibre(read_mass(ingredient), read_mass(fibre))
    assert not share.is_range
    return share.aim


def share(dose: str) -> ShareOfFibre:
    return as_share_of_fibre(read_dose(dose))


def per_litre(dose: str) -> PerBath:
    read = read_dose(dose)
    assert isinstance(read, PerBath)
    return read


@pytest.mark.parametrize(
    ("dose", "grams", "stock", "millilitres"),
    [("2 %", "0.1", "5 g/l", 20), ("3 %", "0.15", None, None), ("15 %", "0.75", "50 g/l", 15)],
)
def test_1_a_swatch_of_five_grams(dose: str, grams: str, stock: str | None, millilitres: int | None) -> None:
    """Beech, pp. 214-215: the grams; the millilitres of stock solution computed."""
    weighed = mass_of_share(share(dose), read_mass("5 g"))
    assert weighed.aim == Fraction(grams)
    if stock is not None:
        assert weighed.aim / per_litre(stock).low * 1000 == millilitres


def test_2_two_samples_compared_in_columns() -> None:
    """Beech, p. 217: equal depth of colour at 30 and 25 cm makes the weaker 83.3 per cent of the stronger."""
    long_column, short_column = read_length("30 cm").aim, read_length("25 cm").aim
    strength = short_column / long_column
    assert round(float(100 * strength), 1) == 83.3
    assert 1 / strength == Fraction("1.2")  # computed: how much more of the weaker is wanted


@pytest.mark.parametrize(
    ("dose", "per_hundred"), [("4 oz per lb", "25"), ("1 oz per lb", "6.25"), ("2 oz per lb", "12.5")]
)
def test_3_ounces_to_the_pound_are_pounds_to_the_hundred(dose: str, per_hundred: str) -> None:
    """Hellot in Mairet 1916, ch. III, pp. 26-29: 4 oz to the pound is 25 to the hundred; the others
    computed."""
    assert 100 * share(dose).low == 100 * share(f"{per_hundred} lb per 100 lb").low == Fraction(per_hundred)


def test_3_a_quarter_of_a_pound_prints_as_four_ounces() -> None:
    """Hellot in Mairet 1916, ch. III, the other way about."""
    assert show_avoirdupois(mass_of_share(share("25 %"), read_mass("1 lb")).aim) == "4 oz"


@pytest.mark.parametrize(
    ("recipe", "fibre", "weights", "reprinted"),
    [
        ("lavender", "6 1/4 lb", ["3 oz", "2 oz", "1 oz"], ["3", "2", "1"]),
        ("old gold", "6 1/4 lb", ["3 oz", "24 oz", "4 oz"], ["3", "24", "4"]),
        ("tan", "6 1/4 lb", ["5 oz", "4 oz", "1/2 oz"], ["5", "4", "1/2"]),
        ("French brown", "50 lb", ["1 1/2 lb", "1 lb", "1/2 lb", "1 lb", "8 oz"], ["3", "2", "1", "2", "1"]),
    ],
)
def test_5_weights_of_1916_are_the_percentages_of_1938(
    recipe: str, fibre: str, weights: list[str], reprinted: list[str]
) -> None:
    """Mairet 1916 against Mairet 1938, the same recipe in both."""
    assert [percent(weight, fibre) for weight in weights] == [Fraction(f) for f in reprinted], recipe


def test_5_where_the_two_editions_do_not_agree() -> None:
    """French brown has 6 lb of fustic in 1916 and 8 per cent in 1938; the tan has 6 1/2 lb of fibre in
    1938."""
    assert percent("6 lb", "50 lb") == 12 != 8
    doubted = [percent(weight, "6 1/2 lb") for weight in ("3 oz", "5 oz", "4 oz", "1/2 oz")]
    assert [round(float(figure), 3) for figure in doubted] == [2.885, 4.808, 3.846, 0.481]


def test_6_which_drachm_is_asked_and_the_twin_recipe_decides() -> None:
    """Mairet 1916, cochineal no. 1 (1 1/2 and 6 1/2 drachms to the pound) against no. 5 (6 1/4 lb on 100
    lb)."""
    readings = []
    for typed in ("1 1/2 drachms", "6 1/2 drachms"):
        with pytest.raises(Ambiguous) as unclear:
            read_mass(typed)
        readings.append([read_mass(choice.text) for choice in unclear.value.choices])
    pound = read_mass("1 lb")
    both = [percent_of_fibre(total(baths), pound).aim for baths in zip(*readings, strict=True)]
    assert [round(float(figure), 3) for figure in both] == [6.25, 3.125, 6.857]
    twin = percent_of_fibre(total([read_mass("1/2 lb"), read_mass("5 3/4 lb")]), read_mass("100 lb")).aim
    assert [figure == twin for figure in both] == [True, False, False]
    assert "one eighth of an ounce" in unclear.value.choices[0].label


def test_7_what_two_baths_give_together() -> None:
    """Mairet 1916, cochineal no. 5: 100 lb in two baths."""
    fibre = read_mass("100 lb")
    cochineal = total([read_mass("1/2 lb"), read_mass("5 3/4 lb")])
    assert percent_of_fibre(cochineal, fibre).aim == Fraction("6.25")
    tin = percent_of_fibre(total([read_mass("5 lb"), read_mass("13-14 lb")]), fibre)
    assert (tin.low, tin.high) == (18, 19)
    assert percent("6 lb", "100 lb") == 6
    assert percent_of_fibre(read_mass("1/2 lb"), cochineal).aim == 8


@pytest.mark.parametrize(("parts", "ounces", "expected"), [("5", "5 oz", "15.625"), ("3", "3 oz", "9.375")])
def test_8_parts_in_one_book_are_ounces_in_another(parts: str, ounces: str, expected: str) -> None:
    """Receipt text p. 73: alum 5, tartar 3 to 32 of cloth. Whitehouse Cookbook: 5 oz and 3 oz for 2 lb."""
    assert 100 * share(f"{parts} parts to 32 of cloth").low == percent(ounces, "2 lb") == Fraction(expected)
    assert read_mass("2 lb").aim == read_mass("32 oz").aim


def standing_bath(first: str, later: str, lots: int, fibre: str) -> Quantity:
    """Add up what a standing bath has been given for so many lots of the same weight."""
    weight = read_mass(fibre)
    return total([mass_of_share(share(first), weight), *[mass_of_share(share(later), weight)] * (lots - 1)])


def test_10_a_standing_mordant_bath_saves_an_eighth() -> None:
    """Beech, p. 84: first lot 3 % bichromate and 1 % acid, each later lot 2 1/2 % and 1 %; the totals
    computed."""
    for lots in range(1, 7):
        expected = (3 + Fraction(5, 2) * (lots - 1)) * read_mass("1 lb").aim
        assert standing_bath("3 %", "2 1/2 %", lots, "100 lb").aim == expected
        assert standing_bath("1 %", "1 %", lots, "100 lb").aim == lots * read_mass("1 lb").aim
    kept, fresh = standing_bath("3 %", "2 1/2 %", 4, "100 lb"), standing_bath("3 %", "3 %", 4, "100 lb")
    assert (kept.aim, fresh.aim) == (read_mass("10 1/2 lb").aim, read_mass("12 lb").aim)
    assert percent_of_fibre(Quantity(saved := fresh.aim - kept.aim, saved, "saved"), fresh).aim == Fraction(
        "12.5"
    )
    assert share("3 %").low - share("2 1/2 %").low == share("3 %").low / 6
    lots_g = [mass_of_share(share(dose), read_mass("200 g")).aim for dose in ("3 %", "2 1/2 %")]
    assert lots_g == [6, 5]


@pytest.mark.parametrize(
    ("fibre", "alum", "copperas", "together"),
    [("1 lb", "0.8 oz", "1.2 oz", "2 oz"), ("250 g", "12.5 g", "18.75 g", "31.25 g")],
)
def test_11_two_drugs_under_one_ceiling(fibre: str, alum: str, copperas: str, together: str) -> None:
    """Whitehouse Cookbook, brown: alum to copperas as 2 to 3, together at most an eighth of the goods."""
    ceiling, goods = share("1/8 of the goods"), read_mass(fibre)
    most = mass_of_share(ceiling, goods).aim
    assert most == read_mass(together).aim
    assert split(most, (2, 3)) == (read_mass(alum).aim, read_mass(copperas).aim)
    assert (percent(alum, fibre), percent(copperas, fibre)) == (5, Fraction("7.5"))
    assert within([read_mass(alum), read_mass(copperas)], goods, ceiling)
    assert not within([read_mass(f"{alum} + 1 g"), read_mass(copperas)], goods, ceiling)
    assert not within([read_mass(alum), read_mass(f"{copperas} + 1 g")], goods, ceiling)


def test_13_a_metric_vat_restated_in_english_measure() -> None:
    """Mairet 1916, indigo nos. 9 and 14: the imperial gallon makes them one recipe, the US gallon does
    not."""
    salt, indigo = per_litre("3-4 kg per 500 l"), per_litre("1 kg per 500 l")
    assert (salt.low, salt.high, indigo.low) == (6, 8, 2)
    english = [per_litre(f"{dose} per 3 1/2 imperial gallons").low for dose in ("4 1/2 oz", "1 1/4 oz")]
    assert [round(float(figure), 2) for figure in english] == [8.02, 2.23]
    american = [per_litre(f"{dose} per 3 1/2 US gallons").low for dose in ("4 1/2 oz", "1 1/4 oz")]
    assert [round(float(figure), 2) for figure in american] == [9.63, 2.67]
    assert abs(english[1] / indigo.low - 1) < Fraction(12, 100) < abs(american[1] / indigo.low - 1)
    warm = read_temperature("125 F")
    assert isinstance(warm, Quantity) and show_temperature(warm.aim) == "51.7 °C"
    assert 50 <= warm.aim <= 60


def test_13_a_bare_gallon_in_the_vat_is_asked_about() -> None:
    """Mairet 1916, indigo no. 14, as printed."""
    with pytest.raises(Ambiguous) as unclear:
        read_dose("4 1/2 oz per 3 1/2 gallons")
    read = [per_litre(choice.text).low for choice in unclear.value.choices]
    assert [round(float(figure), 2) for figure in read] == [8.02, 9.63]


def test_15_tannin_by_its_equivalents() -> None:
    """Mairet 1916 and 1938: 1 lb of tannic acid for 4 of sumach; the book's other equivalents contradict
    it."""
    assert percent("12 oz", "10 lb") == Fraction("7.5")
    one_in_four = read_dose("1 part to 4 of sumach")
    assert isinstance(one_in_four, ShareOf) and one_in_four.ingredient == "sumach"
    for fibre, sumach, tannin in (("50 lb", "20", "5"), ("40 lb", "25", "6.25")):
        dose = share(f"10 lb per {fibre}")
        assert 100 * dose.low == Fraction(sumach)
        assert 100 * through(one_in_four, dose).low == Fraction(tannin)
    galls = read_mass("4 oz").aim / read_mass("1 1/2 oz").aim
    assert round(float(galls), 2) == 2.67 and galls < 11


def test_16_a_share_of_a_share() -> None:
    """Receipt text, madder red: 2 oz to the pound of madder. Mairet 1916, cotton: soda a sixteenth of the
    alum."""
    compound, madder = read_dose("2 oz per lb of madder"), share("1/2 lb per lb of cloth")
    assert isinstance(compound, ShareOf) and compound.ingredient == "madder"
    assert 100 * through(compound, madder).low == Fraction("6.25")
    assert 100 * compound.low == Fraction("12.5")  # what a reader gets who takes the madder for the cloth
    soda, alum = read_dose("1/16 of the alum"), share("1/4 of the cotton")
    assert isinstance(soda, ShareOf) and soda.ingredient == "alum"
    assert 100 * through(soda, alum).low == Fraction("1.5625")


def test_16_as_much_bark_as_alum() -> None:
    """Bancroft in Mairet 1916, ch. VIII: alum a sixth or an eighth of the wool, the bark as much as the
    alum."""
    bark, alum = read_dose("as much as the alum"), share("1/8 to 1/6 of the wool")
    assert isinstance(bark, ShareOf)
    equal = through(bark, alum)
    assert 100 * equal.low == Fraction("12.5") and round(float(100 * equal.high), 2) == 16.67


def test_18_extract_against_wood() -> None:
    """The household receipt book says 6 to 1, Beech about 5 to 1, his one-bath pair 4.17 to 1: no one
    factor."""
    chips = read_mass("3 lb").aim / read_mass("8 oz").aim
    pair = share("50 lb per 100 lb").low / share("12 lb per 100 lb").low
    assert chips == 6
    assert round(float(pair), 2) == 4.17
    assert pair < 5 < chips  # Beech's own round figure lies between


@pytest.mark.parametrize(
    ("book", "dose"),
    [
        ("Workshop Receipts, claret", "1 1/4 lb per 10 yards"),
        ("Workshop Receipts, claret", "3 3/4 oz per 10 yards"),
        ("Whitehouse Cookbook, tin", "1 tablespoon"),
        ("Whitehouse Cookbook, tin", "a tablespoon per lb"),
    ],
)
def test_19_a_dose_that_cannot_be_worked_out_says_that_it_needs_a_weight(book: str, dose: str) -> None:
    with pytest.raises(NeedsWeight, match="needs a weight"):
        read_dose(dose)


def test_19_a_vat_has_no_fibre_to_be_a_share_of() -> None:
    """Mairet 1916, indigo no. 13: 5 oz of indigo for a vat of 20 gallons."""
    for dose in (read_dose("5 oz per 20 gal (UK)"), read_dose("5 oz")):
        assert isinstance(dose, PerBath | Flat) and dose.low > 0
        with pytest.raises(NeedsWeight, match="needs a weight of fibre"):
            as_share_of_fibre(dose)


def test_22_portions_added_until_the_shade_is_reached() -> None:
    """Bancroft in Mairet 1916, ch. X, on 100 lb: chalk 3, later 1 and then again one to three times, at 6-8
    minutes."""
    fibre = read_mass("100 lb")
    chalk = total([read_mass("3 lb"), read_mass("1 lb"), repeated(read_mass("1 lb"), 1, 3)])
    whole = percent_of_fibre(chalk, fibre)
    assert (whole.low, whole.high) == (5, 7)
    bark, between = read_duration("15 min"), read_duration("6-8 min")
    assert isinstance(bark, Quantity) and isinstance(between, Quantity)
    stage = total([bark, repeated(between, 1, 3)])
    assert (stage.low, stage.high) == (21, 39)


@pytest.mark.parametrize(
    ("recipe", "typed", "ratio"),
    [
        ("Mairet 1916, cochineal no. 9", "10 imperial gallons per 2 1/2 lb", 40.1),
        ("Mairet 1916, cochineal no. 1", "20 imperial quarts per lb", 50.1),
        ("Mairet 1916, cochineal no. 1, with the US quart", "20 US quarts per lb", 41.7),
        ("Mairet 1916, madder no. 11", "10 imperial quarts per lb", 25.1),
        ("Beech, p. 79, wetting-out", "35 imperial gallons per 30 lb", 11.7),
        ("household receipt book, logwood black", "12 US quarts per 4 lb", 6.3),
    ],
)
def test_liquor_ratios_of_the_few_recipes_that_print_the_water(recipe: str, typed: str, ratio: float) -> None:
    """Computed, a litre of water counting as a kilogram."""
    assert round(float(read_water(typed).low), 1) == ratio, recipe
