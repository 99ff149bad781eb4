"""A transcript in the forms that others read."""

from __future__ import annotations

from capture.transcript import Transcript

FORMS = ("json", "vtt", "text")
"""The project's own JSON with a time a word, WebVTT captions, or plain text with a line a cue."""


def written(transcript: Transcript, form: str) -> str:
    """The transcript in one of `FORMS`; `KeyError` for another."""
    return {"json": Transcript.to_json, "vtt": _vtt, "text": _text}[form](transcript)


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
