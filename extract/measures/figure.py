"""One quantity in its place, and what was found of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from extract.measures.lexicon import Found
from extract.measures.scene import Scene
from extract.measures.things import Thing
from extract.record import Phase
from extract.spans import Quantity


@dataclass(slots=True)
class Finding:
    """What was found of a quantity so far; each table of rules fills in its own fields."""

    figure: Figure
    attribute: str | None = None
    attribute_rule: str = ""
    noun: Found | None = None
    """The noun of measure that gave the attribute, where one did."""
    word: Found | None = None
    """The noun or adjective behind the figure that gave the attribute."""
    item: Thing | None = None
    item_rule: str = ""
    where: str | None = None
    phase: Phase = "as_found"
    restates: Finding | None = None
    """The earlier figure that this one says again in another unit."""
    follows: Finding | None = None
    """The figure before, where this one only goes on with it: "5 at the nut and 7 at the twelfth"."""

    @property
    def head(self) -> str:
        """Main noun of the item, empty where there is none."""
        return self.item.head if self.item else ""


class Figure:
    """A quantity between its neighbours. `start` and `end` count tokens."""

    def __init__(self, scene: Scene, index: int, findings: list[Finding]) -> None:
        self.scene = scene
        self.index = index
        self.quantity: Quantity = scene.quantities[index]
        self.start = self.quantity.start
        self.end = self.quantity.end
        self.kind: str | None = self.quantity.unit.kind if self.quantity.unit else None
        self._findings = findings
        self.previous: Finding | None = findings[index - 1] if index else None
        """The quantity before, where there is one."""
        self.following: Quantity | None = scene.quantities[index + 1] if index + 1 < len(scene.quantities) else None
        self.clause = scene.clauses.start[self.start], scene.clauses.end[self.end - 1]
        self.sentence = scene.sentences.start[self.start], scene.sentences.end[self.end - 1]
        self.left = self._left()
        """Tokens of its clause before it, back to the quantity before."""
        self.right = self._right()
        """Tokens of its clause behind it, up to the next quantity."""

    @property
    def is_length(self) -> bool:
        """True for a length, and for a bare number that may be one."""
        return self.kind in ("length", None)

    def earlier(self, reach: int) -> Iterator[Finding]:
        """Findings of the quantities at most `reach` tokens before this one, the nearest first."""
        for at in range(self.index - 1, -1, -1):
            if self.start - self._findings[at].figure.end > reach:
                return
            yield self._findings[at]

    def gap(self) -> tuple[str, ...]:
        """Words between the quantity before and this one, without marks."""
        return self.scene.text(self.previous.figure.end, self.start) if self.previous else ()

    def before(self) -> tuple[str, ...]:
        """Words of the clause before it, without marks."""
        return self.scene.text(self.clause[0], self.start)

    def things_left(self) -> list[Thing]:
        """Things of the clause before it, the nearest first."""
        return self.scene.things_in(*self.left)[::-1]

    def _left(self) -> tuple[int, int]:
        start = max(self.clause[0], self.previous.figure.end) if self.previous else self.clause[0]
        return start, self.start

    def _right(self) -> tuple[int, int]:
        end = self.clause[1]
        return self.end, min(end, self.following.start) if self.following else end
