"""Words become cues of one breath each."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.cues import LONG_PAUSE, LONGEST, group, in_figure
from capture.transcript import Word
from tests.capture.cases import Case, cases


def timed(text: str) -> list[Word]:
    words: list[Word] = []
    clock = 0.0
    for part in text.split():
        if part[0] == "/" and len(part) > 1:
            clock += float(part[1:])
            continue
        words.append(Word(text=part, start=round(clock, 3), end=round(clock + 0.33, 3)))
        clock += 0.38
    return words


@pytest.mark.parametrize("case", cases("cues.txt"), ids=lambda case: case.title)
def test_where_cues_are_cut(case: Case) -> None:
    assert "\n".join(cue.text for cue in group(timed(case.given))) == case.expected


@pytest.mark.parametrize(
    "text",
    [
        "three sixteenths", "eleven sixty-fourths", "2 1/2", "two and a half", "half an inch", "an eighth of an inch",
        "three sixteenths of an inch", "12 mm", "four thou", "two point four millimetres", "ten to twelve",
        "one by two", "three and five eighths inches", "forty newton metres",
    ],
)  # fmt: skip
def test_figures_are_not_parted(text: str) -> None:
    words = timed(text)
    first = next(number for number, word in enumerate(words) if word.text not in ("an",))
    assert all(in_figure(words, at) for at in range(first + 1, len(words))), text


@pytest.mark.parametrize(
    ("text", "at"),
    [("the saddle slot", 1), ("sixteenths and then", 1), ("of the bridge", 1), ("three. Four", 1), ("side by side", 1)],
)
def test_other_words_may_be_parted(text: str, at: int) -> None:
    assert not in_figure(timed(text), at)


SAID = [
    "the",
    "saddle",
    "is",
    "three",
    "sixteenths",
    "and",
    "a",
    "half",
    "of",
    "an",
    "inch",
    "wide.",
    "So,",
    "12",
    "mm",
]
WORDS = st.lists(
    st.tuples(
        st.sampled_from(SAID),
        st.floats(0, 1),
        st.sampled_from([0.0, 0.05, 0.2, 0.4, 1.0, 3.0, 30.0]),
    ),
    max_size=120,
)


@given(WORDS)
def test_cues_keep_every_word_and_every_time(drawn: list[tuple[str, float, float]]) -> None:
    words: list[Word] = []
    clock = 0.0
    for text, length, pause in drawn:
        words.append(Word(text=text, start=clock, end=clock + length))
        clock += length + pause
    cues = group(words)
    assert [word for cue in cues for word in cue.words] == words
    for cue in cues:
        assert cue.text == " ".join(word.text for word in cue.words)
        assert (cue.start, cue.end) == (cue.words[0].start, cue.words[-1].end)
        assert 1 <= len(cue.words) <= LONGEST
    assert all(before.end <= after.start for before, after in pairwise(cues))


@given(WORDS)
def test_no_cue_runs_over_a_long_pause_outside_a_figure(drawn: list[tuple[str, float, float]]) -> None:
    words: list[Word] = []
    clock = 0.0
    for text, length, pause in drawn:
        words.append(Word(text=text, start=clock, end=clock + length))
        clock += length + pause
    at = 0
    for cue in group(words):
        for inside in range(at + 1, at + len(cue.words)):
            assert words[inside].start - words[inside - 1].end < LONG_PAUSE or in_figure(words, inside)
        at += len(cue.words)


def test_no_words_no_cues() -> None:
    assert group([]) == ()
