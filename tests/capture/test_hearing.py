"""A recording becomes its transcript, whatever breaks off in between."""

from __future__ import annotations

import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from capture import listening
from capture.errors import RecordingError
from capture.hearing import hear
from capture.leaks import Prime
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.prime import compose_prime
from capture.sound import RATE
from capture.transcript import Transcript
from capture.windows import WINDOW, Span
from tests.capture.making import Maker, Samples

pytestmark = pytest.mark.model

SHORT_BLOCKS = HearingOptions(block_seconds=5, block_slack=2)
TALK = (
    "The first thing is to measure the action at the twelfth fret. It came out at seven sixty fourths. "
    "So the saddle has to come down by twice the difference. Mark the line with a sharp pencil, and sand to it. "
    "Keep checking with a straight edge. When the line is gone, stop, and string it up again."
)

Hear = Callable[..., Transcript]


@pytest.fixture
def listen(model: SpeechModel, tmp_path: Path) -> Hear:
    """`hear` with the loaded model and a checkpoint folder of the test's own."""

    def work(recording: Path, **choices: object) -> Transcript:
        return hear(recording, **{"model": model, "checkpoint_folder": tmp_path / "session", **choices})  # type: ignore[arg-type]

    return work


@pytest.fixture(scope="module")
def unbroken(make: Maker, model: SpeechModel, tmp_path_factory: pytest.TempPathFactory) -> Transcript:
    """The talk heard in one go, in blocks of a few seconds."""
    folder = tmp_path_factory.mktemp("unbroken")
    transcript = hear(make.speech(TALK), model=model, options=SHORT_BLOCKS, checkpoint_folder=folder)
    assert not list(folder.iterdir()), "the checkpoint is removed when the transcript is done"
    return transcript


def test_measures_are_spelled_out(unbroken: Transcript) -> None:
    assert "seven sixty-fourths" in unbroken.text
    assert "straight edge" in unbroken.text.replace("straightedge", "straight edge")


def test_a_transcript_holds_together(unbroken: Transcript) -> None:
    before = 0.0
    for cue in unbroken.cues:
        assert cue.text == " ".join(word.text for word in cue.words)
        assert (cue.start, cue.end) == (cue.words[0].start, cue.words[-1].end)
        for word in cue.words:
            assert before <= word.start <= word.end <= unbroken.duration
            assert word.text.split() == [word.text]
            assert word.probability is not None
            before = word.end


def test_it_says_what_heard_it(unbroken: Transcript, model: SpeechModel) -> None:
    assert unbroken.ear is not None
    assert (unbroken.ear.model, unbroken.ear.device) == ("whisper-base, taught measures", model.device)
    assert unbroken.ear.prime == compose_prime()
    assert (unbroken.word_times, unbroken.language, unbroken.warnings) == ("heard", "en", ())


def test_a_transcript_is_read_back_as_it_was_written(unbroken: Transcript) -> None:
    assert Transcript.model_validate_json(unbroken.to_json()) == unbroken


def test_an_empty_prime_primes_nothing(listen: Hear, make: Maker) -> None:
    transcript = listen(make.speech(), prime="")
    assert transcript.ear is not None
    assert transcript.ear.prime == ""
    assert transcript.cues


def test_sound_that_starts_late_is_timed_as_the_film_shows_it(listen: Hear, make: Maker) -> None:
    speech = make.speech()
    plain = listen(speech)
    late = listen(make.film("late.mp4", "-itsoffset", "3.5", "-i", speech, "-map", "0:v", "-map", "1:a"))
    assert late.text == plain.text
    shifts = [there.start - here.start for here, there in zip(plain.cues[0].words, late.cues[0].words, strict=True)]
    assert shifts == pytest.approx([3.5] * len(shifts), abs=0.2)


def test_a_dead_channel_changes_no_word(listen: Hear, make: Maker) -> None:
    speech = make.speech()
    dead = make.sound("dead.wav", speech, "-af", "pan=stereo|c0=0*c0|c1=c0")
    assert listen(dead).text == listen(speech).text


def tone(kind: str) -> Samples:
    time = np.arange(60 * RATE) / RATE
    noise = np.random.default_rng(1)
    sounds = {
        "silence": 0 * time,
        "noise": noise.normal(0, 0.1, len(time)),
        "saw": 0.4 * (2 * (180 * time % 1) - 1) * (0.7 + 0.3 * np.sin(2 * np.pi * 5 * time)),
        "hammer": noise.normal(0, 0.6, len(time)) * np.exp(-40 * (time % 0.65)),
    }
    return np.asarray(sounds[kind], dtype=np.float32)


@pytest.mark.parametrize("kind", ["silence", "noise", "saw", "hammer"])
def test_a_minute_without_speech_gives_no_words(listen: Hear, make: Maker, kind: str) -> None:
    transcript = listen(make.samples(tone(kind)))
    assert transcript.cues == ()
    assert transcript.duration == pytest.approx(60, abs=0.1)


