"""Words that come from the prime and not from the sound.

On noise, Whisper may give back the sentence it was primed with, and a measure in the notes would then have been said by
nobody. So a stretch that repeats the prime is heard again without it, and stays only where that second hearing, which
can't know the prime, heard the same words and the same figures there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher

from capture.figures import digits_of, digits_said, parts_of
from capture.words import Hearing, Piece

RUN = 5
"""Consecutive words shared with the prime from which a stretch is always suspected."""

UNSURE = 0.5
"""A figure of the prime, however short, is suspected where its words are less probable than this on the mean."""

AGREEMENT = 0.6
"""Share of a suspected stretch's words, figures left out, that the hearing without the prime must have as well."""

NO_SPEECH = 0.4
"""Probability of no speech from which figures are suspected; clear speech has 0.05 at most."""

STRANGERS = 0.2
"""Share of common words below which two hearings are strangers."""


@dataclass(frozen=True, slots=True)
class Prime:
    """The prime, with its words taken apart once."""

    text: str

    parts: tuple[str, ...]
    """Its words, lower case, hyphens taken apart."""

    @classmethod
    def of(cls, text: str) -> Prime:
        """The prime that reads `text`; an empty one leaks nothing."""
        return cls(text, tuple(parts_of(text)))


@dataclass(frozen=True, slots=True)
class Leak:
    """Words `start` to `end` (exclusive) of a hearing that stand in the prime as well."""

    start: int
    end: int


def leaks(hearing: Hearing, prime: Prime) -> list[Leak]:
    """Stretches that may come from the prime.

    Takes "the action is five sixty-fourths" where the prime has it, an unsure "four thousandths", and any figure where
    the model says that nothing was said; lets a sure "four thousandths" pass.
    """
    words = hearing.words
    parts = [(part, number) for number, word in enumerate(words) for part in parts_of(word.text)]
    if hearing.no_speech > NO_SPEECH and any(digits_of(part) is not None for part, _ in parts):
        return [Leak(0, len(words))]
    found: list[Leak] = []
    at = 0
    while at < len(parts):
        length = _shared([part for part, _ in parts[at:]], prime.parts)
        if length:
            leak = Leak(parts[at][1], parts[at + length - 1][1] + 1)
            if _suspect(words[leak.start : leak.end], [part for part, _ in parts[at : at + length]]):
                found.append(leak)
        at += max(length, 1)
    return found


def settle(primed: Hearing, unprimed: Hearing, prime: Prime) -> Hearing:
    """The first hearing; a suspected stretch that the second one doesn't bear out is given as that one has it.

    Nothing is left of a window where the two have nothing in common and either says that nothing was said.
    """
    found = leaks(primed, prime)
    if not found:
        return primed
    if (
        max(primed.no_speech, unprimed.no_speech) > NO_SPEECH
        and _shared_words(primed.words, unprimed.words) < STRANGERS
    ):
        return replace(unprimed, words=())
    words = list(primed.words)
    for leak in reversed(found):
        begin = words[leak.start - 1].end if leak.start else float("-inf")
        end = words[leak.end].start if leak.end < len(words) else float("inf")
        beside = [word for word in unprimed.words if begin <= (word.start + word.end) / 2 <= end]
        if not _agree(words[leak.start : leak.end], beside):
            words[leak.start : leak.end] = beside
    return replace(primed, words=tuple(words))


def _agree(suspected: Sequence[Piece], beside: Sequence[Piece]) -> bool:
    """True where the same figures were heard, and most of the other words."""
    first, second = _text(suspected), _text(beside)
    if digits_said(first) != digits_said(second):
        return False
    others = [part for part in parts_of(first) if digits_of(part) is None]
    return not others or _shared_words(suspected, beside) >= AGREEMENT


def _shared_words(first: Sequence[Piece], second: Sequence[Piece]) -> float:
    """Share of the words in `first`, figures left out, that `second` has in the same order; 0 where there are none."""
    left, right = ([part for part in parts_of(_text(words)) if digits_of(part) is None] for words in (first, second))
    blocks = SequenceMatcher(None, left, right, autojunk=False).get_matching_blocks()
    return sum(block.size for block in blocks) / len(left) if left else 0.0


def _text(words: Sequence[Piece]) -> str:
    return " ".join(word.text for word in words)


def _suspect(words: Sequence[Piece], shared: Sequence[str]) -> bool:
    if len(shared) >= RUN:
        return True
    if len(shared) < 2 or all(digits_of(part) is None for part in shared):
        return False
    return sum(word.probability for word in words) < UNSURE * len(words)


def _shared(parts: Sequence[str], prime: Sequence[str]) -> int:
    """Length of the longest run at the head of `parts` that stands somewhere in the prime."""
    longest = 0
    for at in range(len(prime)):
        length = 0
        while at + length < len(prime) and length < len(parts) and parts[length] == prime[at + length]:
            length += 1
        longest = max(longest, length)
    return longest
