"""Pieces on their way to the disk: order, repeats, torn writes, a full disk."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from capture.recording import Kind, Take, TakeError, keep_marks, kind_of
from capture.recording.journal import NAME, read_journal

PIECES = [bytes([number]) * (number % 5 + 1) * 700 for number in range(8)]


def written(take: Take) -> bytes:
    return take.file.read_bytes()


def test_a_piece_is_on_the_disk_when_it_is_answered_for(
    tmp_path: Path, sound: Kind, monkeypatch: pytest.MonkeyPatch
) -> None:
    take = Take.begin(tmp_path, sound, port=8137)
    synced: list[int] = []
    monkeypatch.setattr("capture.recording.take.os.fsync", lambda file: synced.append(os.fstat(file).st_size))
    assert take.add(0, b"one", 1.0) == 1
    assert synced[0] == 3, "the piece first, the journal behind it"
    assert written(take) == b"one"
    assert len(synced) == 2
    take.close()


def test_a_piece_that_comes_twice_is_written_once(tmp_path: Path, sound: Kind) -> None:
    take = Take.begin(tmp_path, sound)
    assert [take.add(0, b"one", 1.0), take.add(0, b"one", 1.0), take.add(1, b"two", 2.0)] == [1, 1, 2]
    assert written(take) == b"onetwo"
    take.close()


def test_a_piece_that_comes_too_early_is_asked_for_again(tmp_path: Path, sound: Kind) -> None:
    take = Take.begin(tmp_path, sound)
    assert take.add(1, b"two", 2.0) == 0
    assert [take.add(0, b"one", 1.0), take.add(1, b"two", 2.0)] == [1, 2]
    assert written(take) == b"onetwo"
    take.close()


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    sent=st.lists(st.integers(0, 7), max_size=40),
    killed=st.sets(st.integers(0, 39)),
    torn=st.binary(max_size=40),
)
def test_whatever_comes_in_whatever_order_the_file_is_a_beginning_of_the_recording(
    tmp_path_factory: pytest.TempPathFactory, sent: list[int], killed: set[int], torn: bytes
) -> None:
    folder = tmp_path_factory.mktemp("take")
    kind = kind_of("audio/webm")
    assert kind is not None
    take = Take.begin(folder, kind)
    wanted = 0
    for at, number in enumerate(sent):
        before = wanted
        wanted = take.add(number, PIECES[number], float(number + 1))
        assert wanted == before + (number == before)
        assert written(take) == b"".join(PIECES[:wanted])
        if at in killed:
            # The process ends without a word, in the middle of the next piece.
            take.close()
            with take.file.open("ab") as file:
                file.write(torn)
            with (folder / NAME).open("ab") as file:
                file.write(b'{"piece": ' + torn.replace(b"\n", b""))
            take = Take.resume(folder)
            assert take.next == wanted
    assert written(take) == b"".join(PIECES[:wanted])
    take.close()


@pytest.mark.parametrize("after", [0, 1, 700, 1400], ids=lambda size: f"{size} bytes of it fit")
def test_on_a_full_disk_the_piece_may_come_again(
    tmp_path: Path, sound: Kind, monkeypatch: pytest.MonkeyPatch, after: int
) -> None:
    take = Take.begin(tmp_path, sound)
    take.add(0, b"one", 1.0)
    really = os.write

    def full(file: int, content: bytes) -> int:
        if after and os.fstat(file).st_size <= 3:
            return really(file, bytes(content[:after]))
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as disk:
        disk.setattr("capture.recording.journal.os.write", full)
        with pytest.raises(TakeError, match="the disk is full; make room on it"):
            take.add(1, b"2" * 1400, 2.0)
    assert written(take) == b"one"
    assert take.add(1, b"two", 2.0) == 2
    assert written(take) == b"onetwo"
    take.close()


def test_the_journal_tells_how_far_it_reaches(tmp_path: Path, sound: Kind) -> None:
    take = Take.begin(tmp_path, sound, port=8137)
    take.add(0, b"one", 1.01)
    take.add(1, b"two", 2.02)
    take.close()
    journal = read_journal(tmp_path)
    assert journal is not None
    assert (journal.header.file, journal.header.port) == ("recording.weba", 8137)
    assert (journal.pieces, journal.end, journal.second, journal.ended) == (2, 6, 2.02, False)


def test_an_ended_recording_takes_nothing_more(tmp_path: Path, sound: Kind) -> None:
    take = Take.begin(tmp_path, sound)
    take.add(0, b"one", 1.0)
    take.end(1.2)
    take.close()
    with pytest.raises(TakeError, match="its recording was ended"):
        Take.resume(tmp_path)


def test_a_folder_without_a_recording_can_not_be_gone_on_with(tmp_path: Path) -> None:
    with pytest.raises(TakeError):
        Take.resume(tmp_path)


def test_a_folder_that_refuses_is_told_in_one_line(tmp_path: Path, sound: Kind) -> None:
    with pytest.raises(TakeError, match=r"can't be written \(No such file or directory\)"):
        Take.begin(tmp_path / "gone", sound)


def test_marks_lie_beside_it_and_harm_nothing(tmp_path: Path, sound: Kind) -> None:
    take = Take.begin(tmp_path, sound)
    keep_marks(tmp_path, ())
    assert take.add(0, b"one", 1.0) == 1
    take.close()
