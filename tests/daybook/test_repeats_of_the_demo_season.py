"""Every demo day repeated, its recipe held beside the entries of its log as they stand in the file.

The log is read here as plain TOML, entry by entry, with nothing of the program's own reading.
"""

import tomllib
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pytest

from dyesession.daybook.repeating import Repeated, repeat
from dyesession.kitchen.model import Jar, Kitchen, TapWater
from dyesession.plan.model import FibreLot
from dyesession.recipe import check_recipe, load_recipe
from dyesession.session.opening import LoggedDay, read_day
from dyesession.storage import DISK
from dyesession.tomlfile import write_document

LOGS = Path(__file__).resolve().parents[2] / "logs"
NAMES = tuple(sorted(one.stem for one in LOGS.glob("demo-*.toml")))
FROM_KEPT_BATHS = ("demo-2025-04-14-paler-from-the-madder-bath", "demo-2025-04-15-last-of-the-madder")
ONLY_MORDANTED = "demo-2025-09-06-mordanted-for-later"
ENDS_A_HOLD = ("lit", "finished", "on-shade")
FIRST, AGAIN = "demo-2025-04-12-madder-brick-red", "demo-2025-06-21-madder-brick-red-again"
FIGURES = 1e-3  # a recipe writes water to four figures, shares to six


@dataclass(frozen=True)
class Plain:
    """A log as it stands in its file: the head, the entries with their corrections carried out."""

    head: dict
    events: tuple[dict, ...]

    def of(self, kind: str) -> list[dict]:
        return [one for one in self.events if one["kind"] == kind]

    def minutes(self, one: dict, other: dict) -> float:
        return (other["at"] - one["at"]).total_seconds() / 60.0

    def steps(self) -> dict[str, dict]:
        """Every step that was ever planned, at the desk or at the stove, by its name."""
        named = {one["name"]: one for one in self.head["plan"].get("steps", ())}
        for event in self.of("replanned"):
            named |= {one["name"]: one for one in event.get("changes", ()) if "stage" in one}
        return named

    def during(self, step: str) -> list[dict]:
        """The entries from a step's beginning to its end, in its own pot or of no pot."""
        vessel, found, under_way = self.steps()[step].get("vessel"), [], False
        for one in self.events:
            under_way = under_way or (one["kind"] == "begun" and one["step"] == step)
            if under_way and one.get("vessel", vessel) == vessel and one.get("step", step) == step:
                found.append(one)
            if one["kind"] in ("finished", "on-shade") and one["step"] == step:
                break
        return found


@cache
def plain(name: str) -> Plain:
    raw = tomllib.loads((LOGS / f"{name}.toml").read_text("utf-8"))
    events = [dict(one) for one in raw.pop("event")]
    by_n = {one["n"]: one for one in events}
    for one in events:
        if one["kind"] == "corrected":
            by_n[one["entry"]] |= {each["key"]: each["value"] for each in one["changes"]}
    return Plain(raw, tuple(events))


@cache
def day(name: str) -> LoggedDay:
    return read_day(DISK, LOGS / f"{name}.toml")


@cache
def again(name: str) -> Repeated:
    return repeat(day(name), (), Kitchen())


def parts(found: Repeated) -> dict[str, dict]:
    return {one["name"]: one for one in found.document["step"]}


def heated(log: Plain, step: str) -> tuple[list[float], list[float]]:
    """Degrees read at the end of each rise and fall, and the minutes of each hold, in their order."""
    planned, place = log.steps()[step].get("heat", []), 0
    degrees, holds, start = [], [], None
    for one in log.during(step):
        kind = planned[place]["kind"] if place < len(planned) else ""
        if kind in ("to", "cool_to") and one["kind"] == "reached":
            degrees.append(one["temperature_c"])
            place, start = place + 1, one
        elif kind == "hold" and one["kind"] == "entered":
            start = one  # a hold without a rise before it runs from the fibre's going in
        elif kind == "hold" and one["kind"] in ENDS_A_HOLD and start is not None:
            holds.append(log.minutes(start, one))
            place += 1
    return degrees, holds


