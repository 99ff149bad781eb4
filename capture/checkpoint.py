"""What was heard so far, kept on disk until the transcript is done."""

from __future__ import annotations

import hashlib
from importlib.metadata import version
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from capture.errors import ShopError
from capture.files import write_atomic
from capture.fingerprint import fingerprint
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.transcript import HeardFigure, Word


class HeardBlock(BaseModel):
    """The words of one block."""

    model_config = ConfigDict(frozen=True)

    start: int
    end: int
    """Samples at 16 kHz from the recording's zero, `end` exclusive."""
    words: tuple[Word, ...]
    figures: tuple[HeardFigure, ...] = ()
    """What became of its figures in the second hearing."""


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True, populate_by_name=True)

    schema_: Literal["spokeshave-hearing/1"] = Field(default="spokeshave-hearing/1", alias="schema")
    key: str
    blocks: tuple[HeardBlock, ...]


def checkpoint_key(
    recording: Path, model: SpeechModel, prime: str, options: HearingOptions, *, second: bool = False
) -> str:
    """A sum over all that decides what is heard: the recording, the model, the prime, every option, a second hearing.

    Of the recording it takes size, time of last change, and the first and last megabyte.
    """
    parts = (
        fingerprint(recording),
        recording.stat().st_mtime_ns,
        model.name,
        model.fingerprint,
        model.device,
        model.compute_type,
        prime,
        options,
        second,
        version("faster-whisper"),
        version("ctranslate2"),
        version("av"),
    )
    return hashlib.sha256(repr(parts).encode()).hexdigest()


class Checkpoint:
    """The blocks heard so far of one recording, in `folder`."""

    def __init__(self, folder: Path, key: str) -> None:
        self.path = folder / "hearing.json"
        self._key = key

    def load(self) -> list[HeardBlock]:
        """The blocks of an earlier run on the same recording, model and prime; none where anything differs."""
        try:
            kept = _Kept.model_validate_json(self.path.read_bytes())
        except (OSError, ValidationError):
            return []
        return list(kept.blocks) if kept.key == self._key else []

    def save(self, blocks: list[HeardBlock]) -> None:
        """Keep the blocks heard so far, in one step; makes the folder where there is none.

        Raises `ShopError` where the disk refuses; the earlier checkpoint is then still there.
        """
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            write_atomic(self.path, _Kept(key=self._key, blocks=tuple(blocks)).model_dump_json(by_alias=True))
        except OSError as error:
            reason = (error.strerror or str(error)).lower()
            raise ShopError(
                self.path.parent,
                f"what was heard can't be kept there ({reason})",
                "make room or mend the folder, then run this again: it goes on from the last block that was kept",
            ) from error

    def remove(self) -> None:
        """Forget it, and whatever a killed run left half written."""
        for path in (self.path, *self.path.parent.glob(f".{self.path.name}.*.part")):
            path.unlink(missing_ok=True)
