"""Which things may have a measure: told from tools that are read, from sides, and from means and likenesses.

Takes "the plate is" (plain), "gasket tape" (no tape measure); refuses "the micrometer says", "with paraffin".
"""

from __future__ import annotations

from extract.measures.figure import Figure
from extract.measures.knowledge import knowledge
from extract.measures.things import Thing

_HEADING = 4
"""Tokens of a sentence that only names what comes: "Boiler."."""
LED_BY = frozenset({"with", "like", "as", "by", "than", "without", "per"})
"""Prepositions before what is no more than a means or a likeness."""


def is_reader(figure: Figure, thing: Thing) -> bool:
    """True for a tool that gives a reading: "the micrometer says", "calipers on it and I get"."""
    scene, readers = figure.scene, knowledge().readers
    behind = scene.words[thing.end : thing.end + 2]
    if behind[:1] in (("says",), ("say",), ("said",)):
        return True
    if thing.preposition == "on" and behind in (("it", "reads"), ("it", "says"), ("i", "get")):
        return True
    compound = thing.head != thing.name and thing.head in knowledge().lone_readers
    return thing.role in ("tool", "other", "part") and thing.head in readers and not compound


def plain(figure: Figure, thing: Thing) -> bool:
    """A thing that no preposition governs and that is neither read from nor a mere side of something."""
    return not thing.preposition and not is_reader(figure, thing) and thing.name not in knowledge().vague


def is_predicate(figure: Figure, thing: Thing) -> bool:
    """ "the blank is graphite, 1/8 inch thick": a material that says what another thing is made of."""
    scene = figure.scene
    near = scene.words[max(0, thing.start - 2) : thing.start]
    return thing.role in ("material", "other") and bool(knowledge().clause.being & set(near))


def goes_on(figure: Figure) -> bool:
    """True where a figure of the same kind was just told of: "... and the other side 7"."""
    previous = figure.previous
    return previous is not None and previous.figure.kind == figure.kind and previous.item is not None


def anything(figure: Figure, thing: Thing) -> bool:
    """A thing that may have a measure, whatever governs it, save a means or a likeness."""
    return not is_reader(figure, thing) and thing.name not in knowledge().vague and thing.preposition not in LED_BY


def salient(figure: Figure, thing: Thing) -> bool:
    """A thing that no preposition governs and that the trade knows or the speaker comes back to."""
    scene = figure.scene
    heads = scene.sentences.end[thing.start] - scene.sentences.start[thing.start] <= _HEADING
    known = heads or thing.role in ("part", "subject", "material") or scene.times_named(thing.head) > 1
    return known and plain(figure, thing)
