"""The ways of hearing that are held against one another, each from a recording to its transcript."""

from __future__ import annotations

import tempfile
from pathlib import Path

from capture.cues import group
from capture.hearing import hear
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.second import RivalMaker
from capture.transcript import Cue, Transcript, Word
from capture.words import Piece, in_order, join_pieces
from tests.benchmarks.spoken_measures.sound import Recording


def told(recording: Recording) -> Transcript:
    """What a perfect ear would write: shows how many measures the rooms behind the ear read right."""
    cues = []
    for said in recording.said:
        texts = said.sentence.text.split()
        step = (said.end - said.start) / len(texts)
        words = tuple(
            Word(text=text, start=said.start + at * step, end=said.start + (at + 1) * step, probability=1.0)
            for at, text in enumerate(texts)
        )
        cues.append(Cue(start=words[0].start, end=words[-1].end, text=said.sentence.text, words=words))
    return Transcript(source=recording.path.name, duration=recording.duration, cues=tuple(cues))


def plain(path: Path, model: SpeechModel, options: HearingOptions) -> Transcript:
    """faster-whisper as it comes: one window after the other, no prime, the same beam."""
    segments, info = model.whisper.transcribe(
        str(path), language=options.language, beam_size=options.beam_size, word_timestamps=True
    )
    pieces = [
        Piece(word.word, float(word.start), float(word.end), float(word.probability))
        for segment in segments
        for word in segment.words or ()
    ]
    words = [
        Word(text=one.text, start=one.start, end=one.end, probability=min(max(one.probability, 0.0), 1.0))
        for one in in_order(join_pieces(pieces))
    ]
    return Transcript(source=path.name, duration=float(info.duration), cues=group(words))


def primed(
    path: Path,
    model: SpeechModel,
    options: HearingOptions,
    prime: str | None = None,
    rivals: RivalMaker | None = None,
) -> Transcript:
    """As Spokeshave hears; `prime` null takes the one for a general bench, an empty text none.

    Without `rivals` there is no second hearing.
    """
    with tempfile.TemporaryDirectory() as folder:
        return hear(path, model=model, options=options, prime=prime, rivals=rivals, checkpoint_folder=Path(folder))
