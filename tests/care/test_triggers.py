"""Every trigger has a situation that raises it and one, a step away, that does not."""

from dataclasses import replace

import pytest
from care.cases import CASES

from dyesession.care import TRIGGERS, reminders


def _of(trigger, situation):
    return [r for r in reminders(situation) if r.trigger == trigger]


def test_every_trigger_has_its_case():
    assert set(CASES) == set(TRIGGERS)


@pytest.mark.parametrize("trigger", CASES)
def test_it_is_said_when_it_applies_with_pot_and_amount(trigger):
    situation, said, _ = CASES[trigger]
    lines = [r.text for r in _of(trigger, situation)]
    assert any(said in line for line in lines), lines


@pytest.mark.parametrize("trigger", CASES)
def test_it_is_not_said_a_step_away(trigger):
    assert _of(trigger, CASES[trigger][2]) == []


@pytest.mark.parametrize("trigger", CASES)
def test_it_never_looks_the_same_for_another_pot_or_kept_bath(trigger):
    situation = CASES[trigger][0]
    elsewhere = replace(situation, letter="D", pouring_from="madder bath 5" if situation.pouring else "")
    assert {r.text for r in _of(trigger, situation)}.isdisjoint(r.text for r in _of(trigger, elsewhere))


@pytest.mark.parametrize("trigger", CASES)
def test_what_comes_from_who_lives_here_is_marked_and_nothing_else(trigger):
    """Said without the household, the same line is public; what falls silent then was private."""
    situation = CASES[trigger][0]
    nobody = {r.text for r in reminders(replace(situation, household=type(situation.household)()))}
    for reminder in reminders(situation):
        assert reminder.private == (reminder.text not in nobody), reminder.text
