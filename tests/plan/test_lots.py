import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.errors import UserError
from dyesession.plan import PlanError, lot_from_text, lots_from_text


@pytest.mark.parametrize(
    ("text", "name", "kind", "mass_g", "form"),
    [
        ("240 g wool", "wool", "wool", 240.0, ""),
        ("240 g", "wool", "wool", 240.0, ""),
        ("165 g large skein", "large skein", "wool", 165.0, "yarn"),
        ("240 g grey-faced handspun", "grey-faced handspun", "wool", 240.0, "yarn"),
        ("1 lb silk", "silk", "silk", 453.59237, ""),
        ("80 g of linen cloth", "cloth", "linen", 80.0, "cloth"),
        ("300 g merino tops", "tops", "wool", 300.0, "combed"),
        ("2,5 kg wool fleece", "fleece", "wool", 2500.0, "fleece"),
    ],
)
def test_a_lot_is_read_with_its_kind_form_and_name(text, name, kind, mass_g, form):
    lot = lot_from_text(text, "wool")
    assert (lot.name, lot.kind, lot.form, lot.air_dry) == (name, kind, form, None)
    assert lot.mass_g == pytest.approx(mass_g)
    assert lot.words == text


@pytest.mark.parametrize(
    "text", ["212 g damp, 148 g dry wool", "148 g dry, 212 g damp wool", "212 g damp and 148 g dry wool"]
)
def test_a_damp_weight_stands_beside_the_dry_one(text):
    lot = lot_from_text(text, "wool")
    assert (lot.mass_g, lot.damp_mass_g, lot.air_dry, lot.kind) == (148.0, 212.0, True, "wool")


def test_a_damp_weight_alone_is_no_base():
    lot = lot_from_text("212 g damp wool", "wool")
    assert (lot.air_dry, lot.damp_mass_g) == (False, 212.0)


def test_a_lot_called_dry_is_not_asked_about():
    assert lot_from_text("148 g air-dry wool", "wool").air_dry is True
    assert lot_from_text("148 g washed wool", "wool").air_dry is None


def test_raw_wool_is_marked():
    assert lot_from_text("500 g raw fleece", "wool").form == "raw"


def test_lots_that_would_share_a_name_are_numbered():
    assert [lot.name for lot in lots_from_text(["165 g wool", "75 g wool"], "wool")] == ["lot 1", "lot 2"]
    assert [lot.name for lot in lots_from_text(["165 g large skein", "75 g small skein"], "wool")] == [
        "large skein",
        "small skein",
    ]


@pytest.mark.parametrize(
    "text", ["200 to 240 g wool", "0 g wool", "100 g wool, 50 g wool", "3 skeins", "wool", ""]
)
def test_what_is_no_one_weight_of_fibre_is_one_sentence(text):
    with pytest.raises(UserError) as caught:
        lot_from_text(text, "wool")
    assert "\n" not in str(caught.value)


def test_two_damp_weights_are_refused():
    with pytest.raises(PlanError, match="several weights"):
        lot_from_text("212 g damp, 200 g damp wool", "wool")


@given(st.text(max_size=30))
def test_whatever_is_typed_is_a_lot_or_one_sentence(text):
    try:
        lot = lot_from_text(text, "wool")
    except UserError as error:
        assert "\n" not in str(error)
    else:
        assert lot.mass_g > 0
        assert lot.name


@given(st.integers(1, 100_000))
def test_grams_come_back(grams):
    assert lot_from_text(f"{grams} g wool", "wool").mass_g == grams
