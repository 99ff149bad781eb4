"""The weights and words of data/retractions.toml."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from extract.roots import root

_FILE = Path(__file__).parent.parent / "data" / "retractions.toml"
_WORD = re.compile(r"[a-z][a-z'’-]{2,}")


@dataclass(frozen=True, slots=True)
class Knowledge:
    """What speaks for a candidate, and by how much."""

    weights: dict[str, int]
    bounds: dict[str, int]
    first: frozenset[str]
    last: frozenset[str]
    shows: frozenset[str]
    passed_over: frozenset[str]


@cache
def knowledge() -> Knowledge:
    """The file, read once."""
    data: dict[str, Any] = tomllib.loads(_FILE.read_text(encoding="utf-8"))
    named = data["named"]
    return Knowledge(
        weights=data["weights"],
        bounds=data["bounds"],
        first=frozenset(named["first"]),
        last=frozenset(named["last"]),
        shows=frozenset(named["shows"]),
        passed_over=frozenset(data["passed_over"]["words"]),
    )


def telling(*texts: str | None) -> frozenset[str]:
    """The words that say what is meant, without their endings: "the saddle's slots" gives saddle and slot."""
    over = knowledge().passed_over
    return frozenset(root(word) for word in _words(texts) if word not in over)


def _words(texts: Iterable[str | None]) -> list[str]:
    return [word.replace("’", "'") for text in texts if text for word in _WORD.findall(text.casefold())]
