"""How strong each bath is, how sure that is, and where the colour and the water went.

Knows nothing of files, screens or the time of day: entries bring their own instants. Figures come from
`dyeing`.
"""

from dyesession.account.ledger import Ledger, reckon
from dyesession.account.model import Account, Band90
from dyesession.account.say import Said, line, sentences
from dyesession.account.testimony import accounted

__all__ = ["Account", "Band90", "Ledger", "Said", "accounted", "line", "reckon", "sentences"]
