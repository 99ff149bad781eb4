"""A unit of the wrong kind right behind a term of the trade that names what is measured.

Takes "the key needs 10 volts of dip" and "the tracking force is two millimetres"; refuses "the tracking force is two
grams" and "with the string tension down, 12 mm".
Source: the rows of data/magnitudes*.toml that hold for whatever is measured of a term.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.named import named_before
from extract.checks.scale import is_beside
from extract.checks.talk import Said, Talk
from extract.checks.units import allowed, wrong_kind
from extract.checks.vocabulary import Phrase
from extract.magnitudes import ANY, magnitudes

_REACH = 8
_FEWEST = 2
"""Words of a term: a lone "play" or "lift" is said of too much."""


def find_wrong_terms(talk: Talk) -> Iterator[Suspicion]:
    """Each figure whose unit can't be of the term beside it."""
    for one in talk.said:
        measure = one.measure
        if measure.kind is None or measure.unit == "dimensionless" or not measure.unit_said:
            continue
        term = _term(talk, one)
        rows = magnitudes().by_thing.get(term or (), ())
        if not term or not rows or any(row.what != ANY for row in rows):
            continue
        kinds = frozenset(row.kind for row in rows)
        if measure.kind not in allowed(kinds, " ".join(term)):
            yield wrong_kind(measure, f"the {' '.join(term)}", kinds)


def _term(talk: Talk, one: Said) -> Phrase | None:
    """A term of several words right before the figure, with small words between at most."""
    name = named_before(talk, one.clause[-_REACH:])
    rows = magnitudes().by_thing.get(name or (), ())
    return name if name and len(name) >= _FEWEST and rows and is_beside(one, rows[0]) else None
