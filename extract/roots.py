"""Words without their endings, so that "the saddle's", "saddles" and "saddle" are one.

Takes plurals in -s; leaves "glass" and "gas" alone. Common usage; no source.
"""

from __future__ import annotations

from functools import lru_cache

_WORDS = 1 << 15
"""Words kept with their roots: more than a year of talk has, and bounded."""


@lru_cache(maxsize=_WORDS)
def root(word: str) -> str:
    """A word without "'s" and the ending of its plural."""
    return stem(word.removesuffix("'s"))


@lru_cache(maxsize=_WORDS)
def stem(word: str) -> str:
    """A word without the ending of its plural."""
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word
