"""What speaks for one thing or another as the one that has the measure: named signs of each proposal.

A sign is a fact of the talk: which rules propose the thing, where it stands, what governs it, what kind of thing it is.
`weighing` adds up what each has weighed in marked talks.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.measures.attribute.near import adjoins, usual_measure
from extract.measures.candidates import is_predicate, is_reader
from extract.measures.figure import Figure, Finding
from extract.measures.item.proposals import Proposal
from extract.measures.knowledge import knowledge
from extract.measures.things import Thing

_STEPS = (1, 3, 6, 10, 16, 25, 40)
"""Tokens between which distances count as alike."""
_OFTEN = (1, 2, 4, 8)
_LATELY = 60
_HEADING = 4
"""Tokens of a sentence that only names a thing."""


def signs_of(figure: Figure, finding: Finding, proposals: list[Proposal]) -> list[list[str]]:
    """The signs of each proposal."""
    kind = figure.kind or "none"
    found = []
    for place, proposal in enumerate(proposals):
        signs = [f"by {rule}" for rule in proposal.rules]
        signs += [f"by {rule} for {kind}" for rule in proposal.rules]
        if not place:
            signs.append("by the first rule")
        signs += [f"more than {count} rules" for count in range(4) if len(proposal.rules) > count + 1]
        signs += list(_of_thing(figure, finding, proposal.thing))
        found.append(signs)
    return found


def _of_thing(figure: Figure, finding: Finding, thing: Thing) -> Iterator[str]:
    scene, kind = figure.scene, figure.kind or "none"
    yield from (f"is {thing.role}", f"is {thing.role} for {kind}")
    yield f"named {sum(scene.times_named(thing.head) > count for count in _OFTEN)}"
    yield f"head {thing.head}"
    lately = len(scene.mentions_of(thing.head, max(0, figure.start - _LATELY), figure.start))
    yield f"named lately {min(lately, 3)}"
    yield f"named lately {min(lately, 3)} for {kind}"
    if finding.attribute_rule:
        yield f"{thing.role}, attribute by {finding.attribute_rule}"
    if thing.name in knowledge().vague or thing.head in knowledge().vague:
        yield "vague"
    if is_reader(figure, thing):
        yield "read"
    elif thing.head in knowledge().readers:
        yield "may be read"
    if scene.sentences.end[thing.start] - scene.sentences.start[thing.start] <= _HEADING:
        yield "heads what follows"  # "Webbing. I take the 3 inch"
    if scene.subject is not None and thing.head == scene.subject.head:
        yield "on the bench"
    if " " in thing.name:
        yield "in two words"
    if figure.is_length and usual_measure(thing.name, figure):
        yield "has a usual measure"
    if finding.attribute:
        owner = scene.lexicon.owners.get(finding.attribute)
        if owner:
            yield "usual owner" if thing.name == owner else "another's attribute"
    if thing.start < figure.start:
        yield from _before(figure, thing)
    else:
        yield from _behind(figure, thing)


def _before(figure: Figure, thing: Thing) -> Iterator[str]:
    scene, away = figure.scene, figure.start - thing.end
    yield f"before {sum(away > step for step in _STEPS)}"
    where = (
        "in its clause"
        if thing.start >= figure.left[0]
        else "in its sentence"
        if thing.start >= figure.sentence[0]
        else "in another sentence"
    )
    yield where
    yield f"{where}, led by {thing.preposition or 'nothing'}"
    yield f"led by {thing.preposition or 'nothing'}"
    yield f"then {scene.word(thing.end)}" if scene.word(thing.end) in _TELLING else "then another word"
    if is_predicate(figure, thing):
        yield "predicate"
    if scene.clauses.start[thing.start] in range(thing.start - 2, thing.start + 1):
        yield "opens its clause"
    tag = scene.tag(thing.start - 1)[:2]
    yield f"behind {tag or 'nothing'}"
    between = figure.previous is not None and thing.end <= figure.previous.figure.start
    yield "another figure between" if between else "no figure between"
    yield from (f"{sign}{'' if scene.narration.punctuated else ', raw'}" for sign in _in_parse(figure, thing))


def _in_parse(figure: Figure, thing: Thing) -> Iterator[str]:
    token = figure.scene.doc[thing.end - 1]
    yield f"parsed as {token.dep_}"
    unit = figure.scene.doc[figure.end - 1]
    if token.is_ancestor(unit):
        yield "governs the figure"
    if token.head.is_ancestor(unit) and token.dep_ in ("nsubj", "nsubjpass"):
        yield "subject over the figure"


def _behind(figure: Figure, thing: Thing) -> Iterator[str]:
    away = thing.start - figure.end
    yield f"behind {sum(away > step for step in _STEPS)}"
    yield f"behind, led by {thing.preposition or 'nothing'}"
    if adjoins(figure, thing.start):
        yield "adjoins"
    if thing.start >= figure.right[1]:
        yield "behind its clause"
    if figure.following is not None and thing.start >= figure.following.start:
        yield "behind another figure"


_TELLING = frozenset(
    {"is", "'s", "was", "are", "were", "to", "at", "on", "in", "of", ",", ".", "and", "has", "had", "reads", "measures"}
)
