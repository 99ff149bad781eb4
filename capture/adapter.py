"""What the ear that ships was taught about spoken measures: a small change to Whisper base's weights.

Each weight of a linear layer gains the product of two thin matrices (low-rank adaptation: Hu et al. 2021,
arXiv:2106.09685, section 4.1): W + up · down. They were learnt from synthetic voices alone, by
`tests/benchmarks/teach_ear`; no recording of a person went in. `data/measures_adapter.npz` holds them, 16 wide, as
16-bit floats.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

from capture.errors import ModelError

PATH = Path(str(files("capture").joinpath("data/measures_adapter.npz")))

FLOAT16 = 4
"""CTranslate2's number for 16-bit floats."""

STRENGTH = 0.5
"""How much of what was taught is added. Half way between two sets of weights keeps nearly all of the new skill and the
old ones as well (Wortsman et al. 2022, arXiv:2109.01903). With all of it, the word error rate on read speech went from
1.4 to 11 in 100, with half to 2.8: one word more of 71 (`tests/benchmarks/wer.py`)."""

_CHUNK = 1 << 20

Matrix = NDArray[np.float32]


def read_adapter(path: Path = PATH, strength: float = STRENGTH) -> dict[str, tuple[Matrix, Matrix]]:
    """By weight: `up` (out, rank), times `strength`, and `down` (rank, in)."""
    with np.load(path, allow_pickle=False) as kept:
        names = {name.rsplit("/", 1)[0] for name in kept.files}
        return {
            name: (strength * kept[f"{name}/up"].astype(np.float32), kept[f"{name}/down"].astype(np.float32))
            for name in names
        }


def adapted(weights: Path, adapter: dict[str, tuple[Matrix, Matrix]]) -> Iterator[bytes]:
    """The bytes of a CTranslate2 `model.bin` with each weight named in `adapter` changed; one weight at a time.

    The file's format is CTranslate2's own (`model_spec.py`, version 6): a head, then for each variable its name, shape,
    type and bytes. Raises `ModelError` where a weight that should change is missing or of another shape.
    """
    left = set(adapter)
    with weights.open("rb") as file:
        yield _head(file)
        (count,) = struct.unpack("<I", given := _exactly(file, 4))
        yield given
        for _ in range(count):
            name, shape, kind, size, described = _variable(file)
            yield described
            if name not in adapter:
                yield from _copied(file, size)
                continue
            up, down = adapter[name]
            if kind != FLOAT16 or shape != (up.shape[0], down.shape[1]):
                raise _unfit(f"its weight {name} has another shape or type")
            left.discard(name)
            weight = np.frombuffer(_exactly(file, size), np.float16).reshape(shape)
            yield (weight.astype(np.float32) + up @ down).astype(np.float16).tobytes()
        if left:
            raise _unfit(f"it has no weight {min(left)}")
        while rest := file.read(_CHUNK):
            yield rest


def weights_of(weights: Path) -> Iterator[tuple[str, NDArray[np.float16]]]:
    """The 16-bit variables of a CTranslate2 `model.bin`, one by one, by name."""
    with weights.open("rb") as file:
        _head(file)
        (count,) = struct.unpack("<I", _exactly(file, 4))
        for _ in range(count):
            name, shape, kind, size, _ = _variable(file)
            values = _exactly(file, size)
            if kind == FLOAT16:
                yield name, np.frombuffer(values, np.float16).reshape(shape)


def _head(file: BinaryIO) -> bytes:
    """Version, name and revision of the model's kind."""
    version = _exactly(file, 4)
    _, name = _string(file)
    return version + name + _exactly(file, 4)


def _variable(file: BinaryIO) -> tuple[str, tuple[int, ...], int, int, bytes]:
    """Name, shape, type and bytes of the next variable, and how the file tells of them."""
    name, named = _string(file)
    rank = _exactly(file, 1)
    sizes = _exactly(file, 4 * rank[0])
    rest = _exactly(file, 5)
    kind, size = struct.unpack("<BI", rest)
    return name, struct.unpack(f"<{rank[0]}I", sizes), kind, size, named + rank + sizes + rest


def _string(file: BinaryIO) -> tuple[str, bytes]:
    head = _exactly(file, 2)
    (length,) = struct.unpack("<H", head)
    text = _exactly(file, length)
    return text.rstrip(b"\0").decode("utf-8", "replace"), head + text


def _copied(file: BinaryIO, size: int) -> Iterator[bytes]:
    while size:
        chunk = _exactly(file, min(size, _CHUNK))
        size -= len(chunk)
        yield chunk


def _exactly(file: BinaryIO, size: int) -> bytes:
    found = file.read(size)
    if len(found) != size:
        raise _unfit("its file ends too early")
    return found


def _unfit(reason: str) -> ModelError:
    return ModelError("whisper-base", f"what was taught doesn't fit it: {reason}", "install spokeshave again with pip")
