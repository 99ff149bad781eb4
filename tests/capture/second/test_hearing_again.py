"""Words that change keep their place and time; what stays is not touched."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.hearing import hear
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.second import Doubt, Rival
from capture.second.hearing_again import SecondHearing, spread
from capture.second.scoring import Scorer
from capture.sound import RATE, Sound
from capture.words import Piece
from tests.capture.making import Maker


def pieces(text: str) -> list[Piece]:
    return [Piece(word, float(at), at + 0.8, 0.9) for at, word in enumerate(text.split())]


def test_a_changed_word_takes_the_time_of_what_it_replaces() -> None:
    found = spread(["point", "two", "one", "millimetres"], pieces("point to one millimetres"))
    assert [one.text for one in found] == ["point", "two", "one", "millimetres"]
    assert [one.start for one in found] == [0, 1, 2, 3]
    assert [one.end for one in found] == pytest.approx([0.8, 1.8, 2.8, 3.8])


def test_more_words_share_the_time_of_fewer() -> None:
    found = spread(["ten", "thou", "thick"], pieces("ten houthig"))
    assert [one.text for one in found] == ["ten", "thou", "thick"]
    assert found[1].start == 1.0
    assert found[1].end == found[2].start
    assert found[2].end == pytest.approx(1.8)


words = st.lists(st.sampled_from(["one", "two", "thou", "a"]), min_size=1, max_size=6)


@given(words, words)
def test_times_rise_and_stay_inside(new: list[str], old: list[str]) -> None:
    over = pieces(" ".join(old))
    found = spread(new, over)
    assert [one.text for one in found] == new
    times = [time for one in found for time in (one.start, one.end)]
    assert times == sorted(times)
    assert over[0].start <= times[0]
    assert times[-1] <= over[-1].end


@pytest.mark.model
def test_the_sound_tells_the_figure_that_was_said(model: SpeechModel, make: Maker) -> None:
    sound = np.concatenate(list(Sound(make.speech("The slot is eleven sixty fourths wide.")).pieces()))
    whisper = model.whisper
    features = whisper.feature_extractor(sound, padding=160)[..., :3000]
    padded = np.pad(features, ((0, 0), (0, 3000 - features.shape[-1])))
    encoded = np.array(whisper.encode(padded))[0]
    scorer = Scorer(model, "The action is five sixty-fourths, the slot is one thirty-second wide.", HearingOptions())
    readings = ["eleven sixty-fourths", "seven sixty-fourths", "eleven sixteenths", "twelve sixty-fourths"]
    scores = scorer.score(encoded, ["The", "slot", "is"], readings, ["wide."])
    assert scores[0] == max(scores)
    assert scores[0] - sorted(scores)[-2] > 1
    assert len(sound) > RATE


@pytest.mark.model
def test_a_transcript_keeps_what_was_first_heard(model: SpeechModel, make: Maker, tmp_path: Path) -> None:
    def swapped(texts: Sequence[str]) -> list[Doubt]:
        at = next(at for at, text in enumerate(texts) if text == "is")
        rival = Rival(" ".join(["is", "twelve", *texts[at + 2 : at + 3]]), "a test", sense=4.0)
        return [Doubt(at, at + 3, (rival,))]

    path = make.speech("The slot is eleven sixty fourths wide. Take it slowly with a sharp chisel.")
    before = hear(path, model=model, checkpoint_folder=tmp_path)
    after = hear(path, model=model, checkpoint_folder=tmp_path, rivals=swapped)
    (figure,) = after.figures
    assert figure.first_heard in before.text
    assert figure.first_heard in [one.text for one in figure.readings]
    assert figure.readings[0].text in after.text
    assert 0 < figure.start < figure.end < after.duration
    assert not before.figures


def test_without_a_figure_nothing_is_scored() -> None:
    class NoScorer(SecondHearing):
        def __init__(self) -> None:
            self._rivals = lambda texts: []

    kept, decided = NoScorer().hear(np.zeros((10, 4), np.float32), pieces("nothing to see"))
    assert kept == pieces("nothing to see")
    assert decided == []
