"""The corpus as recordings of a few minutes, one a voice, made once into a cache folder."""

from __future__ import annotations

import json
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from random import Random

import av
import numpy as np
from av.audio.resampler import AudioResampler

from capture.mixing import Samples
from capture.model_files import cache_folder
from demo_sessions.build.noises import room_tone
from demo_sessions.build.voices import Spoken
from tests.benchmarks.spoken_measures.scoring import Said
from tests.benchmarks.spoken_measures.sentences import SEEDS, Sentence, Side, half
from tests.benchmarks.spoken_measures.voices import SPEAKERS, Speaker, voice

RATE = 16_000
LEVEL = 0.09
"""Root mean square of speech, about -21 dB below full scale."""
_GAPS = (0.6, 1.0, 1.6, 2.6)
"""Seconds between two sentences."""


@dataclass(frozen=True, slots=True)
class Recording:
    """One voice's share of the corpus in one file."""

    speaker: Speaker
    path: Path
    said: tuple[Said, ...]

    @property
    def duration(self) -> float:
        """Seconds, about: to the end of the last sentence."""
        return self.said[-1].end


def recordings(side: Side, share: float = 1.0) -> list[Recording]:
    """All recordings of one half; of each, the first `share` of its sentences."""
    return [_recording(speaker, told[: max(1, round(len(told) * share))]) for speaker, told in dealt(side)]


def dealt(side: Side) -> list[tuple[Speaker, list[Sentence]]]:
    """Each voice of one half, and the sentences that it speaks, in order."""
    speakers = [one for one in SPEAKERS if one.side == side]
    mine = half(side)
    Random(SEEDS[side]).shuffle(mine)  # noqa: S311 (nothing secret is drawn)
    return [(speaker, mine[number :: len(speakers)]) for number, speaker in enumerate(speakers)]


def samples_of(path: Path) -> Samples:
    """The samples of a recording made here, -1..1."""
    with av.open(str(path)) as file:
        parts = [frame.to_ndarray()[0] for frame in file.decode(audio=0)]
    return np.asarray(np.concatenate(parts) / 32768, np.float32)


def write_sound(path: Path, samples: Samples) -> None:
    """Mono 16 kHz, 16-bit."""
    path.parent.mkdir(parents=True, exist_ok=True)
    half_done = path.with_name("." + path.name)
    with av.open(str(half_done), "w", format="wav") as file:
        stream = file.add_stream("pcm_s16le", rate=RATE, layout="mono")
        frame = av.AudioFrame.from_ndarray(
            (samples[None, :] * 32767).clip(-32768, 32767).astype(np.int16), format="s16", layout="mono"
        )
        frame.sample_rate = RATE
        file.mux(stream.encode(frame))
        file.mux(stream.encode(None))
    half_done.replace(path)


def _recording(speaker: Speaker, told: list[Sentence]) -> Recording:
    key = sha256(repr((speaker, [one.text for one in told], LEVEL, _GAPS)).encode()).hexdigest()[:12]
    folder = cache_folder() / "spoken_measures"
    path, truth = folder / f"{speaker.name}-{key}.wav", folder / f"{speaker.name}-{key}.json"
    if not (path.exists() and truth.exists()):
        samples, times = _speak(speaker, told)
        write_sound(path, samples)
        truth.write_text(json.dumps(times), "utf-8")
    times = json.loads(truth.read_text("utf-8"))
    return Recording(
        speaker,
        path,
        tuple(Said(one, at[0], at[1], tuple(at[2])) for one, at in zip(told, times, strict=True)),
    )


def _speak(speaker: Speaker, told: list[Sentence]) -> tuple[Samples, list[tuple[float, float, list[float]]]]:
    random = Random(speaker.name)  # noqa: S311 (nothing secret is drawn)
    pieces: list[Samples] = [np.zeros(RATE, np.float32)]
    at = RATE
    times: list[tuple[float, float, list[float]]] = []
    for sentence in told:
        speech, word_starts = _line(speaker, sentence.text)
        gap = np.zeros(round(random.choice(_GAPS) * RATE), np.float32)
        start = at / RATE
        times.append((start, start + len(speech) / RATE, [start + one for one in word_starts]))
        pieces += [speech, gap]
        at += len(speech) + len(gap)
    mixed = np.concatenate(pieces)
    return np.asarray(mixed + room_tone(len(mixed), RATE, seed=len(told)), np.float32), times


def _line(speaker: Speaker, text: str) -> tuple[Samples, tuple[float, ...]]:
    """One sentence at `LEVEL` and when its words start; kept, so that a run that was broken off goes on from there."""
    key = sha256(repr((speaker.name, speaker.pace, text, LEVEL)).encode()).hexdigest()[:16]
    path = cache_folder() / "spoken_measures" / "lines" / f"{key}.npz"
    if not path.exists():
        spoken = voice(speaker.name).read(text, speaker.pace)
        path.parent.mkdir(parents=True, exist_ok=True)
        half_done = path.with_name(f".{key}.npz")
        np.savez(half_done, speech=level(resampled(spoken)), word_starts=np.array(spoken.word_starts))
        half_done.replace(path)
    with np.load(path) as kept:
        return np.asarray(kept["speech"], np.float32), tuple(float(one) for one in kept["word_starts"])


def resampled(spoken: Spoken) -> Samples:
    """A line at `RATE`."""
    frame = av.AudioFrame.from_ndarray(spoken.samples[np.newaxis, :], format="fltp", layout="mono")
    frame.sample_rate = spoken.rate
    resampler = AudioResampler(format="fltp", layout="mono", rate=RATE)
    parts = [part.to_ndarray()[0] for given in (frame, None) for part in resampler.resample(given)]
    return np.asarray(np.concatenate(parts), np.float32)


def level(speech: Samples) -> Samples:
    """Speech at `LEVEL`; what is nearly silent doesn't count."""
    loud = speech[np.abs(speech) > 0.01]
    return np.asarray(speech * (LEVEL / float(np.sqrt(np.mean(loud**2)))), np.float32)
