"""What the page may ask while a recording is made, and what it is answered."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from capture.errors import SessionBusyError
from capture.recording import Mark, read_marks
from capture.recording.room import KEPT_FREE
from capture.shop import SessionSettings, Shop
from desk.record.bench import Bench
from desk.record.section import LARGEST_PIECE
from tests.capture.recording.conftest import live_sound  # noqa: F401 - a fixture
from tests.capture.recording.test_marks_and_stills import jpeg
from tests.desk.record.conftest import Disk

SLUG = "saddle-slot"


def begin(person: TestClient, **more: str) -> dict[str, Any]:
    asked = {"title": "Saddle slot", "subject": "", "trade": "", "mime": "audio/webm;codecs=opus", **more}
    told: dict[str, Any] = person.post("/record/begin", json=asked).json()
    return told


def piece(person: TestClient, slug: str, number: int, content: bytes, second: float = 1.0) -> Any:
    return person.post(f"/record/sessions/{slug}/pieces/{number}?second={second}", content=content)


def test_a_session_stands_in_the_shop_before_the_first_piece(person: TestClient, shop: Shop) -> None:
    told = begin(person, subject="Parlour guitar of 1921", trade="strings")
    settings = shop.session(told["slug"]).settings
    assert (settings.title, settings.subject, settings.trade) == ("Saddle slot", "Parlour guitar of 1921", "strings")
    assert settings.recording == "recording.weba"
    assert told["next"] == 0


@pytest.mark.parametrize(
    ("title", "subject", "named"), [("", "lute", "Lute"), (" ", " ", "At the bench"), ("neck", "lute", "Neck")]
)
def test_a_session_without_a_title_gets_one(person: TestClient, title: str, subject: str, named: str) -> None:
    assert begin(person, title=title, subject=subject)["title"] == named


def test_pieces_come_to_the_disk_in_order_and_once(person: TestClient, shop: Shop) -> None:
    slug = begin(person)["slug"]
    order = [(0, b"one"), (0, b"one"), (2, b"three"), (1, b"two"), (2, b"three"), (1, b"two")]
    assert [piece(person, slug, number, content).json()["next"] for number, content in order] == [1, 1, 1, 2, 3, 3]
    assert (shop.session(slug).folder / "recording.weba").read_bytes() == b"onetwothree"


def test_a_piece_beyond_the_bound_is_refused_and_harms_nothing(person: TestClient, shop: Shop) -> None:
    slug = begin(person)["slug"]
    assert piece(person, slug, 0, b"x" * (LARGEST_PIECE + 1)).status_code == 413
    assert piece(person, slug, 0, b"x" * LARGEST_PIECE).json()["next"] == 1
    assert (shop.session(slug).folder / "recording.weba").stat().st_size == LARGEST_PIECE


@pytest.mark.parametrize("second", ["", "nan", "inf", "-1", "1e9", "soon"])
def test_a_piece_without_a_proper_second_is_refused(person: TestClient, second: str) -> None:
    slug = begin(person)["slug"]
    answer = person.post(f"/record/sessions/{slug}/pieces/0?second={second}", content=b"one")
    assert answer.status_code == 409
    assert answer.json()["problem"].startswith("second: ")


def test_a_server_that_was_killed_is_gone_on_with_by_another(person: TestClient, bench: Bench, shop: Shop) -> None:
    slug = begin(person)["slug"]
    piece(person, slug, 0, b"one")
    bench.close()  # what the operating system does for a process that is killed
    assert piece(person, slug, 1, b"two").json()["next"] == 2
    assert (shop.session(slug).folder / "recording.weba").read_bytes() == b"onetwo"


def test_nobody_else_works_on_a_session_that_is_being_recorded(person: TestClient, shop: Shop) -> None:
    slug = begin(person)["slug"]
    script = f"""
