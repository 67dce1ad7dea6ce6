"""Water lost as steam from an open or covered pot: three laws, their spread as a band, and a bound.

Knows nothing of baths: rates only. A weight or a level replaces all of it. Laws: Shah (constants from
memory; his 2002 comparison with 11 data sets, mean deviation 18 %: abstract read), free convection by
heat-mass analogy (derived; diffusivity after Marrero & Mason, from memory), Carrier's as in engineering
texts (read in mm Hg form in a discussion thread). Kitchen tests fall between the lowest and the
highest law.
"""

import math
from dataclasses import dataclass
from typing import Literal

from dyesession.dyeing.boiling import SEA_LEVEL_KPA, boiling_point_c
from dyesession.dyeing.limits import OutOfRange, a_share, above_zero, zero_or_more
from dyesession.dyeing.water import KELVIN_AT_ZERO_C, latent_heat_kj_kg, saturation_pressure_kpa

Lid = Literal["off", "ajar", "on"]

SECONDS_PER_HOUR = 3600.0
ROOM_C, ROOM_HUMIDITY = 20.0, 0.5  # an ordinary kitchen; judgement
NEAR_BOIL_C = 3.0  # the laws run away at the boil, so none is asked nearer than this; judgement

DRY_AIR_KJ_KG_K, VAPOUR_KJ_KG_K = 0.287055, 0.461523  # gas constants
VAPOUR_TO_AIR = DRY_AIR_KJ_KG_K / VAPOUR_KJ_KG_K

# Shah: E = C rho_w (rho_r - rho_w)^(1/3) (W_w - W_r), kg/m2/h
SHAH_STRONG, SHAH_WEAK, SHAH_TURN_KG_M3 = 35.0, 40.0, 0.02

# Carrier: E = (0.089 + 0.0782 V)(p_w - p_a)/h_fg, kg/m2/s with kPa, kJ/kg, m/s
CARRIER_STILL, CARRIER_PER_M_S = 0.089, 0.0782

# Free convection over a warm plate, Sh = 0.14 Ra^(1/3)
CONVECTION = 0.14
GRAVITY_M_S2 = 9.81
MARRERO_MASON, MARRERO_POWER = 1.87e-10, 2.072  # D in m2/s at 1 atm
SUTHERLAND_PA_S, SUTHERLAND_K = 1.716e-5, 110.4  # viscosity of air, from memory

# Share of the open pot's loss that gets past the lid: centre and 90 % band; common practice, no source
LID_SHARE: dict[Lid, tuple[float, float, float]] = {
    "on": (0.05, 0.02, 0.2),
    "ajar": (0.42, 0.3, 0.6),
}

# Error of any law for one pot as a factor either way; judgement
LAW_FACTOR_COOL, LAW_FACTOR_HOT = 1.3, 2.0
LAW_COOL_C, LAW_HOT_C = 70.0, 85.0


@dataclass(frozen=True)
class SteamBand:
    """Water lost per hour: centre and 90 % band, kg/h. `capped` tells that the latent heat bound cut it."""

    centre_kg_h: float
    low_kg_h: float
    high_kg_h: float
    capped: bool = False


@dataclass(frozen=True)
class Air:
    """Moist air: vapour pressure and total pressure in kPa, temperature in °C."""

    vapour_kpa: float
    total_kpa: float
    temperature_c: float

    @property
    def dry_kg_m3(self) -> float:
        """Kilograms of dry air per cubic metre."""
        dry_kpa = self.total_kpa - self.vapour_kpa
        return dry_kpa / (DRY_AIR_KJ_KG_K * (self.temperature_c + KELVIN_AT_ZERO_C))

    @property
    def vapour_kg_m3(self) -> float:
        """Kilograms of vapour per cubic metre."""
        return self.vapour_kpa / (VAPOUR_KJ_KG_K * (self.temperature_c + KELVIN_AT_ZERO_C))

    @property
    def vapour_per_dry(self) -> float:
        """Kilograms of vapour per kilogram of dry air."""
        return VAPOUR_TO_AIR * self.vapour_kpa / (self.total_kpa - self.vapour_kpa)

    @property
    def vapour_share(self) -> float:
        """Kilograms of vapour per kilogram of moist air."""
        return self.vapour_kg_m3 / (self.vapour_kg_m3 + self.dry_kg_m3)


def room_air(
    room_c: float = ROOM_C, humidity: float = ROOM_HUMIDITY, pressure_kpa: float = SEA_LEVEL_KPA
) -> Air:
    """Return the air of a room; `humidity` is a share from 0 to 1."""
    a_share("humidity of the room", humidity, "0.5")
    return Air(humidity * saturation_pressure_kpa(room_c), pressure_kpa, room_c)


def air_over(bath_c: float, pressure_kpa: float = SEA_LEVEL_KPA) -> Air:
    """Return the saturated air on the surface of a bath below its boil."""
    vapour_kpa = saturation_pressure_kpa(bath_c)
    if vapour_kpa >= pressure_kpa:
        raise OutOfRange(
            f"At {bath_c:g} °C and {pressure_kpa:g} kPa the bath boils;"
            " use the latent heat bound there, or a cooler bath, for example 80 °C."
        )
    return Air(vapour_kpa, pressure_kpa, bath_c)


def shah_kg_m2_h(bath: Air, room: Air) -> float:
    """Shah's law for a still room, kg/m2/h; 0 when the bath's air is not the lighter."""
    lift = room.dry_kg_m3 - bath.dry_kg_m3
    if lift <= 0.0:
        return 0.0
    factor = SHAH_STRONG if lift > SHAH_TURN_KG_M3 else SHAH_WEAK
    return max(0.0, factor * bath.dry_kg_m3 * _cube_root(lift) * (bath.vapour_per_dry - room.vapour_per_dry))


