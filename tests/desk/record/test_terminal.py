"""Recording in the terminal, from a made input."""

from __future__ import annotations

from pathlib import Path

import pytest

from capture.recording import read_marks
from capture.recording.microphone import RATE
from capture.recording.room import KEPT_FREE
from capture.shop import Shop
from desk.record import terminal
from desk.record.section import Prefilled
from tests.capture.recording.test_sound_file import Ramp, counted


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


def typed(monkeypatch: pytest.MonkeyPatch, *keys: str) -> None:
    """A keyboard on which these are pressed, one a tenth of a second."""
    from contextlib import nullcontext

    pressed = iter(keys)
    monkeypatch.setattr(terminal, "keys", lambda: nullcontext(lambda: next(pressed, "\n")))


def test_enter_ends_and_space_marks(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    typed(monkeypatch, *[""] * 11, " ", *[""] * 9)
    done = terminal.record(shop, Ramp(), Prefilled(title="Neck reset", subject="Lute"))
    assert done is not None
    session, finished = done
    assert (session.settings.title, session.settings.subject) == ("Neck reset", "Lute")
    assert counted(finished.file) == round(2.2 * RATE)
    assert session.recording_file == finished.file.resolve()
    assert [mark.second for mark in read_marks(session.folder)] == [1.2]


def test_ctrl_c_keeps_what_was_recorded(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    class Stopped(Ramp):
        def read(self, frames: int) -> bytes:
            if self.at >= 2 * RATE:
                raise KeyboardInterrupt
            return super().read(frames)

    typed(monkeypatch, *[""] * 99)
    done = terminal.record(shop, Stopped(), Prefilled())
    assert done is not None
    assert counted(done[1].file) == 2 * RATE


def test_a_full_disk_begins_nothing(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(Exception, match="no room for a recording"):
        terminal.record(shop, Ramp(), Prefilled(), lambda _: KEPT_FREE)
    assert shop.sessions() == []
