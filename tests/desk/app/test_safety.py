"""Each rule of safety by itself: loopback name, key, own pages, bounds, headers, closed list of files."""

from __future__ import annotations

import http.client

import pytest
from starlette.testclient import TestClient

from desk.app.safety.entrance import new_key
from desk.app.safety.headers import content_policy
from tests.desk.app.conftest import KEY, OWN, PORT


@pytest.mark.parametrize(
    "host",
    ["evil.example", f"evil.example:{PORT}", "127.0.0.1", "127.0.0.1:80", f"127.0.0.1.evil.example:{PORT}", ""],
)
def test_a_name_that_was_led_to_this_machine_is_refused(person: TestClient, host: str) -> None:
    # DNS rebinding: the browser sends the name it was given, not the address it was led to.
    assert person.get("/vice/", headers={"host": host}).status_code == 421


def test_the_loopback_names_are_answered(person: TestClient) -> None:
    assert person.get("/vice/", headers={"host": f"127.0.0.1:{PORT}"}).text == "inside"


def test_without_the_key_nothing_opens(stranger: TestClient) -> None:
    for path in ("/", "/vice/", "/vice/assets/vice.css", "/assets/notes.css", "/nowhere"):
        assert stranger.get(path).status_code == 403
        assert stranger.get(f"{path}?key=").status_code == 403
        assert stranger.get(f"{path}?key={KEY[:-1]}x").status_code == 403
    assert stranger.post("/vice/write", content=b"1", headers=OWN).status_code == 403


def test_the_key_opens_once_and_leaves_the_address(stranger: TestClient) -> None:
    answer = stranger.get(f"/vice/?key={KEY}&at=3")
    assert (answer.status_code, answer.headers["location"]) == (303, "/vice/?at=3")
    cookie = answer.headers["set-cookie"].lower()
    assert all(word in cookie for word in ("httponly", "samesite=strict", "path=/", f"spokeshave-{PORT}="))
    assert stranger.get("/vice/").text == "inside"


@pytest.mark.parametrize("path", ["//evil.example/", "/\\evil.example/", "///evil.example"])
def test_the_key_leads_nowhere_else(stranger: TestClient, path: str) -> None:
    answer = stranger.get(f"http://127.0.0.1:{PORT}{path}?key={KEY}")
    assert not answer.headers.get("location", "/").startswith(("//", "/\\", "http"))


def test_a_key_can_not_be_guessed() -> None:
    # OWASP Session Management: at least 64 bits of entropy; 43 characters of base64 carry 256.
    assert len({new_key() for _ in range(100)}) == 100
    assert len(new_key()) == 43


@pytest.mark.parametrize("cookie", ["spokeshave-8137", "spokeshave-8137=", "=;;=", 'spokeshave-8137="\\777', "a=b\x7f"])
def test_a_broken_cookie_is_no_key(stranger: TestClient, cookie: str) -> None:
    assert stranger.get("/vice/", headers={"cookie": cookie}).status_code == 403


@pytest.mark.parametrize(
    ("lacking", "headers"),
    [
        ("our header", {"origin": OWN["origin"]}),
        ("an origin", {"spokeshave-page": "1"}),
        ("our origin", {**OWN, "origin": "http://evil.example"}),
        ("our port", {**OWN, "origin": f"http://127.0.0.1:{PORT + 1}"}),
        ("an origin that is one", {**OWN, "origin": "null"}),
        ("our site", {**OWN, "sec-fetch-site": "cross-site"}),
        ("our very origin", {**OWN, "sec-fetch-site": "same-site"}),
    ],
)
def test_a_change_that_another_site_asks_for_is_refused(
    person: TestClient, lacking: str, headers: dict[str, str]
) -> None:
    assert person.post("/vice/write", content=b"1", headers=headers).status_code == 403, lacking


