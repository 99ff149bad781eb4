"""How far the talk has come where a figure is said, and what its sentence is like there.

"The neck is 5 mm high" is found at the start of a job and left at its end: the same sentence tells something else in
another part of the talk, which no sum of single signs can say.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.measures.figure import Figure, Finding
from extract.measures.phase_words import holds, phase_words

_FEW = 150
"""Tokens of a talk too short to have a beginning and an end."""
_STAGES = ((0.25, "early"), (0.6, "amid"), (0.85, "late"), (1.0, "last"))
_BACK = 14
_AROUND = 40


def share_of(figure: Figure) -> float:
    """How much of the talk was said before a figure, 0 to 1."""
    long = len(figure.scene) > _FEW
    return figure.start / len(figure.scene) if long else 0.4


def stage_of(figure: Figure) -> str:
    """The part of the talk that a figure is in, by a name."""
    share = share_of(figure)
    return next(name for until, name in _STAGES if share <= until)


def course_signs(figure: Figure, finding: Finding) -> Iterator[str]:
    """How the sentence is built together with the part of the talk and with what was measured before."""
    stage, manner = stage_of(figure), manner_of(figure)
    yield f"manner {manner}"
    yield f"manner {manner}, {stage}"
    item = finding.item.role if finding.item else "none"
    yield f"manner {manner}, item is {item}"
    known = any(
        one.attribute == finding.attribute and one.head == finding.head and one.figure.kind == figure.kind
        for one in figure.earlier(_MEMORY)
    )
    if known:
        yield f"manner {manner}, measured before"
    yield f"kind {figure.kind or 'none'}, {stage}"
    scene, words = figure.scene, phase_words()
    around = scene.text(figure.start - _AROUND, figure.sentence[0])
    for name in ("target_before", "found_before", "present"):
        if holds(getattr(words, name), around):
            yield f"talk has {name}"
    for name, at in (("clause", figure.clause[0]), ("sentence", figure.sentence[0])):
        first = scene.word(at)
        if at < figure.start and first in words.openings:
            yield f"{name} opens with {first}"
    if words.again & set(scene.words[max(0, figure.start - _AROUND) : figure.start]):
        yield from ("again", f"again, {stage}")


_MEMORY = 3000


def manner_of(figure: Figure) -> str:
    """What kind of sentence leads up to a figure: a wish, a command, work, a reading, being, the past, no verb."""
    scene, words = figure.scene, phase_words()
    start = max(figure.sentence[0], figure.start - _BACK)
    if figure.previous and figure.previous.figure.start >= start and figure.left[0] > start:
        start = figure.left[0] if any(scene.is_verb(at) for at in range(*figure.left)) else start
    said, tags, lemmas = scene.words[start : figure.start], scene.tags[start : figure.start], scene.lemmas
    if words.wish & set(said) or "MD" in tags:
        return "wish"
    verbs = [at for at in range(start, figure.start) if scene.is_verb(at)]
    if not verbs:
        return "no verb"
    if scene.tags[verbs[0]] == "VB" and verbs[0] - start <= 1:
        return "command"
    last = lemmas[verbs[-1]]
    past = scene.tags[verbs[-1]] == "VBD"
    if last in words.reads:
        return "reading"
    if last in words.work or last in words.bring:
        return "did" if past else "work"
    if last in ("be", "'s", "'re", "have", "'ve"):
        return "was" if past else "is"
    return "past" if past else "other"
