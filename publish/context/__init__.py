"""What the templates are given: frozen facts, every field documented.

Text is plain text, and the template escapes it. The only ready-made markup is the author's note, which was sanitised,
and the linked data, whose angle brackets are written as escapes.
"""

from publish.context.figures import Amended, Figure, Flag, Link, Pair, Retraction, Row, RowGroup
from publish.context.pages import Entry, FrontPage, SessionPage
from publish.context.parts import (
    Erratum,
    Hazard,
    Making,
    Named,
    Player,
    Proof,
    Query,
    Remark,
    Run,
    Spoken,
    Stage,
    Summary,
)
from publish.context.timeline import Mark, Tick, Timeline

__all__ = [
    "Amended",
    "Entry",
    "Erratum",
    "Figure",
    "Flag",
    "FrontPage",
    "Hazard",
    "Link",
    "Making",
    "Mark",
    "Named",
    "Pair",
    "Player",
    "Proof",
    "Query",
    "Remark",
    "Retraction",
    "Row",
    "RowGroup",
    "Run",
    "SessionPage",
    "Spoken",
    "Stage",
    "Summary",
    "Tick",
    "Timeline",
]
