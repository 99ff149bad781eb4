"""More than all of something that has only one whole.

Takes "120 percent of the way in" and "it has lost 130 percent of its weight"; refuses "150 percent of the old length",
"a hundred percent of the way" and "humidity up by 120 percent". Source: a share is at most the whole.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from extract.checks.finding import Suspicion
from extract.checks.said_in import either
from extract.checks.talk import Said, Talk

SOURCE = "a share is at most the whole"
_OF_IT = re.compile(r"^of (?:its|it|the|their|that)\b")
_ALL = 100


@cache
def _patterns() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """The whole, behind the figure; that so much of it is gone, before it."""
    gone = rf"\b{either('shares', 'lost')}(?: (?:by|about|nearly|over|some|a))*$"
    return re.compile(rf"^{either('shares', 'whole')}\b"), re.compile(gone)


def find_more_than_all(talk: Talk) -> Iterator[Suspicion]:
    """Each percentage above a hundred that the words make a share of one whole."""
    for one in talk.said:
        if one.measure.unit == "percent" and one.figure.value > _ALL and len(one.figures) == 1 and _is_share(one):
            message = f"{one.measure.display} is more than all of it"
            yield Suspicion("implausible", "stop", (one.measure,), message, SOURCE)


def _is_share(one: Said) -> bool:
    before, behind = " ".join(one.clause), " ".join(one.after)
    whole, lost = _patterns()
    return bool(whole.search(behind) or (lost.search(before) and _OF_IT.search(behind)))
