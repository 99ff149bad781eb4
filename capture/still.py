"""A still: one frame of a film, as its player would show it at a second, as a JPEG."""

from __future__ import annotations

import io
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import av
import numpy as np
import numpy.typing as npt
from av.stream import Disposition

from capture.errors import RecordingError
from capture.media import open_recording
from capture.track_ends import MICROSECONDS, zero_of

if TYPE_CHECKING:
    from av.container import InputContainer
    from av.video.frame import VideoFrame
    from av.video.stream import VideoStream

STILL_WIDTH = 640
"""Pixels, at most: enough to see a rule held to a string, and twenty kilobytes."""

_MOST_FRAMES = 1500
"""Frames to decode from the last key frame before: half a minute of film. A film with fewer key frames gives an earlier
picture rather than none."""


def still(recording: Path, second: float) -> bytes | None:
    """The frame that is shown at `second`, as a JPEG; null for a recording without picture.

    Past the end, the last frame. Raises `RecordingError` where the file can't be read.
    """
    with open_recording(recording) as container:
        pictures = [one for one in container.streams.video if Disposition.attached_pic not in one.disposition]
        if not pictures:
            return None
        frame = _shown_at(container, pictures[0], max(second, 0.0) + zero_of(container))
        if frame is None:
            raise RecordingError(recording, f"no picture can be read near second {second:g}", "play the film there")
        return jpeg_of(frame, pictures[0])


def jpeg_of(frame: VideoFrame, stream: VideoStream) -> bytes:
    """A frame of a stream as a JPEG of at most `STILL_WIDTH`, upright, its pixels square."""
    return _jpeg(_upright(frame, stream))


def _shown_at(container: InputContainer, stream: VideoStream, second: float) -> VideoFrame | None:
    stream.thread_type = "AUTO"
    container.seek(int(second * MICROSECONDS), backward=True)
    shown = None
    for number, frame in enumerate(container.decode(stream)):
        if shown is not None and frame.time is not None and frame.time > second:
            break
        shown = frame
        if number >= _MOST_FRAMES:
            break
    return shown


def _upright(frame: VideoFrame, stream: VideoStream) -> VideoFrame:
    """The frame scaled, its pixels made square, and turned the way the camera was held."""
    squeeze = stream.codec_context.sample_aspect_ratio or Fraction(1)
    width = min(STILL_WIDTH, round(frame.width * squeeze))
    height = max(2, round(frame.height * width / (frame.width * squeeze)))
    turned = frame.reformat(width=width, height=height, format="rgb24")
    quarters = round(frame.rotation / 90) % 4
    if not quarters:
        return turned
    pixels: npt.NDArray[np.uint8] = np.ascontiguousarray(np.rot90(turned.to_ndarray(), quarters), dtype=np.uint8)
    return av.VideoFrame.from_ndarray(pixels, format="rgb24")


def _jpeg(frame: VideoFrame) -> bytes:
    # 4:2:0 wants even sides.
    even = frame.reformat(width=frame.width // 2 * 2, height=frame.height // 2 * 2, format="yuvj420p")
    made = io.BytesIO()
    with av.open(made, "w", format="image2pipe") as container:
        stream = container.add_stream("mjpeg", rate=1, options={"qscale": "4"})
        stream.width, stream.height, stream.pix_fmt = even.width, even.height, "yuvj420p"
        even.pts = 0
        container.mux(stream.encode(even))
        container.mux(stream.encode(None))
    return made.getvalue()
