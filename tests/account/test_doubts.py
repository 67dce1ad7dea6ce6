"""Figures that can hardly be are asked about once, kept as a note when insisted on, and never clipped."""

from dataclasses import replace
from typing import Any

import pytest
from account.by_hand import Pages, one_dye_plan

from dyesession.account.doubts import doubts, first_asked, kept_as_note
from dyesession.session import events as e
from dyesession.session.fit import misfit


def extracted() -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Strained("extract pot", "dye pot", 1.0, "read"), e.Refreshed("extract pot", 1.0)), 60.0)
    return day


def asked(day: Pages, event: e.Event) -> str | None:
    ledger = day.ledger()
    return doubts(ledger.account(), ledger.state, event)


FIRST = {"against": "first strain", "how": "matched"}


@pytest.mark.parametrize(
    ("event", "says"),
    [
        (e.Read("extract pot", strength=1.1, **FIRST), "weaker than the one before"),  # type: ignore[arg-type]
        (e.Strained("extract pot", "dye pot", 1.9, "read"), "holds no more than"),
        (e.Strained("extract pot", "dye pot", 1.02, "read"), None),
        (e.Read("extract pot", volume_l=6.0), "brim"),
        (e.ToppedUp("dye pot", to_l=9.0), "brim"),
        (e.Filled("dye pot", 8.0), None),
        (e.Read("dye pot", strength=1.2, against="before", how="matched"), "weaker now"),
        (e.Read("extract pot", strength=0.3, **FIRST), None),  # type: ignore[arg-type]
        (e.Read("extract pot", volume_l=-1.0), "less than nothing"),
        (e.Added("madder", "extract pot", -5.0), "less than nothing"),
        (e.Read("extract pot", temperature_c=-2.0), "colder than ice"),
        (e.Read("extract pot", temperature_c=0.0), None),
        (e.Noted("all well"), None),
    ],
)
def test_one_question_where_a_figure_can_hardly_be(event: e.Event, says: str | None) -> None:
    found = asked(extracted(), event)
    assert (found is None) == (says is None), found
    assert says is None or (says in (found or "") and (found or "").rstrip("?").strip())


def test_a_level_many_times_what_went_in_is_asked_about_where_no_brim_is_known() -> None:
    day = extracted()
    ledger = day.ledger()
    free = replace(ledger.state, vessels=tuple(replace(one, capacity_l=None) for one in ledger.state.vessels))
    asked_of = doubts(ledger.account(), free, e.Read("extract pot", volume_l=40.0))
    assert asked_of is not None and "40 L in the extract pot, and by all that went in it holds no more than" in asked_of
    assert doubts(ledger.account(), free, e.Read("extract pot", volume_l=1.8)) is None


def test_a_strain_stronger_than_the_one_before_is_asked_about_on_its_own_scale() -> None:
    day = extracted().write(e.Read("extract pot", strength=0.3, **FIRST))  # type: ignore[arg-type]
    day.write_all((e.Strained("extract pot", "dye pot", 1.0, "read"), e.Refreshed("extract pot", 1.0)), 60.0)
    rising = asked(day, e.Read("extract pot", strength=0.4, **FIRST))  # type: ignore[arg-type]
    assert rising is not None
    assert "third strain at 40 % of the first" in rising
    assert asked(day, e.Read("extract pot", strength=0.2, **FIRST)) is None  # type: ignore[arg-type]


def test_wet_fibre_lighter_than_dry_is_asked_about() -> None:
    day = Pages(one_dye_plan()).write_all((e.Filled("dye pot", 4.0), e.Entered("first skein", "dye pot")))
    assert "dry" in (asked(day, e.Lifted("first skein", "dye pot", 95.0)) or "")
    assert asked(day, e.Lifted("first skein", "dye pot", 260.0)) is None


def test_a_hot_liquor_beside_a_cold_one_is_asked_about() -> None:
    day = extracted().write(e.Read("extract pot", temperature_c=80.0))
    found = asked(day, e.Read("extract pot", strength=0.3, **FIRST))  # type: ignore[arg-type]
    assert found is not None
    assert "80 °C" in found
    day.write(e.Read("dye pot", temperature_c=75.0))
    assert asked(day, e.Read("extract pot", strength=0.3, against="dye pot", how="matched")) is None


@pytest.mark.parametrize(
    ("event", "acts"),
    [
        (e.Read("extract pot", strength=1.3, **FIRST), ["noted"]),  # type: ignore[arg-type]
        (e.Strained("extract pot", "dye pot", 1.9, "read"), ["strained", "noted"]),
    ],
)
def test_a_figure_insisted_on_is_noted_told_and_not_reckoned_with(event: e.Event, acts: list[str]) -> None:
    day = extracted()
    question = asked(day, event)
    assert question is not None
    logged = kept_as_note(event, question)
    assert [one.kind for one in logged] == acts
    without: Any = [one for one in logged if one.kind != "noted"]
    plain = extracted().write_all(without).account()
    account = day.write_all(logged).account()
    assert account.baths == plain.baths
    assert account.dyestuffs == plain.dyestuffs
    (line,) = [one for one in account.lines if one.what.startswith("kept as a note, not reckoned with: ")]
    figure = "1.3" if acts == ["noted"] else "1.9"
    assert figure in line.what
    assert line.changes == ()
    noted = logged[-1]
    assert isinstance(noted, e.Noted)
    assert noted.doubted == question


def test_the_note_outlives_a_correction_and_a_reading_that_moves_the_worlds() -> None:
    day = extracted()
    event = e.Read("extract pot", strength=1.3, **FIRST)  # type: ignore[arg-type]
    day.write_all(kept_as_note(event, asked(day, event) or ""))
    day.write(e.Read("extract pot", strength=0.05, **FIRST))  # type: ignore[arg-type]
    day.write(e.Corrected(1, "misread the jug", changes=({"key": "volume_l", "value": 1.3},)))
    assert sum(one.what.startswith("kept as a note") for one in day.account().lines) == 1


def test_a_weight_insisted_on_lifts_the_fibre_all_the_same() -> None:
    day = Pages(one_dye_plan()).write_all((e.Filled("dye pot", 4.0), e.Entered("first skein", "dye pot")))
    event = e.Lifted("first skein", "dye pot", 95.0)
    lifted, noted = kept_as_note(event, asked(day, event) or "")
    assert lifted == e.Lifted("first skein", "dye pot")
    assert isinstance(noted, e.Noted)
    assert "95 g" in noted.text


@pytest.mark.parametrize("wet_g", [60.0, 95.0])
def test_a_far_too_light_lot_is_asked_about_before_it_is_refused_and_lifted_without_its_weight(
    wet_g: float,
) -> None:
    day = extracted()
    day.write_all((e.Filled("wetting bowl", 3.0), e.Entered("first skein", "wetting bowl")))
    ledger = day.ledger()
    event = e.Lifted("first skein", "wetting bowl", wet_mass_g=wet_g)
    question = first_asked(ledger.account(), ledger.state, event)
    assert question is not None and "dry: was the scale set to nought" in question
    lifted, note = kept_as_note(event, question)
    assert isinstance(lifted, e.Lifted) and lifted.wet_mass_g is None and misfit(ledger.state, lifted) is None
    assert isinstance(note, e.Noted) and f"{wet_g:g} g" in note.text


def test_an_act_that_does_not_fit_for_another_reason_is_refused_without_a_question() -> None:
    ledger = extracted().ledger()
    event = e.Lifted("first skein", "dye pot", wet_mass_g=60.0)
    assert misfit(ledger.state, event) is not None
    assert first_asked(ledger.account(), ledger.state, event) is None
