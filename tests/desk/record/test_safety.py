"""The rules of the local app hold for every address of the capture page."""

from __future__ import annotations

import pytest
from starlette.routing import Route
from starlette.testclient import TestClient

from desk.record.bench import Bench
from desk.record.section import Prefilled, record_section
from desk.record.writing_up import WritingUp
from desk.work import Hearing
from tests.desk.app.conftest import OWN, PORT

CHANGES = (
    "begin",
    "sessions/x/pieces/0?second=1",
    "sessions/x/marks",
    "sessions/x/stills?second=1",
    "sessions/x/end",
    "sessions/x/writeup",
)
READS = ("", "standing", "sessions/x/writeup", "assets/record.js")


def test_these_are_all_its_addresses(bench: Bench) -> None:
    section = record_section(bench, WritingUp(bench.shop.root, Hearing()), Prefilled(), "")
    known = {route.path.strip("/") for route in section.routes if isinstance(route, Route)}
    named = {
        address.split("?")[0].replace("/x/", "/{slug}/").replace("/0", "/{number:int}") for address in CHANGES + READS
    }
    assert known == named - {"assets/record.js"}


@pytest.mark.parametrize("address", CHANGES)
def test_a_change_needs_key_header_origin_and_name(person: TestClient, address: str) -> None:
    path = f"/record/{address}"
    for lacking in (
        {"origin": "http://evil.example"},
        {"origin": f"http://127.0.0.1:{PORT + 1}"},
        {"sec-fetch-site": "cross-site"},
    ):
        assert person.post(path, content=b"x", headers=lacking).status_code == 403
    assert person.post(path, content=b"x", headers={"host": "evil.example"}).status_code == 421
    del person.headers["spokeshave-page"]
    assert person.post(path, content=b"x").status_code == 403


@pytest.mark.parametrize("address", CHANGES)
def test_without_the_key_nothing_is_taken(stranger: TestClient, address: str) -> None:
    assert stranger.post(f"/record/{address}", content=b"x", headers=OWN).status_code == 403


@pytest.mark.parametrize("address", READS)
def test_without_the_key_nothing_is_shown(stranger: TestClient, address: str) -> None:
    assert stranger.get(f"/record/{address}").status_code == 403


def test_microphone_and_camera_are_permitted_on_this_page_alone(person: TestClient) -> None:
    permitted = person.get("/record/").headers["permissions-policy"]
    assert "microphone=(self)" in permitted
    assert "camera=(self)" in permitted
    for elsewhere in ("/", "/assets/notes.css", "/nowhere"):
        refused = person.get(elsewhere).headers["permissions-policy"]
        assert "microphone=()" in refused
        assert "camera=()" in refused


def test_the_page_may_play_what_it_records_and_load_nothing_from_elsewhere(person: TestClient) -> None:
    rules = dict(rule.split(" ", 1) for rule in person.get("/record/").headers["content-security-policy"].split("; "))
    assert rules["media-src"] == "'self' blob:"
    assert rules["script-src"] == "'self'"


def test_what_a_person_wrote_is_no_markup(person: TestClient) -> None:
    hostile = "</div><script>alert(1)</script>"
    asked = {"title": "x", "subject": hostile, "trade": "", "mime": "audio/webm"}
    assert person.post("/record/begin", json=asked).status_code == 200
    page = person.get("/record/").text
    assert hostile not in page
    assert "&lt;/div&gt;&lt;script&gt;" in page
