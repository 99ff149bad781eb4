"""The same thing measured before and after."""

from __future__ import annotations

from dataclasses import dataclass, field

from extract.record import Measure, Phase
from extract.units import UnitError, to_unit, unit_rows
from publish.context import Pair, Row
from publish.rows import Rows
from publish.written import exact

_FARTHEST = 50


@dataclass(slots=True)
class _Place:
    """Figures of one attribute of one item at one place, by phase."""

    attribute: str
    item: str
    where: str
    rows: dict[Phase, list[Row]] = field(default_factory=dict)
    measures: dict[Phase, list[Measure]] = field(default_factory=dict)

    def matches(self, other: _Place) -> bool:
        """The two may be the same thing: one of them only names it less exactly."""
        return (
            self.attribute == other.attribute
            and _compatible(self.item, other.item)
            and _compatible(self.where, other.where)
        )


def pair_up(rows: Rows) -> tuple[Pair, ...]:
    """Things with a standing figure as found and as left, in the order in which they were first spoken of.

    Both figures must name the same attribute, item and place. Where one side names them less exactly ("treble side"
    for "treble side, 12th fret"), the two are paired only if nothing else could be meant.
    """
    places = _places(rows)
    found = [place for place in places if "as_found" in place.rows]
    left = [place for place in places if "as_left" in place.rows]
    pairs = []
    for before in found:
        after = before if before in left else _only_match(before, found, left)
        if after is not None and _is_one_change(before.measures["as_found"][0], after.measures["as_left"][-1]):
            pairs.append(_pair(before, after, places))
    return tuple(pairs)


def _places(rows: Rows) -> list[_Place]:
    places: dict[tuple[str, str, str], _Place] = {}
    for measure, row in rows.all:
        if measure.stands and measure.attribute and not measure.difference:
            key = _key(measure)
            place = places.setdefault(key, _Place(*key))
            place.rows.setdefault(measure.phase, []).append(row)
            place.measures.setdefault(measure.phase, []).append(measure)
    return list(places.values())


def _is_one_change(found: Measure, left: Measure) -> bool:
    """Work may bring one to the other: figures of one kind, neither of them more than so many times the other.

    A chain of twelve inches is not left at fifty miles; what is taken down to nothing is.
    """
    known = unit_rows()
    if found.unit not in known or left.unit not in known or found.value * left.value == 0:
        return found.kind == left.kind
    try:
        after = to_unit(exact(left.value), left.unit, found.unit)
    except UnitError:
        return False
    return 1 / _FARTHEST <= abs(after / exact(found.value)) <= _FARTHEST


def _key(measure: Measure) -> tuple[str, str, str]:
    attribute, item, where = (
        " ".join((one or "").casefold().split()) for one in (measure.attribute, measure.item, measure.where)
    )
    return attribute, item, where


def _only_match(before: _Place, found: list[_Place], left: list[_Place]) -> _Place | None:
    candidates = [place for place in left if place not in found and place.matches(before)]
    if len(candidates) != 1:
        return None
    rivals = [place for place in found if place not in left and candidates[0].matches(place)]
    return candidates[0] if len(rivals) == 1 else None


def _pair(before: _Place, after: _Place, places: list[_Place]) -> Pair:
    found, left = before.rows["as_found"], after.rows["as_left"]
    aims = [
        row
        for place in places
        if place.matches(before) and place.matches(after)
        for row in place.rows.get("target", [])
    ]
    fuller = max(found[0], left[0], key=lambda row: len(row.part))
    return Pair(fuller.what, fuller.part, tuple(found), tuple(aims), tuple(left))


def _compatible(one: str, other: str) -> bool:
    mine, theirs = set(one.replace(",", " ").split()), set(other.replace(",", " ").split())
    return mine <= theirs or theirs <= mine
