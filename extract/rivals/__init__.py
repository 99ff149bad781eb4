"""What else a figure may have been: rival readings for the second hearing (`capture.second`)."""

from __future__ import annotations

from collections.abc import Sequence

from capture.figures import digits_of, parts_of
from capture.second.rival import Doubt, Rival
from extract.rivals.confusions import Rewrite, rewrites
from extract.rivals.digits import fractions_in_digits
from extract.rivals.sense import FLAW, flaws
from extract.rivals.spelling import joined

__all__ = ["find_rivals"]

MOST = 8
"""Rivals a figure; more cost time and rarely win."""

_BEFORE, _BEHIND = 2, 2
"""Words on each side of a figure that may belong to it."""
_CONTEXT = 3
"""Further words on each side that tell whether a reading makes sense."""


def find_rivals(words: Sequence[str]) -> list[Doubt]:
    """The figures among a window's words, each with what else may have been said, the most sensible first."""
    found: list[Doubt] = []
    for start, end in _figures(words):
        stretch = words[start:end]
        parts = [part for word in stretch for part in parts_of(word)]
        before, behind = " ".join(words[max(start - _CONTEXT, 0) : start]), " ".join(words[end : end + _CONTEXT])
        heard = flaws(f"{before} {' '.join(stretch)} {behind}")
        rivals: dict[str, Rival] = {}
        for change in (*rewrites(parts), *fractions_in_digits(parts)):
            text = _rewritten(stretch, parts, change)
            sense = FLAW * (heard - flaws(f"{before} {text} {behind}"))
            if text not in rivals or rivals[text].sense < sense:
                rivals[text] = Rival(text, change.why, sense)
        if rivals:
            best = sorted(rivals.values(), key=lambda one: -one.sense)[:MOST]
            found.append(Doubt(start, end, tuple(best)))
    return found


def _figures(words: Sequence[str]) -> list[tuple[int, int]]:
    """Stretches that hold a number, with a word or two on each side."""
    spans: list[tuple[int, int]] = []
    for at, word in enumerate(words):
        parts = parts_of(word)
        if not any(digits_of(part) is not None for part in parts):
            continue
        begin, end = max(at - _BEFORE, 0), min(at + 1 + _BEHIND, len(words))
        if spans and begin <= spans[-1][1] - _BEHIND + 1:
            spans[-1] = (spans[-1][0], end)
        else:
            if spans and begin < spans[-1][1]:
                spans[-1] = (spans[-1][0], begin)
            spans.append((begin, end))
    return spans


def _rewritten(stretch: Sequence[str], parts: Sequence[str], change: Rewrite) -> str:
    """The stretch with some of its parts replaced; words that aren't touched stay as written."""
    ends = [0]
    for word in stretch:
        ends.append(ends[-1] + len(parts_of(word)))
    first = max(at for at in range(len(stretch)) if ends[at] <= change.start)
    last = min(at for at in range(len(stretch)) if ends[at + 1] >= change.end)
    middle = [*parts[ends[first] : change.start], *change.parts, *parts[change.end : ends[last + 1]]]
    written = stretch[last]
    stop = written[len(written.rstrip(".,;:?!")) :]
    return " ".join([*stretch[:first], joined(middle) + stop, *stretch[last + 1 :]])
