"""The word lists of this stage, read once from the data files."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from extract.quantities.phrases import Phrases

_DATA = Path(__file__).parent.parent / "data"


@dataclass(frozen=True, slots=True)
class Knowledge:
    """Phrases by list name."""

    before: dict[str, Phrases]
    after: dict[str, Phrases]
    idioms: Phrases
    year: dict[str, Any]
    year_before: frozenset[str]
    counted_nouns: frozenset[str]
    counted_before: Phrases
    counted_after: Phrases
    manner: dict[str, dict[str, Phrases]]
    evidence: dict[str, Phrases]
    kinds: dict[str, frozenset[str]]


def _read(name: str) -> dict[str, Any]:
    return tomllib.loads((_DATA / name).read_text(encoding="utf-8"))


@cache
def knowledge() -> Knowledge:
    """All lists."""
    no, manner, evidence = _read("not_measures.toml"), _read("manner.toml"), _read("evidence.toml")
    return Knowledge(
        before={name: Phrases(listed) for name, listed in no["before"].items()},
        after={name: Phrases(listed) for name, listed in no["after"].items()},
        idioms=Phrases(no["idioms"]["phrases"]),
        year=no["year"],
        year_before=frozenset(no["year"]["before"]),
        counted_nouns=frozenset(no["counted"]["nouns"]),
        counted_before=Phrases(no["counted"]["before"]),
        counted_after=Phrases(no["counted"]["after"]),
        manner={name: {side: Phrases(listed) for side, listed in sides.items()} for name, sides in manner.items()},
        evidence={name: Phrases(listed) for name, listed in evidence["reading"].items()},
        kinds={name: frozenset(listed) for name, listed in evidence["kinds"].items()},
    )
