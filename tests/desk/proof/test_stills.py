"""Stills: made on demand, kept, none for sound."""

from __future__ import annotations

import io
import re
from pathlib import Path

from PIL import Image
from starlette.testclient import TestClient

from capture.shop import Session
from tests.capture.making import Maker
from tests.desk.proof.conftest import SLUG

HOME = f"/proof/sessions/{SLUG}/stills"


def test_a_still_shows_the_film_at_its_second(person: TestClient, session: Session) -> None:
    # The film's grey rises by one shade a frame, five frames a second, from 40.
    for tenths in (0, 100, 200):
        answer = person.get(f"{HOME}/{tenths}.jpg")
        assert answer.headers["content-type"] == "image/jpeg"
        picture = Image.open(io.BytesIO(answer.content)).convert("L")
        assert picture.size == (160, 90)
        shade = picture.getpixel((80, 45))
        assert isinstance(shade, int)
        assert abs(shade - (40 + tenths / 2)) < 8
    assert len(list((session.folder / "stills").glob("*.jpg"))) == 3


def test_a_still_is_made_once(person: TestClient, session: Session) -> None:
    person.get(f"{HOME}/100.jpg")
    (kept,) = (session.folder / "stills").glob("*.jpg")
    kept.write_bytes(b"kept")
    assert person.get(f"{HOME}/100.jpg").content == b"kept"


def test_past_the_end_stands_the_last_picture(person: TestClient) -> None:
    assert person.get(f"{HOME}/{10**30}.jpg").status_code == 200


def test_sound_has_no_still(person: TestClient, session: Session, tmp_path: Path) -> None:
    facts = session.folder / "session.toml"
    facts.write_text(re.sub(r'recording = ".*"', f'recording = "{Maker(tmp_path).speech()}"', facts.read_text()))
    assert person.get(f"{HOME}/100.jpg").status_code == 404
    assert not (session.folder / "stills").exists()
    assert 'data-picture="audio"' in person.get(f"/proof/sessions/{SLUG}/").text


def test_a_film_that_is_broken_is_told_in_one_line(person: TestClient, session: Session) -> None:
    (session.folder / "broken.mp4").write_bytes(b"no film at all")
    facts = session.folder / "session.toml"
    facts.write_text(re.sub(r'recording = ".*"', 'recording = "broken.mp4"', facts.read_text()))
    answer = person.get(f"{HOME}/100.jpg")
    assert (answer.status_code, "broken.mp4" in answer.json()["problem"]) == (409, True)
