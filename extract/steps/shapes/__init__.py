"""The ways in which a step is said, in the order in which they are tried; the first that fits a piece reads it."""

from __future__ import annotations

from collections.abc import Callable

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.steps.candidate import Candidate
from extract.steps.shapes.advice import advice
from extract.steps.shapes.bare import bare_participle
from extract.steps.shapes.command import command
from extract.steps.shapes.dosed import dosed
from extract.steps.shapes.figured import figured
from extract.steps.shapes.found import found
from extract.steps.shapes.framed import framed
from extract.steps.shapes.goes import goes
from extract.steps.shapes.instrument import instrument
from extract.steps.shapes.inverted import inverted
from extract.steps.shapes.laid_to import laid_to
from extract.steps.shapes.mixed import mixed
from extract.steps.shapes.named import named
from extract.steps.shapes.nominal import nominal
from extract.steps.shapes.own_hand import own_hand
from extract.steps.shapes.passive import passive
from extract.steps.shapes.placed import placed
from extract.steps.shapes.put import put
from extract.steps.shapes.reading import reading
from extract.steps.shapes.receives import receives
from extract.steps.shapes.renewed import renewed
from extract.steps.shapes.returned import returned
from extract.steps.shapes.shown import shown
from extract.steps.shapes.state import state
from extract.steps.shapes.stray import stray
from extract.steps.shapes.wanted import wanted
from extract.steps.shapes.with_tool import with_tool
from extract.steps.shapes.worked import worked

Shape = Callable[[Bench, Piece], Candidate | None]

SHAPES: tuple[tuple[str, Shape], ...] = (
    ("framed", framed),
    ("mixed", mixed),
    ("reading", reading),
    ("found", found),
    ("wanted", wanted),
    ("instrument", instrument),
    ("own hand", own_hand),
    ("advice", advice),
    ("command", command),
    ("inverted", inverted),
    ("bare participle", bare_participle),
    ("passive", passive),
    ("receives", receives),
    ("state", state),
    ("goes", goes),
    ("shown", shown),
    ("returned", returned),
    ("laid to", laid_to),
    ("figured", figured),
    ("put", put),
    ("with tool", with_tool),
    ("dosed", dosed),
    ("renewed", renewed),
    ("nominal", nominal),
    ("worked", worked),
)

LOOSE: tuple[tuple[str, Shape], ...] = (
    ("stray", stray),
    ("placed", placed),
    ("named", named),
)
"""Tried where none of the others fits. They are wrong as often as right: what stands around must speak for them."""
