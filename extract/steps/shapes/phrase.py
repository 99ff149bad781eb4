"""What a verb is read with: its particle, its object, and what was laid to it."""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.things import Thing


@dataclass(frozen=True, slots=True)
class VerbPhrase:
    """A verb, its object and its particle."""

    said: str
    """Base form as said, without particle."""
    lemma: str
    """What the work is called, with its particle where the two make one verb: "let down", "knock out"."""
    at: int
    """Token of the verb."""
    thing: Thing | None
    placed: bool
    """True where a particle or a phrase of place stands with the verb."""
    tool: Thing | None = None
    """What was laid to the thing: the calliper of "put a calliper on every fret"."""
