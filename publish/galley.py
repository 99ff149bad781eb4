"""A session being set: the record with its lookups, shared by the makers of the page's parts.

A galley is what a printer sets type in before the page is made up.
"""

from __future__ import annotations

from capture.shop import ShopSettings
from extract.record import Correction, Finding, Measure, Record
from publish.addresses import address
from publish.anchors import Anchors
from publish.context import Flag
from publish.moments import Moment, Playback, stamp
from publish.source import SessionSource


def without_struck(record: Record) -> Record:
    """The record without the measures that a person struck; those stay in the published record, but on no page."""
    kept = tuple(one for one in record.measures if one.ruling is None or one.ruling.verdict != "strike")
    return record if len(kept) == len(record.measures) else record.model_copy(update={"measures": kept})


class Galley:
    """Lookups over one session: what holds instead of what, which questions touch which figure, where it stands."""

    def __init__(self, source: SessionSource, shop: ShopSettings, taken: tuple[str, ...] = ()) -> None:
        self.source = source
        self.record = without_struck(source.record)
        self.shop = shop
        self.playback = Playback(None if source.recording is None else address(source.recording))
        self._anchors = Anchors(taken)
        self.measures = {measure.id: measure for measure in self.record.measures}
        self._corrections = {correction.id: correction for correction in self.record.corrections}
        self._findings: dict[str, list[Finding]] = {}
        for finding in self.record.findings:
            for named in dict.fromkeys(finding.measures):
                self._findings.setdefault(named, []).append(finding)
        for measure in self.record.measures:
            self._anchors.of("measure", measure.id)

    def at(self, seconds: float) -> Moment:
        """The moment at a second of the recording."""
        return self.playback.at(seconds)

    def at_cue(self, cue: int | None) -> Moment | None:
        """The moment a cue begins; null where the transcript has no such cue."""
        second = self.second_of(cue)
        return None if second is None else self.at(second)

    def second_of(self, cue: int | None) -> float | None:
        """The second at which a cue begins; null where the transcript has no such cue."""
        transcript = self.source.transcript
        if transcript is None or cue is None or not 0 <= cue < len(transcript.cues):
            return None
        return transcript.cues[cue].start

    def anchor(self, kind: str, key: str) -> str:
        """The page id of an item of the record: kinds are measure, correction, finding, step and cue."""
        return self._anchors.of(kind, key)

    def cue_anchor(self, cue: int) -> str | None:
        """The page id of a cue; null where the transcript has no such cue."""
        transcript = self.source.transcript
        if transcript is None or not 0 <= cue < len(transcript.cues):
            return None
        return self._anchors.of(f"cue {cue}", f"t-{stamp(transcript.cues[cue].start)}")

    def findings(self, measure: Measure) -> list[Finding]:
        """The findings that name a measure."""
        return self._findings.get(measure.id, [])

    def queries_about(self, measure: Measure) -> tuple[Flag, ...]:
        """Links to the open questions about a measure."""
        return tuple(
            Flag(
                f"#{self.anchor('finding', one.id)}",
                "to settle" if one.severity == "stop" else "to check",
                must=one.severity == "stop",
            )
            for one in self.findings(measure)
        )

    def correction_of(self, measure: Measure) -> Correction | None:
        """The correction that takes a measure back."""
        return self._corrections.get(measure.corrected_by or "")

    def replacement_of(self, correction: Correction) -> Measure | None:
        """The measure that holds instead."""
        return self.measures.get(correction.replacement_measure or "")
