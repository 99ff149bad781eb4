"""Candidates that tell one step together: "glue in both faces, rub it along", "coil it down, slide the keeper on".

Keeps "warm the seat" apart from "pull the spindles" in the breath before: another thing, another step. A doubtful
candidate is no step by itself, but joins the one beside it.
"""

from __future__ import annotations

from dataclasses import dataclass

from extract.clauses.bench import Bench
from extract.clauses.talk import talk
from extract.clauses.things import name_of
from extract.steps.candidate import Candidate
from extract.steps.evidence import Weights
from extract.steps.gather import Told


@dataclass(frozen=True, slots=True)
class Limits:
    """How far one step may reach, from reading bench talk; the chances from cross-validation on marked narrations."""

    silence: float = 5.0
    """Seconds. Longer, and the next words are another step."""
    cues: int = 4
    actions: int = 5
    heard: float = 0.25
    """Chance under which a candidate is passed over."""
    believed: float = 0.38
    """Chance that the likeliest candidate of a step must reach."""
    doubtful: float = 0.55
    """Under this chance a candidate joins its neighbour, or its neighbour joins it, whatever thing it names."""
    loose_silence: float = 8.0
    loose_cues: int = 3
    """The same for the joining of doubtful ones, in seconds and cues."""
    loose_actions: int = 6


@dataclass(frozen=True, slots=True)
class Weighed:
    """A candidate and the chance that it is a step."""

    candidate: Candidate
    chance: float


Group = tuple[Weighed, ...]
_OPENING = frozenset({"now", "next", "right", "okay", "first"})


def merge(bench: Bench, told: tuple[Told, ...], weights: Weights, limits: Limits | None = None) -> tuple[Group, ...]:
    """The believed candidates in groups, in spoken order, each group one step."""
    limits = limits or Limits()
    groups: list[list[Weighed]] = []
    for one in _heard(told, weights, limits.heard):
        if groups and _belongs(bench, groups[-1], one, limits):
            groups[-1].append(one)
        else:
            groups.append([one])
    return tuple(tuple(group) for group in groups if max(one.chance for one in group) >= limits.believed)


def _heard(told: tuple[Told, ...], weights: Weights, least: float) -> list[Weighed]:
    """Those that are likely enough to be listened to, of two that overlap the likelier."""
    heard: list[Weighed] = []
    for one in told:
        chance = weights.chance(dict.fromkeys(one.signs, 1.0))
        if chance < least:
            continue
        if heard and one.candidate.start < heard[-1].candidate.end:
            if chance <= heard[-1].chance:
                continue
            heard.pop()
        heard.append(Weighed(one.candidate, chance))
    return heard


def _belongs(bench: Bench, group: list[Weighed], one: Weighed, limits: Limits) -> bool:
    candidates = [other.candidate for other in group]
    if any(
        talk().before.length_at(bench.lower, at) for at in range(one.candidate.piece.start, one.candidate.start + 1)
    ):
        return False
    return _tells_on(bench, candidates, one.candidate, limits) or _is_drawn(bench, group, one, limits)


def _is_drawn(bench: Bench, group: list[Weighed], one: Weighed, limits: Limits) -> bool:
    """True where one of two neighbours is doubtful, and nothing parts them."""
    first, last, candidate = group[0].candidate, group[-1].candidate, one.candidate
    narration = bench.narration
    if len(group) >= limits.loose_actions or bench.cue[candidate.start] - bench.cue[last.end - 1] > 1:
        return False
    if bench.cue[candidate.end - 1] - bench.cue[first.start] >= limits.loose_cues:
        return False
    if narration.start[candidate.start] - narration.end[last.end - 1] > limits.loose_silence:
        return False
    if not _OPENING.isdisjoint(bench.lower[candidate.piece.start : candidate.piece.lead]):
        return False
    return min(one.chance, max(other.chance for other in group)) < limits.doubtful


def _tells_on(bench: Bench, group: list[Candidate], candidate: Candidate, limits: Limits) -> bool:
    """True where a candidate goes on with the same thing, or carries on the sentence."""
    first, last = group[0], group[-1]
    here, there = bench.cue[candidate.start], bench.cue[last.end - 1]
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
