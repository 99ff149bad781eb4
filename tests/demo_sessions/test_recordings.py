"""The sound and film files: small, whole, as long as they say, with speech where truth.json puts it."""

from __future__ import annotations

from functools import cache

import av
import numpy as np
import pytest
from numpy.typing import NDArray

from demo_sessions.truth import folder, load_truth, slugs

RATE = 16000
FILMS = ("old-bustard-bridge", "old-bustard-settled")
SMALL = 6_000_000


@cache
def sound(slug: str) -> NDArray[np.float32]:
    """The sound of a recording at `RATE`, decoded from its file."""
    resampler = av.AudioResampler(format="flt", layout="mono", rate=RATE)
    with av.open(str(folder(slug) / load_truth(slug).recording)) as file:
        frames = [*file.decode(audio=0), None]
        pieces = [piece.to_ndarray()[0] for frame in frames for piece in resampler.resample(frame)]
    return np.concatenate(pieces)


def loudness(slug: str, start: float, end: float) -> float:
    piece = sound(slug)[round(start * RATE) : round(end * RATE)]
    return float(np.sqrt(np.mean(piece**2)))


def test_all_together_are_small() -> None:
    assert sum((folder(slug) / load_truth(slug).recording).stat().st_size for slug in slugs()) < SMALL


@pytest.mark.parametrize("slug", slugs())
def test_runs_two_to_four_minutes_as_truth_says(slug: str) -> None:
    truth = load_truth(slug)
    assert 120 <= truth.duration <= 240
    assert len(sound(slug)) / RATE == pytest.approx(truth.duration, abs=0.2)


@pytest.mark.parametrize("slug", slugs())
def test_speech_is_where_truth_puts_it(slug: str) -> None:
    truth = load_truth(slug)
    room = loudness(slug, 0.2, 1.0)
    for one in truth.sentences:
        assert loudness(slug, one.start, one.end) > 10 * room, one.text
    for one, following in zip(truth.sentences, truth.sentences[1:], strict=False):
        between = loudness(slug, one.end + 0.1, following.start - 0.1)
        assert between < loudness(slug, one.start, one.end) / 3, one.text


@pytest.mark.parametrize("slug", slugs())
def test_no_second_is_digital_silence(slug: str) -> None:
    samples = sound(slug)[: len(sound(slug)) // RATE * RATE].reshape(-1, RATE)
    assert np.abs(samples).max(axis=1).min() > 1e-4
    assert np.abs(samples).max() < 1.0


@pytest.mark.parametrize("slug", FILMS)
def test_films_have_h264_pictures_and_aac_sound(slug: str) -> None:
    with av.open(str(folder(slug) / "film.mp4")) as film:
        pictures, voice = film.streams.video[0], film.streams.audio[0]
        assert (pictures.codec_context.name, voice.codec_context.name) == ("h264", "aac")
        assert (pictures.width, pictures.height, pictures.codec_context.pix_fmt) == (854, 480, "yuv420p")
        assert pictures.average_rate is not None
        assert 5 <= pictures.average_rate <= 10
        frames = sum(1 for _ in film.decode(pictures))
    assert frames / float(pictures.average_rate) == pytest.approx(load_truth(slug).duration, abs=0.3)


def test_the_third_is_sound_only() -> None:
    with av.open(str(folder("seized-pedal") / "sound.m4a")) as file:
        assert [stream.type for stream in file.streams] == ["audio"]
