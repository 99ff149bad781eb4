"""Finds what was said, measured or done in all sessions of a shop; knows units: 3/32 in finds 2.4 mm.

The engine is SQLite's full-text search (FTS5, stemmed by Porter's rule); the index lies in the shop, is brought up to
date before each search, and can be thrown away at any time.
"""

from publish.find.index import Index
from publish.find.query import Query, read_query
from publish.find.search import Hit, search

__all__ = ["Hit", "Index", "Query", "read_query", "search"]
