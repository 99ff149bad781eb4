"""What the ear was taught is added to the right weights, one by one, and to nothing else."""

from __future__ import annotations

import struct
from pathlib import Path

import numpy as np
import pytest

from capture import model_files
from capture.adapter import adapted, read_adapter
from capture.errors import ModelError
from capture.model import load_model
from capture.model_files import shipped_model
from capture.options import HearingOptions
from capture.taught_model import taught_model

Variables = dict[str, "np.ndarray[tuple[int, ...], np.dtype[np.float16]]"]


def _string(text: str) -> bytes:
    return struct.pack("<H", len(text) + 1) + text.encode() + b"\0"


def _model(path: Path, variables: Variables) -> Path:
    """A file as CTranslate2 writes one (version 6): head, variables, no aliases."""
    parts = [struct.pack("<I", 6), _string("WhisperSpec"), struct.pack("<II", 3, len(variables))]
    for name, values in variables.items():
        parts += [_string(name), struct.pack("<B", values.ndim), struct.pack(f"<{values.ndim}I", *values.shape)]
        parts += [struct.pack("<BI", 4, values.nbytes), values.tobytes()]
    path.write_bytes(b"".join(parts) + struct.pack("<I", 0))
    return path


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A model of two weights."""
    ones = np.ones((3, 2), np.float16)
    return _model(tmp_path / "model.bin", {"a/weight": ones, "b/weight": ones})


def test_a_named_weight_gains_the_product_and_the_others_stay(small: Path, tmp_path: Path) -> None:
    up, down = np.array([[1.0], [2.0], [3.0]], np.float32), np.array([[0.5, -1.0]], np.float32)
    changed = b"".join(adapted(small, {"a/weight": (up, down)}))
    expected = _model(
        tmp_path / "expected.bin",
        {"a/weight": (1 + up @ down).astype(np.float16), "b/weight": np.ones((3, 2), np.float16)},
    )
    assert changed == expected.read_bytes()


def test_nothing_taught_leaves_the_file_as_it_is(small: Path) -> None:
    assert b"".join(adapted(small, {})) == small.read_bytes()


@pytest.mark.parametrize(
    ("name", "rows", "told"), [("c/weight", 3, "has no weight c/weight"), ("a/weight", 4, "another shape")]
)
def test_a_model_that_it_was_not_taught_for_is_told_in_one_line(small: Path, name: str, rows: int, told: str) -> None:
    taught = {name: (np.ones((rows, 1), np.float32), np.ones((1, 2), np.float32))}
    with pytest.raises(ModelError, match=told):
        b"".join(adapted(small, taught))


def test_a_file_that_is_cut_off_is_told(small: Path) -> None:
    small.write_bytes(small.read_bytes()[:60])
    with pytest.raises(ModelError, match="ends too early"):
        b"".join(adapted(small, {}))


def test_every_linear_layer_of_the_model_was_taught(tmp_path: Path) -> None:
    """Six layers of encoder and decoder (Radford et al. 2022, table 1): four and seven linear weights each."""
    assert len(read_adapter()) == 6 * 4 + 6 * 7


def test_the_taught_model_has_the_published_one_s_size_and_other_weights() -> None:
    published, taught = shipped_model(), taught_model()
    assert (taught / "model.bin").stat().st_size == (published / "model.bin").stat().st_size == model_files.SIZE
    assert (taught / "model.bin").read_bytes() != (published / "model.bin").read_bytes()
    assert taught_model() == taught


def test_the_published_model_can_be_asked_for_by_name() -> None:
    plain, taught = load_model(HearingOptions(model="whisper-base")), load_model()
    assert (plain.name, taught.name) == ("whisper-base", "whisper-base, taught measures")
    assert plain.fingerprint != taught.fingerprint
