"""Frames find their place on the film's time, whatever their stamps say."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

import av
import numpy as np
import pytest

from capture.timeline import RATE, Timeline
from tests.capture.making import Samples


def frame(at: float | None, seconds: float = 0.5, level: float = 0.5, rate: int = RATE) -> av.AudioFrame:
    """A frame of constant level, stamped to begin at second `at`."""
    samples = np.full((1, round(seconds * rate)), level, dtype=np.float32)
    made = av.AudioFrame.from_ndarray(samples, format="fltp", layout="mono")
    made.sample_rate = rate
    made.time_base = Fraction(1, 1000)
    made.pts = None if at is None else round(at * 1000)
    return made


def lay(frames: Iterable[av.AudioFrame], *, zero: float = 0, end: float | None = 10) -> tuple[Samples, list[str]]:
    warnings: list[str] = []
    line = Timeline(zero, end, warnings)

    def pieces() -> Iterator[Samples]:
        for one in frames:
            yield from line.add(one)
        yield from line.finish()

    return np.concatenate(list(pieces())), warnings


def seconds(samples: Samples) -> float:
    return len(samples) / RATE


def test_frames_in_a_row_follow_on() -> None:
    samples, warnings = lay(frame(at) for at in (0, 0.5, 1.0))
    assert seconds(samples) == 1.5
    assert (samples > 0.4).all()
    assert not warnings


def test_stamps_rounded_to_milliseconds_leave_no_holes() -> None:
    samples, _ = lay(frame(round(number * 0.0213, 2), 0.0213) for number in range(100))
    assert (samples > 0.4).all()


def test_a_late_first_frame_is_led_by_silence() -> None:
    samples, _ = lay([frame(2.25)])
    assert not samples[: int(2.25 * RATE)].any()
    assert (samples[int(2.25 * RATE) :] > 0.4).all()


def test_times_count_from_the_films_zero() -> None:
    samples, _ = lay([frame(1.4), frame(2.9)], zero=1.4)
    assert seconds(samples) == 2.0
    assert (samples[: RATE // 2] > 0.4).all()
    assert not samples[RATE // 2 : RATE * 3 // 2].any()


def test_a_hole_becomes_silence() -> None:
    samples, _ = lay([frame(0), frame(3)])
    assert seconds(samples) == 3.5
    assert not samples[RATE // 2 : 3 * RATE].any()


def test_an_overlap_is_heard_once() -> None:
    samples, warnings = lay([frame(0, 1), frame(0.5, 1, level=0.25)])
    assert seconds(samples) == pytest.approx(1.5)
    assert samples[RATE - 10] == pytest.approx(0.5)
    assert samples[RATE + 10] == pytest.approx(0.25)
    assert not warnings


def test_a_frame_before_zero_is_left_out() -> None:
    samples, _ = lay([frame(-0.5, 0.5, level=0.9), frame(0)])
    assert seconds(samples) == 0.5
    assert samples.max() == pytest.approx(0.5)


def test_frames_without_a_stamp_follow_on() -> None:
    samples, _ = lay([frame(1), frame(None), frame(None)])
    assert seconds(samples) == 2.5


@pytest.mark.parametrize("wrong", [-3600.0, 90_000.0])
def test_a_clock_that_jumps_loses_no_sound(wrong: float) -> None:
    samples, warnings = lay([frame(0, 6), frame(wrong), frame(wrong + 0.5)])
    assert seconds(samples) == 7
    assert (samples > 0.4).all()
    assert warnings == ["the recording's clock jumps near 0:06: times after it may be off"]


def test_a_change_of_rate_goes_on_in_place() -> None:
    samples, _ = lay([frame(0, 1), frame(1, 1, rate=48_000), frame(2, 1)])
    assert seconds(samples) == pytest.approx(3, abs=0.01)


def test_a_long_hole_comes_in_small_pieces() -> None:
    line = Timeline(0, 4000, [])
    pieces = list(line.add(frame(3600)))
    assert max(len(piece) for piece in pieces) <= RATE


def test_a_badly_damaged_film_does_not_drown_its_other_warnings() -> None:
    warnings: list[str] = []
    line = Timeline(0, 1000, warnings)
    for second in range(100):
        list(line.add(frame(second, 1)))
        line.damage()
    assert len(warnings) == 20
    assert warnings[-1].endswith("and so are other moments before it")


def test_a_recording_that_does_not_say_where_it_ends_may_have_holes_of_an_hour() -> None:
    samples, warnings = lay([frame(0), frame(1800)], end=None)
    assert seconds(samples) == 1800.5
    assert not warnings
    samples, warnings = lay([frame(0), frame(90_000)], end=None)
    assert seconds(samples) == 1
    assert warnings
