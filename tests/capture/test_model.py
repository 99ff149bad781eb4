"""The model that ships is joined once, checked, and loaded without a network; others load by name or folder."""

from __future__ import annotations

import errno
import hashlib
import os
import socket
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from huggingface_hub.errors import LocalEntryNotFoundError

from capture import model as model_module
from capture import model_files
from capture.errors import ModelError
from capture.model import SpeechModel, load_model
from capture.model_files import SHA256, SIZE, shipped_model
from capture.options import HearingOptions


def said_of(error: ModelError) -> str:
    line = str(error)
    assert "\n" not in line
    assert "; " in line, "a remedy is missing"
    return line


@pytest.fixture
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("SPOKESHAVE_CACHE", str(tmp_path / "cache"))
    return tmp_path / "cache"


def files_under(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.rglob("*") if path.is_file() and path.suffix != ".lock")


@pytest.mark.model
def test_the_joined_model_is_the_one_that_was_published(cache: Path) -> None:
    weights = shipped_model() / "model.bin"
    # The sum is the publisher's, of the whole file.
    with weights.open("rb") as file:
        assert hashlib.file_digest(file, "sha256").hexdigest() == SHA256
    assert weights.stat().st_size == SIZE
    assert weights.is_relative_to(cache)


@pytest.mark.model
def test_joining_is_done_once(cache: Path) -> None:
    before = (shipped_model() / "model.bin").stat()
    assert (shipped_model() / "model.bin").stat() == before


@pytest.mark.model
def test_two_processes_may_join_at_once(own_cache: Path) -> None:
    command = [sys.executable, "-c", "from capture.model_files import shipped_model; print(shipped_model())"]
    running = [subprocess.Popen(command, stdout=subprocess.PIPE, text=True) for _ in range(2)]
    places = {process.communicate(timeout=120)[0] for process in running}
    assert [process.returncode for process in running] == [0, 0]
    assert len(places) == 1
    assert files_under(own_cache) == ["config.json", "model.bin", "tokenizer.json", "vocabulary.json"]


@pytest.fixture
def small_parts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Packages with a few bytes in the place of the weights."""
    parts = tmp_path / "parts"
    parts.mkdir()
    for name in ("model.bin.part1", "model.bin.part2", "config.json", "tokenizer.json", "vocabulary.json"):
        (parts / name).write_bytes(name.encode())
    monkeypatch.setattr(model_files, "_packaged", lambda package, name: parts / name)


@pytest.mark.usefixtures("small_parts")
def test_a_damaged_package_is_refused_and_leaves_no_weights(own_cache: Path) -> None:
    with pytest.raises(ModelError) as caught:
        shipped_model()
    assert "don't have the right checksum" in said_of(caught.value)
    assert "model.bin" not in files_under(own_cache)


@pytest.mark.usefixtures("small_parts")
def test_a_full_disk_is_said_to_be_full(own_cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(ModelError) as caught:
        shipped_model()
    assert "the disk is full under" in said_of(caught.value)
    assert "free 155 MB there" in str(caught.value)
    assert files_under(own_cache) == []


def test_a_cache_that_cannot_be_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").touch()
    monkeypatch.setenv("SPOKESHAVE_CACHE", str(tmp_path / "file" / "cache"))
    with pytest.raises(ModelError) as caught:
        shipped_model()
    assert "can't be written (not a directory); let SPOKESHAVE_CACHE name a folder" in said_of(caught.value)


def test_a_missing_package(own_cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(model_files, "find_spec", lambda _: None)
    with pytest.raises(ModelError) as caught:
        shipped_model()
    assert "install spokeshave again with pip" in said_of(caught.value)


@pytest.mark.usefixtures("small_parts")
def test_what_a_killed_process_left_is_cleared(own_cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    content = b"model.bin.part1model.bin.part2"
    monkeypatch.setattr(model_files, "SHA256", hashlib.sha256(content).hexdigest())
    folder = own_cache / "models" / f"whisper-base-{hashlib.sha256(content).hexdigest()[:12]}"
    folder.mkdir(parents=True)
    (folder / ".model.bin.abc.part").write_bytes(b"half")
    assert (shipped_model() / "model.bin").read_bytes() == content
    assert files_under(own_cache) == ["config.json", "model.bin", "tokenizer.json", "vocabulary.json"]


@pytest.mark.model
def test_loading_needs_no_network(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        pytest.fail("the model that ships reached for the network")

    monkeypatch.setattr(socket, "getaddrinfo", refuse)
    monkeypatch.setattr(socket.socket, "connect", refuse)
    assert load_model().name == "whisper-base, taught measures"


@pytest.mark.model
def test_the_cpu_hears_in_int8(model: SpeechModel) -> None:
    if model.device == "cpu":
        assert model.compute_type == "int8"
    assert model.count_tokens("five sixty-fourths") >= 4


@pytest.mark.model
def test_a_folder_is_loaded_by_its_name(cache: Path) -> None:
    folder = str(shipped_model())
    assert load_model(HearingOptions(model=folder)).name == folder


def refused(name: str) -> str:
    with pytest.raises(ModelError) as caught:
        load_model(HearingOptions(model=name))
    return said_of(caught.value)


def test_a_folder_that_is_not_there() -> None:
    assert "there is no such folder" in refused("/nowhere/model")
    assert "there is no such folder" in refused("./model")


def test_a_folder_without_a_model(tmp_path: Path) -> None:
    assert "the folder holds no model.bin" in refused(str(tmp_path))


def test_a_folder_with_a_broken_model(tmp_path: Path) -> None:
    (tmp_path / "model.bin").write_bytes(b"nothing of the kind")
    assert "it can't be loaded" in refused(str(tmp_path))


def test_a_name_that_faster_whisper_does_not_know() -> None:
    assert "faster-whisper knows no model of that name" in refused("enormous")


def test_a_name_that_cannot_be_fetched(monkeypatch: pytest.MonkeyPatch) -> None:
    def offline(*_: object, **__: object) -> None:
        raise LocalEntryNotFoundError("Cannot find the requested files\nin the local cache")

    monkeypatch.setattr("huggingface_hub.snapshot_download", offline)
    assert "can't be fetched; connect to the internet and try again" in refused("small")


def test_a_gpu_that_cannot_be_used_gives_way_to_the_cpu(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "model.bin").write_bytes(b"weights")

    def load(folder: Path, device: str, compute_type: str) -> Any:
        if device == "cuda":
            raise RuntimeError("Library libcublas.so.12 is not found or cannot be loaded")
        return object()

    monkeypatch.setattr("ctranslate2.get_cuda_device_count", lambda: 1)
    monkeypatch.setattr(model_module, "_load", load)
    found = load_model(HearingOptions(model=str(tmp_path)))
    assert (found.device, found.compute_type) == ("cpu", "int8")
    with pytest.raises(ModelError, match="libcublas"):
        load_model(HearingOptions(model=str(tmp_path), device="cuda"))
