"""Ids and findings hold when something unrelated is said elsewhere, and nothing that is said makes the stage fail."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from extract.measures.attribute import INFERRED, SAID
from extract.measures.item import RULES as ITEM_RULES
from tests.extract.measures.reading import measures_of, quote

_LINES = ("The action was 11/64 inch.", "Slacken the strings.", "I want 7/64 inch up there.", "The nut is 5 mm thick.")
_CHATTER = st.sampled_from(
    ["The kettle is on.", "My neighbour waved.", "It rained all day.", "Look at that.", "Somebody gave me a hat."]
)
_BENCH = st.lists(
    st.sampled_from(
        [
            "the",
            "a",
            "it",
            "is",
            "was",
            "about",
            "wide",
            "thick",
            "deep",
            "gap",
            "of",
            "and",
            "so",
            "now",
            "there",
            "two",
            "three",
            "5",
            "mm",
            "inch",
            "thou",
            "degrees",
            "percent",
            "minutes",
            "bridge",
            "nut",
            "pin",
            "cut",
            "thin",
            "to",
            "at",
            "on",
            "treble",
            "side",
            "old",
            "new",
            "no",
            "wait",
            "half",
            "turn",
            "quarter",
            ".",
            ",",
            "by",
            "off",
        ]
    ),
    min_size=1,
    max_size=40,
)


@given(st.lists(_CHATTER, max_size=3), st.integers(0, len(_LINES)))
@settings(max_examples=25, deadline=None)
def test_ids_stay_when_other_things_are_said(chatter: list[str], at: int) -> None:
    _, before = measures_of(_LINES, "strings")
    _, after = measures_of([*_LINES[:at], *chatter, *_LINES[at:]], "strings")
    assert [one.id for one in after] == [one.id for one in before]


def test_ids_differ_and_the_same_words_twice_are_numbered() -> None:
    _, measures = measures_of(["The nut is 5 mm thick."] * 3)
    first, second, third = (one.id for one in measures)
    assert (second, third) == (f"{first}-2", f"{first}-3")


def test_the_same_narration_gives_the_same_measures() -> None:
    assert measures_of(_LINES, "strings")[1] == measures_of(_LINES, "strings")[1]


@given(_BENCH)
@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_words_are_survived(words: list[str]) -> None:
    doc, measures = measures_of([" ".join(words)])
    ids = [one.id for one in measures]
    assert len(set(ids)) == len(ids)
    for place, one in enumerate(measures):
        assert one.phase in ("as_found", "target", "as_left", "general")
        assert one.same_as is None or one.same_as in ids[:place]
        assert one.item is None or one.item == one.item.strip().lower()
        assert quote(doc, one)


def test_nothing_said_gives_nothing() -> None:
    assert measures_of(["nothing to measure here"])[1] == ()


@pytest.mark.parametrize("table", [SAID, INFERRED, ITEM_RULES])
def test_rules_have_names_of_their_own(table: tuple[tuple[str, object], ...]) -> None:
    names = [name for name, _ in table]
    assert len(set(names)) == len(names)


def test_lists_hold_no_word_twice_where_one_answer_is_wanted() -> None:
    path = Path(__file__).parents[3] / "extract" / "data" / "measures.toml"
    data = tomllib.loads(path.read_text(encoding="utf-8"))
    for table in ("usual", "looks", "leaves"):
        words = [word for listed in data[table].values() for word in listed]
        assert sorted(set(words)) == sorted(words), table
