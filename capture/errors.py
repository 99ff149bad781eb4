"""Every error a person may see.

Each subclass holds the facts and builds its own message: one line that says what is wrong and what to do. The desk
prints that line and leaves with exit code 2; nothing below the desk prints. Errors of other libraries are wrapped in
these.
"""

from __future__ import annotations

from pathlib import Path


class SpokeshaveError(Exception):
    """Base of all errors that are a person's to mend: `str()` is one clear line."""


class RecordingError(SpokeshaveError):
    """A recording that can't be used."""

    def __init__(self, path: Path, problem: str, remedy: str) -> None:
        self.path = path
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {problem}; {remedy}")


class TranscriptError(SpokeshaveError):
    """A caption or transcript file that can't be read."""

    def __init__(self, path: Path, problem: str, remedy: str) -> None:
        self.path = path
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {problem}; {remedy}")


class ModelError(SpokeshaveError):
    """A speech or language model that can't be loaded."""

    def __init__(self, name: str, problem: str, remedy: str) -> None:
        self.name = name
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"model {name}: {problem}; {remedy}")


class ShopError(SpokeshaveError):
    """A shop or session on disk that can't be read or written."""

    def __init__(self, path: Path, problem: str, remedy: str) -> None:
        self.path = path
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {problem}; {remedy}")


class SessionBusyError(ShopError):
    """Another process is writing to the session."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            path, "another spokeshave is working on this session", "wait for it to end, then run this again"
        )


class DataFileError(SpokeshaveError):
    """A trade, unit or hazard file with a mistake in it."""

    def __init__(self, path: Path, place: str, problem: str, remedy: str) -> None:
        self.path = path
        self.place = place
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {place}: {problem}; {remedy}")
