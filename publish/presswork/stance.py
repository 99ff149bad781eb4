"""What of a session matters to the retractions of others, small enough to be kept: whether it takes anything back of an
earlier session, and by which words and figures each of its own statements can be meant.

It is a coarse sieve: `may_mean` may let a session pass in which the tracing then finds nothing; it holds none back in
which it would.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from extract.record import Measure, Record
from extract.retractions import Sitting
from extract.retractions.claim import claim_of
from extract.retractions.knowledge import knowledge, telling
from extract.rulings import Proofed
from extract.rulings.model import Retract
from extract.units import UnitError, to_unit, unit_rows
from publish.find.scale import BASE
from publish.written import exact

STEPS = ""
"""The kind of a statement without a figure."""
_NAME, _FIGURE = "=", "#"
"""Before marks that are no words: a name of what is measured, and a figure."""

Marks = frozenset[str]
"""Of one statement: words, names and figures."""


@dataclass(frozen=True, slots=True)
class Stance:
    """One session, as the sieve has it."""

    day: tuple[str, str]
    subject: str
    called: Marks = frozenset()
    """Words by which the session itself can be named."""
    claims: tuple[tuple[str, Marks, Marks], ...] = ()
    """What it takes back of earlier sessions: kind of figure, marks by which it can be known, words about the film."""
    named: tuple[str, ...] = ()
    """Sessions that a person named as meant."""
    statements: tuple[tuple[str, Marks], ...] = ()
    """Its own, by kind; those with the same marks once."""

    def may_mean(self, other: Stance) -> bool:
        """Something that it takes back may be a statement of that session."""
        return any(
            kind == of and _enough(marks & others, bool(film & other.called))
            for kind, marks, film in self.claims
            for of, others in other.statements
        )

    def to_json(self) -> dict[str, Any]:
        """The stance to keep."""
        return {
            "day": self.day,
            "subject": self.subject,
            "called": sorted(self.called),
            "claims": [(kind, sorted(marks), sorted(film)) for kind, marks, film in self.claims],
            "named": self.named,
            "statements": [(kind, sorted(marks)) for kind, marks in self.statements],
        }

    @classmethod
    def of_json(cls, kept: dict[str, Any]) -> Stance:
        """A stance that was kept."""
        return cls(
            day=(kept["day"][0], kept["day"][1]),
            subject=kept["subject"],
            called=frozenset(kept["called"]),
            claims=tuple((kind, frozenset(marks), frozenset(film)) for kind, marks, film in kept["claims"]),
            named=tuple(kept["named"]),
            statements=tuple((kind, frozenset(marks)) for kind, marks in kept["statements"]),
        )


def _enough(shared: Marks, named: bool) -> bool:
    """What two statements share can weigh enough to be shown; sessions on the same instrument are never sifted.

    `named` is true where the talk names the session.
    """
    if not shared:
        return False
    weights, bounds = knowledge().weights, knowledge().bounds
    names = sum(one.startswith(_NAME) for one in shared)
    figure = any(one.startswith(_FIGURE) for one in shared)
    words = sum(one[0] not in (_NAME, _FIGURE) for one in shared)
    most = max(weights["attribute"], weights["item"], weights["where"]) * names + weights["figure"] * figure
    most += weights["word"] * min(words, bounds["most_words"])
    return most + weights["film"] * named >= bounds["fewest"]


def stance_of(sitting: Sitting, proofed: Proofed) -> Stance:
    """The stance of a session with these rulings."""
    ruled = [one.statement for one in proofed.in_force if isinstance(one, Retract) and one.statement is not None]
    return Stance(
        day=sitting.day,
        subject=sitting.subject,
        called=telling(proofed.record.session.title, proofed.record.session.subject),
        claims=tuple(_claims(proofed.record)),
        named=tuple(one.session for one in ruled),
        statements=tuple(dict.fromkeys(_statements(proofed.record))),
    )


def _claims(record: Record) -> Iterator[tuple[str, Marks, Marks]]:
    for correction in record.corrections:
        if correction.scope == "earlier_session":
            claim = claim_of(record, correction)
            said = [one for one in (claim.wrong, claim.right) if one is not None]
            names = (f"{_NAME}{name}" for one in said for name in _names(one))
            figures = (mark for one in said for mark in _figures(one))
            yield claim.kind or STEPS, frozenset({*claim.words, *names, *figures}), claim.around


def _statements(record: Record) -> Iterator[tuple[str, Marks]]:
    for one in record.measures:
        if one.kind is not None:
            names = _names(one)
            yield one.kind, frozenset({*telling(*names), *(f"{_NAME}{name}" for name in names), *_figures(one)})
    for step in record.steps:
        yield STEPS, telling(step.text, step.quote)


def _names(measure: Measure) -> list[str]:
    return [name for name in (measure.attribute, measure.item, measure.where) if name]


def _figures(measure: Measure) -> Iterable[str]:
    """The bare number, for figures without a unit, and the figure in the base of its kind."""
    yield f"{_FIGURE}{measure.value:.9g}"
    if measure.unit is not None and measure.unit in unit_rows():
        try:
            base = to_unit(exact(measure.value), measure.unit, BASE.get(measure.kind or "", measure.unit))
        except UnitError:
            return
        yield f"{_FIGURE}{float(base):.6g} {measure.kind}"
