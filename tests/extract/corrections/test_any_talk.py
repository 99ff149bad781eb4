"""What holds for the corrections of any talk, however odd."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from extract.corrections import RULES, find_corrections
from extract.pipeline import Extractor
from extract.trade import load_trade
from tests.extract.narrations import transcript_of

_TALK = """
no sorry wait the a it's that's not I mean said told you make that scratch correction last week film in 5 mm 3/8 inch
30 thou 24 hooks bridge nut left right A G. ? spruce, cedar. wrong nonsense. don't forget twelve sixty-fourths ten
minutes rather actually did
"""
_WORDS = st.sampled_from(_TALK.split())


@pytest.fixture(scope="module")
def extractor() -> Extractor:
    return Extractor()


@settings(max_examples=120, deadline=None)
@given(lines=st.lists(st.lists(_WORDS, min_size=1, max_size=12).map(" ".join), min_size=1, max_size=5))
def test_a_correction_lies_in_the_talk_and_never_takes_back_what_it_puts_in_place(
    lines: list[str], extractor: Extractor
) -> None:
    doc = extractor.read(transcript_of(lines), load_trade("general"))
    known = {one.id for one in doc._.measures}
    last = -1
    for taken in doc._.corrections:
        assert 0 <= taken.start < taken.end <= len(doc)
        assert taken.start >= last
        assert known.issuperset(taken.withdrawn_measures)
        assert taken.replacement_measure is None or taken.replacement_measure in known
        assert taken.replacement_measure not in taken.withdrawn_measures
        assert taken.replacement
        last = taken.start
    assert len({taken.id for taken in doc._.corrections}) == len(doc._.corrections)


def test_the_same_talk_gets_the_same_ids(extractor: Extractor) -> None:
    lines = ["Give it 3 mm, no, 4 mm.", "Now the other side, 3 mm, no, 4 mm."]
    read = [[one.id for one in extractor.read(transcript_of(lines), load_trade("general"))._.corrections] for _ in "12"]
    assert read[0] == read[1]
    assert len(set(read[0])) == 2


def test_a_line_added_elsewhere_changes_no_id(extractor: Extractor) -> None:
    lines = ["Give it 3 mm, no, 4 mm."]
    longer = ["Right then, good morning.", *lines]
    one, other = (extractor.read(transcript_of(talk), load_trade("general"))._.corrections for talk in (lines, longer))
    assert [taken.id for taken in one] == [taken.id for taken in other]


def test_a_rule_taken_out_of_the_table_is_not_run(extractor: Extractor) -> None:
    doc = extractor.read(transcript_of(["Give it 3 mm, no, 4 mm."]), load_trade("general"))
    rules = tuple((name, rule) for name, rule in RULES if name not in ("slip of figure", "weighed slip"))
    assert len(rules) == len(RULES) - 2
    assert find_corrections(doc, doc._.measures, load_trade("general"), rules) == ()
