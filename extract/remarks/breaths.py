"""The breaths of a narration: what is said of one sentence in one cue, the smallest thing that a remark is read from.

Takes "do not put a bigger fuse in ever | the transformer catches fire" as one where no stop parts them.
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.remarks.reading import Reading


@dataclass(frozen=True, slots=True)
class Breath:
    """Tokens `start` to `end` (exclusive), and the pieces `first` to `last` (exclusive) that they are in."""

    first: int
    last: int
    start: int
    end: int


def breaths_of(reading: Reading) -> tuple[Breath, ...]:
    """The breaths in order, every token in exactly one. Linear in the number of tokens."""
    bench, pieces = reading.bench, reading.pieces
    found: list[Breath] = []
    for index, piece in enumerate(pieces):
        cuts = [at for at in range(piece.start + 1, piece.end) if bench.cue[at] != bench.cue[at - 1]]
        for start, end in zip([piece.start, *cuts], [*cuts, piece.end], strict=True):
            last = found[-1] if found else None
            goes_on = last is not None and bench.cue[last.start] == bench.cue[start]
            if last is not None and goes_on and pieces[last.last - 1].sentence == piece.sentence:
                found[-1] = Breath(last.first, index + 1, last.start, end)
            else:
                found.append(Breath(index, index + 1, start, end))
    return tuple(found)
