"""Reads text fixtures: a title, an input and what is expected, parted by lines with a lone dot."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

FIXTURES = Path(__file__).parent / "fixtures"


@dataclass(frozen=True, slots=True)
class Case:
    """One case of a fixture file."""

    title: str
    given: str
    expected: str


def cases(name: str) -> list[Case]:
    """All cases of a fixture file. What stands before the first empty line is about the file."""
    text = (FIXTURES / name).read_text(encoding="utf-8")
    parts = ("\n" + text[text.index("\n\n") :]).split("\n.\n")
    whole = [part.strip("\n") for part in parts]
    assert len(whole) % 3 == 1, f"{name}: a dot is missing"
    return [Case(*whole[at : at + 3]) for at in range(0, len(whole) - 1, 3)]
