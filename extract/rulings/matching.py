"""Finding again what a ruling is on, where a new hearing or a new extraction gave it another id.

The id comes first. An item whose id is gone is looked for among the items that no ruling names by id, in this order:

1. the same words within 15 s,
2. the same figure within 3 s,
3. words of which at least six in ten agree, within 3 s,

each of the same kind, with times compared after the shift that the items found by id have in common. The first rule
that gives any item decides, where it gives one alone and no other lost item is led to that one. Else the ruling stays
without a place, and is shown with its words. The distances are the project's own choice: words heard again move by less
than a second, and caption lines by a few.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from difflib import SequenceMatcher
from statistics import median

from extract.rulings.model import Item

_FAR, _NEAR = 15.0, 3.0
_ALIKE = 0.6
_NUMBERED = re.compile(r"-\d+$")
_WORD = re.compile(r"[\w./'°%]+")


@dataclass(frozen=True, slots=True)
class Places:
    """Where the items that rulings are on stand now."""

    now: dict[str, Item]
    """The present item by the id that the ruling knows."""
    moved: frozenset[str]
    """Ids, as the rulings know them, of items that were found again by words and time."""

    def of(self, item: Item) -> Item | None:
        """The present item; null where it is gone or nothing is certain."""
        return self.now.get(item.id)


def find_places(wanted: Iterable[Item], present: dict[str, Item]) -> Places:
    """Each wanted item among the present ones. The last way in which an item was described is the one looked for."""
    by_id = {item.id: item for item in wanted}
    now = {name: found for name, item in by_id.items() if (found := _same_id(item, present)) is not None}
    lost = [item for name, item in by_id.items() if name not in now]
    shift = median([now[name].start - by_id[name].start for name in now]) if now else 0.0
    taken = {found.id for found in now.values()}
    free = [item for item in present.values() if item.id not in taken]
    led = {item.id: found for item in lost if (found := _like(item, free, shift)) is not None}
    claims = Counter(found.id for found in led.values())
    sure = {name: found for name, found in led.items() if claims[found.id] == 1}
    return Places(now | sure, frozenset(sure))


def _same_id(item: Item, present: dict[str, Item]) -> Item | None:
    """The item with the id. The same words said several times share its stem, and the nearest in time is meant."""
    stem = _stem(item.id)
    same = [one for one in present.values() if one.kind == item.kind and _stem(one.id) == stem]
    if len(same) < 2:
        return same[0] if same else None
    near = [one for one in same if abs(one.start - item.start) <= _NEAR]
    if len(near) == 1:
        return near[0]
    return next((one for one in same if one.id == item.id), None) if not near else None


def _stem(item_id: str) -> str:
    """An id without the number of a repetition: "m-3f9c21ab" of "m-3f9c21ab-2"."""
    return _NUMBERED.sub("", item_id) if item_id.count("-") == 2 and "-by-" not in item_id else item_id


def _like(item: Item, free: list[Item], shift: float) -> Item | None:
    said = _words(item.words)

    def away(one: Item) -> float:
        return abs(one.start - shift - item.start)

    rules: tuple[Callable[[Item], bool], ...] = (
        lambda one: away(one) <= _FAR and _words(one.words) == said,
        lambda one: away(one) <= _NEAR and bool(item.figures) and one.figures == item.figures,
        lambda one: away(one) <= _NEAR and SequenceMatcher(None, _words(one.words), said).ratio() >= _ALIKE,
    )
    kin = [one for one in free if one.kind == item.kind]
    for rule in rules:
        found = [one for one in kin if rule(one)]
        if found:
            return found[0] if len(found) == 1 else None
    return None


def _words(text: str) -> list[str]:
    return _WORD.findall(text.casefold())
