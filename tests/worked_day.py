"""The README's worked day: two strains of madder matched by eye, and what the account then says of a third.

Made by the program on a stepping clock; how the second strain reads is invented, and said to be.
"""

from datetime import datetime
from functools import partial
from pathlib import Path

from dyesession.account.live import LiveReckoner
from dyesession.account.model import Account
from dyesession.account.once_more import OnceMore, once_more
from dyesession.account.say_answers import once_more_words
from dyesession.cli.demo_day import DemoDay, by_recipe
from dyesession.kitchen import load_kitchen
from dyesession.plan.model import FibreLot
from dyesession.recipe import load_recipe
from dyesession.session import events as e
from dyesession.session.suggest import Suggestion
from dyesession.storage import DISK

ROOT = Path(__file__).resolve().parents[1]
WEAK, STRONG = 0.2, 0.6  # the second strain's strength, of the first one's; both invented for the example


def day_at_the_second_strain(folder: Path, read: float | None) -> DemoDay:
    """240 g of wool by the shipped madder recipe, up to the second strain; read beside the first one or not."""
    kitchen = load_kitchen(ROOT / "dyesession" / "kitchen" / "example.toml")
    recipe = load_recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml")
    lots = (FibreLot("wool", "wool", 240.0, form="yarn", air_dry=True),)
    day = by_recipe(DISK, folder, recipe, lots, kitchen, datetime.fromisoformat("2026-03-14T09:00:00+01:00"))
    if read is not None:
        day.hooks.append(partial(_hold_the_second_beside_the_first, read))
    day.until(lambda one: strains(one) == 2)
    return day


def _hold_the_second_beside_the_first(strength: float, day: DemoDay, suggestion: Suggestion) -> bool:
    done = any(isinstance(one.event, e.Read) and one.event.strength for one in day.session.snapshot.entries)
    if done or strains(day) != 1 or not isinstance(suggestion, e.Strained):
        return False
    day.do(e.Read("extract pot", strength=strength, against="first strain", how="matched"))
    return True


def strains(day: DemoDay) -> int:
    """How often the dyestuff was strained so far."""
    return sum(isinstance(one.event, e.Strained) for one in day.session.snapshot.entries)


def account_of(day: DemoDay) -> Account:
    """The account of the day as it stands."""
    snapshot = day.session.snapshot
    return LiveReckoner(snapshot.plan, snapshot.entries[0].instant)(snapshot.entries)[0]


def advice(day: DemoDay) -> OnceMore:
    """What extracting once more would bring."""
    found = once_more(account_of(day), "madder")
    assert found is not None
    return found


def said(day: DemoDay) -> tuple[str, ...]:
    """The sentences of it, as the program says them."""
    return tuple(one.text for one in once_more_words(advice(day)))
