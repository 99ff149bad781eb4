"""The single things done in a step: "tap the nut out, then clean the slot" is two deeds.

A deed is an act and the things that it is done to and with. The steps of a record often join several, and where they
are joined differs from film to film; deeds are what can be compared.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from extract.clauses.terms import Terms
from extract.record import Step
from extract.roots import root
from publish.procedures.acts import act_of, act_words, begins_with_verb, with_particle
from publish.procedures.things import Things, full_names, things_in, words_of

_JOINTS = re.compile(r"[,;]\s+(?:and\s+)?then\s+|[,;]\s+|\.\s+|\s+then\s+", re.IGNORECASE)
_THEN = re.compile(r"\bthen\b", re.IGNORECASE)
_PRONOUNS = frozenset({"it", "them", "that", "this", "those", "these", "one", "ones"})


@dataclass(frozen=True, slots=True)
class Deed:
    """One thing done."""

    act: str
    """Its one name: "remove"."""
    text: str
    """The instruction, capital first, without a full stop."""
    things: Things
    borrows: bool = False
    """It speaks of "it", which an earlier deed named."""


def deeds_of(steps: Sequence[Step], terms: Terms) -> tuple[tuple[Deed, ...], ...]:
    """The deeds of each step of a session, in order; at least one a step."""
    named = [full_names(words_of(step.text), terms) for step in steps]
    listed: list[tuple[Deed, ...]] = []
    before: Things = Things()
    for at, step in enumerate(steps):
        near = (*named[at::-1], *named[at + 1 : at + 2])
        full = {word: name for names in reversed(near) for word, name in names.items()}
        deeds = _in_step(step, terms, full, before)
        before = deeds[-1].things
        listed.append(deeds)
    return tuple(listed)


def _in_step(step: Step, terms: Terms, full: Mapping[str, str], before: Things) -> tuple[Deed, ...]:
    clauses = tuple(_clauses(step.text)) or (step.text.strip() or step.quote,)
    verbs = [verb.strip() for verb in step.verb.split(" and ")]
    matched = len(verbs) == len(clauses)
    deeds: list[Deed] = []
    for at, clause in enumerate(clauses):
        words = words_of(clause)
        verb = begins_with_verb(words) or (words[0] if words else "")
        rest = words[len(verb.split()) :]
        things = things_in(rest, terms, full.get)
        told = verbs[at] if matched and verb and verbs[at].split()[:1] == verb.split()[:1] else verb
        borrows = not things.parts and not _PRONOUNS.isdisjoint(rest)
        if borrows:
            things = replace(things, parts=before.parts, materials=things.materials or before.materials)
        text = clause[:1].upper() + clause[1:].rstrip(" .")
        deeds.append(Deed(_act(told, rest, things), text, things, borrows))
        before = things
    return tuple(deeds)


def _clauses(text: str) -> Iterator[str]:
    """The instructions that a text joins; a piece that begins with no verb belongs to the one before."""
    begun = 0
    for joint in _JOINTS.finditer(text) if _THEN.search(text) else ():
        if text[begun : joint.start()].strip() and begins_with_verb(words_of(text[joint.end() :])) is not None:
            yield text[begun : joint.start()].strip()
            begun = joint.end()
    if text[begun:].strip():
        yield text[begun:].strip()


def _act(verb: str, rest: tuple[str, ...], things: Things) -> str:
    """The act; putting on a material that is applied is what it is put on for."""
    words = act_words()
    act = act_of(with_particle(verb, rest) if "/" not in verb else verb)
    if not ({verb.split()[0], act} & words.applying if verb else False):
        return act
    for word in rest:
        if word in words.old:
            return act
        if root(word) in words.applied:
            return words.applied[root(word)]
        if any(root(word) in part.split() for part in things.parts):
            return act
    return act
