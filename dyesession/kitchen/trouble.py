"""What can be wrong with a kitchen file. Knows no kitchen."""

from dyesession.errors import UserError


class KitchenError(UserError):
    """A kitchen that cannot be read; the sentence names file, line, what was expected and an example."""
