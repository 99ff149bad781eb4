"""A shop on disk: settings that a person may edit, sessions, one writer each."""

from __future__ import annotations

import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from capture.errors import SessionBusyError, ShopError
from capture.shop import SessionSettings, Shop, ShopSettings
from capture.transcript import Cue, Transcript, Word


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


def _settings(title: str = "Bridge & saddle — part 1", recording: str = "") -> SessionSettings:
    return SessionSettings(title=title, date=date(2026, 3, 2), recording=recording)


def test_a_new_shop_has_settings_that_a_person_can_read(shop: Shop) -> None:
    assert shop.settings == ShopSettings()
    assert "Edit it as you like" in shop.settings_file.read_text()


def test_opening_keeps_what_a_person_wrote(shop: Shop) -> None:
    shop.settings_file.write_text('# mine\nformat = "spokeshave-shop/1"\ntitle = "Notes of a shop"\n')
    assert Shop.open_or_create(shop.root).settings.title == "Notes of a shop"
    assert shop.settings_file.read_text().startswith("# mine")


def test_a_folder_with_other_things_in_it_is_not_taken_over(tmp_path: Path) -> None:
    (tmp_path / "holiday.txt").write_text("")
    with pytest.raises(ShopError, match="not an empty folder"):
        Shop.open_or_create(tmp_path)


def test_a_session_folder_is_named_by_day_and_title(shop: Shop) -> None:
    first = shop.add_session(_settings())
    second = shop.add_session(_settings())
    assert [one.slug for one in shop.sessions()] == [
        "2026-03-02-bridge-saddle-part-1",
        "2026-03-02-bridge-saddle-part-1-2",
    ]
    assert first.settings == second.settings == _settings()


def test_a_title_of_no_letters_still_gets_a_folder(shop: Shop) -> None:
    assert shop.add_session(_settings("…")).slug == "2026-03-02-session"


def test_a_session_is_found_by_its_recording_and_by_part_of_its_name(shop: Shop, tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    film.write_bytes(b"x")
    session = shop.add_session(_settings("Saddle", recording=str(film)))
    shop.add_session(_settings("Nut"))
    found = shop.session_of(film)
    assert found is not None
    assert found.folder == session.folder == shop.session("saddle").folder
    with pytest.raises(ShopError, match="no session matches"):
        shop.session("fretboard")
    with pytest.raises(ShopError, match="several sessions match"):
        shop.session("2026")


@pytest.mark.parametrize(
    ("content", "problem"),
    [
        ("title = ", "is no TOML"),
        ('title = "Nut"\n', "date: Field required"),
        ('title = "Nut"\ndate = 2026-03-02\ncolour = "red"\n', "colour: Extra inputs"),
        ('format = "spokeshave-session/9"\ntitle = "Nut"\ndate = 2026-03-02\n', "format: Input should be"),
    ],
)
def test_a_settings_file_with_a_mistake_gets_one_line(shop: Shop, content: str, problem: str) -> None:
    session = shop.add_session(_settings())
    (session.folder / "session.toml").write_text(content)
    with pytest.raises(ShopError, match=problem) as caught:
        _ = session.settings
    assert "\n" not in str(caught.value)
    assert "session.toml" in str(caught.value)


def test_a_transcript_is_read_back_as_it_was_written(shop: Shop) -> None:
    session = shop.add_session(_settings())
    assert session.transcript() is None
    word = Word(text="sixteenths", start=1.0, end=1.5, probability=0.75)
    transcript = Transcript(
        source="film.mp4", duration=2.0, cues=(Cue(start=1.0, end=1.5, text="sixteenths", words=(word,)),)
    )
    session.transcript_file.write_text(transcript.to_json())
    assert session.transcript() == transcript
    session.transcript_file.write_text('{"schema": "spokeshave-transcript/7"}')
    with pytest.raises(ShopError, match="is no transcript"):
        session.transcript()


def test_two_processes_never_write_one_session(shop: Shop) -> None:
    session = shop.add_session(_settings())
    hold = (
        "import sys; from pathlib import Path; from capture.shop import Session\n"
        "with Session(Path(sys.argv[1])).writing(): print('held', flush=True); sys.stdin.read()"
    )
    with subprocess.Popen(
        [sys.executable, "-c", hold, str(session.folder)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == "held\n"
        with pytest.raises(SessionBusyError), session.writing():
            pass
        other.kill()
        other.wait()
    # A process that was killed holds nothing.
    with session.writing():
        pass
