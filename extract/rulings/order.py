"""Where what a person adds stands among what the machine has."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol, TypeVar


class _Timed(Protocol):
    @property
    def start(self) -> float: ...


_One = TypeVar("_One", bound=_Timed)


def put_in(machine: Iterable[_One], more: Iterable[_One]) -> tuple[_One, ...]:
    """Each added item before the first that is said later; the machine's own order stays."""
    listed = list(machine)
    for one in more:
        at = next((at for at, other in enumerate(listed) if other.start > one.start), len(listed))
        listed.insert(at, one)
    return tuple(listed)
