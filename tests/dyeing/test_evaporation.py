import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.boiling import pressure_kpa_at
from dyesession.dyeing.evaporation import (
    Air,
    Lid,
    air_over,
    carrier_kg_m2_h,
    convection_kg_m2_h,
    latent_heat_bound_kg_h,
    law_factor,
    room_air,
    shah_kg_m2_h,
    steam_band,
)
from dyesession.dyeing.limits import OutOfRange

# Still room of 20 °C; worked out apart from this program with iapws: bath °C, humidity of the room, kg/m2/h
# by Shah, free convection, Carrier without and with 0.3 m/s.
WORKED_OUT = [
    (25, 0.5, 0.181, 0.159, 0.262, 0.332),
    (40, 0.3, 0.867, 0.837, 0.890, 1.124),
    (40, 0.5, 0.800, 0.775, 0.828, 1.046),
    (60, 0.5, 3.016, 3.263, 2.552, 3.224),
    (60, 0.7, 2.938, 3.178, 2.488, 3.144),
    (70, 0.5, 5.251, 6.218, 4.124, 5.211),
    (80, 0.5, 8.740, 11.980, 6.420, 8.112),
    (90, 0.5, 14.032, 25.404, 9.687, 12.241),
    (95, 0.5, 17.572, 42.048, 11.779, 14.884),
]


@pytest.mark.parametrize(("bath", "humidity", "shah", "convection", "still", "draught"), WORKED_OUT)
def test_the_laws_give_what_was_worked_out(
    bath: float, humidity: float, shah: float, convection: float, still: float, draught: float
) -> None:
    over, room = air_over(bath), room_air(20, humidity)
    assert shah_kg_m2_h(over, room) == pytest.approx(shah, rel=0.01)
    assert convection_kg_m2_h(over, room) == pytest.approx(convection, rel=0.02)
    assert carrier_kg_m2_h(over, room) == pytest.approx(still, rel=0.005)
    assert carrier_kg_m2_h(over, room, 0.3) == pytest.approx(draught, rel=0.005)


@given(st.floats(25, 95), st.floats(0.1, 1.5), st.floats(0.2, 0.8))
def test_a_hotter_bath_and_a_drier_room_lose_more(bath: float, more: float, humidity: float) -> None:
    room, drier = room_air(20, humidity), room_air(20, humidity / 2)
    for law in (shah_kg_m2_h, convection_kg_m2_h, carrier_kg_m2_h):
        assert law(air_over(bath + more), room) > law(air_over(bath), room)
        assert law(air_over(bath), drier) > law(air_over(bath), room)


def test_a_bath_colder_than_the_room_loses_nothing_by_lift() -> None:
    assert shah_kg_m2_h(air_over(10), room_air(25, 0.2)) == 0
    assert convection_kg_m2_h(air_over(10), room_air(25, 0.2)) == 0
    assert steam_band(10, 0.28, room=room_air(25, 0.2)).centre_kg_h == 0


@given(st.floats(25, 99), st.sampled_from(["off", "ajar", "on"]), st.floats(0.15, 0.5))
def test_the_band_rises_from_low_to_high(bath: float, lid: Lid, diameter: float) -> None:
    band = steam_band(bath, diameter, lid)
    assert 0 < band.low_kg_h < band.centre_kg_h < band.high_kg_h
    assert not band.capped


@given(st.floats(25, 99), st.floats(50, 3000))
def test_no_more_boils_away_than_the_ring_can_pay_for(bath: float, power: float) -> None:
    free, bounded = steam_band(bath, 0.28), steam_band(bath, 0.28, net_power_w=power)
    most = latent_heat_bound_kg_h(power, bath)
    assert bounded.high_kg_h <= most
    assert bounded.capped is (free.high_kg_h > most)
    assert bounded.high_kg_h == pytest.approx(min(free.high_kg_h, most))


@pytest.mark.parametrize("bath", [40, 60, 80, 90])
def test_a_lid_keeps_most_of_it_in_and_widens_the_band(bath: float) -> None:
    bare, ajar, covered = (steam_band(bath, 0.28, lid) for lid in ("off", "ajar", "on"))
    assert covered.centre_kg_h < ajar.centre_kg_h < bare.centre_kg_h
    assert covered.centre_kg_h / bare.centre_kg_h == pytest.approx(0.05)
    assert covered.high_kg_h / covered.low_kg_h > bare.high_kg_h / bare.low_kg_h


def test_the_band_holds_all_three_laws() -> None:
    for bath, *_, shah, convection, still, _draught in [(row[0], *row[1:]) for row in WORKED_OUT]:
        if bath == 40:
            continue
        band = steam_band(bath, 0.28)
        area = 0.0615752
        assert band.low_kg_h <= min(shah, convection, still) * area * 1.02
        assert band.high_kg_h >= max(shah, convection, still) * area * 0.98


def test_the_law_is_trusted_less_when_hot() -> None:
    assert law_factor(60) == law_factor(70) == pytest.approx(1.3)
    assert law_factor(85) == law_factor(95) == pytest.approx(2)
    assert 1.3 < law_factor(77) < 2


def test_a_kilowatt_at_2000_m_boils_away_a_little_less() -> None:
    assert latent_heat_bound_kg_h(1000, 93.32) == pytest.approx(1.583, abs=0.002)


def test_a_simmer_in_the_mountains_is_still_answered() -> None:
    thin = room_air(pressure_kpa=pressure_kpa_at(2000))
    band = steam_band(93, 0.28, net_power_w=1000, room=thin)
    assert 0 < band.low_kg_h <= band.centre_kg_h <= 1.6
    assert steam_band(80, 0.28, room=thin).centre_kg_h > steam_band(80, 0.28).centre_kg_h


def test_the_laws_refuse_a_boiling_surface() -> None:
    with pytest.raises(OutOfRange, match="boils"):
        air_over(101)
    with pytest.raises(OutOfRange, match="humidity"):
        room_air(20, 50)


def test_moist_air_adds_up() -> None:
    air = Air(2.0, 101.325, 20.0)
    assert air.vapour_share == pytest.approx(air.vapour_per_dry / (1 + air.vapour_per_dry))
