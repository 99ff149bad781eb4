"""What the templates are given: frozen facts, every field documented.

Text is plain text, and the template escapes it. The only ready-made markup is the author's note, which was sanitised,
and the linked data, whose angle brackets are written as escapes.
"""

from publish.context.card import Card, CardFigure, CardStep, Setting, Size, Wait
from publish.context.comparisons import Comparison, OwnFigure
from publish.context.errata import ErrataPage, Notice
from publish.context.figures import Amended, Elsewhere, Figure, Flag, Link, Pair, Retraction, Row, RowGroup
from publish.context.pages import Entry, FrontPage, SessionPage, Shelf
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
    SaidFor,
    Spoken,
    Stage,
    Summary,
)
from publish.context.timeline import Frame, JobLine, Mark, Numbered, Tick, Timeline

__all__ = [
    "Amended",
    "Card",
    "CardFigure",
    "CardStep",
    "Comparison",
    "Elsewhere",
    "Entry",
    "ErrataPage",
    "Erratum",
    "Figure",
    "Flag",
    "Frame",
    "FrontPage",
    "Hazard",
    "JobLine",
    "Link",
    "Making",
    "Mark",
    "Named",
    "Notice",
    "Numbered",
    "OwnFigure",
    "Pair",
    "Player",
    "Proof",
    "Query",
    "Remark",
    "Retraction",
    "Row",
    "RowGroup",
    "Run",
    "SaidFor",
    "SessionPage",
    "Setting",
    "Shelf",
    "Size",
    "Spoken",
    "Stage",
    "Summary",
    "Tick",
    "Timeline",
    "Wait",
]
