"""Ids on the page are safe and unique, and good ones stay as they are."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from publish.anchors import Anchors


def test_a_records_own_id_is_kept() -> None:
    assert Anchors().of("measure", "m-3f9c21ab") == "m-3f9c21ab"


def test_the_same_thing_keeps_its_id() -> None:
    anchors = Anchors()
    assert anchors.of("measure", "a") == anchors.of("measure", "a")


def test_an_id_that_a_part_of_the_page_has_is_changed() -> None:
    assert Anchors(taken=("errata",)).of("measure", "errata") != "errata"


@given(st.lists(st.tuples(st.sampled_from(["measure", "step"]), st.text()), max_size=20))
def test_ids_are_unique_and_safe(things: list[tuple[str, str]]) -> None:
    anchors = Anchors()
    ids = {thing: anchors.of(*thing) for thing in things}
    assert len(set(ids.values())) == len(ids)
    assert all(re.fullmatch(r"[A-Za-z][A-Za-z0-9_.-]*", one) for one in ids.values())
