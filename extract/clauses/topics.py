"""What "it", "them" and "her" stand for: the thing last worked on or named, where the number fits.

"spindles next ... tap them home" is the spindles; with nothing near, the pronoun stays as it was said.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, is_plural, is_workable, kind_of, thing_at

_REACH = 6
"""Cues. Farther back a pronoun's noun is anybody's guess."""
_NEAR = 2
"""Cues within which a heading says what a step is about."""
_ABOUT = frozenset({"is", "'s", "are", "'re", "was", "were", "has", "have", "had", "'ve", "needs", "wants"})
_HAVING = frozenset({"has", "had", "have", "'ve"})
"""Behind a pronoun these say what it has: "it has a left hand thread, and i turn it" turns the pedal."""
_HEADED = frozenset({"now", "next", "then", "first", "again", "here"})
"""Behind a bare noun phrase these make it a heading."""
_OLDEST = 12
"""Topics looked at before giving up."""


class Topics:
    """The things of the pieces read so far, the last one last."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._topics: list[Thing] = []
        self._heading: Thing | None = None

    def head(self, heading: Thing | None) -> None:
        """Remember the thing that a piece only names, as what the work is on from here."""
        self._heading = heading or self._heading

    def heading(self, at: int) -> Thing | None:
        """The last thing that was named by itself, a breath or two before."""
        near = self._heading is not None and self._bench.cue[at] - self._bench.cue[self._heading.head] <= _NEAR
        return self._heading if near else None

    def hear(self, piece: Piece, worked_on: Thing | None) -> None:
        """Add what a piece is about: what was worked on there, or the part or material named in it."""
        bench = self._bench
        if worked_on is not None and not worked_on.pronoun and kind_of(bench, worked_on) != "tool":
            whole = _whole(bench, worked_on)
            self._topics += [worked_on] if whole is None else [whole, worked_on]
            return
        if piece.leans:
            return
        at = piece.lead
        if bench.tag(at) == "PRP" and bench.word(at + 1) in _HAVING:
            return
        while at < piece.end:
            thing = thing_at(bench, at, piece.end)
            placed = at > piece.lead and bench.tag(at - 1) in {"IN", "TO"} and bench.word(at - 1) != "of"
            leads = at == piece.lead
            if thing is not None and not thing.pronoun and not placed and _is_topic(bench, thing, piece, leads=leads):
                self._topics.append(thing)
                return
            at = thing.end if thing is not None else at + 1

    def last(self, at: int, cues: int = 2) -> Thing | None:
        """The last thing talked about before a token, within so many cues."""
        here = self._bench.cue[at]
        last = self._topics[-1] if self._topics else None
        return last if last is not None and here - self._bench.cue[last.head] <= cues else None

    def meant_by(self, pronoun: Thing | None, at: int) -> tuple[Thing | None, bool]:
        """The thing that a pronoun at a token stands for, and whether its number fits; for no object the last thing."""
        bench = self._bench
        near = [
            thing
            for thing in self._topics[-_OLDEST:]
            if bench.cue[at] - bench.cue[thing.head] <= _REACH and is_workable(bench, thing)
        ]
        if not near:
            return None, False
        for thing in reversed(near):
            if pronoun is not None and is_plural(bench, thing) == is_plural(bench, pronoun):
                return thing, True
        parts = [thing for thing in near if kind_of(bench, thing) != "material"]
        return (parts or near)[-1], pronoun is None


def _whole(bench: Bench, thing: Thing) -> Thing | None:
    """The hook of "the screws of the hook": what "it" may stand for behind it."""
    if bench.word(thing.end) != "of":
        return None
    whole = thing_at(bench, thing.end + 1, len(bench))
    return whole if whole is not None and not whole.pronoun and is_workable(bench, whole) else None


def _is_topic(bench: Bench, thing: Thing, piece: Piece, *, leads: bool) -> bool:
    """A part or material, any thing of the bench that a clause is about, or a heading: "bobbin case | hang it"."""
    kind = kind_of(bench, thing)
    if kind in {"part", "material"}:
        return True
    if not leads or kind != "thing":
        return False
    alone = not any(bench.doc[k].is_alpha and bench.word(k) not in _HEADED for k in range(thing.end, piece.end))
    return alone or bench.word(thing.end) in _ABOUT or bench.tag(thing.end) in {"VBZ", "MD"}
