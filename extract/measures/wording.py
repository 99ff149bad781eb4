"""Words in their plainest form: pieces of a phrase, and the singular of a noun."""

from __future__ import annotations

import re
from functools import lru_cache

_CLITIC = re.compile(r"(n't|'(?:s|re|ve|ll|d|m))(?=\s|$)")
_IRREGULAR = {
    "feet": "foot",
    "teeth": "tooth",
    "leaves": "leaf",
    "knives": "knife",
    "halves": "half",
    "shelves": "shelf",
    "wolves": "wolf",
    "men": "man",
    "women": "woman",
    "people": "people",
    "axes": "axe",
    "dies": "die",
    "glasses": "glass",
}
_SAME = frozenset(
    {
        "bellows",
        "series",
        "brass",
        "gas",
        "lens",
        "works",
        "pliers",
        "scissors",
        "canvas",
        "bus",
        "chassis",
        "always",
        "perhaps",
    }
)


def pieces(phrase: str) -> tuple[str, ...]:
    """A phrase cut as the tokeniser cuts speech: "that's it" gives that, 's, it."""
    return tuple(_CLITIC.sub(r" \1", phrase).split())


@lru_cache(maxsize=8192)
def singular(word: str) -> str:
    """The singular of a lower-case noun: "balls" gives ball; "brass" and "bellows" stay.

    Only the endings that are regular in English are cut; it must never lengthen or invent a word.
    """
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word in _SAME or len(word) < 4 or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("sses", "xes", "ches", "shes", "zes")):
        return word[:-2]
    return word[:-1]
