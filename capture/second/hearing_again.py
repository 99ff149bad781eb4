"""A window's figures, each held against its rivals by the sound and by sense."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.second.deciding import Outcome, Scored, decide
from capture.second.rival import Doubt, RivalMaker
from capture.second.scoring import HEAD, TAIL, Encoded, Scorer
from capture.transcript import HeardFigure, HeardReading
from capture.words import Piece


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


class SecondHearing:
    """Hears the figures of windows again with one model and one source of rivals."""

    def __init__(self, model: SpeechModel, prime: str, options: HearingOptions, rivals: RivalMaker) -> None:
        self._rivals = rivals
        self._scorer = Scorer(model, prime, options)

    def hear(self, encoded: Encoded, words: Sequence[Piece]) -> tuple[list[Piece], list[Decided]]:
        """The window's words with each figure as decided, and the decisions in order."""
        texts = [word.text for word in words]
        kept: list[Piece] = []
        decided: list[Decided] = []
        at = 0
        for doubt in self._rivals(texts):
            kept.extend(words[at : doubt.start])
            held = list(words[doubt.start : doubt.end])
            readings = self._readings(encoded, words, doubt)
            outcome = decide(readings, min(word.probability for word in held))
            if outcome.readings[0].text != readings[0].text:
                held = spread(outcome.readings[0].text.split(), held)
            decided.append(Decided(len(kept), len(kept) + len(held), readings[0].text, outcome, readings[0].score))
            kept.extend(held)
            at = doubt.end
        kept.extend(words[at:])
        return kept, decided

    def _readings(self, encoded: Encoded, words: Sequence[Piece], doubt: Doubt) -> list[Scored]:
        """What was first heard, then its rivals, each with its scores."""
        first = " ".join(word.text for word in words[doubt.start : doubt.end])
        if not doubt.rivals:
            return [Scored(first, "", 0.0, 0.0)]
        near = words[max(doubt.start - HEAD, 0) : doubt.end + TAIL]
        encoded = Scorer.around(encoded, near[0].start, near[-1].end)
        before = [word.text for word in words[max(doubt.start - HEAD, 0) : doubt.start]]
        behind = [word.text for word in words[doubt.end : doubt.end + TAIL]]
        all_texts = [first, *(rival.text for rival in doubt.rivals)]
        sounds = self._scorer.score(encoded, before, all_texts, behind)
        senses = [0.0, *(rival.sense for rival in doubt.rivals)]
        whys = ["", *(rival.why for rival in doubt.rivals)]
        return [Scored(*row) for row in zip(all_texts, whys, sounds, senses, strict=True)]


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
