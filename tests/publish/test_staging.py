"""A site is written beside the last good one and swapped in whole."""

from __future__ import annotations

import errno
import os
import shutil
from pathlib import Path

import pytest

from publish.errors import PublishError, WrittenTwiceError
from publish.staging import staged


@pytest.fixture
def public(tmp_path: Path) -> Path:
    """A site that was published before."""
    folder = tmp_path / "public"
    with staged(folder) as staging:
        staging.write("index.html", "first")
        staging.write("sessions/a/index.html", "a")
    return folder


@pytest.fixture
def no_links(monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that has no hard links, such as exFAT."""

    def refuse(*_: object) -> None:
        raise OSError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr(os, "link", refuse)


def write(public: Path, *names: str, then: BaseException | None = None) -> None:
    """Publish files that say "second", stopped before the swap where `then` is given."""
    with staged(public) as staging:
        for name in names:
            staging.write(name, "second")
        if then is not None:
            raise then


def beside(public: Path) -> set[str]:
    return {path.name for path in public.parent.iterdir()}


def test_the_new_site_takes_the_place_of_the_old(public: Path) -> None:
    write(public, "index.html")
    assert (public / "index.html").read_text() == "second"
    assert not (public / "sessions").exists()
    assert not (public.with_name(".public.old") / "sessions").exists()
    assert beside(public) == {"public", ".public.old"}


@pytest.mark.parametrize("stopped_by", [KeyboardInterrupt, RuntimeError, SystemExit])
def test_an_interrupted_publish_leaves_the_last_good_site(public: Path, stopped_by: type[BaseException]) -> None:
    with pytest.raises(stopped_by):
        write(public, "index.html", then=stopped_by())
    assert (public / "index.html").read_text() == "first"
    assert beside(public) <= {"public", ".public.old"}


def test_a_full_disk_is_one_clear_line_and_harms_nothing(public: Path) -> None:
    with pytest.raises(PublishError, match="No space left on device"):
        write(public, "index.html", then=OSError(errno.ENOSPC, "No space left on device"))
    assert (public / "index.html").read_text() == "first"


def test_a_swap_that_fails_half_way_puts_the_old_site_back(public: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    rename = Path.rename

    def fail_at_second(self: Path, target: Path) -> Path:
        if self.name == ".public.new":
            raise OSError(errno.EACCES, "Permission denied")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", fail_at_second)
    with pytest.raises(PublishError):
        write(public, "index.html")
    assert (public / "index.html").read_text() == "first"


def test_a_publish_that_was_killed_between_the_two_renames_is_mended(public: Path) -> None:
    public.with_name(".public.old").rename(public.with_name(".public.new"))
    public.rename(public.with_name(".public.old"))
    with pytest.raises(KeyboardInterrupt):
        write(public, then=KeyboardInterrupt())
    assert (public / "index.html").read_text() == "first"


def contents(folder: Path) -> dict[str, int]:
    """Every file by name, with its number on the disk."""
    return {str(path.relative_to(folder)): path.stat().st_ino for path in folder.rglob("*") if path.is_file()}


def test_the_spare_is_the_site_file_for_file(public: Path, tmp_path: Path) -> None:
    spare = public.with_name(".public.old")
    assert contents(spare) == contents(public)
    film = tmp_path / "film.mp4"
    film.write_bytes(b"film")
    with staged(public) as staging:
        staging.write("index.html", "second")
        staging.keep("sessions/a/index.html")
        staging.place("sessions/b/film.mp4", film)
    assert contents(spare) == contents(public)
    with staged(public) as staging:
        staging.keep("index.html")
        staging.write("sessions/b/film.mp4/page.html", "a folder where a file was")
        staging.write("sessions/a", "a file where a folder was")
    assert contents(spare) == contents(public)
    assert contents(public).keys() == {"index.html", "sessions/a", "sessions/b/film.mp4/page.html"}


def test_what_stays_is_not_touched(public: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "link", lambda *_: pytest.fail("linked again"))
    with staged(public) as staging:
        for name in ("index.html", "sessions/a/index.html"):
            staging.keep(name)
    assert (public / "index.html").read_text() == "first"


def test_a_spare_that_is_not_the_site_does_no_harm(public: Path) -> None:
    spare = public.with_name(".public.old")
    (spare / "index.html").unlink()
    (spare / "index.html").write_text("torn")
    shutil.rmtree(spare / "sessions")
    (spare / "kit").mkdir()
    (spare / "kit" / "index.html").write_text("left behind")
    with staged(public) as staging:
        for name in ("index.html", "sessions/a/index.html"):
            staging.keep(name)
    assert (public / "index.html").read_text() == "first"
    assert contents(spare) == contents(public)
    assert contents(public).keys() == {"index.html", "sessions/a/index.html"}


def test_another_spelling_of_a_name_takes_its_place(public: Path) -> None:
    write(public, "INDEX.html")
    assert contents(public).keys() == {"INDEX.html"}


def test_what_a_person_put_at_the_top_is_kept(public: Path) -> None:
    (public / "CNAME").write_text("notes.example")
    (public / ".git").mkdir()
    write(public, "index.html")
    assert (public / "CNAME").read_text() == "notes.example"
    assert (public / ".git").is_dir()


@pytest.mark.parametrize("again", ["index.html", "INDEX.html"])
def test_no_file_is_written_twice(public: Path, again: str) -> None:
    with pytest.raises(WrittenTwiceError):
        write(public, "index.html", again)
    assert (public / "index.html").read_text() == "first"


def test_a_recording_is_linked_not_copied(public: Path, tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    film.write_bytes(b"film")
    with staged(public) as staging:
        staging.place("sessions/a/film.mp4", film)
    assert (public / "sessions/a/film.mp4").samefile(film)


def test_a_recording_behind_a_link_is_put_there_itself(public: Path, tmp_path: Path) -> None:
    (tmp_path / "film.mp4").write_bytes(b"film")
    (tmp_path / "shortcut.mp4").symlink_to(tmp_path / "film.mp4")
    with staged(public) as staging:
        staging.place("film.mp4", tmp_path / "shortcut.mp4")
    assert not (public / "film.mp4").is_symlink()
    assert (public / "film.mp4").read_bytes() == b"film"


@pytest.mark.usefixtures("no_links")
def test_where_links_are_impossible_an_unchanged_copy_is_kept(
    public: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    film = tmp_path / "film.mp4"
    film.write_bytes(b"film")
    with staged(public) as staging:
        staging.place("film.mp4", film)
    copied = (public / "film.mp4").stat().st_ino
    monkeypatch.setattr(shutil, "copy2", lambda *_: pytest.fail("copied again"))
    with staged(public) as staging:
        staging.place("film.mp4", film)
    assert (public / "film.mp4").stat().st_ino == copied


@pytest.mark.usefixtures("no_links")
def test_where_links_are_impossible_a_changed_recording_is_copied_again(public: Path, tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    for content in (b"first", b"the second"):
        film.write_bytes(content)
        with staged(public) as staging:
            staging.place("film.mp4", film)
        assert (public / "film.mp4").read_bytes() == content
