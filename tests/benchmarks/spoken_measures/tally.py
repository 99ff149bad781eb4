"""Verdicts on a half of the corpus, added up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from capture.transcript import Transcript
from extract.pipeline import Extractor
from extract.record import Record
from tests.benchmarks.spoken_measures.scoring import SLACK, Said, Verdict, judge
from tests.benchmarks.spoken_measures.sound import Recording

Way = Callable[[Recording], Transcript]


@dataclass(slots=True)
class Tally:
    """What one way of hearing made of some recordings."""

    verdicts: list[tuple[Said, Verdict]] = field(default_factory=list)
    records: list[tuple[Recording, Record, Transcript]] = field(default_factory=list)

    def measures(self) -> list[tuple[Said, Verdict]]:
        """The sentences with one measure."""
        return [one for one in self.verdicts if one[0].sentence.withdrawn is None]

    def corrections(self) -> list[tuple[Said, Verdict]]:
        """The sentences in which a measure is put right."""
        return [one for one in self.verdicts if one[0].sentence.withdrawn is not None]

    def of_voices(self, *, robot: bool) -> Tally:
        """What was made of the voices of one sort."""
        mine = [one for one in self.records if one[0].speaker.robot == robot]
        said = {id(said) for recording, _, _ in mine for said in recording.said}
        return Tally([one for one in self.verdicts if id(one[0]) in said], mine)

    def right(self) -> float:
        """Of 100 measures, how many are right."""
        return share([verdict.right for _, verdict in self.measures()])

    def by_kind(self) -> dict[str, float]:
        """Of 100 measures of each kind, how many are right."""
        kinds = dict.fromkeys(said.sentence.kind for said, _ in self.measures())
        return {
            kind: share([verdict.right for said, verdict in self.measures() if said.sentence.kind == kind])
            for kind in sorted(kinds)
        }

    def invented(self) -> Counter[str]:
        """How a record shows each measure that nobody said, and how often."""
        found: Counter[str] = Counter()
        for recording, record, _ in self.records:
            for measure in record.measures:
                middle = (measure.start + measure.end) / 2
                for said in recording.said:
                    if said.start - SLACK <= middle <= said.end + SLACK and not judge(said, record).right:
                        found[measure.quote.casefold()] += 1
        return found


def tally(recordings: Sequence[Recording], way: Way, extractor: Extractor) -> Tally:
    """Hear each recording one way, extract, and judge every sentence."""
    found = Tally()
    for recording in recordings:
        transcript = way(recording)
        record = extractor.record(transcript)
        found.records.append((recording, record, transcript))
        found.verdicts.extend((said, judge(said, record)) for said in recording.said)
    return found


def share(right: Sequence[bool]) -> float:
    """Of 100, how many; 0 of none."""
    return 100 * sum(right) / len(right) if right else 0.0
