"""The bench card: the procedure on one sheet, as its template is given it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from publish.context.figures import Link
from publish.context.parts import Hazard, Proof

Size = Literal["roomy", "close", "tight", "fine"]


@dataclass(frozen=True, slots=True)
class Setting:
    """How a card is set."""

    size: Size
    """Size of type, the largest that fits one sheet, else the finest."""
    beside: bool
    """What to lay out, cautions and figures stand beside the steps, else above them."""
    one_sheet: bool
    """It fits one sheet of A4 and of Letter."""


@dataclass(frozen=True, slots=True)
class CardFigure:
    """A figure to work to."""

    what: str
    """What is measured, of what and where."""
    text: str
    """The figure, with the other units behind it."""
    query: bool
    """It waits to be settled or checked: not to be relied on."""
    note: str
    """That the machine took it from a later session and no person has confirmed that; else empty."""


@dataclass(frozen=True, slots=True)
class CardStep:
    """A numbered step with a box to tick."""

    number: int
    """From 1."""
    text: str
    """The instruction, a sentence."""
    mode: str
    """Empty, or that it was planned or advised rather than done."""
    figures: tuple[CardFigure, ...]
    """Its figures, as they hold now."""


@dataclass(frozen=True, slots=True)
class Wait:
    """A time to wait: for glue, finish, heat or soaking."""

    step: int
    """Number of its step."""
    what: str
    """What is waited for: `clamp time`."""
    time: str
    """How long: `2 h`."""


@dataclass(frozen=True, slots=True)
class Card:
    """Everything on a bench card."""

    title: str
    """Title of the procedure."""
    subject: str
    """What it was done on; may be empty."""
    source: str
    """Where it comes from: session and date, a phrase."""
    author: str
    """Who did the work; may be empty."""
    licence: str
    """Licence of the notes; may be empty."""
    assets: str
    """Address of the shared assets' folder, with a slash behind."""
    address: str | None
    """The card's full address on the web; null where the shop has none."""
    session: Link
    """The session's page."""
    proof: Proof
    """How far a person has proofed it."""
    standing_caution: str
    """Stands on every card."""
    cautions: tuple[Hazard, ...]
    """Every caution of the session."""
    tools: tuple[str, ...]
    """To lay out first."""
    materials: tuple[str, ...]
    """To lay out first."""
    figures: tuple[CardFigure, ...]
    """What to work to: aims, then figures as left."""
    waits: tuple[Wait, ...]
    """The times to wait, in order of work."""
    steps: tuple[CardStep, ...]
    """The procedure."""
