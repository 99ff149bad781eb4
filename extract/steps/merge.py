"""Candidates that tell one step together: "glue in both faces, rub it along", "coil it down, slide the keeper on".

Refuses to join "warm the seat" to "pull the spindles" in the breath before: another thing, another step.
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.bench import Bench
from extract.clauses.things import name_of
from extract.steps.candidate import Candidate


@dataclass(frozen=True, slots=True)
class Limits:
    """How far one step may reach; from reading bench talk, no source."""

    silence: float = 5.0
    """Seconds. Longer, and the next words are another step."""
    cues: int = 4
    actions: int = 5


Group = tuple[Candidate, ...]


def merge(bench: Bench, candidates: tuple[Candidate, ...], limits: Limits | None = None) -> tuple[Group, ...]:
    """The candidates in groups, in spoken order, each group one step."""
    limits = limits or Limits()
    groups: list[list[Candidate]] = []
    for candidate in candidates:
        if groups and _belongs(bench, groups[-1], candidate, limits):
            groups[-1].append(candidate)
        else:
            groups.append([candidate])
    return tuple(tuple(group) for group in groups)


def _belongs(bench: Bench, group: list[Candidate], candidate: Candidate, limits: Limits) -> bool:
    first, last = group[0], group[-1]
    here, there = bench.cue[candidate.start], bench.cue[last.end - 1]
    if candidate.start < last.end:
        return True
    if len(group) >= limits.actions or here - bench.cue[first.start] >= limits.cues:
        return False
    if here == there:
        return True
    narration = bench.narration
    if here - there > 1 or narration.start[candidate.start] - narration.end[last.end - 1] > limits.silence:
        return False
    if not candidate.own_subject or _goes_with(bench, last, candidate):
        return True
    names = {name_of(bench, other.meant) for other in group if other.meant is not None}
    if candidate.thing is None or candidate.thing.pronoun:
        if candidate.piece.sentence != last.piece.sentence and candidate.piece.joiner not in {"and", "then"}:
            return False
        return candidate.meant is None or name_of(bench, candidate.meant) in names
    return name_of(bench, candidate.thing) in names


def _goes_with(bench: Bench, last: Candidate, candidate: Candidate) -> bool:
    """Readings taken one after another, and a wait behind the work that it is for: "leave that an hour"."""
    if candidate.shape in {"reading", "finding"} and last.verb == "measure":
        return True
    waits = candidate.verb.split()[0] in {"leave", "wait", "let"} and "time" in bench.unit_kinds(
        candidate.start, candidate.end
    )
    return waits and (candidate.thing is None or candidate.thing.pronoun)
