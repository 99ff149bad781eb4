"""A recording becomes whole without a packet of it changed; ffmpeg's own sums of every packet are the outside judge."""

from __future__ import annotations

import random
from pathlib import Path

import av
import pytest

from capture.media import probe
from capture.recording import Kind, Take, came_to_nothing, copying, finish
from capture.recording.journal import NAME
from capture.recording.room import KEPT_FREE
from tests.capture.recording.conftest import SECONDS, packets


def recorded(folder: Path, kind: Kind, content: bytes, *, ended: bool = True) -> Path:
    """A recording in pieces of a few kilobytes, as it lies on the disk."""
    take = Take.begin(folder, kind)
    for number, at in enumerate(range(0, len(content), 4096)):
        take.add(number, content[at : at + 4096], at / len(content) * SECONDS)
    if ended:
        take.end(float(SECONDS))
    take.close()
    return take.file


def declared(path: Path) -> float | None:
    with av.open(str(path)) as container:
        return None if container.duration is None else container.duration / 1_000_000


@pytest.mark.parametrize("form", ["film", "sound"])
def test_it_gets_a_length_and_an_index_and_keeps_every_packet(
    form: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    file = recorded(tmp_path, request.getfixturevalue(form), request.getfixturevalue(f"live_{form}"))
    before = packets(file)
    assert declared(file) is None, "the browser wrote no length"
    done = finish(tmp_path)
    assert done is not None
    assert (done.file, done.problem) == (file, "")
    assert declared(file) == pytest.approx(SECONDS, abs=0.1)
    assert done.seconds == pytest.approx(SECONDS, abs=0.1)
    assert packets(file) == before
    assert b"\x1c\x53\xbb\x6b" in file.read_bytes(), "Cues, the index of Matroska (RFC 9559, 5.1.5)"
    assert sorted(path.name for path in tmp_path.iterdir()) == [file.name]


def test_a_player_can_seek_in_it(tmp_path: Path, film: Kind, live_film: bytes) -> None:
    file = recorded(tmp_path, film, live_film)
    finish(tmp_path)
    with av.open(str(file)) as container:
        container.seek(8_000_000)
        frame = next(container.decode(video=0))
        assert frame.time is not None
        assert 6 < frame.time <= 8, "the picture before, not the first of the film"


@pytest.mark.parametrize("form", ["film", "sound"])
@pytest.mark.parametrize("seed", range(6))
def test_cut_off_at_any_byte_it_is_readable_up_to_there(
    form: str, seed: int, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    whole: bytes = request.getfixturevalue(f"live_{form}")
    share = random.Random(seed).uniform(0.1, 1)  # noqa: S311
    cut = int(len(whole) * share)
    file = recorded(tmp_path, request.getfixturevalue(form), whole[:cut], ended=False)
    (full := tmp_path / "whole.bin").write_bytes(whole)
    length, every = _length_up_to(full, cut), packets(full)
    full.unlink()
    assert probe(file).duration == pytest.approx(length, abs=0.6), "hearing can read it as it lies there"
    done = finish(tmp_path)
    assert done is not None
    assert done.problem == ""
    assert declared(file) == pytest.approx(length, abs=0.6)
    assert set(packets(file)) <= set(every), "nothing was made up"
    with av.open(str(file)) as container:
        assert sum(1 for _ in container.decode(audio=0)) > 10


def _length_up_to(file: Path, size: int) -> float:
    """The latest second whose packets of both tracks lie before byte `size`."""
    with av.open(str(file)) as container:
        ends: dict[int, float] = {}
        for packet in container.demux():
            if packet.pos is not None and packet.pts is not None and packet.pos + packet.size <= size:
                ends[packet.stream_index] = float((packet.pts + (packet.duration or 0)) * packet.time_base)
        return max(ends.values())


def test_zeros_at_the_end_that_a_power_cut_left_are_no_sound(tmp_path: Path, sound: Kind, live_sound: bytes) -> None:
    file = recorded(tmp_path, sound, live_sound[: len(live_sound) // 2] + bytes(8192), ended=False)
    done = finish(tmp_path)
    assert done is not None
    assert done.problem == ""
    assert declared(file) == pytest.approx(SECONDS / 2, abs=0.7)


def test_without_room_for_a_copy_it_stays_as_it_came_and_the_next_time_tries_again(
    tmp_path: Path, sound: Kind, live_sound: bytes
) -> None:
    file = recorded(tmp_path, sound, live_sound)
    done = finish(tmp_path, lambda _: KEPT_FREE + len(live_sound) - 1)
    assert done is not None
    assert "no room" in done.problem
    assert file.read_bytes() == live_sound
    again = finish(tmp_path)
    assert again is not None
    assert again.problem == ""


def test_a_copy_that_differs_does_not_take_its_place(
    tmp_path: Path, sound: Kind, live_sound: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = recorded(tmp_path, sound, live_sound)

    really = copying._copied

    def one_packet_fewer(source: Path, target: Path, container: str) -> list[copying._Track]:
        tracks = really(source, target, container)
        tracks[0].times.pop()
        return tracks

    monkeypatch.setattr(copying, "_copied", one_packet_fewer)
    done = finish(tmp_path)
    assert done is not None
    assert "differs" in done.problem
    assert file.read_bytes() == live_sound
    assert sorted(path.name for path in tmp_path.iterdir()) == [NAME, file.name]


def test_what_is_no_recording_stays_as_it_came(tmp_path: Path, sound: Kind) -> None:
    file = recorded(tmp_path, sound, b"\x00no webm at all" * 999, ended=False)
    done = finish(tmp_path)
    assert done is not None
    assert done.problem
    assert file.read_bytes() == b"\x00no webm at all" * 999


def test_a_recording_that_is_whole_is_left_alone(tmp_path: Path, sound: Kind, live_sound: bytes) -> None:
    file = recorded(tmp_path, sound, live_sound)
    finish(tmp_path)
    before = file.stat().st_mtime_ns
    assert finish(tmp_path) is None
    assert file.stat().st_mtime_ns == before


def test_nothing_comes_of_nothing(tmp_path: Path, sound: Kind) -> None:
    recorded(tmp_path, sound, b"", ended=False)
    assert came_to_nothing(tmp_path)
    assert finish(tmp_path) is None


def test_a_folder_with_another_recording_did_not_come_to_nothing(tmp_path: Path) -> None:
    assert not came_to_nothing(tmp_path)
