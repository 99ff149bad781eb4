"""What is saved: nothing is made that stands, and a store that can't help does no harm."""

from __future__ import annotations

import os
import sqlite3
import time
from pathlib import Path

import pytest

from capture.archive import export_shop
from capture.shop import Shop
from publish import publish_shop
from publish.presswork import reading, stamps, sums
from publish.presswork.store import FILE
from tests.publish.library.sessions import shop_of_sessions
from tests.publish.presswork.test_editions import set_line
from tests.publish.test_site import digest


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    made = shop_of_sessions(tmp_path)
    publish_shop(made)
    return made


def test_nothing_is_made_where_nothing_changed(shop: Shop) -> None:
    assert publish_shop(shop).anew == 0


def test_times_of_change_alone_make_nothing_anew(shop: Shop) -> None:
    before = digest(shop.public)
    for path in [*shop.public.rglob("*"), *shop.root.joinpath("sessions").rglob("*")]:
        os.utime(path, (1_000_000_000, 1_000_000_000))
    assert publish_shop(shop).anew == 0
    assert digest(shop.public) == before


def test_a_change_that_keeps_size_and_time_is_seen(shop: Shop) -> None:
    path = shop.sessions()[2].folder / "session.toml"
    seen = path.stat()
    path.write_text(path.read_text().replace("A ukulele's action", "A ukulele's nut, 1"))
    os.utime(path, ns=(seen.st_atime_ns, seen.st_mtime_ns))
    assert path.stat().st_size == seen.st_size
    publish_shop(shop)
    assert "A ukulele&#39;s nut, 1" in (shop.public / "index.html").read_text()


def test_what_nobody_touched_is_not_read(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(stamps, "COARSEST", -1_000_000_000)
    publish_shop(shop)
    monkeypatch.setattr(reading, "session_sum", lambda *_: pytest.fail("read again"))
    assert publish_shop(shop).anew == 0


def test_a_file_written_a_moment_ago_has_no_stamp(tmp_path: Path) -> None:
    (tmp_path / "lock").touch()
    session = tmp_path / "session"
    session.mkdir()
    (session / "record.json").write_text("{}")
    assert stamps.Clock(tmp_path / "lock").stamp(session, "") == ""


def test_a_stamp_changes_with_what_is_written_at_the_same_size_and_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(stamps, "COARSEST", -1_000_000_000)
    (tmp_path / "lock").touch()
    session = tmp_path / "session"
    session.mkdir()
    path = session / "record.json"
    path.write_text("one")
    clock, seen = stamps.Clock(tmp_path / "lock"), path.stat()
    before = clock.stamp(session, "film.webm")
    assert before
    assert before == clock.stamp(session, "film.webm")
    time.sleep(0.05)
    path.write_text("two")
    os.utime(path, ns=(seen.st_atime_ns, seen.st_mtime_ns))
    assert clock.stamp(session, "film.webm") != before


def test_one_session_of_another_work_leaves_the_others_pages_alone(shop: Shop) -> None:
    first = shop.public / "sessions" / shop.sessions()[0].slug / "index.html"
    before = first.stat().st_ino
    set_line(shop.sessions()[2], "title", "The ukulele")
    assert publish_shop(shop).anew > 0
    assert first.stat().st_ino == before


def test_a_new_title_reaches_the_pages_of_its_fellows(shop: Shop) -> None:
    set_line(shop.sessions()[3], "title", "Renamed at last")
    publish_shop(shop)
    for name in (f"sessions/{shop.sessions()[0].slug}/index.html", "index.html", "figures/action-strings.html"):
        assert "Renamed at last" in (shop.public / name).read_text(), name


def test_another_program_makes_everything_anew(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    everything = sum(path.is_file() for path in shop.public.rglob("*")) - len(list(shop.public.rglob("*.webm")))
    monkeypatch.setattr(sums, "program", lambda: "another")
    assert publish_shop(shop).anew == everything


@pytest.mark.parametrize("content", [b"", b"no database at all", b"SQLite format 3\x00" + bytes(5000)])
def test_a_file_that_is_no_store_is_thrown_away(shop: Shop, content: bytes) -> None:
    before = digest(shop.public)
    (shop.root / FILE).write_bytes(content)
    publish_shop(shop)
    assert digest(shop.public) == before
    assert publish_shop(shop).anew == 0


def test_a_row_that_was_changed_is_not_believed(shop: Shop) -> None:
    before = digest(shop.public)
    connection = sqlite3.connect(shop.root / FILE)
    connection.execute("UPDATE part SET data = replace(data, 'Heron', 'Stork')")
    connection.execute("UPDATE session SET head = replace(head, 'Heron', 'Stork')")
    connection.commit()
    connection.close()
    set_line(shop.sessions()[2], "title", "The ukulele")
    publish_shop(shop)
    assert not [path for path in shop.public.rglob("*.html") if "Stork" in path.read_text()]
    set_line(shop.sessions()[2], "title", "A ukulele's action")
    publish_shop(shop)
    assert digest(shop.public) == before


def test_where_links_are_impossible_files_are_copied(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    before = digest(shop.public)

    def refuse(*_: object) -> None:
        raise OSError("no links here")

    monkeypatch.setattr(os, "link", refuse)
    assert publish_shop(shop).anew == 0
    assert digest(shop.public) == before


def test_a_publish_that_failed_is_made_up_for_by_the_next(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    set_line(shop.sessions()[0], "title", "Renamed at last")
    from publish import site

    def cut(*_: object) -> None:
        raise RuntimeError("power cut")

    with monkeypatch.context() as patched:
        patched.setattr(site, "print_search", cut)
        with pytest.raises(RuntimeError):
            publish_shop(shop)
    publish_shop(shop)
    assert "Renamed at last" in (shop.public / "index.html").read_text()


def test_an_archive_leaves_the_store_out(shop: Shop, tmp_path: Path) -> None:
    from zipfile import ZipFile

    export_shop(shop, tmp_path / "shop.zip")
    assert not [name for name in ZipFile(tmp_path / "shop.zip").namelist() if FILE in name]
