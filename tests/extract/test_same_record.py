"""The same narration gives the same record, run after run, whatever order a set happens to have in that process."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

TALKS = Path(__file__).parent.parent / "narrations" / "read"
READ = """
import sys
from pathlib import Path
from capture import read_captions
from extract.pipeline import Extractor

extractor = Extractor()
for path in sys.argv[1:]:
    print(extractor.record(read_captions(Path(path))).to_json())
"""
"""A process of its own: Python salts the hashes of strings anew in each, and with them the order of sets."""


@pytest.mark.parametrize("salt", ["1", "2", "5"])
def test_a_record_does_not_depend_on_the_process(salt: str) -> None:
    # in the viola's talk "strings" is a part by one row of the trade and a material by another
    talks = [str(TALKS / name / "narration.vtt") for name in ("viola-soundpost-bassbar-pegs", "sewing-machine-timing")]
    assert _records(salt, talks) == _records("0", talks)


def _records(salt: str, talks: list[str]) -> bytes:
    environment = {**os.environ, "PYTHONHASHSEED": salt}
    return subprocess.run(
        [sys.executable, "-c", READ, *talks], env=environment, check=True, capture_output=True, timeout=120
    ).stdout
