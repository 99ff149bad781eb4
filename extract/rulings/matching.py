"""Finding again what a ruling is on, where a new hearing or a new extraction gave it another id.

The id comes first. Where the same words are said several times, their ids share a stem and are numbered; of these the
one that is nearest in time is meant. An item whose id is gone is looked for among the items of its kind that no ruling
names by id, in this order:

1. the same words within 1 s, then within 3 s, then within 15 s,
2. the same figure within 3 s,
3. words of which at least six in ten agree, or which are a part of those it had, two at least, within 3 s: a step that
   ends earlier now. Were it the other way round, a strike would take out more than the person saw.

A tool or material has its name for an id and no second, and is not looked for otherwise. Times are compared after the
shift that the items found by id have in common. The first rule that gives any item decides: it must give one alone, and
no other lost item may be led to that one. Else the ruling stays without a place, and is shown with its words. The
distances are the project's own choice: words heard again move by less than a second, and caption lines by a few.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from difflib import SequenceMatcher
from statistics import median

from extract.rulings.model import NAMED_ONCE, Item

_NEAREST, _NEAR, _FAR = 1.0, 3.0, 15.0
_ALIKE = 0.6
_FEWEST = 2
_NUMBERED = re.compile(r"^([a-z]-[0-9a-f]{8})-\d+$")
"""An id of words that were said before: `m-3f9c21ab-2`."""
_WORD = re.compile(r"[\w./'°%]+")

_Rule = Callable[[Item, Item, float], bool]
"""Whether a lost item may be a present one, so many seconds away."""


def _same_words(within: float) -> _Rule:
    return lambda lost, one, away: away <= within and _words(one.words) == _words(lost.words)


_RULES: tuple[_Rule, ...] = (
    _same_words(_NEAREST),
    _same_words(_NEAR),
    _same_words(_FAR),
    lambda lost, one, away: away <= _NEAR and bool(lost.figures) and _plain(one.figures) == _plain(lost.figures),
    lambda lost, one, away: away <= _NEAR and _is_like(_words(one.words), _words(lost.words)),
)


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
    items = {item.id: item for item in wanted}
    stems: dict[str, list[Item]] = defaultdict(list)
    for one in present.values():
        stems[_stem(one.id)].append(one)
    alone = {name: stems[_stem(name)][0] for name, item in items.items() if len(stems[_stem(name)]) == 1}
    timed = [name for name in alone if items[name].kind not in NAMED_ONCE]
    shift = median([alone[name].start - items[name].start for name in timed]) if timed else 0.0
    named = _nearest_each(
        {name: one for name, one in alone.items() if one.kind == items[name].kind}
        | {
            name: found
            for name, item in items.items()
            if name not in alone and (found := _repeated(item, stems[_stem(name)], shift)) is not None
        },
        items,
        shift,
    )
    taken = {found.id for found in named.values()}
    free = [one for one in present.values() if one.id not in taken]
    lost = [item for name, item in items.items() if name not in named]
    led = {item.id: found for item in lost if (found := _like(item, free, shift)) is not None}
    claims = Counter(found.id for found in led.values())
    sure = {name: found for name, found in led.items() if claims[found.id] == 1}
    return Places(named | sure, frozenset(sure))


def found_since(added: Item, present: Iterable[Item], beside: tuple[str, ...]) -> Item | None:
    """The item that the machine has come to find where a person had put one in: the same figure within 3 s.

    `beside` are the ids of those that stood there when the person put it in, of which it is none.
    """
    same = [
        one
        for one in present
        if one.kind == added.kind
        and abs(one.start - added.start) <= _NEAR
        and added.figures
        and _plain(one.figures) == _plain(added.figures)
        and one.id not in beside
    ]
    return same[0] if len(same) == 1 else None


def _stem(item_id: str) -> str:
    """An id without the number of a repetition."""
    numbered = _NUMBERED.match(item_id)
    return numbered[1] if numbered else item_id


def _repeated(item: Item, same: list[Item], shift: float) -> Item | None:
    """Of words said several times, those meant: the only ones near, else those of the very id where none are near."""
    near = [one for one in same if _away(item, one, shift) <= _NEAR]
    if near:
        return near[0] if len(near) == 1 else next((one for one in near if one.id == item.id), None)
    return next((one for one in same if one.id == item.id), None)


def _nearest_each(found: dict[str, Item], items: dict[str, Item], shift: float) -> dict[str, Item]:
    """Each present item for the nearest wanted one alone, where of several with one stem fewer are left."""
    best: dict[str, str] = {}
    for name, one in found.items():
        rival = best.get(one.id)
        if rival is None or _away(items[name], one, shift) < _away(items[rival], one, shift):
            best[one.id] = name
    return {name: found[name] for name in best.values()}


def _like(item: Item, free: list[Item], shift: float) -> Item | None:
    if item.kind in NAMED_ONCE:
        return None
    kin = [(one, _away(item, one, shift)) for one in free if one.kind == item.kind]
    for rule in _RULES:
        found = [one for one, away in kin if rule(item, one, away)]
        if found:
            return found[0] if len(found) == 1 else None
    return None


def _away(item: Item, one: Item, shift: float) -> float:
    return abs(one.start - shift - item.start)


def _is_like(words: list[str], said: list[str]) -> bool:
    length = len(words)
    is_part = length >= _FEWEST and any(said[at : at + length] == words for at in range(len(said) - length + 1))
    return is_part or SequenceMatcher(None, words, said).ratio() >= _ALIKE


def _words(text: str) -> list[str]:
    return [word.strip("./'") for word in _WORD.findall(text.casefold())]


def _plain(figures: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(" ".join(figure.split()) for figure in figures)