def carrier_kg_m2_h(bath: Air, room: Air, draught_m_s: float = 0.0) -> float:
    """Carrier's law, kg/m2/h, with a draught over the pot (a hood: about 0.3 m/s)."""
    zero_or_more("draught", draught_m_s, "0.3 m/s")
    pull_kpa = max(0.0, bath.vapour_kpa - room.vapour_kpa)
    per_second = (CARRIER_STILL + CARRIER_PER_M_S * draught_m_s) * pull_kpa
    return SECONDS_PER_HOUR * per_second / latent_heat_kj_kg(bath.temperature_c)


def convection_kg_m2_h(bath: Air, room: Air) -> float:
    """Free convection with the ln(1 + B) term for a strong stream of vapour, kg/m2/h."""
    over, far = bath.vapour_kg_m3 + bath.dry_kg_m3, room.vapour_kg_m3 + room.dry_kg_m3
    if far <= over:
        return 0.0
    film_kg_m3 = (over + far) / 2.0
    film_k = (bath.temperature_c + room.temperature_c) / 2.0 + KELVIN_AT_ZERO_C
    diffusivity = MARRERO_MASON * math.pow(film_k, MARRERO_POWER) * SEA_LEVEL_KPA / bath.total_kpa
    viscosity = _air_viscosity_pa_s(film_k) / film_kg_m3
    transfer_m_s = (
        CONVECTION
        * diffusivity
        * _cube_root(GRAVITY_M_S2 * (far - over) / (film_kg_m3 * viscosity * diffusivity))
    )
    blowing = (bath.vapour_share - room.vapour_share) / (1.0 - bath.vapour_share)
    return max(0.0, film_kg_m3 * transfer_m_s * math.log1p(blowing) * SECONDS_PER_HOUR)


def latent_heat_bound_kg_h(net_power_w: float, bath_c: float = 100.0) -> float:
    """Most water a net power can turn to steam, kg/h; never predict more."""
    watts_per_kw = 1000.0
    zero_or_more("net power", net_power_w, "1000 W")
    return SECONDS_PER_HOUR * net_power_w / watts_per_kw / latent_heat_kj_kg(bath_c)


def law_factor(bath_c: float) -> float:
    """Factor either way that holds 90 % of pots about a law: 1.3 up to 70 °C, 2 from 85 °C (judgement)."""
    hot_share = min(max((bath_c - LAW_COOL_C) / (LAW_HOT_C - LAW_COOL_C), 0.0), 1.0)
    return float(LAW_FACTOR_COOL * (LAW_FACTOR_HOT / LAW_FACTOR_COOL) ** hot_share)


def steam_band(
    bath_c: float,
    pot_diameter_m: float,
    lid: Lid = "off",
    net_power_w: float | None = None,
    room: Air | None = None,
) -> SteamBand:
    """Starting guess of the water lost per hour: the laws' geometric mean, their spread, the lid's share.

    At the boil only the net power tells: pass it when known, and the latent heat bounds the band.
    """
    room = room or room_air()
    area_m2 = math.pi * (above_zero("pot's diameter", pot_diameter_m, "0.28 m") / 2.0) ** 2
    surface_c = min(bath_c, boiling_point_c(room.total_kpa) - NEAR_BOIL_C)
    bath = air_over(surface_c, room.total_kpa)
    laws = sorted((shah_kg_m2_h(bath, room), carrier_kg_m2_h(bath, room), convection_kg_m2_h(bath, room)))
    centre = area_m2 * _cube_root(math.prod(laws))
    spread = law_factor(bath_c)
    low, high = min(laws[0] * area_m2, centre / spread), max(laws[-1] * area_m2, centre * spread)
    return _bounded(_under_lid(SteamBand(centre, low, high), lid), net_power_w, bath_c)


def _under_lid(band: SteamBand, lid: Lid) -> SteamBand:
    """Put a lid's share on a band; the two widths are independent, so they join as a right angle's sides."""
    if lid not in LID_SHARE or band.low_kg_h == 0.0:
        return band
    share, least, most = LID_SHARE[lid]
    up = math.hypot(math.log(band.high_kg_h / band.centre_kg_h), math.log(most / share))
    down = math.hypot(math.log(band.centre_kg_h / band.low_kg_h), math.log(share / least))
    centre = band.centre_kg_h * share
    return SteamBand(centre, centre * math.exp(-down), centre * math.exp(up))


def _bounded(band: SteamBand, net_power_w: float | None, bath_c: float) -> SteamBand:
    if net_power_w is None:
        return band
    most = latent_heat_bound_kg_h(net_power_w, bath_c)
    capped = band.high_kg_h > most
    return SteamBand(min(band.centre_kg_h, most), min(band.low_kg_h, most), min(band.high_kg_h, most), capped)


def _air_viscosity_pa_s(temperature_k: float) -> float:
    """Viscosity of dry air by Sutherland's formula (from memory)."""
    reduced = temperature_k / KELVIN_AT_ZERO_C
    return (
        SUTHERLAND_PA_S
        * reduced
        * math.sqrt(reduced)
        * (KELVIN_AT_ZERO_C + SUTHERLAND_K)
        / (temperature_k + SUTHERLAND_K)
    )


def _cube_root(value: float) -> float:
    third = 1.0 / 3.0
    return float(value**third)
