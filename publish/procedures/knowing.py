"""Knows the same procedure again in several sessions.

Runs of steps are put one by one, the oldest session first, to the procedure that they are most like, or begin a new one
(leader clustering: Hartigan 1975, Clustering Algorithms, chapter 3). A person's groups stand first and are never
changed (seeded clustering: Basu, Banerjee and Mooney 2002, "Semi-supervised Clustering by Seeding"). Then the steps of
each session are read once more against the procedures of the others, by the best path over procedures with a cost for
each change (Viterbi 1967), so that what two sessions did apart is told apart in the one that did both. Nothing is
compared with everything: an inverted index gives the few procedures worth a look.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass

from publish.procedures.cutting import cut
from publish.procedures.deeds import Deed
from publish.procedures.likeness import Features, deed_features, summed, to_length_1, together
from publish.procedures.outline import Course
from publish.procedures.profiles import Profiles
from publish.procedures.rulings.replay import Key

_LIKE = 0.3
"""Least cosine of a run with the procedure that it is put to."""
_OWN = 0.2
"""What the run that a step stood in counts, against the cosine of the step with another session's procedure."""
_CHANGE = 0.35
"""Cost of going over from one procedure to another;"""
_CHANGE_AT_CUT = 0.15
"""where the session's steps were cut without regard to others, which tells too that another job begins."""


@dataclass(frozen=True, slots=True)
class Run:
    """Steps of one session, one behind the other."""

    work: int
    """Place of the session."""
    begin: int
    end: int
    """Places among its steps, the end behind the last."""
    held: int | None = None
    """The person's group that it belongs to; null where that is for the machine to say."""


Known = tuple[tuple[Run, int], ...]
"""Runs, each with the number of its procedure; those below the number of groups are the person's."""


def know(works: Sequence[Course], held: Mapping[Key, int], groups: int) -> Known:
    """The procedure of every step; `held` are the steps that a person's `groups` have."""
    reader = _Reader(works, groups)
    runs = [run for at, work in enumerate(works) for run in _first_runs(at, work, held)]
    known, profiles = reader.put(runs)
    again = reader.read_again(known, profiles)
    return _joined(reader.put(again)[0])


def _first_runs(at: int, work: Course, held: Mapping[Key, int]) -> list[Run]:
    """The person's runs as they are, and the machine's cut of the steps between them."""
    owners = [held.get((work.slug, step.id)) for step in work.steps]
    if not any(owner is not None for owner in owners):
        return [Run(at, begin, end) for begin, end in work.runs]
    runs: list[Run] = []
    begin = 0
    for end in range(1, len(owners) + 1):
        if end < len(owners) and owners[end] == owners[begin]:
            continue
        if owners[begin] is None:
            deeds = [step.deeds for step in work.steps[begin:end]]
            runs.extend(Run(at, begin + first, begin + last) for first, last in cut(deeds))
        else:
            runs.append(Run(at, begin, end, owners[begin]))
        begin = end
    return runs


def _joined(known: Known) -> Known:
    """Neighbouring runs of one procedure as one."""
    joined: list[tuple[Run, int]] = []
    for run, number in known:
        before = joined[-1] if joined else None
        if before and before[1] == number and before[0].work == run.work and before[0].end == run.begin:
            joined[-1] = (Run(run.work, before[0].begin, run.end), number)
        else:
            joined.append((run, number))
    return tuple(joined)


