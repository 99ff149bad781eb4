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
    assert beside(public) == {"public"}


@pytest.mark.parametrize("stopped_by", [KeyboardInterrupt, RuntimeError, SystemExit])
def test_an_interrupted_publish_leaves_the_last_good_site(public: Path, stopped_by: type[BaseException]) -> None:
    with pytest.raises(stopped_by):
        write(public, "index.html", then=stopped_by())
    assert (public / "index.html").read_text() == "first"
    assert beside(public) == {"public"}


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
    public.rename(public.with_name(".public.old"))
    (public.with_name(".public.new")).mkdir()
    with pytest.raises(KeyboardInterrupt):
        write(public, then=KeyboardInterrupt())
    assert (public / "index.html").read_text() == "first"


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