@pytest.mark.parametrize("kind", ["silence", "saw", "hammer"])
def test_the_prime_does_not_leak_even_where_noise_is_taken_for_speech(
    listen: Hear, make: Maker, monkeypatch: pytest.MonkeyPatch, kind: str
) -> None:
    def all_of_it(samples: Samples, _: HearingOptions) -> list[Span]:
        ends = [(start, min(start + WINDOW, len(samples))) for start in range(0, len(samples), WINDOW)]
        return [Span(start, end, start, end) for start, end in ends]

    monkeypatch.setattr(listening, "find_speech", all_of_it)
    heard = listen(make.samples(tone(kind)[: 30 * RATE])).text.casefold()
    known = set(Prime.of(compose_prime()).parts) - {"the", "is", "of", "and", "a"}
    assert not known & set(heard.replace("-", " ").split()), heard


def test_progress_rises_to_the_end(listen: Hear, make: Maker) -> None:
    told: list[tuple[float, float]] = []
    transcript = listen(
        make.speech(TALK), options=SHORT_BLOCKS, progress=lambda done, total: told.append((done, total))
    )
    assert told[0][0] == 0
    assert told[-1][0] == pytest.approx(transcript.duration, abs=0.1)
    assert [done for done, _ in told] == sorted(done for done, _ in told)
    assert all(done <= total for done, total in told)


KILLED = """
import os, signal, sys
from pathlib import Path
from capture import hearing, files
from capture.options import HearingOptions

real, calls = os.fsync, 0
def fsync(descriptor):
    global calls
    calls += 1
    if calls == int(sys.argv[3]):
        os.kill(os.getpid(), signal.SIGKILL)
    real(descriptor)

folder = Path(sys.argv[2])
hearing.load_model()  # joins the model's parts, which is a write of another kind
os.fsync = fsync
hearing.hear(Path(sys.argv[1]), options=HearingOptions(block_seconds=5, block_slack=2), checkpoint_folder=folder)
"""


# Each checkpoint is two calls: the file's, before it takes its name, and the folder's, after.
@pytest.mark.parametrize(("call", "kept"), [(1, 0), (2, 1), (3, 1)])
def test_a_killed_run_goes_on_to_the_same_transcript(
    listen: Hear, make: Maker, unbroken: Transcript, tmp_path: Path, call: int, kept: int
) -> None:
    folder = tmp_path / "session"
    recording = make.speech(TALK)
    killed = subprocess.run(
        [sys.executable, "-c", KILLED, str(recording), str(folder), str(call)],
        capture_output=True,
        check=False,
        timeout=300,
    )
    assert killed.returncode == -signal.SIGKILL, killed.stderr.decode()
    assert (folder / "hearing.json").exists() == bool(kept)
    told: list[float] = []
    again = listen(
        recording, options=SHORT_BLOCKS, checkpoint_folder=folder, progress=lambda done, _: told.append(done)
    )
    assert (told[0] > 0) == bool(kept), "what was heard before the kill is not heard again"
    assert again.to_json() == unbroken.to_json()
    assert not list(folder.iterdir())


def test_stopping_from_the_keyboard_keeps_what_was_heard(
    listen: Hear, make: Maker, unbroken: Transcript, tmp_path: Path
) -> None:
    def stop(done: float, _: float) -> None:
        if done > 8:
            raise KeyboardInterrupt

    recording = make.speech(TALK)
    with pytest.raises(KeyboardInterrupt):
        listen(recording, options=SHORT_BLOCKS, progress=stop)
    assert [path.name for path in (tmp_path / "session").iterdir()] == ["hearing.json"]
    told: list[float] = []
    again = listen(recording, options=SHORT_BLOCKS, progress=lambda done, _: told.append(done))
    assert told[0] > 0
    assert again.to_json() == unbroken.to_json()


def test_another_prime_starts_afresh(listen: Hear, make: Maker, tmp_path: Path) -> None:
    recording = make.speech(TALK)

    def stop(done: float, _: float) -> None:
        if done > 8:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        listen(recording, options=SHORT_BLOCKS, progress=stop)
    told: list[float] = []

    def first_only(done: float, _: float) -> None:
        told.append(done)
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        listen(recording, options=SHORT_BLOCKS, prime="The bridge is three eighths.", progress=first_only)
    assert told == [0]


def bad_files(make: Maker, folder: Path) -> dict[str, Path]:
    empty, text = folder / "empty.mp4", folder / "letter.mp4"
    empty.touch()
    text.write_text("Dear customer\n", encoding="utf-8")
    return {
        "missing": folder / "gone.mp4",
        "empty": empty,
        "text": text,
        "cut": make.cut(make.film("late-index.mp4", "-i", make.speech()), 0.6),
        "silent": make.film("silent.mp4"),
        "folder": folder,
    }


@pytest.mark.parametrize("kind", ["missing", "empty", "text", "cut", "silent", "folder"])
def test_a_bad_file_is_one_line_and_leaves_nothing_behind(listen: Hear, make: Maker, tmp_path: Path, kind: str) -> None:
    path = bad_files(make, tmp_path)[kind]
    before = sorted(tmp_path.iterdir())
    with pytest.raises(RecordingError) as caught:
        listen(path)
    assert "\n" not in str(caught.value)
    assert sorted(tmp_path.iterdir()) == before
