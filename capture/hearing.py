"""From a recording to its transcript: block by block, with a checkpoint behind each."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from capture.blocks import cut
from capture.caption_tracks import read_captions_of
from capture.checkpoint import Checkpoint, HeardBlock, checkpoint_key
from capture.cues import group
from capture.errors import RecordingError
from capture.listening import Listener
from capture.media import check_whole, probe
from capture.model import SpeechModel, load_model
from capture.options import HearingOptions
from capture.prime import compose_prime, fit_prime
from capture.second.rival import RivalMaker
from capture.sound import RATE, Sound
from capture.transcript import Ear, Transcript

Progress = Callable[[float, float], None]
"""Told the seconds done and the seconds in all."""


def hear(
    recording: Path,
    *,
    model: SpeechModel | HearingOptions | None = None,
    options: HearingOptions | None = None,
    prime: str | None = None,
    rivals: RivalMaker | None = None,
    checkpoint_folder: Path,
    progress: Progress | None = None,
) -> Transcript:
    """The transcript of a film or sound file.

    `model` is a loaded model, or the options to load one by; null loads the one that ships. `prime` is kept in the
    model's mind (see `capture.prime`): null takes one for a general bench, an empty text none. `rivals` says what else
    a figure may have been (see `capture.second`): null does without a second hearing. What was heard is kept
    in `checkpoint_folder` after each block; a run that was broken off goes on from there and ends in the same
    transcript. A film without sound gives the captions that come with it, where it has any.
    Raises `RecordingError` for a recording that can't be used and `ModelError` for a model that can't.
    """
    if isinstance(model, HearingOptions):
        options, model = model, None
    options = options or HearingOptions()
    facts = probe(recording)
    if not facts.has_sound:
        captions = read_captions_of(recording)
        if captions is not None:
            return captions
    warnings = check_whole(recording)
    model = model or load_model(options)
    prime = fit_prime(compose_prime() if prime is None else prime, model.count_tokens)
    key = checkpoint_key(recording, model, prime, options, second=rivals is not None)
    checkpoint = Checkpoint(checkpoint_folder, key)
    heard = checkpoint.load()
    sound = Sound(recording)
    listener = Listener(model, prime, options, rivals)
    report = _reporter(progress, facts.duration)
    report(heard[-1].end if heard else 0)
    for block in cut(sound.pieces(), options, skip=heard[-1].end if heard else 0):
        heard.append(listener.hear(block, report))
        checkpoint.save(heard)
        report(block.end)
    transcript = _transcript(
        recording, facts.duration, heard, (*warnings, *sound.warnings), _ear(model, prime), options
    )
    checkpoint.remove()
    return transcript


def _transcript(
    recording: Path,
    duration: float,
    heard: list[HeardBlock],
    warnings: tuple[str, ...],
    ear: Ear,
    options: HearingOptions,
) -> Transcript:
    if not heard:
        raise RecordingError(recording, "its sound track is empty", "record it again, or give its captions instead")
    return Transcript(
        source=recording.name,
        duration=round(max(duration, heard[-1].end / RATE), 3),
        language=options.language,
        ear=ear,
        word_times="heard",
        cues=group([word for block in heard for word in block.words]),
        figures=tuple(figure for block in heard for figure in block.figures),
        warnings=warnings,
    )


def _ear(model: SpeechModel, prime: str) -> Ear:
    return Ear(model=model.name, device=model.device, compute_type=model.compute_type, prime=prime)


def _reporter(progress: Progress | None, duration: float) -> Callable[[int], None]:
    def report(sample: int) -> None:
        if progress is not None:
            done = sample / RATE
            progress(done, max(duration, done))

    return report