def test_a_change_that_our_page_asks_for_is_made(person: TestClient) -> None:
    assert person.post("/vice/write", content=b"123", headers=OWN).json() == {"bytes": 3}
    headers = {**OWN, "sec-fetch-site": "same-origin"}
    assert person.post("/vice/write", content=b"123", headers=headers).json() == {"bytes": 3}


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_another_site_can_not_read_through_a_picture_or_a_script(person: TestClient, site: str) -> None:
    for kind in ("image", "script", "video", "iframe", "empty"):
        headers = {"sec-fetch-site": site, "sec-fetch-dest": kind}
        assert person.get("/vice/", headers=headers).status_code == 403


def test_nothing_is_shared_with_other_origins(person: TestClient) -> None:
    answer = person.options("/vice/write", headers={"origin": "http://evil.example"})
    assert answer.status_code == 403
    assert not [name for name in answer.headers if name.startswith("access-control-")]


def test_a_body_is_bounded(person: TestClient) -> None:
    assert person.post("/vice/write", content=b"x" * 1000, headers=OWN).json() == {"bytes": 1000}
    assert person.post("/vice/write", content=b"x" * 1001, headers=OWN).status_code == 413
    pieces = (b"x" * 400 for _ in range(5))  # without a declared length
    assert person.post("/vice/write", content=pieces, headers=OWN).status_code == 413
    lied = {**OWN, "content-length": "-1"}
    assert person.post("/vice/write", content=b"x", headers=lied).status_code == 413


def test_every_answer_carries_the_headers(person: TestClient) -> None:
    refused = {"host": "evil.example"}
    for answer in (person.get("/vice/"), person.get("/nowhere"), person.get("/vice/", headers=refused)):
        carried = answer.headers
        assert carried["x-content-type-options"] == "nosniff"
        assert carried["referrer-policy"] == "no-referrer"
        for part in ("opener", "embedder", "resource"):
            assert carried[f"cross-origin-{part}-policy"] in ("same-origin", "require-corp")
        assert carried["cache-control"] == "no-store"
        assert "server" not in carried


def test_the_policy_lets_in_no_inline_script_or_style_and_nothing_from_elsewhere() -> None:
    rules = dict(rule.split(" ", 1) for rule in content_policy(framed=False).split("; "))
    assert rules["default-src"] == "'none'"
    assert rules["script-src"] == rules["style-src"] == "'self'"
    assert rules["frame-ancestors"] == rules["base-uri"] == rules["form-action"] == "'none'"
    assert not any(word in content_policy(framed=True) for word in ("unsafe", "http:", "https:", "data:", "*"))


def test_only_what_a_section_names_may_be_framed(person: TestClient) -> None:
    policy = "content-security-policy"
    assert "frame-ancestors 'self'" in person.get("/vice/galley/page").headers[policy]
    assert "frame-ancestors 'none'" in person.get("/vice/").headers[policy]


def test_only_what_a_section_uses_is_permitted(person: TestClient) -> None:
    permitted = person.get("/vice/").headers["permissions-policy"]
    assert "microphone=(self)" in permitted
    assert "camera=()" in permitted
    assert "microphone=()" in person.get("/assets/notes.css").headers["permissions-policy"]


def test_style_sheets_and_scripts_are_a_closed_list(person: TestClient) -> None:
    assert person.get("/vice/assets/vice.css").headers["content-type"].startswith("text/css")
    known = person.get("/assets/notes.css").headers["etag"]
    assert person.get("/assets/notes.css", headers={"if-none-match": known}).status_code == 304
    for name in ("secret.toml", "..%2Fsecret.toml", "%2e%2e/%2e%2e/etc/passwd", "", ".", "vice.css/"):
        assert person.get(f"/vice/assets/{name}").status_code == 404


def test_what_a_person_can_mend_comes_as_one_line(person: TestClient) -> None:
    answer = person.get("/vice/broken")
    assert (answer.status_code, answer.json()) == (409, {"problem": "shop: can't be read; mend it"})


def test_the_first_address_leads_to_the_first_section(person: TestClient) -> None:
    answer = person.get("/")
    assert (answer.status_code, answer.headers["location"]) == (http.client.SEE_OTHER, "/vice/")
