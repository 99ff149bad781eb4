"""The transcript: figures lead to their row, what was taken back is marked."""

from __future__ import annotations

import pytest

from publish.context import Run, SessionPage, Spoken


def cue(page: SessionPage, number: int) -> Spoken:
    return page.spoken[number]


def marked(spoken: Spoken) -> list[Run]:
    return [run for run in spoken.runs if run.href or run.withdrawn]


def test_every_word_is_there_once(page: SessionPage) -> None:
    from tests.publish.narration import CUES

    assert ["".join(run.text for run in spoken.runs) for spoken in page.spoken] == list(CUES)


def test_each_cue_has_its_second_as_its_anchor(page: SessionPage) -> None:
    assert [cue(page, 0).anchor, cue(page, 13).anchor] == ["t-1", "t-81.6"]


@pytest.mark.parametrize(
    ("number", "words", "row"),
    [
        (3, "5/64 in", "#m-action-1"),
        (4, "7/64 in", "#m-action-2"),
        (4, "2.8 mm", "#m-action-3"),
        (6, "20 7/8 inches", "#m-scale-0"),
        (27, "10 to 12 thou", "#m-bass-new"),
    ],
)
def test_a_figure_leads_to_its_row(page: SessionPage, number: int, words: str, row: str) -> None:
    assert (words, row) in [(run.text, run.href) for run in marked(cue(page, number))]


def test_a_withdrawn_figure_says_what_to_read(page: SessionPage) -> None:
    (run,) = marked(cue(page, 2))
    assert run.withdrawn
    assert run.note is not None
    assert (run.text, run.note.read, run.note.href) == ("7/64", "5/64\u00a0in", "#m-action-1")


def test_a_withdrawn_statement_that_is_no_figure_is_marked_too(page: SessionPage) -> None:
    (run,) = marked(cue(page, 9))
    assert run.withdrawn
    assert run.note is not None
    assert (run.text, run.note.read, run.note.href) == ("two layers", "three layers", "#c-tape")
