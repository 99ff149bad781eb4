"""The site is, to the letter, the one that was last looked at and found good."""

from __future__ import annotations

import pytest

from tests.publish.golden import FOLDER, site


@pytest.mark.parametrize("name", sorted(path.name for path in FOLDER.iterdir()))
def test_the_page_is_the_one_that_was_looked_at(name: str) -> None:
    kept = (FOLDER / name).read_text(encoding="utf-8")
    assert site()[name].splitlines() == kept.splitlines(), "look at it, then run: python -m tests.publish.golden"


def test_every_file_is_kept() -> None:
    assert set(site()) == {path.name for path in FOLDER.iterdir()}
