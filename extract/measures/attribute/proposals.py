"""Every name that a figure's attribute may have, with what proposes it.

The rules of both tables propose, each for itself; so do the nouns beside the figure ("the camber's 12"), the usual
measures of the things beside it, and the common measures of its kind of unit.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from extract.measures.attribute import hints
from extract.measures.attribute.near import Rule, usual_measure
from extract.measures.attribute.sized import by_size
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.lexicon import Found
from extract.measures.wording import singular

_LINK_REACH = 7
"""Tokens between a noun and the figure it names."""
_SMALL_BEHIND = 4


class Proposal:
    """A name for the attribute, the rules that propose it, and the words that the first of them rests on."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.rules: list[str] = []
        self.noun: Found | None = None
        self.word: Found | None = None


def propose(
    figure: Figure, finding: Finding, said: tuple[tuple[str, Rule], ...], inferred: tuple[tuple[str, Rule], ...]
) -> list[Proposal]:
    """All proposals, in the order of the tables; at least one."""
    found: dict[str, Proposal] = {}

    def add(rule: str, name: str, probe: Finding | None = None) -> None:
        proposal = found.setdefault(name, Proposal(name))
        if not proposal.rules and probe is not None:
            proposal.noun, proposal.word = probe.noun, probe.word
        proposal.rules.append(rule)

    for table, starts_anew in ((said, True), (inferred, False)):
        for rule, find in table:
            probe = replace(finding, noun=None, word=None) if starts_anew else replace(finding)
            name = find(figure, probe)
            if name:
                add(rule, name, probe)
    for rule, name in _beside(figure, finding):
        add(rule, name)
    for side, name in hints.by_phrases(figure):
        add(f"hint {side}", name)
    for rank, name in hints.by_topics(figure):
        add(f"topic {rank}", name)
    for rank, name in hints.by_earlier(figure):
        add(f"earlier {rank}", name)
    if hints.is_worked_out(figure):
        add("worked out", "difference")
    for rule, name in by_size(figure, finding):
        add(rule, name)
    for name in knowledge().common.get(figure.kind or "none", ()):
        add("common", name)
    default = knowledge().kind_default.get(figure.kind or "", "size")
    add("default", default)
    return list(found.values())


def _beside(figure: Figure, finding: Finding) -> Iterator[tuple[str, str]]:
    yield from _named(figure)
    scene = figure.scene
    if scene.word(figure.end) == "of":
        at = figure.end + 1
        while at < min(len(scene), figure.end + _SMALL_BEHIND) and scene.tags[at][:2] in ("JJ", "DT"):
            at += 1
        if at < len(scene) and scene.is_noun(at):
            yield "of noun", scene.words[at]
    if not figure.is_length:
        return
    for place, thing in enumerate(figure.things_left()[:2]):
        usual = usual_measure(thing.name, figure)
        if usual:
            yield f"usual before {place}", usual
    for thing in scene.things_in(figure.end, figure.end + _SMALL_BEHIND)[:1]:
        usual = usual_measure(thing.name, figure)
        if usual:
            yield "usual behind", usual
    yield from _sides(figure, finding)


def _named(figure: Figure) -> Iterator[tuple[str, str]]:
    """ "the camber's 12", "venting on the low E, 3.5": the noun before, small words between."""
    scene, known, at = figure.scene, knowledge(), figure.start - 1
    stop = max(figure.sentence[0] - 1, figure.start - _LINK_REACH)
    while at > stop and (scene.words[at] in known.naming or scene.words[at] in known.clause.approximate):
        at -= 1
    if at < figure.sentence[0] or not scene.is_noun(at) or scene.is_figure(at):
        return
    noun = singular(scene.words[at])
    yield "named", noun
    if at > figure.sentence[0] and scene.tags[at - 1][:2] in ("NN", "JJ") and not scene.is_figure(at - 1):
        yield "named in two words", f"{scene.words[at - 1]} {noun}"


def _sides(figure: Figure, finding: Finding) -> Iterator[tuple[str, str]]:
    """ "8 mm by 10": which side the first is, and the second."""
    scene, by = figure.scene, {("by",), ("x",)}
    round_thing = finding.item is not None and usual_measure(finding.item.name, figure) == "diameter"
    following = figure.following
    if following is not None and scene.text(figure.end, following.start) in by:
        yield from (("first side", name) for name in ("diameter" if round_thing else "length", "width", "height"))
    if figure.previous is not None and figure.gap() in by:
        yield from (("second side", name) for name in ("length" if round_thing else "width", "length", "depth"))
