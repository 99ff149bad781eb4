"""A narration as clauses and noun phrases: what steps and remarks are read from."""

from extract.clauses.bench import Bench, Verb
from extract.clauses.cleaning import cleaned
from extract.clauses.history import told_history
from extract.clauses.pieces import Piece, pieces_of
from extract.clauses.things import Thing, is_plural, is_workable, kind_of, name_of, thing_at
from extract.clauses.topics import Topics

__all__ = [
    "Bench",
    "Piece",
    "Thing",
    "Topics",
    "Verb",
    "cleaned",
    "is_plural",
    "is_workable",
    "kind_of",
    "name_of",
    "pieces_of",
    "thing_at",
    "told_history",
]
