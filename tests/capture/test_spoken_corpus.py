"""The corpus is large, the same every time, fair in its halves, and read right where it is heard right."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from capture.mixing import Samples
from capture.prime import compose_prime
from demo_sessions.build.voices import Spoken
from extract.pipeline import Extractor
from tests.benchmarks.spoken_measures import sound
from tests.benchmarks.spoken_measures.hearings import told
from tests.benchmarks.spoken_measures.scoring import Said, judge
from tests.benchmarks.spoken_measures.sentences import SIDES, Sentence, Side, corpus
from tests.benchmarks.spoken_measures.sound import RATE, Recording
from tests.benchmarks.spoken_measures.tables import twin
from tests.benchmarks.spoken_measures.tools import TOOLS, tool_noise, under
from tests.benchmarks.spoken_measures.voices import SPEAKERS


def spread(sentences: list[Sentence]) -> Recording:
    said = tuple(Said(one, at * 6.0, at * 6.0 + 4, ()) for at, one in enumerate(sentences))
    return Recording(SPEAKERS[0], Path("told.wav"), said)


def test_it_is_large_and_the_same_every_time() -> None:
    sentences = corpus()
    assert sum(one.withdrawn is None for one in sentences) >= 300
    assert sum(one.withdrawn is not None for one in sentences) >= 60
    assert sentences == corpus()


def test_the_halves_share_no_carrier_and_no_voice() -> None:
    sides = {side: [one for one in corpus() if one.side == side] for side in SIDES}
    assert len(sides["tuning"]) >= 200
    assert len(sides["held-out"]) >= 360
    assert len(SPEAKERS) >= 6
    assert len({one.name for one in SPEAKERS}) == len(SPEAKERS)
    texts = {side: {one.text for one in told} for side, told in sides.items()}
    assert not texts["tuning"] & texts["held-out"]


@pytest.fixture(scope="module")
def extractor() -> Extractor:
    return Extractor()


@pytest.mark.parametrize("side", SIDES)
def test_a_perfect_ear_gets_them_right(extractor: Extractor, side: Side) -> None:
    wrong: list[str] = []
    for _, sentences in sound.dealt(side):
        recording = spread(sentences)
        record = extractor.record(told(recording))
        wrong += [one.sentence.text for one in recording.said if not judge(one, record).right]
    assert len(wrong) <= len(sentences) // 10, wrong


def test_a_wrong_figure_is_no_hit(extractor: Extractor) -> None:
    sentences = [one for one in corpus() if one.kind == "fraction"]
    record = extractor.record(told(spread(sentences[1:] + sentences[:1])))
    assert sum(judge(one, record).right for one in spread(sentences).said) <= len(sentences) // 10


class Buzz:
    """A voice that can only buzz, a tenth of a second a letter."""

    def read(self, text: str, pace: float) -> Spoken:
        time = np.arange(round(len(text) * pace * RATE / 10)) / RATE
        return Spoken(np.asarray(np.sign(np.sin(700 * time)), np.float32), RATE, (0.0,))


def test_a_recording_knows_where_each_sentence_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SPOKESHAVE_CACHE", str(tmp_path))
    monkeypatch.setattr(sound, "voice", lambda name: Buzz())
    for recording in sound.recordings("held-out", 0.1):
        samples = sound.samples_of(recording.path)
        for said in recording.said:
            middle = samples[round((said.start + 0.1) * RATE) : round((said.end - 0.1) * RATE)]
            assert rms(middle) == pytest.approx(sound.LEVEL, rel=0.1)
        gap = samples[round((recording.said[0].end + 0.1) * RATE) : round((recording.said[1].start - 0.1) * RATE)]
        assert rms(gap) < sound.LEVEL / 20
    again = sound.recordings("held-out", 0.1)
    assert again == sound.recordings("held-out", 0.1)


def test_noise_is_as_loud_as_asked() -> None:
    assert len(tool_noise(50)) == 50 * RATE
    assert all(rms(tool(RATE, 1)) > 0.05 for tool in TOOLS)
    speech = np.asarray(0.1 * np.sign(np.sin(np.arange(5 * RATE) / 9)), np.float32)
    for decibels in (20, 10, 5):
        noisy = under(speech, decibels)
        gain = float(np.dot(noisy, speech) / np.dot(speech, speech))
        left = noisy - gain * speech
        assert 20 * np.log10(gain * rms(speech) / rms(left)) == pytest.approx(decibels, abs=1)


def test_a_twin_of_the_prime_has_other_figures_in_the_same_places() -> None:
    own, other = compose_prime().split(), twin(compose_prime()).split()
    assert len(own) == len(other)
    changed = [(one, two) for one, two in zip(own, other, strict=True) if one != two]
    assert ("five", "seven") in changed
    assert "sixty-fourths," in other


def rms(samples: Samples) -> float:
    return float(np.sqrt(np.mean(np.asarray(samples, np.float64) ** 2)))
