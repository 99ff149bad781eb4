"""Attributes that lie in small words around the figure: differences, prepositions, "of" behind a unit of any kind.

Takes "1 mm more than it came in with", "high by two", "across the spine it is 38", "three kilograms of clearance".
"""

from __future__ import annotations

from extract.measures.attribute.behind import ADJECTIVE_REACH
from extract.measures.attribute.near import behind
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.reading import MARKS

_OF_REACH = 3
_PLACE_REACH = 12
_BY_REACH = 3
_LEADS = frozenset(
    {"is", "'s", "it", "are", "'re", "was", "were", "i", "get", "measures", "you", "have", "they", "make"}
)


def by_difference(figure: Figure, _: Finding) -> str | None:
    """ "1 mm more than it came in with", "high by two", "it has put on five"."""
    scene, known = figure.scene, knowledge()
    after = scene.words[figure.end : figure.end + 3]
    if any(after[: len(phrase)] == phrase for phrase in known.more):
        return "difference"
    ends = not after[1:] or after[1] in MARKS or scene.new_cue(figure.end + 1) or after[1] in known.clause.openers
    if figure.kind == "length" and after[:1] and after[0] in known.ending and ends:
        return known.ending[after[0]]
    if behind(figure, scene.mentions.adjectives, ADJECTIVE_REACH):
        return None  # "point oh nine wide by point oh four tall"
    ahead = scene.text(figure.start - _BY_REACH - 2, figure.start)
    for skip in range(_BY_REACH):
        end = len(ahead) - skip
        if any(end >= len(phrase) and ahead[end - len(phrase) : end] == phrase for phrase in known.by):
            return "difference"
        if not ahead[:end] or ahead[end - 1] not in known.clause.approximate:
            return None
    return None


def by_of(figure: Figure, finding: Finding) -> str | None:
    """ "three kilograms of clearance": a slip of the unit leaves the word of measure as it is."""
    if figure.scene.word(figure.end) != "of":
        return None
    for found in behind(figure, figure.scene.mentions.nouns, _OF_REACH):
        finding.noun = finding.word = found
        return found.entry.name
    return None


def by_preposition(figure: Figure, _: Finding) -> str | None:
    """ "across the spine it is 38", "between the posts, 5 inches": a preposition that opens the sentence."""
    scene, known = figure.scene, knowledge()
    if figure.kind != "length":
        return None
    start = max(figure.sentence[0], figure.start - _PLACE_REACH, figure.previous.figure.end if figure.previous else 0)
    things = scene.things_in(start, figure.start)
    name = known.across.get(things[0].preposition) if things else None
    rest = scene.text(things[-1].end, figure.start) if things else ()
    return name if all(word in _LEADS or word in known.clause.approximate for word in rest) else None
