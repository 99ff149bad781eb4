"""What speaks for one name of an attribute or another: named signs of each proposal.

A sign is a fact of the talk: which rule proposes it, how large the figure is, what the thing usually has measured, the
small words beside the figure. `weighing` adds up what each has weighed in marked talks.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.measures.attribute.near import adjoins, length_in_inches, usual_measure
from extract.measures.attribute.proposals import Proposal
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge

_STEPS = (0.004, 0.02, 0.06, 0.15, 0.4, 1, 2.5, 6, 15, 40)
"""Inches between which lengths count as alike."""
_VERB_REACH, _PREVIOUS_REACH, _WORDS = 12, 60, 3
_OPEN = ("named", "named in two words")
_PLAIN = (*_OPEN, "common", "default")
_ENDINGS = ("th", "ance", "ence", "ion", "ment", "age", "ity", "ness", "ing", "al")
"""Endings of nouns that name no thing: width, clearance, tension."""


def signs_of(figure: Figure, finding: Finding, proposals: list[Proposal], known: frozenset[str]) -> list[list[str]]:
    """The signs of each proposal. `known` are the names that the marked talks use often; all others are alike."""
    facts = list(_facts(figure, finding))
    previous = next((one for one in figure.earlier(_PREVIOUS_REACH) if one.figure.kind == figure.kind), None)
    kind = figure.kind or "none"
    found = []
    for proposal in proposals:
        name = proposal.name if proposal.name in known else "another name"
        signs = [f"by {rule}" for rule in dict.fromkeys(proposal.rules)]
        signs += [f"by {rule} for {kind}" for rule in dict.fromkeys(proposal.rules) if rule not in _PLAIN]
        signs += [f"{name} by {rule}" for rule in dict.fromkeys(proposal.rules)]
        signs += [name, *(f"{name}: {fact}" for fact in facts)]
        backers = len(set(proposal.rules) - set(_PLAIN))
        signs += [f"more than {count} rules" for count in range(3) if backers > count]
        if previous is not None and previous.attribute == proposal.name:
            signs += ["as before", f"as before, item by {finding.item_rule}"]
            if previous.head == finding.head:
                signs.append("as before of the same")
        if set(_OPEN) & set(proposal.rules):
            signs += list(_nature(figure, proposal.name))
        found.append(signs)
    return found


def _facts(figure: Figure, finding: Finding) -> Iterator[str]:
    """What holds for the figure, whichever name it gets."""
    scene, item = figure.scene, finding.item
    inches = length_in_inches(figure)
    yield f"kind {figure.kind or 'none'}"
    if figure.kind == "length":
        yield f"size {sum(inches > step for step in _STEPS)}"
    usual = usual_measure(item.name, figure) if item is not None and figure.is_length else None
    yield f"usually {usual or 'unknown'}"
    yield f"item by {finding.item_rule or 'nothing'}"
    if item is not None:
        yield from (f"item is {item.role}", f"of {item.head}")
    earliest = max(figure.sentence[0], figure.start - _VERB_REACH)
    verbs = (scene.lemmas[at] for at in range(figure.start - 1, earliest - 1, -1) if scene.is_verb(at))
    yield from (f"verb {verb}" for verb in [*verbs][:1])
    for thing in scene.things_in(figure.end, figure.end + 4)[:1]:
        if adjoins(figure, thing.start):
            yield from ("thing behind", f"before {thing.head}")
    if figure.quantity.difference:
        yield "a difference"
    if figure.quantity.low is not None:
        yield "a range"
    cues = knowledge().cues
    yield from (
        f"then {word}" for word in set(scene.words[figure.end : min(figure.end + _WORDS, figure.right[1])]) & cues
    )
    yield from (
        f"led by {word}" for word in set(scene.words[max(figure.left[0], figure.start - _WORDS) : figure.start]) & cues
    )


def _nature(figure: Figure, name: str) -> Iterator[str]:
    """Whether a noun is likely to name a measure at all."""
    lexicon = figure.scene.lexicon
    if name.endswith(_ENDINGS):
        yield "named, ends as measures do"
    yield "named, a part" if lexicon.part_named(name) else "named, no part"
    if name in lexicon.kinds:
        yield "named, an attribute of the trade"
    if name in knowledge().loose_nouns:
        yield "named, a noun of measure"
