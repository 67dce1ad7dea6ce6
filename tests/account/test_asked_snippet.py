"""A dried snippet says how far along the lot is and what the rest of the time would bring, with a wide ±."""

import pytest
from account.by_hand import Pages, all_known, one_dye_plan

from dyesession.account.asked_snippet import COLOURS_EXAMPLE, snippet_asked
from dyesession.account.model import Account
from dyesession.account.say import line
from dyesession.account.told import NoAnswer
from dyesession.colour.trouble import ColourError
from dyesession.errors import UserError
from dyesession.session import events as e


def dyeing(minutes: float, snippet_out_at: float | None = None) -> Account:
    """A skein so many minutes in a dyebath at heat; a snippet dipped with it, out at a minute."""
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write(e.Filled("dye pot", 3.0)).write(e.Added("madder", "dye pot", 50.0)).write(e.Dissolved("madder", "dye pot"))
    day.write(e.Begun("dye", early="now")).write(e.Lit("dye pot")).write(e.Reached("dye pot", 90.0))
    day.write(e.Entered("first skein", "dye pot"))
    if snippet_out_at is not None:
        day.write(e.Dipped("snippet 1", "dye pot"))
        day.write(e.Lifted("snippet 1", "dye pot"), snippet_out_at)
        minutes -= snippet_out_at
    day.write(e.Noted("still in"), minutes)
    day.write(e.Read("dye pot", temperature_c=90.0))
    return day.account(all_known("madder", rate=0.05))


def percent(account: Account, text: str) -> str:
    [*_, last] = snippet_asked(account, "dye pot", text)
    return line(last)


def test_a_share_said_by_eye_is_the_snippets_and_the_rest_brings_what_the_shape_says() -> None:
    said = percent(dyeing(20.0), "60 %")
    assert said.startswith("By the dried snippet the first skein stands at 60 ± 1") and "of the depth you want; left" in said
    assert said.endswith(", a guess.")


def test_a_snippet_that_came_out_earlier_is_no_skein_of_now() -> None:
    """Its depth is that of its ten minutes: gram for gram the skein has so many times as much by now."""
    account = dyeing(40.0, snippet_out_at=10.0)
    a_gram = {one.lot: one.taken[0].grams.mean / one.mass_g for one in account.fibres}
    times = a_gram["first skein"] / a_gram["snippet 1"]
    assert times > 2.0
    stands = percent(account, "20 %").split("stands at ")[1].split()[0]
    assert float(stands) == pytest.approx(20.0 * times, rel=0.1)  # said to the nearest ten
    assert "stands at 20 ± " in percent(dyeing(40.0), "20 %")
    with pytest.raises(NoAnswer, match="No snippet 7 was dipped today; dipped were snippet 1"):
        percent(dyeing(40.0, snippet_out_at=10.0), "snippet 7 30 %")


def test_two_colours_and_the_undyed_fibre_tell_the_share() -> None:
    account = dyeing(20.0)
    weak = percent(account, "#b5705a, wanted #8e3b26, undyed #d8d2c6")
    same = percent(account, "#8e3b26, wanted #8e3b26, undyed #d8d2c6")
    assert "stands at 100 ± " in same
    share = float(weak.split("stands at ")[1].split()[0])
    assert 20.0 < share < 60.0


def test_wet_is_refused_and_words_that_say_nothing_are_asked_again() -> None:
    account = dyeing(20.0)
    with pytest.raises(NoAnswer, match="wet"):
        snippet_asked(account, "dye pot", "#b5705a wet, wanted #8e3b26, undyed #d8d2c6")
    for text in ("", "darker", "0 %", "-5 %", "#b5705a", "70"):
        with pytest.raises(NoAnswer, match="70 %"):
            snippet_asked(account, "dye pot", text)
    with pytest.raises(UserError):
        snippet_asked(account, "dye pot", "no colour, wanted #8e3b26, undyed #d8d2c6")
    with pytest.raises(NoAnswer, match="No fibre has taken colour"):
        snippet_asked(account, "extract pot", "70 %")
    assert issubclass(ColourError, UserError)


def test_the_example_it_gives_is_one_it_takes() -> None:
    assert snippet_asked(dyeing(20.0), "dye pot", COLOURS_EXAMPLE)


def test_colours_read_badly_leave_the_share_wider_than_colours_read_well() -> None:
    account, said = dyeing(20.0), "{0}, wanted {1}, undyed lab(84 1 6) D65/2 ± 0.5"
    halves = []
    for error in (0.5, 6.0):
        dried, wanted = f"lab(60 25 22) D65/2 ± {error}", f"lab(42 38 30) D65/2 ± {error}"
        told = percent(account, said.format(dried, wanted)).split("stands at ")[1]
        halves.append(told)
    well, badly = (_width(one) for one in halves)
    assert badly > 1.3 * well, halves


def _width(told: str) -> float:
    """Width of “30 ± 7 %” or “20 to 60 %”."""
    words = told.split()
    return 2.0 * float(words[2]) if words[1] == "±" else float(words[2]) - float(words[0])
