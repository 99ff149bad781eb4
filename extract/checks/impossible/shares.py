"""More than all of something that has only one whole.

Takes "120 percent of the way in" and "it has lost 130 percent of its weight"; refuses "150 percent of the old length",
"a hundred percent of the way" and "humidity up by 120 percent". Source: a share is at most the whole.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.talk import Said, Talk

SOURCE = "a share is at most the whole"
_WHOLE = re.compile(r"^(?:of the way|of the total|of the whole|of all of|of them all|finished|complete|completed)\b")
_LOST = re.compile(
    r"\b(?:lost|lose|loses|shrunk|shrank|evaporated|worn away|used up)(?: (?:by|about|nearly|over|some|a))*$"
)
_OF_IT = re.compile(r"^of (?:its|it|the|their|that)\b")
_ALL = 100


def find_more_than_all(talk: Talk) -> Iterator[Suspicion]:
    """Each percentage above a hundred that the words make a share of one whole."""
    for one in talk.said:
        if one.measure.unit == "percent" and one.figure.value > _ALL and len(one.figures) == 1 and _is_share(one):
            message = f"{one.measure.display} is more than all of it"
            yield Suspicion("implausible", "stop", (one.measure,), message, SOURCE)


def _is_share(one: Said) -> bool:
    before, behind = " ".join(one.clause), " ".join(one.after)
    return bool(_WHOLE.search(behind) or (_LOST.search(before) and _OF_IT.search(behind)))