class _Reader:
    """The features of all steps, and the two ways of reading them."""

    def __init__(self, works: Sequence[Course], groups: int) -> None:
        self._groups = groups
        self._known: dict[Hashable, tuple[list[Features], Features]] = {}
        read = [[self._features(step.deeds) for step in work.steps] for work in works]
        self._deeds = [[deeds for deeds, _ in work] for work in read]
        self._steps = [[whole for _, whole in work] for work in read]
        self._runs: dict[tuple[int, int, int], Features] = {}
        self._near: dict[int, tuple[int, ...]] = {}
        """Procedures near to a step, by the id of its features: what is done alike has them in common."""

    def put(self, runs: Sequence[Run]) -> tuple[Known, Profiles]:
        """Each run with the procedure that it is most like, the person's first."""
        profiles = Profiles(self._groups)
        for run in runs:
            if run.held is not None:
                profiles.add(run.held, self._run(run), run.work)
        known: list[tuple[Run, int]] = []
        for run in runs:
            number = run.held
            if number is None:
                features = self._run(run)
                near = profiles.nearest(features)
                number = near[0][1] if near and near[0][0] >= _LIKE else profiles.new()
                profiles.add(number, features, run.work)
            known.append((run, number))
        return tuple(known), profiles

    def read_again(self, known: Known, profiles: Profiles) -> list[Run]:
        """The runs as the other sessions' procedures cut them; the person's stay."""
        runs: list[Run] = []
        self._near.clear()
        stretch: list[tuple[Run, int]] = []
        for one in known:
            if stretch and (one[0].work != stretch[-1][0].work or one[0].held is not None):
                runs.extend(self._stretch(stretch, profiles))
                stretch = []
            if one[0].held is not None:
                runs.append(one[0])
            else:
                stretch.append(one)
        return runs + self._stretch(stretch, profiles)

    def _features(self, deeds: Sequence[Deed]) -> tuple[list[Features], Features]:
        """Of each deed of a step, and of the step; what is done alike is worked out once."""
        done = tuple((deed.act, deed.things) for deed in deeds)
        if done not in self._known:
            each = [deed_features(deed) for deed in deeds]
            self._known[done] = each, to_length_1(together(each))
        return self._known[done]

    def _run(self, run: Run) -> Features:
        place = (run.work, run.begin, run.end)
        if place not in self._runs:
            self._runs[place] = summed(deed for step in self._deeds[run.work][run.begin : run.end] for deed in step)
        return self._runs[place]

    def _stretch(self, stretch: Sequence[tuple[Run, int]], profiles: Profiles) -> list[Run]:
        """The best cut of the steps of neighbouring runs."""
        if not stretch:
            return []
        work, first = stretch[0][0].work, stretch[0][0].begin
        steps = self._steps[work][first : stretch[-1][0].end]
        own = [at for at, (run, _) in enumerate(stretch) for _ in range(run.begin, run.end)]
        scores = self._scores(work, steps, stretch, profiles)
        path = _best_path(scores, own)
        begins = [at for at in range(len(path)) if at == 0 or path[at] != path[at - 1]]
        return [
            Run(work, first + begin, first + end) for begin, end in zip(begins, [*begins[1:], len(path)], strict=True)
        ]

    def _scores(
        self, work: int, steps: Sequence[Features], stretch: Sequence[tuple[Run, int]], profiles: Profiles
    ) -> list[dict[int, float]]:
        """For each step, how like it is to each procedure that other sessions did."""
        numbers = {number for _, number in stretch}
        for step in steps:
            if id(step) not in self._near:
                self._near[id(step)] = tuple(number for _, number in profiles.nearest(step))
            numbers.update(self._near[id(step)])
        shared = sorted(number for number in numbers if profiles.elsewhere(number, work))
        mine = {number: together(self._run(run) for run, of in stretch if of == number) for _, number in stretch}
        return profiles.scores(steps, shared, mine)


def _best_path(scores: Sequence[dict[int, float]], own: Sequence[int]) -> list[tuple[str, int]]:
    """For each step the procedure, or the run that it stood in, on the best path."""
    states = [("shared", number) for number in scores[0]] + [("own", run) for run in dict.fromkeys(own)]

    def worth(at: int, state: tuple[str, int]) -> float:
        kind, number = state
        return scores[at][number] if kind == "shared" else _OWN * (own[at] == number)

    reached = [{state: (worth(0, state), state) for state in states}]
    for at in range(1, len(scores)):
        before = reached[-1]
        top = max(states, key=lambda state: before[state][0])
        cost = _CHANGE if own[at] == own[at - 1] else _CHANGE_AT_CUT
        row = {}
        for state in states:
            stay, change = before[state][0], before[top][0] - cost
            row[state] = (max(stay, change) + worth(at, state), state if stay >= change else top)
        reached.append(row)
    last = max(states, key=lambda state: reached[-1][state][0])
    path = [last]
    for row in reversed(reached[1:]):
        path.append(row[path[-1]][1])
    return path[::-1]
