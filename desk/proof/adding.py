"""What a person puts in, at the second that they name, with the words that were said there."""

from __future__ import annotations

from desk.proof.said import Context, Said
from desk.proof.work import Work
from extract.rulings import Hand, RulingError, Wanted, add
from extract.rulings.model import NAMED_ONCE, Add, Kind
from publish.moments import clock

_ABOUT = 2.0
"""Seconds before and behind a second whose words are taken to be those said there."""


def said_about(work: Work, second: float) -> Said:
    """The words said about a second, with those around them; empty where nothing is said or no transcript is there."""
    return Context(work.transcript).around(max(second - _ABOUT, 0.0), second + _ABOUT, "")


def added(
    work: Work, kind: Kind, second: float, said: str, to: Wanted, withdraws: str, overrule: bool, hand: Hand
) -> Add:
    """What the machine missed. `said` stands for the words said there where the person wrote them out.

    Raises `RulingError` for a second outside of the recording, and as `extract.rulings.add` does.
    """
    length = work.proofed.machine.session.duration
    if length and second > length:
        raise RulingError(f"{clock(second)} is behind the end of the recording", f"name a second up to {clock(length)}")
    cue = Context(work.transcript).cue_at(second)
    words = to.get("text", "") if kind in NAMED_ONCE else said.strip() or said_about(work, second).quote
    at = 0.0 if kind in NAMED_ONCE else second
    return add(work.proofed, kind, at, cue, words, to, hand, withdraws or None, overrule)
