"""What one rule of the number grammar read."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from extract.numbers.lexer import Kind, Lexeme
from extract.spans import Form


@dataclass(frozen=True, slots=True)
class Figure:
    """A number without a range, read from lexemes `start` to `end` (exclusive)."""

    start: int
    end: int
    value: Fraction
    form: Form
    denominator: int | None = None
    decimals: int | None = None
    grouped: bool = False
    """Said as groups of digits: "three fifty", "nineteen seventy six"."""
    article: bool = False
    """Begins with "a" or "an"."""


_STOPS = frozenset(",.;:?!()…")


class Tape:
    """The lexemes of a narration, with safe looks ahead and back."""

    def __init__(self, lexemes: tuple[Lexeme, ...], nouns: frozenset[int] = frozenset()) -> None:
        self.lexemes = lexemes
        self.nouns = nouns
        """Indices of tokens that are nouns."""

    def __len__(self) -> int:
        return len(self.lexemes)

    def kind(self, at: int) -> Kind | None:
        """Kind of the lexeme at `at`, None outside."""
        return self.lexemes[at].kind if 0 <= at < len(self.lexemes) else None

    def text(self, at: int) -> str:
        """Lower-case text of the lexeme at `at`, empty outside."""
        return self.lexemes[at].text if 0 <= at < len(self.lexemes) else ""

    def value(self, at: int) -> Fraction:
        """Value of the lexeme at `at`."""
        return self.lexemes[at].value

    def is_noun(self, at: int) -> bool:
        """True where the lexeme at `at` is a noun."""
        return 0 <= at < len(self.lexemes) and self.lexemes[at].token in self.nouns

    def is_stop(self, at: int) -> bool:
        """True where the lexeme at `at` is a mark that ends a clause."""
        return self.text(at) in _STOPS

    def skip_dash(self, at: int) -> int:
        """Index behind a dash that joins two words ("sixty-fourths"), else `at`."""
        joined = self.kind(at) == "dash" and self.lexemes[at].glued
        return at + 1 if joined and at + 1 < len(self) and self.lexemes[at + 1].glued else at
