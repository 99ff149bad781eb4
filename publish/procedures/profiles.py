"""What each procedure is like, over all its versions, and the inverted index that finds those like a run or a step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import sqrt

from publish.procedures.likeness import Features, tells

_LOOKED_AT = 3
"""Procedures that share most with what is looked up, and are compared with it in full."""


class Profiles:
    """The summed runs of each procedure, numbered from 0."""

    def __init__(self, number: int = 0) -> None:
        self._weights: list[Features] = []
        self._squares: list[float] = []
        self._lengths: list[float] = []
        self._sessions: list[set[int]] = []
        self._having: dict[str, dict[int, float]] = {}
        for _ in range(number):
            self.new()

    def new(self) -> int:
        """Make room for another procedure, and give its number."""
        self._weights.append({})
        self._squares.append(0.0)
        self._lengths.append(0.0)
        self._sessions.append(set())
        return len(self._weights) - 1

    def add(self, number: int, run: Mapping[str, float], session: int) -> None:
        """Add a run of length 1 to a procedure."""
        weights, square = self._weights[number], self._squares[number]
        for name, weight in run.items():
            before = weights.get(name, 0.0)
            weights[name] = before + weight
            square += weight * (2 * before + weight)
            if name in self._having or tells(name):
                self._having.setdefault(name, {})[number] = before + weight
        self._squares[number], self._lengths[number] = square, sqrt(square)
        self._sessions[number].add(session)

    def elsewhere(self, number: int, session: int) -> bool:
        """Whether another session did it too."""
        return len(self._sessions[number] - {session}) > 0

    def nearest(self, wanted: Mapping[str, float], most: int = _LOOKED_AT) -> list[tuple[float, int]]:
        """The procedures most like a vector of length 1, with their cosines, the best first, the oldest of equals."""
        shared: dict[int, float] = {}
        for name, weight in wanted.items():
            for number, of in self._having.get(name, _NONE).items():
                shared[number] = shared.get(number, 0.0) + weight * of
        lengths = self._lengths
        best = sorted([(-product / lengths[number], number) for number, product in shared.items()])[:most]
        return sorted(((self._cosine(wanted, one), one) for _, one in best), key=lambda one: (-one[0], one[1]))

    def scores(
        self, steps: Sequence[Mapping[str, float]], numbers: Sequence[int], own: Mapping[int, Mapping[str, float]]
    ) -> list[dict[int, float]]:
        """For each of these vectors of length 1 its cosines with these procedures, their `own` runs left out."""
        lengths = {number: self._length(number, own.get(number)) for number in numbers}
        found = []
        for step in steps:
            row = {}
            for number in numbers:
                weights, without = self._weights[number], own.get(number)
                product = sum([weight * weights[name] for name, weight in step.items() if name in weights])
                if without is not None:
                    product -= sum([weight * without[name] for name, weight in step.items() if name in without])
                row[number] = product / lengths[number] if lengths[number] else 0.0
            found.append(row)
        return found

    def _cosine(self, wanted: Mapping[str, float], number: int) -> float:
        weights = self._weights[number]
        product = sum([weight * weights[name] for name, weight in wanted.items() if name in weights])
        return product / self._lengths[number] if self._squares[number] > _NOTHING else 0.0

    def _length(self, number: int, without: Mapping[str, float] | None) -> float:
        """The length of a procedure's vector, a run of it left out where one is given; 0 for next to nothing."""
        square = self._squares[number]
        if without is not None:
            weights = self._weights[number]
            square += sum(weight * (weight - 2 * weights[name]) for name, weight in without.items())
        return sqrt(square) if square > _NOTHING else 0.0


_NOTHING = 1e-9
_NONE: Mapping[int, float] = {}
