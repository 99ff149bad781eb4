"""Blocks end in pauses, at places that depend on the sound alone."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest

from capture.blocks import Block, cut, find_pause
from capture.options import HearingOptions
from capture.sound import RATE, Sound
from tests.capture.making import Maker, Samples

OPTIONS = HearingOptions(block_seconds=5, block_slack=2)
TALK = (
    "The first thing is to measure the action at the twelfth fret. It came out at seven sixty fourths. "
    "So the saddle has to come down by twice the difference. Mark the line with a sharp pencil, and sand to it. "
    "Keep checking with a straight edge. When the line is gone, stop, and string it up again."
)


@pytest.fixture(scope="module")
def talk(make: Maker) -> Samples:
    samples: Samples = np.concatenate(list(Sound(make.speech(TALK)).pieces()))
    return samples


def pieces(samples: Samples, length: int) -> Iterator[Samples]:
    for start in range(0, len(samples), length):
        yield samples[start : start + length]


def ends(blocks: Iterator[Block]) -> list[int]:
    return [block.end for block in blocks]


def test_no_sample_is_lost_or_heard_twice(talk: Samples) -> None:
    blocks = list(cut(pieces(talk, RATE), OPTIONS))
    assert len(blocks) >= 3
    assert np.array_equal(np.concatenate([block.samples for block in blocks]), talk)
    assert [block.start for block in blocks] == [0, *(block.end for block in blocks[:-1])]


def test_every_cut_is_in_a_pause(talk: Samples) -> None:
    spoken = np.sqrt((talk**2).mean())
    for block in list(cut(pieces(talk, RATE), OPTIONS))[:-1]:
        around = talk[block.end - RATE // 50 : block.end + RATE // 50]
        assert np.sqrt((around**2).mean()) < 0.05 * spoken
        assert len(block.samples) / RATE == pytest.approx(OPTIONS.block_seconds, abs=OPTIONS.block_slack)


@pytest.mark.parametrize("length", [160, 12_345, 1_000_000])
def test_cuts_do_not_depend_on_how_the_sound_arrives(talk: Samples, length: int) -> None:
    assert ends(cut(pieces(talk, length), OPTIONS)) == ends(cut(pieces(talk, RATE), OPTIONS))


def test_going_on_from_any_block_cuts_at_the_same_places(talk: Samples) -> None:
    whole = ends(cut(pieces(talk, RATE), OPTIONS))
    for number, end in enumerate(whole):
        assert ends(cut(pieces(talk, RATE), OPTIONS, skip=end)) == whole[number + 1 :]


def test_where_nobody_pauses_the_quietest_moment_is_cut() -> None:
    loud = np.random.default_rng(1).normal(0, 0.3, 4 * RATE).astype(np.float32)
    loud[2 * RATE : 2 * RATE + RATE // 20] = 0
    # The voice detection hears no voice in noise, so ask for the quietest place by marking all of it as voice.
    options = HearingOptions(voice_threshold=0.0)
    assert find_pause(loud, options) == pytest.approx(2 * RATE + RATE // 40, abs=RATE // 20)


def test_a_short_recording_is_one_block() -> None:
    assert len(list(cut([np.zeros(RATE, dtype=np.float32)], HearingOptions()))) == 1
    assert list(cut([], HearingOptions())) == []
