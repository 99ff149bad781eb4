"""Captions and chapters, written with one library and read with another."""

from __future__ import annotations

import html

import pytest
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from extract.record import Record, SessionFacts, Step
from publish.captions import captions, chapters, plain_text
from publish.context import Run, SessionPage, Spoken
from publish.moments import Playback, stamp
from tests.publish.narration import CUES
from tests.publish.session import record


def read(text: str) -> list[webvtt.Caption]:
    return list(webvtt.from_string(text, strict=True).captions)


def a_cue(start: float, end: float, words: str) -> Spoken:
    return Spoken("t", Playback(None).at(start), stamp(end), (Run(words, None, False, None),))


def test_every_cue_is_a_caption_with_its_times(page: SessionPage) -> None:
    read_back = read(captions(page.spoken))
    assert len(read_back) == len(CUES)
    for caption, spoken in zip(read_back, page.spoken, strict=True):
        assert caption.start_time.in_milliseconds() == round(spoken.moment.seconds * 1000)


def test_what_was_taken_back_is_followed_by_what_to_read(page: SessionPage) -> None:
    read_back = read(captions(page.spoken))
    assert read_back[2].text == (
        "Action at the twelfth fret, treble side, is 7/64 [withdrawn, read 5/64 in], no, hang on,"
    )
    assert read_back[3].text == CUES[3]


def test_plain_text_gives_a_line_a_cue(page: SessionPage) -> None:
    lines = plain_text(page.spoken).splitlines()
    assert lines[0] == f"[0:01] {CUES[0]}"
    assert len(lines) == len(CUES)


@pytest.mark.parametrize(
    "words",
    [
        "00:01.000 --> 00:02.000",
        "a\n\nNOTE b",
        "<v Anna>hello</v> & <b>bold",
        "{\\p1}m 0 0{\\p0}",
        "up \\N down",
        "WEBVTT",
        "STYLE",
    ],
)
def test_hostile_words_stay_words(words: str) -> None:
    (caption,) = read(captions((a_cue(1, 2, words),)))
    assert html.unescape(caption.raw_text) == " ".join(words.split())


@given(st.lists(st.text(min_size=1).filter(lambda text: text.split()), min_size=1, max_size=6))
def test_any_words_come_back(said: list[str]) -> None:
    cues = tuple(a_cue(number, number + 1, words) for number, words in enumerate(said))
    read_back = read(captions(cues))
    assert [html.unescape(caption.raw_text) for caption in read_back] == [" ".join(words.split()) for words in said]


def test_a_cue_without_length_still_ends_after_it_begins() -> None:
    (caption,) = read(captions((a_cue(5, 5, "now"),)))
    assert caption.end_time.in_milliseconds() > caption.start_time.in_milliseconds()


def test_chapters_follow_one_another_to_the_end() -> None:
    read_back = read(chapters(record()))
    ends = [chapter.end for chapter in read_back]
    assert [chapter.start for chapter in read_back][1:] == ends[:-1]
    assert read_back[0].start == "00:00:00.000"
    names = [chapter.text for chapter in read_back]
    assert names[:3] == [
        "Octave mandola, bridge reglued and saddle replaced", "As found", "1. Slacken the strings in pairs"
    ]  # fmt: skip
    assert "As left" in names


def test_a_record_without_steps_is_one_chapter() -> None:
    bare = Record(session=SessionFacts(title="Quiet", source="s", duration=9))
    assert [(one.text, one.end) for one in read(chapters(bare))] == [("Quiet", "00:00:09.000")]


def test_steps_told_out_of_order_are_chapters_in_order_of_time() -> None:
    def step(number: int, start: float) -> Step:
        return Step(
            id=f"s{number}", number=number, cue_from=0, cue_to=0, start=start, end=start + 1, quote="q",
            text=f"step {number}", verb="v", object="o", mode="done",
        )  # fmt: skip

    told = Record(session=SessionFacts(title="t", source="s", duration=60), steps=(step(1, 40.0), step(2, 20.0)))
    assert [one.text for one in read(chapters(told))] == ["T", "2. step 2", "1. step 1"]
