"""Procedures over all sessions, as the last publish found them: a search has no need to find them again."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

import orjson

STORE = ".site.sqlite3"
"""The file in the shop in which publishing keeps what it knows (publish/presswork/store.py)."""
_ASKED = "SELECT slug, sum, data FROM part WHERE name = 'search' AND slug LIKE 'procedures/%'"


@dataclass(frozen=True, slots=True)
class Published:
    """What can be found of a procedure."""

    sum: str
    """Another one where it changed."""
    title: str
    around: str
    rows: Sequence[Sequence[object]]
    """As `publish.search.items.Row` has them."""


def searched_procedures(shop: Path) -> dict[str, Published]:
    """By the name of the place that has them; nothing where the shop was not published, or its store is no store."""
    if not (shop / STORE).is_file():
        return {}
    try:
        with closing(sqlite3.connect(f"{(shop / STORE).resolve().as_uri()}?mode=ro", uri=True)) as connection:
            return {slug: _published(total, data) for slug, total, data in connection.execute(_ASKED)}
    except (sqlite3.Error, ValueError, KeyError, TypeError):
        return {}


def _published(total: str, data: bytes) -> Published:
    kept = orjson.loads(data)
    return Published(total, kept["title"], kept["around"], kept["items"])
