"""What the stages hand one another: frozen facts about stretches of a narration's tokens.

Every span counts tokens of the spaCy `Doc`, `end` exclusive. Figures are exact fractions until they reach the record.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from extract.record import Mode, Phase, Scope

Form = Literal["integer", "decimal", "fraction", "mixed"]
Limit = Literal["at_most", "at_least"]


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of measurement as the bench names it; the list is data/units.toml."""

    name: str
    """An expression that pint reads: "inch", "newton * meter"."""
    kind: str
    """What it measures: "length", "temperature", "torque" ..."""
    ucum: str | None
    """UCUM code, null where UCUM has none."""
    symbol: str
    """For display after a figure: "in", "N·m"."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number as said. `value` is the midpoint where `low` and `high` are given."""

    start: int
    end: int
    value: Fraction
    form: Form
    low: Fraction | None = None
    high: Fraction | None = None
    denominator: int | None = None
    """The denominator as said, unreduced: 16 for "four sixteenths"."""
    decimals: int | None = None
    """How many decimals were said: 3 for "0.012"."""
    large: Fraction | None = None
    """The larger part of a compound figure, in its own unit: 3 for "three foot one and a quarter"."""
    large_unit: str | None = None
    """Name of the larger unit of a compound figure: "foot"."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit, and how it was said. `start` and `end` take in the number and unit, no more."""

    start: int
    end: int
    value: Fraction
    low: Fraction | None
    high: Fraction | None
    unit: Unit | None
    unit_said: bool
    number: Number
    hedged: bool = False
    limit: Limit | None = None
    tolerance: Fraction | None = None
    difference: bool = False


@dataclass(frozen=True, slots=True)
class Measured:
    """A quantity and what it measures, of what, where and in which phase."""

    id: str
    quantity: Quantity
    attribute: str | None
    item: str | None
    where: str | None
    phase: Phase
    same_as: str | None = None
    """Id of the measure that this one says again in another unit."""


@dataclass(frozen=True, slots=True)
class Takeback:
    """A correction: which statement is withdrawn and what holds instead."""

    id: str
    start: int
    end: int
    scope: Scope
    withdrawn_text: str
    withdrawn_cue: int | None
    replacement: str
    withdrawn_measures: tuple[str, ...] = ()
    """Ids of all measures that no longer stand, the first withdrawn one first."""
    replacement_measure: str | None = None
    """Id of the measure that holds instead, where it is one."""
    replacement_value: Fraction | None = None
    """The figure that holds instead where only the unit was put right: "12 inches, sorry, millimeters"."""
    replacement_unit: Unit | None = None


@dataclass(frozen=True, slots=True)
class Action:
    """A step of the job."""

    start: int
    end: int
    verb: str
    object: str
    mode: Mode
    text: str
    """An instruction that can be repeated, capital first, no full stop."""
    order: int = 0
    """Place in the order of work, where the speaker told it out of order; ties keep the spoken order."""


@dataclass(frozen=True, slots=True)
class Note:
    """A remark: a short clean sentence about the tokens it came from."""

    start: int
    end: int
    text: str


@dataclass(frozen=True, slots=True)
class Warned:
    """A caution, spoken or called for by a hazard that is spoken of."""

    start: int
    text: str
    source: str
    said: bool


@dataclass(frozen=True, slots=True)
class Named:
    """A tool or material and the tokens at which it is named."""

    name: str
    at: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Remarks:
    """All that is said beside figures and steps."""

    cautions: tuple[Warned, ...] = ()
    materials: tuple[Named, ...] = ()
    tools: tuple[Named, ...] = ()
    follow_ups: tuple[Note, ...] = ()
    doubts: tuple[Note, ...] = ()
