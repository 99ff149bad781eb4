"""A checkpoint belongs to one recording, model and prime, and is whole or absent."""

from __future__ import annotations

import errno
import os
from dataclasses import replace
from pathlib import Path

import pytest

from capture.checkpoint import Checkpoint, HeardBlock, checkpoint_key
from capture.errors import ShopError
from capture.model import SpeechModel
from capture.options import HearingOptions
from capture.transcript import Word

MODEL = SpeechModel("whisper-base", "cpu", "int8", "abc", None)
BLOCKS = [
    HeardBlock(start=0, end=160, words=(Word(text="one", start=0.1, end=0.2, probability=0.123456789),)),
    HeardBlock(start=160, end=320, words=()),
]


@pytest.fixture
def recording(tmp_path: Path) -> Path:
    path = tmp_path / "a.wav"
    path.write_bytes(b"RIFF" * 1000)
    return path


def test_what_is_saved_is_loaded(tmp_path: Path) -> None:
    folder = tmp_path / "session"
    Checkpoint(folder, "key").save(BLOCKS)
    assert Checkpoint(folder, "key").load() == BLOCKS
    assert [path.name for path in folder.iterdir()] == ["hearing.json"]


def test_another_key_starts_afresh(tmp_path: Path) -> None:
    Checkpoint(tmp_path, "key").save(BLOCKS)
    assert Checkpoint(tmp_path, "other").load() == []


@pytest.mark.parametrize(
    "content", [b"", b"{", b"[]", b'{"schema": "spokeshave-hearing/0", "key": "key", "blocks": []}']
)
def test_a_damaged_checkpoint_starts_afresh(tmp_path: Path, content: bytes) -> None:
    checkpoint = Checkpoint(tmp_path, "key")
    checkpoint.path.write_bytes(content)
    assert checkpoint.load() == []


def test_removing_takes_half_written_files_along(tmp_path: Path) -> None:
    checkpoint = Checkpoint(tmp_path, "key")
    checkpoint.save(BLOCKS)
    (tmp_path / ".hearing.json.abc.part").touch()
    (tmp_path / "notes.md").touch()
    checkpoint.remove()
    assert [path.name for path in tmp_path.iterdir()] == ["notes.md"]
    checkpoint.remove()


def test_no_folder_is_made_before_there_is_something_to_keep(tmp_path: Path) -> None:
    checkpoint = Checkpoint(tmp_path / "session", "key")
    assert checkpoint.load() == []
    checkpoint.remove()
    assert not (tmp_path / "session").exists()


def test_a_full_disk_is_one_line_and_keeps_the_last_checkpoint(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    checkpoint = Checkpoint(tmp_path, "key")
    checkpoint.save(BLOCKS[:1])

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", full)
        with pytest.raises(
            ShopError, match=r"what was heard can't be kept there \(no space left on device\); make room"
        ):
            checkpoint.save(BLOCKS)
    assert checkpoint.load() == BLOCKS[:1]


def key(recording: Path, model: SpeechModel = MODEL, prime: str = "p", **options: float) -> str:
    return checkpoint_key(recording, model, prime, replace(HearingOptions(), **options))  # type: ignore[arg-type]


def test_the_key_stays_the_same_for_the_same_hearing(recording: Path) -> None:
    assert key(recording) == key(recording)


def test_the_key_changes_with_all_that_decides_what_is_heard(recording: Path) -> None:
    keys = [
        key(recording),
        key(recording, prime="q"),
        key(recording, model=replace(MODEL, name="other")),
        key(recording, model=replace(MODEL, fingerprint="def")),
        key(recording, model=replace(MODEL, device="cuda")),
        key(recording, block_seconds=60),
        key(recording, beam_size=1),
    ]
    recording.write_bytes(b"RIFF" * 999 + b"RIFX")
    keys.append(key(recording))
    recording.write_bytes(b"RIFF" * 1001)
    keys.append(key(recording))
    os.utime(recording, ns=(1, 1))
    keys.append(key(recording))
    assert len(set(keys)) == len(keys)
