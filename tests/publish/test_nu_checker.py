"""Every kind of page under the Nu HTML checker, the reference for the HTML standard (https://validator.github.io/validator/).

`tests/check` installs Java and fetches the checker; without them these tests fail rather than pass over.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from collections.abc import Iterable
from pathlib import Path

import pytest

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from publish import publish_shop
from tests.publish.golden import FOLDER as GOLDEN
from tests.publish.hostile import HOSTILE, hostile_shop, hostile_source
from tests.publish.library.sessions import shop_of_sessions

TESTS = Path(__file__).parents[1]
CACHE = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "spokeshave-tests"
JAR = CACHE / f"vnu-jar-{(TESTS / 'vnu-jar.version').read_text().strip()}" / "vnu.jar"


def complaints(places: Iterable[Path]) -> list[str]:
    """What the checker says of all pages in these places, errors and warnings; one start of Java for all of them."""
    java = shutil.which("java")
    assert java is not None, "Java is missing; tests/check installs it"
    assert JAR.is_file(), f"{JAR} is missing; tests/check fetches it"
    command = [java, "-Xss8m", "-jar", str(JAR), "--skip-non-html", "--format", "json", *map(str, places)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=300, check=False)
    messages = json.loads(done.stderr.splitlines()[-1])["messages"]
    return [f"{one['url']}:{one.get('lastLine')}: {one['type']}: {one['message']}" for one in messages]


def hostile_site(folder: Path, text: str) -> Path:
    """The site of a shop in which every text is hostile, with two sessions on one work."""
    shop = Shop.open_or_create(folder / "shop", hostile_shop(text).model_copy(update={"site_address": ""}))
    one = hostile_source(text)
    assert one.transcript is not None
    for day in ("2031-05-14", "2032-05-14"):
        facts = {"title": f"{text}A title", "subject": f"{text}A subject", "date": day, "trade": text}
        session = shop.add_session(SessionSettings.model_validate(facts))
        write_atomic(session.record_file, one.record.to_json())
        write_atomic(session.transcript_file, one.transcript.to_json())
        (session.folder / "notes.md").write_text(f"# {text}\n\n{text}\n", encoding="utf-8")
    return publish_shop(shop).front.parent


def test_no_page_has_an_error_or_a_warning(tmp_path: Path) -> None:
    honest = publish_shop(shop_of_sessions(tmp_path)).front.parent
    hostile = [hostile_site(tmp_path / str(number), text) for number, text in enumerate(HOSTILE)]
    assert len(list(hostile[0].rglob("*.html"))) > 8
    assert complaints([GOLDEN, honest, *hostile]) == []


@pytest.mark.parametrize(
    ("body", "told"),
    [
        ("<p id=a><p id=a>", "Duplicate ID"),
        ("<img src=a.png>", "alt"),
        ("<ul><p>no entry</ul>", "not allowed as child"),
    ],
)
def test_an_error_would_be_told(tmp_path: Path, body: str, told: str) -> None:
    page = f"<!DOCTYPE html><html lang=en><head><title>a</title></head><body>{body}</body></html>"
    (tmp_path / "a.html").write_text(page, encoding="utf-8")
    assert any(told in one for one in complaints([tmp_path]))
