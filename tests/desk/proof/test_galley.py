"""The page as it would be published, with the rulings applied."""

from __future__ import annotations

from pathlib import Path

from starlette.testclient import TestClient

from capture.shop import Session, Shop
from tests.desk.proof.conftest import NUT, SLUG, Asking
from tests.publish.hostile import HOSTILE
from tests.publish.likeness import picture

HOME = f"/proof/galley/sessions/{SLUG}"


def test_it_is_the_page_with_the_rulings_in_it(person: TestClient, asking: Asking) -> None:
    assert "3 statements to settle" in person.get(f"{HOME}/index.html").text
    asking.rule("amend", "m-nut-1", to={"figure": "406 mm"}, because="said_wrong")
    page = person.get(f"{HOME}/index.html").text
    assert "2 statements to settle" in page
    errata = page.split('id="errata"')[1].split("</section>")[0]
    assert "250" in errata
    assert "406" in errata
    for one in asking.state()["queries"]:
        if one["group"] == "settle" and not one["settled"]:
            asking.rule("stet", one["id"])
    asking.rule("pass")
    assert 'class="proof proofed"' in person.get(f"{HOME}/index.html").text


def test_nothing_is_written_for_it(person: TestClient, shop: Shop) -> None:
    before = sorted(shop.root.rglob("*"))
    assert person.get(f"{HOME}/index.html").status_code == 200
    assert sorted(shop.root.rglob("*")) == before


def test_what_stands_beside_it_is_there(person: TestClient, session: Session) -> None:
    picture(session.folder / "jig.png")
    (session.folder / "notes.md").write_text("![The jig](jig.png)")
    for name in ("captions.vtt", "chapters.vtt", "record.json", "transcript.txt", "heron.webm", "pictures/jig.png"):
        assert person.get(f"{HOME}/{name}").status_code == 200, name
    assert person.get("/proof/galley/assets/notes.css").text == person.get("/assets/notes.css").text


def test_only_what_would_be_published_is_served(person: TestClient, tmp_path: Path) -> None:
    for name in ("session.toml", "rulings.json", "..%2fsession.toml", "%2e%2e", "pictures/..%2f..%2fsession.toml"):
        assert person.get(f"{HOME}/{name}").status_code == 404


def test_it_may_stand_in_a_frame_of_ours_and_run_our_script_alone(person: TestClient) -> None:
    policy = person.get(f"{HOME}/index.html").headers["content-security-policy"]
    assert "frame-ancestors 'self'" in policy
    assert "script-src 'self';" in policy


def test_hostile_words_stay_words(person: TestClient, session: Session, asking: Asking) -> None:
    for text in HOSTILE:
        asking.rule("note", NUT, text=text)
        (session.folder / "notes.md").write_text(text)
        page = person.get(f"{HOME}/index.html").text
        assert "<script>window.broken" not in page
        assert "onerror='" not in page.replace("&#39;", "'") or "<img src=x" not in page
