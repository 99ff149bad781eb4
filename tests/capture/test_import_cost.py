"""Importing the room loads nothing heavy."""

from __future__ import annotations

import subprocess
import sys

HEAVY = ("faster_whisper", "ctranslate2", "onnxruntime", "av", "numpy", "huggingface_hub", "webvtt")


def test_the_room_is_light_to_import() -> None:
    code = f"import sys, capture; print([name for name in {HEAVY!r} if name in sys.modules])"
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "[]"


def test_reading_captions_loads_no_model() -> None:
    code = f"import sys, capture.captions; print([name for name in {HEAVY[:6]!r} if name in sys.modules])"
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "[]"


def test_hearing_loads_the_model_only_when_asked() -> None:
    code = f"import sys, capture.hearing; print([name for name in {HEAVY[:3]!r} if name in sys.modules])"
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "[]"
