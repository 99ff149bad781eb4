"""Which earlier sessions a session's retractions may mean, looked through again only where one of them has changed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from typing import Any

import orjson

from publish.presswork.stance import Stance
from publish.presswork.store import Store
from publish.presswork.sums import sum_of

_MEANT = "meant"


@dataclass(frozen=True, slots=True)
class Head:
    """What is always at hand of a stance."""

    sum: str
    """Over the files that the stance is made from."""
    day: tuple[str, str]
    subject: str
    claims: bool
    """It takes something back of an earlier session."""


def head_in(kept: dict[str, Any]) -> Head:
    """A head that was kept."""
    first, second = kept["day"]
    return Head(kept["sum"], (first, second), kept["subject"], kept["claims"])


class Sieve:
    """The sieve of one edition; `changed` are sessions whose stance is another one than the last time."""

    def __init__(
        self, store: Store, heads: Mapping[str, Head], changed: Set[str], stance: Callable[[str], Stance]
    ) -> None:
        self._store = store
        self._heads = heads
        self._changed = changed
        self._stance = stance
        self._known = store.memos(_MEANT)
        self._asked: set[str] = set()
        self._fresh: dict[str, tuple[str, bytes]] = {}

    def meant(self, slug: str, stance: Stance, before: Sequence[str]) -> tuple[str, ...]:
        """The earlier sessions that the retractions of a session with this stance have to do with, oldest first."""
        self._asked.add(slug)
        may = self._may_mean(slug, stance, before)
        return tuple(
            one
            for one in before
            if one in may or one in stance.named or (stance.subject and self._heads[one].subject == stance.subject)
        )

    def close(self) -> None:
        """Keep what was found, and forget what is asked for no more."""
        self._store.put_memos(_MEANT, self._fresh, self._known.keys() - self._asked)

    def _may_mean(self, slug: str, stance: Stance, before: Sequence[str]) -> set[str]:
        """Which of these sessions it may mean by words and figures."""
        total = sum_of(orjson.dumps(stance.to_json()))
        known_sum, known = self._known.get(slug, ("", []))
        # Two stances that have not changed stand to one another in time as they stood.
        kept = set(known) - self._changed if known_sum == total else set()
        looked_at: Iterable[str] = (one for one in before if one in self._changed) if known_sum == total else before
        may = kept.intersection(before) | {one for one in looked_at if stance.may_mean(self._stance(one))}
        listed = sorted(may)
        if known_sum != total or listed != known:
            self._fresh[slug] = (total, orjson.dumps(listed))
        return may
