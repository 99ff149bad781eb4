"""A script: what it refuses, which picture stands when, and when its words are said."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from pydantic import ValidationError

from demo_sessions.build.film import FPS, film, shots
from demo_sessions.build.noting import make_truth
from demo_sessions.build.script import Line, Mentions, Script, load_script
from demo_sessions.build.sound import RATE, Recording, record
from demo_sessions.build.voices import Spoken
from demo_sessions.truth import Figure, folder, slugs

QUARTER = Figure(quote="a quarter", value=0.25, unit="inch", attribute=("width",), phase="target")


class Metronome:
    """A voice that says a word every half second, each a short tone."""

    def read(self, text: str, pace: float) -> Spoken:
        words = len(text.split())
        time = np.arange(round(words * 0.5 * pace * 8000)) / 8000
        starts = tuple(0.5 * pace * number for number in range(words))
        return Spoken(np.asarray(0.3 * np.sin(2 * np.pi * 300 * time), np.float32), 8000, starts)


def script(*lines: Line) -> Script:
    return Script(voice="joe", pace=1.0, gap=0.5, people=("Nobody",), line=lines, mentions=Mentions())


def test_a_quote_must_be_said() -> None:
    with pytest.raises(ValidationError, match="'a quarter' is not in 'Nothing here'"):
        Line(say="Nothing here", measures=(QUARTER,))


def test_a_picture_must_exist() -> None:
    told = script(Line(say="One word", picture="the moon"))
    with pytest.raises(ValueError, match="no picture is called 'the moon'"):
        shots(told, record(told, Metronome()))


def test_neighbouring_lines_share_their_picture() -> None:
    told = script(
        Line(say="One", picture="title"), Line(say="two", picture="title"), Line(say="three four", picture="scale")
    )
    recording = record(told, Metronome())
    first, second = shots(told, recording)
    assert first.start == 0
    assert first.end == second.start == recording.lines[1].until
    assert second.end == recording.duration


def test_a_film_is_as_long_as_its_sound() -> None:
    told = script(Line(say="One two", picture="lifted"), Line(say="three", picture="guitar"))
    recording = record(told, Metronome())
    frames = list(film(told, recording))
    assert {frame.size for frame in frames} == {(854, 480)}
    assert len(frames) == pytest.approx(recording.duration * FPS, abs=1)


def test_a_pause_is_as_long_as_the_line_says() -> None:
    recording = record(script(Line(say="One", pause=3.0, work="scrape"), Line(say="two")), Metronome())
    first, second = recording.lines
    assert second.start - first.end == pytest.approx(3.0, abs=1 / RATE)
    assert second.until - second.end == pytest.approx(0.5, abs=1 / RATE)


def test_figures_start_with_their_own_word(tmp_path: Path) -> None:
    """The second "a quarter" of a line is found after the first."""
    line = Line(
        say="It is a quarter wide, or a quarter deep",
        measures=(QUARTER, QUARTER),
    )
    (tmp_path / "session.toml").write_text(
        'title = "T"\nsubject = "S"\ndate = 2025-01-01\nrecording = "sound.m4a"\ntrade = "general"\n', "utf-8"
    )
    told = script(line)
    recording = record(told, Metronome())
    truth = make_truth(tmp_path, told, recording)
    begins = recording.lines[0].start
    assert [one.start - begins for one in truth.measures] == pytest.approx([1.0, 3.0], abs=0.01)


def test_the_same_script_sounds_the_same_twice() -> None:
    told = script(Line(say="One", pause=2.0, work="motor"), Line(say="two", pause=2.0, work="knock"))
    recordings: list[Recording] = [record(told, Metronome()) for _ in range(2)]
    assert np.array_equal(recordings[0].samples, recordings[1].samples)


@pytest.mark.parametrize("slug", slugs())
def test_pictures_go_with_films_only(slug: str) -> None:
    told = load_script(folder(slug))
    assert {bool(line.picture) for line in told.line} == {(folder(slug) / "film.mp4").is_file()}
