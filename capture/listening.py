"""Hearing one block: windows through the model, and again where the first hearing can't be trusted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from capture.blocks import Block
from capture.checkpoint import HeardBlock
from capture.leaks import Prime, leaks, settle
from capture.mixing import Samples
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.second.encoding import keeping_pipeline
from capture.second.hearing_again import Decided, SecondHearing
from capture.second.rival import RivalMaker
from capture.sound import RATE
from capture.transcript import Word
from capture.windows import Window, find_speech, pack
from capture.words import Hearing, Piece, in_order, join_pieces


@dataclass(frozen=True, slots=True)
class _Manner:
    """One way of hearing a window."""

    primed: bool
    no_repeat: int = 0
    """Length of word-piece runs that may not come twice; 0 for no bound."""


FIRST = _Manner(primed=True)
UNPRIMED = _Manner(primed=False)

LADDER = (UNPRIMED, _Manner(primed=False, no_repeat=5), _Manner(primed=False, no_repeat=3))
"""What is tried, in order, where the first hearing loops or is very unsure.

Whisper's own ladder raises the temperature, that is, draws at random. CTranslate2 seeds its generator once a thread, so
a run that goes on after a kill would draw other words than an unbroken one. Beam search under a bound on repeats breaks
loops as well, and always gives the same words.
"""


class Listener:
    """Hears blocks with one model, one prime and one set of options."""

    def __init__(
        self, model: SpeechModel, prime: str, options: HearingOptions, rivals: RivalMaker | None = None
    ) -> None:
        self._model = model
        self._prime = Prime.of(prime)
        self._options = options
        self._second = SecondHearing(model, prime, options, rivals) if rivals else None
        self._pipeline = keeping_pipeline(model.whisper)

    def hear(self, block: Block, progress: Callable[[int], None] = lambda _: None) -> HeardBlock:
        """The words of a block. `progress` is told the sample in the recording that is reached."""
        windows = pack(find_speech(block.samples, self._options))
        words: list[Piece] = []
        decided: list[Decided] = []
        step = self._options.batch_size
        for first in range(0, len(windows), step):
            group = windows[first : first + step]
            sounds = [window.samples(block.samples) for window in group]
            hearings = self._hear(sounds, FIRST)
            encoded = self._pipeline.take(len(group))
            for at, (window, sound, hearing) in enumerate(zip(group, sounds, hearings, strict=True)):
                kept: Sequence[Piece] = self._trust(sound, hearing).words
                if self._second and kept:
                    kept, found = self._second.hear(encoded[at], kept)
                    decided.extend(one.moved(len(words)) for one in found)
                words.extend(_placed(kept, window, block.start / RATE))
            progress(block.start + group[-1].spans[-1].end)
        ordered = in_order(words)
        return HeardBlock(
            start=block.start,
            end=block.end,
            words=tuple(
                Word(text=w.text, start=w.start, end=w.end, probability=round(min(max(w.probability, 0.0), 1.0), 4))
                for w in ordered
            ),
            figures=tuple(one.figure(ordered) for one in decided),
        )

    def _trust(self, sound: Samples, hearing: Hearing) -> Hearing:
        """The hearing to keep for a window: the first one, or a better founded one."""
        if self._silent(hearing):
            return Hearing((), hearing.log_probability, hearing.no_speech, 0.0)
        if not self._sound_of_mind(hearing):
            tried = [hearing]
            for manner in LADDER:
                tried.append(self._hear([sound], manner)[0])
                if self._sound_of_mind(tried[-1]):
                    break
            hearing = _best(tried, self._options)
            if self._silent(hearing):
                return Hearing((), hearing.log_probability, hearing.no_speech, 0.0)
            if hearing is not tried[0]:
                return hearing
        if self._prime.text and leaks(hearing, self._prime):
            return settle(hearing, self._hear([sound], UNPRIMED)[0], self._prime)
        return hearing

    def _silent(self, hearing: Hearing) -> bool:
        """True where the model itself says that nothing was said (Whisper's own rule)."""
        return (
            hearing.no_speech > self._options.no_speech and hearing.log_probability < self._options.min_log_probability
        )

    def _sound_of_mind(self, hearing: Hearing) -> bool:
        return (
            hearing.compression <= self._options.max_compression
            and hearing.log_probability >= self._options.min_log_probability
        )

    def _hear(self, sounds: Sequence[Samples], manner: _Manner) -> list[Hearing]:
        clips: list[dict[str, float]] = []
        offsets: list[float] = []
        at = 0
        for sound in sounds:
            clips.append({"start": at / RATE, "end": (at + len(sound)) / RATE})
            offsets.append(at / RATE)
            at += len(sound)
        segments, _ = self._pipeline.transcribe(
            np.concatenate(sounds),
            language=self._options.language,
            beam_size=self._options.beam_size,
            temperature=0.0,
            condition_on_previous_text=False,
            word_timestamps=True,
            vad_filter=False,
            clip_timestamps=clips,
            batch_size=self._options.batch_size,
            hotwords=self._prime.text if manner.primed and self._prime.text else None,
            no_repeat_ngram_size=manner.no_repeat,
        )
        return [_hearing(segment, offset) for segment, offset in zip(segments, offsets, strict=True)]


def _hearing(segment: Any, offset: float) -> Hearing:
    pieces = [
        Piece(word.word, float(word.start) - offset, float(word.end) - offset, float(word.probability))
        for word in segment.words or ()
    ]
    return Hearing(
        words=tuple(join_pieces(pieces)),
        log_probability=float(segment.avg_logprob),
        no_speech=float(segment.no_speech_prob),
        compression=float(segment.compression_ratio) if segment.text.strip() else 0.0,
    )


def _best(tried: Sequence[Hearing], options: HearingOptions) -> Hearing:
    """The likeliest hearing that doesn't loop; the likeliest of all where each one loops."""
    steady = [hearing for hearing in tried if hearing.compression <= options.max_compression]
    return max(steady or tried, key=lambda hearing: hearing.log_probability)


def _placed(words: Sequence[Piece], window: Window, shift: float) -> list[Piece]:
    placed: list[Piece] = []
    for word in words:
        start, end = window.place(max(word.start, 0.0), max(word.end, 0.0))
        placed.append(Piece(word.text, start + shift, end + shift, word.probability))
    return placed
