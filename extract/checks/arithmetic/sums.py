"""The kinds of sum that are said at a bench, in the order they are tried."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from extract.checks.arithmetic import work
from extract.checks.arithmetic.terms import Terms
from extract.checks.arithmetic.window import Window

_LINK = (
    "so|that's|that is|it's|is|are|makes|makes it|make|gives|equals|comes to|leaves|leaving|which is|puts us at|"
    "brings us to|puts it at|brings it to|gets us to|total|altogether|we're at|you'd be|you're at|i get|you get"
)
_TOTAL = "makes|make|comes to|come to|adds up to|add up to|gives|altogether|total|together|all told|in all|the sum"
_MIDDLE = "middle|halfway|half way|centre|center|average|mean|midpoint|mid point|split the difference"
_CHANGE = "lost|lose|took|taken|gone|removed|difference|shrunk|dropped|gained|shed|wear|worn"
_WORN = "off|less|gone|lost|difference|of wear|worn|to come off|to take off|to lose|out of it"
_MORE = "higher|more|over|above|bigger|wider|thicker|taller|longer|deeper"
_LESS = "lower|less|under|below|smaller|narrower|thinner|shorter"
_COUNTED = (
    "gaps?|spaces?|spacings?|times|of them|of those|of these|turns|passes|coats|sides|days|weeks|hours|strokes|shims|"
    "washers|layers|links|pieces|plies|steps|courses|bays|intervals"
)
_SHARES = (
    "equal|gaps?|spaces?|spacings?|parts?|pieces|bays|steps|intervals|sections|slots|strings|holes|shares|panels|turns"
)
_WHOLE = "full|overall|total|width|wide|whole|across|centred|centered|length|long"
_SIDE = "left|right|side|front|back|top|bottom|end|other|one|bass|treble|above|below"
_OFF = (
    "cut|cuts|take|takes|took|taking|trim|trimmed|saw|sawn|plane|planed|lose|loses|lost|used|use|minus|less|drink|"
    "drank|pour|poured|spill|spilt|gone|off|remove|removed|waste|wasted"
)
_PERIOD = "day|week|hour|minute|second|month|year"


@dataclass(frozen=True, slots=True)
class Sum:
    """One kind of sum: how it is said and how it is worked out."""

    name: str
    pattern: re.Pattern[str]
    work: Callable[[Terms], Fraction | None]
    """The exact result in the unit of the result; None where units don't go together."""
    wording: Callable[[Terms], str]


def said(*parts: str | int) -> re.Pattern[str]:
    """A pattern over a window's text.

    "A" and "B" are figures and "C" the result, "N" a small count, "W" the name of a period, a number any words, at most
    so many, and anything else alternatives.
    """
    named = {"N": r"%(?P<n>\d+) ", "W": f"(?P<w>{_PERIOD}) "}
    pieces = []
    for part in parts:
        if isinstance(part, int):
            pieces.append(rf"(?:[^<>\s]+ ){{0,{part}}}?")
        elif part in ("A", "B", "C"):
            pieces.append(rf"<(?P<{part.lower()}>\d)> ")
        else:
            pieces.append(named.get(part, f"(?:{part}) "))
    return re.compile("(?:^|(?<= ))" + "".join(pieces))


def terms_of(window: Window, matched: re.Match[str]) -> Terms | None:
    """The figures that a match names; None where they can't be worked with or the window's last is none of them."""
    groups = matched.groupdict()
    named = {key: window.figures[int(groups[key])] for key in "abc" if groups.get(key) is not None}
    if window.figures[-1] not in named.values():
        return None
    if any(len(one.figures) > 1 or one.measure.unit is None for one in named.values()):
        return None
    operands = tuple(named[key] for key in "ab" if key in named)
    return Terms(operands, named["c"], int(groups.get("n") or 1), groups.get("w") or "")


def _show(template: str) -> Callable[[Terms], str]:
    def wording(terms: Terms) -> str:
        return template.format(
            a=terms.first.measure.display, b=terms.second.measure.display, n=terms.count, w=terms.period
        )

    return wording


