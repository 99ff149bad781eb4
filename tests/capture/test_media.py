"""Which files are recordings, what they hold, and what is said about the others."""

from __future__ import annotations

from pathlib import Path

import av
import pytest

from capture.errors import RecordingError
from capture.media import check_whole, probe
from capture.sound import Sound
from capture.timecode import clock
from tests.capture.making import Maker, run, spoiler

FILMS = ("film.mp4", "film.mov", "film.mkv", "film.webm")
SOUNDS = ("sound.wav", "sound.mp3", "sound.m4a", "sound.ogg", "sound.opus", "sound.flac")


@pytest.mark.parametrize("name", FILMS)
def test_a_film_has_sound_and_picture(make: Maker, name: str) -> None:
    found = probe(make.film(name, "-i", make.speech()))
    assert (found.has_sound, found.has_picture) == (True, True)
    assert found.duration == pytest.approx(6, abs=0.2)


@pytest.mark.parametrize("name", SOUNDS)
def test_a_sound_file_has_no_picture(make: Maker, name: str) -> None:
    speech = make.speech()
    found = probe(make.sound(name, speech))
    assert (found.has_sound, found.has_picture) == (True, False)
    assert found.duration == pytest.approx(probe(speech).duration, abs=0.1)


def test_a_cover_is_no_picture(make: Maker) -> None:
    cover = make.folder / "cover.png"
    make_cover = make.film("still.mp4")
    run("ffmpeg", "-v", "error", "-y", "-i", make_cover, "-frames:v", "1", cover)
    song = make.folder / "covered.mp3"
    run(
        "ffmpeg", "-v", "error", "-y", "-i", make.speech(), "-i", cover,
        "-map", "0", "-map", "1", "-disposition:v", "attached_pic", song,
    )  # fmt: skip
    assert probe(song).has_picture is False


@pytest.mark.parametrize(("name", "container"), [("film.mp4", "mov"), ("film.mkv", "matroska")])
def test_the_container_is_named(make: Maker, name: str, container: str) -> None:
    assert probe(make.film(name, "-i", make.speech())).container == container


def said_of(path: Path) -> str:
    with pytest.raises(RecordingError) as caught:
        check_whole(path)
    line = str(caught.value)
    assert "\n" not in line
    assert line.startswith(f"{path}: ")
    assert "; " in line, "a remedy is missing"
    return line


def test_a_missing_file(tmp_path: Path) -> None:
    assert "there is no such file; check the name" in said_of(tmp_path / "gone.mp4")


def test_a_folder(tmp_path: Path) -> None:
    assert "is a folder, not a recording" in said_of(tmp_path)


def test_an_empty_file(tmp_path: Path) -> None:
    path = tmp_path / "empty.mp4"
    path.touch()
    assert "the file is empty" in said_of(path)


def test_a_text_file_renamed(tmp_path: Path) -> None:
    path = tmp_path / "letter.mp4"
    path.write_text("Dear customer, your clock is ready.\n" * 20, encoding="utf-8")
    assert "holds no sound or film that can be read" in said_of(path)


def test_a_film_without_its_index(make: Maker) -> None:
    # A camera writes the index (moov) last: a cut film has none.
    assert "no index (moov atom)" in said_of(make.cut(make.film("late-index.mp4", "-i", make.speech()), 0.6))


@pytest.mark.parametrize("name", ["film.mp4", "film.mkv", "film.webm"])
def test_a_film_cut_behind_its_index(make: Maker, name: str) -> None:
    extra = ("-movflags", "+faststart") if name.endswith("mp4") else ()
    film = make.film(name, "-i", make.speech(), *extra)
    assert "the file is cut short: its sound breaks off at 0:0" in said_of(make.cut(film, 0.5))


@pytest.mark.parametrize("name", ["sound.wav", "sound.flac", "sound.mp3"])
def test_a_sound_file_cut_short(make: Maker, name: str) -> None:
    assert "the file is cut short" in said_of(make.cut(make.sound(name, make.speech()), 0.4))


def test_an_ogg_file_without_its_last_page_is_warned_of(make: Maker) -> None:
    whole = make.sound("sound.ogg", make.speech())
    assert check_whole(whole) == ()
    assert "may have been cut short" in check_whole(make.cut(whole, 0.6))[0]


def test_a_film_without_sound(make: Maker) -> None:
    line = said_of(make.film("silent.mp4"))
    assert "the film has no sound; put its captions beside it" in line


@pytest.mark.parametrize("name", ["long.mp4", "long.mkv"])
def test_sound_that_stops_before_the_picture_is_warned_of(make: Maker, name: str) -> None:
    speech = make.speech()
    film = make.film(name, "-i", speech, seconds=20)
    stops = clock(probe(speech).duration)
    assert check_whole(film) == (f"the sound stops at {stops}, the picture goes on to 0:20",)


def test_a_file_that_may_not_be_read(make: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    path = make.speech()

    def refuse(self: Path, *_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    assert "the file can't be opened (permission denied); check who may read it" in said_of(path)


@pytest.mark.parametrize("name", [*FILMS, *SOUNDS])
def test_a_whole_file_passes(make: Maker, name: str) -> None:
    path = make.film(name, "-i", make.speech()) if name in FILMS else make.sound(name, make.speech())
    assert check_whole(path) == ()


def unknown_codec(make: Maker, tracks: int) -> Path:
    """A film whose first one or two sound tracks are in a form that nobody knows."""
    two = make.sound("two.mkv", make.speech(), "-map", "0:a", "-map", "0:a", "-c:a", "aac", "-ac:0", "2")
    path = make.folder / f"unknown-{tracks}.mkv"
    path.write_bytes(two.read_bytes().replace(b"A_AAC", b"A_ZZZ", tracks))
    return path


def test_a_track_in_an_unknown_form_gives_way_to_one_that_can_be_read(make: Maker) -> None:
    # Phones write a second sound track in a form of their own.
    path = unknown_codec(make, 1)
    assert check_whole(path) == ()
    assert sum(len(piece) for piece in Sound(path).pieces()) > 3 * 16_000


def test_sound_in_an_unknown_form_only(make: Maker) -> None:
    assert "its sound is in a form that can't be read; export the film" in said_of(unknown_codec(make, 2))


def test_an_ogg_film_that_cannot_be_read_on_says_where(make: Maker) -> None:
    whole = make.sound("talk.ogg", make.speech(), "-c:a", "libvorbis")

    with pytest.raises(RecordingError, match=r"its sound can't be read past 0:0[012]; copy it"):
        list(Sound(make.remuxed("spoilt.ogg", whole, spoiler(1, 2.5))).pieces())


def test_a_film_whose_recorder_was_stopped_is_as_long_as_what_is_there(make: Maker) -> None:
    # A recorder that is stopped hard, or writes to a pipe, leaves a Matroska file without a length.
    film = make.folder / "stopped.mkv"
    run(
        "ffmpeg", "-v", "error", "-y", "-i", make.film("film.mkv", "-i", make.speech()),
        "-c", "copy", "-live", "1", film,
    )  # fmt: skip
    with av.open(str(film)) as container:
        assert container.duration is None
    assert probe(film).duration == pytest.approx(6, abs=0.2)
    assert check_whole(film) == ()
    assert sum(len(piece) for piece in Sound(film).pieces()) > 3 * 16_000
