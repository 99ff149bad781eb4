"""A file is whole or untouched."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from capture.files import write_atomic


def test_text_is_written_as_utf8_and_replaces_what_was_there(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text("old")
    write_atomic(path, "5⁄64 in")
    assert path.read_bytes() == "5⁄64 in".encode()
    assert list(tmp_path.iterdir()) == [path]


def test_a_failing_disk_leaves_the_old_file_and_no_litter(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "record.json"
    path.write_text("old")

    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("capture.files.os.fsync", full)
    with pytest.raises(OSError, match="No space left"):
        write_atomic(path, "new")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_written_file_is_as_readable_as_any_other(tmp_path: Path) -> None:
    ordinary = tmp_path / "ordinary"
    ordinary.write_text("")
    write_atomic(tmp_path / "atomic", "")
    assert stat.S_IMODE((tmp_path / "atomic").stat().st_mode) == stat.S_IMODE(ordinary.stat().st_mode)
