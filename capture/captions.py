"""Caption files and transcript files, read into a `Transcript`."""

from __future__ import annotations

import re
from pathlib import Path

import webvtt
from pydantic import ValidationError
from webvtt.errors import MalformedFileError

from capture.caption_cues import Caption, make_cues
from capture.caption_text import read_lines
from capture.errors import TranscriptError
from capture.transcript import Transcript

CAPTION_SUFFIXES = (".vtt", ".srt", ".json")

_STAMP = r"(?:\d+:)?\d{1,2}:\d{1,2}[.,]\d{1,3}"
_TIMES = re.compile(rf"\s*{_STAMP}\s*-->\s*{_STAMP}(?=\s|$)")
_UTF16 = (b"\xff\xfe", b"\xfe\xff")


def is_caption_file(path: Path) -> bool:
    """True for a name that captions (.vtt, .srt) or the project's own transcript (.json) would have."""
    return path.suffix.lower() in CAPTION_SUFFIXES


def read_captions(path: Path) -> Transcript:
    """The transcript in a WebVTT, SRT or transcript file.

    Word times of captions are spread over each cue, `ear` is null. Raises `TranscriptError` for a file that can't be
    read whole.
    """
    text = _read_text(path)
    if path.suffix.lower() == ".json":
        return _read_json(path, text)
    cues = make_cues(_read_vtt(path, text) if text.lstrip().startswith("WEBVTT") else _read_srt(path, text))
    if not cues:
        raise TranscriptError(path, "holds no captions", "give a file with timed words in it")
    return Transcript(source=path.name, duration=cues[-1].end, word_times="spread", cues=cues)


def _read_text(path: Path) -> str:
    try:
        content = path.read_bytes()
    except FileNotFoundError as error:
        raise TranscriptError(path, "there is no such file", "check the name and the folder") from error
    except IsADirectoryError as error:
        raise TranscriptError(path, "is a folder, not a caption file", "name a .vtt or .srt file in it") from error
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise TranscriptError(path, f"the file can't be opened ({reason})", "check who may read it") from error
    if not content.strip():
        raise TranscriptError(path, "the file is empty", "give a file with timed words in it")
    if content.startswith(_UTF16):
        raise TranscriptError(path, "is written in UTF-16", "save it as UTF-8")
    if b"\0" in content:
        raise TranscriptError(path, "is no text file", "give a WebVTT, SRT or transcript file")
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise TranscriptError(path, f"line {line} is not in UTF-8", "save it as UTF-8") from error


def _read_json(path: Path, text: str) -> Transcript:
    try:
        transcript = Transcript.model_validate_json(text)
    except ValidationError as error:
        raise TranscriptError(path, _what_is_wrong(error), "make it again from the recording") from error
    if not transcript.cues:
        raise TranscriptError(path, "holds no words", "give a transcript with words in it")
    return transcript


def _what_is_wrong(error: ValidationError) -> str:
    first = error.errors()[0]
    if first["type"] == "json_invalid":
        return f"is not JSON ({first['ctx']['error']})"
    where = ".".join(str(part) for part in first["loc"])
    if where == "schema":
        return f"is not a transcript that this version reads (its schema is {first['input']!r})"
    return f"is not a transcript ({where}: {first['msg'].lower()})"


def _read_vtt(path: Path, text: str) -> list[Caption]:
    return _parse(path, text.lstrip(), "vtt")


def _read_srt(path: Path, text: str) -> list[Caption]:
    if "-->" not in text:
        raise TranscriptError(path, "holds no captions", "give a WebVTT, SRT or transcript file")
    return _parse(path, text.strip("\n"), "srt")


def _parse(path: Path, text: str, form: str) -> list[Caption]:
    _check_times(path, text)
    try:
        read = webvtt.WebVTT.from_buffer(text.split("\n"), format=form)
    except MalformedFileError as error:
        raise TranscriptError(
            path, "is neither WebVTT nor SRT", "WebVTT begins with the line WEBVTT, SRT with the number of a caption"
        ) from error
    return [
        Caption(
            start=caption.start_time.in_milliseconds() / 1000,
            end=caption.end_time.in_milliseconds() / 1000,
            lines=tuple(read_lines(caption.raw_text)),
        )
        for caption in read.captions
    ]


def _check_times(path: Path, text: str) -> None:
    """A caption whose times can't be read would be left out without a word: name its line instead."""
    for number, line in enumerate(text.split("\n"), 1):
        if "-->" in line and not _TIMES.match(line):
            raise TranscriptError(
                path, f"the times in line {number} can't be read ({line.strip()[:60]})", "mend that line"
            )
