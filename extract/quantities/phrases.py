"""Lists of phrases from the data files, looked up among lexemes."""

from __future__ import annotations

from collections.abc import Iterable

from extract.numbers.figure import Tape
from extract.numbers.lexer import split


class Phrases:
    """Phrases that can be asked for before, at and behind a place."""

    def __init__(self, phrases: Iterable[str]) -> None:
        self._by_first: dict[str, list[tuple[str, ...]]] = {}
        self._by_last: dict[str, list[tuple[str, ...]]] = {}
        for pieces in sorted({split(phrase) for phrase in phrases}, key=len, reverse=True):
            self._by_first.setdefault(pieces[0], []).append(pieces)
            self._by_last.setdefault(pieces[-1], []).append(pieces)

    def at(self, tape: Tape, start: int) -> int | None:
        """End of the longest phrase that begins at `start`."""
        for pieces in self._by_first.get(tape.text(start), ()):
            if all(tape.text(start + offset) == piece for offset, piece in enumerate(pieces)):
                return start + len(pieces)
        return None

    def before(self, tape: Tape, end: int) -> int | None:
        """Start of the longest phrase that ends right before `end`."""
        for pieces in self._by_last.get(tape.text(end - 1), ()):
            start = end - len(pieces)
            if start >= 0 and all(tape.text(start + offset) == piece for offset, piece in enumerate(pieces)):
                return start
        return None

    def spans(self, tape: Tape) -> list[tuple[int, int]]:
        """Start and end of every phrase found, in order; they may overlap."""
        return [(at, end) for at in range(len(tape)) if (end := self.at(tape, at)) is not None]
