"""The log of a session's rulings: rulings.json."""

from __future__ import annotations

from extract.rulings.line_log import Aside, LineLog, LinesRead
from extract.rulings.model import Ruling, ruling_adapter

__all__ = ["Aside", "LogRead", "RulingLog"]

LogRead = LinesRead[Ruling]
"""What a session's log holds."""


class RulingLog(LineLog[Ruling]):
    """The rulings of one session; `RulingLog(session.rulings_file)`."""

    adapter = ruling_adapter
    format = "spokeshave-ruling/1"
    lock_name = ".rulings.lock"
    home = "its session's folder"
