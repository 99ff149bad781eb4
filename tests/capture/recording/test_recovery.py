"""What the next start finds of recordings that nobody ended."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from capture.recording import Kind, Take, cut_off
from capture.shop import Session, SessionSettings, Shop


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


def session(shop: Shop, title: str) -> Session:
    return shop.add_session(SessionSettings(title=title, date=date(2026, 3, 14), recording="recording.weba"))


def test_it_finds_what_was_cut_off_and_says_so_in_one_line(shop: Shop, sound: Kind) -> None:
    take = Take.begin(session(shop, "Neck reset").folder, sound, port=8137)
    take.add(0, b"sound", 187.4)
    take.close()
    (found,) = cut_off(shop)
    assert (found.session.slug, found.seconds, found.size, found.port) == ("2026-03-14-neck-reset", 187.4, 5, 8137)
    assert found.line == "“Neck reset” was cut off at 3:07; what was recorded up to there is kept."


def test_a_recording_of_which_nothing_came(shop: Shop, sound: Kind) -> None:
    Take.begin(session(shop, "Neck reset").folder, sound).close()
    assert [one.line for one in cut_off(shop)] == ["“Neck reset” was cut off before anything was recorded."]


def test_what_was_ended_was_not_cut_off(shop: Shop, sound: Kind) -> None:
    take = Take.begin(session(shop, "Neck reset").folder, sound)
    take.add(0, b"sound", 1.0)
    take.end(1.0)
    take.close()
    session(shop, "Imported from a camera")
    assert cut_off(shop) == ()


def test_what_is_being_recorded_now_was_not_cut_off(shop: Shop, sound: Kind) -> None:
    held = session(shop, "Neck reset")
    take = Take.begin(held.folder, sound)
    take.add(0, b"sound", 1.0)
    with held.writing():
        assert cut_off(shop) == ()
    assert len(cut_off(shop)) == 1
    take.close()


def test_a_broken_journal_hides_no_other_session(shop: Shop, sound: Kind) -> None:
    (session(shop, "Broken").folder / "recording.journal").write_text("no journal")
    take = Take.begin(session(shop, "Neck reset").folder, sound)
    take.add(0, b"sound", 1.0)
    take.close()
    assert [one.title for one in cut_off(shop)] == ["Neck reset"]
