"""The corpus: sentences with one measure each, and sentences in which a measure is put right, in two halves.

Fixed seeds draw them; the tuning half and the held-out half share no carrier sentence and no voice.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from random import Random
from typing import Literal

from tests.benchmarks.spoken_measures.figures import KINDS, PARTS, Figure, cardinal, draw_part, part

SEEDS = {"tuning": 1907, "held-out": 2611}
EACH = {"tuning": 20, "held-out": 30}
"""Sentences of each kind of measure."""
CORRECTIONS = {"tuning": 48, "held-out": 60}

Side = Literal["tuning", "held-out"]
SIDES: tuple[Side, ...] = ("tuning", "held-out")


@dataclass(frozen=True, slots=True)
class Sentence:
    """What is said, and the measures a record must have of it."""

    side: Side
    kind: str
    text: str
    figure: Figure
    """The measure that holds."""
    withdrawn: Figure | None = None
    """The measure that is taken back in the same breath."""


def corpus() -> list[Sentence]:
    """All sentences, the same ones every time."""
    return [sentence for side in SIDES for sentence in half(side)]


def half(side: Side) -> list[Sentence]:
    """The sentences of one half."""
    random = Random(SEEDS[side])  # noqa: S311 (nothing secret is drawn)
    rows = tomllib.loads(Path(__file__).with_name("carriers.toml").read_text("utf-8"))
    mine = {"tuning": "rows", "held-out": "held_out"}[side]
    found: list[Sentence] = []
    for kind, draw in KINDS.items():
        used: set[str] = set()
        for _ in range(EACH[side]):
            carrier = random.choice(rows[kind][mine])
            figure = draw(random)
            while figure.said in used:
                figure = draw(random)
            used.add(figure.said)
            said = figure.said.replace(" to ", " and ") if "between {m}" in carrier else figure.said
            found.append(Sentence(side, kind, carrier.format(m=said), figure))
    pools: dict[str, dict[str, list[str]]] = rows["correction"]
    told = [(pool, carrier) for pool, carriers in pools.items() for carrier in carriers[mine]]
    for _ in range(CORRECTIONS[side]):
        pool, carrier = random.choice(told)
        found.append(_corrected(random, side, pool, carrier))
    return found


def _corrected(random: Random, side: Side, pool: str, carrier: str) -> Sentence:
    mark = random.choice(["no", "no", "sorry", "wait", "make that", "I mean", "no wait"])
    if pool == "inch":
        return _corrected_part(random, side, carrier, mark)
    unit = {"newton metres": "newton * meter", "thou": "thou", "millimetres": "millimeter"}[pool]
    first, second = random.sample(range(3, 60), 2)
    manner = random.choice(["bare", "both"])
    said = f"{cardinal(first)}{' ' + pool if manner == 'both' else ''}, {mark}, {cardinal(second)} {pool}"
    return Sentence(
        side,
        "correction",
        carrier.format(m=said),
        Figure(f"{cardinal(second)} {pool}", Fraction(second), unit),
        Figure(cardinal(first), Fraction(first), unit),
    )


def _corrected_part(random: Random, side: Side, carrier: str, mark: str) -> Sentence:
    top, bottom = draw_part(random, (8, 16, 16, 32, 64))
    other = random.choice([one for one in range(1, bottom) if one != top])
    manner = random.choice(["bare", "both"]) if top > 1 and other > 1 else "both"
    name = f"{PARTS[bottom]}s"
    first = cardinal(other) if manner == "bare" else f"{cardinal(other)} {name if other > 1 else PARTS[bottom]}"
    last = part(top, bottom) if manner == "both" else f"{cardinal(top)} {name}"
    return Sentence(
        side,
        "correction",
        carrier.format(m=f"{first}, {mark}, {last}"),
        Figure(last, Fraction(top, bottom), "inch"),
        Figure(first, Fraction(other, bottom), "inch"),
    )
