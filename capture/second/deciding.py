"""Which reading of a figure stands, how sure that is, and whether a rival comes too near.

What was first heard keeps standing unless a rival is clearly ahead, by the sound and by sense added up. Sense alone
never overrules the sound. The bounds are in data/second.toml.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class Scored:
    """A reading and what speaks for it, in nats."""

    text: str
    why: str
    sound: float
    """Log probability of the text, given the sound."""
    sense: float
    """How well the sentence and the trade allow it."""

    @property
    def score(self) -> float:
        """Both together; only differences mean anything."""
        return self.sound + self.sense


@dataclass(frozen=True, slots=True)
class Outcome:
    """The decided reading first, then its rivals, the likeliest first."""

    readings: tuple[Scored, ...]
    confidence: float
    near_tie: bool
    agrees: bool | None = None
    """Whether the moment, heard alone, gave the same figure; null where it wasn't."""


def decide(readings: Sequence[Scored], sureness: float, *, agrees: bool | None = None) -> Outcome:
    """The outcome for a figure; `readings` has what was first heard in front, `sureness` is its least sure word's."""
    weights = _weights()
    first, *rivals = readings
    rivals = sorted(rivals, key=lambda one: -one.score)
    allowed = [one for one in rivals if one.sound - first.sound > -weights["against_sound"]]
    changed = bool(allowed) and allowed[0].score - first.score > weights["change"]
    decided = allowed[0] if changed else first
    others = sorted((one for one in readings if one is not decided), key=lambda one: -one.score)
    lead = decided.score - others[0].score if others else weights["most"]
    return Outcome(
        (decided, *others),
        confidence_of(lead, sureness, changed=changed, agrees=agrees),
        near_tie=bool(others) and lead < (weights["tie_changed"] if changed else weights["tie"]),
        agrees=agrees,
    )


def settled(outcome: Outcome) -> bool:
    """True where hearing the figure once more is not worth its time: it has rivals, and none comes near."""
    first, *others = outcome.readings
    return bool(others) and first.score - others[0].score >= _weights()["settled"]


def confidence_of(lead: float, sureness: float, *, changed: bool = False, agrees: bool | None = None) -> float:
    """Probability that the decided reading is right: a logistic curve, fitted on the tuning half.

    `lead` is how far it lies above its best rival in nats, `sureness` the probability of its least sure word.
    """
    weights = _weights()
    odds = math.log(max(sureness, 0.001) / max(1 - sureness, 0.001))
    lead = max(min(lead, weights["most"]), -weights["most"])
    sum_ = weights["base"] + weights["lead"] * lead + weights["odds"] * odds + weights["changed"] * changed
    if agrees is not None:
        sum_ += weights["agrees"] if agrees else weights["disagrees"]
    return 1 / (1 + math.exp(-sum_))


@cache
def _weights() -> dict[str, float]:
    return dict(tomllib.loads(files("capture").joinpath("data/second.toml").read_text("utf-8")))
