"""Five clips of read speech with their words, 25 s in all, from LibriVox: recordings in the public domain.

They come in the source package of pocketsphinx on PyPI, in test/data/librivox, with transcripts, and with word times
that pocketsphinx found by forced alignment. The package is fetched once into Spokeshave's cache.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tarfile
from dataclasses import dataclass
from pathlib import Path

from capture.model_files import cache_folder

SOURCE = "pocketsphinx 5.1.1 (PyPI), test/data/librivox: Sense and Sensibility, chapter 1"
_PACKAGE = "pocketsphinx==5.1.1"
_FOLDER = "test/data/librivox/"


@dataclass(frozen=True, slots=True)
class Clip:
    """One clip."""

    path: Path
    text: str
    words: tuple[tuple[str, float, float], ...]
    """Word, start and end in seconds, by forced alignment."""


def clips() -> list[Clip]:
    """The five clips, fetched where need be."""
    folder = cache_folder() / "benchmarks" / "librivox"
    if not (folder / "transcription").exists():
        _fetch(folder)
    texts = dict(_transcripts((folder / "transcription").read_text(encoding="utf-8")))
    return [Clip(path, texts[path.stem], _words(path.with_suffix(".json"))) for path in sorted(folder.glob("*.wav"))]


def _fetch(folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    print(f"fetching {_PACKAGE} (a few minutes, once)", file=sys.stderr)
    command = ["download", "--quiet", "--no-binary", ":all:", "--no-deps", "--dest", str(folder), _PACKAGE]
    subprocess.run([sys.executable, "-m", "pip", *command], check=True)
    archive = next(folder.glob("*.tar.gz"))
    with tarfile.open(archive) as file:
        for member in file.getmembers():
            name = member.name.rpartition("/")[2]
            content = file.extractfile(member) if f"/{_FOLDER}" in member.name else None
            if content is not None:
                (folder / name).write_bytes(content.read())
    archive.unlink()


def _transcripts(text: str) -> list[tuple[str, str]]:
    found = re.findall(r"^<s> (.*) </s> \((.*)\)$", text, re.MULTILINE)
    return [(name, words) for words, name in found]


def _words(path: Path) -> tuple[tuple[str, float, float], ...]:
    aligned = json.loads(path.read_text(encoding="utf-8"))["w"]
    return tuple(
        (re.sub(r"\(\d+\)", "", word["t"]), word["b"], word["b"] + word["d"])
        for word in aligned
        if word["t"][0] not in "<["
    )
