"""What the first and last bytes of a sound file say about its length, where FFmpeg doesn't ask them.

FFmpeg takes the length of a cut WAV from what is left of it, and that of an MP3 or Ogg file from where it ends.
"""

from __future__ import annotations

import wave
from pathlib import Path

_UNKNOWN_SIZE = 0x7FFF_0000
"""From this many bytes on, a WAV header says "I don't know": what a program writes that sends it down a pipe."""

_OGG_PAGE_END = 0x04
"""Bit of a page's header type that marks the last page of a stream (RFC 3533, section 6)."""


def top_boxes(path: Path) -> list[str]:
    """Kinds of the top boxes of an ISO media file (ISO/IEC 14496-12, 4.2), in order; nonsense for other files."""
    kinds: list[str] = []
    size_of_file = path.stat().st_size
    with path.open("rb") as file:
        at = 0
        while at + 8 <= size_of_file and len(kinds) < 1000:
            file.seek(at)
            head = file.read(16)
            size, kind = int.from_bytes(head[:4], "big"), head[4:8].decode("latin-1")
            if size == 1 and len(head) == 16:
                size = int.from_bytes(head[8:], "big")
            kinds.append(kind)
            if size < 8:
                break
            at += size
    return kinds


def wav_seconds(path: Path) -> float | None:
    """Seconds of sound that a WAV header declares; null where it can't tell."""
    try:
        with wave.open(str(path)) as file:
            frame = file.getnchannels() * file.getsampwidth()
            if file.getnframes() * frame >= _UNKNOWN_SIZE:
                return None
            return float(file.getnframes() / file.getframerate())
    except (wave.Error, EOFError, ZeroDivisionError):
        # Compressed or floating-point sound, which the standard library doesn't read.
        return None


def mp3_counts_its_frames(path: Path) -> bool:
    """True where an MP3 begins with a Xing, Info or VBRI frame, which says how long it is."""
    with path.open("rb") as file:
        head = file.read(10)
        if head[:3] == b"ID3" and len(head) == 10:
            size = 0
            for byte in head[6:10]:
                size = size << 7 | byte & 0x7F
            file.seek(size + 10)
        else:
            file.seek(0)
        frame = file.read(4096)
    return any(mark in frame for mark in (b"Xing", b"Info", b"VBRI"))


def ogg_has_an_end(path: Path) -> bool:
    """True where the last page of an Ogg file is marked as the last."""
    with path.open("rb") as file:
        file.seek(max(path.stat().st_size - 2 * 65_307, 0))
        tail = file.read()
    at = tail.rfind(b"OggS")
    return at >= 0 and len(tail) > at + 5 and bool(tail[at + 5] & _OGG_PAGE_END)