def test_there_are_ten_demo_days() -> None:
    assert len(NAMES) == 10 and {*FROM_KEPT_BATHS, FIRST, AGAIN} <= set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_the_doses_are_the_grams_that_went_in(name: str) -> None:
    went_in: dict[str, float] = {}
    for one in plain(name).of("added"):
        went_in[one["ingredient"]] = went_in.get(one["ingredient"], 0.0) + one["mass_g"]
    doses = {one.ingredient: one.mass_g.aim for one in again(name).plan.doses}
    assert set(doses) == set(went_in)
    assert all(doses[one] == pytest.approx(grams, rel=FIGURES) for one, grams in went_in.items())


@pytest.mark.parametrize("name", NAMES)
def test_the_doses_are_rescaled_to_other_fibre(name: str) -> None:
    whole_g = sum(one["mass_g"] for one in plain(name).head["fibre"])
    lots = (FibreLot("skein", day(name).plan.lots[0].kind, 3.0 * whole_g, air_dry=True),)
    thrice = {one.ingredient: one.mass_g.aim for one in repeat(day(name), lots, Kitchen()).plan.doses}
    for one in again(name).plan.doses:
        assert thrice[one.ingredient] == pytest.approx(3.0 * one.mass_g.aim, rel=FIGURES)


@pytest.mark.parametrize("name", NAMES)
def test_extractions_are_made_as_often_as_they_were(name: str) -> None:
    made: dict[str, int] = {}
    for one in plain(name).of("refreshed"):
        made[one["vessel"]] = made.get(one["vessel"], 0) + 1
    written = {one["vessel"]: one["refreshes"] for one in again(name).document["step"] if "refreshes" in one}
    assert written == made


@pytest.mark.parametrize("name", NAMES)
def test_heat_and_holds_are_those_of_the_log(name: str) -> None:
    log, looked_at = plain(name), 0
    for step, part in parts(again(name)).items():
        degrees, holds = heated(log, step)
        written = part.get("heat", [])
        told_c = [float(one[key].removesuffix(" degC")) for one in written for key in ("to", "cool_to") if key in one]
        told_min = [float(one["hold"].removesuffix(" min")) for one in written if "hold" in one]
        assert told_c == degrees, step
        assert told_min == pytest.approx(holds, abs=0.51), step
        looked_at += len(degrees) + len(holds)
    assert looked_at >= 2, "a day of the season is heated somewhere"


@pytest.mark.parametrize("name", NAMES)
def test_the_water_is_what_was_poured(name: str) -> None:
    log, found = plain(name), again(name)
    planned = {one.name: one.water_l for one in found.plan.steps}
    looked_at = 0
    for step in parts(found):
        vessel = log.steps()[step].get("vessel")
        poured = [one for one in log.during(step) if one["kind"] in ("filled", "topped-up")]
        drawn = [one for one in log.of("drawn") if one["vessel"] == vessel] if log.steps()[step]["stage"] == "dye" else []
        litres = [one.get("to_l", one.get("volume_l")) for one in (*poured[:1], *drawn)]
        if litres and litres[0] is not None:
            assert planned[step] == pytest.approx(litres[0], rel=FIGURES), step
            looked_at += 1
    assert looked_at >= 1
    for one in log.of("refreshed"):
        again_step = next(s for s in found.plan.steps if s.again and s.vessel == one["vessel"])
        assert again_step.water_l == pytest.approx(one["volume_l"], rel=FIGURES)


@pytest.mark.parametrize("name", NAMES)
def test_corrections_are_carried_out_and_named(name: str) -> None:
    corrected = [one["entry"] for one in plain(name).of("corrected")]
    said = [one.text for one in again(name).changes if "corrections are carried out" in one.text]
    assert said == ([f"corrections are carried out: of entry {', '.join(map(str, corrected))}"] if corrected else [])


def test_the_corrected_alum_is_dosed_and_not_the_spoon_on_the_scale() -> None:
    found = again("demo-2025-05-10-weld-yellow")
    assert next(one.mass_g.aim for one in found.plan.doses if one.ingredient == "alum") == pytest.approx(16.8)
    assert any("alum as it went in, 16.8 g, not 11.2 g as planned" in one.text for one in found.changes)


