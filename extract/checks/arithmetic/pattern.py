"""One kind of sum: how it is said, and how it is worked out."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from extract.checks.arithmetic.carried import Carrier
from extract.checks.arithmetic.terms import PARTS, Terms
from extract.checks.arithmetic.window import Window
from extract.checks.finding import figure_text

SO = (
    "so|that's|which|leaves|leaving|gives|giving|means|meaning|makes|making|that'd|which'd|leave|"
    "give|make|mean|equals|works out|comes to|call it|i get|you get"
)
"""What leads up to a result. "There's" and "we've" don't: they tell of a reading."""
IN_ALL = (
    "makes|make|making|comes to|come to|adds up to|add up to|gives|altogether|total|totals|together|all told|in all|"
    "the sum|all up|overall|the lot|brings|combined"
)
MAKES = "makes|make|making|comes to|come to|adds up to|add up to|gives|totals|total|totalling|brings|brings it to"
"""The verbs of those: behind a figure "altogether" belongs to that figure."""
PERIOD = "day|week|hour|minute|second|month|year|fortnight"


@dataclass(frozen=True, slots=True)
class Sum:
    """One kind of sum: how it is said and how it is worked out."""

    name: str
    pattern: re.Pattern[str]
    work: Callable[[Terms], Fraction | None]
    """The exact result in the unit of the result; None where units don't go together."""
    wording: Callable[[Terms], str]
    carrier: Carrier = "result"
    """Which words must say that the figure was worked out."""


def said(*parts: str | int) -> re.Pattern[str]:
    """A pattern over a window's text.

    "A", "B" and "D" are figures and "C" the result, "N" a small count, "W" the name of a period, "P" one such period,
    "F" a part of a whole, "M" a factor that is no whole number, a number any words, at most so many, and anything else
    alternatives.
    """
    named = {
        "N": r"%(?P<n>\d+) ",
        "W": f"(?P<w>{PERIOD}) ",
        "P": f"(?:a |an |one )(?P<p>{PERIOD}) ",
        "M": r"(?P<m>\d+\.\d+|(?:one|%\d+) (?:point %\d+|and a half)) ",
        "F": f"(?P<f>{'|'.join(PARTS)}) ",
    }
    pieces: list[str] = []
    for before, part in zip((None, *parts), parts, strict=False):
        if isinstance(part, int):
            # Behind a count no other count: in "68 and two lots of 15" the two is the count.
            other = "<>%" if before == "N" else "<>"
            pieces.append(rf"(?:[^{other}\s]+ ){{0,{part}}}?")
        elif part in ("A", "B", "C", "D"):
            pieces.append(rf"<(?P<{part.lower()}>\d)> ")
        else:
            pieces.append(named.get(part, f"(?:{part}) "))
    return re.compile("(?:^|(?<= ))" + "".join(pieces))


def terms_of(window: Window, matched: re.Match[str]) -> Terms | None:
    """The figures that a match names; None where they can't be worked with or the window's last is none of them."""
    groups = matched.groupdict()
    named = {key: window.figures[int(groups[key])] for key in "abdc" if groups.get(key) is not None}
    if window.figures[-1] not in named.values():
        return None
    if any(len(one.figures) > 1 or one.measure.unit is None for one in named.values()):
        return None
    operands = tuple(named[key] for key in "abd" if key in named)
    return Terms(
        operands,
        named["c"],
        int(groups.get("n") or 1),
        groups.get("w") or "",
        groups.get("p") or "",
        groups.get("f") or "",
        _factor(groups.get("m") or ""),
    )


def _factor(text: str) -> Fraction:
    """1.4 for "1.4" and "one point %4", 5/2 for "%2 and a half"; 1 for nothing."""
    if not text or text[0].isdigit():
        return Fraction(text or 1)
    whole, *rest = text.replace("one", "%1").replace("%", "").split()
    return Fraction(f"{whole}.{rest[-1]}") if rest[0] == "point" else Fraction(whole) + Fraction(1, 2)


def show(template: str) -> Callable[[Terms], str]:
    """How a sum is put in a message.

    {a}, {b}, {d} are its figures, {n} a count, {w} and {p} periods, {f} a part, {x} a factor.
    """

    def wording(terms: Terms) -> str:
        return template.format(
            a=terms.first.measure.display,
            b=terms.second.measure.display,
            d=terms.operands[-1].measure.display,
            n=terms.count,
            m=terms.count - 1,
            w=terms.period,
            p=terms.over,
            f=terms.part,
            x=figure_text(terms.factor),
        ).replace(" a hour", " an hour")

    return wording
