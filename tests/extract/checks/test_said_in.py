"""The words of the checks' patterns: each list once, and each word as it stands."""

from __future__ import annotations

import tomllib
from importlib.resources import files

import pytest

from extract.checks.said_in import either, holding, words_for

LISTS = tomllib.loads((files("extract") / "data" / "check_patterns.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("table", "name"), [(table, name) for table, rows in LISTS.items() for name in rows])
def test_a_list_says_each_word_once(table: str, name: str) -> None:
    listed = LISTS[table][name]
    assert listed
    assert len(listed) == len(words_for(table, name))
    assert either(table, name).count("|") == len(listed) - 1


def test_a_word_is_no_pattern() -> None:
    assert holding("rings", "outside").search("the o.d is 10")
    assert not holding("rings", "outside").search("the odd one")
    assert not holding("rings", "outside").search("the oxd one")


def test_an_unknown_list_is_told() -> None:
    with pytest.raises(KeyError):
        words_for("rings", "middle")
