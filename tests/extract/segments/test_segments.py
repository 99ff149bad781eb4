"""Sentences of phrases.txt, punctuated and raw, and what holds for any text."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from spacy.language import Language

from extract.narration import make_doc
from extract.pipeline import load_language
from extract.segments import sentence_starts
from tests.extract.narrations import transcript_of


@dataclass(frozen=True, slots=True)
class Case:
    title: str
    cues: tuple[str, ...]
    gaps: tuple[float, ...]
    sentences: tuple[str, ...]


def _cases() -> list[Case]:
    text = (Path(__file__).parent / "phrases.txt").read_text(encoding="utf-8")
    cases = []
    for block in text.split("\n## ")[1:]:
        said, expected = block.split("\n->\n")
        title, *lines = said.splitlines()
        parts = [line.partition(" | ") for line in lines]
        gaps = tuple(float(gap or 0.04) for _, _, gap in parts)
        wanted = tuple(line for line in expected.splitlines() if line)
        cases.append(Case(title, tuple(cue for cue, _, _ in parts), gaps, wanted))
    return cases


@pytest.fixture(scope="module")
def nlp() -> Language:
    language = load_language()
    language.select_pipes(enable=["tok2vec", "tagger", "segments", "parser"])
    return language


@pytest.mark.parametrize("case", _cases(), ids=lambda case: case.title)
def test_sentences_begin_where_they_should(case: Case, nlp: Language) -> None:
    doc = nlp(make_doc(nlp, transcript_of(case.cues, case.gaps)))
    assert tuple(sentence.text.strip() for sentence in doc.sents) == case.sentences


_WORDS = st.sampled_from(
    [
        "the",
        "a",
        "oil",
        "so",
        "and",
        "of",
        "tap",
        "spring.",
        "Spring",
        "i",
        "it's",
        "3.5",
        "now",
        "Dr.",
        "don't",
        "...",
        "half",
    ]
)


@settings(max_examples=60, deadline=None)
@given(lines=st.lists(st.lists(_WORDS, min_size=1, max_size=9).map(" ".join), min_size=1, max_size=6))
def test_any_text_gets_one_answer_a_token_and_begins_with_a_sentence(lines: list[str], nlp: Language) -> None:
    doc = make_doc(nlp, transcript_of(lines))
    for name in ("tok2vec", "tagger"):
        doc = nlp.get_pipe(name)(doc)
    starts = sentence_starts(doc)
    assert len(starts) == len(doc)
    assert starts[0] is True


def test_a_long_stretch_without_marks_is_cut_like_a_caption(nlp: Language) -> None:
    lines = ["Off it comes. In it goes. There."] + ["and then i tap the next pin home"] * 20 + ["Done. Good. Next."]
    doc = nlp(make_doc(nlp, transcript_of(lines)))
    assert len(list(doc.sents)) > 20


def test_no_words_have_no_sentences(nlp: Language) -> None:
    doc = make_doc(nlp, transcript_of(["x"]))[:0].as_doc()
    doc._.narration = make_doc(nlp, transcript_of(["x"]))._.narration
    assert sentence_starts(doc) == []
