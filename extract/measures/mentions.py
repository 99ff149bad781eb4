"""Where the trade's words stand in a narration.

Takes "thin the top" (a verb), "the plate's thick" (an adjective), "stop is 220" (a noun that the tagger takes for a
verb); refuses "425 times 35" for a time.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from extract.measures.clauses import Bounds
from extract.measures.knowledge import ANY_KIND, knowledge
from extract.measures.lexicon import Found, Lexicon
from extract.measures.reading import Reading

_SHORT = 3
"""Tokens of a clause that only names what comes: "Post now."."""


_OF_PLACE = frozenset({"at", "over", "of", "across", "between", "under"})
"""Behind a word that heads a clause these show a noun: "Play at the spindle end"."""
_LEAD_IN = frozenset({"DT", "PRP$", "JJ", "NN", "NNS", "POS", "IN"})


@dataclass(slots=True)
class Mentions:
    """Words of measure and names of things, each list in the order of speaking."""

    nouns: list[Found] = field(default_factory=list)
    adjectives: list[Found] = field(default_factory=list)
    verbs: list[Found] = field(default_factory=list)
    things: list[Found] = field(default_factory=list)
    """The longest name that begins at each token."""


def find_mentions(reading: Reading, clauses: Bounds, lexicon: Lexicon) -> Mentions:
    """All of the trade's words in a narration, outside its figures; the gauge of a "dial gauge" is no gauge."""
    mentions = Mentions()
    lists = {"noun": mentions.nouns, "adjective": mentions.adjectives, "verb": mentions.verbs}
    for at, word in enumerate(reading.words):
        if reading.is_figure(at) or not word[0].isalnum():
            continue
        named = False
        for found in lexicon.at(reading.words, reading.lemmas, at):
            if any(reading.is_figure(here) for here in range(found.start, found.end)):
                continue
            if not _fits(reading, clauses, found):
                continue
            if found.entry.role in lists:
                lists[found.entry.role].append(found)
            elif not named:
                mentions.things.append(found)
                named = True
    covered = {at for thing in mentions.things for at in range(thing.start, thing.end) if thing.end - thing.start > 1}
    mentions.nouns = [noun for noun in mentions.nouns if not covered.issuperset(range(noun.start, noun.end))]
    return mentions


def _fits(reading: Reading, clauses: Bounds, found: Found) -> bool:
    """Whether the part of speech allows the reading; the tagger is unsure of commands ("broach the plate")."""
    start, last = found.start, found.end - 1
    tag, before = reading.tag(last), reading.tag(last - 1)
    if found.entry.role == "adjective":
        return True
    if found.entry.role == "verb":
        commands = reading.tag(start) == "NN" and reading.tag(found.end) in ("DT", "PRP$")
        return reading.is_verb(start) or commands
    loose = found.entry.attribute is not None and found.entry.attribute.kind == ANY_KIND
    if loose and not _told_of(reading, clauses, found):
        return False
    if found.end - start > 1:
        return True
    if reading.words[last] in knowledge().lone_readers | {"gauge"} and before in ("DT", "PRP$"):
        return False  # "on the gauge": what is read
    if reading.words[last] in knowledge().clause.no_nouns:
        return reading.is_figure(last - 1)
    if tag[:2] in ("VB", "MD"):
        return before in ("DT", "PRP$") or _heads_clause(reading, clauses, found)
    return tag[:2] == "NN" or before in ("DT", "PRP$", "JJ")


def _told_of(reading: Reading, clauses: Bounds, found: Found) -> bool:
    """A noun that names any kind of measure: "the drop is two", "of drag"; not "the drop screw", "drop it"."""
    if reading.is_noun(found.end) and reading.runs_on(found.end - 1, found.end):
        return False
    if reading.word(found.end) in ("in", "off", "out", "apart", "away"):
        return False
    return reading.tag(found.start - 1) in _LEAD_IN or _heads_clause(reading, clauses, found)


def _heads_clause(reading: Reading, clauses: Bounds, found: Found) -> bool:
    if clauses.start[found.start] != found.start:
        return False
    behind = reading.word(found.end)
    if behind in knowledge().clause.being or behind == ":" or behind in _OF_PLACE:
        return True
    return behind in ("now", "next", "first") and clauses.end[found.start] - found.start <= _SHORT
