"""Speech is packed into windows, and every time is led back to where it was said."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from capture.sound import RATE
from capture.windows import WINDOW, Span, pack

SPANS = st.lists(st.tuples(st.integers(0, 20 * RATE), st.integers(1, WINDOW)), min_size=1, max_size=20).map(
    lambda drawn: laid_out(drawn)
)


def laid_out(drawn: list[tuple[int, int]]) -> list[Span]:
    spans: list[Span] = []
    at = 0
    for pause, length in drawn:
        start, end = at + pause, at + pause + length
        spans.append(Span(start, end, start + length // 4, end - length // 4))
        at += pause + length
    return spans


@given(SPANS)
def test_every_stretch_is_heard_once_and_no_window_is_too_long(spans: list[Span]) -> None:
    windows = pack(spans)
    assert [span for window in windows for span in window.spans] == spans
    assert all(sum(span.end - span.start for span in window.spans) <= WINDOW for window in windows)


@given(SPANS, st.floats(0, 1))
def test_times_lead_back_to_the_sound(spans: list[Span], share: float) -> None:
    spans = [replace(span, voice_start=span.start, voice_end=span.end) for span in spans]
    block = np.arange(spans[-1].end, dtype=np.float64)
    window = pack(spans)[0]
    sound = np.concatenate([block[span.start : span.end] for span in window.spans])
    at = int(share * (len(sound) - 1))
    start, _ = window.place(at / RATE, at / RATE)
    assert abs(start * RATE - sound[at]) <= 1


@given(SPANS, st.floats(0, 30), st.floats(0, 30))
def test_a_word_never_stands_outside_the_voice(spans: list[Span], one: float, other: float) -> None:
    window = pack(spans)[0]
    start, end = window.place(min(one, other), max(one, other))
    assert start <= end
    assert any(span.voice_start / RATE - 0.06 <= start and end <= span.voice_end / RATE + 0.06 for span in window.spans)


def test_a_full_window_ends_at_the_long_pause() -> None:
    # Five words in one breath, a long pause, then a figure with a short pause inside.
    lengths = [(0, 4 * RATE), (2 * RATE, 2 * RATE), (RATE // 4, 3 * RATE), (2 * RATE, 3 * RATE)]
    first, second = pack(laid_out(lengths), 8 * RATE)
    assert [len(window.spans) for window in (first, second)] == [1, 3]
