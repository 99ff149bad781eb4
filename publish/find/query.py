"""A question as a person types it: words, figures and bounds.

Takes "saddle slot 3/32" (a bare fraction is of an inch), "radius > 10 ft", "glue under 60 C" and "2 to 3 mm".
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from capture.errors import SpokeshaveError
from extract.spans import Number
from publish.find.scale import Span, span_of

Bound = Literal["at", "above", "below"]
BOUNDS: dict[str, Bound] = {
    ">": "above", ">=": "above", "≥": "above", "over": "above", "above": "above", "<": "below", "<=": "below",
    "≤": "below", "under": "below", "below": "below",
}  # fmt: skip
"""What stands before a figure that is a bound."""
_SIGNS = re.compile(r"([<>≤≥=]+)")
_MARKS = frozenset("=.,;:?!()…\"'")


class QueryError(SpokeshaveError):
    """A question that asks for nothing."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A figure that is asked for."""

    bound: Bound
    span: Span


@dataclass(frozen=True, slots=True)
class Query:
    """What is asked for: all the words, and all the figures."""

    words: tuple[str, ...]
    figures: tuple[Wanted, ...] = ()


def read_query(text: str) -> Query:
    """The question in a text. Raises `QueryError` where it holds neither word nor figure."""
    from extract.heard import plain_language
    from extract.numbers.grammar import parse
    from extract.quantities.join import join

    doc = plain_language().make_doc(" ".join(_SIGNS.sub(r" \1 ", text.replace("<=", "≤").replace(">=", "≥")).split()))
    tape, parsed = parse(doc)
    words: list[str] = []
    figures: list[Wanted] = []
    at = 0
    drafts = {draft.start: draft for draft in join(tape, parsed)}
    while at < len(tape):
        draft = drafts.get(at)
        if draft is None:
            words.append(tape.text(at))
            at += 1
            continue
        bound = BOUNDS.get(words[-1] if words else "", "at")
        written = " ".join(tape.text(one) for one in range(draft.start, draft.end))
        unit = draft.unit.name if draft.unit else "inch" if draft.number.form in ("fraction", "mixed") else None
        ends = None if draft.number.low is None or draft.number.high is None else (draft.number.low, draft.number.high)
        span = span_of(Fraction(draft.number.value), unit, _digits(written, draft.number), ends) if unit else None
        if span is None:
            words.extend(tape.text(one) for one in range(draft.start, draft.end))
        else:
            if bound != "at":
                words.pop()
            figures.append(Wanted(bound, span))
        at = draft.end
    kept = tuple(word for word in words if word not in _MARKS and word not in ("<", ">", "<=", ">=", "≤", "≥"))
    if not kept and not figures:
        raise QueryError("nothing to look for; write words or figures, such as saddle slot 3/32")
    return Query(kept, tuple(figures))


def _digits(written: str, number: Number) -> str:
    """The written form, or in digits what was spelled out."""
    if number.denominator:
        return f"1/{number.denominator}"
    spelled = number.decimals and not any(letter.isdigit() for letter in written)
    return f"{float(number.value):.{number.decimals}f}" if spelled else written
