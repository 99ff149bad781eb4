"""What else a figure may have been: rival readings for the second hearing (`capture.second`)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from capture.figures import digits_of, parts_of
from capture.second.rival import Doubt, Rival
from extract.numbers.vocabulary import vocabulary
from extract.rivals.breaths import FAVOUR, breath_at, without_breaths
from extract.rivals.breaths import WHY as BREATH
from extract.rivals.confusions import Rewrite, everywhere, rewrites
from extract.rivals.digits import fractions_in_digits
from extract.rivals.lists import lists
from extract.rivals.points import noughts
from extract.rivals.reread import worth_weighing
from extract.rivals.sense import flaws
from extract.rivals.spelling import joined
from extract.trade import Trade

__all__ = ["find_rivals"]

MOST = 6
"""Rivals a figure; more cost time and rarely win."""

LEAST_SENSE = -2.0
"""A rival that makes less sense than this beside what was heard, in nats, isn't worth the time."""

_BEFORE, _BEHIND = 2, 2
"""Words on each side of a figure that may belong to it."""
_CONTEXT = 3
"""Further words on each side that tell whether a reading makes sense."""


def find_rivals(words: Sequence[str], trade: Trade | None = None) -> list[Doubt]:
    """The figures among a window's words, each with what else may have been said, the most sensible first.

    A figure that nothing is confused with has no rivals.

    With a `trade`, a figure outside all its bands makes less sense than one inside.
    """
    return [_doubt(words, start, end, trade) for start, end in _figures(words)]


def _doubt(words: Sequence[str], start: int, end: int, trade: Trade | None) -> Doubt:
    stretch = words[start:end]
    before, behind = " ".join(words[max(start - _CONTEXT, 0) : start]), " ".join(words[end : end + _CONTEXT])
    heard = " ".join(stretch)

    def count(text: str) -> float:
        return lists().flaws["nats"] * flaws(f"{before} {text} {behind}", words[:start], trade)

    bad = count(heard)
    rivals: dict[str, Rival] = {}
    for text, why, favour in _readings(stretch):
        sense = bad - count(text) + favour
        if sense < LEAST_SENSE or _is_odd(text) > _is_odd(heard) or text == heard:
            continue
        if text not in rivals or rivals[text].sense < sense:
            rivals[text] = Rival(text, why, sense)
    best = tuple(sorted(rivals.values(), key=lambda one: -one.sense)[:MOST])

    def reread(texts: Sequence[str]) -> Sequence[Rival]:
        found = worth_weighing(heard, texts, [one.text for one in best], lambda text: bad - count(text))
        return [one for one in found if one.sense >= LEAST_SENSE]

    return Doubt(start, end, best, reread)


def _readings(stretch: Sequence[str]) -> Iterator[tuple[str, str, float]]:
    """Every other reading, with why and what speaks for it."""
    parts = [part for word in stretch for part in parts_of(word)]
    for change in (*rewrites(parts), *fractions_in_digits(parts), *noughts(parts)):
        yield _rewritten(stretch, parts, change), change.why, change.favour
    for row in everywhere(parts):
        whole = " ".join(stretch)
        for change in reversed(row):
            whole = _rewritten(whole.split(), [p for w in whole.split() for p in parts_of(w)], change)
        yield whole, row[0].why, row[0].favour
    for text in without_breaths(stretch):
        yield text, BREATH, FAVOUR


def _figures(words: Sequence[str]) -> list[tuple[int, int]]:
    """Stretches that hold a number, with a word or two on each side; figures of one sentence that touch are one."""
    spans: list[tuple[int, int]] = []
    last = 0
    for at, word in enumerate(words):
        if not any(digits_of(part) is not None for part in parts_of(word)):
            continue
        begin, end = max(at - _BEFORE, 0), min(at + 1 + _BEHIND, len(words))
        cut = _cut(words, last, at) if spans else 0
        if spans and not cut and begin <= last + 2:
            spans[-1] = (spans[-1][0], end)
        else:
            border = max(begin, cut, last + 1) if spans else begin
            if spans:
                spans[-1] = (spans[-1][0], min(spans[-1][1], border))
            spans.append((border, end))
        last = at
    return spans


def _cut(words: Sequence[str], start: int, end: int) -> int:
    """One past the word from `start` on, before `end`, that ends a sentence; 0 where none does."""
    ends = (at for at in range(end - 1, start - 1, -1) if words[at].endswith((".", "?", "!")))
    return next((at + 1 for at in ends if not breath_at(words, at)), 0)


def _is_odd(text: str) -> int:
    """How often a teen stands right before a one: "fifteen two" is no way to say a number."""
    kinds = [vocabulary().words.get(part, ("", 0))[0] for part in parts_of(text)]
    return sum(pair == ("teens", "ones") for pair in pairwise(kinds))


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
