"""Sets the versions of a procedure beside one another: which deed of one answers to which of the others.

Versions are taken in one by one, the one most like all others first (progressive alignment: Feng and Doolittle 1987,
"Progressive sequence alignment as a prerequisite to correct phylogenetic trees"), each by the best global alignment
with the rows there are (Needleman and Wunsch 1970), gaps costing nothing and unlike deeds never matched. A deed that is
left over but is like a row that its version lacks was done in another order, and goes to that row as such.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from publish.procedures.acts import act_words
from publish.procedures.likeness import Features, Signature, alike, cosine, summed, together

_LIKE = 0.22
"""Least likeness of a deed to a row that it answers to."""
_SAME_ACT, _SAME_THING = 0.3, 0.5
"""What the same act counts, and the likeness of what it is done to, which must be as much as this at least:"""
_SOME = 0.08
_SAME_OBJECT = 0.36
"""What the same act on the same part or material counts at least, whatever else is named."""
_MOVED = 0.4
"""The same where the order is another one, which must be beyond doubt."""


@dataclass(frozen=True, slots=True)
class Place:
    """A deed of a version."""

    version: int
    deed: int
    """Places among the versions, and among the deeds of that."""


@dataclass(slots=True)
class AlignedRow:
    """Deeds of several versions that answer to one another."""

    places: list[tuple[Place, bool]] = field(default_factory=list)
    """In the order in which they were set; true where that version did it earlier or later than the rest."""
    _acts: set[str] = field(default_factory=set)
    _things: Features = field(default_factory=dict)
    _whole: Features = field(default_factory=dict)
    _objects: set[str] = field(default_factory=set)

    def add(self, place: Place, deed: Signature, *, moved: bool = False) -> None:
        """Set a deed into the row."""
        self.places.append((place, moved))
        self._acts.add(deed.act)
        self._objects |= deed.objects
        self._things = together((self._things, deed.things))
        self._whole = together((self._whole, deed.whole))

    def like(self, deed: Signature) -> float:
        """How like a deed is to the row, 0 to 1: to the mean of its features, or by the same act on a like thing."""
        opposite = act_words().opposite
        if not deed.things or not self._things or any((act, deed.act) in opposite for act in self._acts):
            return 0.0
        whole = alike(self._mean(self._whole), deed.whole)
        if deed.act in self._acts:
            things = alike(self._mean(self._things), deed.things)
            same = _SAME_OBJECT if not self._objects.isdisjoint(deed.objects) else 0.0
            return max(whole, same, _SAME_ACT + _SAME_THING * things if things >= _SOME else 0.0)
        return whole

    def _mean(self, total: Features) -> Features:
        number = len(self.places)
        return {name: weight / number for name, weight in total.items()}


def align(versions: Sequence[Sequence[Signature]], first: int | None = None) -> tuple[AlignedRow, ...]:
    """The rows, in order of work; `versions` are the deeds of each, `first` is set before all others."""
    rows: list[AlignedRow] = []
    for version in _order(versions, first):
        _set(rows, version, versions[version])
    return tuple(rows)


def _order(versions: Sequence[Sequence[Signature]], first: int | None) -> list[int]:
    runs = [summed(deed.whole for deed in deeds) for deeds in versions]
    middle = together(runs)
    order = sorted(range(len(versions)), key=lambda at: (-round(cosine(runs[at], middle), 9), at))
    return order if first is None else [first, *(at for at in order if at != first)]


def _set(rows: list[AlignedRow], version: int, deeds: Sequence[Signature]) -> None:
    likeness = [[row.like(deed) for row in rows] for deed in deeds]
    met = _path(likeness, len(rows))
    answered = set(met.values())
    for deed, row in met.items():
        rows[row].add(Place(version, deed), deeds[deed])
    left = [deed for deed in range(len(deeds)) if deed not in met]
    new: list[int] = []
    for deed in left:
        free = [(likeness[deed][row], -row) for row in range(len(likeness[deed])) if row not in answered]
        best = max(free, default=(0.0, 0))
        if best[0] >= _MOVED:
            answered.add(-best[1])
            rows[-best[1]].add(Place(version, deed), deeds[deed], moved=True)
        else:
            new.append(deed)
    # Each new row stands directly behind the row of the deed before it.
    for deed in reversed(new):
        before = max((one for one in met if one < deed), default=None)
        begun = AlignedRow()
        begun.add(Place(version, deed), deeds[deed])
        rows.insert(0 if before is None else met[before] + 1, begun)


def _path(likeness: Sequence[Sequence[float]], width: int) -> dict[int, int]:
    """Deed -> row of the best global alignment."""
    best = [[0.0] * (width + 1) for _ in range(len(likeness) + 1)]
    for deed, row_likeness in enumerate(likeness):
        above, here = best[deed], best[deed + 1]
        for row, like in enumerate(row_likeness):
            matched = above[row] + like - _LIKE / 2 if like >= _LIKE else -1.0
            here[row + 1] = max(above[row + 1], here[row], matched)
    met: dict[int, int] = {}
    deed, row = len(likeness), width
    while deed and row:
        if best[deed][row] == best[deed - 1][row]:
            deed -= 1
        elif best[deed][row] == best[deed][row - 1]:
            row -= 1
        else:
            deed, row = deed - 1, row - 1
            met[deed] = row
    return met
