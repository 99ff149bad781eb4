"""Whether words say that a figure was worked out from those before it; nearness alone says nothing of the kind.

Takes "42 down to 36, so 6" and "half that, 3 mm"; refuses three readings one after the other ("nine 64ths, treble side
seven 64ths, there's a gap of 12 thou") and what was done about them ("so I took 2 mm off the saddle").
Source: common usage of spoken English; no source.
"""

from __future__ import annotations

import re
from typing import Literal

from extract.checks.arithmetic.window import Window

Carrier = Literal["itself", "operator", "result"]
"""What a kind of sum is carried by: its own words ("plus", "divided by"), an operator beside the result or an "is", or
words of a result only."""

_SIDES = "side|hand|end|one|leg|foot|edge|cheek|face|wing|ear|arm|half"
_LEFT = rf"(?<!the )left(?! (?:{_SIDES})\b)"
_RESULT = re.compile(
    r"\b(?:so|that's|that is|that'd|that'll|that makes?|that leaves?|which|makes?|making|gives?|giving|equals?|"
    r"comes (?:to|out)|come to|works out|leaves?|leaving|remains?|remaining|means?|meaning|totals?|totalling|"
    r"altogether|in all|all told|all up|together|overall|call it|i get|you get|we get|puts|brings|adds? up|the sum|"
    rf"the lot|would be|that would|you'd be|you'll be|combined|the difference|{_LEFT})\b"
)
_DOER = r"(?:i|we|you|he|she|they|i'll|we'll|you'll|they'll|i'd|we'd|you'd|let's|i'm|we're|you're|i've|we've|you've)"
_HAS = (
    "get|gets|got|have|had|has|need|needs|want|wants|lose|lost|gain|gained|end|ended|am|lack|make|know|see|at|left|short|about|nearly|roughly|around|up|down|"
    "over|need|'ve"
)
_DONE = re.compile(
    rf"\bso (?:(?:then|now|here|what|today|first|there|just) )?{_DOER} (?=[a-z])"
    rf"(?!(?:still |only |just |do )?(?:{_HAS})\b)"
)
"""After "so" someone does something: no result, unless it is what there is then, or what is wanted."""
_ORDER = re.compile(
    r"\bso (?:then |now |just |please )?(?:take|use|fit|put|make|set|cut|drill|go|add|file|leave|give|try|plane|sand|"
    r"scrape|turn|ream|grind|trim|saw|skim|remove|start|keep|leave|allow|aim|lower|raise|move|open|close|wind|pack)\b"
)
_OPERATOR = re.compile(
    r"\b(?:is|are|it's|be|half|halve it|halved|double|doubled|twice|third|quarter|middle|halfway|average|mean|midpoint|"
    r"times|half's|middle's)(?: [^<\s]+){0,2} $"
)


def is_carried(window: Window, place: int, carrier: Carrier) -> bool:
    """The words before the figure at a place in the window, or right behind it, say that it is a result."""
    if carrier == "itself":
        return True
    before, _, behind = window.text.partition(f"<{place}>")
    between = before.rsplit(">", 1)[-1]
    if _DONE.search(between) or _ORDER.search(between):
        return False
    if _RESULT.search(between) or _RESULT.search(behind.split("<")[0]):
        return True
    return carrier == "operator" and _OPERATOR.search(between) is not None
