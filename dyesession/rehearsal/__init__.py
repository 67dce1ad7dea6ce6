"""A whole day on a stepping clock: what would happen if everything were done as planned. Knows no screens."""

from dyesession.rehearsal.model import Rehearsed
from dyesession.rehearsal.printed import rehearsed_lines
from dyesession.rehearsal.report import rehearsed_as_json
from dyesession.rehearsal.run import RehearsalError, rehearse

__all__ = ["RehearsalError", "Rehearsed", "rehearse", "rehearsed_as_json", "rehearsed_lines"]
