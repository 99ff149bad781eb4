"""What the tests of hearing share: spoken sound made on the spot, and one loaded speech model."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from capture.model import SpeechModel, load_model
from tests.capture.making import Maker


@pytest.fixture(scope="session", autouse=True)
def cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """A cache folder of the test run's own; subprocesses inherit it."""
    folder = tmp_path_factory.mktemp("cache")
    before = os.environ.get("SPOKESHAVE_CACHE")
    os.environ["SPOKESHAVE_CACHE"] = str(folder)
    yield folder
    if before is None:
        del os.environ["SPOKESHAVE_CACHE"]
    else:
        os.environ["SPOKESHAVE_CACHE"] = before


@pytest.fixture(scope="session")
def model(cache: Path) -> SpeechModel:
    """The speech model that ships, loaded once."""
    return load_model()


@pytest.fixture(scope="session")
def make(tmp_path_factory: pytest.TempPathFactory) -> Maker:
    """Makes sound and films, each once."""
    return Maker(tmp_path_factory.mktemp("made"))
