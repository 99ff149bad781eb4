"""Stems of words, by the very tokeniser that `spokeshave find` searches with, so that both know the same words."""

from __future__ import annotations

import sqlite3
from functools import cache

from publish.find.index import TOKENIZER


def stems_in(text: str) -> set[str]:
    """The stem of every word in a text."""
    connection = _tokeniser()
    connection.execute("DELETE FROM words")
    connection.execute("INSERT INTO words VALUES (?)", (text,))
    return {stem for (stem,) in connection.execute("SELECT term FROM vocabulary")}


@cache
def _tokeniser() -> sqlite3.Connection:
    # One publish at a time asks, whichever thread it runs in.
    connection = sqlite3.connect(":memory:", check_same_thread=False)
    connection.execute(f"CREATE VIRTUAL TABLE words USING fts5 (text, tokenize = '{TOKENIZER}')")
    connection.execute("CREATE VIRTUAL TABLE vocabulary USING fts5vocab (words, row)")
    return connection
