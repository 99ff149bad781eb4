"""Publishing starts lean: what only hearing and reading narrations need is not loaded for it."""

from __future__ import annotations

import subprocess
import sys

HEAVY = ("spacy", "numpy", "faster_whisper", "ctranslate2", "av", "httpx", "requests")


def test_publishing_loads_nothing_that_hearing_and_reading_need() -> None:
    asked = f"import sys, publish, desk.commands.publish; print(*(set(sys.modules) & set({HEAVY!r})))"
    told = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True)
    assert told.stdout.split() == []
