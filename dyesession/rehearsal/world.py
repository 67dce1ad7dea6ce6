"""A kitchen made of numbers: pots that warm and cool, liquor that stays in the fibre and in the spent
dyestuff.

Deterministic; shares no code with the account. Figures are the centres of the guesses in `dyeing`, and this
file's own where it says so.
"""

from dataclasses import dataclass, replace

from dyesession.dyeing import cooling, heating
from dyesession.dyeing.priors import fibre_retention_prior, spent_retention_prior
from dyesession.dyeing.regain import bone_dry_of_air_dry_g
from dyesession.session import events as e
from dyesession.session.countdowns import RISE_MIN, segment
from dyesession.session.state import State

TAP_C = 15.0  # water as it comes from the tap; common practice, no source
SPENT_BONE_DRY_SHARE = 0.9  # of a dried plant's weight; judgement
ML_PER_L = 1000.0
LEAST_LIQUOR_L = 0.05  # whatever the sums say, a strain gives a little; our own choice
COOLING_FROM_C, COOLING_TO_C = 60.0, 40.0  # where a pot's time constant is read off the cooling table


@dataclass(frozen=True)
class Pot:
    """One pot: what is in it, and the last change of its heat. `aim_c` is None when it cools by itself."""

    volume_l: float = 0.0
    from_c: float = TAP_C
    from_s: float = 0.0
    aim_c: float | None = None
    ramp_min: float = RISE_MIN


