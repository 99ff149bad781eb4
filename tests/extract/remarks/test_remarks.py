"""Follow-ups, doubts, cautions said, tools and materials of remarks.toml; hazards of hazards.toml."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from extract.remarks import find_remarks
from extract.spans import Remarks
from extract.trade import Hazard, Trade, load_trade
from tests.extract.narrations import transcript_of
from tests.extract.pipes import parsed

_HERE = Path(__file__).parent


def _load(name: str) -> dict[str, list[dict[str, Any]]]:
    return tomllib.loads((_HERE / name).read_text(encoding="utf-8"))


def _remarks(cues: list[str], trade: Trade) -> Remarks:
    return find_remarks(parsed(transcript_of(cues), trade), trade)


@pytest.mark.parametrize("case", _load("remarks.toml")["case"], ids=lambda case: case["title"])
def test_remarks_are_found_and_look_alikes_are_not(case: dict[str, Any]) -> None:
    found = _remarks(case["cues"], load_trade("general"))
    assert [note.text for note in found.follow_ups] == case.get("follow_ups", [])
    assert [note.text for note in found.doubts] == case.get("doubts", [])
    assert [one.text for one in found.cautions if one.said] == case.get("cautions", [])
    for kind in ("tools", "materials"):
        if kind in case:
            assert [one.name for one in getattr(found, kind)] == case[kind]


_HAZARDS = tuple(
    Hazard(row["name"], tuple(row["said"]), row["caution"], row["source"]) for row in _load("hazards.toml")["hazard"]
)


@pytest.mark.parametrize("case", _load("hazards.toml")["case"], ids=lambda case: case["title"])
def test_a_hazard_counts_in_its_dangerous_sense_only(case: dict[str, Any]) -> None:
    trade = Trade("made up", hazards=_HAZARDS)
    doc = parsed(transcript_of(case["cues"]), trade)
    called_for = [one for one in find_remarks(doc, trade).cautions if not one.said]
    assert [doc[one.start].lower_ for one in called_for] == ([case["at"]] if case["at"] else [])
    assert all(one.source == "made up" for one in called_for)


def test_a_said_caution_names_the_film_as_its_source() -> None:
    found = _remarks(["don't force the posts"], load_trade("general"))
    assert [(one.source, one.said) for one in found.cautions if one.said] == [("said on film", True)]


def test_mentions_point_at_the_words_that_name_them() -> None:
    trade = load_trade("general")
    doc = parsed(transcript_of(["tap it home with a mallet", "then the mallet again"]), trade)
    (mallet,) = [one for one in find_remarks(doc, trade).tools if one.name == "mallet"]
    assert [doc[at].lower_ for at in mallet.at] == ["mallet", "mallet"]
