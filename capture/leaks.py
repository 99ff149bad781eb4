"""Words that come from the prime and not from the sound.

On noise, Whisper may give back the sentence it was primed with, and a measure in the notes would then have been said by
nobody. So a stretch that repeats the prime is heard again without it, and stays only where that second hearing, which
can't know the prime, heard the same words and the same figures there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from capture.figures import digits_of, digits_said, parts_of
from capture.words import Hearing, Piece

RUN = 5
"""Consecutive words shared with the prime from which a stretch is always suspected."""

UNSURE = 0.5
"""A figure of the prime, however short, is suspected where its words are less probable than this on the mean."""

AGREEMENT = 0.6
"""Share of words other than figures that the hearing without the prime must have in common."""


@dataclass(frozen=True, slots=True)
class Prime:
    """The prime, with its words taken apart once."""

    text: str

    @property
    def parts(self) -> tuple[str, ...]:
        """Its words, lower case, hyphens taken apart."""
        return tuple(parts_of(self.text))


@dataclass(frozen=True, slots=True)
class Leak:
    """Words `start` to `end` (exclusive) of a hearing that stand in the prime as well."""

    start: int
    end: int


def leaks(words: Sequence[Piece], prime: Prime) -> list[Leak]:
    """Stretches that may come from the prime.

    Takes "the action is five sixty-fourths" where the prime has it, and an unsure "four thousandths"; lets a sure "four
    thousandths" pass.
    """
    parts: list[str] = []
    owner: list[int] = []
    for number, word in enumerate(words):
        for part in parts_of(word.text):
            parts.append(part)
            owner.append(number)
    found: list[Leak] = []
    at = 0
    while at < len(parts):
        length = _shared(parts[at:], prime.parts)
        if length and _suspect(words, parts[at : at + length], owner[at], owner[at + length - 1] + 1):
            found.append(Leak(owner[at], owner[at + length - 1] + 1))
        at += max(length, 1)
    return found


def settle(primed: Hearing, unprimed: Hearing, prime: Prime) -> Hearing:
    """The first hearing where the one without the prime bears its suspected stretches out, else the second one."""
    for leak in leaks(primed.words, prime):
        suspected = primed.words[leak.start : leak.end]
        begin, end = suspected[0].start - 0.5, suspected[-1].end + 0.5
        beside = [word for word in unprimed.words if begin <= (word.start + word.end) / 2 <= end]
        if not _agree(suspected, beside):
            return unprimed
    return primed


def _agree(suspected: Sequence[Piece], beside: Sequence[Piece]) -> bool:
    said = " ".join(word.text for word in suspected)
    heard = " ".join(word.text for word in beside)
    if digits_said(said) not in digits_said(heard):
        return False
    first = [part for part in parts_of(said) if digits_of(part) is None]
    second = [part for part in parts_of(heard) if digits_of(part) is None]
    if not first:
        return True
    shared = sum(block.size for block in SequenceMatcher(None, first, second, autojunk=False).get_matching_blocks())
    return shared >= AGREEMENT * len(first)


def _suspect(words: Sequence[Piece], shared: Sequence[str], start: int, end: int) -> bool:
    if len(shared) >= RUN:
        return True
    if not any(digits_of(part) is not None for part in shared):
        return False
    return len(shared) >= 2 and sum(word.probability for word in words[start:end]) / (end - start) < UNSURE


def _shared(parts: Sequence[str], prime: Sequence[str]) -> int:
    """Length of the longest run at the head of `parts` that stands somewhere in the prime."""
    longest = 0
    for at in range(len(prime)):
        length = 0
        while at + length < len(prime) and length < len(parts) and parts[length] == prime[at + length]:
            length += 1
        longest = max(longest, length)
    return longest
