"""Rulings that can't be given, and logs that can't be kept."""

from __future__ import annotations

from pathlib import Path

from capture.errors import SpokeshaveError


class RulingError(SpokeshaveError):
    """A ruling that can't be given as it stands: one line that says why, and what to do."""

    def __init__(self, problem: str, remedy: str) -> None:
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem}; {remedy}")


class FigureError(RulingError):
    """Words that are no figure with a unit of the list."""


class UnitKindError(RulingError):
    """A unit of another kind than what is measured; a person may overrule it."""


class RulingLogError(SpokeshaveError):
    """A log of rulings that can't be read or written."""

    def __init__(self, path: Path, problem: str, remedy: str) -> None:
        self.path = path
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {problem}; {remedy}")
