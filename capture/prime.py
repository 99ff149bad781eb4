"""The sentence that the model keeps in mind while it hears: measures spelled out, and the trade's own words.

Left alone, Whisper writes "eleven sixty-fourths" as 1164. A prompt in which measures stand in words makes it write
words; a list of figures does not. What the model has in mind it may also "hear" where nothing was said:
`capture.leaks` guards against that.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Collection, Sequence
from functools import cache
from importlib.resources import files

PROMPT_TOKENS = 223
"""Tokens a Whisper prompt may take: half of the decoder's 448, less one (Radford et al. 2022, section 2.3)."""

PROMPT_MARGIN = 23
"""Tokens kept free: a prompt that fills its half leaves a long window no room to be written out."""


def compose_prime(words: Sequence[str] = (), *, leave_out: Collection[str] = ()) -> str:
    """A prime for a general bench, in front of it the trade's own words.

    `words` are attributes, parts and tools as they are said ("string height", "saddle slot"), the most telling first.
    They stand in front, the most telling nearest the measures, because `fit_prime` cuts from the front: what makes the
    model spell out measures stays whole. `leave_out` names ingredients to do without, to find out what each is worth.
    """
    telling = list(dict.fromkeys(word.strip() for word in words if word.strip()))
    own = _sentence([f"the {word}" for word in reversed(telling)])
    return f"{own} {_sentence(_measures(leave_out))}".strip()


def fit_prime(prime: str, count_tokens: Callable[[str], int], limit: int = PROMPT_TOKENS - PROMPT_MARGIN) -> str:
    """The longest run of whole phrases up to the end of `prime` that takes at most `limit` tokens.

    Phrases end at commas and full stops.
    """
    phrases = prime.replace(". ", "., ").split(", ")
    for start in range(len(phrases)):
        fitted = ", ".join(phrases[start:]).replace(".,", ".").strip()
        if count_tokens(fitted) <= limit:
            return fitted[:1].upper() + fitted[1:]
    return ""


def _sentence(phrases: Sequence[str]) -> str:
    whole = ", ".join(phrases)
    return f"{whole[0].upper()}{whole[1:]}." if whole else ""


def ingredients() -> tuple[str, ...]:
    """Names of what the measures of a prime are made up of."""
    return tuple(_phrases())


def _measures(leave_out: Collection[str]) -> list[str]:
    return [phrase for name, phrases in _phrases().items() if name not in leave_out for phrase in phrases]


@cache
def _phrases() -> dict[str, list[str]]:
    data: dict[str, dict[str, list[str]]] = tomllib.loads(
        files("capture").joinpath("data/prime.toml").read_text("utf-8")
    )
    return data["measures"]
