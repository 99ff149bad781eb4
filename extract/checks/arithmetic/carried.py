"""Whether words say that a figure was worked out from those before it; nearness alone says nothing of the kind.

Takes "42 down to 36, so 6" and "half that, 3 mm"; refuses three readings one after the other ("nine 64ths, treble side
seven 64ths, there's a gap of 12 thou") and what was done about them ("so I took 2 mm off the saddle").
Source: common usage of spoken English; no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Literal

from extract.checks.arithmetic.window import Window
from extract.checks.said_in import either

Carrier = Literal["itself", "operator", "result"]
"""What a kind of sum is carried by: its own words ("plus", "divided by"), an operator beside the result or an "is", or
words of a result only."""

_TABLE = "carried"


@dataclass(frozen=True, slots=True)
class _Signs:
    """What the words between the figures are searched for."""

    result: re.Pattern[str]
    done: re.Pattern[str]
    """After "so" someone does something: no result, unless it is what there is then, or what is wanted."""
    order: re.Pattern[str]
    operator: re.Pattern[str]


@cache
def _signs() -> _Signs:
    left = rf"(?<!the )left(?! {either(_TABLE, 'sides')}\b)"
    return _Signs(
        result=re.compile(rf"\b(?:{either(_TABLE, 'result')}|{left})\b"),
        done=re.compile(
            rf"\bso (?:(?:then|now|here|what|today|first|there|just) )?{either(_TABLE, 'doers')} (?=[a-z])"
            rf"(?!(?:still |only |just |do )?{either(_TABLE, 'has')}\b)"
        ),
        order=re.compile(rf"\bso (?:then |now |just |please )?{either(_TABLE, 'orders')}\b"),
        operator=re.compile(rf"\b{either(_TABLE, 'operators')}(?: [^<\s]+){{0,2}} $"),
    )


def is_carried(window: Window, place: int, carrier: Carrier) -> bool:
    """The words before the figure at a place in the window, or right behind it, say that it is a result."""
    if carrier == "itself":
        return True
    signs = _signs()
    before, _, behind = window.text.partition(f"<{place}>")
    between = before.rsplit(">", 1)[-1]
    if signs.done.search(between) or signs.order.search(between):
        return False
    if signs.result.search(between) or signs.result.search(behind.split("<")[0]):
        return True
    return carrier == "operator" and signs.operator.search(between) is not None
