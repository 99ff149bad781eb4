"""The files that a person writes: session.toml, notes.md, and that all of it is said to be invented."""

from __future__ import annotations

import re
import tomllib

import pytest

from capture.shop import SessionSettings
from demo_sessions.build.script import load_script
from demo_sessions.truth import HERE, folder, load_truth, slugs
from extract.trade import trade_names

pytestmark = pytest.mark.parametrize("slug", slugs())


def test_session_toml_has_the_keys_of_a_shop(slug: str) -> None:
    facts = tomllib.loads((folder(slug) / "session.toml").read_text("utf-8"))
    settings = SessionSettings.model_validate(facts)
    assert set(facts) == {"title", "subject", "date", "recording", "trade"}
    assert (folder(slug) / settings.recording).is_file()
    assert settings.trade in trade_names()


def test_no_session_is_left_out(slug: str) -> None:
    found = {path.parent.name for path in HERE.glob("*/session.toml")}
    assert found == set(slugs())
    assert slug in found


def test_says_that_it_is_invented(slug: str) -> None:
    spoken = " ".join(one.text for one in load_truth(slug).sentences[:3])
    assert "made up" in spoken or "made-up" in spoken
    for name in ("session.toml", "narration.toml", "notes.md", "truth.json"):
        assert "invented" in (folder(slug) / name).read_text("utf-8").lower(), name


def test_every_speaker_is_named_as_invented(slug: str) -> None:
    people = load_script(folder(slug)).people
    assert people
    for place in (folder(slug) / "notes.md", HERE / "README.md"):
        words = " ".join(place.read_text("utf-8").split())
        assert [name for name in people if name not in words] == [], place.name
    assert all(name in load_truth(slug).invented for name in people)


def test_nobody_else_is_named_in_full(slug: str) -> None:
    """Two words with capitals side by side would be a person or a firm; the guitar's name is such a pair."""
    spoken = " | ".join(one.text for one in load_truth(slug).sentences)
    assert set(re.findall(r"\b[A-Z][a-z]+ [A-Z][a-z]+\b", spoken)) <= {"Old Bustard"}
