"""A window's figures, each held against its rivals by the sound and by sense."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.second.deciding import Outcome, Scored, decide, settled
from capture.second.rehearing import Rehearer
from capture.second.rival import Doubt, Rival, RivalMaker
from capture.second.scoring import HEAD, TAIL, Encoded, Scorer
from capture.transcript import HeardFigure, HeardReading
from capture.words import Piece

MOST_FURTHER = 6
"""Readings with a second change that are weighed; more cost time and rarely win."""


@dataclass(frozen=True, slots=True)
class Decided:
    """Words `start` to `end` (exclusive) as they now read, and how that came about."""

    start: int
    end: int
    first_heard: str
    outcome: Outcome
    base: float
    """Score of what was first heard; the others are given as leads over it."""

    def moved(self, by: int) -> Decided:
        """The same, `by` words further on."""
        return replace(self, start=self.start + by, end=self.end + by)

    def figure(self, words: Sequence[Piece]) -> HeardFigure:
        """For the transcript whose words these are."""
        return HeardFigure(
            start=words[self.start].start,
            end=words[self.end - 1].end,
            first_heard=self.first_heard,
            readings=tuple(
                HeardReading(text=one.text, score=round(one.score - self.base, 2), why=one.why)
                for one in self.outcome.readings
            ),
            confidence=round(self.outcome.confidence, 4),
            near_tie=self.outcome.near_tie,
        )


@dataclass(frozen=True, slots=True)
class Moment:
    """The sound of a figure, its words as first heard, and the words beside it."""

    encoded: Encoded
    before: Sequence[str]
    stretch: Sequence[str]
    behind: Sequence[str]


class SecondHearing:
    """Hears the figures of windows again with one model and one source of rivals."""

    def __init__(self, model: SpeechModel, prime: str, options: HearingOptions, rivals: RivalMaker) -> None:
        self._rivals = rivals
        self._scorer = Scorer(model, prime, options)
        self._rehearer = Rehearer(self._scorer)

    def hear(self, encoded: Encoded, words: Sequence[Piece]) -> tuple[list[Piece], list[Decided]]:
        """The window's words with each figure as decided, and the decisions in order."""
        texts = [word.text for word in words]
        kept: list[Piece] = []
        decided: list[Decided] = []
        at = 0
        for doubt in self._rivals(texts):
            kept.extend(words[at : doubt.start])
            held = list(words[doubt.start : doubt.end])
            moment = _moment(encoded, words, doubt)
            first = " ".join(moment.stretch)
            outcome, base = self._decide(moment, doubt, min(word.probability for word in held))
            if outcome.readings[0].text != first:
                held = spread(outcome.readings[0].text.split(), held)
            decided.append(Decided(len(kept), len(kept) + len(held), first, outcome, base))
            kept.extend(held)
            at = doubt.end
        kept.extend(words[at:])
        return kept, decided

    def _decide(self, moment: Moment, doubt: Doubt, sureness: float) -> tuple[Outcome, float]:
        """The outcome for a figure, and the score of what was first heard."""
        rivals = {rival.text: rival for rival in doubt.rivals}
        readings = self._weigh(moment, list(rivals.values()))
        outcome = decide(readings, sureness)
        if not settled(outcome):
            alone = self._rehearer.texts(moment.encoded, moment.before, moment.stretch, moment.behind)
            more = {one.text: one for one in doubt.reread(alone) if one.text not in rivals}
            readings = self._join(readings, moment, list(more.values()))
            agrees = alone[:1] == [outcome.readings[0].text] or not more.keys() & set(alone[:1])
            outcome = decide(readings, sureness, agrees=agrees and not more)
            rivals |= more
        if outcome.readings[0] is not readings[0]:
            readings = self._join(readings, moment, self._further(moment, outcome.readings[0], rivals))
            outcome = decide(readings, sureness, agrees=outcome.agrees)
        return outcome, readings[0].score

    def _further(self, moment: Moment, decided: Scored, known: Collection[str]) -> list[Rival]:
        """Rivals of the decided reading: a figure may have been misheard in two places."""
        stretch = decided.text.split()
        words = [*moment.before, *stretch, *moment.behind]
        inside = range(len(moment.before), len(moment.before) + len(stretch))
        found: list[Rival] = []
        for doubt in self._rivals(words):
            for rival in doubt.rivals:
                changed = [*words[: doubt.start], *rival.text.split(), *words[doubt.end :]]
                end = len(changed) - len(moment.behind)
                text = " ".join(changed[len(moment.before) : end])
                whole = changed[: len(moment.before)] == words[: len(moment.before)]
                if whole and changed[end:] == list(moment.behind) and doubt.start in inside and text not in known:
                    found.append(Rival(text, f"{decided.why}; {rival.why}", decided.sense + rival.sense))
        return found[:MOST_FURTHER]

    def _weigh(self, moment: Moment, rivals: Sequence[Rival]) -> list[Scored]:
        """What was first heard, then its rivals, each with its scores."""
        first = " ".join(moment.stretch)
        if not rivals:
            return [Scored(first, "", 0.0, 0.0)]
        all_texts = [first, *(rival.text for rival in rivals)]
        sounds = self._scorer.score(moment.encoded, moment.before, all_texts, moment.behind)
        senses = [0.0, *(rival.sense for rival in rivals)]
        whys = ["", *(rival.why for rival in rivals)]
        return [Scored(*row) for row in zip(all_texts, whys, sounds, senses, strict=True)]

    def _join(self, readings: list[Scored], moment: Moment, more: Sequence[Rival]) -> list[Scored]:
        """The readings with further rivals, all on one footing: what was first heard is scored with both."""
        if not more:
            return readings
        first, *others = self._weigh(moment, more)
        known, *rivals = readings
        by = first.sound - known.sound
        return [first, *(replace(one, sound=one.sound + by) for one in rivals), *others]


def _moment(encoded: Encoded, words: Sequence[Piece], doubt: Doubt) -> Moment:
    near = words[max(doubt.start - HEAD, 0) : doubt.end + TAIL]
    texts = [word.text for word in words]
    return Moment(
        Scorer.around(encoded, near[0].start, near[-1].end),
        texts[max(doubt.start - HEAD, 0) : doubt.start],
        texts[doubt.start : doubt.end],
        texts[doubt.end : doubt.end + TAIL],
    )


def spread(texts: Sequence[str], over: Sequence[Piece]) -> list[Piece]:
    """Words over the time of others: one that stays keeps its time, the others share what is between by length."""
    same = 0
    while same < min(len(texts), len(over)) and texts[same] == over[same].text:
        same += 1
    tail = 0
    while tail < min(len(texts), len(over)) - same and texts[-1 - tail] == over[-1 - tail].text:
        tail += 1
    if same + tail == len(over):
        # Words that were added get a share of a neighbour's time.
        same, tail = (same, tail - 1) if tail else (same - 1, tail)
    new = texts[same : len(texts) - tail]
    old = over[same : len(over) - tail]
    start, end = old[0].start, old[-1].end
    sure = min(word.probability for word in old)
    length = sum(len(text) for text in new) or 1
    pieces: list[Piece] = []
    at = start
    for text in new:
        until = min(at + (end - start) * len(text) / length, end)
        pieces.append(Piece(text, at, until, sure))
        at = until
    return [*over[:same], *pieces, *over[len(over) - tail :]] if tail else [*over[:same], *pieces]
