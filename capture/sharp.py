"""The sharpest frame of a film near a second: what a step's still shows.

Sharpness is the variance of the Laplacian of the grey picture (J. L. Pech-Pacheco, G. Cristóbal, J. Chamorro-Martínez
and J. Fernández-Valdivia, "Diatom autofocusing in brightfield microscopy: a comparative study", ICPR 2000, measure
LAPV): what is out of focus or moved while it was taken has few edges, and black has none. Measured on a picture 320
wide, so that grain counts for little.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
from av.stream import Disposition

from capture.media import open_recording
from capture.still import jpeg_of
from capture.track_ends import MICROSECONDS, zero_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from av.container import InputContainer
    from av.video.frame import VideoFrame
    from av.video.stream import VideoStream

BEFORE, BEHIND = 0.5, 3.0
"""Seconds around a step's first word in which its still is looked for: hands move when the talk of it begins."""
_WIDTH = 320
_MOST_MEASURED = 40
_MOST_DECODED = 1800
"""Frames from the key frame before: a film with fewer key frames gives what was found until then."""
_DARK, _FLAT = 20.0, 4.0
"""Shades of 255: mean of a picture that shows nothing, and spread of one that shows nothing but one shade."""


def sharpest(recording: Path, second: float) -> bytes | None:
    """The sharpest frame from half a second before `second` to three seconds behind it, as a JPEG.

    Null for a recording without picture, and where all is black or of one shade. Of equals the first. Decodes 1,800
    frames and measures 40 at most. Raises `RecordingError` where the file can't be read.
    """
    with open_recording(recording) as container:
        pictures = [one for one in container.streams.video if Disposition.attached_pic not in one.disposition]
        if not pictures:
            return None
        begin = max(second - BEFORE, 0.0) + zero_of(container)
        best: tuple[float, VideoFrame] | None = None
        for frame in _between(container, pictures[0], begin, begin + BEFORE + BEHIND):
            found = _sharpness_of(frame)
            if found is not None and (best is None or found > best[0]):
                best = (found, frame)
        return None if best is None else jpeg_of(best[1], pictures[0])


def sharpness(grey: npt.NDArray[np.uint8]) -> float:
    """Variance of the Laplacian (4 neighbours) of a grey picture, rows by columns, edges left out."""
    shade = grey.astype(np.float64)
    laplacian = (
        shade[:-2, 1:-1] + shade[2:, 1:-1] + shade[1:-1, :-2] + shade[1:-1, 2:] - 4.0 * shade[1:-1, 1:-1]
    )  # fmt: skip
    return float(laplacian.var())


def _sharpness_of(frame: VideoFrame) -> float | None:
    """Null for a picture that shows nothing."""
    height = max(4, round(frame.height * _WIDTH / frame.width / 2) * 2)
    grey = np.asarray(frame.reformat(width=_WIDTH, height=height, format="gray").to_ndarray(), dtype=np.uint8)
    if grey.mean() < _DARK or grey.std() < _FLAT:
        return None
    return sharpness(grey)


def _between(container: InputContainer, stream: VideoStream, begin: float, end: float) -> Iterator[VideoFrame]:
    """Frames between two seconds, evenly picked."""
    stream.thread_type = "AUTO"
    container.seek(int(begin * MICROSECONDS), backward=True)
    rate = float(stream.average_rate or 25)
    every = max(1, round((end - begin) * rate / _MOST_MEASURED))
    inside = 0
    for number, frame in enumerate(container.decode(stream)):
        if number >= _MOST_DECODED or (frame.time is not None and frame.time > end):
            return
        if frame.time is None or frame.time < begin:
            continue
        if inside % every == 0:
            yield frame
        inside += 1