SUMS: tuple[Sum, ...] = (
    Sum(
        "rate",
        said("A", "a|per|every|each", "W", 5, "over|in|for|after", 3, "B", 7, "C"),
        work.over_time,
        _show("{a} a {w} for {b}"),
    ),
    Sum("product", said("A", 2, "times|multiplied by", 2, "B", 7, _LINK, 3, "C"), work.product, _show("{a} times {b}")),
    Sum(
        "quotient",
        said("A", 2, "divided by|across|over", 3, "B", 6, _LINK, 3, "C"),
        work.quotient,
        _show("{a} over {b}"),
    ),
    Sum("comparison, more", said("A", 3, _LINK, 2, "C", _MORE, "than", 2, "B"), work.difference, _show("{a} less {b}")),
    Sum("comparison, less", said("A", 3, _LINK, 2, "C", _LESS, "than", 2, "B"), work.difference, _show("{b} less {a}")),
    Sum("middle", said("A", 3, "and|to", 3, "B", 8, _MIDDLE, 6, "C"), work.middle, _show("the middle of {a} and {b}")),
    Sum(
        "sides",
        said(_WHOLE, 4, "A", 3, "B", "to|on|at|in", 1, _SIDE, 3, "C", "to|on|at|in", 1, _SIDE),
        work.difference,
        _show("{a} less {b}"),
    ),
    Sum(
        "percent of",
        said("A", 1, "of", 3, "B", 6, f"{_LINK}|would be|works out at", 3, "C"),
        work.part,
        _show("{a} of {b}"),
    ),
    Sum(
        "remaining",
        said("A", 9, _OFF, 4, "B", 6, "leaves|leaving|left|remains|remaining|still", 6, "C"),
        work.difference,
        _show("{a} less {b}"),
    ),
    Sum(
        "remaining, said behind",
        said("A", 9, _OFF, 4, "B", 6, "so|that's|leaves|leaving|and", 4, "C", "left|remaining|to go|over"),
        work.difference,
        _show("{a} less {b}"),
    ),
    Sum(
        "both sides",
        said("A", 4, "each|per|a|either", "side|end|way", 6, f"{_LINK}|{_TOTAL}|so", 4, "C"),
        work.double_of_it,
        _show("twice {a}"),
    ),
    Sum(
        "per side",
        said("A", 6, "so|that's|which is|gives|split", 4, "C", "each|either|per|a", "side|end|way"),
        work.half_of_it,
        _show("half of {a}"),
    ),
    Sum("percent", said("A", 9, "B", 8, f"{_CHANGE}|down|up|low|high", 4, "C"), work.percent, _show("from {a} to {b}")),
    Sum("strength", said("A", 5, "in|to", 3, "B", 7, "C"), work.strength, _show("{a} in {b}")),
    Sum("plus", said("A", 3, "plus|add", 3, "B", 6, _LINK, 4, "C"), work.total, _show("{a} plus {b}")),
    Sum("and", said("A", 3, "and", 3, "B", 5, _TOTAL, 3, "C"), work.total, _show("{a} and {b}")),
    Sum("more", said("A", 18, "B", "more|extra|on top", 3, f"{_LINK}", 4, "C"), work.total, _show("{a} plus {b}")),
    Sum(
        "minus",
        said("A", 3, "minus|less|take away|take off", 2, "B", 6, _LINK, 4, "C"),
        work.difference,
        _show("{a} less {b}"),
    ),
    Sum("down to", said("A", 4, "down to|up to", 2, "B", 5, _LINK, 3, "C"), work.difference, _show("{a} to {b}")),
    Sum("change", said("A", 9, "B", 6, _CHANGE, 3, "C"), work.difference, _show("{a} to {b}")),
    Sum("worn", said("A", 9, "B", 4, "so|that's", 4, "C", 1, _WORN), work.difference, _show("{a} to {b}")),
    Sum(
        "double", said("A", 8, "double|twice|doubled", "it|that|this|of that", 6, "C"), work.double, _show("twice {a}")
    ),
    Sum(
        "double, said before",
        said("double|twice|doubling", 2, "A", 3, f"{_LINK}|and", 3, "C"),
        work.double,
        _show("twice {a}"),
    ),
    Sum(
        "half", said("A", 8, "half|halve|halved", "it|that|of it|of that|this", 6, "C"), work.half, _show("half of {a}")
    ),
    Sum("third", said("A", 8, "third", "of it|of that", 6, "C"), work.third, _show("a third of {a}")),
    Sum("quarter", said("A", 8, "quarter", "of it|of that", 6, "C"), work.quarter, _show("a quarter of {a}")),
    Sum(
        "shares",
        said("A", 4, "over|across|into|between|in|among|by", 1, "N", 1, _SHARES, 3, "C"),
        work.shared,
        _show("{a} over {n}"),
    ),
    Sum("count", said("A", 4, "N", _COUNTED, 3, _LINK, 3, "C"), work.many, _show("{n} times {a}")),
    Sum("so many at", said("N", 3, "at|of|times", 1, "A", 3, _LINK, 3, "C"), work.many, _show("{n} times {a}")),
    Sum(
        "divided", said("A", 4, "divided by|divide by|split", 2, "N", 6, "C"), work.shared, _show("{a} divided by {n}")
    ),
)
"""A sum that fits and comes out ends the search, so the telling ones stand first."""
