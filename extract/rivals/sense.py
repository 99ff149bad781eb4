"""How well a stretch of words reads as measures, so that of two that sound alike the sensible is taken.

"six to one degrees" falls as a range, "five hundred and eight three" is two numbers side by side, "sixty-six out" lacks
a unit: each is a flaw. "forty-three sixteenths" is rare on a rule, but no error.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise

import spacy
from spacy.language import Language

from capture.figures import digits_of
from extract.numbers.figure import Tape
from extract.numbers.grammar import parse
from extract.quantities.draft import Draft
from extract.quantities.join import join
from extract.rivals.bands import outside
from extract.rivals.lists import lists
from extract.trade import Trade


def flaws(text: str, before: Sequence[str] = (), trade: Trade | None = None) -> float:
    """What a stretch of words has wrong with it as measures, said behind the words `before`; 0 for none."""
    doc = blank_language().make_doc(text)
    tape, parsed = parse(doc)
    drafts = join(tape, parsed)
    weights = lists().flaws
    found = sum(_own(draft, weights) for draft in drafts)
    for left, right in pairwise(drafts):
        found += weights["side_by_side"] * (left.end == right.start and left.unit is None)
        falls = tape.text(left.end) == "to" and right.start == left.end + 1 and right.number.value <= left.number.value
        found += weights["falling"] * (falls and left.unit is None)
        between = {tape.text(at) for at in range(left.end, right.start)}
        in_vain = bool(between & lists().taking_back) and left.number.value == right.number.value
        found += weights["in_vain"] * (in_vain and left.unit in (None, right.unit))
    if trade is not None:
        found += weights["outside"] * sum(
            outside(draft.number.value, draft.unit.name, before, trade) for draft in drafts if draft.unit is not None
        )
    return found + weights["left_over"] * _left_over(tape, drafts)


def _own(draft: Draft, weights: Mapping[str, float]) -> float:
    number = draft.number
    low, high = draft.ends
    found = weights["falling"] * (number.low is not None and low >= high)
    found += weights["no_unit"] * (draft.unit is None and number.form not in ("fraction", "mixed"))
    found += weights["improper"] * (number.form == "fraction" and number.value > 1 and (number.denominator or 1) >= 4)
    found += weights["time"] * (draft.unit is not None and draft.unit.name in lists().times)
    return float(found)


def _left_over(tape: Tape, drafts: tuple[Draft, ...]) -> int:
    """Names of parts and units that no number goes with, and numbers that belong to no figure."""
    taken = {at for draft in drafts for at in range(draft.start, draft.end)}
    return sum(
        tape.text(at) in lists().needs_number or digits_of(tape.text(at)) is not None
        for at in range(len(tape))
        if at not in taken
    )


@cache
def blank_language() -> Language:
    """English without a model: words apart, nothing more."""
    return spacy.blank("en")
