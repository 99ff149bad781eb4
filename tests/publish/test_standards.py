"""What the site hands to other programs, read by programs of others: feeds, linked data, captions and chapters."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import html5lib
import jsonschema
import pytest
import webvtt
from lxml import etree
from playwright.sync_api import Browser
from pyld import jsonld

from capture.shop import Shop
from publish import publish_shop
from publish.captions import captions, chapters
from publish.page import make_page
from publish.render import Renderer
from tests.publish.hostile import HOSTILE, hostile_shop, hostile_source
from tests.publish.library.sessions import shop_of_sessions
from tests.publish.session import SHOP, source

ATOM = etree.RelaxNG(etree.parse(str(Path(__file__).parent / "atom.rng")))


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    made = shop_of_sessions(tmp_path_factory.mktemp("standards"))
    publish_shop(made)
    return made


@pytest.mark.parametrize("name", ["notes.atom", "errata.atom"])
def test_feeds_of_the_site_are_feeds_by_the_schema(shop: Shop, name: str) -> None:
    ATOM.assertValid(etree.parse(str(shop.public / name)))


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("name", ["notes.atom", "errata.atom"])
def test_hostile_words_leave_a_feed_a_feed(tmp_path: Path, text: str, name: str) -> None:
    shop = shop_of_sessions(tmp_path)
    settings = hostile_shop(text).model_copy(update={"site_address": "https://notes.example/coppice"})
    shop.settings_file.write_text("".join(f"{key} = {json.dumps(one)}\n" for key, one in settings.model_dump().items()))
    publish_shop(shop)
    read = etree.parse(str(shop.public / name))
    ATOM.assertValid(read)
    assert read.findtext("{*}author/{*}name") == text


@pytest.mark.parametrize(
    ("element", "spoilt"),
    [("updated", "yesterday"), ("id", ""), ("link", None), ("title", None), ("author", None)],
)
def test_a_feed_that_lacks_something_would_be_found(shop: Shop, element: str, spoilt: str | None) -> None:
    read = etree.parse(str(shop.public / "notes.atom"))
    for found in list(read.iter(f"{{*}}{element}")):
        if spoilt is None:
            found.getparent().remove(found)
        else:
            found.text = spoilt
    assert not ATOM.validate(read)


# https://schema.org/HowTo, HowToStep, HowToTool, HowToSupply, CorrectionComment and CreativeWork, as of release 29: the
# properties that our pages use, with the ranges that the vocabulary gives them. From memory.
_TEXT, _NAMED = {"type": "string", "minLength": 1}, {"type": "string", "minLength": 1}


def _thing(kind: str, **properties: Any) -> dict[str, Any]:
    named = {"@type": {"const": kind}, **properties}
    return {"type": "object", "properties": named, "required": list(named), "additionalProperties": False}


HOW_TO = {
    "type": "object",
    "properties": {
        "@context": {"const": "https://schema.org"},
        "@type": {"const": "HowTo"},
        "name": _TEXT,
        "about": _TEXT,
        "url": {"type": "string", "format": "uri"},
        "author": _thing("Person", name=_NAMED),
        "dateCreated": {"type": "string", "format": "date"},
        "license": {"type": "string", "pattern": "^https://"},
        "step": {"type": "array", "items": _thing("HowToStep", position={"type": "integer", "minimum": 1}, text=_TEXT)},
        "tool": {"type": "array", "items": _thing("HowToTool", name=_NAMED)},
        "supply": {"type": "array", "items": _thing("HowToSupply", name=_NAMED)},
        "correction": {"type": "array", "items": _thing("CorrectionComment", text=_TEXT)},
    },
    "required": ["@context", "@type", "name"],
    "additionalProperties": False,
}


def linked_data_of(html: str) -> dict[str, Any]:
    tree = html5lib.HTMLParser(namespaceHTMLElements=False).parse(html)
    (script,) = [one for one in tree.iter("script") if one.attrib.get("type") == "application/ld+json"]
    data: dict[str, Any] = json.loads(script.text or "")
    return data


def here(address: str, options: object) -> dict[str, Any]:
    """Stands in for schema.org's context, which may not be asked for: every name is one of its vocabulary."""
    assert address == "https://schema.org"
    context = {"@context": {"@vocab": "https://schema.org/", "url": {"@type": "@id"}, "license": {"@type": "@id"}}}
    return {"contextUrl": None, "documentUrl": address, "document": context}


