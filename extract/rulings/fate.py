"""What a row of rulings on one item comes to: the last verdict, and what was amended since the last stet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Literal

from extract.record import Because, Later
from extract.rulings.model import Amend, Changes, OnItem, Retract, Stet, Strike


@dataclass(frozen=True, slots=True)
class Fate:
    """An item's verdict."""

    verdict: Literal["stet", "amend", "strike"]
    ruling: str
    """Id of the ruling that gave the verdict."""
    to: Changes = field(default_factory=Changes)
    """All that was amended, the last word on each field."""
    because: Because | None = None
    overrule: bool = False
    """The person means a unit that does not fit what is measured."""
    later: Later | None = None
    """The later session that put it right, where that had the last word."""


def fates_of(rulings: Iterable[OnItem]) -> dict[str, Fate]:
    """The fate of each item that has one, by item id."""
    fates: dict[str, Fate] = {}
    for one in rulings:
        before = fates.get(one.on.id)
        if isinstance(one, Stet):
            fates[one.on.id] = Fate("stet", one.id)
        elif isinstance(one, Strike):
            # What was amended is kept: who amends the struck item again has it back as it was.
            fates[one.on.id] = replace(before or Fate("strike", one.id), verdict="strike", ruling=one.id)
        elif isinstance(one, Retract):
            # Whoever says what a correction takes back has accepted it, with whatever was amended of it.
            before = fates.get(one.on.id)
            fates[one.on.id] = before if before and before.verdict == "amend" else Fate("stet", one.id)
        elif isinstance(one, Amend):
            fates[one.on.id] = _amended(before or Fate("amend", one.id), one)
    return fates


def _amended(before: Fate, one: Amend) -> Fate:
    changed = {name: getattr(one.to, name) for name in one.to.named}
    return Fate(
        "amend",
        one.id,
        before.to.model_copy(update=changed),
        one.because or before.because,
        one.overrule or before.overrule,
        one.later if one.to.figure or one.to.text else before.later,
    )
