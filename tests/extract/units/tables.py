"""Reads the tables beside the tests: rows of columns divided by bars, "#" begins a comment."""

from __future__ import annotations

from pathlib import Path


def rows(path: Path) -> list[tuple[str, ...]]:
    """The rows of a table."""
    lines = path.read_text(encoding="utf-8").splitlines()
    return [tuple(cell.strip() for cell in line.split("|")) for line in lines if line.strip() and line[0] != "#"]