def test_linked_data_keeps_to_the_vocabulary(html: str) -> None:
    data = linked_data_of(html)
    jsonschema.Draft202012Validator(HOW_TO, format_checker=jsonschema.FormatChecker()).validate(data)
    assert {"step", "tool", "supply", "correction", "author", "url"} <= set(data)


def test_linked_data_is_json_ld_in_which_nothing_is_lost(html: str) -> None:
    data = linked_data_of(html)
    (read,) = jsonld.expand(data, {"documentLoader": here})
    assert read["@type"] == ["https://schema.org/HowTo"]
    for name in set(data) - {"@context", "@type"}:
        told = data[name] if isinstance(data[name], list) else [data[name]]
        assert len(read[f"https://schema.org/{name}"]) == len(told), name
    assert "<https://schema.org/position>" in jsonld.to_rdf(
        data, {"documentLoader": here, "format": "application/n-quads"}
    )


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_stay_words_of_the_linked_data(text: str) -> None:
    page = make_page(hostile_source(text), hostile_shop(text))
    data = linked_data_of(Renderer().session(page))
    jsonschema.Draft202012Validator(HOW_TO).validate(data)
    assert data["name"].startswith(text)


def said_in(text: str) -> list[tuple[float, float, str]]:
    cues = webvtt.from_string(text, strict=True).captions
    return [(seconds(one.start), seconds(one.end), one.raw_text) for one in cues]


def seconds(stamp: str) -> float:
    hours, minutes, rest = stamp.split(":")
    return int(hours) * 3600 + int(minutes) * 60 + float(rest)


@pytest.mark.browser
@pytest.mark.parametrize("name", ["captions", "chapters"])
@pytest.mark.parametrize("text", ["", *HOSTILE])
def test_chromium_and_another_library_read_the_same_cues(
    browser: Browser, tmp_path: Path, name: str, text: str
) -> None:
    one = hostile_source(text) if text else source()
    made = captions(make_page(one, SHOP).spoken) if name == "captions" else chapters(one.record)
    (tmp_path / "track.vtt").write_text(made, encoding="utf-8")
    (tmp_path / "page.html").write_text("<!DOCTYPE html><title>a</title><video></video>")
    window = browser.new_context()
    page = window.new_page()
    # A track loads from the same place alone, which a file from the disk never is: the text is handed over as a blob.
    page.goto((tmp_path / "page.html").as_uri())
    cues = page.evaluate(
        """text => new Promise((done, failed) => {
            const track = document.createElement('track');
            track.src = URL.createObjectURL(new Blob([text], {type: 'text/vtt'}));
            track.onload = () => done(Array.from(track.track.cues, cue => [cue.startTime, cue.endTime, cue.text]));
            track.onerror = () => failed(new Error('no WebVTT'));
            document.querySelector('video').append(track);
            track.track.mode = 'hidden';
        })""",
        made,
    )
    window.close()
    read = said_in(made)
    assert len(cues) == len(read) > 3
    assert [(start, end) for start, end, _ in cues] == [pytest.approx(one[:2], abs=0.0011) for one in read]
    assert [" ".join(told.split()) for _, _, told in cues] == [" ".join(told.split()) for _, _, told in read]


def test_a_session_without_words_has_chapters_all_the_same() -> None:
    assert "WEBVTT" in chapters(replace(source(), transcript=None).record)
