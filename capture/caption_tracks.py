"""Captions that come with a recording: a file beside it, or a text track inside it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from capture.caption_cues import Caption, make_cues
from capture.caption_text import read_lines
from capture.captions import read_captions
from capture.media import open_recording, probe
from capture.track_ends import end_of, zero_of
from capture.transcript import Transcript

if TYPE_CHECKING:
    from av.container import InputContainer
    from av.subtitles.stream import SubtitleStream

_BESIDE = (".vtt", ".en.vtt", ".srt", ".en.srt")
_ENGLISH = ("eng", "en")


def read_captions_of(recording: Path) -> Transcript | None:
    """The captions beside or in a recording; null where it has none.

    A file of the same name with .vtt or .srt at its end comes before a track inside. Raises `RecordingError` for a
    recording that can't be opened, `TranscriptError` for captions that can't be read.
    """
    for suffix in _BESIDE:
        beside = recording.with_suffix(suffix)
        if beside.is_file():
            transcript = read_captions(beside)
            longer = max(probe(recording).duration, transcript.duration)
            return transcript.model_copy(update={"duration": round(longer, 3)})
    with open_recording(recording) as container:
        return _read_track(recording, container)


def _read_track(recording: Path, container: InputContainer) -> Transcript | None:
    tracks = [stream for stream in container.streams.subtitles if stream.codec_context.codec.text_sub]
    if not tracks:
        return None
    track = next((stream for stream in tracks if stream.language in _ENGLISH), tracks[0])
    cues = make_cues(list(_captions(container, track)))
    if not cues:
        return None
    duration = max(end_of(container), cues[-1].end)
    return Transcript(source=recording.name, duration=round(duration, 3), word_times="spread", cues=cues)


def _captions(container: InputContainer, track: SubtitleStream) -> Iterator[Caption]:
    base, zero = float(track.time_base or 0), zero_of(container)
    for packet in container.demux(track):
        if packet.pts is None or not packet.size:
            continue
        start = max(packet.pts * base - zero, 0.0)
        said = [rect.dialogue.decode("utf-8", "replace") for rect in packet.decode() if hasattr(rect, "dialogue")]
        yield Caption(start, start + (packet.duration or 0) * base, tuple(read_lines("\n".join(said))))
