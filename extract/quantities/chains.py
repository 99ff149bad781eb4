"""Numbers that belong together: "80 or 90 grams", "400, 600, then 0000 wool", "two no three thou", "15 mm by 10"."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene

Strength = Literal["strong", "weak", "correction"]


@dataclass(frozen=True, slots=True)
class Link:
    """How a number is joined to the one before it."""

    strength: Strength
    by: bool = False
    """Joined by "by" or "x", as the sides of a thing are."""


_LARGEST_NOMINAL = 8
"""Sizes of timber such as two by four are names; sides of a thing have a larger or a finer figure among them."""


def find_sides(scene: Scene, drafts: tuple[Draft, ...]) -> frozenset[int]:
    """Starts of the numbers that are joined by "by"."""
    found: set[int] = set()
    for before, draft in pairwise(drafts):
        joined = link(scene, before, draft)
        plain = all(one.number.form == "integer" and one.number.value <= _LARGEST_NOMINAL for one in (before, draft))
        if joined and joined.by and not plain:
            found |= {before.start, draft.start}
    return frozenset(found)


def link(scene: Scene, before: Draft, draft: Draft) -> Link | None:
    """What joins two numbers, None where other words stand between them."""
    links, tape = knowledge().evidence.links, scene.tape
    gap = [tape.text(at) for at in range(before.end, draft.start)]
    if not gap or len(gap) > links.most:
        return None
    allowed = links.strong | links.weak | links.correction | links.filler
    if any(word not in allowed for word in gap):
        return None
    if "," in gap and ("plus" in gap or "minus" in gap):
        return None  # a sign: "beat error 0.4, plus 6 seconds"
    if any(word in links.correction for word in gap):
        return Link("correction")
    if any(word in links.strong for word in gap):
        return Link("strong", by=any(word in ("by", "x", "×") for word in gap))
    return Link("weak") if any(word in links.weak for word in gap) else None


def taken_back(scene: Scene, draft: Draft) -> bool:
    """True for the "no sorry forty five" with which a breath begins: it puts right the measure before."""
    links, at = knowledge().evidence.links, draft.start
    words: set[str] = set()
    while at > 0 and not scene.tape.lexemes[at].breath and len(words) < links.most:
        at -= 1
        words.add(scene.tape.text(at))
    begins = at == 0 or scene.tape.lexemes[at].breath
    return begins and bool(words & links.correction) and words <= links.correction | links.filler | {","}
