"""Reminders about baths put by, opened again, poured in or thrown away. Times to look again: `keeping`.

Moulds, gas and the rest are common practice without a source, but for botulism: the lines on it rest on
texts of a university's extension service and a food-safety council. Where waste may go, local rules say.
"""

from collections.abc import Iterator, Mapping

from dyesession.care.keeping import Keeping, is_organic, keeping
from dyesession.care.reminder import GRAVE, PLAIN, PRACTICE, SLIGHT, Reminder, shortened
from dyesession.care.scene import Item, Scene, with_trait

BOTULISM_SOURCE = (
    "ucanr.edu and foodsafety.edu.au: little oxygen, pH over 4.6, warmth; never tasting is practice"
)
WASTE_SOURCE = f"{PRACTICE}; copper's harm to water life: ILO/WHO card 1416"

# Of several kinds in one bath, the first listed decides.
_AWAY: Mapping[str, tuple[str, int]] = {
    "hazardous only": ("none of it down any drain. Ask for the hazardous-waste collection.", PLAIN),
    "metal bath": ("use it up; no septic tank, pond or storm drain. Local rules decide.", PLAIN),
    "spent vat": ("whisk air in until no yellow-green is left, then as local rules say.", SLIGHT),
    "strong alkali": ("thin it well, apart from acid and bleach, where local rules allow.", SLIGHT),
    "mild bath": ("cool and thinned, where local rules allow; not to a septic tank unasked.", SLIGHT),
    "plant matter": ("cool and thinned, where local rules allow. Plants to the compost.", SLIGHT),
}


def put_by(scene: Scene) -> Iterator[Reminder]:
    """A bath put by: label, lid, bottle, and the day to look."""
    if not scene.does("keeps"):
        return
    days = scene.at.look_again_in_days
    days = _keeps_for(scene).days if days is None else days
    text = f"{scene.pot} put by: labelled, lid loose, never a drink bottle; look again in {_days(days)}."
    yield Reminder("put by", text, PLAIN, "mould", _keeps_for(scene).source)


def sealed_and_warm(scene: Scene) -> Iterator[Reminder]:
    """Boiled plant stuff under a tight lid: no food, whatever it looks like."""
    organic = [item for item in scene.contents if is_organic(item.substance)]
    if organic and scene.does("keeps") and scene.at.lid_on:
        text = f"{scene.pot}'s {organic[0].word}, boiled and sealed: keep it cold, never taste it."
        yield Reminder("sealed and warm", text, PLAIN, "botulism", BOTULISM_SOURCE)


def looks_like_juice(scene: Scene) -> Iterator[Reminder]:
    """A coloured bath put by where a child or a pet lives."""
    smallest = scene.at.household.smallest()
    if smallest is not None and scene.does("keeps"):
        text = f"{scene.pot} put by looks like juice to a {smallest[0]}: under lock, or out of all reach."
        yield Reminder("looks like juice", text, GRAVE, "poison", PRACTICE, private=True)


def past_its_date(scene: Scene) -> Iterator[Reminder]:
    """A kept bath that should have been looked at before now."""
    days = scene.at.look_again_in_days
    if days is not None and days < 0 and _opens(scene):
        text = f"{scene.kept}: {_days(-days)} past its date. Look outdoors: foul or fuzzy, out; else relabel."
        yield Reminder("past its date", text, GRAVE, "mould", PRACTICE)


def opened_again(scene: Scene) -> Iterator[Reminder]:
    """A kept bath of plant stuff opened in good time."""
    days = scene.at.look_again_in_days
    if not _opens(scene) or (days is not None and days < 0) or not _rots(scene.pouring):
        return
    text = f"{scene.kept}: lid off away from your face; fuzz or a rotten-egg smell, outdoors with it and out."
    yield Reminder("opened again", text, PLAIN, "mould", PRACTICE)


def drifted(scene: Scene) -> Iterator[Reminder]:
    """A kept bath poured in: it is not what it was."""
    if scene.pouring and scene.does("pours", "adds"):
        text = f"{scene.kept} into {scene.pot}: it has drifted. Read its pH, try a snippet first."
        yield Reminder("drifted", text, SLIGHT, "shade", PRACTICE)


def foul_vat(scene: Scene) -> Iterator[Reminder]:
    """A vat or bran bath at work."""
    working = with_trait(scene.contents, "ferments")
    if working and scene.does("enters", "heats"):
        text = f"{scene.pot}'s {working[0].word}: should it smell of rotten eggs, take it outdoors."
        yield Reminder("foul vat", text, SLIGHT, "fumes", PRACTICE)


def thrown_away(scene: Scene) -> Iterator[Reminder]:
    """A bath thrown away: what of it may go where."""
    if not scene.does("discards"):
        return
    for kind, (how, severity) in _AWAY.items():
        item = next((one for one in scene.contents if one.substance and one.substance.disposal == kind), None)
        if item is not None:
            text = shortened(f"{scene.pot}'s {item.word}: {how}")
            yield Reminder("thrown away", text, severity, "waste", WASTE_SOURCE)
            return


def _opens(scene: Scene) -> bool:
    return scene.does("opens") or bool(scene.pouring)


def _rots(items: tuple[Item, ...]) -> bool:
    """True when something in it may mould, or nobody said what is in it."""
    return not items or any(is_organic(item.substance) for item in items)


def _keeps_for(scene: Scene) -> Keeping:
    return keeping(tuple((item.name, item.mass_g) for item in scene.here))


def _days(days: float) -> str:
    whole = max(1, round(days))
    return "1 day" if whole == 1 else f"{whole} days"
