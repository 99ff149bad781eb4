"""Taking a ruling back: which rulings hold, and which one may be taken back now."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence, Set
from typing import Literal, Protocol, TypeVar

from extract.rulings import RulingError
from extract.rulings.model import GivenLine


class TakeBack(GivenLine):
    """Take a ruling back."""

    act: Literal["undo"] = "undo"
    ruling: str
    """Its id."""


class Acting(Protocol):
    """A ruling that does something."""

    @property
    def id(self) -> str:
        """Its own."""

    @property
    def act(self) -> str:
        """What it does, in a word."""


Line = TypeVar("Line", bound=GivenLine)
Act = TypeVar("Act", bound=Acting)


def not_taken_back(rulings: Iterable[Line]) -> tuple[Line, ...]:
    """The rulings that hold, in the order in which they were given; undoing what the log lacks does nothing."""
    given: dict[str, Line] = {}
    for one in rulings:
        if isinstance(one, TakeBack):
            given.pop(one.ruling, None)
        else:
            given[one.id] = one
    return tuple(given.values())


def to_take_back(holding: Sequence[Act], wanted: str | None, touched: Callable[[Act], Set[object]]) -> Act:
    """The ruling that is meant, the last one where none is named. Raises `RulingError`.

    One that a later ruling builds on (`touched` gives what each is on) has to wait for that, so that undoing always
    gives back what was. `holding` must hold one at least.
    """
    at = len(holding) - 1 if wanted is None else _place(holding, wanted)
    own = touched(holding[at])
    later = next((one for one in reversed(holding[at + 1 :]) if not own.isdisjoint(touched(one))), None)
    if later is not None:
        raise RulingError(f"the {later.act} {later.id} builds on it", f"undo {later.id} first")
    return holding[at]


def _place(holding: Sequence[Acting], wanted: str) -> int:
    hits = [at for at, one in enumerate(holding) if one.id.startswith(wanted)]
    if len(hits) != 1:
        known = ", ".join(f"{one.id} ({one.act})" for one in holding)
        raise RulingError(f"no one ruling in force is called {wanted!r}", f"name one of: {known}")
    return hits[0]
