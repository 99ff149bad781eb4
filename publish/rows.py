"""The table of figures: one row a statement, a restatement in other units set beside what it restates."""

from __future__ import annotations

from collections.abc import Iterable

from extract.record import Because, Measure
from publish.context import Amended, Figure, Retraction, Row, RowGroup
from publish.elsewhere import later_than
from publish.galley import Galley
from publish.other_units import in_other_units, system_of
from publish.said import said_figure
from publish.wording import AMENDED, PHASES, sentence


class Rows:
    """All rows of a session, found by the measure they show."""

    def __init__(self, galley: Galley) -> None:
        self._galley = galley
        self._beside = restatements(galley)
        merged = {restating.id: original for original, restating in self._beside.items()}
        own = [measure for measure in galley.record.measures if measure.id not in merged]
        made = {measure.id: self._row(measure) for measure in own}
        self._of = {measure: made[merged.get(measure, measure)] for measure in galley.measures}
        self.all = tuple((measure, made[measure.id]) for measure in own)
        """Each row with the measure it is about, in the order in which they were said."""

    def of(self, ids: Iterable[str]) -> tuple[Row, ...]:
        """The rows that show these measures, each once; ids that the record lacks are passed over."""
        rows = {self._of[one].anchor: self._of[one] for one in ids if one in self._of}
        return tuple(rows.values())

    def groups(self) -> tuple[RowGroup, ...]:
        """The rows by phase, as found first."""
        groups = (
            RowGroup(name, tuple(row for measure, row in self.all if measure.phase == phase))
            for phase, name in PHASES.items()
        )
        return tuple(group for group in groups if group.rows)

    def _row(self, measure: Measure) -> Row:
        galley = self._galley
        said = Figure(said_figure(measure), said=True, about=measure.hedged, anchor=None, moment=None)
        first, second = self._columns(measure, said, self._other(measure))
        return Row(
            anchor=galley.anchor("measure", measure.id),
            what=_name(measure),
            part=_part(measure),
            difference=measure.difference,
            first=first,
            second=second,
            moment=galley.at(measure.start),
            withdrawn=retraction(galley, measure),
            amended=_amended(measure),
            queries=galley.queries_about(measure),
        )

    def _other(self, measure: Measure) -> Figure | None:
        restating = self._beside.get(measure.id)
        if restating is not None:
            return Figure(
                said_figure(restating),
                said=True,
                about=restating.hedged,
                anchor=self._galley.anchor("measure", restating.id),
                moment=self._galley.at(restating.start),
            )
        if not measure.stands:
            return None
        converted = in_other_units(measure)
        return None if converted is None else Figure(converted, False, measure.hedged, None, None)

    def _columns(self, measure: Measure, said: Figure, other: Figure | None) -> tuple[Figure | None, Figure | None]:
        system = system_of(measure)
        preferred = self._galley.shop.units
        if preferred == "as_said" or system is None or system == preferred:
            return said, other
        return other, said


def restatements(galley: Galley) -> dict[str, Measure]:
    """Measures that say another one again in the other system, by the id of that other one.

    Only what is beyond question is set beside: both stand or fall together, are of one phase, and nobody has to look at
    the second.
    """
    beside: dict[str, Measure] = {}
    for measure in galley.record.measures:
        original = galley.measures.get(measure.same_as or "")
        if original is None or original.id in beside or original.same_as is not None or galley.findings(measure):
            continue
        systems = {system_of(measure), system_of(original)}
        if systems == {"metric", "imperial"} and measure.stands == original.stands and measure.phase == original.phase:
            beside[original.id] = measure
    return beside


def retraction(galley: Galley, measure: Measure) -> Retraction | None:
    """What holds instead of a measure that was taken back; null for one that stands."""
    if measure.stands:
        return None
    correction = galley.correction_of(measure)
    if correction is None:
        return Retraction("", "")
    holds = galley.replacement_of(correction)
    if holds is None:
        return Retraction(correction.replacement, f"#{galley.anchor('correction', correction.id)}")
    return Retraction(said_figure(holds), f"#{galley.anchor('measure', holds.id)}")


def put_right(measure: Measure) -> Because | None:
    """Why a person gave a figure that the words of the transcript do not say; null where they say it."""
    ruled = measure.ruling
    if ruled is None or ruled.was is None or not ruled.was.display or ruled.because == "own_words":
        return None
    return ruled.because


def _amended(measure: Measure) -> Amended | None:
    ruled = measure.ruling
    if ruled is None or ruled.was is None:
        return None
    was = ruled.was
    told = ", ".join(one for one in (was.display, was.attribute, was.item, was.where) if one)
    return Amended(AMENDED[ruled.because or "own_words"], told, later_than(ruled.later, "../")) if told else None


def _name(measure: Measure) -> str:
    named = measure.attribute or measure.item
    return sentence(named).rstrip(".") if named else f"“{measure.quote}”"


def _part(measure: Measure) -> str:
    item = measure.item if measure.attribute else None
    return ", ".join(one for one in (item, measure.where) if one)
