"""Where on the thing a figure was taken.

Takes "at the twelfth fret", "on the treble side", "half an inch either side", "at the seventh"; refuses the item itself
and tools ("on the micrometer").
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.scene import Scene
from extract.measures.things import Thing

_REACH = 9
"""Tokens behind the figure."""
_MOST = 2
"""No more places than this are named."""


def find_place(figure: Figure, finding: Finding) -> str | None:
    """The place or side, or None; two are joined by a comma, in the order of speaking."""
    start = figure.left[0]
    end = min(figure.right[1], figure.end + _REACH)
    named = [*_sides(figure.scene, start, figure.start), *_sides(figure.scene, figure.end, end)]
    named += [*_places(figure, finding, start, figure.start), *_places(figure, finding, figure.end, end)]
    named += _ordinals(figure.scene, start, end)
    named.sort()
    places: list[str] = []
    for _, name in named:
        if not any(name in known or known in name for known in places):
            places.append(name)
    return ", ".join(places[:_MOST]) or None


def _sides(scene: Scene, start: int, end: int) -> list[tuple[int, str]]:
    """Sides and ends: "treble side", "either side", "in the middle"."""
    found = []
    at = start
    while at < end:
        for phrase in knowledge().sides:
            if (
                scene.words[at : at + len(phrase)] == phrase
                and at + len(phrase) <= end
                and _is_place(scene, at, len(phrase))
            ):
                found.append((at, " ".join(phrase)))
                at += len(phrase) - 1
                break
        at += 1
    return found


def _is_place(scene: Scene, at: int, length: int) -> bool:
    """A lone "back" or "top" is a place only behind "at the", "on the", "in the"."""
    if length > 1:
        return True
    return at > 1 and scene.words[at - 1] == "the" and scene.words[at - 2] in knowledge().place_prepositions


def _places(figure: Figure, finding: Finding, start: int, end: int) -> list[tuple[int, str]]:
    return [
        (thing.start, _name(figure.scene, thing))
        for thing in figure.scene.things_in(start, end)
        if thing.preposition in knowledge().place_prepositions
        and thing.role != "tool"
        and not (finding.item and thing.name == finding.item.name)
        and thing.name not in knowledge().vague
    ]


def _name(scene: Scene, thing: Thing) -> str:
    """The name with the words that tell it from others of its kind: "third string"."""
    at = thing.start
    while (
        at
        and scene.words[at - 1] not in knowledge().clause.determiners
        and scene.tags[at - 1] in ("JJ", "CD", "NN")
        and not scene.is_figure(at - 1)
    ):
        at -= 1
    return " ".join([*scene.words[at : thing.start], thing.name])


def _ordinals(scene: Scene, start: int, end: int) -> list[tuple[int, str]]:
    """ "at the seventh": a fret, tooth or course that is only counted."""
    return [
        (at, scene.words[at])
        for at in range(max(start, 2), end)
        if scene.words[at] in knowledge().clause.ordinals
        and scene.words[at - 1] == "the"
        and scene.words[at - 2] in ("at", "on", "over")
        and not scene.things_in(at, at + 2)
    ]
