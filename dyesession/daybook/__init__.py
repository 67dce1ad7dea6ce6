"""The day book: a day looked back on, planned beside actual, shown then beside reckoned now. Knows no
screens.
"""

from dyesession.daybook.model import Review
from dyesession.daybook.printed import review_lines
from dyesession.daybook.report import review_as_json
from dyesession.daybook.review import review

__all__ = ["Review", "review", "review_as_json", "review_lines"]
