"""The transcript, with the words that say a figure led to its row and the words that were taken back marked."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from capture.transcript import Cue
from extract.record import Correction, Measure
from publish.context import Retraction, Run, Spoken
from publish.galley import Galley
from publish.moments import stamp
from publish.places import Place, words_between, words_like
from publish.rows import put_right, retraction
from publish.said import said_figure

_SENTENCE_MARKS = ",.;:!?…"


@dataclass(frozen=True, slots=True)
class _Setting:
    """How one word is set."""

    href: str | None = None
    note: Retraction | None = None
    withdrawn: bool = False


_PLAIN = _Setting()


class SpokenWords:
    """Which words of a transcript say a figure, and which were withdrawn."""

    def __init__(self, galley: Galley) -> None:
        self._galley = galley
        transcript = galley.source.transcript
        self._cues: tuple[Cue, ...] = transcript.cues if transcript else ()
        self._set: dict[Place, _Setting] = {}
        for measure in galley.record.measures:
            self._mark_measure(measure)
        for correction in galley.record.corrections:
            self._mark_statement(correction)

    def spoken(self) -> tuple[Spoken, ...]:
        """The cues, in order."""
        return tuple(
            Spoken(
                anchor=self._galley.cue_anchor(number) or "",
                moment=self._galley.at(cue.start),
                until=stamp(cue.end),
                runs=self._runs(number, cue),
            )
            for number, cue in enumerate(self._cues)
        )

    def _mark_measure(self, measure: Measure) -> None:
        places = words_between(self._cues, measure.cue, measure.start, measure.end) or words_like(
            self._cues, measure.cue, measure.quote
        )
        href = f"#{self._galley.anchor('measure', measure.id)}"
        withdrawn = retraction(self._galley, measure)
        wrong = put_right(measure)
        if withdrawn is None and wrong is not None:
            setting = _Setting(href, Retraction(said_figure(measure), href), wrong == "said_wrong")
        else:
            setting = _Setting(href, withdrawn, withdrawn is not None)
        for place in places:
            self._set.setdefault(place, setting)

    def _mark_statement(self, correction: Correction) -> None:
        withdrawn = correction.withdraws
        if withdrawn.cue is None or correction.scope != "this_session" or withdrawn.measure in self._galley.measures:
            return
        holds = self._galley.replacement_of(correction)
        read = said_figure(holds) if holds else correction.replacement
        note = Retraction(read, f"#{self._galley.anchor('correction', correction.id)}")
        for place in words_like(self._cues, withdrawn.cue, withdrawn.text):
            self._set[place] = _Setting(self._set.get(place, _PLAIN).href, note, withdrawn=True)

    def _runs(self, number: int, cue: Cue) -> tuple[Run, ...]:
        if not cue.words:
            return (Run(cue.text, None, False, None),)
        settings = [self._set.get((number, index), _PLAIN) for index in range(len(cue.words))]
        runs: list[Run] = []
        for setting, group in groupby(range(len(cue.words)), key=settings.__getitem__):
            text = " ".join(cue.words[index].text.strip() for index in group)
            if runs:
                _add_plain(runs, " ")
            if setting == _PLAIN:
                _add_plain(runs, text)
            else:
                self._add_marked(runs, text, setting, goes_on=self._set.get((number + 1, 0)) == setting)
        return tuple(runs)

    def _add_marked(self, runs: list[Run], text: str, setting: _Setting, goes_on: bool) -> None:
        core = text.rstrip(_SENTENCE_MARKS) or text
        note = setting.note if setting.note and setting.note.read and not goes_on else None
        runs.append(Run(core, setting.href, setting.withdrawn, note))
        if core != text:
            runs.append(Run(text[len(core) :], None, False, None))


def _add_plain(runs: list[Run], text: str) -> None:
    if runs and runs[-1].href is None and not runs[-1].withdrawn:
        text = runs.pop().text + text
    runs.append(Run(text, None, False, None))
