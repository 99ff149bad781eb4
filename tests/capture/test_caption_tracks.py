"""Captions are read instead of sound where that is all there is."""

from __future__ import annotations

from pathlib import Path

import pytest

from capture.caption_tracks import read_captions_of
from capture.errors import TranscriptError
from capture.hearing import hear
from tests.capture.making import Maker

SRT = """1
00:00:01,000 --> 00:00:02,500
Set it to <i>eleven</i>
12 thou

2
00:00:03,000 --> 00:00:04,500
and no more
"""
SAID = [(1.0, 2.5, "Set it to eleven 12 thou"), (3.0, 4.5, "and no more")]


def captioned(make: Maker, name: str, codec: str) -> Path:
    captions = make.folder / "captions.srt"
    captions.write_text(SRT, encoding="utf-8")
    return make.film(name, "-i", captions, "-c:s", codec)


@pytest.mark.parametrize(
    ("name", "codec"), [("a.mp4", "mov_text"), ("a.mkv", "subrip"), ("b.mkv", "ass"), ("a.webm", "webvtt")]
)
def test_a_track_inside_the_film(make: Maker, tmp_path: Path, name: str, codec: str) -> None:
    transcript = read_captions_of(captioned(make, name, codec))
    assert transcript is not None
    assert [(cue.start, cue.end, cue.text) for cue in transcript.cues] == SAID
    assert (transcript.ear, transcript.word_times) == (None, "spread")
    assert transcript.duration == pytest.approx(6, abs=0.1)


@pytest.mark.parametrize("ending", [".srt", ".en.srt"])
def test_a_file_beside_the_film(make: Maker, tmp_path: Path, ending: str) -> None:
    film = tmp_path / "bridge.mp4"
    film.write_bytes(make.film("silent.mp4").read_bytes())
    assert read_captions_of(film) is None
    film.with_suffix(ending).write_text(SRT, encoding="utf-8")
    transcript = read_captions_of(film)
    assert transcript is not None
    assert [(cue.start, cue.end, cue.text) for cue in transcript.cues] == SAID
    assert transcript.source == f"bridge{ending}"
    assert transcript.duration == pytest.approx(6, abs=0.1)


def test_a_silent_film_is_read_where_hearing_is_asked_for(make: Maker, tmp_path: Path) -> None:
    transcript = hear(captioned(make, "a.mp4", "mov_text"), checkpoint_folder=tmp_path)
    assert [cue.text for cue in transcript.cues] == [text for _, _, text in SAID]
    assert not list(tmp_path.iterdir())


def test_a_film_without_captions_has_none(make: Maker) -> None:
    assert read_captions_of(make.film("spoken.mp4", "-i", make.speech())) is None


def test_captions_beside_the_film_that_cannot_be_read_are_no_secret(make: Maker, tmp_path: Path) -> None:
    film = tmp_path / "bridge.mp4"
    film.write_bytes(make.film("silent.mp4").read_bytes())
    film.with_suffix(".vtt").write_bytes(b"\0\1\2")
    with pytest.raises(TranscriptError, match="is no text file"):
        read_captions_of(film)
