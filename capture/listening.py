"""Hearing one block: its windows through the model, each trusted or heard again."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

import numpy as np

from capture.blocks import Block
from capture.checkpoint import HeardBlock
from capture.leaks import Prime
from capture.mixing import Samples
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.second.encoding import keeping_pipeline
from capture.second.hearing_again import Decided, SecondHearing
from capture.second.rival import RivalMaker
from capture.second.scoring import Encoded
from capture.sound import RATE
from capture.transcript import Word
from capture.trust import FIRST, Manner, trusted
from capture.windows import Window, find_speech, pack
from capture.words import Hearing, Piece, in_order, join_pieces


class Listener:
    """Hears blocks with one model, one prime and one set of options."""

    def __init__(
        self, model: SpeechModel, prime: str, options: HearingOptions, rivals: RivalMaker | None = None
    ) -> None:
        self._model = model
        self._prime = Prime.of(prime)
        self._options = options
        self._second = SecondHearing(model, prime, options, rivals) if rivals else None

    def hear(self, block: Block, progress: Callable[[int], None] = lambda _: None) -> HeardBlock:
        """The words of a block. `progress` is told the sample in the recording that is reached."""
        windows = pack(find_speech(block.samples, self._options), round(self._options.window_seconds * RATE))
        words: list[Piece] = []
        decided: list[Decided] = []
        step = self._options.batch_size
        for first in range(0, len(windows), step):
            group = windows[first : first + step]
            sounds = [window.samples(block.samples) for window in group]
            hearings, encoded = self._hear(sounds, FIRST)
            for window, sound, heard, sounding in zip(group, sounds, hearings, encoded, strict=True):
                kept: Sequence[Piece] = trusted(heard, partial(self._again, sound), self._prime, self._options).words
                if self._second and kept:
                    kept, found = self._second.hear(sounding, kept)
                    decided.extend(one.moved(len(words)) for one in found)
                words.extend(_placed(kept, window, block.start / RATE))
            progress(block.start + group[-1].spans[-1].end)
        ordered = in_order(words)
        return HeardBlock(
            start=block.start,
            end=block.end,
            words=tuple(_word(piece) for piece in ordered),
            figures=tuple(one.figure(ordered) for one in decided),
        )

    def _again(self, sound: Samples, manner: Manner) -> Hearing:
        return self._hear([sound], manner)[0][0]

    def _hear(self, sounds: Sequence[Samples], manner: Manner) -> tuple[list[Hearing], list[Encoded]]:
        """What was heard in each window, and what the encoder made of it."""
        clips: list[dict[str, float]] = []
        offsets: list[float] = []
        at = 0
        for sound in sounds:
            clips.append({"start": at / RATE, "end": (at + len(sound)) / RATE})
            offsets.append(at / RATE)
            at += len(sound)
        # The pipeline keeps the time of the last word between calls: a new one each time hears the same each time.
        longest = max(len(sound) for sound in sounds) / RATE
        pipeline = keeping_pipeline(self._model.whisper, longest + self._options.window_rest)
        segments, _ = pipeline.transcribe(
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
        hearings = [_hearing(segment, offset) for segment, offset in zip(segments, offsets, strict=True)]
        return hearings, pipeline.take(len(sounds))


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


def _placed(words: Sequence[Piece], window: Window, shift: float) -> list[Piece]:
    placed: list[Piece] = []
    for word in words:
        start, end = window.place(max(word.start, 0.0), max(word.end, 0.0))
        placed.append(Piece(word.text, start + shift, end + shift, word.probability))
    return placed


def _word(piece: Piece) -> Word:
    sure = round(min(max(piece.probability, 0.0), 1.0), 4)
    return Word(text=piece.text, start=piece.start, end=piece.end, probability=sure)
