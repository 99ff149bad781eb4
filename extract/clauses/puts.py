"""Things put one after another without a verb: "glass back in, bar on"."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES, grammar
from extract.clauses.things import thing_at


def puts_next(bench: Bench, at: int, start: int) -> bool:
    """ "glass back in | bar on": a particle closes one thing put, a thing and its particle open the next."""
    if bench.word(at - 1) not in PARTICLES or bench.word(at) in PARTICLES or not _is_put(bench, start, at - 1):
        return False
    thing = thing_at(bench, at, len(bench))
    if thing is None or thing.pronoun or bench.cue[thing.head] != bench.cue[at]:
        return False
    behind = bench.word(thing.end + 1)
    return bench.word(thing.end) in PARTICLES and not bench.takes_object(thing.end + 1) and behind not in {"of"}


def _is_put(bench: Bench, start: int, at: int) -> bool:
    """True where nothing but a thing and particles stands between two tokens."""
    while start < at and bench.word(start) in grammar().openers:
        start += 1
    thing = thing_at(bench, start, at)
    return thing is not None and all(bench.word(k) in PARTICLES for k in range(thing.end, at))
