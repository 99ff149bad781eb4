"""The recording by ranges (RFC 9110, section 14), in a film of four gigabytes that takes no room on the disk."""

from __future__ import annotations

import re

import pytest
from starlette.testclient import TestClient

from capture.shop import Session
from tests.desk.proof.conftest import SLUG

SIZE = 4 * 1024**3
TAIL = b"the end"
FILM = f"/proof/sessions/{SLUG}/film"


@pytest.fixture
def large(session: Session) -> Session:
    path = session.folder / "long.mp4"
    with path.open("wb") as film:
        film.write(b"start")
        film.seek(SIZE - len(TAIL))
        film.write(TAIL)
    facts = session.folder / "session.toml"
    facts.write_text(re.sub(r'recording = ".*"', 'recording = "long.mp4"', facts.read_text()))
    return session


def test_a_stretch_in_the_middle(large: Session, person: TestClient) -> None:
    answer = person.get(FILM, headers={"range": f"bytes={SIZE // 2}-{SIZE // 2 + 999}"})
    assert answer.status_code == 206
    assert answer.headers["content-range"] == f"bytes {SIZE // 2}-{SIZE // 2 + 999}/{SIZE}"
    assert (answer.headers["content-length"], len(answer.content)) == ("1000", 1000)
    assert (answer.headers["accept-ranges"], answer.headers["content-type"]) == ("bytes", "video/mp4")


def test_the_last_bytes(large: Session, person: TestClient) -> None:
    answer = person.get(FILM, headers={"range": f"bytes=-{len(TAIL)}"})
    assert (answer.status_code, answer.content) == (206, TAIL)
    answer = person.get(FILM, headers={"range": f"bytes={SIZE - len(TAIL)}-"})
    assert (answer.status_code, answer.content) == (206, TAIL)


def test_several_stretches_at_once(large: Session, person: TestClient) -> None:
    answer = person.get(FILM, headers={"range": f"bytes=0-4,{SIZE - len(TAIL)}-"})
    assert answer.status_code == 206
    assert answer.headers["content-type"].startswith("multipart/byteranges; boundary=")
    assert b"start" in answer.content
    assert TAIL in answer.content
    assert f"bytes 0-4/{SIZE}".encode() in answer.content


def test_a_stretch_past_the_end(large: Session, person: TestClient) -> None:
    answer = person.get(FILM, headers={"range": f"bytes={SIZE}-"})
    assert (answer.status_code, answer.headers["content-range"]) == (416, f"bytes */{SIZE}")


def test_the_whole_is_only_begun_on(large: Session, person: TestClient) -> None:
    answer = person.head(FILM)
    assert (answer.status_code, answer.headers["content-length"], answer.content) == (200, str(SIZE), b"")


def test_a_film_that_was_changed_is_sent_from_the_start(session: Session, person: TestClient) -> None:
    stretch = {"range": "bytes=0-9"}
    tag = person.get(FILM, headers=stretch).headers["etag"]
    assert person.get(FILM, headers={**stretch, "if-range": tag}).status_code == 206
    assert person.get(FILM, headers={**stretch, "if-range": '"other"'}).status_code == 200


def test_a_recording_that_is_gone(session: Session, person: TestClient) -> None:
    facts = session.folder / "session.toml"
    facts.write_text(re.sub(r'recording = ".*"', 'recording = "gone.mp4"', facts.read_text()))
    assert person.get(FILM).status_code == 404
    assert 'data-picture=""' in person.get(f"/proof/sessions/{SLUG}/").text
