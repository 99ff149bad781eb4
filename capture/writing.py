"""A transcript in the forms that others read."""

from __future__ import annotations

from capture.timecode import clock
from capture.transcript import Transcript

FORMS = ("json", "vtt", "text")
"""The project's own JSON with a time a word, WebVTT captions, or plain text with a line a cue."""


def written(transcript: Transcript, form: str) -> str:
    """The transcript in one of `FORMS`; `KeyError` for another."""
    return {"json": Transcript.to_json, "vtt": _vtt, "text": _text}[form](transcript)


def explained(transcript: Transcript) -> str:
    """A table of the figures that were heard twice: what stands, its rivals with their leads in nats, and why."""
    lines = [f"{'at':>8}  {'sure':>4}  {'lead':>6}  reading"]
    for figure in transcript.figures:
        for at, reading in enumerate(figure.readings):
            sure = f"{figure.confidence:.2f}" if at == 0 else ""
            marks = ["first heard"] * (reading.text == figure.first_heard)
            marks += ["near tie"] * (at == 0 and figure.near_tie) + [reading.why] * bool(reading.why)
            when = clock(figure.start) if at == 0 else ""
            note = f"  ({'; '.join(marks)})" if marks else ""
            lines.append(f"{when:>8}  {sure:>4}  {reading.score:>6.1f}  {reading.text}{note}")
    return "\n".join(lines)


def _vtt(transcript: Transcript) -> str:
    import pysubs2

    lines = pysubs2.SSAFile()
    for cue in transcript.cues:
        line = pysubs2.SSAEvent(start=pysubs2.make_time(s=cue.start), end=pysubs2.make_time(s=cue.end))
        line.plaintext = cue.text
        lines.append(line)
    return lines.to_string("vtt")


def _text(transcript: Transcript) -> str:
    return "\n".join(cue.text for cue in transcript.cues)
