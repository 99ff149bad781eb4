"""A shop on disk becomes a site."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import jsonschema
import pytest
from filelock import FileLock

from capture.errors import ShopError, SpokeshaveError
from capture.files import write_atomic
from capture.shop import Shop
from extract.record import Record
from publish import UnsettledError, publish_shop
from publish.errors import PublishBusyError
from tests.publish.conftest import add_session
from tests.publish.likeness import picture


def digest(folder: Path) -> dict[str, str]:
    files = (path for path in sorted(folder.rglob("*")) if path.is_file())
    return {str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def settle(shop: Shop) -> None:
    """Take every finding out of the sessions' records."""
    for session in shop.sessions():
        record = Record.model_validate_json(session.record_file.read_bytes())
        write_atomic(session.record_file, record.model_copy(update={"findings": ()}).to_json())


def test_a_shop_becomes_a_site(shop: Shop) -> None:
    published = publish_shop(shop)
    (session,) = shop.sessions()
    home = shop.public / "sessions" / session.slug
    assert published.front == shop.public / "index.html"
    assert published.pages == (home / "index.html",)
    assert {path.name for path in home.iterdir()} == {
        "index.html", "record.json", "captions.vtt", "chapters.vtt", "transcript.txt", "transcript.json",
        "card.html", "heron bridge #1.webm", "corrections.vtt", "beneath-the-film.txt", "errata-still-1.svg",
        "errata-still-2.svg",
    }  # fmt: skip
    assert {path.name for path in (shop.public / "assets").iterdir()} == {
        "mark.svg",
        "search",
        "card.css",
        "notes.css",
        "print.css",
        "player.js",
    }


def test_the_same_shop_gives_the_same_bytes(shop: Shop) -> None:
    publish_shop(shop)
    before = digest(shop.public)
    publish_shop(shop)
    assert digest(shop.public) == before


