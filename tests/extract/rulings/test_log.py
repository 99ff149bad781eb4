"""The log: added to, never rewritten, and readable whatever happened to it."""

from __future__ import annotations

import errno
import json
import os
import stat
from pathlib import Path

import pytest

from extract.rulings import RulingError, RulingLog, RulingLogError, note, stet, strike, undo
from tests.extract.rulings.bench import hand, proof


@pytest.fixture
def log(tmp_path: Path) -> RulingLog:
    return RulingLog(tmp_path / "rulings.json")


def test_a_log_that_is_not_there_holds_nothing(log: RulingLog) -> None:
    read = log.read()
    assert (read.rulings, read.aside) == ((), ())


def test_what_was_appended_is_read_in_order(log: RulingLog) -> None:
    first, second = stet(proof(), "m-0", hand(1)), strike(proof(), "m-1", hand(2))
    log.append(first)
    log.append(second)
    log.append(undo(proof(first, second), first.id, hand(3)))
    assert [one.act for one in log.read().rulings] == ["stet", "strike", "undo"]
    assert log.read().rulings[:2] == (first, second)


def test_each_line_says_its_format_who_and_when_in_utc(log: RulingLog) -> None:
    log.append(stet(proof(), "m-0", hand(1)))
    line = json.loads(log.path.read_text(encoding="utf-8"))
    assert line["format"] == "spokeshave-ruling/1"
    assert line["by"].startswith("Ada")
    assert line["at"].endswith("Z")


def test_a_ruling_is_on_disk_before_append_returns(log: RulingLog, monkeypatch: pytest.MonkeyPatch) -> None:
    synced: list[tuple[bool, int]] = []
    really = os.fsync

    def fsync(descriptor: int) -> None:
        found = os.fstat(descriptor)
        synced.append((stat.S_ISDIR(found.st_mode), found.st_size))
        really(descriptor)

    monkeypatch.setattr(os, "fsync", fsync)
    log.append(stet(proof(), "m-0", hand(1)))
    first = log.path.stat().st_size
    assert (False, first) in synced
    assert any(folder for folder, _ in synced), "the new file's name in its folder"
    synced.clear()
    log.append(stet(proof(), "m-1", hand(2)))
    assert [(False, log.path.stat().st_size)] == synced


def test_a_full_disk_is_told_and_the_next_ruling_goes_in(log: RulingLog, monkeypatch: pytest.MonkeyPatch) -> None:
    first = log.append(stet(proof(), "m-0", hand(1)))
    really = os.write

    def write(descriptor: int, data: bytes) -> int:
        if len(data) < 60:
            raise OSError(errno.ENOSPC, "No space left on device")
        return really(descriptor, data[:60])

    with monkeypatch.context() as full:
        full.setattr(os, "write", write)
        with pytest.raises(RulingLogError, match="No space left on device"):
            log.append(stet(proof(), "m-1", hand(2)))
    third = log.append(stet(proof(), "m-1", hand(2)))
    assert log.read().rulings == (first, third)
    assert len(log.read().aside) == 1


def test_a_ruling_sent_twice_is_kept_once(log: RulingLog) -> None:
    given = log.append(stet(proof(), "m-0", hand(1)))
    again = log.append(stet(proof(), "m-0", hand(1)))  # given later, with the same id
    assert again == given
    assert len(log.read().rulings) == 1


def test_another_ruling_may_not_take_the_same_id(log: RulingLog) -> None:
    log.append(stet(proof(), "m-0", hand(1)))
    with pytest.raises(RulingError, match="has the id ruling-0001 already"):
        log.append(strike(proof(), "m-0", hand(1)))


@pytest.mark.parametrize("left", [1, 20, 100])
def test_a_torn_last_line_costs_no_other(log: RulingLog, left: int) -> None:
    first = log.append(stet(proof(), "m-0", hand(1)))
    whole = log.path.read_bytes()
    log.append(stet(proof(), "m-1", hand(2)))
    log.path.write_bytes(log.path.read_bytes()[: len(whole) + left])
    torn = log.read()
    assert torn.rulings == (first,)
    assert [(one.line, one.why) for one in torn.aside] == [(2, "torn or damaged")]
    third = log.append(stet(proof(), "m-2", hand(3)))
    assert log.read().rulings == (first, third)
    assert log.read().aside == torn.aside


def test_only_the_end_of_the_line_was_lost(log: RulingLog) -> None:
    first = log.append(stet(proof(), "m-0", hand(1)))
    log.path.write_bytes(log.path.read_bytes().rstrip(b"\n"))
    second = log.append(stet(proof(), "m-1", hand(2)))
    assert log.read().rulings == (first, second)
    assert not log.read().aside


def test_lines_of_another_version_or_of_no_sense_are_set_aside(log: RulingLog) -> None:
    ours = stet(proof(), "m-0", hand(1))
    newer = {**json.loads(ours.model_dump_json()), "format": "spokeshave-ruling/9", "id": "ruling-0009"}
    log.path.write_bytes(json.dumps(newer).encode() + b'\n\xff\xfe\n{"act": "stet"}\n')
    log.append(ours)
    read = log.read()
    assert read.rulings == (ours,)
    assert [one.why.split(":")[0] for one in read.aside] == ["of another version", "torn or damaged", "no ruling"]


def test_a_folder_that_is_gone_is_told_in_a_line(log: RulingLog, tmp_path: Path) -> None:
    with pytest.raises(RulingLogError, match="folder is gone"):
        RulingLog(tmp_path / "gone" / "rulings.json").append(stet(proof(), "m-0", hand(1)))


def test_an_empty_note_is_refused() -> None:
    with pytest.raises(RulingError, match="the note is empty"):
        note(proof(), "m-0", "  ", hand(1))
