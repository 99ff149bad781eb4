"""Attributes that are said behind the figure.

Takes "seventy thou thick", "four thousandths of relief", "a quarter inch driver", "took a sixteenth off"; refuses "half
an inch from the gap", which is a distance.
"""

from __future__ import annotations

from extract.measures.attribute.near import adjoins, behind, suits, usual_measure
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.things import Thing

ADJECTIVE_REACH = 3
"""Tokens behind a figure in which its adjective begins."""
_NOUN_REACH = 4
_THING_REACH = 4
_ROOM = frozenset({"under", "between", "behind", "around"})
_BY = frozenset({("by",), ("x",)})


def by_removal(figure: Figure, _: Finding) -> str | None:
    """ "take 4 off", "planed a sixteenth off the edge", "took ten thou on the treble side"."""
    scene, removes = figure.scene, knowledge().removes
    if figure.kind != "length":
        return None
    off = "off" in scene.words[figure.end : figure.end + 2]
    if not off and figure.following and scene.text(figure.end, figure.following.start) in _BY:
        return None  # "cut 20 mm by 10"
    if not off and (_thing_behind(figure) or behind(figure, scene.mentions.adjectives, ADJECTIVE_REACH)):
        return None
    start = figure.left[0] if off else max(figure.left[0], figure.start - 1)
    return (
        "cut" if any(scene.is_verb(at) and scene.lemmas[at] in removes for at in range(start, figure.start)) else None
    )


def by_existence(figure: Figure, _: Finding) -> str | None:
    """ "there was an eighth under that leg": room between things."""
    scene = figure.scene
    there = "there" in scene.words[max(0, figure.start - 4) : figure.start]
    return "gap" if there and figure.kind == "length" and scene.word(figure.end) in _ROOM else None


def by_adjective(figure: Figure, finding: Finding) -> str | None:
    """ "seventy thou thick", "an inch or so proud"."""
    for found in behind(figure, figure.scene.mentions.adjectives, ADJECTIVE_REACH):
        if figure.scene.word(found.end) == "to":
            continue  # "from half an inch down to seven sixteenths"
        if suits(figure, found):
            finding.word = found
            return found.entry.name
    return None


def by_noun(figure: Figure, finding: Finding) -> str | None:
    """ "a 3 mm gap", "four thousandths of relief"."""
    for found in behind(figure, figure.scene.mentions.nouns, _NOUN_REACH):
        if suits(figure, found):
            finding.noun = finding.word = found
            return found.entry.name
    return None


def by_series(figure: Figure, _: Finding) -> str | None:
    """ "15 millimeters by 10": the first is the length, the next the width."""
    if not figure.is_length:
        return None
    names, place, here = knowledge().series, 0, figure
    while here.previous and place < len(names) - 1 and here.gap() in _BY:
        place += 1
        here = here.previous.figure
    if any(usual_measure(thing.name, figure) == "diameter" for thing in here.things_left()[:1]):
        names = knowledge().round_series
    if place:
        return names[min(place, len(names) - 1)]
    following = figure.following
    return names[0] if following and figure.scene.text(figure.end, following.start) in _BY else None


def by_thing(figure: Figure, _: Finding) -> str | None:
    """ "a quarter inch driver": the usual measure of the thing that the figure stands before."""
    if not figure.is_length:
        return None
    thing = _thing_behind(figure)
    if thing and "take" in figure.scene.lemmas[max(figure.left[0], figure.start - 2) : figure.start]:
        return "size"  # "they take a 13 mm socket"
    return usual_measure(thing.name, figure) if thing else None


def _thing_behind(figure: Figure) -> Thing | None:
    """The thing that the figure stands before, with only adjectives between."""
    for thing in figure.scene.things_in(figure.end, figure.end + _THING_REACH)[:1]:
        if adjoins(figure, thing.start):
            return thing
    return None
