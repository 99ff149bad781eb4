"""Names that a figure's attribute may have by phrases beside it, by what was told before, and by sums.

Takes "the belt should give half an inch" (deflection), "27 and 25, so two more" (difference), "now 0.6, then" behind a
beat error some sentences ago. Each is only a proposal: the signs decide.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.measures.attribute.near import before, suits
from extract.measures.figure import Figure
from extract.measures.knowledge import Hint, knowledge
from extract.units import to_unit

_BEFORE, _BEHIND = 12, 8
"""Tokens in which a word speaks for a name from further off."""
_SKIPPED = 2
_TOPIC_REACH = 45
_TOPICS = 3
_EARLIER, _EARLIER_REACH = 4, 400
_RESULT_REACH = 80


def by_phrases(figure: Figure) -> Iterator[tuple[str, str]]:
    """Where phrases of data/measures.toml's [[hint]] stand beside the figure, and the name that they speak for."""
    for hint in knowledge().hints:
        if hint.kinds and (figure.kind or "none") not in hint.kinds:
            continue
        for side, holds in (("before", _leads), ("behind", _follows), ("near", _is_near)):
            if holds(figure, hint):
                yield side, hint.name


def _leads(figure: Figure, hint: Hint) -> bool:
    """True where a phrase stands right before the figure, small words of guessing skipped."""
    words, end = figure.scene.words, figure.start
    for _ in range(_SKIPPED + 1):
        if any(words[end - len(phrase) : end] == phrase for phrase in hint.before if end >= len(phrase)):
            return True
        if not end or words[end - 1] not in knowledge().clause.approximate | {"a", "an", "like", "to", "of"}:
            return False
        end -= 1
    return False


def _follows(figure: Figure, hint: Hint) -> bool:
    words, start = figure.scene.words, figure.end
    return any(words[start : start + len(phrase)] == phrase for phrase in hint.behind)


def _is_near(figure: Figure, hint: Hint) -> bool:
    if not hint.near:
        return False
    start, end = max(figure.sentence[0], figure.start - _BEFORE), min(figure.sentence[1], figure.end + _BEHIND)
    scene = figure.scene
    return not hint.near.isdisjoint(scene.words[start:end]) or not hint.near.isdisjoint(scene.lemmas[start:end])


def by_topics(figure: Figure) -> Iterator[tuple[int, str]]:
    """The words of measure named last, whatever stands between: which from the nearest, and its name."""
    names: list[str] = []
    for found in before(figure, figure.scene.mentions.nouns, max(0, figure.start - _TOPIC_REACH)):
        if suits(figure, found) and found.entry.name not in names:
            names.append(found.entry.name)
            yield len(names), found.entry.name
        if len(names) == _TOPICS:
            return


def by_earlier(figure: Figure) -> Iterator[tuple[int, str]]:
    """The attributes of the last figures of the kind, each once."""
    names: list[str] = []
    for earlier in figure.earlier(_EARLIER_REACH):
        if earlier.figure.kind == figure.kind and earlier.attribute and earlier.attribute not in names:
            names.append(earlier.attribute)
            yield len(names), earlier.attribute
        if len(names) == _EARLIER:
            return


def is_worked_out(figure: Figure) -> bool:
    """True for the difference of two of the last three figures of the kind: "302, the new 294, so it's grown by 8"."""
    unit = figure.quantity.unit
    if unit is None or unit.kind in ("temperature", "pitch"):
        return False
    last = [one.figure.quantity for one in figure.earlier(_RESULT_REACH) if one.figure.kind == figure.kind][:3]
    values = [to_unit(one.value, one.unit, unit) for one in last if one.unit is not None]
    pairs = ((one, two) for place, one in enumerate(values) for two in values[place + 1 :])
    return any(one != two and abs(one - two) == figure.quantity.value for one, two in pairs)
