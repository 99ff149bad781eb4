"""Nouns that name work: "a quick wipe", "a dry run", "a few scrapes".

Refuses a part ("the stop"), a fault ("a split") and any noun that is no verb of work.
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.things import Thing


def work_noun(bench: Bench, thing: Thing) -> str | None:
    """The work that a noun phrase names: "a quick wipe", "a dry run"; null for a part, a fault or anything else."""
    words = bench.lower[thing.start : thing.head + 1]
    pair = " ".join(words[-2:])
    if len(words) > 1 and pair in bench.words.work:
        return pair
    if words[-1] in bench.words.nouns or bench.term_kind[thing.head] is not None or bench.tag(thing.head) == "NNS":
        return _counted(bench, thing)
    if bench.verb(thing.head) is not None and bench.word(thing.head).endswith("ing") and thing.start < thing.head:
        lemma = bench.verb(thing.head)
        return lemma.lemma if lemma and lemma.lemma in bench.words.work else None
    return words[-1] if words[-1] in bench.words.work and thing.start < thing.head else None


def _counted(bench: Bench, thing: Thing) -> str | None:
    """ "a few scrapes", "two wipes": the work some times over."""
    singular = bench.word(thing.head).removesuffix("s")
    counted = bench.tag(thing.start) == "CD" or bench.word(thing.head - 1) in {"few", "couple", "more", "light"}
    known = singular in bench.words.work and bench.term_kind[thing.head] is None and singular not in bench.words.nouns
    return singular if counted and known else None
