"""What a typed line may get wrong, said in one sentence. Knows no session."""

from dyesession.errors import UserError


class LineError(UserError):
    """A typed line that asks for nothing this program can do as it stands; nothing has changed."""