def test_the_published_record_is_valid_by_the_published_schema(shop: Shop) -> None:
    published = publish_shop(shop)
    schema = json.loads((shop.public / "schema" / "spokeshave-record-1.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["$id"] == "https://notes.example/coppice/schema/spokeshave-record-1.json"
    record = json.loads((published.pages[0].parent / "record.json").read_text())
    jsonschema.Draft202012Validator(schema).validate(record)
    record["measures"][0]["phase"] = "as_hoped"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft202012Validator(schema).validate(record)


def test_what_a_person_wrote_in_session_toml_counts(shop: Shop) -> None:
    (session,) = shop.sessions()
    toml = session.folder / "session.toml"
    toml.write_text(toml.read_text().replace("The Heron: a lifting bridge", "Heron, reglued"))
    page = publish_shop(shop).pages[0]
    assert "<h1>Heron, reglued</h1>" in page.read_text()
    assert json.loads((page.parent / "record.json").read_text())["session"]["title"] == "Heron, reglued"


def test_a_broken_record_is_one_line_and_harms_no_other_session(shop: Shop) -> None:
    broken = add_session(shop, title="Broken")
    broken.record_file.write_text('{"schema": "spokeshave-record/1", "measures": [')
    published = publish_shop(shop)
    assert len(published.pages) == 1
    (line,) = [one for one in published.warnings if "record.json" in one]
    assert str(broken.record_file) in line
    assert "spokeshave writeup" in line
    assert "\n" not in line


@pytest.mark.parametrize("name", ["transcript.json", "session.toml", "notes.md"])
def test_any_broken_file_is_told_by_its_name(shop: Shop, name: str) -> None:
    broken = add_session(shop, title="Broken")
    (broken.folder / name).write_bytes(b"\xff\xfe[[[")
    published = publish_shop(shop)
    assert len(published.pages) == 1
    assert [one for one in published.warnings if name in one]


def test_a_session_not_written_up_yet_is_told(shop: Shop) -> None:
    waiting = add_session(shop, title="Waiting")
    waiting.record_file.unlink()
    assert [one for one in publish_shop(shop).warnings if "is not there yet" in one]


def test_unsettled_statements_are_warned_of(shop: Shop) -> None:
    assert [one for one in publish_shop(shop).warnings if "not proofed: 2 statements to settle" in one]


def test_strict_refuses_unsettled_statements_and_writes_nothing(shop: Shop) -> None:
    with pytest.raises(UnsettledError, match="2 statements to settle") as caught:
        publish_shop(shop, strict=True)
    assert isinstance(caught.value, SpokeshaveError)
    assert not shop.public.exists()


def test_strict_passes_once_all_is_settled(shop: Shop) -> None:
    settle(shop)
    assert publish_shop(shop, strict=True).pages


def test_strict_refuses_a_session_that_cannot_be_read(shop: Shop) -> None:
    settle(shop)
    add_session(shop, title="Broken").record_file.write_text("{}")
    with pytest.raises(UnsettledError, match="is no record"):
        publish_shop(shop, strict=True)


def test_a_broken_shop_toml_leaves_the_last_site(shop: Shop) -> None:
    publish_shop(shop)
    before = digest(shop.public)
    shop.settings_file.write_text("title = [")
    with pytest.raises(ShopError):
        publish_shop(shop)
    assert digest(shop.public) == before


def test_two_at_once_are_told_apart(shop: Shop) -> None:
    with FileLock(shop.root / ".publish.lock"), pytest.raises(PublishBusyError, match="another spokeshave"):
        publish_shop(shop)


def test_pictures_of_the_note_stand_beside_the_page(shop: Shop) -> None:
    (session,) = shop.sessions()
    picture(session.folder / "stills" / "crack.png")
    (session.folder / "notes.md").write_text("![The crack](stills/crack.png)\n\n![gone](stills/gone.png)")
    published = publish_shop(shop)
    assert (published.pages[0].parent / "pictures" / "stills-crack.png").is_file()
    assert [one for one in published.warnings if "gone.png" in one]


def test_a_recording_with_the_name_of_one_of_our_files_is_renamed(shop: Shop, film: Path, tmp_path: Path) -> None:
    odd = tmp_path / "Index.html"
    odd.write_bytes(film.read_bytes())
    session = add_session(shop, odd, title="Odd")
    publish_shop(shop)
    assert (shop.public / "sessions" / session.slug / "recording-Index.html").is_file()


def test_a_caption_file_is_no_recording(shop: Shop, tmp_path: Path) -> None:
    narration = tmp_path / "narration.vtt"
    narration.write_text("WEBVTT\n")
    session = add_session(shop, narration, title="From captions")
    published = publish_shop(shop)
    html = (shop.public / "sessions" / session.slug / "index.html").read_text()
    assert "<video" not in html
    assert not [one for one in published.warnings if "recording" in one]


def test_a_recording_that_is_gone_is_told(shop: Shop, tmp_path: Path) -> None:
    add_session(shop, tmp_path / "gone.mp4", title="Gone")
    assert [one for one in publish_shop(shop).warnings if "has no player" in one]


def test_a_record_of_another_hearing_is_told(shop: Shop) -> None:
    (session,) = shop.sessions()
    transcript = session.transcript()
    assert transcript is not None
    write_atomic(session.transcript_file, transcript.model_copy(update={"cues": transcript.cues[:3]}).to_json())
    published = publish_shop(shop)
    assert [one for one in published.warnings if "not of one hearing" in one]
    assert published.pages


def test_an_empty_shop_has_a_front_page(tmp_path: Path) -> None:
    published = publish_shop(Shop.open_or_create(tmp_path / "shop"))
    assert published.pages == ()
    assert "No sessions yet." in published.front.read_text()


def test_no_link_of_the_site_leads_nowhere(shop: Shop) -> None:
    from tests.publish.test_render import ids, links, parse

    add_session(shop, title="Another look at the Heron")
    published = publish_shop(shop)
    for page in (published.front, *published.pages):
        for link in links(parse(page.read_text())):
            path, _, fragment = link.partition("#")
            target = (page.parent / _unquoted(path)).resolve() if path else page
            assert target.is_file(), f"{page}: {link}"
            if fragment and not fragment.startswith("t=") and target.suffix == ".html":
                assert fragment in ids(parse(target.read_text())), f"{page}: {link}"


def _unquoted(path: str) -> str:
    from urllib.parse import unquote

    return unquote(path)
