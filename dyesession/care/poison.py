"""Reminders about what is refused, off, unknown, or poisonous to the smallest in the house.

Iron: `iron`. Verdicts and their sources: `substances`.
"""

from collections.abc import Iterator

from dyesession.care.iron import DOSE_LIMITS, ILL_MG_PER_KG, heptahydrate_grams_for
from dyesession.care.iron import SOURCE as IRON_SOURCE
from dyesession.care.refusals import choice_of
from dyesession.care.reminder import GRAVE, PLAIN, PRACTICE, SLIGHT, WORST, Reminder, shortened
from dyesession.care.scene import Item, Scene, amounts, grams, with_trait
from dyesession.substances import find, form_named

IRON_POT_SOURCE = "Mairet, A Book on Vegetable Dyes, 1916, ch. III, for the pot; the rest common practice"
_LOCKED = ("copper", "lye", "lime", "ammonia", "damp fire", "oxalate", "poison plant")  # own choice


def refused_substance(scene: Scene) -> Iterator[Reminder]:
    """Chrome, tin, oxalic acid, rhubarb leaf, bleach: in the vessel, or meant for it."""
    for item in _once(scene.here):
        if item.substance and item.substance.refused:
            text = f"{item.amount} in {scene.pot}: refused. {item.substance.caution}"
            yield Reminder("refused", shortened(text), WORST, "refused", item.substance.source)


def off_unless_chosen(scene: Scene) -> Iterator[Reminder]:
    """Copper, lye and others that stay off until the dyer chooses them."""
    for item in scene.adding:
        if item.substance and choice_of(item.substance, item.name):
            text = f"{item.amount} for {scene.pot}: off unless you chose it. {item.substance.caution}"
            yield Reminder("off unless chosen", shortened(text), GRAVE, "choice", item.substance.source)


def unknown_substance(scene: Scene) -> Iterator[Reminder]:
    """A name nobody here knows: its hazards are not known either, and that is said loudly."""
    for item in _once(scene.here):
        if item.substance is None:
            unknown = f"Unknown: {item.amount} in {scene.pot}"
            text = f"{unknown}. No hazards known here: read its safety sheet."
            yield Reminder("unknown substance", text, GRAVE, "unknown", PRACTICE)


def iron_at_home(scene: Scene) -> Iterator[Reminder]:
    """Iron in hand, with a child or a pet in the house."""
    iron, smallest = with_trait(scene.adding, "iron"), scene.at.household.smallest()
    if not iron or smallest is None:
        return
    who, body_kg = smallest
    ill = f"{_makes_ill(iron[0], body_kg)} a {body_kg:.3g} kg {who} ill"
    text = f"{iron[0].amount} for {scene.pot}: lock the rest up; {ill}."
    yield Reminder("iron at home", text, GRAVE, "poison", IRON_SOURCE, private=True)


def lock_up(scene: Scene) -> Iterator[Reminder]:
    """Poisons and burners other than iron in hand, with a child or a pet in the house."""
    locked, smallest = with_trait(scene.adding, *_LOCKED), scene.at.household.smallest()
    locked = tuple(item for item in locked if not item.has("iron"))
    if not locked or smallest is None:
        return
    text = f"{amounts(locked)} for {scene.pot}: the rest back under lock at once, with a {smallest[0]} about."
    yield Reminder("lock it up", text, GRAVE, "poison", PRACTICE, private=True)


def iron_pot(scene: Scene) -> Iterator[Reminder]:
    """Iron in hand: it wants a pot, a spoon and gloves of its own."""
    iron = with_trait(scene.adding, "iron")
    if iron and not iron[0].more:
        text = f"{iron[0].amount} for {scene.pot}: its pot, spoon and gloves serve iron alone, never food."
        yield Reminder("iron pot", text, SLIGHT, "shade", IRON_POT_SOURCE)


def iron_dose(scene: Scene) -> Iterator[Reminder]:
    """More iron on the fibre than is ordinary, whatever form of it stands on the packet."""
    limit = DOSE_LIMITS["ferrous sulphate"]
    for name, percent in scene.at.wof_percent:
        substance = find(name)
        if substance and substance.has("iron") and percent * _strength(name) > limit.warned_above:
            dose = f"{percent:.3g} % {substance.word} in {scene.pot}"
            text = f"{dose} is over the limit of {limit.warned_above:.0f} %: it hardens the fibre."
            yield Reminder("iron dose", text, PLAIN, "fibre", limit.source)


def ammonia_fumes(scene: Scene) -> Iterator[Reminder]:
    """Ammonia in the vessel or on its way there."""
    items = with_trait(scene.here, "ammonia")
    if items:
        at = f" at {scene.heat}" if scene.heat else ""
        text = f"{items[0].amount} in {scene.pot}{at}: window wide, best outdoors, never bleach in the room."
        yield Reminder("ammonia fumes", text, GRAVE, "fumes", items[0].source)


def _once(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """Each substance once: the first of several portions speaks for all."""
    return tuple({item.word: item for item in reversed(items)}.values())[::-1]


def _makes_ill(item: Item, body_kg: float) -> str:
    """ "1.2 g swallowed can make", or "even a little can make" where the strength is not known."""
    if item.substance is None or item.substance.iron_share is None:
        return "even a little can make"
    ill_g = heptahydrate_grams_for(ILL_MG_PER_KG, body_kg) / _strength(item.name)
    return f"{grams(ill_g)} swallowed can make"


def _strength(name: str) -> float:
    """Grams of the heptahydrate that one gram of this form of it is worth."""
    form = form_named(name)
    return form.grams if form and form.of == "ferrous sulphate" else 1.0
