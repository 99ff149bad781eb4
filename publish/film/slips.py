"""Every second of a film at which something wrong is said, and what is right: for cues, text and stills.

Takes a figure that was taken back on film, found wrong at the proof, or put right in a later session; a statement of
another session that this one takes back was not said wrong here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from capture.transcript import Cue
from extract.record import Correction, Measure
from publish.captions import cue_file
from publish.galley import Galley
from publish.moments import clock
from publish.places import words_between, words_like
from publish.said import said_figure

SLIPS = "corrections.vtt"
_SHORTEST = 2.0
"""Seconds: a shorter cue can't be read."""


@dataclass(frozen=True, slots=True)
class Slip:
    """Something wrong that is said, for as long as it is."""

    start: float
    end: float
    wrong: str
    """As a figure where it is one, else in words."""
    right: str
    where: str
    """Where it was put right: empty on this film, else "in proof" or the later session."""
    proposed: bool
    """The machine takes the later session to mean this statement; no person has confirmed it."""
    again: tuple[float, ...] = ()
    """Further seconds at which the same is said wrong, where one entry tells of all of them."""


def slips_of(galley: Galley) -> tuple[Slip, ...]:
    """All of a session, in the order in which they are said; two figures of one breath that say the same are one."""
    found = dict.fromkeys(one for correction in galley.record.corrections for one in _of(galley, correction))
    return tuple(sorted(found, key=lambda one: (one.start, one.end)))


def slip_cues(slips: tuple[Slip, ...]) -> str:
    """What to read instead, as a WebVTT file of captions for the upper edge, each while the wrong words are said.

    A cue lasts two seconds at least. W3C Candidate Recommendation of 4 April 2019, section 4.4: `line:0` is the first
    line of the picture, where no caption of what is said stands.
    """
    return cue_file(((one.start, max(one.end, one.start + _SHORTEST), told(one)) for one in slips), settings="line:0")


def told(one: Slip) -> str:
    """A slip in the words of an errata slip: `For 3/32 in read 7/64 in`."""
    marks = f" ({one.where}{', not confirmed' if one.proposed else ''})" if one.where else ""
    return f"For {one.wrong} read {one.right}{marks}"


def said_once(slips: Sequence[Slip]) -> tuple[Slip, ...]:
    """Each slip once, with every second at which it is said: "twelve hours" said twice is one thing to put right.

    Where the same wrong figure is put right in two ways, or at two places, both stay.
    """
    seconds: dict[tuple[str, str, str, bool], list[Slip]] = {}
    for one in slips:
        seconds.setdefault((one.wrong, one.right, one.where, one.proposed), []).append(one)
    return tuple(replace(first, again=tuple(one.start for one in more)) for first, *more in seconds.values())


def _of(galley: Galley, correction: Correction) -> Iterator[Slip]:
    if correction.scope != "this_session":
        return
    holds = galley.replacement_of(correction)
    right = said_figure(holds) if holds else correction.replacement
    later = correction.ruling.later if correction.ruling else None
    where = ""
    if later is not None:
        where = f"put right in {later.title}, {clock(later.start)}"
    elif correction.source == "proof":
        where = "put right in proof"
    proposed = later is not None and later.proposed
    for start, end, wrong in _said(galley, correction):
        yield Slip(start, end, wrong, right, where, proposed)


def _said(galley: Galley, correction: Correction) -> Iterator[tuple[float, float, str]]:
    """When the wrong words were said, and what they say."""
    amended = galley.measures.get(correction.withdraws.measure or "")
    withdrawn = [one for one in galley.record.measures if one.corrected_by == correction.id and not one.stands]
    measures = withdrawn or ([amended] if amended is not None else [])
    if measures:
        yield from ((one.start, one.end, _wrong(one)) for one in measures)
        return
    cue = correction.withdraws.cue
    cues = galley.source.transcript.cues if galley.source.transcript else ()
    if cue is None or not 0 <= cue < len(cues):
        if correction.source != "narration":
            yield correction.start, correction.end, f"“{correction.withdraws.text}”"
        return
    start, end = _words(cues, cue, correction)
    yield start, end, f"“{correction.withdraws.text}”"


def _wrong(measure: Measure) -> str:
    was = measure.ruling.was if measure.ruling else None
    return (was.display if was else None) or said_figure(measure)


def _words(cues: tuple[Cue, ...], cue: int, correction: Correction) -> tuple[float, float]:
    """The words of the statement, by their text, else by their seconds; the whole cue where neither is found."""
    places = words_like(cues, cue, correction.withdraws.text)
    if not places and correction.source != "narration" and correction.end > correction.start:
        places = words_between(cues, cue, correction.start, correction.end)
    if not places:
        return cues[cue].start, cues[cue].end
    words = [cues[number].words[index] for number, index in places]
    return words[0].start, words[-1].end
