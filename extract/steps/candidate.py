"""What a shape makes of a piece: a step that may yet be refused or joined to its neighbour."""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.pieces import Piece
from extract.clauses.things import Thing
from extract.record import Mode


@dataclass(frozen=True, slots=True)
class Candidate:
    """An action read from one piece."""

    piece: Piece
    start: int
    end: int
    shape: str
    """Name of the rule that read it."""
    verb: str
    """What the work is called, with its particle: "let down"."""
    said: str
    """The base form that the instruction begins with."""
    thing: Thing | None
    """What the work is done to; null where nothing is named."""
    mode: Mode
    rest: tuple[int, int]
    """Tokens behind the verb that go into the instruction as said, object included where it stands there."""
    fronted: Thing | None = None
    """The object, where it was said before the verb: "tailpiece i snug down"."""
    tool: Thing | None = None
    """The tool or material, where the verb was read from it: "glue in both faces"."""
    laid: Thing | None = None
    """A tool or material that the verb names as its object: "put a calliper on every fret"."""
    meant: Thing | None = None
    """What `thing` stands for where it is a pronoun, or the last thing named where there is none."""
    about: Thing | None = None
    """What was talked about before, where `thing` says little without it: "snip the leads"."""
    sure: bool = False
    """True where the number of noun and pronoun agree, so that the noun may stand in the instruction."""
    own_subject: bool = True
    """False where the piece carries on its neighbour's sentence: "and press the bushing in"."""
