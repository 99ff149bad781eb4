"""From a recording or a caption file to a `Transcript`.

Neighbours import from here. Nothing heavy is loaded before it is needed.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from capture.options import HearingOptions
from capture.prime import compose_prime
from capture.transcript import Transcript

if TYPE_CHECKING:
    from capture.media import Probe
    from capture.model import SpeechModel
    from capture.second.rival import RivalMaker

__all__ = [
    "HearingOptions",
    "compose_prime",
    "hear",
    "is_caption_file",
    "load_model",
    "probe",
    "read_captions",
    "read_captions_of",
]


def hear(
    recording: Path,
    *,
    model: SpeechModel | HearingOptions | None = None,
    options: HearingOptions | None = None,
    prime: str | None = None,
    rivals: RivalMaker | None = None,
    checkpoint_folder: Path,
    progress: Callable[[float, float], None] | None = None,
) -> Transcript:
    """The transcript of a film or sound file: see `capture.hearing.hear`."""
    from capture.hearing import hear as work

    return work(
        recording,
        model=model,
        options=options,
        prime=prime,
        rivals=rivals,
        checkpoint_folder=checkpoint_folder,
        progress=progress,
    )


def load_model(options: HearingOptions | None = None) -> SpeechModel:
    """The speech model that `options` names: see `capture.model.load_model`."""
    from capture.model import load_model as work

    return work(options)


def probe(recording: Path) -> Probe:
    """What a recording holds: see `capture.media.probe`."""
    from capture.media import probe as work

    return work(recording)


def is_caption_file(path: Path) -> bool:
    """True for a name that captions or a transcript would have: see `capture.captions.is_caption_file`."""
    from capture.captions import is_caption_file as work

    return work(path)


def read_captions(path: Path) -> Transcript:
    """The transcript in a caption or transcript file: see `capture.captions.read_captions`."""
    from capture.captions import read_captions as work

    return work(path)


def read_captions_of(recording: Path) -> Transcript | None:
    """The captions that come with a recording: see `capture.caption_tracks.read_captions_of`."""
    from capture.caption_tracks import read_captions_of as work

    return work(recording)
