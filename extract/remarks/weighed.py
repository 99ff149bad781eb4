"""Cautions, doubts and things left for later: found by plain rules and weighed signs together, and worded."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from extract.remarks.breaths import Breath, breaths_of
from extract.remarks.doubts import plain_doubts
from extract.remarks.follow_ups import plain_follow_ups
from extract.remarks.reading import Reading
from extract.remarks.said_cautions import SAID_ON_FILM, plain_cautions
from extract.remarks.weighing import Ruled, candidates, remark_weights, speaks_for
from extract.remarks.wording import caution_text, doubt_text, follow_up_text
from extract.spans import Note, Warned

_SHORTEST = 4
"""Words: a shorter note of a plain rule ("To be checked: but") says nothing."""


@dataclass(frozen=True, slots=True)
class Plain:
    """What the plain rules found."""

    cautions: tuple[Warned, ...]
    doubts: tuple[Note, ...]
    follow_ups: tuple[Note, ...]

    @property
    def ruled(self) -> Ruled:
        """The tokens at which each kind was found."""
        return {
            "cautions": frozenset(one.start for one in self.cautions),
            "doubts": frozenset(one.end - 1 for one in self.doubts),
            "follow_ups": frozenset(one.end - 1 for one in self.follow_ups),
        }


def plain_remarks(reading: Reading) -> Plain:
    """What the plain rules find in a narration."""
    return Plain(plain_cautions(reading), plain_doubts(reading), plain_follow_ups(reading))


def find_weighed(reading: Reading) -> Plain:
    """What is believed to be a caution, a doubt or left for later, each in order, one a cue at most."""
    plain = plain_remarks(reading)
    breaths = breaths_of(reading)
    signs = candidates(reading, breaths, plain.ruled)
    cautions = tuple(
        Warned(breath.start, text, SAID_ON_FILM, said=True)
        for index, breath in _believed(reading, breaths, signs, "cautions")
        if (text := caution_text(reading, breaths, index))
    )
    doubts = _notes(plain.doubts, reading, breaths, _believed(reading, breaths, signs, "doubts"), doubt_text)
    follow_ups = _notes(
        plain.follow_ups, reading, breaths, _believed(reading, breaths, signs, "follow_ups"), follow_up_text
    )
    return Plain(cautions, doubts, follow_ups)


def _believed(
    reading: Reading, breaths: tuple[Breath, ...], signs: Sequence[frozenset[str]], kind: str
) -> list[tuple[int, Breath]]:
    """The breaths that more speaks for than against, of those in one cue the likeliest."""
    weights = remark_weights(kind)
    best: dict[int, tuple[float, int]] = {}
    for index, (breath, here) in enumerate(zip(breaths, signs, strict=True)):
        told = any(reading.told[at] for at in range(breath.first, breath.last))
        weight = speaks_for(kind, weights, here)
        cue = reading.bench.cue[breath.start]
        if weight > 0 and not told and weight > best.get(cue, (0.0, 0))[0]:
            best[cue] = (weight, index)
    return [(index, breaths[index]) for _, index in (best[cue] for cue in sorted(best))]


def _notes(
    plain: tuple[Note, ...],
    reading: Reading,
    breaths: tuple[Breath, ...],
    believed: list[tuple[int, Breath]],
    word: Callable[[Reading, tuple[Breath, ...], int], Note | None],
) -> tuple[Note, ...]:
    """The believed breaths as notes; a plain rule that found one words it. What goes on in the next cue is one note."""
    notes: list[Note] = []
    for index, breath in believed:
        ruled = next((one for one in plain if breath.start < one.end and one.start < breath.end), None)
        note = ruled if ruled and len(ruled.text.split()) > _SHORTEST else word(reading, breaths, index)
        if note is None or (notes and (note.start < notes[-1].end or note.text == notes[-1].text)):
            continue
        notes.append(note)
    return tuple(notes)
