"""Writing up in the background: its progress, its failures, its end."""

from __future__ import annotations

import multiprocessing
import time
from datetime import date
from pathlib import Path

import pytest

from capture.shop import SessionSettings, Shop
from desk.record.writing_up import Progress, WritingUp
from desk.work import Hearing
from tests.capture.making import Maker


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


def added(shop: Shop, recording: Path) -> str:
    return shop.add_session(SessionSettings(title="Saddle", date=date(2026, 3, 14), recording=str(recording))).slug


def ended(writing_up: WritingUp, slug: str, seconds: float = 120) -> Progress:
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        now = writing_up.progress(slug)
        if now and now.state in ("done", "failed"):
            return now
        time.sleep(0.1)
    raise AssertionError(f"not over after {seconds} s: {now}")


def test_what_can_not_be_written_up_says_why(shop: Shop, tmp_path: Path) -> None:
    (tmp_path / "film.mp4").write_text("no film")
    slug = added(shop, tmp_path / "film.mp4")
    writing_up = WritingUp(shop.root, Hearing())
    writing_up.start(slug)
    now = ended(writing_up, slug)
    writing_up.stop()
    assert now.state == "failed"
    assert len(now.lines) == 1
    assert "holds no sound or film that can be read" in now.lines[0]


def test_a_session_that_nobody_asked_for_has_no_progress(shop: Shop) -> None:
    writing_up = WritingUp(shop.root, Hearing())
    assert writing_up.progress("2026-03-14-saddle") is None
    writing_up.stop()


def test_captions_are_written_up_and_the_lines_say_what_needs_a_person(shop: Shop, tmp_path: Path) -> None:
    said = (
        "WEBVTT\n\n00:00:01.000 --> 00:00:06.000\nSixteen inches is 250 millimetres, that is the length of the neck.\n"
    )
    (tmp_path / "said.vtt").write_text(said)
    slug = added(shop, tmp_path / "said.vtt")
    writing_up = WritingUp(shop.root, Hearing())
    writing_up.start(slug)
    now = ended(writing_up, slug)
    writing_up.stop()
    assert now.state == "done", now
    assert any("16 in is 406 mm" in line.replace("\u00a0", " ") for line in now.lines), now.lines
    assert (shop.public / "sessions" / slug / "index.html").is_file()


def test_stopping_ends_its_process(shop: Shop, tmp_path: Path) -> None:
    slug = added(shop, Maker(tmp_path).speech())
    writing_up = WritingUp(shop.root, Hearing())
    writing_up.start(slug)
    until = time.monotonic() + 30
    while not (children := multiprocessing.active_children()) and time.monotonic() < until:
        time.sleep(0.05)
    assert children
    writing_up.stop()
    children[0].join(10)
    assert not children[0].is_alive()
    now = writing_up.progress(slug)
    assert now is not None
    assert now.state in ("failed", "waiting")
