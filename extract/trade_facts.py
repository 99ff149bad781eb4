"""What a trade takes for granted, as frozen facts. Read and joined by `extract.trade`."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Band:
    """Where a figure usually lies, in `unit`; outside it is worth a question, not wrong."""

    low: float
    high: float
    unit: str
    source: str
    items: tuple[str, ...] = ()
    """The band holds for these instruments or parts only; empty for all. A band that names the item wins."""


@dataclass(frozen=True, slots=True)
class Attribute:
    """Something that is measured: "string height"."""

    name: str
    said: tuple[str, ...]
    """Every way of naming it, the name included: words or phrases, lower case, singular."""
    kind: str
    """The kind of unit it takes: "length", "temperature" ..., as in data/units.toml."""
    unit: str | None = None
    """The trade's habit where the unit is left out, as a unit name of data/units.toml."""
    bands: tuple[Band, ...] = ()
    adjectives: tuple[str, ...] = ()
    """Words that say it behind a figure: "wide", "apart", "in the clamps"."""
    things: tuple[str, ...] = ()
    """Things whose bare figure is this measure: "the a is four and a half" is a string's height."""
    of: str | None = None
    """What has it where nobody says: a part ("neck"), or "subject" for the whole instrument or machine."""
    verbs: tuple[str, ...] = ()
    """Verbs that say it before a figure, base form: "weigh", "soak"."""


@dataclass(frozen=True, slots=True)
class Term:
    """A part, tool, material or subject by its name and other ways of saying it (lower case, singular)."""

    name: str
    said: tuple[str, ...]
    """Every way of naming it, the name included."""


@dataclass(frozen=True, slots=True)
class Hazard:
    """Words that call for a caution, the caution itself and where it comes from."""

    name: str
    said: tuple[str, ...]
    caution: str
    source: str


@dataclass(frozen=True, slots=True)
class Trade:
    """All that a trade file and the general file hold."""

    name: str
    signs: tuple[str, ...] = ()
    """Words that show that a narration belongs to this trade."""
    attributes: tuple[Attribute, ...] = ()
    subjects: tuple[Term, ...] = ()
    """The whole things that come to the bench: "guitar", "mantel clock"."""
    parts: tuple[Term, ...] = ()
    tools: tuple[Term, ...] = ()
    materials: tuple[Term, ...] = ()
    hazards: tuple[Hazard, ...] = ()
