"""A candidate with all that stands around it: what a veto looks at."""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.steps.candidate import Candidate


@dataclass(frozen=True, slots=True)
class Scene:
    """One candidate, the pieces around it, and whether history is being told there."""

    bench: Bench
    candidate: Candidate
    pieces: tuple[Piece, ...]
    index: int
    in_history: bool

    @property
    def piece(self) -> Piece:
        """The candidate's own piece."""
        return self.pieces[self.index]

    @property
    def before(self) -> Piece | None:
        """The piece before, or null."""
        return self.pieces[self.index - 1] if self.index else None
