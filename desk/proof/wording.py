"""The words of the proof page that are made on the server, in one place."""

from __future__ import annotations

from extract.record import Because, Phase
from extract.rulings import Rank
from extract.rulings.model import Add, Amend, Merge, Note, OnItem, Pass, Portion, Reorder, Retract, Split, Stet, Strike
from publish.moments import clock

GROUPS: dict[Rank, str] = {
    "stop": "settle", "near_tie": "tie", "retraction": "retraction", "correction": "correction", "look": "look",
    "doubt": "doubt", "step": "step",
}  # fmt: skip
"""Groups of the list by rank, the worst first."""

WANTED: dict[Rank, str] = {
    "stop": "settle it",
    "near_tie": "listen again",
    "retraction": "say which",
    "correction": "accept or strike",
    "look": "look at it",
    "doubt": "look it up",
    "step": "say on what",
}

SAID_WRONG: frozenset[str] = frozenset({"conversion", "arithmetic", "dimension", "implausible", "conflict"})
"""Kinds of finding in which the speaker, not the ear, is the likelier to be wrong."""

PHASES: dict[Phase, str] = {"as_found": "as found", "target": "aim", "as_left": "as left", "general": "rule of thumb"}

BECAUSE: dict[Because, str] = {
    "said_wrong": "said wrong", "heard_wrong": "heard wrong", "own_words": "put in other words",
}  # fmt: skip


def act_words(ruling: OnItem | Pass) -> str:
    """A ruling in the fewest words: `stet`, `read 7/64 in, heard wrong`."""
    match ruling:
        case Stet():
            return "stet"
        case Strike():
            return "struck"
        case Amend():
            return _amended(ruling)
        case Note():
            return f"note: {ruling.text}"
        case Add():
            return f"added: {ruling.to.figure.display if ruling.to.figure else ruling.to.text or ruling.on.words}"
        case Reorder():
            return "put elsewhere"
        case Merge():
            return "merged with the next"
        case Split():
            return f"split in {len(ruling.into)}"
        case Retract():
            return _retracted(ruling)
        case Pass():
            return "passed for press"


def _retracted(ruling: Retract) -> str:
    statement = ruling.statement
    if statement is None:
        return "none of these"
    figures = " ".join(statement.item.figures) or f"“{statement.item.words}”"
    return f"takes back {figures} at {clock(statement.item.start)} of {statement.session}"


def _amended(ruling: Amend) -> str:
    to, parts = ruling.to, []
    if to.figure is not None:
        parts.append(f"read {to.figure.display}")
    elif to.text is not None:
        parts.append(f"read “{to.text}”")
    named = [one for one in (to.attribute, to.item, to.where) if one is not None]
    if named:
        parts.append(f"named {', '.join(one or 'nothing' for one in named)}")
    if to.phase is not None:
        parts.append(PHASES[to.phase])
    if ruling.because is not None and to.figure is not None and ruling.later is None:
        parts.append(BECAUSE[ruling.because])
    if ruling.later is not None:
        parts.append(f"put right in {ruling.later.title}")
    return ", ".join(parts) or "amended"


def portions(texts: list[str]) -> list[Portion]:
    """The parts of a split, empty lines left out."""
    return [Portion(text=one.strip()) for one in texts if one.strip()]
