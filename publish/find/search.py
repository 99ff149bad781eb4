"""Searches the index: every word must be found, and every figure met; figures and steps go before bare talk."""

from __future__ import annotations

from dataclasses import dataclass

from publish.addresses import address
from publish.find.index import Index
from publish.find.query import Query, Wanted

_MOST = 50
_FIGURE = {
    "at": "item.low <= ? AND item.high >= ?",
    "above": "item.high > ?",
    "below": "item.low < ?",
}


@dataclass(frozen=True, slots=True)
class Hit:
    """One thing found."""

    session: str
    """Folder of its session; of a procedure over all sessions, its page without the ending."""
    title: str
    date: str
    sort: str
    start: float | None
    """Second in its recording; null of a procedure over all sessions."""
    told: str
    href: str
    """Its place on the site, from the front page's folder."""


def search(index: Index, query: Query, most: int = _MOST) -> tuple[Hit, ...]:
    """What meets a question, the best first; the newest session first among equals."""
    where: list[str] = []
    values: list[object] = []
    if query.words:
        where.append("words MATCH ?")
        values.append(" AND ".join(_quoted(word) for word in query.words))
    for figure in query.figures:
        condition, more = _met(figure)
        where.append(condition)
        values.extend(more)
    rank = "bm25(words, 4.0, 1.0)" if query.words else "NULL"
    found = index.connection.execute(
        f"""SELECT session.slug, session.title, session.date, item.sort, item.start, item.told, item.anchor
        FROM words JOIN item ON item.id = words.rowid JOIN session USING (slug)
        WHERE {" AND ".join(where)}
        ORDER BY item.sort = 'said', item.start IS NOT NULL, {rank}, session.date DESC, item.start LIMIT ?""",  # noqa: S608 (fixed pieces)
        (*values, most),
    )
    return tuple(
        Hit(slug, title, date, sort, start, told, f"{_page(slug)}#{anchor}")
        for slug, title, date, sort, start, told, anchor in found
    )


def _page(slug: str) -> str:
    folder, _, name = slug.rpartition("/")
    return f"{address(folder, name)}.html" if folder else f"{address('sessions', slug)}/index.html"


def _quoted(word: str) -> str:
    """A word as FTS5 takes it for a word, whatever it holds; it may go on where it is a beginning."""
    return '"' + word.replace('"', '""') + '" *'


def _met(figure: Wanted) -> tuple[str, list[object]]:
    span = figure.span
    edges: dict[str, list[object]] = {"at": [span.high, span.low], "above": [span.high], "below": [span.low]}
    return f"item.kind = ? AND {_FIGURE[figure.bound]}", [span.kind, *edges[figure.bound]]
