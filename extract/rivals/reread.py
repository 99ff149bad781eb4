"""Which other hearings of a figure are worth weighing: those that make another figure of it.

Takes "sixteen thou thick" beside "sixteen hours thick"; leaves out "sixteen hours thin", which has the same figure, and
"sixteen", which loses what was heard. A word that takes something back ("no", "wait") is never lost.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction

from capture.figures import digits_of, parts_of
from capture.second.rival import Rival
from extract.numbers.grammar import parse
from extract.quantities.draft import Draft
from extract.quantities.join import join
from extract.rivals.lists import lists
from extract.rivals.sense import blank_language
from extract.rivals.spelling import joined

WHY = "so it was heard by itself"

SHORTEST = 0.6
"""Share of the words of what was heard that another reading must have."""

Figure = tuple[Fraction, Fraction, str | None]


def worth_weighing(
    heard: str, texts: Iterable[str], known: Iterable[str], sense: Callable[[str], float]
) -> Sequence[Rival]:
    """Rivals among `texts`, one for each new figure; `known` are readings that are weighed already."""
    seen = {_key(text) for text in (heard, *known)}
    taken_back = _taking_back(heard)
    found: list[Rival] = []
    for given in texts:
        text = _apart(given)
        key = _key(text)
        short = len(text.split()) < SHORTEST * len(heard.split())
        if key in seen or short or not key[0] or taken_back - _taking_back(text):
            continue
        seen.add(key)
        found.append(Rival(text, WHY, sense(text)))
    return found


def _apart(text: str) -> str:
    """The text without the hyphens of "six-and-a-half": those of "sixty-four" stay."""
    return " ".join(joined(parts_of(word)) if word.count("-") > 1 else word for word in text.split())


def _key(text: str) -> tuple[tuple[Figure, ...], tuple[str, ...], tuple[str, ...]]:
    """The figures of a text, what takes something back in it, and numbers that belong to no figure."""
    tape, parsed = parse(blank_language().make_doc(text))
    drafts = join(tape, parsed)
    taken = {at for draft in drafts for at in range(draft.start, draft.end)}
    loose = tuple(tape.text(at) for at in range(len(tape)) if at not in taken and digits_of(tape.text(at)) is not None)
    return tuple(_figure(draft) for draft in drafts), tuple(sorted(_taking_back(text).elements())), loose


def _figure(draft: Draft) -> Figure:
    low, high = draft.ends
    return low, high, draft.unit.name if draft.unit else None


def _taking_back(text: str) -> Counter[str]:
    return Counter(part for part in parts_of(text) if part in lists().taking_back)
