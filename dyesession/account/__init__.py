"""How strong each bath is, how sure that is, and where the colour and the water went.

Knows nothing of files, screens or the time of day: entries bring their own instants. Figures come from
`dyeing`. What a dyer asks of it stands in `once_more`, `would_take`, `along`, `mordant_bath` and
`over_the_day`, in words in `say` and `say_answers`; figures that can hardly be are asked about in `doubts`.
"""

from dyesession.account.along import Along, along
from dyesession.account.doubts import doubts, first_asked, kept_as_note
from dyesession.account.ledger import Ledger, reckon
from dyesession.account.model import Account, Band90
from dyesession.account.mordant_bath import MordantBath, mordant_bath
from dyesession.account.once_more import OnceMore, once_more
from dyesession.account.over_the_day import Point, over_the_day
from dyesession.account.say import Said, line, sentences
from dyesession.account.strengths import reading_of
from dyesession.account.testimony import accounted
from dyesession.account.would_take import WouldDo, WouldTake, would_do, would_take

__all__ = [
    "Account",
    "Along",
    "Band90",
    "Ledger",
    "MordantBath",
    "OnceMore",
    "Point",
    "Said",
    "WouldDo",
    "WouldTake",
    "accounted",
    "along",
    "doubts",
    "first_asked",
    "kept_as_note",
    "line",
    "mordant_bath",
    "once_more",
    "over_the_day",
    "reading_of",
    "reckon",
    "sentences",
    "would_do",
    "would_take",
]