class World:
    """Remembers every pot, and answers what a thermometer, a jug or a scale would show."""

    def __init__(self) -> None:
        self._pots: dict[str, Pot] = {}
        self._wet_l: dict[str, float] = {}  # liquor in a lot of fibre, or in spent dyestuff in the sieve

    def temperature_c(self, vessel: str, now_s: float) -> float:
        """What a thermometer in that pot shows, to the whole degree."""
        return float(round(self._temperature(self._pot(vessel), now_s)))

    def volume_l(self, vessel: str) -> float:
        """What is in that pot, in litres to the tenth."""
        return round(self._pot(vessel).volume_l, 1)

    def _pot(self, vessel: str) -> Pot:
        return self._pots.get(vessel, Pot())

    def _temperature(self, pot: Pot, now_s: float) -> float:
        minutes = max(0.0, now_s - pot.from_s) / heating.SECONDS_PER_MIN
        if pot.aim_c is not None:
            return heating.ramp_c(pot.from_c, pot.aim_c, pot.ramp_min, minutes)
        if pot.from_c <= cooling.ROOM_C:
            return pot.from_c
        constant = _cooling_constant_min(pot.volume_l)
        return heating.temperature_after_c(pot.from_c, cooling.ROOM_C, constant, minutes)

    def strained_l(self, state: State, vessel: str) -> float:
        """What would come through the sieve: all but what the dyestuff in the pot holds."""
        inside = [one for one in state.dyestuffs if one.place == vessel]
        held_l = sum(_held_by_dyestuff_l(one.mass_g) for one in inside)
        return round(max(LEAST_LIQUOR_L, self._pot(vessel).volume_l - held_l), 2)

    def wet_mass_g(self, state: State, lot: str) -> float:
        """What a lot weighs as it is lifted, in grams to the nearest five."""
        found = state.lot(lot)
        if found is None:
            return 0.0
        dry_g = bone_dry_of_air_dry_g(found.mass_g, found.kind)[1]
        return float(5 * round(dry_g * (1.0 + fibre_retention_prior(found.kind, "lifted").centre) / 5))

    def after(self, event: e.Event, before: State, now_s: float) -> None:
        """Let a fact happen to the pots. `before` is the state it met."""
        if isinstance(event, e.Filled | e.Refreshed):
            carried_l = self._wet_l.pop("sieve", 0.0) if isinstance(event, e.Refreshed) else 0.0
            self._pots[event.vessel] = Pot(event.volume_l + carried_l, TAP_C, now_s)
        elif isinstance(event, e.ToppedUp):
            self._topped_up(event, now_s)
        elif isinstance(event, e.Lit):
            self._lit(event, before, now_s)
        elif isinstance(event, e.Strained | e.Pooled):
            self._poured(event, before, now_s)
        elif isinstance(event, e.Entered):
            self._change(event.vessel, self._wet_l.pop(event.lot, 0.0), now_s)
        elif isinstance(event, e.Lifted):
            self._lifted(event, before, now_s)
        elif isinstance(event, e.Kept | e.Discarded) and event.vessel:
            self._pots.pop(event.vessel, None)

    def _topped_up(self, event: e.ToppedUp, now_s: float) -> None:
        there_l = self._pot(event.vessel).volume_l
        added_l = event.volume_l if event.to_l is None else event.to_l - there_l
        self._mix(event.vessel, max(0.0, added_l or 0.0), TAP_C, now_s)

    def _mix(self, vessel: str, litres: float, degrees_c: float, now_s: float) -> None:
        """Pour so many litres of a temperature in."""
        pot = self._pot(vessel)
        whole_l = pot.volume_l + litres
        was_c = self._temperature(pot, now_s)
        mixed_c = (pot.volume_l * was_c + litres * degrees_c) / whole_l if whole_l > 0 else degrees_c
        self._pots[vessel] = replace(pot, volume_l=whole_l, from_c=mixed_c, from_s=now_s, aim_c=None)

    def _change(self, vessel: str, litres: float, now_s: float) -> None:
        pot = self._pot(vessel)
        self._pots[vessel] = replace(pot, volume_l=max(0.0, pot.volume_l + litres))

    def _lit(self, event: e.Lit, before: State, now_s: float) -> None:
        pot, step = self._pot(event.vessel), before.running_in(event.vessel)
        heat = segment(step) if step else None
        now_c = self._temperature(pot, now_s)
        aim_c = heat.temperature_c if event.on and heat is not None and heat.kind == "to" else None
        ramp_min = (heat.minutes if heat is not None and heat.minutes else None) or RISE_MIN
        self._pots[event.vessel] = replace(pot, from_c=now_c, from_s=now_s, aim_c=aim_c, ramp_min=ramp_min)

    def _poured(self, event: e.Strained | e.Pooled, before: State, now_s: float) -> None:
        source = self._pot(event.vessel)
        degrees_c = self._temperature(source, now_s)
        litres = source.volume_l if event.volume_l is None else min(event.volume_l, source.volume_l)
        if isinstance(event, e.Strained):
            self._wet_l["sieve"] = source.volume_l - litres
            self._pots.pop(event.vessel, None)
        else:
            self._change(event.vessel, -litres, now_s)
        self._mix(event.into, litres, degrees_c, now_s)

    def _lifted(self, event: e.Lifted, before: State, now_s: float) -> None:
        lot = before.lot(event.lot)
        if lot is None:
            return
        dry_g = bone_dry_of_air_dry_g(lot.mass_g, lot.kind)[1]
        held_l = dry_g * fibre_retention_prior(lot.kind, "lifted").centre / ML_PER_L
        self._wet_l[event.lot] = held_l
        self._change(event.vessel, -held_l, now_s)


def _held_by_dyestuff_l(mass_g: float) -> float:
    return mass_g * SPENT_BONE_DRY_SHARE * spent_retention_prior().centre / ML_PER_L


def _cooling_constant_min(volume_l: float) -> float:
    """An open pot's time constant between scouring heat and hand-hot, from the cooling table."""
    minutes = cooling.cooling_min(COOLING_FROM_C, COOLING_TO_C, max(volume_l, LEAST_LIQUOR_L), lid_on=False)
    return cooling.time_constant_from_cooling_min(COOLING_FROM_C, COOLING_TO_C, minutes, cooling.ROOM_C)
