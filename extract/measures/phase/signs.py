"""What speaks for one phase or another: named signs of a figure, each with how strongly it shows.

A sign is a plain fact of the talk: the tense of the verb, "want" in the clause, how far the work has come, the phase of
the figure before. None of them decides; `weighing` adds up what each has weighed in marked narrations.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import log1p

from extract.measures.attribute.near import adjoins
from extract.measures.figure import Figure, Finding
from extract.measures.phase.brought import is_brought
from extract.measures.phase.course import course_signs, share_of
from extract.measures.phase.thing_signs import thing_signs
from extract.measures.phase_words import holds, phase_words

Signs = dict[str, float]

_SENTENCE, _AROUND, _BEHIND = 14, 35, 14
"""Tokens looked at before the figure in its sentence, before it over sentences, and behind it."""
_CLOSE_BEHIND, _WORDS_BEHIND = 5, 8
_SHARES = (0.15, 0.3, 0.5, 0.7, 0.85, 0.95)
_WORK = (0, 2, 5, 10)
_NEAR, _FAR = 8, 30
_MEMORY = 3000
"""Tokens over which the same measure is known again: twenty minutes of talk."""


def signs_of(figure: Figure, finding: Finding) -> Signs:
    """All signs of a figure whose attribute and item are known, and whose neighbours before it have their phase."""
    signs: Signs = {}
    for source in (_phrases, _verb, _shape, _course, _company, course_signs, thing_signs):
        for name in source(figure, finding):
            signs[name] = 1.0
    signs["share of the talk"] = share_of(figure)
    signs["work done"] = log1p(figure.scene.work_done(figure.start)) / 3
    signs |= dict.fromkeys(_words(figure), 1.0)
    return signs


def _phrases(figure: Figure, _: Finding) -> Iterator[str]:
    """Phrases of data/phases.toml in the clause, the sentence, the talk just before, and behind."""
    words, scene = phase_words(), figure.scene
    clause = scene.text(figure.left[0], figure.start)
    sentence = scene.text(max(figure.sentence[0], figure.start - _SENTENCE), figure.start)
    around = scene.text(figure.start - _AROUND, figure.start)
    for name in ("general_before", "result_before", "target_before", "found_before", "past", "present", "new"):
        index = getattr(words, name)
        if holds(index, clause):
            yield f"clause has {name}"
        elif holds(index, sentence):
            yield f"sentence has {name}"
        if name in ("general_before", "result_before", "past") and holds(index, around):
            yield f"talk has {name}"
    behind = _behind(figure)
    for name in ("general_behind", "verdict", "target_behind", "found_behind"):
        if holds(getattr(words, name), behind[:_CLOSE_BEHIND]):
            yield f"close behind is {name}"
        elif holds(getattr(words, name), behind):
            yield f"behind is {name}"
    if words.wish & set(clause):
        yield "clause wishes"
    elif words.wish & set(sentence):
        yield "sentence wishes"


def _verb(figure: Figure, _: Finding) -> Iterator[str]:
    """The nearest verb before the figure in its sentence: what it says, its tense, its subject."""
    scene, words, start = figure.scene, phase_words(), figure.sentence[0]
    tags = scene.tags[start : figure.start]
    at = next(
        (here for here in range(figure.start - 1, start - 1, -1) if scene.is_verb(here) or scene.tags[here] == "MD"),
        None,
    )
    if at is None:
        yield "no verb"
    else:
        inside = "clause" if at >= figure.left[0] else "sentence"
        kind, tag = _verb_kind(scene.lemmas[at]), scene.tags[at]
        yield from (f"verb {kind} in {inside}", f"tense {tag} in {inside}", f"verb {kind} as {tag}")
        said = [word for word in scene.words[max(start, at - 4) : at] if word in words.subjects]
        yield f"subject {said[-1] if said else 'other'}"
    if "VBD" in tags[-_SENTENCE:]:
        yield "past tense"
    if "MD" in tags[-_SENTENCE:]:
        yield "modal"
    if tags and tags[0] == "VB":
        yield "command"


def _shape(figure: Figure, finding: Finding) -> Iterator[str]:
    """How the figure stands: article, neighbours, a noun behind it, its unit, range and hedge."""
    scene, words, quantity = figure.scene, phase_words(), figure.quantity
    lead, behind = scene.word(figure.start - 1), scene.word(figure.end)
    yield f"led by {lead if lead in words.leads else scene.tag(figure.start - 1)[:2]}"
    yield f"then {behind if behind in words.follows else scene.tag(figure.end)[:2]}"
    if scene.words[figure.start] in ("a", "an"):
        yield "article in figure"
    for thing in scene.things_in(figure.end, figure.end + 4)[:1]:
        if adjoins(figure, thing.start):
            yield from ("thing right behind", f"thing right behind is {thing.role}")
    yield f"kind {figure.kind or 'none'}"
    yield f"item is {finding.item.role if finding.item else 'none'}"
    for name, holding in (
        ("item was brought", finding.item is not None and is_brought(figure, finding)),
        ("fault by nature", finding.attribute in words.defects),
        ("hedged", quantity.hedged),
        ("range", quantity.low is not None),
        ("limit", quantity.limit is not None),
        ("difference", quantity.difference),
        ("punctuated", scene.narration.punctuated),
    ):
        if holding:
            yield name


def _course(figure: Figure, finding: Finding) -> Iterator[str]:
    """Where in the course of the work the figure is said, and whether the same was measured before."""
    share, work = share_of(figure), figure.scene.work_done(figure.start)
    yield from (f"past {step} of the talk" for step in _SHARES if share > step)
    yield from (f"more than {step} of work" for step in _WORK if work > step)
    before = list(figure.earlier(_MEMORY))
    same = [one for one in before if one.attribute == finding.attribute and one.figure.kind == figure.kind]
    if not same:
        yield "first of its attribute"
    if any(one.head == finding.head for one in same):
        yield "measured before"
    for one in before:
        quantity = one.figure.quantity
        if quantity.value == figure.quantity.value and quantity.unit == figure.quantity.unit:
            yield from ("said before", f"said before as {one.phase}")
            break
    of_head = next((one for one in before if finding.head and one.head == finding.head), None)
    if of_head is not None:
        yield f"last of the item {of_head.phase}"
    if same:
        yield f"last of its attribute {same[0].phase}"


def _company(figure: Figure, finding: Finding) -> Iterator[str]:
    """The phase of the figure just before, by how near and how like it is."""
    previous = figure.previous
    if previous is None:
        yield "first figure"
        return
    gap = figure.start - previous.figure.end
    near = "near" if gap < _NEAR else "far" if gap < _FAR else "away"
    yield f"before it {previous.phase}, {near}"
    if previous.figure.kind == figure.kind:
        yield f"before it {previous.phase} of the kind, {near}"
    if previous.figure.start >= figure.sentence[0]:
        yield f"before it {previous.phase} in the sentence"
    if previous.attribute == finding.attribute and previous.head == finding.head:
        yield f"before it {previous.phase} of the same"
    if finding.restates:
        yield f"says again {finding.restates.phase}"
    if finding.follows:
        yield f"goes on with {finding.follows.phase}"


def _words(figure: Figure) -> Iterator[str]:
    """Single words in the clause and sentence before, and behind; names of things tell of a trade and are left out."""
    scene = figure.scene
    for at in range(max(figure.sentence[0], figure.start - _SENTENCE), figure.start):
        if _counts(figure, at):
            yield f"word {scene.lemmas[at]} in sentence"
            if at >= figure.left[0]:
                yield f"word {scene.lemmas[at]} in clause"
    stop = min(figure.end + _WORDS_BEHIND, figure.following.start if figure.following else len(scene), len(scene))
    for at in range(figure.end, stop):
        if _counts(figure, at):
            yield f"word {scene.lemmas[at]} behind"


def _counts(figure: Figure, at: int) -> bool:
    scene = figure.scene
    return scene.words[at].isalpha() and not scene.is_figure(at) and not scene.is_noun(at)


def _behind(figure: Figure) -> tuple[str, ...]:
    stop = figure.end + _BEHIND
    return figure.scene.text(figure.end, min(stop, figure.following.start) if figure.following else stop)


def _verb_kind(lemma: str) -> str:
    words = phase_words()
    if lemma in ("be", "'s", "'re"):
        return "be"
    if lemma in ("have", "'ve"):
        return "have"
    if lemma in words.reads:
        return "reading"
    if lemma in words.work:
        return "work"
    if lemma in words.bring:
        return "bring"
    return lemma if lemma in words.plain_verbs else "other"
