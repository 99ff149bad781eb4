"""A candidate with all that stands around it: what vetoes and signs look at."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
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

    @property
    def sentence(self) -> tuple[int, int]:
        """Tokens of the sentence that the piece is part of."""
        number = self.piece.sentence
        first = bisect_left(self.pieces, number, key=lambda piece: piece.sentence)
        last = bisect_right(self.pieces, number, key=lambda piece: piece.sentence)
        return self.pieces[first].start, self.pieces[last - 1].end

    @property
    def breath(self) -> tuple[int, int]:
        """Tokens of the cue that the candidate begins in."""
        return self.breath_of(self.candidate.start)

    def breath_of(self, at: int) -> tuple[int, int]:
        """Tokens of the cue that a token stands in."""
        cue = self.bench.cue
        return bisect_left(cue, cue[at]), bisect_right(cue, cue[at])
