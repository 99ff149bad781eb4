"""The index over all sessions, in small files: which sessions hold a word's stem, and which a figure near a mark.

Sessions go by their number in the order of the site. A list of them is written as the steps from one to the next.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from operator import sub

Shards = dict[str, dict[str, list[int]]]
"""Lists of sessions by stem or mark, by the shard that holds them."""
_PLAIN = frozenset("abcdefghijklmnopqrstuvwxyz0123456789")
_LETTERS = 2


def shards_of(sessions: Iterable[tuple[Sequence[str], Sequence[Sequence[str]]]]) -> Shards:
    """The shards over terms and marks of sessions, oldest first."""
    words: defaultdict[str, list[int]] = defaultdict(list)
    figures: defaultdict[tuple[str, str], list[int]] = defaultdict(list)
    for number, (terms, marks) in enumerate(sessions):
        for term in terms:
            words[term].append(number)
        for kind, mark in marks:
            figures[kind, mark].append(number)
    lists = [("t-" + shard(term), term, numbers) for term, numbers in words.items()]
    lists += [("f-" + shard(kind, len(kind)), mark, numbers) for (kind, mark), numbers in figures.items()]
    shards: Shards = {}
    for name, key, numbers in sorted(lists, key=lambda one: one[:2]):
        shards.setdefault(name, {})[key] = [numbers[0], *map(sub, numbers[1:], numbers)]
    return shards


def shard(term: str, letters: int | None = None) -> str:
    """Where a term lies: its first letters (of a number, its first figure), as they can stand in any file's name."""
    if letters is None:
        letters = 1 if term[:1].isdigit() else _LETTERS
    return "".join(letter if letter in _PLAIN else "_" for letter in term[:letters])
