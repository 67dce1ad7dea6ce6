"""What can keep a day from being planned. Knows nothing of how a plan is made."""

from dyesession.errors import UserError


class PlanError(UserError):
    """A plan that cannot be made from what is known; the sentence says what to do about it."""


class Refused(PlanError):
    """A substance this program does not plan with; the sentence gives the reason and a safer route."""
