"""One quantity in its place, and what earlier quantities were found to measure."""

from __future__ import annotations

from dataclasses import dataclass, field

from extract.measures.lexicon import Found
from extract.measures.scene import Scene, Thing
from extract.spans import Phase, Quantity


@dataclass(slots=True)
class Finding:
    """What was found of a quantity so far; each rule table fills in its own field."""

    figure: Figure
    attribute: str | None = None
    attribute_rule: str = ""
    noun: Found | None = None
    """The noun of measure that gave the attribute, where one did."""
    word: Found | None = None
    """The noun or adjective behind the figure that gave the attribute."""
    item: str | None = None
    item_head: str = ""
    item_role: str = ""
    item_at: int = -1
    """Token at which the item is named."""
    item_rule: str = ""
    where: str | None = None
    phase: Phase = "as_found"
    phase_rule: str = ""
    restates: Finding | None = None
    """The earlier figure that this one says again in another unit."""
    follows: Finding | None = None
    """The figure before, where this one only goes on with it: "5 at the nut and 7 at the twelfth"."""


@dataclass(slots=True)
class Figure:
    """A quantity between its neighbours."""

    scene: Scene
    index: int
    quantity: Quantity
    earlier: list[Finding] = field(default_factory=list)
    """Findings of all quantities before this one, in order."""

    @property
    def start(self) -> int:
        """First token."""
        return self.quantity.start

    @property
    def end(self) -> int:
        """Token behind the last."""
        return self.quantity.end

    @property
    def kind(self) -> str | None:
        """Kind of its unit."""
        return self.quantity.unit.kind if self.quantity.unit else None

    @property
    def previous(self) -> Finding | None:
        """The quantity before, where there is one."""
        return self.earlier[-1] if self.earlier else None

    @property
    def sentence(self) -> tuple[int, int]:
        """Tokens of its sentence."""
        return self.scene.sentence_start[self.start], self.scene.sentence_end[self.end - 1]

    @property
    def left(self) -> tuple[int, int]:
        """Tokens of its clause before it, back to the quantity before."""
        start = self.scene.clause_start[self.start]
        if self.previous:
            start = max(start, self.previous.figure.end)
        return start, self.start

    @property
    def right(self) -> tuple[int, int]:
        """Tokens of its clause behind it, up to the next quantity."""
        end = self.scene.clause_end[self.end - 1]
        following = self.scene.quantities[self.index + 1 : self.index + 2]
        return self.end, min(end, following[0].start) if following else end

    def gap(self) -> tuple[str, ...]:
        """Words between the quantity before and this one, without marks."""
        return self.scene.text(self.previous.figure.end, self.start) if self.previous else ()

    def earlier_start(self, back: int) -> int:
        """Start of the quantity `back` places before this one; 0 is this one."""
        return self.scene.quantities[self.index - back].start

    def things_left(self) -> list[Thing]:
        """Things of the clause before it, the nearest first."""
        return self.scene.things_in(*self.left)[::-1]
