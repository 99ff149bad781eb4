"""What of a session matters to the retractions of others, small enough to be kept: whether it takes anything back of an
earlier session, and by which words and figures one of its own statements can be meant.

It is a coarse sieve: `may_mean` may let a session pass in which the tracing then finds nothing; it holds none back in
which it would.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from extract.record import Measure, Record
from extract.retractions import Sitting
from extract.retractions.claim import claim_of
from extract.retractions.knowledge import telling
from extract.rulings import Proofed
from extract.rulings.model import Retract
from extract.units import UnitError, to_unit
from publish.find.scale import BASE
from publish.written import exact

STEPS = ""
"""The kind of a statement without a figure."""


@dataclass(frozen=True, slots=True)
class Stance:
    """One session, as the sieve has it."""

    day: tuple[str, str]
    subject: str
    claims: tuple[tuple[str, frozenset[str]], ...] = ()
    """What it takes back of earlier sessions: kind of figure, and the marks by which it can be known."""
    named: tuple[str, ...] = ()
    """Sessions that a person named as meant."""
    marks: dict[str, frozenset[str]] = field(default_factory=dict)
    """Of its own statements, by kind."""

    def may_mean(self, other: Stance) -> bool:
        """Something that it takes back may be a statement of that session."""
        none: frozenset[str] = frozenset()
        return any(marks & other.marks.get(kind, none) for kind, marks in self.claims)

    def to_json(self) -> dict[str, Any]:
        """The stance to keep."""
        return {
            "day": self.day,
            "subject": self.subject,
            "claims": [(kind, sorted(marks)) for kind, marks in self.claims],
            "named": self.named,
            "marks": {kind: sorted(marks) for kind, marks in self.marks.items()},
        }

    @classmethod
    def of_json(cls, kept: dict[str, Any]) -> Stance:
        """A stance that was kept."""
        return cls(
            day=(kept["day"][0], kept["day"][1]),
            subject=kept["subject"],
            claims=tuple((kind, frozenset(marks)) for kind, marks in kept["claims"]),
            named=tuple(kept["named"]),
            marks={kind: frozenset(marks) for kind, marks in kept["marks"].items()},
        )


def stance_of(sitting: Sitting, proofed: Proofed) -> Stance:
    """The stance of a session with these rulings."""
    record = proofed.record
    marks: dict[str, set[str]] = {}
    for one in record.measures:
        if one.kind is not None:
            marks.setdefault(one.kind, set()).update(_marks(one))
    if record.steps:
        marks[STEPS] = {word for one in record.steps for word in telling(one.text, one.quote)}
    ruled = [one.statement for one in proofed.in_force if isinstance(one, Retract) and one.statement is not None]
    return Stance(
        day=sitting.day,
        subject=sitting.subject,
        claims=tuple(_claims(record)),
        named=tuple(one.session for one in ruled),
        marks={kind: frozenset(of) for kind, of in marks.items()},
    )


def _claims(record: Record) -> Iterable[tuple[str, frozenset[str]]]:
    for correction in record.corrections:
        if correction.scope == "earlier_session":
            claim = claim_of(record, correction)
            said = [one for one in (claim.wrong, claim.right) if one is not None]
            yield claim.kind or STEPS, frozenset(claim.words.union(*(_marks(one) for one in said)))


def _marks(measure: Measure) -> set[str]:
    names = [name for name in (measure.attribute, measure.item, measure.where) if name]
    marks = {*telling(*names), *(f"={name}" for name in names), f"#{measure.value:.9g}"}
    if measure.unit is not None:
        try:
            base = to_unit(exact(measure.value), measure.unit, BASE.get(measure.kind or "", measure.unit))
        except UnitError:
            return marks
        marks.add(f"#{float(base):.6g}")
    return marks
