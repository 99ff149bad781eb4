"""A narration as remarks are read from it, and the cue phrases of data/remarks.toml."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.clauses import Bench, Piece, cleaned, pieces_of, told_history
from extract.clauses.phrases import Phrases


@dataclass(frozen=True, slots=True)
class Cues:
    """Cue phrases by what they tell; the reasons stand in the data file."""

    later: Phrases
    days: frozenset[str]
    deferred: Phrases
    deferred_before: Phrases
    deferred_after: frozenset[str]
    unsure: Phrases
    hearsay: Phrases
    hedge: Phrases
    forbid: Phrases
    forbid_noun: Phrases
    guard: Phrases
    consequence: Phrases
    chat: Phrases
    plural_only: frozenset[str]


@cache
def cues() -> Cues:
    """The phrases, read once."""
    data = tomllib.loads(files("extract").joinpath("data/remarks.toml").read_text(encoding="utf-8"))
    plain = ("later", "deferred", "unsure", "hearsay", "hedge", "forbid", "forbid_noun", "guard", "consequence", "chat")
    return Cues(
        days=frozenset(data["later"]["days"]),
        deferred_before=Phrases(data["deferred_by"]["before"]),
        deferred_after=frozenset(data["deferred_by"]["after"]),
        plural_only=frozenset(data["plural_only"]["words"]),
        **{name: Phrases(data[name]["phrases"]) for name in plain},
    )


@dataclass(frozen=True, slots=True)
class Reading:
    """The pieces of a narration and where another job is told of."""

    bench: Bench
    pieces: tuple[Piece, ...]
    told: tuple[bool, ...]

    @classmethod
    def of(cls, bench: Bench) -> Reading:
        """Cut a narration into pieces."""
        pieces = pieces_of(bench)
        return cls(bench, pieces, told_history(bench, pieces))

    def finds(self, phrases: Phrases, piece: Piece) -> tuple[int, int] | None:
        """The tokens of the first of these phrases in a piece, or null."""
        return phrases.first_in(self.bench.lower, piece.start, piece.end)

    def near(self, index: int, other: int, cues_apart: int = 2) -> bool:
        """True where two pieces stand within so many cues of one another."""
        if not 0 <= other < len(self.pieces):
            return False
        here, there = self.bench.cue[self.pieces[index].start], self.bench.cue[self.pieces[other].start]
        return abs(here - there) <= cues_apart

    def said(self, start: int, end: int) -> str:
        """Tokens as they were said, fillers, edge marks and hanging joining words left out."""
        while end > start + 1 and self.bench.word(end - 1) in {"or", "and", "but", "so", ","}:
            end -= 1
        return cleaned(self.bench, start, end, second_person=False)


def sentence(text: str) -> str:
    """A text with a capital and one full stop."""
    stripped = text.strip(" ,;:.!?")
    return f"{stripped[:1].upper()}{stripped[1:]}." if stripped else ""
