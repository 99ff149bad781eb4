"""The figures of one sum."""

from __future__ import annotations

from dataclasses import dataclass

from extract.checks.talk import Said


@dataclass(frozen=True, slots=True)
class Terms:
    """What is worked with, and what was said to come of it."""

    operands: tuple[Said, ...]
    result: Said
    count: int = 1
    """A small count: 3 for "three gaps"."""
    period: str = ""
    """The period of a rate: "day" for "four minutes a day"."""

    @property
    def first(self) -> Said:
        """The first operand."""
        return self.operands[0]

    @property
    def second(self) -> Said:
        """The last operand."""
        return self.operands[-1]
