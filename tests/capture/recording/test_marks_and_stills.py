"""Marks and stills in the session's folder."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest
from PIL import Image

from capture.errors import ShopError
from capture.recording import Mark, keep_marks, keep_still, read_marks


def jpeg(width: int = 32) -> bytes:
    made = io.BytesIO()
    Image.new("RGB", (width, 16), "#776644").save(made, "JPEG")
    return made.getvalue()


def test_marks_come_back_in_order_of_time(tmp_path: Path) -> None:
    keep_marks(tmp_path, (Mark(second=83.4, note="the crack"), Mark(second=12)))
    assert read_marks(tmp_path) == (Mark(second=12), Mark(second=83.4, note="the crack"))


def test_the_file_is_as_documented(tmp_path: Path) -> None:
    keep_marks(tmp_path, (Mark(second=83.4, note="the crack"),))
    assert json.loads((tmp_path / "marks.json").read_text()) == {
        "schema": "spokeshave-marks/1",
        "marks": [{"second": 83.4, "note": "the crack"}],
    }


def test_a_session_without_marks_has_none(tmp_path: Path) -> None:
    assert read_marks(tmp_path) == ()


@pytest.mark.parametrize(
    "content", ["", "[]", '{"schema": "spokeshave-marks/2", "marks": []}', '{"marks": [{"second": -1}]}']
)
def test_broken_marks_are_told_in_one_line(tmp_path: Path, content: str) -> None:
    (tmp_path / "marks.json").write_text(content)
    with pytest.raises(ShopError, match="is no list of marks"):
        read_marks(tmp_path)


def test_a_still_is_named_by_its_second(tmp_path: Path) -> None:
    path = keep_still(tmp_path, jpeg(), 83.41)
    assert path == tmp_path / "stills" / "taken-00083.4.jpg"
    with Image.open(path) as picture:
        assert picture.size == (32, 16)


def test_the_same_still_again_is_the_same_file(tmp_path: Path) -> None:
    assert keep_still(tmp_path, jpeg(), 5) == keep_still(tmp_path, jpeg(), 5)
    assert len(list((tmp_path / "stills").iterdir())) == 1


@pytest.mark.parametrize(
    "content", [b"", b"<svg onload='x'/>", b"\xff\xd8\xff", b"\xff\xd8\xff" + b"x" * 500, b"\x89PNG\r\n\x1a\n"]
)
def test_what_is_no_jpeg_is_not_kept(tmp_path: Path, content: bytes) -> None:
    with pytest.raises(ShopError, match="no JPEG"):
        keep_still(tmp_path, content, 5)
    assert list(tmp_path.iterdir()) == []
