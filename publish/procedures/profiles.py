"""What each procedure is like, over all its versions, and the inverted index that finds those like a run or a step."""

from __future__ import annotations

from collections.abc import Mapping
from math import sqrt

from publish.procedures.likeness import Features, tells

_LOOKED_AT = 5
"""Procedures that share most with what is looked up; the rest can't be nearer."""


class Profiles:
    """The summed runs of each procedure, numbered from 0."""

    def __init__(self, number: int = 0) -> None:
        self._weights: list[Features] = []
        self._squares: list[float] = []
        self._sessions: list[set[int]] = []
        self._having: dict[str, dict[int, None]] = {}
        for _ in range(number):
            self.new()

    def new(self) -> int:
        """Make room for another procedure, and give its number."""
        self._weights.append({})
        self._squares.append(0.0)
        self._sessions.append(set())
        return len(self._weights) - 1

    def add(self, number: int, run: Mapping[str, float], session: int) -> None:
        """Add a run of length 1 to a procedure."""
        weights = self._weights[number]
        for name, weight in run.items():
            before = weights.get(name, 0.0)
            weights[name] = before + weight
            self._squares[number] += weight * (2 * before + weight)
            if not before and tells(name):
                self._having.setdefault(name, {})[number] = None
        self._sessions[number].add(session)

    def elsewhere(self, number: int, session: int) -> bool:
        """Whether another session did it too."""
        return len(self._sessions[number] - {session}) > 0

    def nearest(self, wanted: Mapping[str, float], most: int = _LOOKED_AT) -> list[tuple[float, int]]:
        """The procedures most like a vector of length 1, with their cosines, the best first, the oldest of equals."""
        shared: dict[int, float] = {}
        for name, weight in wanted.items():
            for number in self._having.get(name, ()):
                length = sqrt(self._squares[number])
                shared[number] = shared.get(number, 0.0) + weight * self._weights[number][name] / length
        best = sorted(shared, key=lambda number: (-shared[number], number))[:most]
        return sorted(((self.cosine(wanted, one), one) for one in best), key=lambda one: (-one[0], one[1]))

    def cosine(self, wanted: Mapping[str, float], number: int, without: Mapping[str, float] | None = None) -> float:
        """The cosine of a vector of length 1 with a procedure, a run of it left out where one is given."""
        weights, square = self._weights[number], self._squares[number]
        product = sum(weight * weights.get(name, 0.0) for name, weight in wanted.items())
        if without is not None:
            product -= sum(weight * without.get(name, 0.0) for name, weight in wanted.items())
            square += sum(weight * (weight - 2 * weights[name]) for name, weight in without.items())
        return product / sqrt(square) if square > _NOTHING else 0.0


_NOTHING = 1e-9
