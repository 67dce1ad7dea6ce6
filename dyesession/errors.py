"""The one kind of error a person may see. Knows nothing of the rooms above."""


class UserError(Exception):
    """Something a person can put right.

    The message is one sentence: what is wrong, where, what was expected, and an example.
    """