from pathlib import Path
from capture.shop import Session
with Session(Path({str(shop.session(slug).folder)!r})).writing(): pass
"""
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert SessionBusyError.__name__ in run.stderr
    person.post(f"/record/sessions/{slug}/end", json={"second": 0})


def test_ended_it_is_whole_and_the_command_is_told(
    person: TestClient,
    shop: Shop,
    live_sound: bytes,  # noqa: F811
) -> None:
    slug = begin(person)["slug"]
    piece(person, slug, 0, live_sound, 12.0)
    told = person.post(f"/record/sessions/{slug}/end", json={"second": 12.02}).json()
    file = shop.session(slug).folder / "recording.weba"
    assert (told["slug"], told["length"], told["note"], told["nothing"]) == (slug, "0:12", "", False)
    assert told["command"] == f"spokeshave writeup {file.resolve()} --shop {shop.root.resolve()}"
    assert not (file.parent / "recording.journal").exists()
    again = person.post(f"/record/sessions/{slug}/end", json={"second": 12.02}).json()
    assert again["length"] == "0:12", "asked twice because the first answer was lost"
    assert piece(person, slug, 1, b"more").status_code == 409


def test_a_recording_of_which_nothing_came_is_taken_away(person: TestClient, shop: Shop) -> None:
    slug = begin(person)["slug"]
    assert person.post(f"/record/sessions/{slug}/end", json={"second": 0}).json()["nothing"]
    assert shop.sessions() == []


def test_a_session_whose_recording_lies_elsewhere_is_never_taken_away(person: TestClient, shop: Shop) -> None:
    settings = SessionSettings.model_validate({"title": "On a disk that is not plugged in", "date": "2026-03-14"})
    session = shop.add_session(settings.model_copy(update={"recording": "/media/gone/film.mp4"}))
    person.post(f"/record/sessions/{session.slug}/end", json={"second": 0})
    assert session.folder.is_dir()


def test_marks_are_kept_as_they_stand(person: TestClient, shop: Shop) -> None:
    slug = begin(person)["slug"]
    for marks in ([{"second": 83.4, "note": ""}], [{"second": 83.4, "note": "crack"}, {"second": 9, "note": ""}]):
        assert person.post(f"/record/sessions/{slug}/marks", json={"marks": marks}).json() == {"marks": len(marks)}
    assert read_marks(shop.session(slug).folder) == (Mark(second=9), Mark(second=83.4, note="crack"))


def test_a_still_is_kept_and_what_is_none_is_refused(person: TestClient, shop: Shop) -> None:
    slug = begin(person)["slug"]
    address = f"/record/sessions/{slug}/stills?second=83.4"
    assert person.post(address, content=jpeg()).json() == {"name": "taken-00083.4.jpg"}
    assert person.post(address, content=b"<html>").status_code == 409
    assert [path.name for path in (shop.session(slug).folder / "stills").iterdir()] == ["taken-00083.4.jpg"]


def test_no_recording_begins_on_a_full_disk(person: TestClient, shop: Shop, disk: Disk) -> None:
    disk.free = KEPT_FREE
    assert "no room for a recording" in begin(person)["problem"]
    assert shop.sessions() == []


def test_room_is_told_with_every_piece(person: TestClient, disk: Disk) -> None:
    slug = begin(person)["slug"]
    assert piece(person, slug, 0, b"x" * 160_000, 10.0).json()["room"]["state"] == "plenty"
    disk.free = KEPT_FREE + 16_000 * 60 * 5
    told = piece(person, slug, 1, b"x" * 16_000, 11.0).json()["room"]
    assert told["line"] == "The disk is getting full: room for about 5 more minutes."
    disk.free = KEPT_FREE
    told = piece(person, slug, 2, b"x", 12.0).json()
    assert (told["next"], told["room"]["state"]) == (3, "none"), "this piece is still taken"


@pytest.mark.parametrize(
    "asked",
    [
        {"mime": "text/html"}, {"mime": "video/quicktime"}, {"trade": "falconry"}, {"title": "x" * 201}, {"more": "1"},
    ],
)  # fmt: skip
def test_a_request_of_another_shape_makes_nothing(person: TestClient, shop: Shop, asked: dict[str, str]) -> None:
    assert "problem" in begin(person, **asked)
    assert shop.sessions() == []


@pytest.mark.parametrize("slug", ["nowhere", "..", "%2e%2e", "saddle", "..%2f..%2fetc"])
def test_only_whole_names_of_sessions_are_known(person: TestClient, tmp_path: Path, slug: str) -> None:
    begin(person)
    assert piece(person, slug, 0, b"one").status_code in (404, 405, 409)
    assert person.post(f"/record/sessions/{slug}/marks", json={"marks": []}).status_code in (404, 405, 409)
    assert not list(tmp_path.glob("*.json"))


def test_what_was_cut_off_is_told_with_its_command(person: TestClient, bench: Bench, shop: Shop) -> None:
    slug = begin(person)["slug"]
    piece(person, slug, 0, b"one", 61.0)
    assert person.get("/record/standing").json()["cut_off"] == [], "it is being recorded"
    bench.close()
    (told,) = person.get("/record/standing").json()["cut_off"]
    assert told["line"] == "“Saddle slot” was cut off at 1:01; what was recorded up to there is kept."
    assert told["command"].startswith("spokeshave writeup ")


def test_a_recording_whose_page_went_away_is_told_too(person: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    slug = begin(person)["slug"]
    piece(person, slug, 0, b"one", 61.0)
    monkeypatch.setattr("desk.record.bench._SILENT", -1.0)
    assert [one["slug"] for one in person.get("/record/standing").json()["cut_off"]] == [slug]
