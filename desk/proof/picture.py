"""Whether a session has a film, a sound or neither to show."""

from __future__ import annotations

from capture.captions import is_caption_file
from capture.shop import Session
from desk.proof.views import Picture
from publish.page import SOUND_ONLY


def picture_of(session: Session) -> Picture:
    """Which player shows the session's recording; empty where there is none."""
    recording = session.recording_file
    if recording is None or is_caption_file(recording):
        return ""
    return "audio" if recording.suffix.lower() in SOUND_ONLY else "video"
