"""The sentence that the model keeps in mind while it hears: measures spelled out, in the trade's own words.

Left alone, Whisper writes "eleven sixty-fourths" as 1164. A prompt in which measures stand in words makes it write
words; a list of figures does not. What the model has in mind it may also "hear" where nothing was said:
`capture.leaks` guards against that.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Sequence
from functools import cache
from importlib.resources import files
from typing import Any

PROMPT_TOKENS = 223
"""Tokens a Whisper prompt may take: half of the decoder's 448, less one (Radford et al. 2022, section 2.3)."""

PROMPT_MARGIN = 23
"""Tokens kept free, as a prime cut inside a word would teach the model half a word."""


def compose_prime(words: Sequence[str] = ()) -> str:
    """A prime for a general bench, followed by clauses in the trade's own words.

    `words` are attributes and parts as they are said ("string height", "saddle slot"), the most telling first. What is
    too long for the model is left out later, from the end, by `fit_prime`.
    """
    data = _data()
    clauses = list(data["general"])
    patterns: list[str] = data["patterns"]
    for number, word in enumerate(dict.fromkeys(word.strip() for word in words if word.strip())):
        clauses.append(patterns[number % len(patterns)].format(word))
    return _sentence(clauses)


def fit_prime(prime: str, count_tokens: Callable[[str], int], limit: int = PROMPT_TOKENS - PROMPT_MARGIN) -> str:
    """The longest run of whole clauses from the start of `prime` that takes at most `limit` tokens."""
    clauses = prime.replace("\n", " ").split(", ")
    while clauses:
        fitted = ", ".join(clauses).strip()
        if count_tokens(fitted) <= limit:
            return fitted
        clauses.pop()
    return ""


def _sentence(clauses: Sequence[str]) -> str:
    """Clauses joined by commas, the last one ended by a full stop."""
    whole = ", ".join(clause.rstrip(".") for clause in clauses) + "."
    return whole[0].upper() + whole[1:]


@cache
def _data() -> dict[str, Any]:
    return tomllib.loads(files("capture").joinpath("data/prime.toml").read_text("utf-8"))
