"""Items found again after a new hearing: unambiguous, or not at all."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from extract.rulings.matching import find_places
from extract.rulings.model import Item

_CASES = tomllib.loads((Path(__file__).parent / "matching.toml").read_text(encoding="utf-8"))["case"]


def _item(row: list[Any], kind: str) -> Item:
    name, words, start, figure = row
    return Item.model_validate(
        {"kind": kind, "id": name, "words": words, "start": start, "cue": 0, "figures": [figure] if figure else []}
    )


@pytest.mark.parametrize("case", _CASES, ids=[case["title"] for case in _CASES])
def test_a_ruling_finds_its_item_or_says_that_it_does_not(case: dict[str, Any]) -> None:
    kind = case.get("kind", "measure")
    ruled = _item(case["ruled"], kind)
    same = case.get("same", [])
    wanted = [ruled, *(_item([name, words, before, ""], kind) for name, words, before, _ in same)]
    wanted += [_item(case["also"], kind)] if "also" in case else []
    present = [_item(row, case.get("present_kind", kind)) for row in case["present"]]
    present += [_item([name, words, now, ""], kind) for name, words, _, now in same]
    places = find_places(wanted, {one.id: one for one in present})
    found = places.of(ruled)
    assert (found.id if found else "") == case["found"]
    assert (ruled.id in places.moved) == (found is not None and found.id.split("-")[1] != ruled.id.split("-")[1])