def test_a_power_cut_makes_no_slow_rise_and_is_told() -> None:
    """The log counts 251 minutes up to 90 °C, 211 of them with the power off; 45 were planned."""
    name = "demo-2025-05-24-onion-skins"
    away_min = plain(name).of("resumed-after-gap")[0]["away_s"] / 60.0
    found = again(name)
    rise = parts(found)["draw"]["heat"][0]
    assert away_min > 200.0 and rise == {"to": "90 degC", "over": "45 min"}
    assert any("nobody was there for 3 h 31 min while draw warmed up" in one.text for one in found.changes)


@pytest.mark.parametrize("name", NAMES)
def test_a_depth_is_promised_only_where_the_recipe_holds_the_colour(name: str) -> None:
    found = again(name)
    drawn = plain(name).of("drawn")
    assert bool(drawn) == (name in FROM_KEPT_BATHS)
    assert (found.expected is None) == (name in (*FROM_KEPT_BATHS, ONLY_MORDANTED))
    assert ("no depth to expect" in found.expect) == (name == ONLY_MORDANTED)
    for one in drawn:
        assert any(one["label"] in each.text for each in found.changes if each.about == "kept bath")
    assert ("no depth is promised" in found.expect) == bool(drawn)


@pytest.mark.parametrize("name", NAMES)
def test_other_fibre_another_lot_and_another_kitchen_are_called_out_with_their_effect(name: str) -> None:
    """Cotton, up a mountain, in harder water, from jars of other names."""
    log = plain(name)
    jars = tuple(Jar(f"new {one['name']}", one["substance"]) for one in log.head["kitchen"].get("jars", ()))
    hard = replace(TapWater(), hardness_mg_l=400.0)
    lots = (FibreLot("skein", "cotton", 100.0, air_dry=True),)
    changes = repeat(day(name), lots, Kitchen(elevation_m=2500.0, jars=jars, water=hard)).changes
    fibre = [one for one in changes if one.about == "fibre" and one.text.startswith("cotton for ")]
    assert fibre and fibre[0].effect
    boils = [one for one in changes if one.about == "kitchen" and one.text.startswith("water boils")]
    assert boils and boils[0].effect
    jar_of = {one["substance"]: one["name"] for one in log.head["kitchen"].get("jars", ())}
    dyestuffs = {one["substance"] for one in again(name).document.get("ingredient", ()) if one["role"] == "dyestuff"}
    told = [one for one in changes if one.about == "dyestuff"]
    for substance in dyestuffs & set(jar_of):
        assert any(substance in one.text and one.effect and one.factor for one in told)
    bare_before = [one for one in changes if "had been mordanted before it" in one.text]
    assert bool(bare_before) == all("mordanted" in one for one in log.head["fibre"])


@pytest.mark.parametrize("name", NAMES)
def test_half_the_depth_takes_less_dyestuff_and_leaves_all_else(name: str) -> None:
    half = {one.ingredient: one.mass_g.aim for one in repeat(day(name), (), Kitchen(), depth=0.5).plan.doses}
    for one in again(name).plan.doses:
        share = half[one.ingredient] / one.mass_g.aim
        assert (0.3 < share < 0.7) if one.role == "dyestuff" else share == pytest.approx(1.0, rel=FIGURES)


@pytest.mark.parametrize("name", NAMES)
def test_the_recipe_is_a_sound_file_that_names_its_day(name: str, tmp_path: Path) -> None:
    path = tmp_path / "again.toml"
    path.write_text(write_document(again(name).document), "utf-8")
    assert check_recipe(path) == []
    assert name in load_recipe(path).source


def test_a_repeat_of_a_repeat_keeps_its_lineage_to_the_first_day() -> None:
    assert again(AGAIN).lineage == (AGAIN, FIRST)
    assert all(one in again(AGAIN).document["source"] for one in (AGAIN, FIRST))
    third = replace(day(AGAIN), name="2026-01-01-third", header={**day(AGAIN).header, "recipe": again(AGAIN).document})
    assert repeat(third, (), Kitchen()).lineage == ("2026-01-01-third", AGAIN, FIRST)
